//! How well a walk closes: one part in so many.

use std::fmt;

use units::{Notation, Problem, ReadError};

const ACCEPTED: &str = "1:200, 1/500, 1 in 1000; from 1:20 to 1:1000000";

/// Relative precision `1:n`: a gap of one part in `n` parts walked. Read from 1:20 to 1:1 000 000.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Precision(f64);

impl Precision {
    /// One in `n`.
    #[must_use]
    pub const fn one_in(n: f64) -> Self {
        Self(n)
    }

    /// The `n` of `1:n`.
    #[must_use]
    pub const fn parts(self) -> f64 {
        self.0
    }
}

impl fmt::Display for Precision {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        if self.0 < 10.0 { write!(f, "1:{:.1}", self.0) } else { write!(f, "1:{:.0}", self.0) }
    }
}

impl Notation for Precision {
    fn read(text: &str) -> Result<Self, ReadError> {
        let fail = |problem| ReadError { quantity: "limit", text: text.to_owned(), problem, accepted: ACCEPTED };
        if text.trim().is_empty() {
            return Err(fail(Problem::Empty));
        }
        let folded = text.trim().to_lowercase().replace(" in ", ":").replace(" en ", ":").replace('/', ":");
        let parts = match folded.split_once(':') {
            Some((one, n)) if one.trim() == "1" => n.trim().parse::<f64>().ok(),
            _ => None,
        };
        let n = parts.ok_or_else(|| fail(Problem::NotANumber))?;
        if !(20.0..=1e6).contains(&n) {
            return Err(fail(Problem::OutOfRange { low: "1:20", high: "1:1000000" }));
        }
        Ok(Self(n))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn limits_read_and_refuse() {
        for text in ["1:200", "1/200", "1 in 200"] {
            assert_eq!(Precision::read(text).expect(text), Precision::one_in(200.0));
        }
        for text in ["", "200", "2:200", "1:5", "1:two", "1:nan"] {
            assert!(Precision::read(text).is_err(), "{text}");
        }
    }
}
