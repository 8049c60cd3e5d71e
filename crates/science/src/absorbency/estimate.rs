//! What is known of one place.

use units::{Duration, Fraction};

use super::{Limits, LogVariance};
use crate::chance::{normal_cdf, normal_quantile};

/// The time a drop takes at a place: ln(seconds) is normal with this mean and variance.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Estimate {
    pub(crate) mean: f64,
    pub(crate) variance: f64,
    /// t², what a single drop adds.
    pub(crate) nugget: f64,
}

/// A chance, with rounding outside 0 to 1 taken off.
pub(crate) fn fraction(share: f64) -> Fraction {
    Fraction::share(share.clamp(0.0, 1.0)).expect("clamped to the range of a fraction")
}

impl Estimate {
    /// Mean of ln(seconds).
    #[must_use]
    pub const fn log_mean(&self) -> f64 {
        self.mean
    }

    /// Variance of ln(seconds) of the place itself, without the noise of a drop; with the doubt
    /// about the level.
    #[must_use]
    pub fn log_variance(&self) -> LogVariance {
        LogVariance::computed(self.variance)
    }

    /// The time that is as likely too long as too short, e^m.
    #[must_use]
    pub fn median(&self) -> Duration {
        Duration::seconds(libm::exp(self.mean))
    }

    /// The mean time, e^(m + v/2) (log-normal distribution; grade M). Above the median, since times
    /// spread further up than down.
    #[must_use]
    pub fn mean(&self) -> Duration {
        Duration::seconds(libm::exp(self.mean + 0.5 * self.variance))
    }

    /// The time with this chance of being shorter. 0 s at share 0, without end at share 1.
    #[must_use]
    pub fn quantile(&self, share: Fraction) -> Duration {
        let deviations = normal_quantile(share.as_share());
        if deviations.is_infinite() {
            return Duration::seconds(if deviations < 0.0 { 0.0 } else { f64::INFINITY });
        }
        Duration::seconds(libm::exp(self.mean + deviations * libm::sqrt(self.variance)))
    }

    /// The band that holds the time with 80 % chance, 10 % left on each side.
    #[must_use]
    pub fn p10_p90(&self) -> (Duration, Duration) {
        (self.quantile(fraction(0.1)), self.quantile(fraction(0.9)))
    }

    fn share_above(&self, limit: Duration) -> f64 {
        // A variance of nothing makes the chance 0 or 1; the least positive number keeps 0/0 away.
        let off = self.mean - libm::log(limit.as_seconds());
        normal_cdf(off / libm::sqrt(self.variance).max(f64::MIN_POSITIVE))
    }

    /// The chance that the time here is longer than a limit above 0.
    #[must_use]
    pub fn chance_above(&self, limit: Duration) -> Fraction {
        fraction(self.share_above(limit))
    }

    /// The chance of each class, quickest first; they sum to 1 but for rounding.
    #[must_use]
    pub fn chances(&self, limits: &Limits) -> Vec<Fraction> {
        let mut above = 1.0;
        let mut chances: Vec<Fraction> = limits
            .times()
            .iter()
            .map(|limit| {
                let longer = self.share_above(*limit);
                let here = above - longer;
                above = longer;
                fraction(here)
            })
            .collect();
        chances.push(fraction(above));
        chances
    }

    /// The likeliest class, from 0 for the quickest; of equals the quicker.
    #[must_use]
    pub fn class(&self, limits: &Limits) -> usize {
        let chances = self.chances(limits);
        (1..chances.len()).fold(0, |best, i| if chances[i] > chances[best] { i } else { best })
    }

    /// What one more drop here would read: the place and the noise of the drop, v + t².
    #[must_use]
    pub fn fresh_drop(&self) -> Self {
        Self { variance: self.variance + self.nugget, ..*self }
    }
}
