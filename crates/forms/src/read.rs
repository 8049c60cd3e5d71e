//! From what was typed to the JSON of a body.

use localization::UnitSystem;
use serde_json::{Map, Value, json};
use slab_diary::EntryId;
use slab_diary::body::{Body, BodyError, PictureBox};
use trade_facts::Trade;

use crate::field_error::{FieldError, FieldErrorKind};
use crate::form::{Field, Form, InputKind, Rule, Span};
use crate::form_data::FormData;
use crate::number;
use crate::quantity::Quantity;

/// Reads the body of a form. Inputs that belong to no field are left alone. A `preset` names one of
/// [`Form::presets`]; what it sets replaces what was typed in those inputs.
///
/// The result has `kind` first and is accepted by [`Body::read`].
///
/// # Errors
/// Every mistake at once, each with its input.
pub fn read_body(
    form: &Form,
    typed: &FormData,
    unit_system: UnitSystem,
) -> Result<Map<String, Value>, Vec<FieldError>> {
    let mut mistakes = Vec::new();
    let typed = with_preset(form, typed, &mut mistakes);
    let mut body = Map::new();
    body.insert("kind".to_owned(), json!(form.kind));
    for field in form.fields {
        let before = mistakes.len();
        match read_field(field, &typed, unit_system, &mut mistakes) {
            Some(value) => {
                body.insert(field.name.to_owned(), value);
            }
            None if field.required() && mistakes.len() == before => {
                mistakes.push(FieldError::new(field.inputs()[0], FieldErrorKind::Missing, ""));
            }
            None => {}
        }
    }
    let answered = |name: &str| body.contains_key(name) || mistakes.iter().any(|mistake| mistake.field == name);
    let broken: Vec<FieldError> = form.rules.iter().filter_map(|rule| broken(*rule, &answered, &typed)).collect();
    mistakes.extend(broken);
    if mistakes.is_empty() {
        mistakes.extend(refused(form, &body));
    }
    if mistakes.is_empty() { Ok(body) } else { Err(mistakes) }
}

fn with_preset(form: &Form, typed: &FormData, mistakes: &mut Vec<FieldError>) -> FormData {
    let mut typed = typed.clone();
    let Some(name) = typed.answer("preset").map(str::to_owned) else { return typed };
    match form.preset(&name) {
        Some(preset) => preset.sets.iter().for_each(|(input, text)| typed.set(*input, *text)),
        None => mistakes.push(FieldError::new("preset", FieldErrorKind::NotAChoice, &name)),
    }
    typed
}

fn broken(rule: Rule, answered: &impl Fn(&str) -> bool, typed: &FormData) -> Option<FieldError> {
    let none_answered =
        |names: &'static [&'static str]| FieldError::new(names[0], FieldErrorKind::NoneAnswered(names), "");
    match rule {
        Rule::AtLeastOne(names) => (!names.iter().any(|name| answered(name))).then(|| none_answered(names)),
        Rule::AtLeastOneOrYes(names) => {
            let (last, before) = names.split_last()?;
            let said = before.iter().any(|name| answered(name)) || answered(last) && typed.answer(last) != Some("no");
            (!said).then(|| none_answered(names))
        }
        Rule::NotBoth(one, other) => (answered(one) && answered(other))
            .then(|| FieldError::new(one, FieldErrorKind::NotBoth(other), typed.first(one).unwrap_or_default())),
    }
}

/// The diary's own reader has the last word.
fn refused(form: &Form, body: &Map<String, Value>) -> Option<FieldError> {
    let raw = serde_json::value::to_raw_value(body).expect("a map of texts and numbers is JSON");
    let error = Body::read(&raw, slab_diary::SCHEMA).err()?;
    let (name, problem) = match &error {
        BodyError::Field { field, problem, .. } => {
            (field.split(['.', '[']).next().unwrap_or_default(), problem.clone())
        }
        BodyError::NoKind(_) | BodyError::UnknownKind { .. } => ("", error.to_string()),
    };
    let input = form.field(name).map_or(name, |field| field.inputs()[0]);
    Some(FieldError::new(input, FieldErrorKind::Refused(problem), ""))
}

/// The value of a field; `None` when it was left empty or a mistake was found.
fn read_field(
    field: &Field,
    typed: &FormData,
    unit_system: UnitSystem,
    mistakes: &mut Vec<FieldError>,
) -> Option<Value> {
    let several = match field.ask {
        InputKind::Mix => Some(read_mix(typed)),
        InputKind::Lab => Some(
            read_numbers(field, typed, &[Span::Percent, Span::Opponent, Span::Opponent])
                .map(|numbers| numbers.map(|numbers| Value::Array(numbers.into_iter().map(number_json).collect()))),
        ),
        InputKind::PictureBox(_) => Some(read_picture_box(field, typed)),
        _ => None,
    };
    if let Some(read) = several {
        return read.unwrap_or_else(|found| {
            mistakes.extend(found);
            None
        });
    }
    let text = typed.answer(field.name)?;
    match read_one(field.ask, text, unit_system) {
        Ok(value) => Some(value),
        Err(what) => {
            mistakes.push(FieldError::new(field.name, what, text));
            None
        }
    }
}

