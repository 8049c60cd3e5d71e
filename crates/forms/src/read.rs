//! From what was typed to the JSON of a body.

use serde_json::{Map, Value, json};
use slab::diary::EntryId;
use slab::diary::body::{Body, BodyError, PictureBox};
use slab::trade::Trade;
use words::Measure;

use crate::form::{Ask, Field, Form, Rule, Span};
use crate::mistake::{Mistake, MistakeKind};
use crate::number;
use crate::quantity::Quantity;
use crate::typed::Typed;

/// Reads the body of a form. Inputs that belong to no field are left alone. A `preset` names one of
/// [`Form::presets`]; what it sets replaces what was typed in those inputs.
///
/// The result has `kind` first and is accepted by [`Body::read`].
///
/// # Errors
/// Every mistake at once, each with its input.
pub fn read_body(form: &Form, typed: &Typed, measure: Measure) -> Result<Map<String, Value>, Vec<Mistake>> {
    let mut mistakes = Vec::new();
    let typed = with_preset(form, typed, &mut mistakes);
    let mut body = Map::new();
    body.insert("kind".to_owned(), json!(form.kind));
    for field in form.fields {
        let before = mistakes.len();
        match read_field(field, &typed, measure, &mut mistakes) {
            Some(value) => {
                body.insert(field.name.to_owned(), value);
            }
            None if field.required() && mistakes.len() == before => {
                mistakes.push(Mistake::new(field.inputs()[0], MistakeKind::Missing, ""));
            }
            None => {}
        }
    }
    let answered = |name: &str| body.contains_key(name) || mistakes.iter().any(|mistake| mistake.field == name);
    let broken: Vec<Mistake> = form.rules.iter().filter_map(|rule| broken(*rule, &answered, &typed)).collect();
    mistakes.extend(broken);
    if mistakes.is_empty() {
        mistakes.extend(refused(form, &body));
    }
    if mistakes.is_empty() { Ok(body) } else { Err(mistakes) }
}

fn with_preset(form: &Form, typed: &Typed, mistakes: &mut Vec<Mistake>) -> Typed {
    let mut typed = typed.clone();
    let Some(name) = typed.answer("preset").map(str::to_owned) else { return typed };
    match form.preset(&name) {
        Some(preset) => preset.sets.iter().for_each(|(input, text)| typed.set(*input, *text)),
        None => mistakes.push(Mistake::new("preset", MistakeKind::NotAChoice, &name)),
    }
    typed
}

fn broken(rule: Rule, answered: &impl Fn(&str) -> bool, typed: &Typed) -> Option<Mistake> {
    let none_answered = |names: &'static [&'static str]| Mistake::new(names[0], MistakeKind::NoneAnswered(names), "");
    match rule {
        Rule::AtLeastOne(names) => (!names.iter().any(|name| answered(name))).then(|| none_answered(names)),
        Rule::AtLeastOneOrYes(names) => {
            let (last, before) = names.split_last()?;
            let said = before.iter().any(|name| answered(name)) || answered(last) && typed.answer(last) != Some("no");
            (!said).then(|| none_answered(names))
        }
        Rule::NotBoth(one, other) => (answered(one) && answered(other))
            .then(|| Mistake::new(one, MistakeKind::NotBoth(other), typed.first(one).unwrap_or_default())),
    }
}

/// The diary's own reader has the last word.
fn refused(form: &Form, body: &Map<String, Value>) -> Option<Mistake> {
    let raw = serde_json::value::to_raw_value(body).expect("a map of texts and numbers is JSON");
    let error = Body::read(&raw, slab::diary::SCHEMA).err()?;
    let (name, problem) = match &error {
        BodyError::Field { field, problem, .. } => {
            (field.split(['.', '[']).next().unwrap_or_default(), problem.clone())
        }
        BodyError::NoKind(_) | BodyError::UnknownKind { .. } => ("", error.to_string()),
    };
    let input = form.field(name).map_or(name, |field| field.inputs()[0]);
    Some(Mistake::new(input, MistakeKind::Refused(problem), ""))
}

/// The value of a field; `None` when it was left empty or a mistake was found.
fn read_field(field: &Field, typed: &Typed, measure: Measure, mistakes: &mut Vec<Mistake>) -> Option<Value> {
    let several = match field.ask {
        Ask::Mix => Some(read_mix(typed)),
        Ask::Lab => Some(
            read_numbers(field, typed, &[Span::Percent, Span::Opponent, Span::Opponent])
                .map(|numbers| numbers.map(|numbers| Value::Array(numbers.into_iter().map(number_json).collect()))),
        ),
        Ask::PictureBox(_) => Some(read_picture_box(field, typed)),
        _ => None,
    };
    if let Some(read) = several {
        return read.unwrap_or_else(|found| {
            mistakes.extend(found);
            None
        });
    }
    let text = typed.answer(field.name)?;
    match read_one(field.ask, text, measure) {
        Ok(value) => Some(value),
        Err(what) => {
            mistakes.push(Mistake::new(field.name, what, text));
            None
        }
    }
}

