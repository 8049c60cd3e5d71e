//! Reading what was typed for a calculation: forgiving with units, one clear line when refused.
//!
//! A text that says nothing is bad use (exit 2); a value that cannot be is bad data (exit 3).

use units::{Fraction, Notation, Problem, ReadError, RelativeHumidity};

use super::shown::Shown;
use super::sum::{Input, Sum};
use crate::failure::Failure;

/// `--water-cement` from `water_cement`.
pub(super) fn flag(name: &str) -> String {
    format!("--{}", name.replace('_', "-"))
}

/// A refusal that names the option, the text and what would be accepted.
pub(super) fn impossible(name: &str, text: &str, accepted: &str) -> Failure {
    Failure::Data(format!("{} \"{}\"; accepted: {accepted}", flag(name), text.trim()))
}

/// Bad use of an option.
pub(super) fn unclear(name: &str, text: &str, accepted: &str) -> Failure {
    Failure::Use(format!("{} \"{}\": accepted: {accepted}", flag(name), text.trim()))
}

/// An option that this question needs.
pub(super) fn missing(name: &str, accepted: &str) -> Failure {
    Failure::Use(format!("{} is missing; accepted: {accepted}", flag(name)))
}

fn refused(name: &str, error: &ReadError) -> Failure {
    let text = format!("{}: {error}", flag(name));
    match error.problem {
        Problem::OutOfRange { .. } | Problem::Negative => Failure::Data(text),
        _ => Failure::Use(text),
    }
}

/// A bare finite number; nothing when anything else is written.
fn bare(text: &str) -> Option<f64> {
    text.trim().parse::<f64>().ok().filter(|n| n.is_finite())
}

/// Reads a quantity with its unit.
pub(super) fn quantity<Q: Notation>(name: &str, text: &str) -> Result<Q, Failure> {
    Q::read(text).map_err(|e| refused(name, &e))
}

/// Reads a humidity; a bare number above 1 is per cent, since no air has 60 times its share.
pub(super) fn humidity(name: &str, text: &str) -> Result<RelativeHumidity, Failure> {
    match bare(text) {
        None => quantity(name, text),
        Some(n) if n > 0.0 && n <= 1.0 => Err(unclear(
            name,
            text,
            &format!("per cent with its sign, since it could mean {n} % or {} %", (n * 1e4).round() / 100.0),
        )),
        Some(n) => RelativeHumidity::percent(n).map_err(|e| refused(name, &e)),
    }
}

/// Reads a share of the whole: `25 %`, 0.25, or 25 for per cent.
pub(super) fn share(name: &str, text: &str) -> Result<Fraction, Failure> {
    match bare(text) {
        Some(1.0) => Err(unclear(name, text, "1 % or 100 %, with the sign")),
        Some(n) if n > 1.0 => Fraction::share(n / 100.0).map_err(|_| impossible(name, text, "0 % to 100 %")),
        _ => quantity(name, text),
    }
}

/// Reads a bare number.
pub(super) fn number(name: &str, text: &str, accepted: &str) -> Result<f64, Failure> {
    bare(text).ok_or_else(|| unclear(name, text, accepted))
}

impl Sum {
    /// Notes something given.
    pub(super) fn given(&mut self, name: &'static str, typed: &str, shown: Shown) {
        self.inputs.push(Input { name, shown, typed: Some(typed.trim().to_owned()) });
    }

    /// Notes a usual value that was taken since nothing was given.
    pub(super) fn assumed(&mut self, name: &'static str, shown: Shown) {
        self.inputs.push(Input { name, shown, typed: None });
    }

    /// Reads a quantity with its unit and notes it.
    pub(super) fn read<Q: Notation>(
        &mut self,
        name: &'static str,
        text: &str,
        shown: fn(Q) -> Shown,
    ) -> Result<Q, Failure> {
        let value = quantity(name, text)?;
        self.given(name, text, shown(value));
        Ok(value)
    }

    /// The same for what may be left out.
    pub(super) fn read_some<Q: Notation>(
        &mut self,
        name: &'static str,
        text: Option<&String>,
        shown: fn(Q) -> Shown,
    ) -> Result<Option<Q>, Failure> {
        text.map(|text| self.read(name, text, shown)).transpose()
    }

    /// The same with a usual value.
    pub(super) fn read_or<Q: Notation>(
        &mut self,
        name: &'static str,
        text: Option<&String>,
        usual: Q,
        shown: fn(Q) -> Shown,
    ) -> Result<Q, Failure> {
        if let Some(text) = text {
            return self.read(name, text, shown);
        }
        self.assumed(name, shown(usual));
        Ok(usual)
    }

    /// Reads the humidity of air or slab and notes it.
    pub(super) fn humidity(&mut self, name: &'static str, text: &str) -> Result<RelativeHumidity, Failure> {
        let value = humidity(name, text)?;
        let typed = if bare(text).is_some() { format!("{} %", text.trim()) } else { text.to_owned() };
        self.given(name, &typed, Shown::Humidity(value));
        Ok(value)
    }

    /// Reads a share and notes it; without a text the usual one.
    pub(super) fn share_or(
        &mut self,
        name: &'static str,
        text: Option<&String>,
        usual: Fraction,
    ) -> Result<Fraction, Failure> {
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
    pub(super) fn number_or(
        &mut self,
        name: &'static str,
        text: Option<&String>,
        usual: f64,
        accepted: &str,
    ) -> Result<f64, Failure> {
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
