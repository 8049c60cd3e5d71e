//! What was given to a calculator, read and checked by its form; every value that is used is noted for the answer.

use std::path::Path;

use form_schema::FieldErrorKind;
use serde_json::{Map, Value};
use units::{Fraction, Notation, Problem, RelativeHumidity};

use crate::calculation::{Calculation, Input};
use crate::calculator::Calculator;
use crate::error::{Accepted, CalculatorError};
use crate::files::Files;
use crate::shown::Shown;

/// The answers to a calculator's form.
pub(crate) struct Given<'a> {
    pub(crate) calculator: &'static Calculator,
    values: Map<String, Value>,
    files: &'a dyn Files,
    inputs: Vec<Input>,
    notes: Vec<String>,
}

/// Decimals of a plain number.
const DECIMALS: usize = 3;

impl<'a> Given<'a> {
    pub(crate) fn new(calculator: &'static Calculator, values: Map<String, Value>, files: &'a dyn Files) -> Self {
        Self { calculator, values, files, inputs: Vec::new(), notes: Vec::new() }
    }

    pub(crate) fn calculate(mut self) -> Result<Calculation, CalculatorError> {
        let answer = (self.calculator.run)(&mut self);
        match answer {
            Ok(found) => Ok(Calculation { inputs: self.inputs, notes: self.notes, ..found }),
            Err(error) => Err(error.of(self.calculator, &self.values, self.notes)),
        }
    }

    /// What was typed, with the unit it was read in.
    pub(crate) fn typed(&self, name: &str) -> Option<String> {
        Some(match self.values.get(name)? {
            Value::String(text) => text.clone(),
            other => other.to_string(),
        })
    }

    /// What was typed, or else what an empty field means.
    fn typed_or_usual(&self, name: &str) -> Option<String> {
        self.typed(name).or_else(|| Some(self.calculator.field(name)?.hints.usual?[0].to_owned()))
    }

    /// Notes something given.
    pub(crate) fn note(&mut self, name: &'static str, typed: &str, shown: Shown) {
        self.inputs.push(Input { name, shown, typed: Some(typed.trim().to_owned()) });
    }

    /// Notes a usual value that was taken since nothing was given.
    pub(crate) fn assumed(&mut self, name: &'static str, shown: Shown) {
        self.inputs.push(Input { name, shown, typed: None });
    }

    /// A quantity; nothing when it was left out.
    pub(crate) fn some<Q: Notation>(
        &mut self,
        name: &'static str,
        shown: fn(Q) -> Shown,
    ) -> Result<Option<Q>, CalculatorError> {
        self.typed(name).map(|text| self.noted(name, &text, shown)).transpose()
    }

    /// A quantity that this question needs, or else what an empty field means.
    pub(crate) fn read<Q: Notation>(
        &mut self,
        name: &'static str,
        shown: fn(Q) -> Shown,
    ) -> Result<Q, CalculatorError> {
        let text = self.typed_or_usual(name).ok_or_else(|| CalculatorError::missing(name))?;
        self.noted(name, &text, shown)
    }

    /// A quantity or its usual value.
    pub(crate) fn read_or<Q: Notation>(
        &mut self,
        name: &'static str,
        usual: Q,
        shown: fn(Q) -> Shown,
    ) -> Result<Q, CalculatorError> {
        let given = self.some(name, shown)?;
        if given.is_none() {
            self.assumed(name, shown(usual));
        }
        Ok(given.unwrap_or(usual))
    }

    fn noted<Q: Notation>(
        &mut self,
        name: &'static str,
        text: &str,
        shown: fn(Q) -> Shown,
    ) -> Result<Q, CalculatorError> {
        let value = Q::read(text).map_err(|error| CalculatorError::said(name, &error))?;
        self.note(name, text, shown(value));
        Ok(value)
    }

    /// A share of the whole; nothing when it was left out.
    pub(crate) fn share(&mut self, name: &'static str) -> Result<Option<Fraction>, CalculatorError> {
        self.some(name, Shown::share)
    }

    /// A plain number; nothing when it was left out.
    pub(crate) fn number(&mut self, name: &'static str, decimals: usize) -> Option<f64> {
        let value = self.values.get(name)?;
        let (number, typed) = (value.as_f64()?, value.to_string());
        self.note(name, &typed, Shown::Number(number, decimals));
        Some(number)
    }

