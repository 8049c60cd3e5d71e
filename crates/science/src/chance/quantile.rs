//! Quantiles of a sample and how far off they may be because the sample is finite.

use super::normal_quantile;

/// Numbers drawn at random, each with its weight, in rising order.
///
/// A value may be plus infinity: "did not happen within the time looked at".
#[derive(Debug, Clone, PartialEq)]
pub struct Sample {
    values: Vec<f64>,
    /// Share of the whole weight, summing to 1.
    weights: Vec<f64>,
    equal: bool,
}

/// A number estimated from a sample, with the interval that holds the true one with 95 % chance
/// *as far as sampling goes*: it says nothing of a wrong model. An end is infinite when the sample
/// is too small to bound it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Estimate {
    /// The estimate.
    pub value: f64,
    /// Lower end of the 95 % interval.
    pub low: f64,
    /// Upper end of the 95 % interval.
    pub high: f64,
}

/// A sample that cannot be read.
#[derive(Debug, Clone, Copy, PartialEq, thiserror::Error)]
pub enum SampleError {
    /// There is nothing in it.
    #[error("the sample is empty: give at least one value")]
    Empty,
    /// A value is not a number.
    #[error("value {index} of the sample is not a number")]
    NotANumber {
        /// Its place, from 0.
        index: usize,
    },
    /// The weights do not match the values.
    #[error("{weights} weights for {values} values: give one weight for each value")]
    Unmatched {
        /// How many values.
        values: usize,
        /// How many weights.
        weights: usize,
    },
    /// A weight is negative or not a number, or all are zero.
    #[error("weight {index} is {weight}: give weights that are 0 or more and not all 0")]
    Weight {
        /// Its place, from 0.
        index: usize,
        /// Its value.
        weight: f64,
    },
    /// A share outside 0 to 1 was asked for.
    #[error("quantile at share {0}: give a share from 0 to 1")]
    Share(f64),
}

impl Sample {
    /// From equally weighted values.
    ///
    /// # Errors
    /// When there are none, or one is not a number.
    pub fn of(values: Vec<f64>) -> Result<Self, SampleError> {
        let weights = vec![1.0; values.len()];
        Self::weighted(values, weights)
    }

    /// From values with weights of any scale.
    ///
    /// # Errors
    /// When there are none, one is not a number, or the weights do not fit.
    pub fn weighted(values: Vec<f64>, weights: Vec<f64>) -> Result<Self, SampleError> {
        if values.is_empty() {
            return Err(SampleError::Empty);
        }
        if values.len() != weights.len() {
            return Err(SampleError::Unmatched { values: values.len(), weights: weights.len() });
        }
        if let Some(index) = values.iter().position(|v| v.is_nan()) {
            return Err(SampleError::NotANumber { index });
        }
        if let Some(index) = weights.iter().position(|w| !w.is_finite() || *w < 0.0) {
            return Err(SampleError::Weight { index, weight: weights[index] });
        }
        let total: f64 = weights.iter().sum();
        if total <= 0.0 {
            return Err(SampleError::Weight { index: 0, weight: weights[0] });
        }
        let equal = weights.iter().all(|w| *w == weights[0]);
        let mut pairs: Vec<(f64, f64)> = values.into_iter().zip(weights.into_iter().map(|w| w / total)).collect();
        pairs.sort_by(|a, b| a.0.total_cmp(&b.0));
        let (values, weights) = pairs.into_iter().unzip();
        Ok(Self { values, weights, equal })
    }

    /// How many equally weighted values would carry as much: (Σw)²/Σw² (Kish 1965, grade M).
    #[must_use]
    pub fn effective_size(&self) -> f64 {
        if self.equal {
            return self.values.len() as f64;
        }
        1.0 / self.weights.iter().map(|w| w * w).sum::<f64>()
    }

    /// The weighted share of values at or below `limit`.
    #[must_use]
    pub fn share_at_or_below(&self, limit: f64) -> f64 {
        let inside = self.values.partition_point(|v| *v <= limit);
        self.weights[..inside].iter().sum::<f64>().min(1.0)
    }

