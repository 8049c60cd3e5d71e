//! One-tap answers.

use form_schema::{FieldErrorKind, FormData, InputKind};
use serde_json::{Value, json};
use slab_diary::{Context, SlabId};
use trade_facts::Trade;
use units::UnitSystem;

use crate::support::{form, forms, read_body};

/// What a form needs besides its preset.
fn besides(kind: &str) -> FormData {
    match kind {
        "retest" => [("of", "0190a8f0-7c1e-7b3a-9c51-0d6e3b9a7f10")].into_iter().collect(),
        _ => FormData::new(),
    }
}

#[test]
fn every_preset_reads_to_a_body_without_complaint() {
    let mut read = 0;
    for form in forms() {
        for preset in form.presets {
            for (input, value) in preset.sets {
                let field = form.form().field_of_input(input).unwrap_or_else(|| panic!("{}.{input}", form.kind.name()));
                if let InputKind::Choice(values) = field.input {
                    assert!(values.contains(value), "{}.{input} {value}", form.kind.name());
                }
            }
            let mut typed = besides(form.kind.name());
            typed.set("preset", preset.name);
            let body = read_body(form, &typed, UnitSystem::Imperial)
                .unwrap_or_else(|m| panic!("{} {}: {m:?}", form.kind.name(), preset.name));
            let line = json!({"happened": "2026-03-12", "body": body}).to_string();
            let context = Context {
                slab: SlabId::of_name("presets"),
                zone: jiff::tz::TimeZone::UTC,
                author: "test".to_owned(),
                device: "test".to_owned(),
                noted: None,
            };
            let entries = slab_diary::read_lines(&line, &context).unwrap();
            let now = "2026-06-01T00:00:00Z".parse().unwrap();
            let found = slab_diary::problems(&slab_diary::Diary::new(), &entries, Trade::built_in(), now);
            assert!(form.kind.name() == "retest" || found.is_empty(), "{found:?}");
            read += 1;
        }
    }
    assert_eq!(read, PRESETS);
}

const PRESETS: usize = 54;

#[test]
fn a_preset_replaces_what_it_sets_and_leaves_the_rest() {
    let drop = form("water_drop").unwrap();
    let of = "0190a8f0-7c1e-7b3a-9c51-0d6e3b9a7f10";
    let typed: FormData =
        [("preset", "soaked_30_s"), ("soaked_in", "soon"), ("still_stood_after", "10"), ("beads", "yes"), ("of", of)]
            .into_iter()
            .collect();
    let body = read_body(drop, &typed, UnitSystem::Metric).unwrap();
    assert_eq!(Value::Object(body), json!({"kind": "water_drop", "soaked_in": "30 s", "of": of}));
}

#[test]
fn an_unknown_preset_is_a_mistake() {
    let typed: FormData = [("preset", "9")].into_iter().collect();
    let mistakes = read_body(form("scrape").unwrap(), &typed, UnitSystem::Metric).unwrap_err();
    assert!(
        mistakes
            .iter()
            .any(|m| m.field == "preset" && matches!(m.what, FieldErrorKind::NotAChoice(_)) && m.typed == "9")
    );
}

#[test]
fn what_is_done_kneeling_is_one_tap_or_one_line_away() {
    let quick: Vec<&str> = forms().iter().filter(|f| f.quick).map(|f| f.kind.name()).collect();
    for kind in [
        "water_drop",
        "scrape",
        "incident",
        "slab_photograph",
        "color_look",
        "surface_ph",
        "slab_humidity",
        "air_reading",
        "survey",
        "acid_drop",
        "note",
        "cover",
        "cleaning",
        "defect",
        "site_check",
    ] {
        assert!(quick.contains(&kind), "{kind}");
    }
    for kind in ["water_drop", "scrape", "incident", "color_look", "surface_ph", "survey", "acid_drop"] {
        assert!(!form(kind).unwrap().presets.is_empty(), "{kind}");
    }
    // Water, eyewash, waste plan and data sheets are four answers: nobody says all of them in one tap.
    assert!(form("site_check").unwrap().presets.is_empty());
}
