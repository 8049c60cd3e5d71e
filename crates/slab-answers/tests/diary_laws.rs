//! The laws of the diary, each named by the law.

use proptest::prelude::*;
use slab_answers::standing::standing;
use slab_diary::fold;
use slab_diary::{Body, Context, Diary, Entry, EntryError, EntryId, Knowledge, SCHEMA, SlabId, read_lines};
use trade_facts::Trade;
use uuid::Uuid;

const BODIES: &[&str] = &[
    r#"{"kind":"job_opened","name":"law","time_zone":"America/Chicago"}"#,
    r#"{"kind":"plan","outline":{"area":"900 ft2"}}"#,
    r#"{"kind":"pour","mix":"A","thickness":"4 in"}"#,
    r#"{"kind":"curing","method":"membrane"}"#,
    r#"{"kind":"curing","method":"wet_covers"}"#,
    r#"{"kind":"cured"}"#,
    r#"{"kind":"water_drop","soaked_in":"45 s"}"#,
    r#"{"kind":"water_drop","still_stood_after":"12 min"}"#,
    r#"{"kind":"scrape","result":"powder"}"#,
    r#"{"kind":"scrape","result":"curl"}"#,
    r#"{"kind":"cleaning","method":"stripper"}"#,
    r#"{"kind":"survey"}"#,
    r#"{"kind":"surface_ph","ph":"11"}"#,
    r#"{"kind":"sealer_chosen","sealer":"epoxy-solid"}"#,
    r#"{"kind":"slab_humidity","humidity":"74 %","depth":"1.6 in","equilibrated":"24 h"}"#,
    r#"{"kind":"site_check","water":true,"eyewash":true,"waste_plan":true,"data_sheets":true}"#,
    r#"{"kind":"temperature","slab":"45 °F"}"#,
    r#"{"kind":"hold_released","hold_point":"membrane","by":"the owner","reason":"seen"}"#,
];

const MARCH: i64 = 1_772_500_000;

