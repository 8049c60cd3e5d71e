//! Readings of humidity in the slab and how well a possible slab agrees with them.

use units::{Duration, HumidityDifference, Length, RelativeHumidity};

use super::DryingError;

/// One reading of a humidity probe after it came to equilibrium in its hole.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Reading {
    /// When it was read, since placing.
    pub at: Duration,
    /// Depth of the probe from the top.
    pub depth: Length,
    /// What it read.
    pub humidity: RelativeHumidity,
}

/// How far readings may be off, as standard deviations.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ReadingError {
    /// Of each reading by itself: the probe, its equilibrium, the hole's place in the slab.
    pub each: HumidityDifference,
    /// Of all readings together: one calibration, one habit of reading.
    pub shared: HumidityDifference,
}

impl Default for ReadingError {
    /// 2 points each and 1.5 points shared, together 2.5: capacitive probes are usually stated to about
    /// ± 2 points between 50 and 90 % (grade M), and hole, sleeve and temperature add their own.
    fn default() -> Self {
        Self { each: HumidityDifference::points(2.0), shared: HumidityDifference::points(1.5) }
    }
}

impl ReadingError {
    pub(crate) fn check(self) -> Result<Self, DryingError> {
        if !(0.1..=20.0).contains(&self.each.as_points()) {
            return Err(DryingError::ReadingError(self.each.as_points()));
        }
        if !(0.0..=20.0).contains(&self.shared.as_points()) {
            return Err(DryingError::ReadingError(self.shared.as_points()));
        }
        Ok(self)
    }

    /// Standard deviation of one reading, share of 1.
    pub(crate) fn total(self) -> f64 {
        libm::hypot(self.each.as_share(), self.shared.as_share())
    }

    /// Logarithm of the normal likelihood of the differences (share of 1) up to a constant:
    /// covariance σ²I + b²11ᵀ, inverted by Sherman and Morrison's formula.
    pub(crate) fn log_likelihood(self, differences: impl Iterator<Item = f64>) -> f64 {
        let (mut count, mut sum, mut squares) = (0.0, 0.0, 0.0);
        for difference in differences {
            count += 1.0;
            sum += difference;
            squares += difference * difference;
        }
        let each = self.each.as_share() * self.each.as_share();
        let shared = self.shared.as_share() * self.shared.as_share();
        -0.5 / each * (squares - shared * sum * sum / (each + count * shared))
    }
}
