//! From what was typed to one JSON object.

use serde_json::{Map, Value, json};
use units::UnitSystem;

use crate::check::check;
use crate::field_error::{FieldError, FieldErrorKind};
use crate::form::{Field, Form, InputKind, Span};
use crate::form_data::FormData;
use crate::number;

/// Reads the fields of a form. Inputs that belong to no field are left alone. A `preset` names one of
/// [`Form::presets`]; what it sets replaces what was typed in those inputs.
///
/// A bare number takes the usual unit of `usual`, as the page shows it beside the input. Without a system, as on a
/// command line, a unit must be written.
///
/// # Errors
/// Every error at once, each with its input.
pub fn read(
    form: &Form,
    typed: &FormData,
    usual: impl Into<Option<UnitSystem>>,
) -> Result<Map<String, Value>, Vec<FieldError>> {
    let usual = usual.into();
    let mut errors = Vec::new();
    let typed = with_preset(form, typed, &mut errors);
    let mut values = Map::new();
    for field in form.fields {
        match read_field(field, &typed, usual) {
            Ok(Some(value)) => drop(values.insert(field.name.to_owned(), value)),
            Ok(None) => {}
            Err(found) => errors.extend(found),
        }
    }
    // What was typed and could not be read is told once, not as missing too.
    let broken: Vec<String> = errors.iter().map(|error| error.field.clone()).collect();
    let told = |input: &str| {
        form.field_of_input(input).is_some_and(|f| f.inputs().iter().any(|i| broken.iter().any(|b| b == i)))
    };
    let mut found = check(form, &mut values);
    for field in form.fields.iter().filter(|field| field.required() && !values.contains_key(field.name)) {
        if !found.iter().any(|error| error.field == field.inputs()[0]) {
            found.push(FieldError::new(field.inputs()[0], FieldErrorKind::Missing, ""));
        }
    }
    errors.extend(found.into_iter().filter(|error| !match &error.what {
        FieldErrorKind::NoneAnswered(names) => names.iter().any(|name| told(name)),
        _ => told(&error.field),
    }));
    // What was typed wrongly before what is missing, each in the order of the fields.
    errors.sort_by_key(|error| {
        let at = form.fields.iter().position(|field| field.inputs().contains(&error.field.as_str()));
        (matches!(error.what, FieldErrorKind::Missing | FieldErrorKind::NoneAnswered(_)), at)
    });
    if errors.is_empty() { Ok(values) } else { Err(errors) }
}

fn with_preset(form: &Form, typed: &FormData, errors: &mut Vec<FieldError>) -> FormData {
    let mut typed = typed.clone();
    let Some(name) = typed.answer("preset").map(str::to_owned) else { return typed };
    match form.preset(&name) {
        Some(preset) => preset.sets.iter().for_each(|(input, text)| typed.set(*input, *text)),
        None => errors.push(FieldError::new("preset", FieldErrorKind::NotAChoice(&[]), &name)),
    }
    typed
}

/// The value of a field; `None` when it was left empty.
fn read_field(field: &Field, typed: &FormData, usual: Option<UnitSystem>) -> Result<Option<Value>, Vec<FieldError>> {
    match field.input {
        InputKind::Mix => read_mix(typed),
        InputKind::Lab => {
            let numbers = read_numbers(field, typed, &[Span::Percent, Span::Opponent, Span::Opponent])?;
            Ok(numbers.map(|numbers| Value::Array(numbers.into_iter().map(number_json).collect())))
        }
        InputKind::PictureBox(_) => {
            let numbers = read_numbers(field, typed, &[Span::Percent; 4])?;
            Ok(numbers.map(|n| json!({ "x": n[0], "y": n[1], "w": n[2], "h": n[3] })))
        }
        InputKind::Texts => {
            let lines = typed.get(field.name).iter().flat_map(|text| text.lines()).map(str::trim);
            let texts: Vec<&str> = lines.filter(|text| !text.is_empty()).collect();
            Ok((!texts.is_empty()).then(|| json!(texts)))
        }
        // A file's name is taken as it is.
        InputKind::File => Ok(typed.first(field.name).filter(|name| !name.trim().is_empty()).map(Value::from)),
        _ => match typed.answer(field.name) {
            None => Ok(None),
            Some(text) => read_one(field.input, text, usual)
                .map(Some)
                .map_err(|what| vec![FieldError::new(field.name, what, text)]),
        },
    }
}

