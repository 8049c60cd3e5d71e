//! The one check that every object passes, whoever wrote it: a page, the command line, a file of lines.

use serde_json::{Map, Value};
use trade_facts::Trade;

use crate::field_error::{FieldError, FieldErrorKind};
use crate::form::{Field, Form, InputKind, Need, Rule, Span};
use crate::number;
use crate::picture_box::PictureBox;
use crate::quantity::QuantityProblem;

/// Checks the values of a form: every field known, of its kind and in its range; required ones there; rules held.
/// Words of choices and ids are brought to the one way they are written: `Wet covers` is `wet_covers`.
pub fn check(form: &Form, values: &mut Map<String, Value>) -> Vec<FieldError> {
    let mut errors = Vec::new();
    for (name, value) in values.iter_mut() {
        let Some(field) = form.field(name) else {
            errors.push(FieldError::new(name, FieldErrorKind::Unknown { fields: form.fields }, &plain(value)));
            continue;
        };
        if value.is_null() {
            continue;
        }
        if let Err((input, what)) = check_one(field, value) {
            errors.push(FieldError::new(input, what, &plain(value)));
        }
    }
    let answered = |name: &str| values.get(name).is_some_and(|value| !value.is_null());
    let left_out =
        |name: &str| form.rules.iter().any(|rule| matches!(rule, Rule::MayBeLeftOut(names) if names.contains(&name)));
    for field in form.fields.iter().filter(|f| f.need == Need::Required && !answered(f.name) && !left_out(f.name)) {
        errors.push(FieldError::new(field.inputs()[0], FieldErrorKind::Missing, ""));
    }
    errors.extend(form.rules.iter().filter_map(|rule| broken(*rule, values)));
    errors
}

fn broken(rule: Rule, values: &Map<String, Value>) -> Option<FieldError> {
    let answered = |name: &str| values.get(name).is_some_and(|value| !value.is_null());
    let none = |names: &'static [&'static str]| FieldError::new(names[0], FieldErrorKind::NoneAnswered(names), "");
    let not_both = |one: &str, other: &'static str| {
        FieldError::new(one, FieldErrorKind::NotBoth(other), &values.get(one).map(plain).unwrap_or_default())
    };
    match rule {
        Rule::MayBeLeftOut(_) => None,
        Rule::AtLeastOne(names) => (!names.iter().any(|name| answered(name))).then(|| none(names)),
        Rule::AtLeastOneOrYes(names) => {
            let (last, before) = names.split_last()?;
            let said = before.iter().any(|name| answered(name)) || values.get(*last) == Some(&Value::Bool(true));
            (!said).then(|| none(names))
        }
        Rule::NotBoth(one, other) => (answered(one) && answered(other)).then(|| not_both(one, other)),
        Rule::OneOf(names) => {
            let mut given = names.iter().filter(|name| answered(name));
            match (given.next(), given.next()) {
                (None, _) => Some(none(names)),
                (Some(one), Some(other)) => Some(not_both(one, other)),
                _ => None,
            }
        }
        Rule::Needs(one, other) => {
            (answered(one) && !answered(other)).then(|| FieldError::new(other, FieldErrorKind::Missing, ""))
        }
    }
}

