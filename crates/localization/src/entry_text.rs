//! The words of a kind of entry: its name, labels, choices, why it matters and how it is done right.
//!
//! Their keys follow from the schema, in this one place: `kind-KIND`, `form-why-KIND`, `form-how-KIND`,
//! `field-KIND-FIELD` or `field-FIELD`, `hint-…` alike, `choice-KIND-FIELD-WORD` or `choice-FIELD-WORD`,
//! `preset-KIND-NAME`, with hyphens for underscores. A test walks the schemas and names what is missing or idle.

use form_schema::{Field, InputKind, Preset, TermList};
use slab_diary::EntrySchema;
use slab_diary::body::Group;
use trade_facts::{HoldPointId, Trade, Unit};

use crate::Locale;

/// A message's key part: hyphens for underscores.
fn key(name: &str) -> String {
    name.replace('_', "-")
}

fn known(locale: Locale, keys: &[String]) -> Option<String> {
    keys.iter().find(|key| locale.knows_built(key)).map(|key| locale.message_built(key, &[]))
}

pub(crate) fn named(locale: Locale, keys: &[String], otherwise: &str) -> String {
    known(locale, keys).unwrap_or_else(|| otherwise.to_owned())
}

/// The label of a field.
#[must_use]
pub fn label(locale: Locale, schema: &EntrySchema, field: &Field) -> String {
    input_label(locale, schema, field.name)
}

/// The label of one input of a field, such as `lab_l`, or of a place.
#[must_use]
pub fn input_label(locale: Locale, schema: &EntrySchema, input: &str) -> String {
    let (kind, input) = (key(schema.kind.name()), key(input));
    named(locale, &[format!("field-{kind}-{input}"), format!("field-{input}")], &input)
}

/// A field's name inside a sentence, where no form is at hand.
pub(crate) fn field_name(locale: Locale, input: &str) -> String {
    named(locale, &[format!("field-{}", key(input))], input)
}

/// The name of a choice, a trade term, a fact or a hold point. A value that is none comes back as it
/// is.
#[must_use]
pub fn choice_label(locale: Locale, schema: &EntrySchema, field: &Field, value: &str) -> String {
    match field.input {
        InputKind::Term(TermList::Facts) => fact_label(locale, value),
        InputKind::Term(_) => locale.term(value),
        InputKind::YesNo | InputKind::Flag => named(locale, &[format!("choice-{}", key(value))], value),
        _ => {
            if field.name == "hold_point"
                && let Some(id) = HoldPointId::ALL.into_iter().find(|id| id.name() == value)
            {
                return locale.hold_point(id);
            }
            let (kind, name, value_key) = (key(schema.kind.name()), key(field.name), key(value));
            let keys = [format!("choice-{kind}-{name}-{value_key}"), format!("choice-{name}-{value_key}")];
            named(locale, &keys, value)
        }
    }
}

/// What a figure is about, with its value in its own unit, since a person's own is typed in that unit.
fn fact_label(locale: Locale, id: &str) -> String {
    let Some(fact) = Trade::built_in().fact(id) else { return id.to_owned() };
    let about = locale.fact(id);
    let Some(value) = fact.value else { return about };
    let unit = fact.unit.map_or_else(String::new, |unit| unit_label(locale, unit));
    locale.message("form-fact", &[("about", about.into()), ("value", value.to_string().into()), ("unit", unit.into())])
}

fn unit_label(locale: Locale, unit: Unit) -> String {
    match unit {
        Unit::FahrenheitDifference => "°F".to_owned(),
        Unit::Percent => "%".to_owned(),
        Unit::PoundPerThousandSquareFeetDay => locale.message("form-unit-emission", &[]),
        _ => named(locale, &[format!("form-unit-{}", unit.word())], unit.word()),
    }
}

/// What a one-tap button says: its own words, or the name of the one choice that it makes.
#[must_use]
pub fn preset_label(locale: Locale, schema: &EntrySchema, preset: &Preset) -> String {
    if let Some(own) = known(locale, &[format!("preset-{}-{}", key(schema.kind.name()), key(preset.name))]) {
        return own;
    }
    match preset.sets {
        [(input, value)] => match schema.form().field_of_input(input) {
            Some(field) => choice_label(locale, schema, field, value),
            None => (*value).to_owned(),
        },
        _ => preset.name.to_owned(),
    }
}

/// What helps to answer a field, where something does.
#[must_use]
pub fn hint(locale: Locale, schema: &EntrySchema, field: &Field) -> Option<String> {
    let (kind, name) = (key(schema.kind.name()), key(field.name));
    known(locale, &[format!("hint-{kind}-{name}"), format!("hint-{name}")])
}

/// One sentence on why this entry matters.
#[must_use]
pub fn why(locale: Locale, schema: &EntrySchema) -> String {
    locale.message_built(&format!("form-why-{}", key(schema.kind.name())), &[])
}

/// How it is done right, with the caution that belongs to it.
#[must_use]
pub fn how(locale: Locale, schema: &EntrySchema) -> String {
    locale.message_built(&format!("form-how-{}", key(schema.kind.name())), &[])
}

/// The name of a group of forms.
#[must_use]
pub fn group_label(locale: Locale, group: Group) -> String {
    locale.message_built(&format!("form-group-{}", group.name()), &[])
}

/// The name of a kind of place, one of [`slab_diary::PLACE_KINDS`].
#[must_use]
pub fn place_label(locale: Locale, place_kind: &str) -> String {
    named(locale, &[format!("place-{}", key(place_kind))], place_kind)
}
