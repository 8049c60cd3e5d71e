//! How much base an amount of hydrogen chloride takes, and the gas it makes.

use units::{AmountOfSubstance, Area, Density, FilmThickness, Mass, Pressure, Temperature, Volume};

use super::error::checked_mass;
use super::{Caution, ChemistryError, Species};
use crate::{FormulaSource, Grade};

/// Moles against moles, from atomic weights.
pub const STOICHIOMETRY: FormulaSource = FormulaSource {
    id: "stoichiometry",
    document: "atomic weights (IUPAC 2021) and balanced equations",
    locator: "moles of acid per mole of base at the stated end point",
    grade: Grade::Verified,
};

/// Gas constant, J/(mol·K), exact in the SI of 2019.
const GAS_CONSTANT: f64 = 8.314_462_618;

/// What neutralizes acid.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Base {
    /// Sodium bicarbonate, baking soda.
    SodiumBicarbonate,
    /// Sodium carbonate, soda ash.
    SodiumCarbonate,
    /// Ammonia, counted without its water.
    Ammonia,
    /// Trisodium phosphate, dry, to dihydrogen phosphate (about pH 4.5).
    TrisodiumPhosphate,
    /// Trisodium phosphate in crystals with 12 water, to the same end point.
    TrisodiumPhosphateCrystals,
    /// Hydrated lime.
    CalciumHydroxide,
    /// Limestone, chalk, marble dust.
    CalciumCarbonate,
    /// Lye.
    SodiumHydroxide,
}

impl Base {
    /// Every base.
    pub const ALL: [Self; 8] = [
        Self::SodiumBicarbonate,
        Self::SodiumCarbonate,
        Self::Ammonia,
        Self::TrisodiumPhosphate,
        Self::TrisodiumPhosphateCrystals,
        Self::CalciumHydroxide,
        Self::CalciumCarbonate,
        Self::SodiumHydroxide,
    ];

    /// The substance it is.
    #[must_use]
    pub const fn species(self) -> Species {
        match self {
            Self::SodiumBicarbonate => Species::SodiumBicarbonate,
            Self::SodiumCarbonate => Species::SodiumCarbonate,
            Self::Ammonia => Species::Ammonia,
            Self::TrisodiumPhosphate => Species::TrisodiumPhosphate,
            Self::TrisodiumPhosphateCrystals => Species::TrisodiumPhosphateCrystals,
            Self::CalciumHydroxide => Species::CalciumHydroxide,
            Self::CalciumCarbonate => Species::CalciumCarbonate,
            Self::SodiumHydroxide => Species::SodiumHydroxide,
        }
    }

    /// Moles of HCl that one mole of it takes up. Phosphate counts to dihydrogen phosphate: its third
    /// equivalent acts only below about pH 2.
    #[must_use]
    pub const fn equivalents(self) -> u8 {
        match self {
            Self::SodiumBicarbonate | Self::Ammonia | Self::SodiumHydroxide => 1,
            Self::SodiumCarbonate
            | Self::TrisodiumPhosphate
            | Self::TrisodiumPhosphateCrystals
            | Self::CalciumHydroxide
            | Self::CalciumCarbonate => 2,
        }
    }

    /// Whether it gives off carbon dioxide, one mole per mole.
    #[must_use]
    pub const fn gives_carbon_dioxide(self) -> bool {
        matches!(self, Self::SodiumBicarbonate | Self::SodiumCarbonate | Self::CalciumCarbonate)
    }

    /// What must be said beside an answer with this base; never empty.
    #[must_use]
    pub const fn cautions(self) -> &'static [Caution] {
        use Caution::{
            AmmoniaOvershoots, AskBeforeDischarge, BicarbonateSelfLimits, CarbonDioxideBurstsClosedDrums,
            CarbonateOvershoots, NeutralizNotMetalFree, NeverBleach, PhosphateInWasteWater, SafetyDataSheet,
            StrongBaseOvershoots, TestInSmallSteps,
        };
        macro_rules! with_usual {
            ($($own:ident),*) => {
                &[$($own,)* NeverBleach, TestInSmallSteps, NeutralizNotMetalFree, AskBeforeDischarge, SafetyDataSheet]
            };
        }
        match self {
            Self::SodiumBicarbonate => with_usual!(CarbonDioxideBurstsClosedDrums, BicarbonateSelfLimits),
            Self::SodiumCarbonate => with_usual!(CarbonDioxideBurstsClosedDrums, CarbonateOvershoots),
            Self::CalciumCarbonate => with_usual!(CarbonDioxideBurstsClosedDrums),
            Self::Ammonia => with_usual!(AmmoniaOvershoots),
            Self::TrisodiumPhosphate | Self::TrisodiumPhosphateCrystals => {
                with_usual!(StrongBaseOvershoots, PhosphateInWasteWater)
            }
            Self::CalciumHydroxide | Self::SodiumHydroxide => with_usual!(StrongBaseOvershoots),
        }
    }
}