fn entry(number: u128, body: usize, happened: u32, noted: u32, replaces: Option<u128>) -> Entry {
    let at = |hours: u32| jiff::Timestamp::from_second(MARCH + i64::from(hours) * 3600).expect("in range").to_string();
    let replaces = replaces.map_or(String::new(), |id| format!(r#","replaces":"{}""#, Uuid::from_u128(id)));
    let text = format!(
        r##"{{"id":"{}","slab":"{}","happened":"{}","noted":"{}","author":"a","device":"d","schema":1{replaces},"body":{}}}"##,
        Uuid::from_u128(number),
        SlabId::of_name("law"),
        at(happened),
        at(happened + noted),
        BODIES[body]
    );
    Entry::from_json(&text).expect("a well formed entry")
}

prop_compose! {
    fn entries()(seeds in prop::collection::vec(
        (0..BODIES.len(), 0u32..1500, 0u32..400, prop::option::weighted(0.3, 0u128..40)), 1..40,
    )) -> Vec<Entry> {
        seeds.into_iter().enumerate()
            .map(|(n, (body, happened, noted, replaces))| {
                entry(n as u128 + 1, body, happened, noted, replaces.map(|r| r % (n as u128 + 1)))
            })
            .collect()
    }
}

fn moment(hours: u32) -> jiff::Timestamp {
    jiff::Timestamp::from_second(MARCH + i64::from(hours) * 3600).expect("in range")
}

fn add_all(entries: &[Entry]) -> Diary {
    let mut diary = Diary::new();
    for entry in entries {
        diary.add(entry.clone()).expect("ids are unique");
    }
    diary
}

fn merged(a: &Diary, b: &Diary) -> Diary {
    let mut both = a.clone();
    both.merge(b).expect("no clash");
    both
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(64))]

    #[test]
    fn fold_ignores_arrival_order(
        (entries, shuffled) in entries().prop_flat_map(|e| (Just(e.clone()), Just(e).prop_shuffle())),
        at in 0u32..2000,
    ) {
        let (a, b) = (add_all(&entries), add_all(&shuffled));
        for knowledge in [Knowledge::noted_by(moment(at)), Knowledge::happened_by(moment(at))] {
            prop_assert_eq!(standing(&a, Trade::built_in(), knowledge), standing(&b, Trade::built_in(), knowledge));
        }
    }

    #[test]
    fn merge_is_commutative_associative_and_idempotent(entries in entries(), cut in 0usize..40, cut2 in 0usize..40) {
        let (i, j) = (cut.min(entries.len()), cut2.min(entries.len()));
        // Overlapping parts, as two phones have them.
        let (a, b, c) = (add_all(&entries[..i]), add_all(&entries[i.min(j)..]), add_all(&entries[..j]));
        prop_assert_eq!(merged(&a, &b), merged(&b, &a));
        prop_assert_eq!(merged(&merged(&a, &b), &c), merged(&a, &merged(&b, &c)));
        prop_assert_eq!(merged(&a, &a), a.clone());
        let all = merged(&merged(&a, &b), &c);
        for entry in &entries {
            prop_assert_eq!(all.get(entry.id), Some(entry));
        }
    }

    #[test]
    fn replaying_changes_nothing(entries in entries()) {
        let diary = add_all(&entries);
        let mut again = diary.clone();
        for entry in &entries {
            prop_assert_eq!(again.add(entry.clone()), Ok(false));
        }
        prop_assert_eq!(again, diary);
    }

    #[test]
    fn a_past_answer_uses_only_what_was_noted_by_then(entries in entries(), at in 0u32..2000) {
        let known: Vec<Entry> =
            entries.iter().filter(|e| e.noted.instant() <= moment(at)).cloned().collect();
        let knowledge = Knowledge::noted_by(moment(at));
        prop_assert_eq!(
            standing(&add_all(&entries), Trade::built_in(), knowledge),
            standing(&add_all(&known), Trade::built_in(), knowledge)
        );
    }

    #[test]
    fn evidence_is_never_invented(entries in entries(), at in 0u32..2000) {
        let diary = add_all(&entries);
        for knowledge in [Knowledge::noted_by(moment(at)), Knowledge::happened_by(moment(at))] {
            let slab = fold(&diary, knowledge);
            for id in standing(&diary, Trade::built_in(), knowledge).hold_points.iter().flat_map(|h| &h.evidence) {
                prop_assert!(slab.entries().iter().any(|e| e.id == *id), "{} is not a standing entry", id);
            }
        }
    }

    #[test]
    fn of_a_family_of_corrections_exactly_the_last_noted_stands(entries in entries()) {
        let diary = add_all(&entries);
        let end = moment(4000);
        let slab = fold(&diary, Knowledge::noted_by(end));
        for entry in &entries {
            let stands = slab.entries().iter().any(|e| e.id == entry.id);
            match slab.corrected_by(entry.id) {
                Some(by) => {
                    prop_assert!(!stands);
                    prop_assert!(slab.entries().iter().any(|e| e.id == by), "what corrects it stands");
                    let by = diary.get(by).expect("in the diary");
                    prop_assert!((by.noted.instant(), by.id) > (entry.noted.instant(), entry.id));
                }
                None => prop_assert!(stands),
            }
        }
    }

    #[test]
    fn a_clash_of_contents_is_refused_and_changes_nothing(entries in entries(), other in 0..BODIES.len()) {
        let mut diary = add_all(&entries);
        let before = diary.clone();
        let mut forged = entries[0].clone();
        forged.body = entry(1, other, 0, 0, None).body;
        forged.author = "someone else".to_owned();
        prop_assert!(diary.add(forged.clone()).is_err());
        prop_assert!(diary.merge(&add_all(&[forged])).is_err());
        prop_assert_eq!(diary, before);
    }
}

fn context() -> Context {
    Context {
        slab: SlabId::of_name("law"),
        zone: jiff::tz::TimeZone::UTC,
        author: "a".to_owned(),
        device: "d".to_owned(),
        noted: None,
    }
}

#[test]
fn a_body_from_a_newer_program_is_kept_byte_for_byte() {
    let raw = r#"{ "kind" : "sun_chart",  "angle": 1.50, "list":[1,2 , 3],"kind2":"\u00f1" }"#;
    let text = entry(1, 6, 0, 0, None).to_json();
    let newer = text.replace("\"schema\":1", &format!("\"schema\":{}", SCHEMA + 1)).replace(BODIES[6], raw);
    let read = Entry::from_json(&newer).expect("a newer entry is no error");
    assert!(matches!(&read.body, Body::Unknown(body) if body.kind == "sun_chart" && body.raw.get() == raw));
    assert!(read.to_json().contains(raw), "{}", read.to_json());
    let through_a_file = read_lines(&newer, &context()).expect("a newer line is no error");
    assert!(through_a_file[0].to_json().contains(raw), "{}", through_a_file[0].to_json());
    let ours = text.replace(BODIES[6], raw);
    let error = Entry::from_json(&ours).expect_err("in our own form an unknown kind is a mistake").to_string();
    assert!(error.contains("sun_chart") && error.contains("water_drop"), "{error}");
}

