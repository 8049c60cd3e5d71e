//! The map of the slab on the command line, over the demo.

#![allow(clippy::unwrap_used, reason = "a test may stop")]

mod common;

use common::{Ran, Site};

const AT: [&str; 2] = ["--at", "2026-03-27T08:00"];

fn run(site: &Site, args: &[&str]) -> Ran {
    let all: Vec<&str> = args.iter().chain(&AT).copied().collect();
    site.run(&all)
}

fn demo() -> Site {
    let site = Site::empty();
    site.run(&["demo", "--dir", "data"]).ends(0);
    site
}

#[test]
fn it_tells_what_every_place_is_and_what_that_rests_on() {
    let site = demo();
    let map = run(&site, &["map", "--json", "--cells"]).ends(1).json();
    // 6 ft of the strip of chalk are not in it: 30 ft by 1 ft over the shop's 896 ft² is 3.35 %.
    let shop = &map["zones"][0];
    assert_eq!(shop["zone"], "shop");
    assert_eq!(shop["shares"][0]["ground"]["what"], "red-chalk");
    assert!((shop["shares"][0]["share_pct"].as_f64().unwrap() - 100.0 * 30.0 / 896.0).abs() < 0.02, "{shop}");
    let sum: f64 = shop["shares"].as_array().unwrap().iter().map(|s| s["share_pct"].as_f64().unwrap()).sum();
    assert!((sum - 100.0).abs() < 0.01, "{sum}");
    // Shop and hall are one finish of one pour; the showroom has another finish.
    assert_eq!(map["bays"][0]["zones"], serde_json::json!(["shop", "hall"]));
    assert_eq!(map["bays"][0]["drops"].as_array().unwrap().len(), 12);
    assert_eq!(map["bays"][0]["field"]["left_out"]["timed"], 12);
    assert!(map["bays"][1]["field"]["refused"].as_str().unwrap().contains("give at least 6"));
    assert_eq!(map["bays"][1]["water_stands_at_every_drop"], true);
    // Saw cuts at 15, 30 and 39 ft, and at 15 ft across: eight sections.
    assert_eq!(map["sections"].as_array().unwrap().len(), 8);
    // The cells are the slab.
    let cell = map["cell_m"].as_f64().unwrap();
    let area = cell * cell * map["cells"].as_array().unwrap().len() as f64;
    assert!((area * 10.763_910_4 - 1436.7).abs() < 15.0, "{area}");
    for next in map["next"].as_array().unwrap() {
        assert!(next["teaches"]["settles_m2"].as_f64().unwrap() > 0.0, "{next}");
    }
}

#[test]
fn it_speaks_both_languages_and_draws() {
    let site = demo();
    let said = run(&site, &["map", "--svg", "map.svg", "--png", "map.png"]).ends(1).out;
    for part in ["Red or black chalk lines, untreated", "100 % water stands", "Wrote map.png"] {
        assert!(said.contains(part), "{part}: {said}");
    }
    assert!(std::fs::read_to_string(site.path("map.svg")).unwrap().contains("data-layer-of=\"absorbency\""));
    assert!(std::fs::read(site.path("map.png")).unwrap().starts_with(b"\x89PNG\r\n"));
    let said = run(&site, &["map", "--lang", "es"]).ends(1).out;
    assert!(said.contains("sin tratar") && !said.contains("untreated"), "{said}");
}

#[test]
fn a_slab_that_is_not_drawn_has_no_map() {
    let site = Site::empty();
    site.run(&["new", "Bare"]).ends(0);
    assert!(site.run(&["map"]).ends(3).err.contains("accepted: a plan with an outline"));
}