fn read_one(ask: InputKind, text: &str, unit_system: UnitSystem) -> Result<Value, FieldErrorKind> {
    match ask {
        InputKind::Quantity(asked) => quantity(asked, text, unit_system).map(Value::from),
        InputKind::Choice(values) => chosen(values.contains(&text), text, FieldErrorKind::NotAChoice),
        InputKind::Trade(list) => chosen(list.knows(Trade::built_in(), text), text, FieldErrorKind::NotAnId),
        InputKind::Entry(_) => {
            let id: EntryId = text.parse().map_err(|_| FieldErrorKind::NotAnId)?;
            Ok(Value::from(id.to_string()))
        }
        InputKind::Panel | InputKind::Text { .. } => Ok(Value::from(text.replace("\r\n", "\n"))),
        InputKind::YesNo => match text {
            "yes" => Ok(Value::Bool(true)),
            "no" => Ok(Value::Bool(false)),
            _ => Err(FieldErrorKind::NotAChoice),
        },
        InputKind::Count { least, most } => {
            let count = text.parse::<u32>().ok().filter(|count| (least..=most).contains(count));
            count.map(Value::from).ok_or(FieldErrorKind::NotACount { least, most })
        }
        InputKind::Number(span) => {
            number::read(text).filter(|n| span.holds(*n)).map(number_json).ok_or(FieldErrorKind::NotANumber(span))
        }
        InputKind::Money => number::money(text).map(Value::from).ok_or(FieldErrorKind::NotMoney),
        InputKind::Currency => {
            let code = text.to_ascii_uppercase();
            let fits = code.len() == 3 && code.bytes().all(|b| b.is_ascii_uppercase());
            chosen(fits, &code, FieldErrorKind::NotACurrency)
        }
        InputKind::TimeZone => chosen(jiff::tz::TimeZone::get(text).is_ok(), text, FieldErrorKind::NotATimeZone),
        InputKind::Mix | InputKind::Lab | InputKind::PictureBox(_) => {
            unreachable!("fields of several inputs are read before")
        }
    }
}

fn chosen(known: bool, text: &str, otherwise: FieldErrorKind) -> Result<Value, FieldErrorKind> {
    if known { Ok(Value::from(text)) } else { Err(otherwise) }
}

pub(crate) fn quantity(asked: Quantity, text: &str, unit_system: UnitSystem) -> Result<String, FieldErrorKind> {
    asked.read(text, unit_system).map_err(|problem| FieldErrorKind::Quantity { asked, problem })
}

/// A whole number without decimals, as a person writes it in JSON.
fn number_json(number: f64) -> Value {
    // Within 2^53 a float holds every whole number exactly.
    if number.fract() == 0.0 && number.abs() < 9_007_199_254_740_992.0 { json!(number as i64) } else { json!(number) }
}

/// Rows of stain and parts. A row that is empty in both is skipped.
fn read_mix(typed: &FormData) -> Result<Option<Value>, Vec<FieldError>> {
    let (stains, parts) = (typed.get("mix_stain"), typed.get("mix_parts"));
    let (mut rows, mut mistakes) = (Vec::new(), Vec::new());
    for row in 0..stains.len().max(parts.len()) {
        let text = |of: &[String]| of.get(row).map(|t| t.trim().to_owned()).unwrap_or_default();
        let (stain, share) = (text(stains), text(parts));
        if stain.is_empty() && share.is_empty() {
            continue;
        }
        if stain.is_empty() {
            mistakes.push(FieldError::new("mix_stain", FieldErrorKind::Missing, ""));
        }
        match number::read(&share).filter(|n| Span::Positive.holds(*n)) {
            Some(number) => rows.push(json!({ "stain": stain, "parts": number_json(number) })),
            None => mistakes.push(FieldError::new("mix_parts", FieldErrorKind::NotANumber(Span::Positive), &share)),
        }
    }
    if mistakes.is_empty() { Ok((!rows.is_empty()).then_some(Value::Array(rows))) } else { Err(mistakes) }
}

/// The numbers of a field of several inputs: all of them, or none.
fn read_numbers(field: &Field, typed: &FormData, spans: &[Span]) -> Result<Option<Vec<f64>>, Vec<FieldError>> {
    let inputs = field.inputs();
    if inputs.iter().all(|input| typed.answer(input).is_none()) {
        return Ok(None);
    }
    let (mut numbers, mut mistakes) = (Vec::new(), Vec::new());
    for (input, span) in inputs.iter().zip(spans) {
        match typed.answer(input) {
            None => mistakes.push(FieldError::new(input, FieldErrorKind::Missing, "")),
            Some(text) => match number::read(text).filter(|n| span.holds(*n)) {
                Some(number) => numbers.push(number),
                None => mistakes.push(FieldError::new(input, FieldErrorKind::NotANumber(*span), text)),
            },
        }
    }
    if mistakes.is_empty() { Ok(Some(numbers)) } else { Err(mistakes) }
}

fn read_picture_box(field: &Field, typed: &FormData) -> Result<Option<Value>, Vec<FieldError>> {
    let Some(numbers) = read_numbers(field, typed, &[Span::Percent; 4])? else { return Ok(None) };
    let [x, y, w, h] = numbers[..] else { return Ok(None) };
    match PictureBox::percent(x, y, w, h) {
        Ok(inside) => Ok(serde_json::to_value(inside).ok()),
        Err(_) => {
            let input = field.inputs()[if x + w > 100.0 { 2 } else { 3 }];
            Err(vec![FieldError::new(input, FieldErrorKind::OutsideThePicture, typed.first(input).unwrap_or_default())])
        }
    }
}
