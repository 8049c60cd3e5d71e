//! Vapor given off, and the flow of fresh air that thins it.

use units::{AirFlow, Concentration, Duration, MolarMass, Temperature, Volume};

use super::error::{checked_flow, checked_share};
use super::{Substance, VentilationError};
use crate::{FormulaSource, Grade, SpecificGravity};

/// Q = 403 · SG · ER · 10⁶ · K / (MW · C).
pub const DILUTION_FOR_HEALTH: FormulaSource = FormulaSource {
    id: "dilution-for-health",
    document: "ACGIH Industrial Ventilation, dilution chapter",
    locator: "Q = 403 SG ER 1e6 K / (MW C), read in stored copies",
    grade: Grade::Verified,
};

/// Q = 403 · SG · ER · 100 · C / (MW · LEL · B).
pub const DILUTION_FOR_LEL: FormulaSource = FormulaSource {
    id: "dilution-for-explosive-limit",
    document: "ACGIH Industrial Ventilation, dilution chapter",
    locator: "Q = 403 SG ER 100 C / (MW LEL B)",
    grade: Grade::FromMemory,
};

/// Cubic feet of vapor from a US pint of a liquid of specific gravity 1 and molar mass 1 at 70 °F:
/// 8.3454/8 lb times 386.8 ft³ per pound-mole is 403.5, which the handbook rounds to 403.
const CUBIC_FEET_PER_PINT: f64 = 403.0;

/// Above this the explosive limit falls, and B = 0.7 instead of 1 (M).
const WARM_LIMIT: Temperature = Temperature::fahrenheit(250.0);

/// A liquid that evaporates.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Solvent {
    molar_mass: MolarMass,
    gravity: SpecificGravity,
    lower_explosive_limit: Option<Concentration>,
    acid: bool,
}

impl Solvent {
    /// From its data sheet; no explosive limit means that it does not burn.
    ///
    /// # Errors
    /// A molar mass not above zero, or an explosive limit not between 0 and 100 %.
    pub fn new(
        molar_mass: MolarMass,
        gravity: SpecificGravity,
        lower_explosive_limit: Option<Concentration>,
    ) -> Result<Self, VentilationError> {
        if !(molar_mass > MolarMass::ZERO && molar_mass.as_grams_per_mole().is_finite()) {
            return Err(VentilationError::MolarMass(molar_mass));
        }
        if let Some(limit) = lower_explosive_limit {
            checked_share("lower explosive limit", limit)?;
        }
        Ok(Self { molar_mass, gravity, lower_explosive_limit, acid: false })
    }

    /// A substance of the list, as a liquid of a specific gravity.
    #[must_use]
    pub fn of(substance: Substance, gravity: SpecificGravity) -> Self {
        let data = substance.data();
        Self {
            molar_mass: data.molar_mass,
            gravity,
            lower_explosive_limit: data.explosive.map(|(lower, _)| lower),
            acid: substance == Substance::HydrogenChloride,
        }
    }

    /// Lower explosive limit.
    ///
    /// # Errors
    /// A substance that does not burn.
    pub fn lower_explosive_limit(&self) -> Result<Concentration, VentilationError> {
        self.lower_explosive_limit.ok_or(VentilationError::NoExplosiveLimit)
    }
}

/// How the liquid gets into the air.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum How {
    /// Rolled, mopped or poured, evaporating from the floor.
    Evaporating,
    /// Sprayed.
    Spraying,
    /// Acid as mist or gas.
    AcidMist,
}

/// Liquid that goes into the air of a room.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Release {
    /// What evaporates.
    pub solvent: Solvent,
    /// Volume of it: the solvent alone, not the product.
    pub liquid: Volume,
    /// The time in which it does.
    pub over: Duration,
    /// In which way.
    pub how: How,
}

/// Mixing factor K, 1 for perfect mixing to 10 for dead corners (M).
#[derive(Debug, Clone, Copy, PartialEq, PartialOrd)]
pub struct Mixing(f64);

impl Mixing {
    /// Air that mixes at once.
    pub const PERFECT: Self = Self(1.0);

    /// From K.
    ///
    /// # Errors
    /// Outside 1 to 10.
    pub fn factor(k: f64) -> Result<Self, VentilationError> {
        if (1.0..=10.0).contains(&k) { Ok(Self(k)) } else { Err(VentilationError::Mixing(k)) }
    }

