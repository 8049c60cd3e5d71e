//! What could spoil a whole floor by one tap: a place nobody chose, a moment nobody gave, a tap that was wrong.

use browser_tests::{Reading, Server, Site, Tab, Visit};
use serde_json::Value;

fn form(site: &Site, server: &Server, kind: &str) -> Tab {
    let tab = Visit::within(90).tab(Reading::PHONE);
    tab.go(server, &format!("/slab/{}/add/{kind}", site.slab()));
    tab
}

fn entry(site: &Site, kind: &str) -> Value {
    site.diary().into_iter().find(|e| e["body"]["kind"] == kind).unwrap_or_else(|| panic!("no {kind} in the diary"))
}

const ONE_SPOT: [&str; 8] =
    ["water_drop", "scrape", "solvent_wipe", "acid_drop", "surface_ph", "slab_humidity", "incident", "defect"];

#[test]
fn no_zone_is_chosen_for_a_person_and_a_spot_is_never_the_whole_slab() {
    let site = Site::with_slab();
    let server = site.serve();
    for kind in ONE_SPOT {
        let tab = form(&site, &server, kind);
        assert!(!tab.is("!!document.querySelector('[name=place_kind]:checked')"), "{kind}: a place is chosen");
        assert!(
            !tab.is("!!document.querySelector('[name=place_kind][value=slab]')"),
            "{kind}: the whole slab is offered"
        );
        assert!(
            tab.is("!!document.querySelector('[name=place_kind][value=\"zone:office\"]')"),
            "{kind}: no zone to tap"
        );
    }
    // What happens to a whole slab may be said of it, but nobody says it for the person.
    for kind in ["curing", "wetting", "survey"] {
        let tab = form(&site, &server, kind);
        assert!(!tab.is("!!document.querySelector('[name=place_kind]:checked')"), "{kind}: a place is chosen");
        assert!(
            tab.is("!!document.querySelector('[name=place_kind][value=slab]')"),
            "{kind}: the whole slab is not offered"
        );
    }
}

#[test]
fn a_drop_without_a_place_is_asked_where_and_keeps_what_was_typed() {
    let site = Site::with_slab();
    let server = site.serve();
    let tab = form(&site, &server, "water_drop");
    tab.fill("[name='soaked_in']", "1:15");
    tab.tap(".send button");
    tab.until_true("document.querySelector('[data-mistake-for=place]:not([hidden])')?.textContent.includes('office')");
    assert!(tab.is("document.querySelector('[data-mistakes]').textContent.includes('Where:')"), "{}", tab.seen());
    assert_eq!(tab.value("[name='soaked_in']"), "1:15");
    assert_eq!(site.count("water_drop"), 0);
    tab.choose("place_kind", "zone:office");
    tab.tap_to(".send button");
    assert_eq!(entry(&site, "water_drop")["place"]["zone"], "office");
    // The next one begins where the last one was; an incident does not.
    let next = form(&site, &server, "scrape");
    assert!(next.is("document.querySelector('[name=place_kind]:checked')?.value === 'zone:office'"), "{}", next.seen());
    let oil = form(&site, &server, "incident");
    assert!(!oil.is("!!document.querySelector('[name=place_kind]:checked')"));
}

#[test]
fn without_script_too() {
    let site = Site::with_slab();
    let server = site.serve();
    let tab = Visit::within(60).tab(Reading::PHONE.without_script());
    tab.go(&server, &format!("/slab/{}/add/incident", site.slab()));
    tab.fill("[name='note']", "north door");
    tab.tap_to("button[name='preset'][value='cutting_oil']");
    assert_eq!(site.count("incident"), 0);
    assert!(tab.is("document.querySelector('#mistake-place').textContent.includes('office')"), "{}", tab.seen());
    assert!(tab.is("document.querySelector('[data-mistakes]').textContent.includes('Where:')"), "{}", tab.seen());
    assert_eq!(tab.value("[name='note']"), "north door");
}

#[test]
fn a_pour_asks_for_its_moment_as_people_write_it() {
    let site = Site::with_slab();
    let server = site.serve();
    for kind in ["pour", "finish", "curing", "cured", "panel_made", "panel_stained", "delivery"] {
        let tab = form(&site, &server, kind);
        assert!(tab.sees("[name='happened']"), "{kind}: the moment hides");
    }
    let tab = form(&site, &server, "curing");
    tab.choose("place_kind", "slab");
    tab.choose("method", "water");
    tab.tap(".send button");
    tab.until_true("document.querySelector('[data-mistake-for=happened]:not([hidden])')?.textContent.length > 5");
    assert_eq!(site.count("curing"), 0, "it is not taken to be now");
    tab.fill("[name='happened']", "3/3/2025 1:30 pm");
    tab.tap_to(".send button");
    let written = entry(&site, "curing")["happened"].to_string();
    assert!(written.contains("2025-03-03T13:30"), "{written}");
}

