//! What was known at a moment.

use jiff::Timestamp;

use super::entry::Entry;

/// By which of its two moments an entry counts.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Basis {
    /// Only what was written down by then: "what did we know on 3 May?"
    #[default]
    NotedBy,
    /// Everything that had happened by then, even if it was written down later.
    HappenedBy,
}

/// A moment and what counts as known at it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Knowledge {
    /// The moment asked about.
    pub at: Timestamp,
    /// By which moment an entry counts.
    pub basis: Basis,
}

impl Knowledge {
    /// What was known at a moment.
    #[must_use]
    pub fn noted_by(at: Timestamp) -> Self {
        Self { at, basis: Basis::NotedBy }
    }

    /// What had happened by a moment.
    #[must_use]
    pub fn happened_by(at: Timestamp) -> Self {
        Self { at, basis: Basis::HappenedBy }
    }

    /// Whether the entry counts. What lies ahead of the moment never does.
    #[must_use]
    pub fn includes(&self, entry: &Entry) -> bool {
        entry.happened.instant() <= self.at && (self.basis == Basis::HappenedBy || entry.noted.instant() <= self.at)
    }
}
