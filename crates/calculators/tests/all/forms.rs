//! What the calculators ask.

use calculators::{NoFiles, calculator, calculators, choice_label, label, usual, usual_text};
use form_schema::{Field, InputKind};
use localization::{Lang, Locale, UnitSystem};
use trade_facts::Trade;

fn names(fields: &[&Field]) -> Vec<&'static str> {
    fields.iter().map(|field| field.name).collect()
}

#[test]
fn fields_tell_what_they_take() {
    let field = |id: &str, name: &str| calculator(id).unwrap().field(name).unwrap();
    let form = |id: &str| calculator(id).unwrap().form;
    assert!(field("dew-point", "air").required() && !field("dew-point", "slab").required());
    assert_eq!(names(&form("dew-point").excluded_by("pressure")), ["elevation"]);
    assert_eq!(names(&form("dew-point").excluded_by("elevation")), ["pressure"]);
    assert_eq!(names(&form("film").excluded_by("wet")), ["dry", "coverage"]);
    assert_eq!(names(&form("dew-point").needed_by("margin")), ["slab"]);
    assert_eq!(names(&form("purge").needed_by("from")), ["to"]);
    assert_eq!(names(&form("evaporation").needed_by("year")), ["file"]);
    assert!(form("evaporation").needed(field("evaporation", "air")));
    assert!(!form("evaporation").needed(field("evaporation", "file")));
    assert_eq!(field("evaporation", "file").input, InputKind::File);
    assert_eq!(field("evaporation", "column").input, InputKind::Texts);
    assert_eq!(field("drying", "reading").input, InputKind::Texts);
    assert_eq!(usual_text(field("drying", "days"), UnitSystem::Metric), Some("28,90,180,365"));
    assert_eq!(field("drying", "sides").choices(Trade::built_in()), ["1", "2"]);
    assert_eq!(field("evaporation", "form").choices(Trade::built_in()), ["menzel", "uno"]);
    assert_eq!(field("ventilate", "substance").choices(Trade::built_in()).len(), 7, "one of them has two names");
    assert_eq!(field("purge", "room").input_mode(), "decimal");
    assert_eq!(field("joints", "length").input_mode(), "text", "feet and inches");
    assert_eq!(field("equivalent-age", "history").input_mode(), "text");
    assert_eq!(field("dew-point", "air").unit(UnitSystem::Metric), "°C");
    assert_eq!(field("drying", "wc").unit(UnitSystem::Metric), "");
    assert!(field("color-difference", "first").required());
    let fields = || calculators().iter().flat_map(|of| of.form.fields);
    assert_eq!(fields().filter(|field| field.input == InputKind::File).count(), 2);
    assert_eq!((calculators().len(), fields().count()), (15, 108));
}

/// A rule, an example or a place that names no field would never hold.
#[test]
fn rules_and_examples_name_fields() {
    use form_schema::Rule;
    for of in calculators() {
        let ruled = of.form.rules.iter().flat_map(|rule| match rule {
            Rule::AtLeastOne(names) | Rule::AtLeastOneOrYes(names) | Rule::OneOf(names) | Rule::MayBeLeftOut(names) => {
                names.to_vec()
            }
            Rule::NotBoth(one, other) | Rule::Needs(one, other) => vec![*one, *other],
        });
        for name in ruled.chain(of.filled(UnitSystem::Metric).iter().map(|(name, _)| of.field(name).unwrap().name)) {
            assert!(of.field(name).is_some(), "{}: {name}", of.id());
        }
    }
}

#[test]
fn every_form_shows_what_it_cannot_do_without() {
    for of in calculators() {
        assert!(of.form.fields.iter().all(|field| !field.hints.more || !of.form.needed(field)), "{}", of.id());
        let shown = of.form.fields.iter().filter(|field| !field.hints.more).count();
        assert!((2..=8).contains(&shown), "{} shows {shown} fields", of.id());
    }
}

/// Labels, choices and one-line purposes in both languages; no key is shown bare.
#[test]
fn every_name_is_in_both_languages() {
    let mut names = 0;
    for of in calculators() {
        let voices = Lang::ALL.map(|lang| Locale::new(lang, UnitSystem::Imperial));
        let mut both = vec![voices.map(|locale| of.title(locale)), voices.map(|locale| of.about(locale))];
        for field in of.form.fields {
            both.push(voices.map(|locale| label(field, locale)));
            let choices = field.choices(Trade::built_in());
            if field.input != InputKind::TimeZone {
                both.extend(choices.iter().map(|choice| voices.map(|locale| choice_label(field, choice, locale))));
            }
            if field.hints.usual_said.is_some() {
                both.push(voices.map(|locale| usual(field, locale).unwrap()));
            }
            let told = |unit_system| !field.example(unit_system).is_empty() || field.input == InputKind::File;
            assert!(UnitSystem::ALL.into_iter().all(|u| told(u) || !choices.is_empty()), "{} {}", of.id(), field.name);
        }
        for [english, spanish] in both {
            assert!(!english.contains("sum-") && !english.contains("value-"), "{}: {english}", of.id());
            assert_ne!(english, spanish, "{}", of.id());
            names += 1;
        }
        let labels: std::collections::BTreeSet<String> = of.form.fields.iter().map(|f| label(f, voices[1])).collect();
        assert_eq!(labels.len(), of.form.fields.len(), "{}: two fields with one label", of.id());
    }
    assert!(names > 140, "only {names} names");
}

/// A name that an answer calls an input by is a field, so that a page can tie the two.
#[test]
fn every_input_of_an_answer_is_a_field() {
    for of in calculators() {
        let found = of.calculate(&of.filled(UnitSystem::Metric), None, &NoFiles).unwrap();
        for input in found.inputs(Locale::default()) {
            assert!(of.field(input.name).is_some() && !input.label.contains("value-"), "{}: {}", of.id(), input.name);
        }
    }
}
