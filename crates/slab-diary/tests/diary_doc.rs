//! Every example line of `docs/diary.md` is read, and every kind of entry has one.

use std::collections::BTreeSet;

use slab_diary::{Body, Context, Entry, SlabId, read_lines};

fn examples() -> String {
    let doc = include_str!("../../../docs/diary.md");
    let mut lines = String::new();
    let mut inside = false;
    for line in doc.lines() {
        match line {
            "```jsonl" => inside = true,
            "```" => inside = false,
            _ if inside => {
                lines.push_str(line);
                lines.push('\n');
            }
            _ => {}
        }
    }
    lines
}

fn context() -> Context {
    Context {
        slab: SlabId::of_name("doc"),
        zone: jiff::tz::TimeZone::UTC,
        author: "test".to_owned(),
        device: "test".to_owned(),
        noted: None,
    }
}

#[test]
fn every_kind_has_an_example_that_reads() {
    let entries = read_lines(&examples(), &context()).expect("the examples of the documentation read");
    let shown: BTreeSet<&str> = entries.iter().map(|e| e.body.kind()).collect();
    let known: BTreeSet<&str> = Body::KINDS.iter().copied().collect();
    assert_eq!(shown, known);
}

#[test]
fn an_entry_written_and_read_again_is_the_same_to_the_letter() {
    for entry in read_lines(&examples(), &context()).expect("the examples of the documentation read") {
        let text = entry.to_json();
        let again = Entry::from_json(&text).expect("its own text reads");
        assert_eq!(again, entry);
        assert_eq!(again.to_json(), text);
    }
}

#[test]
fn the_examples_are_without_complaint() {
    let diary = slab_diary::Diary::new();
    let entries = read_lines(&examples(), &context()).expect("the examples of the documentation read");
    let now = "2026-06-01T00:00:00Z".parse().expect("a moment");
    let found = slab_diary::complaints(&diary, &entries, trade_facts::Trade::built_in(), now);
    assert!(found.is_empty(), "{found:#?}");
}
