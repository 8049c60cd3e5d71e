//! What can be wrong with a layout.

use units::{Area, AreaUnit, Length, LengthUnit};

/// A layout that cannot be made.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
pub enum LayoutError {
    /// Only areas are known.
    #[error("plan: only areas are known, so no line has a place; accepted: a plan that is drawn")]
    NotDrawn,
    /// No such pattern.
    #[error("pattern: there is no number {index}, the plan has {count}; accepted: numbers from 0")]
    NoPattern {
        /// The number asked for.
        index: usize,
        /// How many there are.
        count: usize,
    },
    /// The lines cross in more places than is sensible.
    #[error("lines: they meet in more than {most} places; accepted: fewer lines, or wider spacing")]
    TooMany {
        /// The most places.
        most: usize,
    },
    /// More sections than can be joined.
    #[error("sections: {count} to join; accepted: up to {most}")]
    TooManySections {
        /// How many there are.
        count: usize,
        /// How many there may be.
        most: usize,
    },
    /// More cuts one way than a slab has.
    #[error("joints: {count} cuts one way; accepted: a thickness and a slab that need up to {most}")]
    TooManyCuts {
        /// How many it would take.
        count: usize,
        /// How many there may be.
        most: usize,
    },
    /// Lines so near to each other that rounding decides what lies between them.
    #[error("lines: the parts add up to {}, the slab has {}; accepted: lines that do not run within a hair of each other",
        .sum.show(AreaUnit::SquareMeter, 6), .whole.show(AreaUnit::SquareMeter, 6))]
    TooFine {
        /// What the parts add up to.
        sum: Area,
        /// What there is.
        whole: Area,
    },
    /// A thickness, a column or a wished area out of range.
    #[error("{field}: {typed} is not possible; accepted: {accepted}")]
    OutOfRange {
        /// The argument.
        field: &'static str,
        /// Its value.
        typed: String,
        /// What would be accepted.
        accepted: &'static str,
    },
    /// The trade facts lack a number that the rule of joint spacing is made of.
    #[error("limits.toml, {0}: not usable; accepted: its number and unit")]
    Fact(&'static str),
    /// The rule of joint spacing is not possible.
    #[error(transparent)]
    Rule(#[from] science::concrete::ConcreteError),
}

impl LayoutError {
    pub(super) fn length(field: &'static str, value: Length, accepted: &'static str) -> Self {
        Self::OutOfRange { field, typed: value.show(LengthUnit::Meter, 4), accepted }
    }

    pub(super) fn area(field: &'static str, value: Area, accepted: &'static str) -> Self {
        Self::OutOfRange { field, typed: value.show(AreaUnit::SquareMeter, 4), accepted }
    }
}
