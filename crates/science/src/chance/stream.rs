//! One numbered stream of draws for each member of a sample.

use rand_chacha::ChaCha8Rng;
use rand_chacha::rand_core::{Rng, SeedableRng};

use super::normal_quantile;

/// The number a whole sample is drawn from; the same seed gives the same sample anywhere.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub struct Seed(pub u64);

/// The draws of one member.
///
/// ChaCha with 8 rounds (Bernstein, "ChaCha, a variant of Salsa20", 2008; grade M), through the
/// crate `rand_chacha`: the seed is the key, the member's index is the stream number, so streams
/// never overlap and can be made in any order. It is used for its independent streams and not for
/// secrecy.
#[derive(Debug, Clone)]
pub struct Stream(ChaCha8Rng);

/// A distribution asked for with parameters it cannot have.
#[derive(Debug, Clone, Copy, PartialEq, thiserror::Error)]
pub enum DrawError {
    /// The spread is negative or not a number.
    #[error("spread {0} of a distribution: give a number that is 0 or more")]
    Spread(f64),
    /// The middle of a log-normal distribution is not above zero.
    #[error("median {0} of a log-normal distribution: give a number above 0")]
    Median(f64),
    /// The lowest, likeliest and highest value are not in this order.
    #[error("range {low}, {mode}, {high}: give lowest, likeliest and highest in this order, not all equal")]
    Range {
        /// Lowest value.
        low: f64,
        /// Likeliest value.
        mode: f64,
        /// Highest value.
        high: f64,
    },
}

impl Stream {
    /// The stream of member `index` of the sample with this seed.
    #[must_use]
    pub fn of_member(seed: Seed, index: u64) -> Self {
        let mut key = [0_u8; 32];
        key[..8].copy_from_slice(&seed.0.to_le_bytes());
        let mut generator = ChaCha8Rng::from_seed(key);
        generator.set_stream(index);
        Self(generator)
    }

    /// A number strictly between 0 and 1, each of 2⁵² equally likely.
    pub fn unit(&mut self) -> f64 {
        // The middle of each of 2^52 cells: exact in f64, and never 0 or 1, so every inverse below is finite.
        const CELL: f64 = 1.0 / (1_u64 << 52) as f64;
        ((self.0.next_u64() >> 12) as f64 + 0.5) * CELL
    }

    /// A number evenly spread from `low` to `high`.
    ///
    /// # Errors
    /// When `low` is not below `high`.
    pub fn uniform(&mut self, low: f64, high: f64) -> Result<f64, DrawError> {
        if low < high { Ok(low + (high - low) * self.unit()) } else { Err(DrawError::Range { low, mode: low, high }) }
    }

    /// A normal deviate with mean 0 and standard deviation 1.
    pub fn standard_normal(&mut self) -> f64 {
        normal_quantile(self.unit())
    }

    /// A normal deviate.
    ///
    /// # Errors
    /// When the standard deviation is negative or not a number.
    pub fn normal(&mut self, mean: f64, standard_deviation: f64) -> Result<f64, DrawError> {
        if standard_deviation >= 0.0 {
            Ok(mean + standard_deviation * self.standard_normal())
        } else {
            Err(DrawError::Spread(standard_deviation))
        }
    }

    /// A log-normal deviate: half the draws lie below `median`; the logarithm has the given
    /// standard deviation.
    ///
    /// # Errors
    /// When the median is not above zero, or the standard deviation is negative.
    pub fn log_normal(&mut self, median: f64, log_standard_deviation: f64) -> Result<f64, DrawError> {
        if median.is_nan() || median <= 0.0 {
            return Err(DrawError::Median(median));
        }
        Ok(median * libm::exp(self.normal(0.0, log_standard_deviation)?))
    }

    /// A deviate of the triangular distribution: lowest, likeliest, highest.
    ///
    /// # Errors
    /// When they are not in this order or all equal.
    pub fn triangular(&mut self, low: f64, mode: f64, high: f64) -> Result<f64, DrawError> {
        if !(low <= mode && mode <= high && low < high) {
            return Err(DrawError::Range { low, mode, high });
        }
        // F(x) = (x-a)²/((b-a)(c-a)) below the mode c and 1 - (b-x)²/((b-a)(b-c)) above; inverted.
        let share = self.unit();
        Ok(if share * (high - low) < mode - low {
            low + libm::sqrt(share * (high - low) * (mode - low))
        } else {
            high - libm::sqrt((1.0 - share) * (high - low) * (high - mode))
        })
    }
}
