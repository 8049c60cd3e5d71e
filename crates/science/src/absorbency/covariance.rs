//! The covariance of ln(seconds) between places.

use units::Length;

use super::AbsorbencyError;
use super::falling::falling;

/// A variance of ln(seconds): a pure number. 0.04 is a standard deviation of 0.2, a factor of 1.22.
#[derive(Debug, Clone, Copy, PartialEq, PartialOrd)]
pub struct LogVariance(f64);

impl LogVariance {
    /// From its number, 0 or more.
    ///
    /// # Errors
    /// When the number is negative or not finite.
    pub fn new(value: f64) -> Result<Self, AbsorbencyError> {
        if value.is_finite() && value >= 0.0 { Ok(Self(value)) } else { Err(AbsorbencyError::LogVariance(value)) }
    }

    /// A variance that a sum of squares gave; rounding below zero counts as zero.
    pub(crate) fn computed(value: f64) -> Self {
        Self(value.max(0.0))
    }

    /// Its number.
    #[must_use]
    pub const fn value(self) -> f64 {
        self.0
    }

    /// By which factor seconds lie off at one standard deviation: e^√v, 1 or more.
    #[must_use]
    pub fn spread_factor(self) -> f64 {
        libm::exp(libm::sqrt(self.0))
    }
}

/// The three numbers of the Matérn 3/2 covariance with noise.
///
/// Matérn with smoothness 3/2: Rasmussen and Williams, Gaussian Processes for Machine Learning 2006,
/// eq. 4.17 (grade M; values checked against PyKrige and scikit-learn, grade V).
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Covariance {
    /// s²: variance of the smooth part, above 0.
    pub sill: LogVariance,
    /// l: how far apart places still drink alike, above 0. At this distance 48 % of s² is shared.
    pub length: Length,
    /// t²: variance of a single drop about its place, above 0.
    pub nugget: LogVariance,
}

impl Covariance {
    /// Refuses numbers with which the equations have no answer.
    pub(crate) fn checked(self) -> Result<Self, AbsorbencyError> {
        for (field, value) in
            [("sill", self.sill.value()), ("length, m", self.length.as_meters()), ("nugget", self.nugget.value())]
        {
            if !(value.is_finite() && value > 0.0) {
                return Err(AbsorbencyError::Covariance { field, value });
            }
        }
        Ok(self)
    }

    pub(crate) fn kernel(&self) -> Kernel {
        Kernel { sill: self.sill.value(), rate: libm::sqrt(3.0) / self.length.as_meters() }
    }
}

/// The smooth part, in plain numbers.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Kernel {
    pub(crate) sill: f64,
    /// √3/l, 1/m.
    rate: f64,
}

impl Kernel {
    /// C(h) at a distance in meters.
    #[inline(always)]
    pub(crate) fn at(self, distance: f64) -> f64 {
        let x = self.rate * distance;
        self.sill * (1.0 + x) * falling(x)
    }

    /// C(h) and ∂C/∂ln l = s²x²e^(−x) with x = √3h/l.
    #[inline(always)]
    pub(crate) fn with_slope(self, distance: f64) -> (f64, f64) {
        let x = self.rate * distance;
        let fall = self.sill * falling(x);
        ((1.0 + x) * fall, x * x * fall)
    }

    #[inline(always)]
    pub(crate) fn between(self, a: [f64; 2], b: [f64; 2]) -> f64 {
        self.at(distance(a, b))
    }
}

/// Meters between two places in meters.
#[inline(always)]
pub(crate) fn distance(a: [f64; 2], b: [f64; 2]) -> f64 {
    let (x, y) = (a[0] - b[0], a[1] - b[1]);
    (x * x + y * y).sqrt()
}
