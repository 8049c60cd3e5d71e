//! The pages of photographs and panels, over the demo's diary and its photographs.

#![allow(clippy::unwrap_used, reason = "a test may stop")]

mod common;

use std::time::Duration;

use common::{DEMO, Got, Site};
use slab_diary::SlabId;

const SPANISH: &str = "lang=es; measure=metric";

fn site() -> (Site, SlabId) {
    let site = Site::empty();
    let id = site.slab("Alder Mill workshop", DEMO);
    (site, id)
}

/// A page once nothing on it is waited for.
fn settled(site: &Site, path: &str, cookies: &str) -> String {
    for _ in 0..600 {
        let page = site.get_as(path, cookies).ends(200).text();
        let Some((_, rest)) = page.split_once("data-work=\"") else { return page };
        let work = rest.split('"').next().unwrap();
        site.get(work).ends(200).holds("share");
        std::thread::sleep(Duration::from_millis(100));
    }
    panic!("not measured after a minute");
}

fn texts<'a>(page: &'a str, from: &str, until: &str) -> Vec<&'a str> {
    page.split(from).skip(1).filter_map(|part| part.split(until).next()).collect()
}

fn is_png(got: &Got) -> bool {
    got.bytes.starts_with(b"\x89PNG\r\n")
}

/// Width and height as a PNG's own header says (W3C PNG, IHDR).
fn png_size(got: &Got) -> (u32, u32) {
    let number = |at: usize| u32::from_be_bytes(got.bytes[at..at + 4].try_into().unwrap());
    (number(16), number(20))
}

#[test]
fn the_two_rules_stand_side_by_side_and_a_cold_cure_is_told() {
    let (site, id) = site();
    let page = settled(&site, &format!("/slab/{id}/photographs"), "");
    // A cold cure changes no state; it makes one more look at the color worth while.
    assert!(page.contains("one even color? OK") && page.contains("Look at the slab dry and then misted"), "{page}");
    for part in
        ["Day 32; the 28 days were over on March 23, 2026", "March 20, 2026: not settled", "Nobody has looked yet"]
    {
        assert!(page.contains(part), "{part}");
    }
    assert!(page.contains("The slab is getting more even."), "three shots, each more even");
    assert_eq!(texts(&page, "<article class=\"shot\">", "</article>").len(), 3);
    assert!(page.contains("Add a second photograph of this place"));
}

#[test]
fn each_photograph_has_a_small_copy_and_a_map() {
    let (site, id) = site();
    let page = settled(&site, &format!("/slab/{id}/photographs"), "");
    let smalls = texts(&page, "<img src=\"", "\"");
    assert_eq!(smalls.len(), 3);
    for src in smalls {
        let got = site.get(src).ends(200);
        assert_eq!(got.header("content-type"), "image/jpeg");
        assert!(got.bytes.starts_with(&[0xff, 0xd8]) && got.bytes.len() < 60_000, "{}", got.bytes.len());
    }
    let maps = texts(&page, "<figcaption><a class=\"alone\" href=\"", "\"");
    assert_eq!(maps.len(), 3);
    let map = site.get(&maps[0].replace("&#38;", "&").replace("&amp;", "&")).ends(200);
    assert!(is_png(&map));
    let (width, height) = png_size(&map);
    assert!(width > 2 * height, "the photograph beside its map");
    for wrong in ["number=2", "number=x"] {
        let path = maps[0].split('?').next().unwrap();
        site.get(&format!("{path}?{wrong}")).ends(404);
    }
    let entry = page.split("/entry/").nth(1).unwrap().split(['/', '"']).next().unwrap();
    let other = site.slab("another", "");
    site.get(&format!("/slab/{other}/entry/{entry}/map")).ends(404);
}