#[test]
fn a_wrong_tap_is_taken_back_where_it_is_confirmed() {
    let site = Site::with_slab();
    let server = site.serve();
    let tab = form(&site, &server, "incident");
    tab.choose("place_kind", "zone:office");
    tab.tap_to("button[name='preset'][value='cutting_oil']");
    let said = "[...document.querySelectorAll('.said')].filter((e) => e.checkVisibility())";
    assert_eq!(tab.eval(&format!("{said}.length")), 1, "it is said once: {}", tab.seen());
    let text = tab.text(&format!("{said}[0].textContent"));
    assert!(text.contains("Incident") && text.contains("office") && text.contains("oil"), "what and where: {text}");
    tab.tap_to(".said .undo button");
    assert_eq!(site.count("never_happened"), 1);
    let seen = tab.seen();
    assert!(seen.contains("Taken back"), "{seen}");
    assert!(!tab.is("!!document.querySelector('.undo')"), "and is not offered again");
}

#[test]
fn what_never_happened_is_struck_out_at_the_entry_and_brought_back() {
    let site = Site::with_slab();
    let server = site.serve();
    site.log(
        r#"{"happened":"2025-03-20 10:00","place":{"zone":"shop"},"body":{"kind":"incident","what":"cutting-oil"}}"#,
    );
    let id = entry(&site, "incident")["id"].as_str().unwrap().to_owned();
    let tab = Visit::within(60).tab(Reading::PHONE);
    tab.go(&server, &format!("/slab/{}/entry/{id}", site.slab()));
    tab.unfold("form[action*='/undo/']");
    tab.fill("#never [name='reason']", "it was the slab next door");
    tab.tap_to("#never button");
    assert_eq!(entry(&site, "never_happened")["body"]["reason"], "it was the slab next door");
    tab.go(&server, &format!("/slab/{}/entry/{id}", site.slab()));
    assert!(tab.seen().contains("Struck out"), "{}", tab.seen());
    tab.tap_to(".note a[href*='/fix/']");
    tab.tap_to(".send button");
    let back = site.diary().into_iter().any(|e| e["body"]["kind"] == "incident" && e["replaces"] == id.as_str());
    assert!(back, "it is brought back by a correction");
}

#[test]
fn the_headline_names_its_zones_and_their_area() {
    let site = Site::with_slab();
    let server = site.serve();
    site.log(
        r#"{"happened":"2025-05-10 10:00","place":{"zone":"office"},"body":{"kind":"incident","what":"cutting-oil"}}"#,
    );
    let tab = Visit::within(60).tab(Reading::PHONE);
    tab.go(&server, &format!("/slab/{}", site.slab()));
    let headline = tab.text("document.querySelector('h1').textContent");
    assert!(headline.contains("office (450 ft²)") && !headline.contains("shop"), "{headline}");
}

#[test]
fn a_number_that_can_mean_two_units_is_asked_about() {
    let site = Site::with_slab();
    let server = site.serve();
    let tab = Visit::within(60).tab(Reading::PHONE);
    tab.read_as(&server, Reading { measure: "metric", ..Reading::PHONE });
    tab.go(&server, &format!("/slab/{}/add/pour", site.slab()));
    tab.choose("place_kind", "slab");
    tab.fill("[name='happened']", "2025-03-03 07:00");
    tab.fill("[name='thickness']", "10");
    tab.tap(".send button");
    tab.until_true(
        "document.querySelector('[data-mistake-for=thickness]:not([hidden])')?.textContent.includes('unit')",
    );
    assert!(tab.is("document.querySelector('[data-mistakes]').textContent.includes('Thickness:')"), "{}", tab.seen());
    assert_eq!(site.count("pour"), 1, "only the one of the diary");
    tab.fill("[name='thickness']", "10 cm");
    tab.tap_to(".send button");
    assert_eq!(site.count("pour"), 2);
    // What was typed in the other system has the reader's own beside it.
    site.log(r#"{"happened":"2025-03-20 10:00","body":{"kind":"temperature","slab":"66 °F"}}"#);
    let id = entry(&site, "temperature")["id"].as_str().unwrap().to_owned();
    tab.go(&server, &format!("/slab/{}/entry/{id}", site.slab()));
    let seen = tab.seen();
    assert!(seen.contains("66 °F") && seen.contains("18.9 °C"), "{seen}");
}
