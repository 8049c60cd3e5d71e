//! Reading a quantity from the way people write it, and the error that says what would be accepted.

use crate::number::{Token, tokens};

/// A quantity that reads trade notation.
///
/// Implemented by every quantity of this crate.
pub trait Notation: Sized + Copy {
    /// Reads the text; the unit is required unless the quantity has none (pH).
    ///
    /// # Errors
    /// [`ReadError`] naming the quantity, the text, what was wrong and what would be accepted.
    fn read(text: &str) -> Result<Self, ReadError>;
}

/// What was wrong with a text.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Problem {
    /// Nothing was written.
    Empty,
    /// No number could be read.
    NotANumber,
    /// A number stands without its unit.
    NoUnit,
    /// The unit is not one of this quantity's.
    UnknownUnit(String),
    /// Terms do not go from the larger unit to the smaller.
    OutOfOrder,
    /// Below zero where that means nothing.
    Negative,
    /// Outside the range the quantity allows; both ends as text with unit.
    OutOfRange {
        /// Lowest value accepted.
        low: &'static str,
        /// Highest value accepted.
        high: &'static str,
    },
}

/// A text that is not a quantity of the kind asked for.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
#[error("{quantity} \"{text}\": {}; accepted: {accepted}", explain(.problem))]
pub struct ReadError {
    /// The quantity's name, such as `length`.
    pub quantity: &'static str,
    /// What was typed.
    pub text: String,
    /// What was wrong with it.
    pub problem: Problem,
    /// Examples of what would be accepted.
    pub accepted: &'static str,
}

fn explain(problem: &Problem) -> String {
    match problem {
        Problem::Empty => "nothing was written".to_owned(),
        Problem::NotANumber => "no number can be read in it".to_owned(),
        Problem::NoUnit => "the unit is missing".to_owned(),
        Problem::UnknownUnit(unit) => format!("unknown unit \"{unit}\""),
        Problem::OutOfOrder => "write the larger unit first".to_owned(),
        Problem::Negative => "it must not be below zero".to_owned(),
        Problem::OutOfRange { low, high } => format!("it must lie between {low} and {high}"),
    }
}

/// One unit's words and its factor to SI.
pub(crate) struct UnitWords {
    pub(crate) words: &'static [&'static str],
    pub(crate) to_si: f64,
}

/// Lower case, without dots and inner spaces, superscripts as digits: `sq. ft` and `sq ft` are one.
fn fold_word(word: &str) -> String {
    word.chars()
        .filter_map(|c| match c {
            '.' | ' ' => None,
            '²' => Some('2'),
            '³' => Some('3'),
            'º' => Some('°'),
            'μ' => Some('µ'),
            other => Some(other),
        })
        .flat_map(char::to_lowercase)
        .collect()
}

fn find(units: &[UnitWords], word: &str) -> Option<usize> {
    let folded = fold_word(word);
    units.iter().position(|u| u.words.iter().any(|w| fold_word(w) == folded))
}

/// Reads one or more `number unit` terms, largest unit first, and adds them: `12 ft 6 1/2 in`.
///
/// `trailing` names the unit (by index) that a last bare number takes after the unit before it, as
/// inches after feet in `12'6`.
pub(crate) fn read_terms(
    quantity: &'static str,
    accepted: &'static str,
    units: &[UnitWords],
    trailing: Option<(usize, usize)>,
    text: &str,
) -> Result<f64, ReadError> {
    let fail = |problem| ReadError { quantity, text: text.to_owned(), problem, accepted };
    if text.trim().is_empty() {
        return Err(fail(Problem::Empty));
    }
    let tokens = tokens(text).ok_or_else(|| fail(Problem::NotANumber))?;
    let mut total = 0.0;
    let mut last: Option<usize> = None;
    let mut i = 0;
    while i < tokens.len() {
        let Token::Number(number) = tokens[i] else {
            return Err(fail(if i == 0 { Problem::NotANumber } else { unknown(&tokens[i..]) }));
        };
        i += 1;
        let words_start = i;
        while i < tokens.len() && matches!(tokens[i], Token::Word(_)) {
            i += 1;
        }
        let unit = if i == words_start {
            match (last, trailing) {
                (Some(before), Some((after, takes))) if before == after && i == tokens.len() => takes,
                _ => return Err(fail(Problem::NoUnit)),
            }
        } else {
            let word = joined(&tokens[words_start..i]);
            find(units, &word).ok_or_else(|| fail(Problem::UnknownUnit(word)))?
        };
        if last.is_some_and(|before| units[unit].to_si >= units[before].to_si) {
            return Err(fail(Problem::OutOfOrder));
        }
        total += number * units[unit].to_si;
        last = Some(unit);
    }
    if last.is_none() { Err(fail(Problem::NotANumber)) } else { Ok(total) }
}

fn joined(words: &[Token]) -> String {
    words
        .iter()
        .filter_map(|t| if let Token::Word(w) = t { Some(w.as_str()) } else { None })
        .collect::<Vec<_>>()
        .join(" ")
}

fn unknown(rest: &[Token]) -> Problem {
    let end = rest.iter().position(|t| matches!(t, Token::Number(_))).unwrap_or(rest.len());
    Problem::UnknownUnit(joined(&rest[..end]))
}

/// Prints with a fixed number of decimals and no negative zero.
pub(crate) fn fixed(value: f64, decimals: usize) -> String {
    let text = format!("{value:.decimals$}");
    match text.strip_prefix('-') {
        Some(rest) if rest.chars().all(|c| c == '0' || c == '.') => rest.to_owned(),
        _ => text,
    }
}
