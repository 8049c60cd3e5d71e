//! What can be wrong with a temperature log or with the constants of an age formula.

use units::{Duration, Temperature, TemperatureDifference};

/// A maturity question that cannot be answered.
#[derive(Debug, Clone, Copy, PartialEq, thiserror::Error)]
pub enum CureError {
    /// No readings at all.
    #[error("the temperature log is empty; accepted: at least one reading")]
    EmptyLog,
    /// Times do not rise.
    #[error("reading {index} at {} h is not after the one before it; accepted: finite, rising times", .at.as_hours())]
    Order {
        /// Position of the later reading, from 0.
        index: usize,
        /// Its time.
        at: Duration,
    },
    /// A temperature no slab has: most likely the wrong unit or a broken probe.
    #[error("reading {index}: {}; accepted for a slab: -60 °C (-76 °F) to 100 °C (212 °F)", .value.show_celsius(1))]
    Reading {
        /// Position of the reading, from 0.
        index: usize,
        /// What was read.
        value: Temperature,
    },
    /// The longest silence allowed is not above zero.
    #[error("longest gap {} h; accepted: above 0, such as 3 h", .0.as_hours())]
    GapLength(Duration),
    /// The margin for gaps is below zero.
    #[error("margin for gaps {} °C; accepted: 0 or more, such as 5 °C", .0.as_celsius_degrees())]
    GapMargin(TemperatureDifference),
    /// The question ends before it begins.
    #[error("from {} h to {} h; accepted: an end at or after the start", .from.as_hours(), .until.as_hours())]
    Period {
        /// Start asked for.
        from: Duration,
        /// End asked for.
        until: Duration,
    },
    /// An activation that is not above zero.
    #[error("activation temperature {0} K; accepted: above 0 and up to 20 000 K, such as 5000 K")]
    Activation(f64),
    /// A datum or reference temperature no concrete is judged by.
    #[error("{field} {}; accepted: -60 °C (-76 °F) to 100 °C (212 °F)", .value.show_celsius(1))]
    Constant {
        /// Which constant.
        field: &'static str,
        /// What was given.
        value: Temperature,
    },
}
