//! Numbers with a bounded range: relative humidity, pH, a share of one.

use crate::notation::{Notation, Problem, ReadError, fixed};
use crate::number::{Token, tokens};

/// Relative humidity, 0 to 100 %, of air or of the pores in a slab.
#[derive(Debug, Clone, Copy, PartialEq, PartialOrd)]
pub struct RelativeHumidity(f64);

/// How far two relative humidities lie apart, in points of percent: from 80 % to 75 % is -5 points,
/// which is not the same as 5 percent of 80 %.
#[derive(Debug, Clone, Copy, PartialEq, PartialOrd, Default)]
pub struct HumidityDifference(f64);

/// Acidity, 0 (acid) to 14 (alkaline).
#[derive(Debug, Clone, Copy, PartialEq, PartialOrd)]
pub struct Ph(f64);

/// A share of the whole, 0 to 1: solids by volume, waste, recovery, water to cement.
#[derive(Debug, Clone, Copy, PartialEq, PartialOrd)]
pub struct Fraction(f64);

const RH_ACCEPTED: &str = "75 %, 75 % RH";

impl RelativeHumidity {
    /// From percent.
    ///
    /// # Errors
    /// When the value is not between 0 and 100.
    pub fn percent(value: f64) -> Result<Self, ReadError> {
        if (0.0..=100.0).contains(&value) {
            Ok(Self(value))
        } else {
            Err(ReadError {
                quantity: "relative humidity",
                text: format!("{value} %"),
                problem: Problem::OutOfRange { low: "0 %", high: "100 %" },
                accepted: RH_ACCEPTED,
            })
        }
    }

    /// In percent, 0 to 100.
    #[must_use]
    pub const fn as_percent(self) -> f64 {
        self.0
    }

    /// As a share, 0 to 1.
    #[must_use]
    pub const fn as_share(self) -> f64 {
        self.0 / 100.0
    }

    /// Printed as `75 %`.
    #[must_use]
    pub fn show(self, decimals: usize) -> String {
        format!("{} %", fixed(self.0, decimals))
    }
}

impl HumidityDifference {
    /// From points of percent: 5 for the step from 75 % to 80 %.
    #[must_use]
    pub const fn points(value: f64) -> Self {
        Self(value)
    }

    /// In points of percent.
    #[must_use]
    pub const fn as_points(self) -> f64 {
        self.0
    }

    /// As a share of one: 0.05 for 5 points.
    #[must_use]
    pub const fn as_share(self) -> f64 {
        self.0 / 100.0
    }
}

impl std::ops::Sub for RelativeHumidity {
    type Output = HumidityDifference;
    fn sub(self, other: Self) -> HumidityDifference {
        HumidityDifference(self.0 - other.0)
    }
}

impl Ph {
    /// From its number.
    ///
    /// # Errors
    /// When the value is not between 0 and 14.
    pub fn new(value: f64) -> Result<Self, ReadError> {
        if (0.0..=14.0).contains(&value) {
            Ok(Self(value))
        } else {
            Err(ReadError {
                quantity: "pH",
                text: value.to_string(),
                problem: Problem::OutOfRange { low: "0", high: "14" },
                accepted: "10.5, pH 7",
            })
        }
    }

    /// Its number, 0 to 14.
    #[must_use]
    pub const fn value(self) -> f64 {
        self.0
    }
}

impl Fraction {
    /// From a share of one.
    ///
    /// # Errors
    /// When the value is not between 0 and 1.
    pub fn share(value: f64) -> Result<Self, ReadError> {
        if (0.0..=1.0).contains(&value) {
            Ok(Self(value))
        } else {
            Err(ReadError {
                quantity: "share",
                text: value.to_string(),
                problem: Problem::OutOfRange { low: "0", high: "1" },
                accepted: "0.25, 25 %",
            })
        }
    }

    /// As a share of one.
    #[must_use]
    pub const fn as_share(self) -> f64 {
        self.0
    }

    /// In percent.
    #[must_use]
    pub const fn as_percent(self) -> f64 {
        self.0 * 100.0
    }
}

/// One number with optional words around it, each of which must be in `allowed` (lower case).
fn one_number(text: &str, allowed: &[&str]) -> Result<(f64, bool), Problem> {
    if text.trim().is_empty() {
        return Err(Problem::Empty);
    }
    let mut number = None;
    let mut percent = false;
    for token in tokens(text).ok_or(Problem::NotANumber)? {
        match token {
            Token::Number(n) if number.is_none() => number = Some(n),
            Token::Number(_) => return Err(Problem::NotANumber),
            Token::Word(word) => {
                let lower = word.to_lowercase();
                percent |= lower.starts_with('%') || lower == "pct" || lower == "percent";
                if !allowed.contains(&lower.as_str()) {
                    return Err(Problem::UnknownUnit(word));
                }
            }
        }
    }
    number.map(|n| (n, percent)).ok_or(Problem::NotANumber)
}

impl Notation for RelativeHumidity {
    fn read(text: &str) -> Result<Self, ReadError> {
        let fail = |problem| ReadError {
            quantity: "relative humidity",
            text: text.to_owned(),
            problem,
            accepted: RH_ACCEPTED,
        };
        let (number, percent) = one_number(text, &["%", "%rh", "rh", "hr", "percent", "pct"]).map_err(fail)?;
        if !percent {
            return Err(fail(Problem::NoUnit));
        }
        Self::percent(number).map_err(|e| fail(e.problem))
    }
}

impl Notation for Ph {
    fn read(text: &str) -> Result<Self, ReadError> {
        let fail = |problem| ReadError { quantity: "pH", text: text.to_owned(), problem, accepted: "10.5, pH 7" };
        let (number, _) = one_number(text.trim_start_matches("pH").trim_start_matches("ph"), &[]).map_err(fail)?;
        Self::new(number).map_err(|e| fail(e.problem))
    }
}

impl Notation for Fraction {
    fn read(text: &str) -> Result<Self, ReadError> {
        let fail = |problem| ReadError { quantity: "share", text: text.to_owned(), problem, accepted: "0.25, 25 %" };
        let (number, percent) = one_number(text, &["%", "percent", "pct"]).map_err(fail)?;
        Self::share(if percent { number / 100.0 } else { number }).map_err(|e| fail(e.problem))
    }
}
