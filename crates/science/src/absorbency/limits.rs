//! Classes of seconds.

use units::Duration;

use super::AbsorbencyError;

/// Limits between classes: k limits make k + 1 classes, class 0 the quickest.
#[derive(Debug, Clone, PartialEq)]
pub struct Limits(Vec<Duration>);

impl Limits {
    /// From rising times above 0.
    ///
    /// # Errors
    /// When there are none, or one is not above 0 and above the one before.
    pub fn new(limits: Vec<Duration>) -> Result<Self, AbsorbencyError> {
        if limits.is_empty() {
            return Err(AbsorbencyError::Limits { index: 0 });
        }
        let mut before = Duration::ZERO;
        for (index, limit) in limits.iter().enumerate() {
            if !(limit.as_seconds().is_finite() && *limit > before) {
                return Err(AbsorbencyError::Limits { index });
            }
            before = *limit;
        }
        Ok(Self(limits))
    }

    /// The limits, rising.
    #[must_use]
    pub fn times(&self) -> &[Duration] {
        &self.0
    }
}
