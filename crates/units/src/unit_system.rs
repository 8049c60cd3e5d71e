//! Which units a person reads and means by a bare number.

use std::str::FromStr;

/// The units a person reads.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default)]
pub enum UnitSystem {
    /// Feet, inches, gallons, pounds, °F.
    #[default]
    Imperial,
    /// Meters, liters, kilograms, °C.
    Metric,
}

/// A language or system of units that there is not.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
#[error("{what} \"{given}\" is not known; accepted: {accepted}")]
pub struct UnknownChoice {
    /// `language` or `units`.
    pub what: &'static str,
    /// What was given.
    pub given: String,
    /// What would be accepted.
    pub accepted: &'static str,
}

impl UnitSystem {
    /// Both.
    pub const ALL: [Self; 2] = [Self::Imperial, Self::Metric];

    /// Its name in settings and addresses: `imperial` or `metric`.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::Imperial => "imperial",
            Self::Metric => "metric",
        }
    }
}

impl FromStr for UnitSystem {
    type Err = UnknownChoice;
    fn from_str(text: &str) -> Result<Self, UnknownChoice> {
        Self::ALL.into_iter().find(|unit_system| unit_system.name() == text).ok_or_else(|| UnknownChoice {
            what: "units",
            given: text.to_owned(),
            accepted: "imperial, metric",
        })
    }
}