    /// A plain number or its usual value.
    pub(crate) fn number_or(&mut self, name: &'static str, usual: f64) -> f64 {
        let given = self.number(name, DECIMALS);
        if given.is_none() {
            self.assumed(name, Shown::Number(usual, DECIMALS));
        }
        given.unwrap_or(usual)
    }

    /// A whole number, or what an empty field means; not noted.
    pub(crate) fn count(&self, name: &'static str) -> Result<u32, CalculatorError> {
        let text = self.typed_or_usual(name).ok_or_else(|| CalculatorError::missing(name))?;
        text.parse().map_err(|_| CalculatorError::missing(name))
    }

    /// A text, or what an empty field means; not noted.
    pub(crate) fn text(&self, name: &'static str) -> Result<String, CalculatorError> {
        self.typed_or_usual(name).ok_or_else(|| CalculatorError::missing(name))
    }

    /// Texts; not noted.
    pub(crate) fn texts(&self, name: &'static str) -> Vec<String> {
        let texts = self.values.get(name).and_then(Value::as_array).into_iter().flatten();
        texts.filter_map(|text| text.as_str().map(str::to_owned)).collect()
    }

    /// One of a list, or what an empty field means; not noted.
    pub(crate) fn choice<T: Copy>(
        &self,
        name: &'static str,
        list: &[(&'static str, T)],
    ) -> Result<(&'static str, T), CalculatorError> {
        let word = self.text(name)?;
        list.iter().find(|(known, _)| *known == word).copied().ok_or_else(|| CalculatorError::missing(name))
    }

    /// The file of this name in the field: its name without folders, and its bytes.
    pub(crate) fn file(&self, name: &'static str) -> Result<Option<(String, Vec<u8>)>, CalculatorError> {
        let Some(typed) = self.values.get(name).and_then(Value::as_str) else { return Ok(None) };
        let path = Path::new(typed);
        let short = path.file_name().map_or_else(|| typed.to_owned(), |n| n.to_string_lossy().into_owned());
        let bytes = self.files.read(path).map_err(|error| CalculatorError::no_file(name, typed, &short, &error))?;
        Ok(Some((short, bytes)))
    }

    /// Notes what was noticed in a file.
    pub(crate) fn noticed(&mut self, lines: Vec<String>) {
        self.notes.extend(lines);
    }
}

/// A bare finite number; nothing when anything else is written.
pub(crate) fn bare(text: &str) -> Option<f64> {
    text.trim().parse::<f64>().ok().filter(|n| n.is_finite())
}

/// One quantity out of a longer text of a field.
pub(crate) fn part<Q: Notation>(name: &'static str, text: &str, accepted: &'static str) -> Result<Q, CalculatorError> {
    Q::read(text).map_err(|error| match error.problem {
        Problem::OutOfRange { .. } | Problem::Negative => CalculatorError::impossible(name, text, accepted),
        _ => CalculatorError::unclear(name, text, accepted),
    })
}

/// A humidity out of a list, where a bare number is percent; one up to 1 could be a share and is asked back.
pub(crate) fn humidity(name: &'static str, text: &str) -> Result<RelativeHumidity, CalculatorError> {
    match bare(text) {
        None => part(name, text, "sum-accepts-humidity"),
        Some(n) if n > 0.0 && n <= 1.0 => {
            let (low, high) = (n.to_string(), ((n * 1e4).round() / 100.0).to_string());
            let accepted = Accepted::new("sum-accepts-signed-humidity").with("low", low).with("high", high);
            Err(CalculatorError::unclear(name, text, accepted))
        }
        Some(n) => {
            RelativeHumidity::percent(n).map_err(|_| CalculatorError::impossible(name, text, "sum-accepts-humidity"))
        }
    }
}

/// A number out of a longer text of a field.
pub(crate) fn number(name: &'static str, text: &str, accepted: &'static str) -> Result<f64, CalculatorError> {
    bare(text).ok_or_else(|| CalculatorError::unclear(name, text, accepted))
}

/// Whether what is wrong with a field is its value rather than how it was put.
pub(crate) fn is_value(what: &FieldErrorKind) -> bool {
    use form_schema::QuantityProblem::Read;
    let FieldErrorKind::Quantity { problem, .. } = what else { return false };
    matches!(problem, Read(Problem::OutOfRange { .. } | Problem::Negative))
}
