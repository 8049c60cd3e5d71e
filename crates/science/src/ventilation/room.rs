//! A room with a fan: how vapor builds up, and how long it takes to leave.

use units::{AirFlow, Concentration, Density, Duration, Fraction, MolarMass, Pressure, Temperature, Volume};

use super::error::{checked_flow, checked_share};
use super::{Mixing, VentilationError};

/// Gas constant, J/(mol·K), exact in the SI of 2019.
const GAS_CONSTANT: f64 = 8.314_462_618;

/// A room with a flow of fresh air through it. One well-mixed box with the flow Q' = Q/K
/// (ACGIH form, V by arithmetic); corners and the floor, where heavy vapor lies, are worse.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Room {
    volume: Volume,
    effective: AirFlow,
}

impl Room {
    /// From its volume, the fan's flow (0 for none) and the mixing factor.
    ///
    /// # Errors
    /// A volume not above zero, or a flow below zero.
    pub fn new(volume: Volume, flow: AirFlow, mixing: Mixing) -> Result<Self, VentilationError> {
        if volume > Volume::ZERO && volume.as_cubic_meters().is_finite() {
            Ok(Self { volume, effective: checked_flow("fresh air", flow)? / mixing.value() })
        } else {
            Err(VentilationError::Volume { field: "room", value: volume })
        }
    }

    /// Concentration some time after a steady release began in clean air:
    /// C = G/Q' (1 − exp(−Q' t/V)), or G t/V without a fan. Never given above 100 %; what the liquid's
    /// vapor pressure allows may be less.
    ///
    /// # Errors
    /// A release or a time below zero.
    pub fn builds_up_to(&self, vapor: AirFlow, after: Duration) -> Result<Concentration, VentilationError> {
        let vapor = checked_flow("vapor rate", vapor)?;
        let passes = after >= Duration::ZERO && after.as_seconds().is_finite();
        if !passes {
            return Err(VentilationError::Time { field: "time", value: after });
        }
        let added = (vapor * after) / self.volume;
        let changes = (self.effective * after) / self.volume;
        // (1 − e^−x)/x, which is 1 without a fan; expm1 keeps it exact for a weak one.
        let kept = if changes > 0.0 { -libm::expm1(-changes) / changes } else { 1.0 };
        Ok(Concentration::share((added * kept).min(1.0)))
    }

    /// Concentration after a very long steady release: G/Q'.
    ///
    /// # Errors
    /// No fresh air, or a release below zero.
    pub fn steady(&self, vapor: AirFlow) -> Result<Concentration, VentilationError> {
        let vapor = checked_flow("vapor rate", vapor)?;
        Ok(Concentration::share((vapor / self.blowing()?).min(1.0)))
    }

    /// Time to thin the air from one concentration to another once nothing more is released:
    /// t = V/Q' · ln(C1/C2). Zero when it is there already.
    ///
    /// # Errors
    /// No fresh air, or a concentration not between 0 and 100 %.
    pub fn purge_time(&self, from: Concentration, to: Concentration) -> Result<Duration, VentilationError> {
        let (from, to) = (checked_share("concentration", from)?, checked_share("wished concentration", to)?);
        Ok(self.volume / self.blowing()? * libm::log(from / to).max(0.0))
    }

    fn blowing(&self) -> Result<AirFlow, VentilationError> {
        if self.effective > AirFlow::ZERO {
            Ok(self.effective)
        } else {
            Err(VentilationError::Flow { field: "fresh air", value: self.effective })
        }
    }
}

/// How many room volumes of fresh air remove a share of what is in the air: K · ln(1/(1 − share)).
///
/// # Errors
/// A removal of everything.
pub fn air_changes_for_removal(removal: Fraction, mixing: Mixing) -> Result<f64, VentilationError> {
    if removal.as_share() < 1.0 {
        Ok(-libm::log1p(-removal.as_share()) * mixing.value())
    } else {
        Err(VentilationError::Removal(removal))
    }
}

/// Mass of a vapor in a volume of air from its share by volume: C · M · p/(R T).
///
/// # Errors
/// A concentration not between 0 and 100 %, a molar mass, temperature or pressure not above zero.
pub fn mass_concentration(
    vapor: Concentration,
    molar_mass: MolarMass,
    temperature: Temperature,
    pressure: Pressure,
) -> Result<Density, VentilationError> {
    let share = checked_share("concentration", vapor)?.as_share();
    let (m, t, p) = (molar_mass.as_kilograms_per_mole(), temperature.as_kelvins(), pressure.as_pascals());
    if !(m > 0.0 && m.is_finite()) {
        return Err(VentilationError::MolarMass(molar_mass));
    }
    if !(t > 0.0 && t.is_finite() && p > 0.0 && p.is_finite()) {
        return Err(VentilationError::Air { temperature, pressure });
    }
    Ok(Density::kilograms_per_cubic_meter(share * m * p / (GAS_CONSTANT * t)))
}