/// Carbon dioxide given off when all of it leaves the liquid.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct CarbonDioxide {
    /// Moles of it.
    pub amount: AmountOfSubstance,
    /// Mass of it.
    pub mass: Mass,
    /// Volume of it at 25 °C and 101.325 kPa.
    pub volume: Volume,
}

/// What takes up an amount of acid.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Neutralization {
    /// The base.
    pub base: Base,
    /// Mass of the pure base that matches the acid: a guide, the pH paper decides.
    pub base_mass: Mass,
    /// Moles of it.
    pub base_amount: AmountOfSubstance,
    /// The gas, if the base makes any.
    pub carbon_dioxide: Option<CarbonDioxide>,
    /// What must be said beside it.
    pub cautions: &'static [Caution],
}

/// Base that takes up a mass of hydrogen chloride (the gas itself, not the acid as sold: see
/// [`super::Solution::mass_in`]).
///
/// # Errors
/// A mass below zero.
pub fn neutralize(acid: Mass, base: Base) -> Result<Neutralization, ChemistryError> {
    let moles_of_acid = checked_mass(acid)? / Species::HydrogenChloride.molar_mass();
    let base_amount = moles_of_acid / f64::from(base.equivalents());
    let carbon_dioxide = if base.gives_carbon_dioxide() {
        let volume = gas_volume(base_amount, Temperature::celsius(25.0), Pressure::kilopascals(101.325))?;
        Some(CarbonDioxide { amount: base_amount, mass: base_amount * Species::CarbonDioxide.molar_mass(), volume })
    } else {
        None
    };
    let base_mass = base_amount * base.species().molar_mass();
    Ok(Neutralization { base, base_mass, base_amount, carbon_dioxide, cautions: base.cautions() })
}

/// Volume of an ideal gas, n R T / p.
///
/// # Errors
/// Temperature or pressure not above zero.
pub fn gas_volume(
    amount: AmountOfSubstance,
    temperature: Temperature,
    pressure: Pressure,
) -> Result<Volume, ChemistryError> {
    let (t, p) = (temperature.as_kelvins(), pressure.as_pascals());
    if t > 0.0 && t.is_finite() && p > 0.0 && p.is_finite() {
        Ok(Volume::cubic_meters(amount.as_moles() * GAS_CONSTANT * t / p))
    } else {
        Err(ChemistryError::Gas { temperature, pressure })
    }
}

/// What of the paste the acid dissolves.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Mineral {
    /// Carbonated paste or limestone.
    CalciumCarbonate,
    /// Portlandite of young paste.
    CalciumHydroxide,
}

impl Mineral {
    /// Density of the solid: calcite 2.71, portlandite 2.24 g/cm³ (M).
    #[must_use]
    pub const fn density(self) -> Density {
        match self {
            Self::CalciumCarbonate => Density::grams_per_milliliter(2.71),
            Self::CalciumHydroxide => Density::grams_per_milliliter(2.24),
        }
    }

    /// The base it is to the acid.
    #[must_use]
    pub const fn base(self) -> Base {
        match self {
            Self::CalciumCarbonate => Base::CalciumCarbonate,
            Self::CalciumHydroxide => Base::CalciumHydroxide,
        }
    }
}

/// Depth of solid mineral that a mass of hydrogen chloride on an area can dissolve at most.
///
/// An upper bound of scale, tens of micrometers for a usual coat of acid, not a prediction: paste is
/// porous, part aggregate, and acid is rinsed off before it is spent.
///
/// # Errors
/// A mass below zero, or an area not above zero.
pub fn etched_depth(acid: Mass, area: Area, mineral: Mineral) -> Result<FilmThickness, ChemistryError> {
    if !(area > Area::ZERO && area.as_square_meters().is_finite()) {
        return Err(ChemistryError::Area(area));
    }
    let dissolved = neutralize(acid, mineral.base())?.base_mass / mineral.density();
    Ok(FilmThickness::meters((dissolved / area).as_meters()))
}
