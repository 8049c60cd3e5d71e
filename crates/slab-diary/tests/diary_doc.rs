//! `docs/diary.md` is what the schemas say, and every example in them is read.
//!
//! To write it anew: `UNDERFOOT_WRITE_DOCS=1 cargo test -p slab-diary --test diary_doc`.

use std::fmt::Write;

use form_schema::{Field, InputKind, Rule};
use slab_diary::body::Group;
use slab_diary::{Body, Context, Diary, Entry, EntryKind, SlabId, problems, read_lines};
use trade_facts::Trade;

const HEAD: &str = include_str!("diary_head.md");
const DOC: &str = "../../docs/diary.md";

fn context() -> Context {
    Context {
        slab: SlabId::of_name("doc"),
        zone: jiff::tz::TimeZone::UTC,
        author: "test".to_owned(),
        device: "test".to_owned(),
        noted: None,
    }
}

fn examples() -> Vec<Entry> {
    let lines: Vec<&str> = EntryKind::ALL.iter().map(|kind| kind.schema().example).collect();
    read_lines(&lines.join("\n"), &context()).expect("the examples of the schemas read")
}

fn takes(field: &Field) -> String {
    let words = |words: &[&str]| words.iter().map(|word| format!("`{word}`")).collect::<Vec<_>>().join(", ");
    match field.input {
        InputKind::Quantity(asked) => {
            let [imperial, metric] = units::UnitSystem::ALL.map(|system| asked.example(system));
            let other = if metric == imperial { String::new() } else { format!(" or `{metric}`") };
            format!("a quantity, such as `{imperial}`{other}")
        }
        InputKind::Choice(choices) | InputKind::Offered { accepted: choices, .. } => words(choices),
        InputKind::Term(list) => format!("an id of the trade facts ({list:?})").to_lowercase(),
        InputKind::Entry(kinds) => format!("the id or label of an entry: {}", words(kinds)),
        InputKind::Panel => "the name of a panel that was made".to_owned(),
        InputKind::YesNo | InputKind::Flag => "`true` or `false`".to_owned(),
        InputKind::Text { .. } => "a text".to_owned(),
        InputKind::Count { least, most } => format!("a whole number, {least} to {most}"),
        InputKind::Number(_) => "a number".to_owned(),
        InputKind::Money => "a decimal text, such as `120.50`".to_owned(),
        InputKind::Currency => "a code of ISO 4217, such as `USD`".to_owned(),
        InputKind::TimeZone => "a name such as `America/Chicago`".to_owned(),
        InputKind::Mix => "a list of `{\"stain\": …, \"parts\": …}`".to_owned(),
        InputKind::Lab => "three numbers, CIELAB (D65, 2°)".to_owned(),
        InputKind::Named { .. } | InputKind::Texts | InputKind::File => unreachable!("no kind of entry asks so"),
        InputKind::PictureBox(_) => "`{\"x\": …, \"y\": …, \"w\": …, \"h\": …}` in percent of the picture".to_owned(),
    }
}

fn doc() -> String {
    let mut doc = HEAD.trim_end().to_owned();
    for group in Group::ALL {
        let _ = writeln!(doc, "\n\n## Kinds: {}", group.name());
        for kind in EntryKind::ALL.iter().filter(|kind| kind.schema().group == group) {
            let schema = kind.schema();
            let _ = write!(doc, "\n### `{}`\n```jsonl\n{}\n```\n", kind.name(), schema.example);
            for field in schema.fields {
                let left_out = |rule: &Rule| matches!(rule, Rule::MayBeLeftOut(names) if names.contains(&field.name));
                let required = field.required() && !schema.rules.iter().any(left_out);
                let need = if required { ", required" } else { "" };
                let _ = writeln!(doc, "- `{}`{need}: {}", field.name, takes(field));
            }
        }
    }
    doc.trim_end().to_owned() + "\n"
}

#[test]
#[expect(clippy::disallowed_methods, reason = "a person asks for the page to be written")]
fn the_page_is_what_the_schemas_say() {
    let doc = doc();
    if std::env::var("UNDERFOOT_WRITE_DOCS").is_ok() {
        std::fs::write(DOC, &doc).expect("the page can be written");
    }
    let written = std::fs::read_to_string(DOC).expect("the page is there");
    assert!(written == doc, "write it anew: UNDERFOOT_WRITE_DOCS=1 cargo test -p slab-diary --test diary_doc");
}

#[test]
fn every_kind_has_its_own_example() {
    let kinds: Vec<Option<EntryKind>> = examples().iter().map(|entry| entry.body.kind()).collect();
    assert_eq!(kinds, EntryKind::ALL.iter().copied().map(Some).collect::<Vec<_>>());
}

#[test]
fn an_entry_written_and_read_again_is_the_same_to_the_letter() {
    for entry in examples() {
        let text = entry.to_json();
        let again = Entry::from_json(&text).expect("its own text reads");
        assert_eq!(again, entry);
        assert_eq!(again.to_json(), text);
    }
}

#[test]
fn the_examples_fit_their_diary() {
    let now = "2026-06-01T00:00:00Z".parse().expect("a moment");
    let found = problems(&Diary::new(), &examples(), Trade::built_in(), now);
    assert!(found.is_empty(), "{found:#?}");
}

/// What a page refuses, a written line and the command line refuse too: there is one check.
#[test]
fn nothing_is_written_in_nobodys_name() {
    for body in [
        r#"{"kind":"hold_released","hold_point":"membrane","by":"","reason":""}"#,
        r#"{"kind":"hold_released","hold_point":"membrane","by":" ","reason":"dry"}"#,
        r#"{"kind":"site_check"}"#,
        r#"{"kind":"note","text":"  "}"#,
        r#"{"kind":"accepted","of":"0190a8f0-7c1e-7b3a-9c51-0d6e3b9a7f10","by":"","reason":"it may show"}"#,
    ] {
        let raw = serde_json::value::RawValue::from_string(body.to_owned()).expect("JSON");
        assert!(Body::read(&raw, slab_diary::SCHEMA).is_err(), "{body}");
    }
}
