//! What a stained panel is: shares of stain, water, coats, and the color that came of it.

use units::Fraction;

use super::absorb::absorption;
use super::error::{Place, RecipeRefusal};
use crate::color::LinearRgb;

/// How many coats of stain were laid, 1 to 20.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Coats(u32);

impl Coats {
    /// More is a mistyped number.
    pub const MOST: u32 = 20;
    /// A single coat.
    pub const ONE: Self = Self(1);

    /// From a count.
    ///
    /// # Errors
    /// Outside 1 to 20.
    pub fn new(count: u32) -> Result<Self, RecipeRefusal> {
        if (1..=Self::MOST).contains(&count) { Ok(Self(count)) } else { Err(RecipeRefusal::Coats(count)) }
    }

    /// The count.
    #[must_use]
    pub const fn count(self) -> u32 {
        self.0
    }

    /// For counts that need no check.
    pub(super) const fn known(count: u32) -> Self {
        Self(count)
    }
}

/// Parts of water to one part of stain, by volume, 0 (undiluted) to 100.
#[derive(Debug, Clone, Copy, PartialEq, PartialOrd)]
pub struct WaterParts(f64);

impl WaterParts {
    /// More is a mistyped number.
    pub const MOST: f64 = 100.0;
    /// No water added.
    pub const UNDILUTED: Self = Self(0.0);

    /// From parts of water to one of stain.
    ///
    /// # Errors
    /// Outside 0 to 100, or not a number.
    pub fn new(per_stain: f64) -> Result<Self, RecipeRefusal> {
        if (0.0..=Self::MOST).contains(&per_stain) { Ok(Self(per_stain)) } else { Err(RecipeRefusal::Water(per_stain)) }
    }

    /// Volumes of water to one of stain.
    #[must_use]
    pub const fn per_stain(self) -> f64 {
        self.0
    }

    /// For parts that need no check.
    pub(super) const fn known(per_stain: f64) -> Self {
        Self(per_stain)
    }
}

/// The shares of up to three stains in the undiluted mix, by volume, one number a stain; they add
/// up to 1. Which stain is which index is the caller's list.
#[derive(Debug, Clone, PartialEq)]
pub struct Shares(Vec<f64>);

impl Shares {
    /// As many stains as the model was ever tried with.
    pub const MAX_STAINS: usize = 3;

    /// From parts, such as 3 and 1 for three quarters and one quarter.
    ///
    /// # Errors
    /// No stain or more than three, a part below 0 or not a number, or all parts 0.
    pub fn of_parts(parts: &[f64]) -> Result<Self, RecipeRefusal> {
        let total: f64 = parts.iter().sum();
        let usable = parts.iter().all(|part| *part >= 0.0) && total > 0.0 && total.is_finite();
        if !usable || parts.len() > Self::MAX_STAINS {
            return Err(RecipeRefusal::Parts { parts: parts.to_vec() });
        }
        Ok(Self(parts.iter().map(|part| part / total).collect()))
    }

    /// How many stains are named, those with share 0 among them.
    #[must_use]
    pub fn stains(&self) -> usize {
        self.0.len()
    }

    /// The share of one stain; none for an index that is not named.
    #[must_use]
    pub fn share(&self, stain: usize) -> Fraction {
        let share = self.0.get(stain).copied().unwrap_or(0.0);
        Fraction::share(share.clamp(0.0, 1.0)).expect("clamped to 0 to 1")
    }

    /// Whether two stains or more are in it.
    #[must_use]
    pub fn is_mix(&self) -> bool {
        self.0.iter().filter(|share| **share > 0.0).count() > 1
    }

    pub(super) fn values(&self) -> &[f64] {
        &self.0
    }

    /// For shares that add up to 1 already.
    pub(super) const fn known(shares: Vec<f64>) -> Self {
        Self(shares)
    }
}

/// What is laid: which stains, how much water, how many coats.
#[derive(Debug, Clone, PartialEq)]
pub struct Recipe {
    /// Shares of the stains in the undiluted mix.
    pub shares: Shares,
    /// Water added to the mix.
    pub water: WaterParts,
    /// Coats of it.
    pub coats: Coats,
}

/// A panel of this concrete and finish, stained, and its mean color. Measure it sealed when the
/// floor will be sealed: sealer darkens.
#[derive(Debug, Clone, PartialEq)]
pub struct StainedPanel {
    /// What was laid on it.
    pub recipe: Recipe,
    /// Its mean color.
    pub color: LinearRgb,
}

/// The bare concrete beside the panels, in the same state (sealed where they are).
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Bare {
    absorption: [f64; 3],
    /// Standard deviation of ln K/S between places; none known from one place.
    spread: Option<[f64; 3]>,
}

impl Bare {
    /// From the mean colors of one or more bare places. From two on, how far they differ is a floor
    /// under the interval: no panel can be foretold better than the concrete under it.
    ///
    /// # Errors
    /// No place, or light that absorption cannot be told from.
    pub fn of_places(places: &[LinearRgb]) -> Result<Self, RecipeRefusal> {
        if places.is_empty() {
            return Err(RecipeRefusal::NoBare);
        }
        let logs: Vec<[f64; 3]> = places
            .iter()
            .enumerate()
            .map(|(index, light)| Ok(absorptions(*light, Place::Bare(index))?.map(libm::log)))
            .collect::<Result<_, RecipeRefusal>>()?;
        let count = logs.len() as f64;
        let mean: [f64; 3] = std::array::from_fn(|c| logs.iter().map(|l| l[c]).sum::<f64>() / count);
        let spread = (logs.len() > 1).then(|| {
            std::array::from_fn(|c| {
                let squares: f64 = logs.iter().map(|l| (l[c] - mean[c]) * (l[c] - mean[c])).sum();
                libm::sqrt(squares / (count - 1.0))
            })
        });
        Ok(Self { absorption: mean.map(libm::exp), spread })
    }

    pub(super) const fn absorption(&self) -> [f64; 3] {
        self.absorption
    }

    pub(super) const fn spread(&self) -> Option<[f64; 3]> {
        self.spread
    }
}

/// K/S of red, green and blue.
pub(super) fn absorptions(light: LinearRgb, place: Place) -> Result<[f64; 3], RecipeRefusal> {
    let values = light.as_light();
    for (channel, value) in ["red", "green", "blue"].into_iter().zip(values) {
        if !(value > 0.0002 && value < 0.99) {
            return Err(RecipeRefusal::Light { place, channel, value });
        }
    }
    Ok(values.map(absorption))
}
