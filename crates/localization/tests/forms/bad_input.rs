//! Whatever is typed, a form answers: all mistakes at once, each on its input, nothing lost.

use form_schema::{FieldErrorKind, FormData, InputKind, TermList};
use localization::{Lang, Locale, UnitSystem};
use proptest::prelude::*;
use serde_json::json;
use slab_diary::{Body, EntrySchema, PLACE_INPUTS, read_place};

use crate::support::{form, forms, read_body, typed_from};

fn mistakes(kind: &str, pairs: &[(&str, &str)]) -> Vec<(String, FieldErrorKind)> {
    let typed: FormData = pairs.iter().copied().collect();
    let form = form(kind).expect("a kind with a form");
    let found = read_body(form, &typed, UnitSystem::Imperial).expect_err("a mistake");
    found.into_iter().map(|m| (m.field, m.what)).collect()
}

#[test]
fn an_empty_form_names_everything_that_is_needed() {
    for form in forms() {
        let needed: Vec<&str> = form.fields.iter().filter(|f| f.required()).map(|f| f.inputs()[0]).collect();
        match read_body(form, &FormData::new(), UnitSystem::Imperial) {
            Ok(body) => assert!(needed.is_empty() && form.rules.is_empty(), "{}: {body:?}", form.kind.name()),
            Err(found) => {
                let named: Vec<&str> =
                    found.iter().filter(|m| m.what == FieldErrorKind::Missing).map(|m| m.field.as_str()).collect();
                assert_eq!(named, needed, "{}", form.kind.name());
            }
        }
    }
}

#[test]
fn all_mistakes_come_at_once() {
    let found = mistakes("coat_laid", &[("coat", "0"), ("used", "lots"), ("dwell", "6 gal")]);
    assert_eq!(found.iter().map(|(f, _)| f.as_str()).collect::<Vec<_>>(), ["coat", "used", "dwell"]);
}

#[test]
fn rules_between_fields_are_told_on_a_field() {
    let (field, what) = mistakes("water_drop", &[("soaked_in", "45"), ("still_stood_after", "10")]).remove(0);
    assert_eq!((field.as_str(), what), ("soaked_in", FieldErrorKind::NotBoth("still_stood_after")));
    for (kind, pairs) in [
        ("water_drop", &[("beads", "no")][..]),
        ("water_drop", &[]),
        ("air_reading", &[]),
        ("temperature", &[]),
        ("site_check", &[]),
    ] {
        assert!(matches!(mistakes(kind, pairs).remove(0).1, FieldErrorKind::NoneAnswered(_)), "{kind}");
    }
    // A wrong answer is an answer: the person is not told twice.
    assert_eq!(mistakes("temperature", &[("slab", "cold")]).len(), 1);
}

