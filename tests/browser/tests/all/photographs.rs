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
    tab.choose("place_kind", "zone:shop");
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
    tab.choose("place_kind", "zone:shop");
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
    tab.choose("place_kind", "slab");
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

#[test]
fn the_panel_is_marked_beside_the_card_and_its_color_is_measured() {
    let site = Site::with_slab();
    let server = site.serve();
    let tab = Visit::within(60).tab(Reading::PHONE);
    let id = site.slab();
    tab.go(&server, &format!("/slab/{id}/add/panel_made"));
    tab.choose("place_kind", "slab");
    tab.fill("[name=\'happened\']", "5/19/2025 9:00 am");
    tab.fill("[name='panel']", "P1");
    tab.tap_to(".send button");
    tab.go(&server, &format!("/slab/{id}/add/panel_photographed?panel=P1&state=sealed&next=/slab/{id}/panels"));
    tab.photograph(&[&repository("demo/photographs/panel-1.jpg")]);
    // Where the card and the panel lie in that picture of 900 by 640 (demo/photographs/make.py).
    for (thing, from, to) in [("card", (0.08, 0.36), (0.24, 0.61)), ("panel", (0.34, 0.08), (0.93, 0.92))] {
        let picture = format!("[data-card-mark='{thing}'] .card-picture");
        tab.until_true(&format!("document.querySelector(\"{picture} img\")?.naturalWidth > 0"));
        tab.eval(&format!("document.querySelector(\"{picture}\").scrollIntoView({{ block: 'center' }})"));
        let area = tab.eval(&format!(
            "(() => {{ const a = document.querySelector(\"{picture} img\").getBoundingClientRect(); return [a.left, a.top, a.width, a.height]; }})()"
        ));
        let n = |i: usize| area[i].as_f64().unwrap();
        for (x, y) in [from, to] {
            tab.tap_at(n(0) + n(2) * x, n(1) + n(3) * y);
        }
        tab.until_true(&format!("document.querySelector(\"[name='{thing}_w']\").value !== ''"));
    }
    tab.tap_to(".send button");
    assert!(tab.text("document.querySelector('main').innerText").contains("Panel P1"));
    let entry = site.diary().into_iter().find(|e| e["body"]["kind"] == "panel_photographed").unwrap();
    assert!(entry["body"]["panel_box"]["w"].as_f64().unwrap() > 50.0, "{entry}");
    // What the demo's diary holds for the same picture, marked a little otherwise.
    let lab: Vec<f64> = entry["body"]["lab"].as_array().unwrap().iter().map(|n| n.as_f64().unwrap()).collect();
    for (is, told) in lab.iter().zip([39.43, 4.89, 17.61]) {
        assert!((is - told).abs() < 0.5, "{entry}");
    }
}

#[test]
fn a_photograph_of_a_patchy_slab_says_so_on_the_page_and_shows_where() {
    let site = Site::with_slab();
    let server = site.serve();
    let tab = Visit::within(60).tab(Reading::PHONE);
    let id = site.slab();
    tab.go(&server, &format!("/slab/{id}/add/slab_photograph?next=/slab/{id}/photographs"));
    tab.choose("place_kind", "slab");
    tab.photograph(&[&repository("demo/photographs/bay-day-11.jpg")]);
    tab.until_true("document.querySelectorAll('.photographs img').length === 1");
    tab.tap_to(".send button");
    tab.until_true("document.querySelector('.shot') !== null && document.querySelector('progress') === null");
    let said = tab.text("document.querySelector('.shot').innerText");
    assert!(said.contains("More than one color"), "{said}");
    tab.until_true("document.querySelector('.shot img').naturalWidth > 0");
    let map = tab.text("document.querySelector('.shot figcaption a').getAttribute('href')");
    let loaded = tab.eval(&format!(
        "new Promise((done) => {{ const picture = new Image(); picture.onload = () => done(picture.naturalWidth); picture.onerror = () => done(0); picture.src = '{map}'; }})"
    ));
    assert!(loaded.as_u64().unwrap() > 900, "the photograph beside its map: {loaded}");
    let entry = site.diary().into_iter().find(|e| e["body"]["kind"] == "slab_photograph").unwrap();
    assert_eq!(entry["body"]["evenness"], "patchy");
}
