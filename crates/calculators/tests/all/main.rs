//! The tests of the calculations as a page asks them, in one program since they share the forms.

#![allow(clippy::unwrap_used, reason = "a test may stop")]

mod asked;
mod files;
mod forms;
mod messages;
mod refused;
mod safe;

use calculators::{Calculation, CalculatorError, NoFiles, calculate};
use form_schema::FormData;

/// What was typed, from pairs.
fn typed(pairs: &[(&str, &str)]) -> FormData {
    pairs.iter().copied().collect()
}

/// As the command line asks: units must be written.
fn asked(calculator: &str, pairs: &[(&str, &str)]) -> Result<Calculation, CalculatorError> {
    calculate(calculator, &typed(pairs), None, &NoFiles)
}

/// The same without one field, and with it set.
fn without(typed: &FormData, field: &str) -> FormData {
    typed.iter().filter(|(name, _)| *name != field).flat_map(|(n, texts)| texts.iter().map(move |t| (n, t))).collect()
}

fn with(typed: &FormData, field: &str, texts: &[&str]) -> FormData {
    let mut typed = without(typed, field);
    texts.iter().for_each(|text| typed.push(field, *text));
    typed
}