#[test]
fn a_slab_without_photographs_says_how_to_begin() {
    let site = Site::empty();
    let id = site.slab("bare", r#"{"happened":"2026-03-02 07:00","body":{"kind":"pour","thickness":"4 in"}}"#);
    site.get(&format!("/slab/{id}/photographs")).ends(200).holds("No photograph yet").holds("gray card");
    site.get(&format!("/slab/{id}/panels")).ends(200).holds("There is no measured panel yet");
}

#[test]
fn a_wished_color_finds_the_recipe_with_its_radius_and_the_nearest_real_panel() {
    let (site, id) = site();
    let page = site.get(&format!("/slab/{id}/panels?wish=%236e5940&by=color")).ends(200).text();
    // The wish is what panel P1 was measured as (its color in the diary of the demo).
    for part in ["Nearest recipe:", "umber", "9 of 10 panels should come out within", "The nearest real panel is P1"] {
        assert!(page.contains(part), "{part}");
    }
    assert!(page.contains("Make a panel of it before you promise it"));
    let by_panel = site.get(&format!("/slab/{id}/panels?wish_panel=P5&by=panel")).ends(200).text();
    assert!(by_panel.contains("The nearest real panel is P5, 0 from the target color"), "a panel is nearest to itself");
    let by_lab = site.get(&format!("/slab/{id}/panels?wish_l=39,4&wish_a=4.9&wish_b=17.6&by=lab")).ends(200).text();
    assert!(by_lab.contains("The nearest real panel is P1"), "a comma is a decimal point too");
}

#[test]
fn a_wrong_wish_says_what_is_accepted_and_is_not_lost() {
    let (site, id) = site();
    let page = site.get(&format!("/slab/{id}/panels?wish=red&by=color")).ends(200).text();
    assert!(page.contains("Accepted: # and six digits"));
    let page = site.get(&format!("/slab/{id}/panels?wish_l=400&wish_a=9&wish_b=15&by=lab")).ends(200).text();
    assert!(page.contains("L* 0 to 105") && page.contains("value=\"400\""));
    let page = site.get(&format!("/slab/{id}/panels?wish_panel=P99&by=panel")).ends(200).text();
    assert!(page.contains("No set of panels can answer yet"));
}

#[test]
fn the_floor_is_illustrated_alike_for_everybody_and_says_that_it_is_an_illustration() {
    let (site, id) = site();
    let page = site.get(&format!("/slab/{id}/panels")).ends(200).text();
    assert!(page.contains("The floor with panel P1"), "the approved panel, unasked");
    assert!(page.contains("Illustration of color and mottling, not of the pattern"));
    let floor = |query: &str| site.get(&format!("/slab/{id}/panels/floor.svg?{query}")).ends(200).text();
    let first = floor("panel=P1&seed=1");
    assert_eq!(first, floor("panel=p1&seed=1"), "the same seed, the same picture");
    assert_ne!(first, floor("panel=P1&seed=2"));
    assert!(first.contains("Illustration of color and mottling"), "the label goes with the drawing");
    assert!(first.contains("no panel stands for it"), "the showroom has another finish");
    let near = site.get(&format!("/slab/{id}/panels/stretch.png?panel=P1&seed=1")).ends(200);
    assert!(is_png(&near));
    assert_eq!(png_size(&near).0, 1050, "700 units, one and a half times");
    site.get(&format!("/slab/{id}/panels/floor.png?panel=P99")).ends(404);
}

#[test]
fn a_choice_begins_with_the_panel_filled_in() {
    let (site, id) = site();
    let page = site.get(&format!("/slab/{id}/panels")).ends(200).text();
    let href = texts(&page, "<a href=\"", "\"").into_iter().find(|href| href.contains("choice_approved")).unwrap();
    let form = site.get(&href.replace("&#38;", "&").replace("&amp;", "&")).ends(200).text();
    assert!(form.contains("value=\"P1\" checked") || form.contains("value=\"P1\" selected"), "{form}");
    assert!(form.contains("value=\"sealed\" checked"), "{form}");
}

#[test]
fn they_speak_spanish() {
    let (site, id) = site();
    let page = settled(&site, &format!("/slab/{id}/photographs"), SPANISH);
    for part in ["Dos reglas", "La losa se está emparejando", "un color"] {
        assert!(page.contains(part), "{part}: {page}");
    }
    let page = site.get_as(&format!("/slab/{id}/panels?wish=%236e5940&by=color"), SPANISH).ends(200).text();
    for part in ["Receta más cercana", "El panel real más cercano es P1", "Ilustración del color"] {
        assert!(page.contains(part), "{part}");
    }
    for english in ["Nearest", "panel is", "Stained", "Target"] {
        assert!(!page.contains(english), "{english}");
    }
}

/// A panel whose card nobody marked: the page says to mark it, the form shows the photograph that is kept,
/// and the correction measures it.
#[test]
fn a_card_marked_later_measures_the_photograph_that_is_kept() {
    let site = Site::empty();
    let hash = {
        let path = concat!(env!("CARGO_MANIFEST_DIR"), "/../../demo/photographs/panel-1.jpg");
        site.store.put_photograph(&std::fs::read(path).unwrap()).unwrap()
    };
    let lines = format!(
        r#"{{"happened":"2026-03-02 13:00","body":{{"kind":"panel_made","panel":"P1"}}}}
{{"happened":"2026-03-22 10:00","photographs":["{}"],"body":{{"kind":"panel_photographed","panel":"P1","state":"sealed"}}}}"#,
        hash.as_str()
    );
    let id = site.slab("later", &lines);
    let page = site.get(&format!("/slab/{id}/panels")).ends(200).text();
    assert!(page.contains("mark the gray card in its photograph"), "{page}");
    let entry =
        site.store.diary(id).unwrap().entries().find(|e| e.body.kind_name() == "panel_photographed").unwrap().id;
    let fix = format!("/slab/{id}/fix/{entry}");
    site.get(&fix).ends(200).holds(&format!("data-kept=\"/slab/{id}/photo/{}\"", hash.as_str()));
    let typed = [
        ("panel", "P1"),
        ("state", "sealed"),
        ("card", "gray_card"),
        ("card_x", "7.8"),
        ("card_y", "36"),
        ("card_w", "16.7"),
        ("card_h", "25"),
        ("panel_x", "33.3"),
        ("panel_y", "7.8"),
        ("panel_w", "60"),
        ("panel_h", "84.4"),
        ("happened", "2026-03-22 10:00"),
    ];
    site.post(&fix, &typed).ends(303);
    let diary = site.store.diary(id).unwrap();
    let corrected = diary.entries().find(|e| e.replaces == Some(entry)).expect("it is corrected");
    let told: serde_json::Value = serde_json::from_str(&corrected.to_json()).unwrap();
    // What the demo's diary holds for the same picture with the same marks.
    assert_eq!(told["body"]["lab"], serde_json::json!([39.43, 4.89, 17.61]));
    assert_eq!(told["photographs"][0], hash.as_str());
}
