//! Every example of the schemas goes into its form and comes back the same.

use slab_diary::{Body, Context, Entry, EntryKind, SlabId, read_lines, read_place};
use units::UnitSystem;

use crate::support::{form, read_body, typed_from};

/// The examples of the schemas, read as the command line reads them.
fn examples() -> Vec<Entry> {
    let lines: Vec<&str> = EntryKind::ALL.iter().map(|kind| kind.schema().example).collect();
    let context = Context {
        slab: SlabId::of_name("doc"),
        zone: jiff::tz::TimeZone::UTC,
        author: "test".to_owned(),
        device: "test".to_owned(),
        noted: None,
    };
    read_lines(&lines.join("\n"), &context).expect("the examples of the schemas read")
}

#[test]
fn every_example_fills_its_form_and_reads_back_equal() {
    let mut checked = 0;
    for entry in examples().iter().filter(|e| form(e.body.kind_name()).is_some()) {
        for unit_system in UnitSystem::ALL {
            let form = form(entry.body.kind_name()).expect("every kind but those has a form");
            let typed = typed_from(&entry.body, entry.place.as_ref());
            let body = read_body(form, &typed, unit_system).unwrap_or_else(|m| panic!("{}: {m:?}", form.kind.name()));
            let raw = serde_json::value::to_raw_value(&body).unwrap();
            assert_eq!(Body::read(&raw, slab_diary::SCHEMA).unwrap(), entry.body);
            let place = read_place(&typed, unit_system).unwrap();
            assert_eq!(place, entry.place.as_ref().map(|p| serde_json::to_value(p).unwrap()));
            checked += 1;
        }
    }
    assert_eq!(checked, 2 * 46);
}
