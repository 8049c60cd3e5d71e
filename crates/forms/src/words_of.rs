//! The words of a form: labels, choices, why it matters and how it is done right.

use slab::standing::HoldPointId;
use slab::trade::{Trade, Unit};
use words::{Lang, Voice};

use crate::form::{Ask, Field, Form, Group, Preset, TradeList};

/// A message's key part: hyphens for underscores.
fn key(name: &str) -> String {
    name.replace('_', "-")
}

fn known(voice: Voice, keys: &[String]) -> Option<String> {
    keys.iter().find(|key| voice.knows(key)).map(|key| voice.say(key, &[]))
}

fn named(voice: Voice, keys: &[String], otherwise: &str) -> String {
    known(voice, keys).unwrap_or_else(|| otherwise.to_owned())
}

/// The label of a field.
#[must_use]
pub fn label(voice: Voice, form: &Form, field: &Field) -> String {
    input_label(voice, form, field.name)
}

/// The label of one input of a field, such as `lab_l`, or of a place.
#[must_use]
pub fn input_label(voice: Voice, form: &Form, input: &str) -> String {
    let (kind, input) = (key(form.kind), key(input));
    named(voice, &[format!("field-{kind}-{input}"), format!("field-{input}")], &input)
}

/// A field's name inside a sentence, where no form is at hand.
pub(crate) fn name(voice: Voice, input: &str) -> String {
    named(voice, &[format!("field-{}", key(input))], input)
}

/// The name of a choice, a trade term, a fact or a hold point. A value that is none comes back as it
/// is.
#[must_use]
pub fn choice_label(voice: Voice, form: &Form, field: &Field, value: &str) -> String {
    match field.ask {
        Ask::Trade(TradeList::Facts) => fact_label(voice, value),
        Ask::Trade(_) => voice.term(value),
        Ask::YesNo => named(voice, &[format!("choice-{}", key(value))], value),
        _ => {
            if field.name == "hold_point"
                && let Some(id) = HoldPointId::ALL.into_iter().find(|id| id.name() == value)
            {
                return voice.hold_point(id);
            }
            let (kind, name, value_key) = (key(form.kind), key(field.name), key(value));
            let keys = [format!("choice-{kind}-{name}-{value_key}"), format!("choice-{name}-{value_key}")];
            named(voice, &keys, value)
        }
    }
}

/// What a figure is about, with its value in its own unit, since a person's own is typed in that unit.
/// The trade facts have it in English.
fn fact_label(voice: Voice, id: &str) -> String {
    let Some(fact) = Trade::built_in().fact(id) else { return id.to_owned() };
    let about = match voice.lang {
        Lang::En => fact.statement.clone(),
        Lang::Es => named(voice, &[format!("fact-{id}")], &fact.statement),
    };
    let Some(value) = fact.value else { return about };
    let unit = fact.unit.map_or_else(String::new, |unit| unit_label(voice, unit));
    voice.say("form-fact", &[("about", about.into()), ("value", value.to_string().into()), ("unit", unit.into())])
}

fn unit_label(voice: Voice, unit: Unit) -> String {
    match unit {
        Unit::FahrenheitDifference => "°F".to_owned(),
        Unit::Percent => "%".to_owned(),
        Unit::PoundPerThousandSquareFeetDay => voice.say("form-unit-emission", &[]),
        _ => named(voice, &[format!("form-unit-{}", unit.word())], unit.word()),
    }
}

/// What a one-tap button says: its own words, or the name of the one choice that it makes.
#[must_use]
pub fn preset_label(voice: Voice, form: &Form, preset: &Preset) -> String {
    if let Some(own) = known(voice, &[format!("preset-{}-{}", key(form.kind), key(preset.name))]) {
        return own;
    }
    match preset.sets {
        [(input, value)] => match form.field_of_input(input) {
            Some(field) => choice_label(voice, form, field, value),
            None => (*value).to_owned(),
        },
        _ => preset.name.to_owned(),
    }
}

/// What helps to answer a field, where something does.
#[must_use]
pub fn hint(voice: Voice, form: &Form, field: &Field) -> Option<String> {
    let (kind, name) = (key(form.kind), key(field.name));
    known(voice, &[format!("hint-{kind}-{name}"), format!("hint-{name}")])
}

/// One sentence on why this entry matters.
#[must_use]
pub fn why(voice: Voice, form: &Form) -> String {
    voice.say(&format!("form-why-{}", key(form.kind)), &[])
}

/// How it is done right, with the caution that belongs to it.
#[must_use]
pub fn how(voice: Voice, form: &Form) -> String {
    voice.say(&format!("form-how-{}", key(form.kind)), &[])
}

/// The name of a group of forms.
#[must_use]
pub fn group_label(voice: Voice, group: Group) -> String {
    voice.say(&format!("form-group-{}", group.name()), &[])
}

/// The name of a kind of place, one of [`crate::PLACE_KINDS`].
#[must_use]
pub fn place_label(voice: Voice, place_kind: &str) -> String {
    named(voice, &[format!("place-{}", key(place_kind))], place_kind)
}
