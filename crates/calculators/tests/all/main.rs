//! The tests of the calculations as a page asks them, in one program since they share the forms.

#![allow(clippy::unwrap_used, reason = "a test may stop")]

mod asked;
mod files;
mod forms;
mod messages;
mod refused;
mod safe;

use calculators::{NoFiles, Sum, SumError, ask};

/// What was typed, from pairs.
fn typed(pairs: &[(&str, &str)]) -> Vec<(String, Vec<String>)> {
    let mut out: Vec<(String, Vec<String>)> = Vec::new();
    for (field, text) in pairs {
        match out.iter_mut().find(|(known, _)| known == field) {
            Some((_, texts)) => texts.push((*text).to_owned()),
            None => out.push(((*field).to_owned(), vec![(*text).to_owned()])),
        }
    }
    out
}

fn asked(sum: &str, pairs: &[(&str, &str)]) -> Result<Sum, SumError> {
    ask(sum, &typed(pairs), &NoFiles)
}
