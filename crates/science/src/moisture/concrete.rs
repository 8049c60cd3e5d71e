//! How fast moisture moves in a concrete: the published link and our own prior.

use units::{Diffusivity, Fraction, Length, Pressure, Temperature};

use super::potential::Shape;
use super::{DryingError, Sides};
use crate::{FormulaSource, Grade};

/// Source of the equation, of the shape of D(H) and of the published link from strength.
pub const MODEL_CODE_DRYING: FormulaSource = FormulaSource {
    id: "model-code-1990-drying",
    document: "CEB-FIP Model Code 1990; shape after Bazant and Najjar 1972",
    locator: "2.1.9",
    grade: Grade::FromMemory,
};

/// Source of the default prior: a fit of that shape's D1 to recalled drying times.
pub const DRYING_PRIOR: FormulaSource = FormulaSource {
    id: "drying-prior",
    document: "fit to recalled drying tables (Hedenblad 1997; Brewer 1965)",
    locator: "reference/physics/drying_calibration.csv",
    grade: Grade::FromMemory,
};

/// Where the numbers of a [`Concrete`] come from.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum ParameterSet {
    /// The form of Model Code 1990 with D1 given or taken from strength, no correction (grade M).
    Published,
    /// Our default prior, fitted to recalled drying tables (targets grade M). A prior, nothing
    /// more: it must be updated by readings in the slab.
    DefaultPrior,
    /// Numbers of the user's own.
    Own,
}

impl ParameterSet {
    /// The source to show; `None` for the user's own numbers.
    #[must_use]
    pub const fn source(self) -> Option<FormulaSource> {
        match self {
            Self::Published => Some(MODEL_CODE_DRYING),
            Self::DefaultPrior => Some(DRYING_PRIOR),
            Self::Own => None,
        }
    }
}

/// Moisture diffusivity of a concrete.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Concrete {
    /// Where the numbers come from.
    pub set: ParameterSet,
    /// D1: diffusivity of saturated concrete, at 18 °C when `by_temperature`.
    pub saturated: Diffusivity,
    /// How it falls as the concrete dries.
    pub shape: Shape,
    /// Whether the diffusivity follows temperature.
    pub by_temperature: bool,
}

/// 18 °C, the temperature the drying tables were made at, in kelvins.
const REFERENCE_KELVINS: f64 = 291.15;
/// Activation temperature of moisture diffusion, K (science.md; grade M).
const ACTIVATION_KELVINS: f64 = 2700.0;

impl Concrete {
    /// The published shape with a given D1, at the temperature D1 was found at.
    #[must_use]
    pub fn published(saturated: Diffusivity) -> Self {
        Self { set: ParameterSet::Published, saturated, shape: Shape::MODEL_CODE_1990, by_temperature: false }
    }

    /// The published link from characteristic strength: D1 = 1e-9 m²/s ÷ (fck / 10 MPa), Model Code
    /// 1990, 2.1.9 (grade M). Its trend with water-cement ratio runs against drying tables, so it
    /// is here to be compared with and is not the default.
    ///
    /// # Errors
    /// When the strength is not 10 to 100 MPa.
    pub fn published_from_strength(characteristic: Pressure) -> Result<Self, DryingError> {
        let strength = characteristic.as_megapascals();
        if !(10.0..=100.0).contains(&strength) {
            return Err(DryingError::Strength(strength));
        }
        Ok(Self::published(Diffusivity::square_meters_per_second(1e-9 / (strength / 10.0))))
    }

    /// Our default prior: D1 = 5.88e-10·exp(-5.78(w/c - 0.5)) m²/s at 100 mm and 18 °C, times
    /// (path / 100 mm)^½, where the path is the thickness drying one side and half of it drying
    /// two. Fitted to recalled one-sided drying times (grade M, `drying_calibration.csv`).
    ///
    /// # Errors
    /// When the water-cement ratio is outside 0.35 to 0.75 (fitted on 0.4 to 0.7) or the thickness
    /// is out of range.
    pub fn default_prior(water_cement: Fraction, thickness: Length, sides: Sides) -> Result<Self, DryingError> {
        let ratio = water_cement.as_share();
        if !(0.35..=0.75).contains(&ratio) {
            return Err(DryingError::WaterCement(ratio));
        }
        let path = sides.path(super::slab::checked_thickness(thickness)?);
        let at_100_mm = 5.88e-10 * libm::exp(-5.78 * (ratio - 0.5));
        let saturated = Diffusivity::square_meters_per_second(at_100_mm * libm::sqrt(path.as_meters() / 0.1));
        Ok(Self { set: ParameterSet::DefaultPrior, saturated, shape: Shape::MODEL_CODE_1990, by_temperature: true })
    }

    /// Diffusivity at a temperature over that at 18 °C: exp(-2700 K·(1/T - 1/291.15 K)) (grade M);
    /// 1 when this concrete does not follow temperature.
    #[must_use]
    pub fn pace(&self, temperature: Temperature) -> f64 {
        if self.by_temperature {
            libm::exp(-ACTIVATION_KELVINS * (1.0 / temperature.as_kelvins() - 1.0 / REFERENCE_KELVINS))
        } else {
            1.0
        }
    }
}