    /// The value with the given share of the weight below it, with its sampling error.
    ///
    /// Equal weights: Hyndman and Fan's type 7, the straight line between order statistics at
    /// (n-1)p (1996; grade V: the default of NumPy, checked against it), and the exact binomial
    /// order-statistic interval. Unequal weights: the same rule with Kish's effective size
    /// (Akinshin 2023, grade M) and the normal approximation of that interval.
    ///
    /// # Errors
    /// When the share is not from 0 to 1.
    pub fn quantile(&self, share: f64) -> Result<Estimate, SampleError> {
        if !(0.0..=1.0).contains(&share) {
            return Err(SampleError::Share(share));
        }
        let value = self.at(share);
        let (low, high) = if self.equal { self.order_interval(share) } else { self.normal_interval(share) };
        Ok(Estimate { value, low, high })
    }

    fn at(&self, share: f64) -> f64 {
        if self.equal {
            let place = (self.values.len() - 1) as f64 * share;
            let below = place as usize;
            let part = place - below as f64;
            let low = self.values[below];
            return if part == 0.0 { low } else { low + part * (self.values[below + 1] - low) };
        }
        // The straight line of type 7 is a mean of the quantile function over a window of width
        // 1/n; with weights the window has width 1/n* and starts at share·(n*-1)/n*.
        let size = self.effective_size();
        let start = share * (size - 1.0) / size;
        let (mut reached, mut sum, mut covered) = (0.0, 0.0, 0.0);
        for (value, weight) in self.values.iter().zip(&self.weights) {
            let next = reached + weight;
            let inside = ((next.min(start + 1.0 / size) - reached.max(start)) * size).max(0.0);
            if inside > 0.0 {
                sum += inside * value;
                covered += inside;
            }
            reached = next;
        }
        sum / covered
    }

    /// Order statistics l and u with P(B < l) ≤ 2.5 % and P(B ≥ u) ≤ 2.5 %, B binomial (n, share)
    /// (David and Nagaraja, Order Statistics, sec. 7.1; grade M).
    fn order_interval(&self, share: f64) -> (f64, f64) {
        const TAIL: f64 = 0.025;
        let count = self.values.len();
        let mut below = 0.0; // P(B < k)
        let (mut low, mut high) = (f64::NEG_INFINITY, f64::INFINITY);
        for (k, chance) in binomial(count, share) {
            // k successes: the k-th smallest value (from 1) is still below the quantile.
            if below <= TAIL && k >= 1 {
                low = self.values[k - 1];
            }
            if 1.0 - below <= TAIL && k >= 1 {
                high = self.values[k - 1];
                break;
            }
            below += chance;
        }
        (low, high)
    }

    fn normal_interval(&self, share: f64) -> (f64, f64) {
        let half = normal_quantile(0.975) * libm::sqrt(share * (1.0 - share) / self.effective_size());
        let low = if share - half > 0.0 { self.at(share - half) } else { f64::NEG_INFINITY };
        let high = if share + half < 1.0 { self.at(share + half) } else { f64::INFINITY };
        (low, high)
    }
}

/// The binomial chances around their mean, far enough out that what is left is below 1e-15.
fn binomial(count: usize, share: f64) -> impl Iterator<Item = (usize, f64)> {
    let n = count as f64;
    let reach = 9.0 * libm::sqrt(n * share * (1.0 - share)) + 9.0;
    let first = (n * share - reach).max(0.0) as usize;
    let last = ((n * share + reach) as usize).min(count);
    let whole = libm::lgamma(n + 1.0);
    (first..=last).map(move |k| {
        let successes = k as f64;
        let power = |base: f64, times: f64| if times == 0.0 { 0.0 } else { times * libm::log(base) };
        let log = whole - libm::lgamma(successes + 1.0) - libm::lgamma(n - successes + 1.0)
            + power(share, successes)
            + power(1.0 - share, n - successes);
        (k, libm::exp(log))
    })
}