    /// K.
    #[must_use]
    pub const fn value(self) -> f64 {
        self.0
    }
}

/// How far below the explosive limit the air must stay.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ExplosiveMargin {
    factor: f64,
    warmest: Temperature,
}

impl ExplosiveMargin {
    /// From the safety factor C (4 is a quarter of the limit, M; 10 a tenth) and the warmest air.
    ///
    /// # Errors
    /// A factor outside 1 to 20.
    pub fn new(factor: f64, warmest: Temperature) -> Result<Self, VentilationError> {
        if (1.0..=20.0).contains(&factor) {
            Ok(Self { factor, warmest })
        } else {
            Err(VentilationError::Safety(factor))
        }
    }

    const fn warm_factor(self) -> f64 {
        if self.warmest.as_kelvins() > WARM_LIMIT.as_kelvins() { 0.7 } else { 1.0 }
    }
}

/// Vapor given off, as a flow of pure vapor at 70 °F.
///
/// # Errors
/// Spraying, acid, a volume below zero, or a time not above zero.
pub fn vapor_rate(release: &Release) -> Result<AirFlow, VentilationError> {
    match release.how {
        How::Spraying => return Err(VentilationError::Spraying),
        How::AcidMist => return Err(VentilationError::AcidMist),
        How::Evaporating if release.solvent.acid => return Err(VentilationError::AcidMist),
        How::Evaporating => {}
    }
    if !(release.liquid >= Volume::ZERO && release.liquid.as_cubic_meters().is_finite()) {
        return Err(VentilationError::Volume { field: "liquid", value: release.liquid });
    }
    if !(release.over > Duration::ZERO && release.over.as_seconds().is_finite()) {
        return Err(VentilationError::Time { field: "evaporation time", value: release.over });
    }
    // G = 403 · SG · ER / MW, ER in US pints a minute
    let pints_a_minute = release.liquid.as_us_pints() / release.over.as_minutes();
    let solvent = &release.solvent;
    Ok(AirFlow::cubic_feet_per_minute(
        CUBIC_FEET_PER_PINT * solvent.gravity.value() * pints_a_minute / solvent.molar_mass.as_grams_per_mole(),
    ))
}

/// Fresh air that keeps a vapor at or below a health limit: Q = G · 10⁶ · K / C.
///
/// # Errors
/// A vapor rate below zero, or a limit not between 0 and 100 %.
pub fn health_flow(vapor: AirFlow, limit: Concentration, mixing: Mixing) -> Result<AirFlow, VentilationError> {
    let limit = checked_share("health limit", limit)?;
    Ok(checked_flow("vapor rate", vapor)? * (mixing.0 / limit.as_share()))
}

/// Fresh air that keeps a vapor below a part of its explosive limit: Q = G · 100 · C / (LEL · B).
///
/// Far from healthy: show it only beside [`health_flow`].
///
/// # Errors
/// A vapor rate below zero, or a substance that does not burn.
pub fn explosive_flow(vapor: AirFlow, solvent: &Solvent, margin: ExplosiveMargin) -> Result<AirFlow, VentilationError> {
    let limit = solvent.lower_explosive_limit()?;
    Ok(checked_flow("vapor rate", vapor)? * (margin.factor / (limit.as_share() * margin.warm_factor())))
}

/// Both answers, side by side.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Flows {
    /// Pure vapor given off.
    pub vapor: AirFlow,
    /// Fresh air for health.
    pub for_health: AirFlow,
    /// Fresh air for the explosive limit; `None` for a substance that does not burn.
    pub below_explosive_limit: Option<AirFlow>,
}

impl Flows {
    /// The larger of the two.
    #[must_use]
    pub fn needed(&self) -> AirFlow {
        self.below_explosive_limit.map_or(self.for_health, |flow| flow.max(self.for_health))
    }
}

/// Fresh air for a release, for health and for the explosive limit.
///
/// # Errors
/// Spraying, acid, or values out of range.
pub fn dilution_flows(
    release: &Release,
    limit: Concentration,
    mixing: Mixing,
    margin: ExplosiveMargin,
) -> Result<Flows, VentilationError> {
    let vapor = vapor_rate(release)?;
    let below_explosive_limit = match release.solvent.lower_explosive_limit {
        Some(_) => Some(explosive_flow(vapor, &release.solvent, margin)?),
        None => None,
    };
    Ok(Flows { vapor, for_health: health_flow(vapor, limit, mixing)?, below_explosive_limit })
}
