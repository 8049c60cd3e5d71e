//! The pH that an ideal, unbuffered acid would have: enough to show why water alone does not help.

use units::{Molarity, Ph};

use super::{ChemistryError, Solution};

/// −log₁₀ of the molarity of a strong acid. May lie below 0, where no paper or probe reads.
///
/// Ideal: no activity, no buffer. A slab, its dust and hard water buffer strongly, so this is never
/// a prediction of what the paper will show.
#[derive(Debug, Clone, Copy, PartialEq, PartialOrd)]
pub struct IdealPh(f64);

impl IdealPh {
    /// Its number.
    #[must_use]
    pub const fn value(self) -> f64 {
        self.0
    }
}

/// Ideal pH of a strong acid of a molarity.
///
/// # Errors
/// A molarity not above zero.
pub fn ideal_ph(acid: Molarity) -> Result<IdealPh, ChemistryError> {
    let strength = acid.as_moles_per_liter();
    if strength > 0.0 && strength.is_finite() {
        Ok(IdealPh(-libm::log10(strength)))
    } else {
        Err(ChemistryError::Molarity(acid))
    }
}

/// Molarity of a strong acid at an ideal pH: 10^−pH mol/L. Means nothing at pH 7 and above.
#[must_use]
pub fn molarity_at(ph: Ph) -> Molarity {
    Molarity::moles_per_liter(libm::pow(10.0, -ph.value()))
}

/// How many volumes of pure water it would take to bring one volume of acid to an ideal pH by
/// dilution alone. The number is the argument for a base.
///
/// # Errors
/// Acid without strength.
pub fn water_only_dilution(acid: Solution, target: Ph) -> Result<f64, ChemistryError> {
    let molarity = acid.molarity();
    if molarity > Molarity::ZERO { Ok(molarity / molarity_at(target)) } else { Err(ChemistryError::Molarity(molarity)) }
}