fn read_one(ask: Ask, text: &str, measure: Measure) -> Result<Value, MistakeKind> {
    match ask {
        Ask::Quantity(asked) => quantity(asked, text, measure).map(Value::from),
        Ask::Choice(values) => chosen(values.contains(&text), text, MistakeKind::NotAChoice),
        Ask::Trade(list) => chosen(list.knows(Trade::built_in(), text), text, MistakeKind::NotAnId),
        Ask::Entry(_) => {
            let id: EntryId = text.parse().map_err(|_| MistakeKind::NotAnId)?;
            Ok(Value::from(id.to_string()))
        }
        Ask::Panel | Ask::Text { .. } => Ok(Value::from(text.replace("\r\n", "\n"))),
        Ask::YesNo => match text {
            "yes" => Ok(Value::Bool(true)),
            "no" => Ok(Value::Bool(false)),
            _ => Err(MistakeKind::NotAChoice),
        },
        Ask::Count { least, most } => {
            let count = text.parse::<u32>().ok().filter(|count| (least..=most).contains(count));
            count.map(Value::from).ok_or(MistakeKind::NotACount { least, most })
        }
        Ask::Number(span) => {
            number::read(text).filter(|n| span.holds(*n)).map(number_json).ok_or(MistakeKind::NotANumber(span))
        }
        Ask::Money => number::money(text).map(Value::from).ok_or(MistakeKind::NotMoney),
        Ask::Currency => {
            let code = text.to_ascii_uppercase();
            let fits = code.len() == 3 && code.bytes().all(|b| b.is_ascii_uppercase());
            chosen(fits, &code, MistakeKind::NotACurrency)
        }
        Ask::TimeZone => chosen(jiff::tz::TimeZone::get(text).is_ok(), text, MistakeKind::NotATimeZone),
        Ask::Mix | Ask::Lab | Ask::PictureBox(_) => unreachable!("fields of several inputs are read before"),
    }
}

fn chosen(known: bool, text: &str, otherwise: MistakeKind) -> Result<Value, MistakeKind> {
    if known { Ok(Value::from(text)) } else { Err(otherwise) }
}

pub(crate) fn quantity(asked: Quantity, text: &str, measure: Measure) -> Result<String, MistakeKind> {
    asked.read(text, measure).map_err(|problem| MistakeKind::Quantity { asked, problem })
}

/// A whole number without decimals, as a person writes it in JSON.
fn number_json(number: f64) -> Value {
    // Within 2^53 a float holds every whole number exactly.
    if number.fract() == 0.0 && number.abs() < 9_007_199_254_740_992.0 { json!(number as i64) } else { json!(number) }
}

/// Rows of stain and parts. A row that is empty in both is skipped.
fn read_mix(typed: &Typed) -> Result<Option<Value>, Vec<Mistake>> {
    let (stains, parts) = (typed.get("mix_stain"), typed.get("mix_parts"));
    let (mut rows, mut mistakes) = (Vec::new(), Vec::new());
    for row in 0..stains.len().max(parts.len()) {
        let text = |of: &[String]| of.get(row).map(|t| t.trim().to_owned()).unwrap_or_default();
        let (stain, share) = (text(stains), text(parts));
        if stain.is_empty() && share.is_empty() {
            continue;
        }
        if stain.is_empty() {
            mistakes.push(Mistake::new("mix_stain", MistakeKind::Missing, ""));
        }
        match number::read(&share).filter(|n| Span::Positive.holds(*n)) {
            Some(number) => rows.push(json!({ "stain": stain, "parts": number_json(number) })),
            None => mistakes.push(Mistake::new("mix_parts", MistakeKind::NotANumber(Span::Positive), &share)),
        }
    }
    if mistakes.is_empty() { Ok((!rows.is_empty()).then_some(Value::Array(rows))) } else { Err(mistakes) }
}

/// The numbers of a field of several inputs: all of them, or none.
fn read_numbers(field: &Field, typed: &Typed, spans: &[Span]) -> Result<Option<Vec<f64>>, Vec<Mistake>> {
    let inputs = field.inputs();
    if inputs.iter().all(|input| typed.answer(input).is_none()) {
        return Ok(None);
    }
    let (mut numbers, mut mistakes) = (Vec::new(), Vec::new());
    for (input, span) in inputs.iter().zip(spans) {
        match typed.answer(input) {
            None => mistakes.push(Mistake::new(input, MistakeKind::Missing, "")),
            Some(text) => match number::read(text).filter(|n| span.holds(*n)) {
                Some(number) => numbers.push(number),
                None => mistakes.push(Mistake::new(input, MistakeKind::NotANumber(*span), text)),
            },
        }
    }
    if mistakes.is_empty() { Ok(Some(numbers)) } else { Err(mistakes) }
}

fn read_picture_box(field: &Field, typed: &Typed) -> Result<Option<Value>, Vec<Mistake>> {
    let Some(numbers) = read_numbers(field, typed, &[Span::Percent; 4])? else { return Ok(None) };
    let [x, y, w, h] = numbers[..] else { return Ok(None) };
    match PictureBox::percent(x, y, w, h) {
        Ok(inside) => Ok(serde_json::to_value(inside).ok()),
        Err(_) => {
            let input = field.inputs()[if x + w > 100.0 { 2 } else { 3 }];
            Err(vec![Mistake::new(input, MistakeKind::OutsideThePicture, typed.first(input).unwrap_or_default())])
        }
    }
}
