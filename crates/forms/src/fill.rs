//! From an old body to what fills its form, for a correction.

use serde_json::Value;
use slab_diary::Place;
use slab_diary::body::Body;

use crate::form::{Field, InputKind};
use crate::form_data::FormData;
use crate::place;
use crate::table::form;

/// What fills the form of a body and its place, so that reading it again gives an equal body and
/// place. A kind without a form fills only the place.
#[must_use]
pub fn typed_from(body: &Body, place: Option<&Place>) -> FormData {
    let mut typed = FormData::new();
    place::fill(place, &mut typed);
    let Some(form) = form(body.kind()) else { return typed };
    let raw = body.to_raw();
    let Ok(Value::Object(values)) = serde_json::from_str(raw.get()) else { return typed };
    for field in form.fields {
        if let Some(value) = values.get(field.name) {
            fill_field(field, value, &mut typed);
        }
    }
    typed
}

fn fill_field(field: &Field, value: &Value, typed: &mut FormData) {
    match (field.ask, value) {
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