type Wrong = (&'static str, FieldErrorKind);

fn check_one(field: &Field, value: &mut Value) -> Result<(), Wrong> {
    let name = field.inputs()[0];
    let wrong = |what| (name, what);
    match field.input {
        InputKind::Quantity(asked) => {
            let text = match &*value {
                Value::String(text) => text.clone(),
                Value::Number(number) => number.to_string(),
                _ => return Err(wrong(FieldErrorKind::WrongForm)),
            };
            let unfit = |problem| wrong(FieldErrorKind::Quantity { asked, problem: QuantityProblem::Read(problem) });
            asked.check(&text).map(drop).map_err(unfit)
        }
        InputKind::Choice(words) | InputKind::Offered { accepted: words, .. } => {
            one_of(value, words, &[]).map_err(wrong)
        }
        InputKind::Named { values, also } => one_of(value, values, also).map_err(wrong),
        InputKind::Term(list) => {
            *value = joined(value.as_str(), '-').map(Value::from).map_err(wrong)?;
            let known = list.knows(Trade::built_in(), value.as_str().unwrap_or_default());
            fits(known, wrong(FieldErrorKind::NotATerm(list)))
        }
        InputKind::Entry(_) => {
            let id = value.as_str().and_then(|text| uuid::Uuid::parse_str(text).ok());
            *value = id.map(|id| Value::from(id.to_string())).ok_or_else(|| wrong(FieldErrorKind::NotAnId))?;
            Ok(())
        }
        InputKind::Texts => {
            let texts = value.as_array().ok_or_else(|| wrong(FieldErrorKind::WrongForm))?;
            fits(texts.iter().all(Value::is_string), wrong(FieldErrorKind::WrongForm))
        }
        InputKind::Text { .. } | InputKind::Panel | InputKind::File => match value.as_str() {
            Some(text) => fits(!text.trim().is_empty(), wrong(FieldErrorKind::Missing)),
            None => Err(wrong(FieldErrorKind::WrongForm)),
        },
        InputKind::YesNo | InputKind::Flag => {
            fits(value.is_boolean(), wrong(FieldErrorKind::NotAChoice(&["yes", "no"])))
        }
        InputKind::Count { least, most } => {
            let count = value.as_u64().and_then(|count| u32::try_from(count).ok());
            fits(count.is_some_and(|c| (least..=most).contains(&c)), wrong(FieldErrorKind::NotACount { least, most }))
        }
        InputKind::Number(span) => number_in(value, span).map_err(wrong),
        InputKind::Money => {
            fits(value.as_str().is_some_and(|text| number::money(text).is_some()), wrong(FieldErrorKind::NotMoney))
        }
        InputKind::Currency => {
            let code = value.as_str().unwrap_or_default();
            fits(code.len() == 3 && code.bytes().all(|b| b.is_ascii_uppercase()), wrong(FieldErrorKind::NotACurrency))
        }
        InputKind::TimeZone => {
            let known = value.as_str().is_some_and(|name| jiff::tz::TimeZone::get(name).is_ok());
            fits(known, wrong(FieldErrorKind::NotATimeZone))
        }
        InputKind::Mix => check_mix(value),
        InputKind::Lab => {
            let spans = [Span::Percent, Span::Opponent, Span::Opponent];
            let numbers = value.as_array().filter(|numbers| numbers.len() == spans.len());
            let numbers = numbers.ok_or_else(|| wrong(FieldErrorKind::WrongForm))?;
            let each = field.inputs().iter().zip(numbers).zip(spans);
            each.into_iter()
                .try_for_each(|((input, number), span)| number_in(number, span).map_err(|what| (*input, what)))
        }
        InputKind::PictureBox(inputs) => {
            if serde_json::from_value::<PictureBox>(value.clone()).is_ok() {
                return Ok(());
            }
            let side = |side: &str| value.get(side).and_then(Value::as_f64);
            let too_wide = side("x").zip(side("w")).is_some_and(|(x, w)| x + w > 100.0);
            match [side("x"), side("y"), side("w"), side("h")].iter().all(Option::is_some) {
                true => Err((inputs[if too_wide { 2 } else { 3 }], FieldErrorKind::OutsideThePicture)),
                false => Err(wrong(FieldErrorKind::WrongForm)),
            }
        }
    }
}

fn check_mix(rows: &Value) -> Result<(), Wrong> {
    let rows = rows.as_array().filter(|rows| !rows.is_empty()).ok_or(("mix_stain", FieldErrorKind::Missing))?;
    for row in rows {
        if row.get("stain").and_then(Value::as_str).is_none_or(|stain| stain.trim().is_empty()) {
            return Err(("mix_stain", FieldErrorKind::Missing));
        }
        number_in(row.get("parts").unwrap_or(&Value::Null), Span::Positive).map_err(|what| ("mix_parts", what))?;
    }
    Ok(())
}

fn number_in(value: &Value, span: Span) -> Result<(), FieldErrorKind> {
    fits(value.as_f64().is_some_and(|number| span.holds(number)), FieldErrorKind::NotANumber(span))
}

fn fits<E>(fits: bool, otherwise: E) -> Result<(), E> {
    if fits { Ok(()) } else { Err(otherwise) }
}

/// Hyphen, underscore and space are one to a person.
fn joined(text: Option<&str>, joint: char) -> Result<String, FieldErrorKind> {
    let text = text.ok_or(FieldErrorKind::WrongForm)?.trim();
    Ok(text.chars().map(|c| if matches!(c, ' ' | '-' | '_') { joint } else { c.to_ascii_lowercase() }).collect())
}

/// Brings a word to the one way it is written.
fn one_of(
    value: &mut Value,
    words: &'static [&'static str],
    also: &'static [(&'static str, &'static str)],
) -> Result<(), FieldErrorKind> {
    let text = joined(value.as_str(), '_')?;
    let same = |word: &str| word.replace('-', "_") == text;
    let other = also.iter().find(|(name, _)| same(name)).map(|(_, word)| word);
    let word = words.iter().find(|word| same(word)).or(other).ok_or(FieldErrorKind::NotAChoice(words))?;
    *value = Value::from(*word);
    Ok(())
}

/// A value as an error names it.
fn plain(value: &Value) -> String {
    value.as_str().map_or_else(|| value.to_string(), str::to_owned)
}
