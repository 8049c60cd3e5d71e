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

/// Words of one system that the other does not write.
const IMPERIAL: &[&str] = &[
    "f",
    "fahrenheit",
    "ft",
    "ft2",
    "ft3",
    "sqft",
    "sf",
    "foot",
    "feet",
    "in",
    "inch",
    "inches",
    "\"",
    "'",
    "yd",
    "yd2",
    "yd3",
    "gal",
    "gallon",
    "gallons",
    "qt",
    "fl",
    "oz",
    "lb",
    "lbs",
    "psi",
    "mil",
    "mils",
    "mph",
];
const METRIC: &[&str] =
    &["c", "celsius", "m", "m2", "m3", "cm", "mm", "km", "l", "ml", "g", "kg", "mpa", "kpa", "µm", "um"];

impl UnitSystem {
    /// Which system a quantity was written in, by its units: `66 °F` imperial, `380 µm` metric. Nothing where both
    /// write it so, as `45 s` and `82 %`.
    #[must_use]
    pub fn written_in(text: &str) -> Option<Self> {
        let text = text.to_lowercase().replace('²', "2").replace('³', "3").replace('′', "'").replace('″', "\"");
        let text = text.replace('μ', "µ").replace('\'', " ' ").replace('"', " \" ");
        // A unit may follow its number at once, and an exponent belongs to the unit.
        let first_letter = |word: &str| word.find(|c: char| c.is_alphabetic() || matches!(c, '\'' | '"'));
        text.split(|c: char| c.is_whitespace() || matches!(c, '/' | '.' | '°' | 'º' | '·')).find_map(|word| {
            let unit = first_letter(word).and_then(|at| word.get(at..))?;
            if IMPERIAL.contains(&unit) { Some(Self::Imperial) } else { METRIC.contains(&unit).then_some(Self::Metric) }
        })
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

#[cfg(test)]
mod tests {
    use super::UnitSystem::{self, Imperial, Metric};

    #[test]
    fn the_unit_tells_the_system() {
        for (text, system) in [
            ("66 °F", Some(Imperial)),
            ("66F", Some(Imperial)),
            ("12' 6 1/2\"", Some(Imperial)),
            ("4in", Some(Imperial)),
            ("520 lb/yd³", Some(Imperial)),
            ("0.5 ft²", Some(Imperial)),
            ("12 fl oz", Some(Imperial)),
            ("19 °C", Some(Metric)),
            ("3.8 m", Some(Metric)),
            ("310kg/m3", Some(Metric)),
            ("14.6 g/m2/d", Some(Metric)),
            ("380 µm", Some(Metric)),
            ("45 s", None),
            ("1 h 30 min", None),
            ("82 %", None),
            ("10.5", None),
            ("", None),
        ] {
            assert_eq!(UnitSystem::written_in(text), system, "{text}");
        }
    }
}
