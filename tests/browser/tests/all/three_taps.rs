//! A water drop is in the diary after three taps.

use browser_tests::{Reading, Site, Visit};

#[test]
fn a_water_drop_by_what_was_seen() {
    let site = Site::with_slab();
    let server = site.serve();
    let tab = Visit::within(60).tab(Reading::PHONE);
    tab.go(&server, &format!("/slab/{}", site.slab()));
    tab.tap_to(".quick a[href$='/add/water_drop']");
    tab.choose("place_kind", "zone:shop");
    tab.tap_to("button[name='preset'][value='soaked_60_s']");
    assert!(tab.taps() <= 3, "{} taps", tab.taps());
    assert_eq!(tab.path(), format!("/slab/{}", site.slab()), "back where it began");
    assert!(tab.sees(".said"), "it says that it is written: {}", tab.seen());
    let diary = site.diary();
    let drop = diary.iter().find(|e| e["body"]["kind"] == "water_drop").expect("the drop is in the diary");
    assert_eq!(drop["body"]["soaked_in"], "60 s");
    assert_eq!(site.count("water_drop"), 1);
}

#[test]
fn the_same_in_spanish_in_one_room() {
    let site = Site::with_slab();
    let server = site.serve();
    let tab = Visit::within(60).tab(Reading::PHONE);
    tab.read_as(&server, Reading::PHONE.spanish());
    tab.go(&server, &format!("/slab/{}", site.slab()));
    tab.tap_to(".quick a[href$='/add/water_drop']");
    tab.choose("place_kind", "zone:office");
    tab.tap_to("button[name='preset'][value='beads']");
    assert_eq!(tab.taps(), 3);
    let diary = site.diary();
    let drop = diary.iter().find(|e| e["body"]["kind"] == "water_drop").expect("the drop is in the diary");
    assert_eq!(drop["place"]["zone"], "office", "{drop}");
}

/// The stopwatch's own two taps are the measurement; around them there are three more.
#[test]
fn a_water_drop_by_the_stopwatch() {
    let site = Site::with_slab();
    let server = site.serve();
    let tab = Visit::within(60).tab(Reading::PHONE);
    tab.go(&server, &format!("/slab/{}", site.slab()));
    tab.tap_to(".quick a[href$='/add/water_drop']");
    tab.choose("place_kind", "zone:shop");
    tab.tap("[data-stopwatch] [data-start]");
    tab.until_true("document.querySelector('[data-stopwatch] output').textContent.includes('1 s')");
    // The phone goes to sleep and the page is loaded again: the watch runs on.
    tab.reload();
    tab.until_true("/[2-9] s/.test(document.querySelector('[data-stopwatch] output').textContent)");
    tab.tap("[data-stopwatch] [data-stop]");
    tab.until_true("/^[2-9] s$/.test(document.querySelector('[name=soaked_in]').value)");
    let seconds = tab.value("[name='soaked_in']");
    tab.tap_to(".send button");
    assert_eq!(tab.taps(), 5);
    let diary = site.diary();
    let drop = diary.iter().find(|e| e["body"]["kind"] == "water_drop").expect("the drop is in the diary");
    assert_eq!(drop["body"]["soaked_in"], seconds.as_str());
}
