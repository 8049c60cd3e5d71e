//! What is wrong with an answer. A code: the sentence, with what would be accepted, is in crate `localization`.

use crate::form::{Span, TermList};
use crate::quantity::{QuantityInput, QuantityProblem};

/// One field that cannot be accepted.
#[derive(Debug, Clone, PartialEq)]
pub struct FieldError {
    /// The input it belongs to, one of [`crate::Field::inputs`], or `preset`; the name itself where no field
    /// has it.
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
    /// It takes one answer and has several.
    GivenTwice,
    /// This field and the other one exclude each other.
    NotBoth(&'static str),
    /// It is no such quantity.
    Quantity {
        /// What was asked.
        asked: QuantityInput,
        /// What is wrong with it.
        problem: QuantityProblem,
    },
    /// No field has this name.
    Unknown {
        /// The fields there are.
        fields: &'static [crate::Field],
    },
    /// It is a list, an object or a number where a text is asked, or the other way round.
    WrongForm,
    /// It is none of these words.
    NotAChoice(&'static [&'static str]),
    /// It is no id of this list of the trade facts.
    NotATerm(TermList),
    /// It is no id or label of an entry.
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
    /// An error of a field.
    #[must_use]
    pub fn new(field: &str, what: FieldErrorKind, typed: &str) -> Self {
        Self { field: field.to_owned(), what, typed: typed.to_owned() }
    }
}
