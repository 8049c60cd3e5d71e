//! One calculation's answer, the same for text and JSON.

use crate::calculator::Calculator;
use crate::caution::Caution;
use crate::given::Given;
use crate::rests_on::Basis;
use crate::shown::Shown;

/// Something given, as it was understood.
#[derive(Debug)]
pub(crate) struct Input {
    pub(crate) name: &'static str,
    pub(crate) shown: Shown,
    /// What was typed; nothing when the usual value was taken.
    pub(crate) typed: Option<String>,
}

/// Something found.
#[derive(Debug)]
pub(crate) struct Found {
    pub(crate) name: &'static str,
    pub(crate) shown: Shown,
}

/// A calculation with what it rests on.
#[derive(Debug)]
pub struct Calculation {
    pub(crate) calculator: &'static Calculator,
    pub(crate) inputs: Vec<Input>,
    /// The answer first.
    pub(crate) results: Vec<Found>,
    /// The formula.
    pub(crate) basis: Basis,
    /// Limits and further formulas that were used.
    pub(crate) also: Vec<Basis>,
    pub(crate) cautions: Vec<Caution>,
    /// What was noticed in a file.
    pub(crate) notes: Vec<String>,
}

impl Calculation {
    pub(crate) fn new(given: &Given<'_>, basis: impl Into<Basis>) -> Self {
        Self {
            calculator: given.calculator,
            inputs: Vec::new(),
            results: Vec::new(),
            basis: basis.into(),
            also: Vec::new(),
            cautions: Vec::new(),
            notes: Vec::new(),
        }
    }

    pub(crate) fn result(&mut self, name: &'static str, shown: Shown) {
        self.results.push(Found { name, shown });
    }

    pub(crate) fn note_also(&mut self, basis: impl Into<Basis>) {
        self.also.push(basis.into());
    }

    pub(crate) fn caution(&mut self, cautions: impl IntoIterator<Item = Caution>) {
        self.cautions.extend(cautions);
    }
}
