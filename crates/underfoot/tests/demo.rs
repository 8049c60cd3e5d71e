//! The demo shows the main job from its files, the same on every day and at every run.

#![allow(clippy::unwrap_used, reason = "a test may stop")]

mod common;

use std::collections::BTreeSet;

use common::{Ran, Site, state};
use serde_json::Value;

const HOLD_POINTS: [&str; 11] = [
    "absorbency",
    "age",
    "air",
    "contamination",
    "membrane",
    "moisture",
    "panel",
    "reaction",
    "repairs",
    "site",
    "surface_ph",
];

/// Builds the demo where the other commands of the site look.
fn demo(site: &Site, more: &[&str]) -> Ran {
    let args: Vec<&str> = ["demo", "--dir", "data"].iter().chain(more).copied().collect();
    site.run(&args).ends(0)
}

/// Standing, order, and the papers where it says they are.
fn assert_shows_the_main_job(site: &Site, shown: &str) {
    for part in ["On hold: ", "hold points are open", "What to buy for ", "Reactive stain", "Waste water to collect"] {
        assert!(shown.contains(part), "{part}: {shown}");
    }
    let written: Vec<&str> = shown.lines().filter_map(|line| line.strip_prefix("Wrote ")).collect();
    assert_eq!(written.len(), 3, "the pour sheet in two languages and the site notice: {written:?}");
    for file in written {
        assert!(std::fs::read(site.path(file)).unwrap().starts_with(b"%PDF-"), "{file}");
    }
}

#[test]
fn it_shows_the_main_job_and_a_second_run_adds_nothing_and_says_the_same() {
    let site = Site::empty();
    let first = demo(&site, &[]);
    assert_shows_the_main_job(&site, &first.out);
    // Every line of the diary file, and the weather file as one entry.
    let lines = std::fs::read_to_string(common::repository("demo/slab.jsonl")).unwrap();
    let expected = lines.lines().filter(|line| !line.trim().is_empty()).count() as u64 + 1;
    assert_eq!(site.entries(), expected);
    assert_eq!(demo(&site, &[]).out, first.out);
    assert_eq!(site.entries(), expected);
}

#[test]
fn it_speaks_spanish() {
    let site = Site::empty();
    let shown = demo(&site, &["--lang", "es"]).out;
    for part in ["Alto: ", "puntos de espera", "27 de marzo de 2026", "Tinte reactivo"] {
        assert!(shown.contains(part), "{part}: {shown}");
    }
    for english in ["On hold", "hold points", "March", "Reactive stain", "What to buy"] {
        assert!(!shown.contains(english), "{english}: {shown}");
    }
}

/// What the scenario was written to show: a cold cure, an oil spill, a chalk line, a tight-troweled bay
/// whose finish no panel has, a zone short of tests, no eyewash.
#[test]
fn its_standing_has_eleven_hold_points_that_rest_on_entries_of_the_diary() {
    let site = Site::empty();
    demo(&site, &[]);
    let standing = site.run(&["ready", "--at", "2026-03-27T08:00", "--json"]).ends(1).json();
    assert_eq!(standing["overall"]["state"], "held");
    assert!(!standing["overall"]["sentence"].as_str().unwrap().is_empty());
    let points = standing["hold_points"].as_array().unwrap();
    let ids: BTreeSet<&str> = points.iter().map(|point| point["id"].as_str().unwrap()).collect();
    assert_eq!(ids, BTreeSet::from(HOLD_POINTS));
    assert_eq!(points.len(), HOLD_POINTS.len());
    for (id, expected) in [
        ("age", "released"),
        ("absorbency", "held"),
        ("contamination", "held"),
        ("membrane", "cant_tell"),
        ("panel", "held"),
        ("site", "held"),
    ] {
        assert_eq!(state(&standing, id), expected, "{id}");
    }
    let told = site.run(&["diary", "--json", "--all"]).ends(0).json_lines();
    let diary: BTreeSet<&str> = told.iter().map(|entry| entry["id"].as_str().unwrap()).collect();
    points.iter().for_each(|point| complete(point, &diary));
    let evidence: usize = points.iter().map(|point| point["evidence"].as_array().unwrap().len()).sum();
    assert!(evidence > 20, "{evidence}");
}

/// Every field is there and says something; what is open has a next action with its minutes.
fn complete(point: &Value, diary: &BTreeSet<&str>) {
    let id = point["id"].as_str().unwrap();
    let state = point["state"].as_str().unwrap();
    assert!(["released", "held", "unproven", "cant_tell"].contains(&state), "{id}: {state}");
    let why = point["why"].as_array().unwrap();
    assert!(!why.is_empty() && why.iter().all(|reason| !reason.as_str().unwrap().trim().is_empty()), "{id}");
    for entry in point["evidence"].as_array().unwrap() {
        assert!(diary.contains(entry.as_str().unwrap()), "{id}: {entry} is not in the diary");
    }
    if state == "released" {
        assert!(point["next_action"].is_null() && point["minutes"].is_null(), "{id}");
    } else {
        assert!(!point["next_action"].as_str().unwrap().trim().is_empty(), "{id}");
        let hours = point["wait_hours"].as_u64().unwrap();
        assert!(point["minutes"].as_u64().unwrap() > 0 || hours > 0, "{id}: what is only waited for takes hours");
    }
    assert!(point["source"].is_string(), "{id}");
    assert!(!point["grade"].as_str().unwrap().trim().is_empty(), "{id}");
}

/// Everything the program can tell is also JSON.
#[test]
fn it_answers_as_json_when_asked() {
    let shown = demo(&Site::empty(), &["--json"]);
    assert!(serde_json::from_str::<Value>(&shown.out).is_ok(), "no JSON: {}", shown.out);
}
