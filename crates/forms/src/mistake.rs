//! What is wrong with what was typed, and the sentence that says what would be accepted.

use units::Problem;
use words::{Arg, Voice};

use crate::form::Span;
use crate::quantity::{Quantity, QuantityKind, QuantityProblem};

/// One mistake in a form. Printed, it is its input and the sentence in English with imperial examples;
/// a page asks [`Mistake::said`] in the reader's own.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
#[error("{field} \"{typed}\": {}", self.said(Voice::default()))]
pub struct Mistake {
    /// The input it belongs to, one of [`crate::Field::inputs`] or of [`crate::PLACE_INPUTS`], or
    /// `preset`.
    pub field: String,
    /// What is wrong.
    pub what: MistakeKind,
    /// What was typed.
    pub typed: String,
}

/// What is wrong.
#[derive(Debug, Clone, PartialEq)]
pub enum MistakeKind {
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

impl Mistake {
    pub(crate) fn new(field: &str, what: MistakeKind, typed: &str) -> Self {
        Self { field: field.to_owned(), what, typed: typed.to_owned() }
    }

    /// The sentence for a reader: what is wrong, and what would be accepted with an example in the
    /// reader's measure.
    #[must_use]
    pub fn said(&self, voice: Voice) -> String {
        let typed = || ("typed", Arg::from(self.typed.as_str()));
        let say = |key: &str, args: &[(&str, Arg<'_>)]| voice.say(&format!("mistake-{key}"), args);
        match &self.what {
            MistakeKind::Missing => say("missing", &[]),
            MistakeKind::NoneAnswered(names) => say("none-answered", &[("fields", list(voice, names).into())]),
            MistakeKind::NotBoth(other) => say("not-both", &[("other", crate::words_of::name(voice, other).into())]),
            MistakeKind::Quantity { asked, problem } => self.quantity_said(voice, asked, problem),
            MistakeKind::NotAChoice => say("not-a-choice", &[typed()]),
            MistakeKind::NotAnId => say("not-an-id", &[typed()]),
            MistakeKind::NotACount { least, most } => {
                say("not-a-count", &[typed(), ("least", (*least).into()), ("most", (*most).into())])
            }
            MistakeKind::NotANumber(span) => say(
                match span {
                    Span::Positive => "not-positive",
                    Span::NotNegative => "not-zero-or-more",
                    Span::Percent => "not-zero-to-hundred",
                    Span::Opponent => "not-a-color-number",
                },
                &[typed()],
            ),
            MistakeKind::NotMoney => say("not-money", &[typed()]),
            MistakeKind::NotACurrency => say("not-a-currency", &[typed()]),
            MistakeKind::NotATimeZone => say("not-a-time-zone", &[typed(), ("example", crate::TIME_ZONES[1].into())]),
            MistakeKind::OutsideThePicture => say("outside-the-picture", &[]),
            MistakeKind::NoPatch => say("no-patch", &[]),
            MistakeKind::Refused(problem) => say("refused", &[("problem", problem.as_str().into())]),
        }
    }

    fn quantity_said(&self, voice: Voice, asked: &Quantity, problem: &QuantityProblem) -> String {
        let example = asked.example(voice.measure);
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
        voice.say(&format!("mistake-{key}"), &args)
    }
}

fn list(voice: Voice, names: &[&'static str]) -> String {
    let names: Vec<String> = names.iter().map(|name| crate::words_of::name(voice, name)).collect();
    voice.list(&names)
}
