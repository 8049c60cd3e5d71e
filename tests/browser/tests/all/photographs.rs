//! Photographs: they arrive without their location, and the reference card is marked by two taps.

use std::fs;

use browser_tests::{Reading, Site, Tab, Visit, repository};
use serde_json::Value;

/// A JPEG of 40 by 24 pixels with a GPS block; each text in it that must not survive says SECRET.
const WITH_LOCATION: &str = "crates/photo/tests/data/progressive.jpg";

fn contains(bytes: &[u8], part: &[u8]) -> bool {
    bytes.windows(part.len()).any(|window| window == part)
}

/// The bytes that the server gives for the page's first photograph.
fn served(tab: &Tab) -> Vec<u8> {
    let bytes = tab.eval(
        "fetch(document.querySelector('main figure img').src).then((a) => a.arrayBuffer()).then((b) => [...new Uint8Array(b)])",
    );
    bytes.as_array().unwrap().iter().map(|b| u8::try_from(b.as_u64().unwrap()).unwrap()).collect()
}

#[test]
fn a_photograph_is_shown_and_its_location_is_gone() {
    let site = Site::with_slab();
    let server = site.serve();
    let tab = Visit::within(60).tab(Reading::PHONE);
    let photograph = repository(WITH_LOCATION);
    assert!(contains(&fs::read(&photograph).unwrap(), b"SECRET"), "the example holds what must not survive");
    tab.go(&server, &format!("/slab/{}/add/water_drop", site.slab()));
    tab.photograph(&[&photograph]);
    tab.until_true("document.querySelectorAll('.photographs img').length === 1");
    tab.tap_to("button[name='preset'][value='soaked_30_s']");
    tab.go(&server, &format!("/slab/{}/diary", site.slab()));
    tab.tap_to(".thumbs a");
    tab.until_true("document.querySelector('main figure img').naturalWidth > 0");
    let bytes = served(&tab);
    assert!(bytes.starts_with(&[0xff, 0xd8]), "a JPEG");
    for secret in [&b"SECRET"[..], b"GPS", b"48.8584"] {
        assert!(!contains(&bytes, secret), "{} is in what is served", String::from_utf8_lossy(secret));
    }
    assert_eq!(site.photographs(), 1);
}

#[test]
fn a_photograph_taken_out_again_is_not_sent() {
    let site = Site::with_slab();
    let server = site.serve();
    let tab = Visit::within(60).tab(Reading::PHONE);
    tab.go(&server, &format!("/slab/{}/add/water_drop", site.slab()));
    tab.photograph(&[&repository(WITH_LOCATION), &repository("crates/photo/tests/data/gray.jpg")]);
    tab.until_true("document.querySelectorAll('.photographs img').length === 2");
    tab.tap(".photographs li:first-child button");
    tab.until_true("document.querySelectorAll('.photographs img').length === 1");
    tab.tap_to("button[name='preset'][value='soaked_30_s']");
    let diary = site.diary();
    let drop = diary.iter().find(|e| e["body"]["kind"] == "water_drop").unwrap();
    assert_eq!(drop["photographs"].as_array().unwrap().len(), 1, "{drop}");
}

#[test]
fn the_card_is_marked_by_two_taps() {
    let site = Site::with_slab();
    let server = site.serve();
    let tab = Visit::within(60).tab(Reading::PHONE);
    tab.go(&server, &format!("/slab/{}/add/slab_photograph", site.slab()));
    tab.photograph(&[&repository(WITH_LOCATION)]);
    tab.until_true("document.querySelector('.card-picture img')?.naturalWidth > 0");
    tab.eval("document.querySelector('.card-picture').scrollIntoView({ block: 'center' })");
    let area = tab.eval(
        "(() => { const a = document.querySelector('.card-picture img').getBoundingClientRect(); return [a.left, a.top, a.width, a.height]; })()",
    );
    let at = |share_x: f64, share_y: f64| {
        let n = |i: usize| area[i].as_f64().unwrap();
        (n(0) + n(2) * share_x, n(1) + n(3) * share_y)
    };
    // The lower right corner first: any two opposite corners will do.
    let (x, y) = at(0.75, 0.5);
    tab.tap_at(x, y);
    tab.until_true("document.querySelector('.card-marking button:not([hidden])') !== null");
    let (x, y) = at(0.25, 0.2);
    tab.tap_at(x, y);
    tab.until_true("document.querySelector('[name=card_w]').value !== ''");
    let number = |name: &str| tab.value(&format!("[name='{name}']")).parse::<f64>().unwrap();
    let marked = [number("card_x"), number("card_y"), number("card_w"), number("card_h")];
    for (is, should) in marked.into_iter().zip([25.0, 20.0, 50.0, 30.0]) {
        // One CSS pixel of a picture 350 px wide is 0.3 %, of one 210 px high 0.5 %.
        assert!((is - should).abs() <= 1.0, "{marked:?}");
    }
    let rectangle = tab.text("document.querySelector('.card-box').getAttribute('width')");
    assert!((rectangle.parse::<f64>().unwrap() - marked[2]).abs() < 1e-9, "what is drawn is what is written");
    tab.tap_to(".send button");
    let diary = site.diary();
    let entry = diary.iter().find(|e| e["body"]["kind"] == "slab_photograph").expect("it is in the diary");
    let card: &Value = &entry["body"]["card_box"];
    let kept = ["x", "y", "w", "h"].map(|side| card[side].as_f64().unwrap());
    assert_eq!(kept, marked, "the card is in the entry: {entry}");
    assert_eq!(entry["photographs"].as_array().unwrap().len(), 1);
}
