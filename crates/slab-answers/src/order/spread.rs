//! A low, a usual and a high value.

use std::ops::{Add, Mul};

/// Low, usual and high of one quantity.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Spread<Q> {
    /// The low end.
    pub low: Q,
    /// The usual value.
    pub usual: Q,
    /// The high end.
    pub high: Q,
}

impl<Q: Copy> Spread<Q> {
    /// The same value throughout.
    #[must_use]
    pub fn exactly(value: Q) -> Self {
        Self { low: value, usual: value, high: value }
    }

    /// Applies a rising function to all three.
    #[must_use]
    pub fn map<R>(self, f: impl Fn(Q) -> R) -> Spread<R> {
        Spread { low: f(self.low), usual: f(self.usual), high: f(self.high) }
    }

    /// Combines with another spread end by end: low with low, high with high.
    #[must_use]
    pub fn zip<R: Copy, S>(self, other: Spread<R>, f: impl Fn(Q, R) -> S) -> Spread<S> {
        Spread { low: f(self.low, other.low), usual: f(self.usual, other.usual), high: f(self.high, other.high) }
    }

    /// Swaps the ends, for what falls when the other rises: far coverage needs little.
    #[must_use]
    pub fn reversed(self) -> Self {
        Self { low: self.high, usual: self.usual, high: self.low }
    }
}

impl<Q: Copy + Add<Output = Q>> Add for Spread<Q> {
    type Output = Self;
    fn add(self, other: Self) -> Self {
        self.zip(other, |a, b| a + b)
    }
}

impl<Q: Copy + Mul<f64, Output = Q>> Mul<f64> for Spread<Q> {
    type Output = Self;
    fn mul(self, times: f64) -> Self {
        self.map(|q| q * times)
    }
}

impl<Q: Copy + Default + Add<Output = Q>> Spread<Q> {
    /// The sum of all; nothing is zero.
    pub fn sum(all: impl IntoIterator<Item = Self>) -> Self {
        all.into_iter().fold(Self::exactly(Q::default()), |a, b| a + b)
    }
}