/// One value from a text, as the command line has it: a unit must be written; what has several parts is JSON.
///
/// # Errors
/// What is wrong with it.
pub fn read_text(field: &Field, text: &str) -> Result<Value, FieldErrorKind> {
    match field.input {
        InputKind::Mix | InputKind::Lab | InputKind::PictureBox(_) => {
            serde_json::from_str(text).map_err(|error| FieldErrorKind::Refused(error.to_string()))
        }
        InputKind::YesNo | InputKind::Flag => match text.trim().to_lowercase().as_str() {
            "yes" | "true" => Ok(Value::Bool(true)),
            "no" | "false" => Ok(Value::Bool(false)),
            _ => Err(FieldErrorKind::NotAChoice(&["yes", "no"])),
        },
        input => read_one(input, text.trim(), None),
    }
}

fn read_one(input: InputKind, text: &str, usual: Option<UnitSystem>) -> Result<Value, FieldErrorKind> {
    match input {
        InputKind::Quantity(asked) => {
            asked.read(text, usual).map(Value::from).map_err(|problem| FieldErrorKind::Quantity { asked, problem })
        }
        InputKind::YesNo | InputKind::Flag => match text {
            "yes" => Ok(Value::Bool(true)),
            "no" => Ok(Value::Bool(false)),
            _ => Err(FieldErrorKind::NotAChoice(&["yes", "no"])),
        },
        InputKind::Count { least, most } => {
            let count = text.parse::<u32>().ok().filter(|count| (least..=most).contains(count));
            count.map(Value::from).ok_or(FieldErrorKind::NotACount { least, most })
        }
        InputKind::Number(span) => {
            number::read(text).filter(|n| span.holds(*n)).map(number_json).ok_or(FieldErrorKind::NotANumber(span))
        }
        // What is not offered is read where it was written before, and never written anew.
        InputKind::Offered { offered, .. } => {
            let word = text.to_lowercase().replace(['-', ' '], "_");
            if offered.contains(&word.as_str()) {
                Ok(Value::from(word))
            } else {
                Err(FieldErrorKind::NotAChoice(offered))
            }
        }
        InputKind::Money => number::money(text).map(Value::from).ok_or(FieldErrorKind::NotMoney),
        InputKind::Currency => Ok(Value::from(text.to_ascii_uppercase())),
        // The check that every object passes knows these.
        _ => Ok(Value::from(text.replace("\r\n", "\n"))),
    }
}

/// A whole number without decimals, as a person writes it in JSON.
fn number_json(number: f64) -> Value {
    // Within 2^53 a float holds every whole number exactly.
    if number.fract() == 0.0 && number.abs() < 9_007_199_254_740_992.0 { json!(number as i64) } else { json!(number) }
}

/// Rows of stain and parts. A row that is empty in both is skipped.
fn read_mix(typed: &FormData) -> Result<Option<Value>, Vec<FieldError>> {
    let (stains, parts) = (typed.get("mix_stain"), typed.get("mix_parts"));
    let (mut rows, mut errors) = (Vec::new(), Vec::new());
    for row in 0..stains.len().max(parts.len()) {
        let text = |of: &[String]| of.get(row).map(|t| t.trim().to_owned()).unwrap_or_default();
        let (stain, share) = (text(stains), text(parts));
        if stain.is_empty() && share.is_empty() {
            continue;
        }
        if stain.is_empty() {
            errors.push(FieldError::new("mix_stain", FieldErrorKind::Missing, ""));
        }
        match number::read(&share).filter(|n| Span::Positive.holds(*n)) {
            Some(number) => rows.push(json!({ "stain": stain, "parts": number_json(number) })),
            None => errors.push(FieldError::new("mix_parts", FieldErrorKind::NotANumber(Span::Positive), &share)),
        }
    }
    if errors.is_empty() { Ok((!rows.is_empty()).then_some(Value::Array(rows))) } else { Err(errors) }
}

/// The numbers of a field of several inputs: all of them, or none.
fn read_numbers(field: &Field, typed: &FormData, spans: &[Span]) -> Result<Option<Vec<f64>>, Vec<FieldError>> {
    let inputs = field.inputs();
    if inputs.iter().all(|input| typed.answer(input).is_none()) {
        return Ok(None);
    }
    let (mut numbers, mut errors) = (Vec::new(), Vec::new());
    for (input, span) in inputs.iter().zip(spans) {
        match typed.answer(input) {
            None => errors.push(FieldError::new(input, FieldErrorKind::Missing, "")),
            Some(text) => match number::read(text).filter(|n| span.holds(*n)) {
                Some(number) => numbers.push(number),
                None => errors.push(FieldError::new(input, FieldErrorKind::NotANumber(*span), text)),
            },
        }
    }
    if errors.is_empty() { Ok(Some(numbers)) } else { Err(errors) }
}
