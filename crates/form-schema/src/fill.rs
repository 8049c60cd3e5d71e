//! From old values to what fills their form, for a correction.

use serde_json::{Map, Value};

use crate::form::{Field, Form, InputKind};
use crate::form_data::FormData;

/// What fills a form, so that reading it again gives equal values.
#[must_use]
pub fn fill(form: &Form, values: &Map<String, Value>) -> FormData {
    let mut typed = FormData::new();
    for field in form.fields {
        if let Some(value) = values.get(field.name) {
            fill_field(field, value, &mut typed);
        }
    }
    typed
}

fn fill_field(field: &Field, value: &Value, typed: &mut FormData) {
    match (field.input, value) {
        (InputKind::Mix, Value::Array(rows)) => {
            for row in rows {
                typed.push("mix_stain", plain(&row["stain"]));
                typed.push("mix_parts", plain(&row["parts"]));
            }
        }
        (InputKind::Lab, Value::Array(numbers)) => {
            for (input, number) in field.inputs().iter().zip(numbers) {
                typed.set(*input, plain(number));
            }
        }
        (InputKind::PictureBox(_), Value::Object(sides)) => {
            for (input, side) in field.inputs().iter().zip(["x", "y", "w", "h"]) {
                typed.set(*input, sides.get(side).map(plain).unwrap_or_default());
            }
        }
        (InputKind::Texts, Value::Array(texts)) => texts.iter().for_each(|text| typed.push(field.name, plain(text))),
        (InputKind::Quantity(quantity), Value::String(text)) => typed.set(field.name, quantity.fill(text)),
        _ => typed.set(field.name, plain(value)),
    }
}

/// A value as a person would type it.
fn plain(value: &Value) -> String {
    match value {
        Value::String(text) => text.clone(),
        Value::Bool(true) => "yes".to_owned(),
        Value::Bool(false) => "no".to_owned(),
        Value::Number(number) => number.as_f64().map_or_else(|| number.to_string(), |n| n.to_string()),
        Value::Null | Value::Array(_) | Value::Object(_) => String::new(),
    }
}
