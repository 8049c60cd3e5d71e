//! What is wrong with what was typed, and the sentence that says what would be accepted.

use localization::{Arg, Locale};
use units::Problem;

use crate::form::Span;
use crate::quantity::{Quantity, QuantityKind, QuantityProblem};

/// One mistake in a form. Printed, it is its input and the sentence in English with imperial examples;
/// a page asks [`FieldError::said`] in the reader's own.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
#[error("{field} \"{typed}\": {}", self.said(Locale::default()))]
pub struct FieldError {
    /// The input it belongs to, one of [`crate::Field::inputs`] or of [`crate::PLACE_INPUTS`], or
    /// `preset`.
    pub field: String,
    /// What is wrong.
    pub what: FieldErrorKind,
    /// What was typed.
    pub typed: String,
}

/// What is wrong.
#[derive(Debug, Clone, PartialEq)]
pub enum FieldErrorKind {
    /// It must be answered.
    Missing,
    /// At least one of these fields must be answered.
    NoneAnswered(&'static [&'static str]),
    /// This field and the other one exclude each other.
    NotBoth(&'static str),
    /// It is no such quantity.
    Quantity {
        /// What was asked.
        asked: Quantity,
        /// What is wrong with it.
        problem: QuantityProblem,
    },
    /// It is none of the choices.
    NotAChoice,
    /// It is no name of a panel, entry, finish or other thing to choose.
    NotAnId,
    /// It is no whole number within these ends.
    NotACount {
        /// Least accepted.
        least: u32,
        /// Most accepted.
        most: u32,
    },
    /// It is no number that is accepted.
    NotANumber(Span),
    /// It is no amount of money.
    NotMoney,
    /// It is no currency code.
    NotACurrency,
    /// It is no time zone.
    NotATimeZone,
    /// The box leaves the picture.
    OutsideThePicture,
    /// Fewer than three corners, or x and y do not pair.
    NoPatch,
    /// What the diary's own reader says; in its English words.
    Refused(String),
}

impl FieldError {
    pub(crate) fn new(field: &str, what: FieldErrorKind, typed: &str) -> Self {
        Self { field: field.to_owned(), what, typed: typed.to_owned() }
    }

    /// The sentence for a reader: what is wrong, and what would be accepted with an example in the
    /// reader's measure.
    #[must_use]
    pub fn said(&self, locale: Locale) -> String {
        let typed = || ("typed", Arg::from(self.typed.as_str()));
        let say = |key: &str, args: &[(&str, Arg<'_>)]| locale.message(&format!("mistake-{key}"), args);
        match &self.what {
            FieldErrorKind::Missing => say("missing", &[]),
            FieldErrorKind::NoneAnswered(names) => say("none-answered", &[("fields", list(locale, names).into())]),
            FieldErrorKind::NotBoth(other) => {
                say("not-both", &[("other", crate::words_of::name(locale, other).into())])
            }
            FieldErrorKind::Quantity { asked, problem } => self.quantity_said(locale, asked, problem),
            FieldErrorKind::NotAChoice => say("not-a-choice", &[typed()]),
            FieldErrorKind::NotAnId => say("not-an-id", &[typed()]),
            FieldErrorKind::NotACount { least, most } => {
                say("not-a-count", &[typed(), ("least", (*least).into()), ("most", (*most).into())])
            }
            FieldErrorKind::NotANumber(span) => say(
                match span {
                    Span::Positive => "not-positive",
                    Span::NotNegative => "not-zero-or-more",
                    Span::Percent => "not-zero-to-hundred",
                    Span::Opponent => "not-a-color-number",
                },
                &[typed()],
            ),
            FieldErrorKind::NotMoney => say("not-money", &[typed()]),
            FieldErrorKind::NotACurrency => say("not-a-currency", &[typed()]),
            FieldErrorKind::NotATimeZone => {
                say("not-a-time-zone", &[typed(), ("example", crate::TIME_ZONES[1].into())])
            }
            FieldErrorKind::OutsideThePicture => say("outside-the-picture", &[]),
            FieldErrorKind::NoPatch => say("no-patch", &[]),
            FieldErrorKind::Refused(problem) => say("refused", &[("problem", problem.as_str().into())]),
        }
    }

    fn quantity_said(&self, locale: Locale, asked: &Quantity, problem: &QuantityProblem) -> String {
        let example = asked.example(locale.unit_system);
        let typed = self.typed.as_str();
        let key = match problem {
            QuantityProblem::ShareOrPercent => "share-or-percent",
            QuantityProblem::Read(problem) => match problem {
                Problem::Empty | Problem::NotANumber => "no-number",
                Problem::NoUnit => "no-unit",
                Problem::UnknownUnit(_) => "unknown-unit",
                Problem::OutOfOrder => "out-of-order",
                Problem::Negative => "negative",
                Problem::OutOfRange { .. } => match asked.kind {
                    QuantityKind::Ph => "ph-range",
                    QuantityKind::Ratio => "ratio-range",
                    QuantityKind::Temperature => "too-cold",
                    _ => "percent-range",
                },
            },
        };
        let mut args: Vec<(&str, Arg<'_>)> = vec![("typed", typed.into()), ("example", example.into())];
        if let QuantityProblem::Read(Problem::UnknownUnit(unit)) = problem {
            args.push(("unit", unit.as_str().into()));
        }
        locale.message(&format!("mistake-{key}"), &args)
    }
}

fn list(locale: Locale, names: &[&'static str]) -> String {
    let names: Vec<String> = names.iter().map(|name| crate::words_of::name(locale, name)).collect();
    locale.list(&names)
}
