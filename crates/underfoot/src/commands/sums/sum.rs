//! One calculation's answer, the same for text and JSON.

use science::Source;

use super::caution::Caution;
use super::shown::Shown;

/// Something given, as it was understood.
#[derive(Debug)]
pub(super) struct Input {
    pub(super) name: &'static str,
    pub(super) shown: Shown,
    /// What was typed; nothing when the usual value was taken.
    pub(super) typed: Option<String>,
}

/// Something found.
#[derive(Debug)]
pub(super) struct Found {
    pub(super) name: &'static str,
    pub(super) shown: Shown,
}

/// A calculation with what it rests on.
#[derive(Debug)]
pub(super) struct Sum {
    /// Its name on the command line.
    pub(super) id: &'static str,
    pub(super) inputs: Vec<Input>,
    /// The answer first.
    pub(super) results: Vec<Found>,
    /// The formula.
    pub(super) source: Source,
    /// Limits and further formulas that were used.
    pub(super) also: Vec<Source>,
    pub(super) cautions: Vec<Caution>,
}

impl Sum {
    pub(super) fn new(id: &'static str, source: Source) -> Self {
        Self { id, inputs: Vec::new(), results: Vec::new(), source, also: Vec::new(), cautions: Vec::new() }
    }

    pub(super) fn result(&mut self, name: &'static str, shown: Shown) {
        self.results.push(Found { name, shown });
    }

    pub(super) fn also(&mut self, source: Source) {
        self.also.push(source);
    }

    pub(super) fn cautions(&mut self, cautions: impl IntoIterator<Item = Caution>) {
        self.cautions.extend(cautions);
    }
}