#[test]
fn a_known_kind_with_newer_fields_is_kept_byte_for_byte_too() {
    let raw = r#"{"kind":"scrape","result":"powder","blade":"carbide"}"#;
    let text = entry(1, 8, 0, 0, None).to_json().replace(BODIES[8], raw);
    assert!(Entry::from_json(&text).is_err(), "in our own form an unknown field is a mistake");
    let newer = text.replace("\"schema\":1", "\"schema\":2");
    let read = Entry::from_json(&newer).expect("a newer entry is no error");
    assert!(read.to_json().contains(raw));
}

#[test]
fn reading_a_file_twice_gives_the_same_ids_and_equal_lines_are_one() {
    let line = r#"{"happened":"2026-03-02 07:00","body":{"kind":"water_drop","soaked_in":"45 s"}}"#;
    // The same again, its fields in another order and with other blanks; and another drop.
    let turned = r#"{ "body": {"soaked_in":"45 s","kind":"water_drop"}, "happened":"2026-03-02 07:00"}"#;
    let other = line.replace("45 s", "46 s");
    let file = format!("{line}\n\n{line}\n{turned}\n{other}\n");
    let first = read_lines(&file, &context()).expect("lines");
    let second = read_lines(&file, &context()).expect("lines");
    assert_eq!(first, second);
    assert_eq!(first.len(), 2);
    assert_ne!(first[0].id, first[1].id);
}

#[test]
fn labels_point_to_the_same_entry_whatever_the_order() {
    let lines = [
        r##"{"happened":"2026-03-05 07:00","body":{"kind":"retest","of":"#oil","result":"clear"}}"##,
        r##"{"id":"#oil","happened":"2026-03-04 07:00","body":{"kind":"incident","what":"cutting-oil"}}"##,
    ];
    let entries = read_lines(&lines.join("\n"), &context()).expect("two lines");
    let Body::Retest(retest) = &entries[0].body else { panic!("a retest") };
    assert_eq!(retest.of, entries[1].id);
    assert_eq!(entries[1].id, EntryId::of_label(SlabId::of_name("law"), "oil"));
}

#[test]
fn bad_lines_are_all_named_with_field_value_and_accepted_form() {
    let cases = [
        (r#"{"happened":"2026-03-02""#, "line", "broken JSON"),
        (r#"{"body":{"kind":"note","text":"x"}}"#, "happened", "missing"),
        (r#"{"happened":"the day before","body":{"kind":"note","text":"x"}}"#, "happened", "2026-03-02 07:00"),
        (
            r#"{"happened":"2026-03-02","body":{"kind":"pour","thickness":"4 cubits"}}"#,
            "body",
            "UnknownUnit(\"cubits\")",
        ),
        (r#"{"happened":"2026-03-02","body":{"kind":"pour","thickness":"-4 in"}}"#, "body", "Negative"),
        (r#"{"happened":"2026-03-02","body":{"kind":"pour","thickness":"4"}}"#, "body", "NoUnit"),
        (r#"{"happened":"2026-03-02","body":{"kind":"pour","water_cement":"1.4"}}"#, "body", "OutOfRange"),
        (r#"{"happened":"2026-03-02","body":{"kind":"pour","thicknes":"4 in"}}"#, "body", "thicknes"),
        (r#"{"happened":"2026-03-02","body":{"kind":"por"}}"#, "body", "por"),
        (r#"{"happened":"2026-03-02","place":{},"body":{"kind":"note","text":"x"}}"#, "place", "empty"),
        (r#"{"happened":"2026-03-02","place":{"radius":"2 ft"},"body":{"kind":"note","text":"x"}}"#, "place", "radius"),
        (r#"{"happened":"2026-03-02","color":"red","body":{"kind":"note","text":"x"}}"#, "color", "unknown field"),
        (r#"{"id":"oil","happened":"2026-03-02","body":{"kind":"note","text":"x"}}"#, "id", "#oil"),
        (r#"[1,2]"#, "line", "not a JSON object"),
    ];
    let file = cases.map(|(line, ..)| line).join("\n");
    let errors = read_lines(&file, &context()).expect_err("every line is wrong");
    assert_eq!(errors.len(), cases.len(), "{errors:#?}");
    for ((line, field, problem), error) in cases.iter().zip(&errors) {
        let told = match &error.error {
            EntryError::Header { field: named, problem } => format!("{named}: {problem}"),
            other => format!("{other:?} {other}"),
        };
        assert!(told.to_lowercase().contains(field), "{line}: {told}");
        assert!(told.contains(problem), "{line}: {told}");
    }
}
