//! Temperature and temperature difference: two types, since 5 °C of spread is 9 °F but a slab at
//! 5 °C is at 41 °F.

use crate::notation::{Notation, Problem, ReadError, fixed};
use crate::number::{Token, tokens};

/// 0 °C in kelvins.
const ICE: f64 = 273.15;

/// A temperature, of air, slab or mix.
///
/// Reads `55 °F`, `55F`, `13 C`, `-4 °C`, `286 K`. A difference is not a temperature:
/// ```compile_fail
/// use units::{Temperature, TemperatureDifference};
/// let wrong: Temperature = TemperatureDifference::celsius_degrees(3.0);
/// ```
/// ```compile_fail
/// use units::Temperature;
/// let wrong = Temperature::celsius(20.0) + Temperature::celsius(3.0);
/// ```
/// ```
/// use units::{Temperature, TemperatureDifference};
/// let slab = Temperature::celsius(20.0) + TemperatureDifference::celsius_degrees(3.0);
/// assert!((slab.as_fahrenheit() - 73.4).abs() < 1e-9);
/// ```
#[derive(Debug, Clone, Copy, PartialEq, PartialOrd)]
pub struct Temperature(f64);

/// How far two temperatures lie apart, such as slab above dew point.
#[derive(Debug, Clone, Copy, PartialEq, PartialOrd, Default)]
pub struct TemperatureDifference(f64);

impl Temperature {
    /// From degrees Celsius.
    #[must_use]
    pub const fn celsius(value: f64) -> Self {
        Self(value + ICE)
    }

    /// From degrees Fahrenheit.
    #[must_use]
    pub const fn fahrenheit(value: f64) -> Self {
        Self((value + 459.67) * 5.0 / 9.0)
    }

    /// From kelvins.
    #[must_use]
    pub const fn kelvins(value: f64) -> Self {
        Self(value)
    }

    /// In degrees Celsius.
    #[must_use]
    pub const fn as_celsius(self) -> f64 {
        self.0 - ICE
    }

    /// In degrees Fahrenheit.
    #[must_use]
    pub const fn as_fahrenheit(self) -> f64 {
        self.0 * 9.0 / 5.0 - 459.67
    }

    /// In kelvins.
    #[must_use]
    pub const fn as_kelvins(self) -> f64 {
        self.0
    }

    /// Printed in degrees Fahrenheit: `55.0 °F`.
    #[must_use]
    pub fn show_fahrenheit(self, decimals: usize) -> String {
        format!("{} °F", fixed(self.as_fahrenheit(), decimals))
    }

    /// Printed in degrees Celsius: `12.8 °C`.
    #[must_use]
    pub fn show_celsius(self, decimals: usize) -> String {
        format!("{} °C", fixed(self.as_celsius(), decimals))
    }
}

impl TemperatureDifference {
    /// From Celsius degrees (kelvins).
    #[must_use]
    pub const fn celsius_degrees(value: f64) -> Self {
        Self(value)
    }

    /// From Fahrenheit degrees.
    #[must_use]
    pub const fn fahrenheit_degrees(value: f64) -> Self {
        Self(value * 5.0 / 9.0)
    }

    /// In Celsius degrees (kelvins).
    #[must_use]
    pub const fn as_celsius_degrees(self) -> f64 {
        self.0
    }

    /// Half of it.
    #[must_use]
    pub const fn half(self) -> Self {
        Self(self.0 / 2.0)
    }

    /// In Fahrenheit degrees.
    #[must_use]
    pub const fn as_fahrenheit_degrees(self) -> f64 {
        self.0 * 9.0 / 5.0
    }
}

const TEMPERATURE_ACCEPTED: &str = "55 °F, 13 °C, 286 K";

/// The number and the lower-case unit letter of `55 °F`, `55F`, `13 deg C`.
fn number_and_scale(text: &str) -> Result<(f64, char), Problem> {
    if text.trim().is_empty() {
        return Err(Problem::Empty);
    }
    let tokens = tokens(text).ok_or(Problem::NotANumber)?;
    let Some((Token::Number(number), words)) = tokens.split_first() else {
        return Err(Problem::NotANumber);
    };
    let mut unit = String::new();
    for token in words {
        match token {
            Token::Word(word) => unit.push_str(word),
            Token::Number(_) => return Err(Problem::NotANumber),
        }
    }
    let bare = unit.replace(['°', 'º', '.'], "").to_lowercase();
    let bare = bare.strip_prefix("degrees").or_else(|| bare.strip_prefix("deg")).unwrap_or(&bare);
    match bare {
        "f" | "fahrenheit" => Ok((*number, 'f')),
        "c" | "celsius" => Ok((*number, 'c')),
        "k" | "kelvin" | "kelvins" => Ok((*number, 'k')),
        "" => Err(Problem::NoUnit),
        _ => Err(Problem::UnknownUnit(unit)),
    }
}

impl Notation for Temperature {
    fn read(text: &str) -> Result<Self, ReadError> {
        let fail = |problem| ReadError {
            quantity: "temperature",
            text: text.to_owned(),
            problem,
            accepted: TEMPERATURE_ACCEPTED,
        };
        let (number, scale) = number_and_scale(text).map_err(fail)?;
        let value = match scale {
            'f' => Self::fahrenheit(number),
            'c' => Self::celsius(number),
            _ => Self::kelvins(number),
        };
        if value.0 < 0.0 {
            return Err(fail(Problem::OutOfRange { low: "0 K (-459.67 °F)", high: "any" }));
        }
        Ok(value)
    }
}

impl Notation for TemperatureDifference {
    fn read(text: &str) -> Result<Self, ReadError> {
        let fail = |problem| ReadError {
            quantity: "temperature difference",
            text: text.to_owned(),
            problem,
            accepted: "5 °F, 3 °C",
        };
        let (number, scale) = number_and_scale(text).map_err(fail)?;
        Ok(match scale {
            'f' => Self::fahrenheit_degrees(number),
            _ => Self::celsius_degrees(number),
        })
    }
}

impl std::ops::Add<TemperatureDifference> for Temperature {
    type Output = Self;
    fn add(self, rise: TemperatureDifference) -> Self {
        Self(self.0 + rise.0)
    }
}

impl std::ops::Sub<TemperatureDifference> for Temperature {
    type Output = Self;
    fn sub(self, fall: TemperatureDifference) -> Self {
        Self(self.0 - fall.0)
    }
}

impl std::ops::Sub for Temperature {
    type Output = TemperatureDifference;
    fn sub(self, other: Self) -> TemperatureDifference {
        TemperatureDifference(self.0 - other.0)
    }
}