/// Kind, what is typed, the input of the first mistake, the mistake.
type Case = (&'static str, &'static [(&'static str, &'static str)], &'static str, FieldErrorKind);

#[test]
fn choices_ids_and_names_are_checked() {
    let cases: &[Case] = &[
        ("scrape", &[("result", "powdery")], "result", FieldErrorKind::NotAChoice(&[])),
        ("finish", &[("finish", "marble")], "finish", FieldErrorKind::NotATerm(TermList::Finishes)),
        ("incident", &[("what", "broom")], "what", FieldErrorKind::NotATerm(TermList::Incidents)),
        ("sealer_chosen", &[("sealer", "broom")], "sealer", FieldErrorKind::NotATerm(TermList::Sealers)),
        (
            "limit_set",
            &[("fact", "no-such"), ("value", "1"), ("reason", "r")],
            "fact",
            FieldErrorKind::NotATerm(TermList::Facts),
        ),
        ("retest", &[("of", "#oil"), ("result", "clear")], "of", FieldErrorKind::NotAnId),
        (
            "hold_released",
            &[("hold_point", "site"), ("by", "b"), ("reason", "r")],
            "hold_point",
            FieldErrorKind::NotAChoice(&[]),
        ),
        ("job_opened", &[("name", "n"), ("time_zone", "Mars/North")], "time_zone", FieldErrorKind::NotATimeZone),
        (
            "job_opened",
            &[("name", "n"), ("drying_sides", "3")],
            "drying_sides",
            FieldErrorKind::NotACount { least: 1, most: 2 },
        ),
        ("time_cost", &[("what", "w"), ("cost", "much")], "cost", FieldErrorKind::NotMoney),
        ("time_cost", &[("what", "w"), ("currency", "dollars")], "currency", FieldErrorKind::NotACurrency),
        ("survey", &[("contamination", "maybe"), ("cracks", "no")], "contamination", FieldErrorKind::NotAChoice(&[])),
        (
            "slab_photograph",
            &[("card_x", "60"), ("card_y", "1"), ("card_w", "50"), ("card_h", "5")],
            "card_w",
            FieldErrorKind::OutsideThePicture,
        ),
        ("slab_photograph", &[("card_x", "60")], "card_y", FieldErrorKind::Missing),
        (
            "panel_photographed",
            &[("panel", "P1"), ("state", "bare"), ("lab_l", "42")],
            "lab_a",
            FieldErrorKind::Missing,
        ),
    ];
    for (kind, pairs, field, what) in cases {
        let found = mistakes(kind, pairs);
        assert_eq!(found[0].0, *field, "{kind}");
        match what {
            // Which words are accepted is the schema's affair.
            FieldErrorKind::NotAChoice(_) => assert!(matches!(found[0].1, FieldErrorKind::NotAChoice(_)), "{kind}"),
            _ => assert_eq!(found[0].1, *what, "{kind}"),
        }
    }
    assert_eq!(cases.len(), 15);
}

#[test]
fn rows_of_a_mix_are_read_in_order_and_empty_rows_skipped() {
    let mut typed: FormData = [("stain", "2"), ("water", "2")].into_iter().collect();
    for (stain, parts) in [("umber", "1"), ("", ""), ("ochre", "1,5")] {
        typed.push("mix_stain", stain);
        typed.push("mix_parts", parts);
    }
    let form = form("batch_mixed").unwrap();
    let body = read_body(form, &typed, UnitSystem::Imperial).unwrap();
    assert_eq!(body["mix"], json!([{"stain": "umber", "parts": 1}, {"stain": "ochre", "parts": 1.5}]));
    typed.push("mix_stain", "sienna");
    typed.push("mix_parts", "0");
    typed.push("mix_stain", "");
    typed.push("mix_parts", "2");
    let found = read_body(form, &typed, UnitSystem::Imperial).unwrap_err();
    assert_eq!(found.iter().map(|m| m.field.as_str()).collect::<Vec<_>>(), ["mix_parts", "mix_stain"]);
}

#[test]
fn markup_is_kept_as_plain_text() {
    let text = "<script>alert('x')</script> & \"quotes\" \u{202e}\nsecond line";
    let typed: FormData = [("text", text)].into_iter().collect();
    let body = read_body(form("note").unwrap(), &typed, UnitSystem::Imperial).unwrap();
    assert_eq!(body["text"], json!(text));
}

/// A sentence shows the reader's own example, in both languages and both measures.
#[test]
fn a_mistake_says_what_would_be_accepted() {
    let mut said = 0;
    for form in forms() {
        for field in form.fields {
            let InputKind::Quantity(quantity) = field.input else { continue };
            for (lang, unit_system) in [
                (Lang::En, UnitSystem::Imperial),
                (Lang::En, UnitSystem::Metric),
                (Lang::Es, UnitSystem::Imperial),
                (Lang::Es, UnitSystem::Metric),
            ] {
                for typed in ["soon", "45 parsecs", "-5", "5 3", "0.5", "400"] {
                    let pairs: FormData = [(field.name, typed)].into_iter().collect();
                    let Err(found) = read_body(form, &pairs, unit_system) else { continue };
                    for mistake in found.iter().filter(|m| m.field == field.name) {
                        if let FieldErrorKind::Quantity { .. } = mistake.what {
                            let sentence = Locale::new(lang, unit_system).field_error(mistake);
                            assert!(sentence.contains(quantity.example(unit_system)), "{sentence}");
                            assert!(!sentence.contains('{') && !sentence.starts_with("mistake-"), "{sentence}");
                            said += 1;
                        }
                    }
                }
            }
        }
    }
    assert!(said > 500, "only {said}");
}

#[test]
fn sentences_in_both_languages() {
    let typed: FormData = [("soaked_in", "45 gal")].into_iter().collect();
    let found = read_body(form("water_drop").unwrap(), &typed, UnitSystem::Imperial).unwrap_err();
    let said = |lang| Locale::new(lang, UnitSystem::Imperial).field_error(&found[0]);
    assert_eq!(said(Lang::En), "\"gal\" is no unit for this. Accepted: 45 s");
    assert_eq!(said(Lang::Es), "«gal» no es una unidad para esto. Se acepta: 45 s");
    let found = read_body(form("temperature").unwrap(), &FormData::new(), UnitSystem::Imperial).unwrap_err();
    let said = |lang| Locale::new(lang, UnitSystem::Imperial).field_error(&found[0]);
    assert_eq!(said(Lang::En), "Fill in at least one of these: Slab surface temperature and Air temperature.");
    assert_eq!(
        said(Lang::Es),
        "Llene al menos uno de estos: Temperatura de la superficie de la losa y Temperatura del aire."
    );
}

fn any_text() -> impl Strategy<Value = String> {
    prop_oneof![
        any::<String>(),
        "[-0-9., /]{0,12}",
        "[0-9]{1,3} ?(s|min|ft|in|%|°F|gal|lb|mm|')",
        Just("<script>alert(1)</script>".to_owned()),
        Just("yes".to_owned()),
        Just("\u{0}".to_owned()),
        Just("1e400".to_owned()),
        Just("NaN".to_owned()),
    ]
}

fn any_form() -> impl Strategy<Value = (&'static EntrySchema, FormData)> {
    (0..forms().len()).prop_flat_map(|at| {
        let form = forms()[at];
        let mut inputs: Vec<&'static str> = form.fields.iter().flat_map(|f| f.inputs().to_vec()).collect();
        inputs.extend(PLACE_INPUTS);
        inputs.push("preset");
        let texts = prop::collection::vec((0..inputs.len(), any_text()), 0..12);
        (Just(form), texts.prop_map(move |texts| texts.into_iter().map(|(i, t)| (inputs[i], t)).collect()))
    })
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 3000, ..ProptestConfig::default() })]

    #[test]
    fn arbitrary_text_gives_a_body_the_diary_takes_or_mistakes_on_known_inputs((form, typed) in any_form()) {
        for unit_system in UnitSystem::ALL {
            match read_body(form, &typed, unit_system) {
                Ok(body) => {
                    prop_assert_eq!(body.keys().next().map(String::as_str), Some("kind"));
                    let raw = serde_json::value::to_raw_value(&body).unwrap();
                    let read = Body::read(&raw, slab_diary::SCHEMA).unwrap();
                    // What was read fills the form and reads the same again.
                    let again = read_body(form, &typed_from(&read, None), unit_system).unwrap();
                    let raw = serde_json::value::to_raw_value(&again).unwrap();
                    prop_assert_eq!(Body::read(&raw, slab_diary::SCHEMA).unwrap(), read);
                }
                Err(found) => {
                    prop_assert!(!found.is_empty());
                    for mistake in found {
                        let known = mistake.field == "preset" || form.form().field_of_input(&mistake.field).is_some();
                        prop_assert!(known, "{:?}", mistake);
                        prop_assert!(!matches!(mistake.what, FieldErrorKind::Refused(_)), "{:?}", mistake);
                        prop_assert!(!Locale::new(Lang::Es, unit_system).field_error(&mistake).is_empty());
                    }
                }
            }
            if let Err(found) = read_place(&typed, unit_system) {
                prop_assert!(found.iter().all(|m| PLACE_INPUTS.contains(&m.field.as_str())));
            }
        }
    }

    /// A wrong field is named, and says nothing about the others.
    #[test]
    fn a_wrong_field_does_not_lose_the_others(wrong in "[a-z]{3,8}!") {
        let typed: FormData = [("mix", "4021"), ("thickness", wrong.as_str()), ("strength", "4000")].into_iter().collect();
        let found = read_body(form("pour").unwrap(), &typed, UnitSystem::Imperial).unwrap_err();
        prop_assert_eq!(found.len(), 1);
        prop_assert_eq!(found[0].field.as_str(), "thickness");
        prop_assert_eq!(found[0].typed.as_str(), wrong.as_str());
        prop_assert_eq!(typed.first("strength"), Some("4000"));
    }
}
