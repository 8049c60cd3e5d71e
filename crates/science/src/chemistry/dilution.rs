//! Diluting hydrochloric acid: by mass, since volumes of acid and water do not add up.

use units::{Density, Fraction, Mass, Volume};

use super::error::checked_volume;
use super::{Caution, ChemistryError, Solution, hcl_density};
use crate::Parts;

/// Said with every dilution.
const CAUTIONS: [Caution; 4] =
    [Caution::AcidIntoWater, Caution::NeverBleach, Caution::DilutionIsNotNeutralization, Caution::SafetyDataSheet];

/// A dilution at 20 °C.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Dilution {
    /// Stock to take.
    pub stock: Volume,
    /// Water to put in first.
    pub water: Volume,
    /// What it makes; less than stock and water together.
    pub mixed: Volume,
    /// Strength of the mix by mass.
    pub strength: Fraction,
    /// Density of the mix.
    pub density: Density,
    /// Hydrogen chloride in it.
    pub acid: Mass,
    /// What must be said beside it.
    pub cautions: &'static [Caution],
}

fn water_density() -> Result<Density, ChemistryError> {
    hcl_density(Fraction::share(0.0).expect("0 lies between 0 and 1"))
}

fn checked_stock(strength: Fraction) -> Result<Solution, ChemistryError> {
    if strength.as_share() > 0.0 { Solution::hydrochloric(strength) } else { Err(ChemistryError::NoAcid) }
}

/// What a volume of stock becomes when diluted by parts in volume, such as 1 : 4.
///
/// # Errors
/// Stock without acid or above 40 %; a volume below zero.
pub fn dilute_by_parts(stock: Fraction, volume: Volume, parts: Parts) -> Result<Dilution, ChemistryError> {
    let solution = checked_stock(stock)?;
    let volume = checked_volume(volume)?;
    // The strength does not depend on the batch, so it is found for one liter: an empty batch has one too.
    let liter = Volume::liters(1.0);
    let (acid, water) = (solution.mass_in(liter)?, water_density()? * (liter * parts.diluent_per_product()));
    let share = acid / (solution.density() * liter + water);
    let strength = Fraction::share(share).expect("a mass over a larger mass lies between 0 and 1");
    let density = hcl_density(strength)?;
    let water_volume = volume * parts.diluent_per_product();
    let mass = solution.density() * volume + water_density()? * water_volume;
    Ok(Dilution {
        stock: volume,
        water: water_volume,
        mixed: mass / density,
        strength,
        density,
        acid: solution.mass_in(volume)?,
        cautions: &CAUTIONS,
    })
}

/// How much stock and water make a volume of a wished strength.
///
/// # Errors
/// Stock without acid or above 40 %; a wish stronger than the stock; a volume below zero.
pub fn dilute_to(stock: Fraction, target: Fraction, mixed: Volume) -> Result<Dilution, ChemistryError> {
    let solution = checked_stock(stock)?;
    if target > stock {
        return Err(ChemistryError::BeyondStock { target, stock });
    }
    let mix = Solution::hydrochloric(target)?;
    let mixed = checked_volume(mixed)?;
    let acid = mix.mass_in(mixed)?;
    let stock_volume = solution.volume_with(acid)?;
    let water_mass = mix.density() * mixed - solution.density() * stock_volume;
    Ok(Dilution {
        stock: stock_volume,
        // Rounding may leave a negative speck when the wish is the stock itself.
        water: (water_mass / water_density()?).max(Volume::ZERO),
        mixed,
        strength: target,
        density: mix.density(),
        acid,
        cautions: &CAUTIONS,
    })
}
