//! The drops of one finish, and what they say between them.

use nalgebra::DMatrix;
use rayon::prelude::*;

use super::drop::Drops;
use super::fit::fit;
use super::many::{self, Packed};
use super::nugget::by_rule;
use super::system::System;
use super::{AbsorbencyError, Covariance, DropTest, Estimate, Fitted, NuggetBasis, Place, censored};

/// Places worked by one thread in one go.
const BLOCK: usize = 512;

/// Something the reader of a map must know.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Note {
    /// Some drops still stood when the watching stopped: the map takes them as "longer than this";
    /// the fit of s², l and t² took them at the bound, which makes s² rather too low.
    StillStanding {
        /// How many.
        drops: usize,
    },
    /// The noise of a drop was assumed, not measured: 3 to 5 drops at one place would settle it.
    NuggetNotMeasured,
    /// The drops do not tell over which distance the slab drinks alike.
    LengthUnknown,
    /// The drops differ no more than repeated ones would: no pattern was seen.
    NoPattern,
}

/// What the drops of one finish say of every place on it.
#[derive(Debug, Clone)]
pub struct Field {
    pub(super) drops: Vec<DropTest>,
    pub(super) system: System,
    /// L⁻¹ of the system.
    pub(super) whitener: DMatrix<f64>,
    packed: Packed,
    pub(super) noise: Vec<f64>,
    covariance: Covariance,
    fitted: Option<Fitted>,
}

impl Field {
    /// The usual way: t² from repeats or floored, s² and l by restricted likelihood.
    ///
    /// # Errors
    /// When there are drops at fewer than [`super::FEWEST_PLACES`] places, or fewer than 3 soaked in,
    /// or a drop has no place or no time above 0.
    pub fn fit(drops: &[DropTest]) -> Result<Self, AbsorbencyError> {
        let read = Drops::enough(drops)?;
        let (nugget, basis) = by_rule(&read);
        let fitted = fit(&read, nugget, basis)?;
        Self::build(drops, &read, fitted.covariance, Some(fitted))
    }

    /// With a covariance from elsewhere, such as an earlier fit.
    ///
    /// # Errors
    /// As [`Field::fit`], and when a number of the covariance is not above 0.
    pub fn with_covariance(drops: &[DropTest], covariance: Covariance) -> Result<Self, AbsorbencyError> {
        Self::build(drops, &Drops::enough(drops)?, covariance.checked()?, None)
    }

    fn build(
        drops: &[DropTest],
        read: &Drops,
        covariance: Covariance,
        fitted: Option<Fitted>,
    ) -> Result<Self, AbsorbencyError> {
        let (system, noise) = censored::solve(read, &covariance)?;
        let whitener = system.whitener();
        let packed = Packed::new(&whitener);
        Ok(Self { drops: drops.to_vec(), system, whitener, packed, noise, covariance, fitted })
    }

    /// The drops, in the order given.
    #[must_use]
    pub fn drops(&self) -> &[DropTest] {
        &self.drops
    }

    /// s², l and t².
    #[must_use]
    pub const fn covariance(&self) -> &Covariance {
        &self.covariance
    }

    /// How the covariance was fitted; none when it was given.
    #[must_use]
    pub const fn fitted(&self) -> Option<&Fitted> {
        self.fitted.as_ref()
    }

    /// What the reader of the map must know.
    #[must_use]
    pub fn notes(&self) -> Vec<Note> {
        let standing = self.drops.iter().filter(|d| matches!(d.end, super::End::StillStood(_))).count();
        let mut notes = Vec::new();
        if standing > 0 {
            notes.push(Note::StillStanding { drops: standing });
        }
        if let Some(fitted) = &self.fitted {
            if matches!(fitted.basis, NuggetBasis::Floor | NuggetBasis::NotIdentified) {
                notes.push(Note::NuggetNotMeasured);
            }
            if fitted.sill_at_limit && fitted.covariance.sill < fitted.covariance.nugget {
                notes.push(Note::NoPattern);
            } else if fitted.length_at_limit {
                notes.push(Note::LengthUnknown);
            }
        }
        notes
    }

    /// What is known of one place. A place that is not a number gives an estimate that is none.
    #[must_use]
    pub fn at(&self, place: Place) -> Estimate {
        self.block(&[place]).remove(0)
    }

    /// What is known of many places, in their order; worked in parallel, the same however many
    /// threads there are.
    #[must_use]
    pub fn map(&self, places: &[Place]) -> Vec<Estimate> {
        places.par_chunks(BLOCK).flat_map_iter(|chunk| self.block(chunk)).collect()
    }

    fn block(&self, places: &[Place]) -> Vec<Estimate> {
        let meters: Vec<[f64; 2]> = places.iter().map(|p| p.meters()).collect();
        let nugget = self.covariance.nugget.value();
        many::predict(&self.system, &self.packed, &meters)
            .into_iter()
            .map(|(mean, variance)| Estimate { mean, variance, nugget })
            .collect()
    }
}
