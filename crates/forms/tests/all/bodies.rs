//! Every field that a body's reader knows is asked, and every choice that it knows is offered.
//!
//! The reader itself tells what it knows: it names the fields it expects when it meets an unknown one,
//! and the variants it expects when it meets an unknown choice.

use std::collections::BTreeSet;

use forms::{Form, InputKind, forms};
use serde_json::{Value, json};
use slab_diary::body::{Body, BodyError};

use crate::examples::examples;

fn example(form: &Form) -> Value {
    let entry = examples().into_iter().find(|e| e.body.kind() == form.kind).expect("every kind has an example");
    serde_json::from_str(entry.body.to_raw().get()).expect("a body is JSON")
}

fn refusal(body: &Value) -> String {
    let raw = serde_json::value::to_raw_value(body).expect("it is JSON");
    match Body::read(&raw, slab_diary::SCHEMA) {
        Err(BodyError::Field { problem, .. }) => problem,
        other => panic!("a refusal was expected, not {other:?}"),
    }
}

/// The names in backquotes after "expected".
fn expected(problem: &str) -> BTreeSet<String> {
    let (_, rest) = problem.split_once(", expected ").unwrap_or_default();
    rest.split('`').skip(1).step_by(2).map(str::to_owned).collect()
}

#[test]
fn the_form_asks_for_exactly_the_fields_of_its_body() {
    let mut fields = 0;
    for form in forms() {
        let mut body = example(form);
        body["no_such_field"] = json!(1);
        let known = expected(&refusal(&body));
        let asked: BTreeSet<String> = form.fields.iter().map(|f| f.name.to_owned()).collect();
        assert_eq!(asked, known, "{}", form.kind);
        fields += asked.len();
    }
    assert_eq!(fields, FIELDS);
}

/// Pinned, so that a field lost on both sides is seen.
const FIELDS: usize = 135;

/// Choices that the reader knows and the form does not offer, with the reason in the table.
const NOT_OFFERED: &[(&str, &str, &str)] = &[("hold_released", "hold_point", "site")];

#[test]
fn the_form_offers_exactly_the_choices_of_its_body() {
    let mut choices = 0;
    for form in forms() {
        for field in form.fields {
            let InputKind::Choice(offered) = field.ask else { continue };
            let mut body = example(form);
            body[field.name] = json!("no_such_choice");
            let mut known = expected(&refusal(&body));
            for (kind, name, value) in NOT_OFFERED {
                if *kind == form.kind && *name == field.name {
                    assert!(known.remove(*value));
                }
            }
            let offered: BTreeSet<String> = offered.iter().map(|c| (*c).to_owned()).collect();
            assert_eq!(offered, known, "{}.{}", form.kind, field.name);
            choices += offered.len();
        }
    }
    assert_eq!(choices, CHOICES);
}

/// Pinned, so that a choice lost on both sides is seen.
const CHOICES: usize = 92;

#[test]
fn what_the_reader_requires_the_form_requires() {
    let mut required = 0;
    for form in forms() {
        for field in form.fields {
            let mut body = example(form);
            body.as_object_mut().unwrap().shift_remove(field.name);
            let raw = serde_json::value::to_raw_value(&body).unwrap();
            if Body::read(&raw, slab_diary::SCHEMA).is_err() {
                assert!(field.required(), "{}.{}", form.kind, field.name);
                required += 1;
            }
        }
    }
    assert!(required >= 40, "only {required}");
}

#[test]
fn a_box_lies_in_the_picture() {
    let photograph = |card_box: Value| {
        let raw = serde_json::value::to_raw_value(&json!({"kind": "slab_photograph", "card_box": card_box})).unwrap();
        Body::read(&raw, slab_diary::SCHEMA)
    };
    for inside in [
        json!({"x": 0, "y": 0, "w": 100, "h": 100}),
        json!({"x": 40.1, "y": 70, "w": 59.9, "h": 8.5}),
        json!({"x": 100, "y": 0, "w": 0, "h": 0}),
    ] {
        assert!(photograph(inside.clone()).is_ok(), "{inside}");
    }
    for outside in [
        json!({"x": -1, "y": 0, "w": 10, "h": 10}),
        json!({"x": 60, "y": 0, "w": 41, "h": 10}),
        json!({"x": 0, "y": 95, "w": 10, "h": 6}),
        json!({"x": 0, "y": 0, "w": 101, "h": 10}),
        json!({"x": 0, "y": 0, "w": 10}),
        json!({"x": 0, "y": 0, "w": 10, "h": 10, "z": 1}),
    ] {
        let refused = photograph(outside.clone());
        let named = matches!(&refused, Err(BodyError::Field { field, .. }) if field.starts_with("card_box"));
        assert!(named, "{outside}: {refused:?}");
    }
}
