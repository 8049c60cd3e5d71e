//! Recipes and illustrations on the command line, over the demo's panels.

#![allow(clippy::unwrap_used, reason = "a test may stop")]

mod common;

use common::{Ran, Site};
use serde_json::Value;

const AT: [&str; 2] = ["--at", "2026-03-27T08:00"];

fn demo() -> Site {
    let site = Site::empty();
    site.run(&["demo", "--dir", "data"]).ends(0);
    site
}

fn run(site: &Site, args: &[&str]) -> Ran {
    let all: Vec<&str> = args.iter().chain(&AT).copied().collect();
    site.run(&all)
}

/// The diary of the demo carries the colors that its photographs measure: nothing was typed by hand.
#[test]
fn the_demos_colors_are_those_of_its_photographs() {
    let lines = std::fs::read_to_string(common::repository("demo/slab.jsonl")).unwrap();
    let site = Site::empty();
    let mut measured = 0;
    for line in lines.lines().filter(|line| line.contains("\"panel_photographed\"")) {
        let entry: Value = serde_json::from_str(line).unwrap();
        let hash = entry["photographs"][0].as_str().unwrap();
        let file = std::fs::read_dir(common::repository("demo/photographs"))
            .unwrap()
            .map(|f| f.unwrap().path())
            .find(|path| slab_diary::PhotoHash::of(&std::fs::read(path).unwrap()).as_str() == hash);
        let file = file.expect("a photograph of the demo has this hash").display().to_string();
        // 900 by 640 pixels; the panel is measured without a twentieth on each side.
        let px = |part: &Value, size: f64| (part.as_f64().unwrap() / 100.0 * size).round() as u32;
        let boxed = |name: &str| {
            ["x", "y", "w", "h"]
                .map(|side| px(&entry["body"][name][side], if matches!(side, "x" | "w") { 900.0 } else { 640.0 }))
        };
        let [x, y, w, h] = boxed("panel_box");
        let (inner_w, inner_h) = ((f64::from(w) * 0.9) as u32, (f64::from(h) * 0.9) as u32);
        let area = format!("{},{},{inner_w},{inner_h}", x + (w - inner_w) / 2, y + (h - inner_h) / 2);
        let card = boxed("card_box").map(|n| n.to_string()).join(",");
        let seen = site.run(&["photo", "color", &file, "--card", &card, "--area", &area, "--json"]).ends(0).json();
        for at in 0..3 {
            let (told, is) = (entry["body"]["lab"][at].as_f64().unwrap(), seen["lab"][at].as_f64().unwrap());
            assert!((told - is).abs() <= 0.0051, "{file}: {told} {is}");
        }
        measured += 1;
    }
    assert_eq!(measured, 8);
}

#[test]
fn without_a_wish_it_tells_the_sets_and_what_they_can_answer() {
    let site = demo();
    let sets = run(&site, &["recipe", "--json"]).ends(0).json();
    assert_eq!(sets["sets"].as_array().unwrap().len(), 1);
    let set = &sets["sets"][0];
    assert_eq!(set["state"], "sealed");
    assert_eq!(set["stains"], serde_json::json!(["umber", "slate"]));
    assert_eq!(set["used"].as_array().unwrap().len(), 7);
    assert_eq!(set["bare_from"], "same-state");
    assert_eq!(set["model"]["no_radius"], Value::Null);
    assert_eq!(sets["answer"], Value::Null);
    assert!(run(&site, &["recipe"]).ends(0).out.contains("Panel P5: slate; 1 part of water to 1 of stain; 2 coats"));
}

#[test]
fn a_panels_own_color_is_answered_by_its_own_recipe() {
    let site = demo();
    let answer = run(&site, &["recipe", "--wish", "p5", "--json"]).ends(0).json();
    let best = &answer["answer"]["best"];
    assert_eq!(best["recipe"], serde_json::json!({"share_of_stain": {"slate": 1}, "water_parts": 1.0, "coats": 2}));
    assert_eq!(answer["answer"]["within_reach"], true);
    assert_eq!(answer["answer"]["nearest_panel"], serde_json::json!({"panel": "P5", "difference_de00": 0}));
    assert!(best["radius_90_de00"].as_f64().unwrap() > 0.5);
    let again = run(&site, &["recipe", "--wish", "P5", "--json"]).ends(0).json();
    assert_eq!(again, answer, "the same question has the same answer");
}

#[test]
fn a_color_out_of_reach_is_no_and_says_so() {
    let site = demo();
    let said = run(&site, &["recipe", "--wish", "#1f6f8a"]).ends(1).out;
    assert!(said.contains("No recipe that was tried comes near enough"), "{said}");
}

#[test]
fn a_wish_that_is_none_says_what_is_accepted() {
    let site = demo();
    for wish in ["red", "42, 9", "#12345", "400, 0, 0"] {
        let said = run(&site, &["recipe", "--wish", wish]).ends(2).err;
        assert!(said.contains("--wish"), "{wish}: {said}");
        assert!(said.contains("accepted"), "{wish}: {said}");
    }
}

#[test]
fn a_slab_without_panels_says_what_is_missing() {
    let site = Site::empty();
    site.run(&["new", "Bare"]).ends(0);
    assert!(site.run(&["recipe"]).ends(1).out.contains("There is no measured panel yet"));
    assert!(site.run(&["recipe", "--wish", "#6d5c46"]).ends(3).err.contains("no set of panels"));
}

#[test]
fn the_floor_is_written_as_drawing_and_picture_with_its_label() {
    let site = demo();
    let args = ["preview", "--panel", "P1", "--svg", "floor.svg", "--png", "floor.png", "--json"];
    let told = run(&site, &args).ends(0).json();
    assert_eq!(told["zones"], serde_json::json!(["shop", "hall"]));
    assert_eq!((told["scale_from"].as_str(), told["illustration_only"].as_bool()), (Some("marked"), Some(true)));
    let svg = std::fs::read_to_string(site.path("floor.svg")).unwrap();
    assert!(svg.contains("Illustration of color and mottling, not of the pattern"));
    let png = std::fs::read(site.path("floor.png")).unwrap();
    assert!(png.starts_with(b"\x89PNG\r\n") && png.len() > 100_000);
    assert!(run(&site, &["preview", "--panel", "P9", "--png", "x.png"]).ends(2).err.contains("P1, P2"));
    assert!(run(&site, &["preview", "--panel", "P1"]).ends(2).err.contains("--svg FILE"));
}
