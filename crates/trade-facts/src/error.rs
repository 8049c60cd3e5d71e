//! What can be wrong with the data files.

use std::fmt;

/// What kind of mistake a data file has.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum TradeErrorKind {
    /// A file that must be there is not.
    MissingFile,
    /// A file that is not one of ours.
    UnknownFile,
    /// The text is not TOML.
    NotToml,
    /// A table, a field or a value type the record does not have.
    Shape,
    /// Two records of a file share an id.
    DuplicateId,
    /// A source key that `sources.toml` does not hold.
    UnknownSource,
    /// A source that no record uses.
    OrphanSource,
    /// Graded as verified, but no source is named.
    VerifiedWithoutSource,
    /// Graded surer than the best of its sources was seen.
    SurerThanSource,
    /// Graded as sourceless, but a source is named.
    SourceDespiteGrade,
    /// A grade word that is not one of the five.
    UnknownGrade,
    /// A unit word that is not known.
    UnknownUnit,
    /// Low, mid and high are not in rising order.
    OutOfOrder,
    /// A reference to a record that does not exist.
    UnknownReference,
    /// A number outside its range.
    OutOfRange,
}

impl fmt::Display for TradeErrorKind {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Self::MissingFile => "file missing",
            Self::UnknownFile => "unknown file",
            Self::NotToml => "not TOML",
            Self::Shape => "wrong shape",
            Self::DuplicateId => "id used twice",
            Self::UnknownSource => "unknown source key",
            Self::OrphanSource => "source used by no record",
            Self::VerifiedWithoutSource => "verified without a source",
            Self::SurerThanSource => "surer than its best source",
            Self::SourceDespiteGrade => "source named under a grade that has none",
            Self::UnknownGrade => "unknown grade",
            Self::UnknownUnit => "unknown unit",
            Self::OutOfOrder => "low, mid, high not rising",
            Self::UnknownReference => "reference to no record",
            Self::OutOfRange => "number out of range",
        })
    }
}

/// A mistake in the data files: where it is, what was found, and what would be accepted.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
#[error("{file}, record {record:?}, field {field:?}: {kind}: {value}; accepted: {accepted}")]
pub struct TradeError {
    /// What kind of mistake.
    pub kind: TradeErrorKind,
    /// File name.
    pub file: Box<str>,
    /// Record id; empty where the mistake is not in a record.
    pub record: Box<str>,
    /// Field name; empty where the mistake is not in a field.
    pub field: Box<str>,
    /// What was found.
    pub value: Box<str>,
    /// What would be accepted.
    pub accepted: Box<str>,
}

/// A place in a data file, from which errors are made.
#[derive(Debug, Clone, Copy)]
pub(super) struct Place<'a> {
    pub(super) file: &'a str,
    pub(super) record: &'a str,
}

impl Place<'_> {
    pub(super) fn error(
        self,
        kind: TradeErrorKind,
        field: &str,
        value: impl fmt::Display,
        accepted: impl fmt::Display,
    ) -> TradeError {
        TradeError {
            kind,
            file: self.file.into(),
            record: self.record.into(),
            field: field.into(),
            value: value.to_string().into(),
            accepted: accepted.to_string().into(),
        }
    }
}
