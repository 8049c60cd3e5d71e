//! Reading what was typed for a calculation: forgiving with units, one clear line when refused.
//!
//! A text that says nothing is bad use (exit 2); a value that cannot be is bad data (exit 3).

use units::{Fraction, Notation, Problem, ReadError, RelativeHumidity};

use crate::accepted::{Accepted, flag};
use crate::error::{ErrorKind, SumError, What};
use crate::shown::Shown;
use crate::sum::{Input, Sum};

/// A refusal that names the option, the text and what would be accepted.
pub(crate) fn impossible(name: &str, text: &str, accepted: impl Into<Accepted>) -> SumError {
    let (typed, accepted) = (text.trim().to_owned(), accepted.into());
    let said = format!("{} \"{typed}\"; accepted: {}", flag(name), accepted.as_option());
    SumError::new(ErrorKind::Data, Some(name), said, What::Impossible { typed, accepted })
}

/// Bad use of an option.
pub(crate) fn unclear(name: &str, text: &str, accepted: impl Into<Accepted>) -> SumError {
    let (typed, accepted) = (text.trim().to_owned(), accepted.into());
    let said = format!("{} \"{typed}\": accepted: {}", flag(name), accepted.as_option());
    SumError::bad_use(name, said, What::Unclear { typed, accepted })
}

/// An option that this question needs.
pub(crate) fn missing(name: &str, accepted: impl Into<Accepted>) -> SumError {
    let accepted = accepted.into();
    let said = format!("{} is missing; accepted: {}", flag(name), accepted.as_option());
    SumError::bad_use(name, said, What::Missing(accepted))
}

pub(crate) fn refused(name: &str, error: ReadError) -> SumError {
    let kind = match error.problem {
        Problem::OutOfRange { .. } | Problem::Negative => ErrorKind::Data,
        _ => ErrorKind::Use,
    };
    SumError::new(kind, Some(name), format!("{}: {error}", flag(name)), What::Unread(error))
}

/// A bare finite number; nothing when anything else is written.
pub(crate) fn bare(text: &str) -> Option<f64> {
    text.trim().parse::<f64>().ok().filter(|n| n.is_finite())
}

/// Reads a quantity with its unit.
pub(crate) fn quantity<Q: Notation>(name: &str, text: &str) -> Result<Q, SumError> {
    Q::read(text).map_err(|e| refused(name, e))
}

/// Reads a humidity; a bare number above 1 is percent, since no air has 60 times its share.
pub(crate) fn humidity(name: &str, text: &str) -> Result<RelativeHumidity, SumError> {
    match bare(text) {
        None => quantity(name, text),
        Some(n) if n > 0.0 && n <= 1.0 => {
            let (low, high) = (n.to_string(), ((n * 1e4).round() / 100.0).to_string());
            Err(unclear(name, text, Accepted::from("signed-humidity").with("low", low).with("high", high)))
        }
        Some(n) => RelativeHumidity::percent(n).map_err(|e| refused(name, e)),
    }
}

/// Reads a share of the whole: `25 %`, 0.25, or 25 for percent.
pub(crate) fn share(name: &str, text: &str) -> Result<Fraction, SumError> {
    match bare(text) {
        Some(1.0) => Err(unclear(name, text, "one-or-all")),
        Some(n) if n > 1.0 => Fraction::share(n / 100.0).map_err(|_| impossible(name, text, "share")),
        _ => quantity(name, text),
    }
}

/// Reads a bare number.
pub(crate) fn number(name: &str, text: &str, accepted: &'static str) -> Result<f64, SumError> {
    bare(text).ok_or_else(|| unclear(name, text, accepted))
}

impl Sum {
    /// Notes something given.
    pub(crate) fn given(&mut self, name: &'static str, typed: &str, shown: Shown) {
        self.inputs.push(Input { name, shown, typed: Some(typed.trim().to_owned()) });
    }

    /// Notes a usual value that was taken since nothing was given.
    pub(crate) fn assumed(&mut self, name: &'static str, shown: Shown) {
        self.inputs.push(Input { name, shown, typed: None });
    }

    /// Reads a quantity with its unit and notes it.
    pub(crate) fn read<Q: Notation>(
        &mut self,
        name: &'static str,
        text: &str,
        shown: fn(Q) -> Shown,
    ) -> Result<Q, SumError> {
        let value = quantity(name, text)?;
        self.given(name, text, shown(value));
        Ok(value)
    }

    /// The same for what may be left out.
    pub(crate) fn read_some<Q: Notation>(
        &mut self,
        name: &'static str,
        text: Option<&String>,
        shown: fn(Q) -> Shown,
    ) -> Result<Option<Q>, SumError> {
        text.map(|text| self.read(name, text, shown)).transpose()
    }

    /// The same with a usual value.
    pub(crate) fn read_or<Q: Notation>(
        &mut self,
        name: &'static str,
        text: Option<&String>,
        usual: Q,
        shown: fn(Q) -> Shown,
    ) -> Result<Q, SumError> {
        if let Some(text) = text {
            return self.read(name, text, shown);
        }
        self.assumed(name, shown(usual));
        Ok(usual)
    }

    /// Reads the humidity of air or slab and notes it.
    pub(crate) fn humidity(&mut self, name: &'static str, text: &str) -> Result<RelativeHumidity, SumError> {
        let value = humidity(name, text)?;
        let typed = if bare(text).is_some() { format!("{} %", text.trim()) } else { text.to_owned() };
        self.given(name, &typed, Shown::Humidity(value));
        Ok(value)
    }

    /// Reads a share and notes it; without a text the usual one.
    pub(crate) fn share_or(
        &mut self,
        name: &'static str,
        text: Option<&String>,
        usual: Fraction,
    ) -> Result<Fraction, SumError> {
        let Some(text) = text else {
            self.assumed(name, Shown::Percent(usual.as_percent()));
            return Ok(usual);
        };
        let value = share(name, text)?;
        self.inputs.push(Input { name, shown: Shown::Percent(value.as_percent()), typed: None });
        if let Some(input) = self.inputs.last_mut() {
            let typed = if bare(text).is_some() { format!("{} %", value.as_percent()) } else { text.trim().to_owned() };
            input.typed = Some(typed);
        }
        Ok(value)
    }

    /// Reads a bare number and notes it; without a text the usual one.
    pub(crate) fn number_or(
        &mut self,
        name: &'static str,
        text: Option<&String>,
        usual: f64,
        accepted: &'static str,
    ) -> Result<f64, SumError> {
        const DECIMALS: usize = 3;
        let Some(text) = text else {
            self.assumed(name, Shown::Number(usual, DECIMALS));
            return Ok(usual);
        };
        let value = number(name, text, accepted)?;
        self.given(name, text, Shown::Number(value, DECIMALS));
        Ok(value)
    }
}
