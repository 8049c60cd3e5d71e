//! Each drop foretold from the others.

use units::Fraction;

use super::estimate::fraction;
use super::{End, Estimate, Field};
use crate::chance::normal_quantile;

/// How a drop stands to what the others foretold of it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Outcome {
    /// (ln seconds − foretold) / standard deviation foretold, noise of the drop included.
    Timed {
        /// The standardized error; about two in three lie within ±1.
        standardized: f64,
    },
    /// The drop still stood; the others gave this chance to that.
    StillStood {
        /// Chance of a longer time than the bound.
        chance: Fraction,
    },
}

/// One drop left out.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct LeftOutDrop {
    /// What the other drops say of a drop here, its noise included.
    pub foretold: Estimate,
    /// How the drop stands to it.
    pub outcome: Outcome,
}

/// All drops, each left out in turn with s², l and t² kept; so a little kinder than a fresh drop
/// would be. A repeat is foretold with its siblings in.
#[derive(Debug, Clone, PartialEq)]
pub struct LeftOut {
    /// In the order of the drops.
    pub drops: Vec<LeftOutDrop>,
    /// How many have a time; the rest of the report speaks of these.
    pub timed: usize,
    /// Mean of the standardized errors; near 0 when nothing leans.
    pub mean: f64,
    /// Root mean square of the standardized errors; near 1 when the bands are as wide as they should
    /// be, above 1 when they are too narrow.
    pub root_mean_square: f64,
    /// Share of drops inside the band that should hold 80 %.
    pub held_80: Fraction,
    /// Share of drops inside the band that should hold 95 %.
    pub held_95: Fraction,
}

impl Field {
    /// Foretells each drop from the others (Dubrule 1983, from the projection matrix; grade M).
    #[must_use]
    pub fn left_out(&self) -> LeftOut {
        let nugget = self.covariance().nugget.value();
        let pairs = self.system.left_out();
        let mut errors = Vec::new();
        let drops = pairs
            .into_iter()
            .zip(&self.drops)
            .zip(&self.noise)
            .map(|(((mean, with_noise), drop), noise)| {
                // The noise of a replaced drop is taken off, that of a real one put on.
                let variance = with_noise - noise + nugget;
                let foretold = Estimate { mean, variance, nugget: 0.0 };
                let outcome = match drop.end {
                    End::SoakedIn(time) => {
                        let standardized = (libm::log(time.as_seconds()) - mean) / libm::sqrt(variance);
                        errors.push(standardized);
                        Outcome::Timed { standardized }
                    }
                    End::StillStood(bound) => Outcome::StillStood { chance: foretold.chance_above(bound) },
                };
                LeftOutDrop { foretold, outcome }
            })
            .collect();
        let count = errors.len() as f64;
        let held = |share: f64| {
            let reach = normal_quantile(0.5 + 0.5 * share);
            fraction(errors.iter().filter(|e| e.abs() <= reach).count() as f64 / count)
        };
        LeftOut {
            drops,
            timed: errors.len(),
            mean: errors.iter().sum::<f64>() / count,
            root_mean_square: libm::sqrt(errors.iter().map(|e| e * e).sum::<f64>() / count),
            held_80: held(0.80),
            held_95: held(0.95),
        }
    }
}
