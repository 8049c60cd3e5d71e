//! Texts that must have a certain form before they are kept.

use crate::error::StoreError;

/// Longest value that an error repeats, in letters.
const REPEATED: usize = 200;

pub(crate) fn refused(field: &'static str, value: &str, accepted: &'static str) -> StoreError {
    StoreError::Field { field, value: value.chars().take(REPEATED).collect(), accepted }
}

/// Longest code, in letters.
const CODE_LETTERS: usize = 40;

/// A short word of a program, such as a language or a page.
pub(crate) fn code<'a>(field: &'static str, value: &'a str) -> Result<&'a str, StoreError> {
    let fits = (1..=CODE_LETTERS).contains(&value.len());
    if fits && value.bytes().all(|b| b.is_ascii_alphanumeric() || b == b'-' || b == b'_') {
        return Ok(value);
    }
    Err(refused(field, value, "1 to 40 letters A to Z, digits, \"-\" and \"_\""))
}

/// Longest password text, in bytes.
const PHC_BYTES: usize = 512;

/// A hashed password in the form `$id$…$salt$hash`. Only its shape is looked at, so that a password
/// that was forgotten to be hashed is never kept; the error does not repeat it.
pub(crate) fn password(phc: &str) -> Result<&str, StoreError> {
    let shaped = phc.starts_with('$') && phc.matches('$').count() >= 3 && phc.len() <= PHC_BYTES;
    if shaped && phc.bytes().all(|b| b.is_ascii_graphic()) {
        return Ok(phc);
    }
    Err(StoreError::PasswordNotHashed)
}
