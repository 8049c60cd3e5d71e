//! Every example of `docs/diary.md` goes into its form and comes back the same.

use forms::{OWN_SCREEN, form, forms, read_body, read_place, typed_from};
use localization::UnitSystem;
use slab_diary::body::Body;
use slab_diary::{Context, Entry, SlabId, read_lines};

/// The examples of the documentation, read as the command line reads them.
pub(crate) fn examples() -> Vec<Entry> {
    let doc = include_str!("../../../../docs/diary.md");
    let blocks = doc.split("```jsonl\n").skip(1).filter_map(|rest| rest.split("```").next());
    let context = Context {
        slab: SlabId::of_name("doc"),
        zone: jiff::tz::TimeZone::UTC,
        author: "test".to_owned(),
        device: "test".to_owned(),
        noted: None,
    };
    read_lines(&blocks.collect::<String>(), &context).expect("the examples of the documentation read")
}

#[test]
fn every_kind_has_a_form_or_a_screen_of_its_own() {
    let listed: Vec<&str> = forms().iter().map(|f| f.kind).collect();
    let expected: Vec<&str> = Body::KINDS.iter().copied().filter(|k| !OWN_SCREEN.contains(k)).collect();
    assert_eq!(listed, expected);
    assert!(OWN_SCREEN.iter().all(|kind| Body::KINDS.contains(kind) && form(kind).is_none()));
}

#[test]
fn every_example_fills_its_form_and_reads_back_equal() {
    let mut checked = 0;
    for entry in examples().iter().filter(|e| !OWN_SCREEN.contains(&e.body.kind())) {
        for unit_system in UnitSystem::ALL {
            let form = form(entry.body.kind()).expect("every kind but those has a form");
            let typed = typed_from(&entry.body, entry.place.as_ref());
            let body = read_body(form, &typed, unit_system).unwrap_or_else(|m| panic!("{}: {m:?}", form.kind));
            let raw = serde_json::value::to_raw_value(&body).unwrap();
            assert_eq!(Body::read(&raw, slab_diary::SCHEMA).unwrap(), entry.body);
            let place = read_place(&typed, unit_system).unwrap();
            assert_eq!(place, entry.place.as_ref().map(|p| serde_json::to_value(p).unwrap()));
            checked += 1;
        }
    }
    assert_eq!(checked, 2 * 45);
}
