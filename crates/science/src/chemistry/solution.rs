//! A solution: how much of a substance a volume of it holds.

use units::{AmountOfSubstance, Density, Fraction, Mass, Molarity, Volume};

use super::error::{checked_mass, checked_volume};
use super::{ChemistryError, Species, hcl_density};

/// A substance dissolved in water, by mass share and density.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Solution {
    solute: Species,
    strength: Fraction,
    density: Density,
}

impl Solution {
    /// From the label or the data sheet: what, mass share and density.
    ///
    /// # Errors
    /// A density not above zero.
    pub fn new(solute: Species, strength: Fraction, density: Density) -> Result<Self, ChemistryError> {
        if density > Density::ZERO && density.as_kilograms_per_cubic_meter().is_finite() {
            Ok(Self { solute, strength, density })
        } else {
            Err(ChemistryError::Density(density))
        }
    }

    /// Hydrochloric acid at 20 °C with its tabulated density.
    ///
    /// # Errors
    /// Above 40 % by mass.
    pub fn hydrochloric(strength: Fraction) -> Result<Self, ChemistryError> {
        Self::new(Species::HydrogenChloride, strength, hcl_density(strength)?)
    }

    /// What is dissolved.
    #[must_use]
    pub const fn solute(self) -> Species {
        self.solute
    }

    /// Mass share of it.
    #[must_use]
    pub const fn strength(self) -> Fraction {
        self.strength
    }

    /// Density of the solution.
    #[must_use]
    pub const fn density(self) -> Density {
        self.density
    }

    /// Mass of the substance in a liter of the solution, as a density (g/L).
    #[must_use]
    pub fn solute_density(self) -> Density {
        self.density * self.strength.as_share()
    }

    /// Moles of the substance in a liter of the solution.
    #[must_use]
    pub fn molarity(self) -> Molarity {
        let grams_per_mole = self.solute.molar_mass().as_grams_per_mole();
        Molarity::moles_per_liter(self.solute_density().as_kilograms_per_cubic_meter() / grams_per_mole)
    }

    /// Mass of the substance in a volume.
    ///
    /// # Errors
    /// A volume below zero.
    pub fn mass_in(self, volume: Volume) -> Result<Mass, ChemistryError> {
        Ok(self.solute_density() * checked_volume(volume)?)
    }

    /// Moles of the substance in a volume.
    ///
    /// # Errors
    /// A volume below zero.
    pub fn amount_in(self, volume: Volume) -> Result<AmountOfSubstance, ChemistryError> {
        Ok(self.mass_in(volume)? / self.solute.molar_mass())
    }

    /// Volume that holds a mass of the substance.
    ///
    /// # Errors
    /// A mass below zero, or a solution of nothing.
    pub fn volume_with(self, mass: Mass) -> Result<Volume, ChemistryError> {
        if self.strength.as_share() > 0.0 {
            Ok(checked_mass(mass)? / self.solute_density())
        } else {
            Err(ChemistryError::NoSolute)
        }
    }
}
