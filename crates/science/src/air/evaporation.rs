//! How fast fresh concrete loses water to the air above it.

use units::{EvaporationRate, Fraction, RelativeHumidity, Speed, Temperature};

use super::{AirError, saturation_pressure, vapor_pressure};
use crate::{FormulaSource, Grade};

/// The vapor pressure form.
pub const MENZEL: FormulaSource = FormulaSource {
    id: "menzel-1954",
    document: "Menzel 1954, behind the ACI 305R evaporation chart",
    locator: "W = 0.44 (e0 - ea)(0.253 + 0.096 V)",
    grade: Grade::FromMemory,
};

/// The form without vapor pressures.
pub const UNO: FormulaSource = FormulaSource {
    id: "uno-1998",
    document: "Uno 1998, ACI Materials Journal",
    locator: "E = 5 ((Tc + 18)^2.5 - r (Ta + 18)^2.5)(V + 4) 1e-6",
    grade: Grade::FromMemory,
};

/// How far a measured rate may lie from the formula's: ± 40 % (V, abstract of a 2020 paper that
/// compared the forms with measurements).
const RELATIVE_ERROR: f64 = 0.40;

/// Which of the published forms is used.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default)]
pub enum EvaporationForm {
    /// Menzel 1954 with Hyland–Wexler pressures, converted from pounds, feet, psi and mph exactly.
    #[default]
    Menzel,
    /// Uno 1998, SI form.
    Uno,
    /// Uno 1998, US form; up to about 6 % above the SI form, since each has its own rounded constants.
    UnoUsCustomary,
}

impl EvaporationForm {
    /// The document behind it.
    #[must_use]
    pub const fn source(self) -> FormulaSource {
        match self {
            Self::Menzel => MENZEL,
            Self::Uno | Self::UnoUsCustomary => UNO,
        }
    }
}

/// A rate together with how wrong it may be. Below zero is condensation.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct EstimatedRate {
    /// The formula's rate.
    pub rate: EvaporationRate,
    /// Half width of the band around it, as a share of the rate.
    pub relative_error: Fraction,
}

impl EstimatedRate {
    /// The end of the band nearer to zero drying, or of more condensation.
    #[must_use]
    pub fn low(self) -> EvaporationRate {
        self.rate - self.half_width()
    }

    /// The end of the band of faster drying.
    #[must_use]
    pub fn high(self) -> EvaporationRate {
        self.rate + self.half_width()
    }

    /// Whether water settles on the surface instead of leaving it.
    #[must_use]
    pub fn is_condensation(self) -> bool {
        self.rate < EvaporationRate::ZERO
    }

    fn half_width(self) -> EvaporationRate {
        self.rate.abs() * self.relative_error.as_share()
    }
}

/// Evaporation from fresh concrete at `surface`, in air at `air` and `humidity`, with `wind` at
/// 0.5 m above the surface.
///
/// An estimate for a wet surface that bleeds, ± 40 %; nothing for concrete that has set or is
/// covered. Air pressure does not enter.
///
/// # Errors
/// Temperatures outside the vapor formula (or not above -18 °C for Uno); wind below zero.
pub fn evaporation_rate(
    form: EvaporationForm,
    surface: Temperature,
    air: Temperature,
    humidity: RelativeHumidity,
    wind: Speed,
) -> Result<EstimatedRate, AirError> {
    if !(wind >= Speed::ZERO && wind.as_meters_per_second().is_finite()) {
        return Err(AirError::Wind(wind));
    }
    let rate = match form {
        EvaporationForm::Menzel => menzel(surface, air, humidity, wind)?,
        EvaporationForm::Uno => uno(surface, air, humidity, wind)?,
        EvaporationForm::UnoUsCustomary => uno_us_customary(surface, air, humidity, wind)?,
    };
    let relative_error = Fraction::share(RELATIVE_ERROR).expect("0.40 lies between 0 and 1");
    Ok(EstimatedRate { rate, relative_error })
}

fn menzel(
    surface: Temperature,
    air: Temperature,
    humidity: RelativeHumidity,
    wind: Speed,
) -> Result<EvaporationRate, AirError> {
    let e0 = saturation_pressure(surface)?.as_psi();
    let ea = vapor_pressure(air, humidity)?.as_psi();
    // W = 0.44 (e0 − ea)(0.253 + 0.096 V), lb/ft²/h, e in psi (not inHg), V in mph
    Ok(EvaporationRate::pounds_per_square_foot_hour(0.44 * (e0 - ea) * (0.253 + 0.096 * wind.as_miles_per_hour())))
}

fn uno(
    surface: Temperature,
    air: Temperature,
    humidity: RelativeHumidity,
    wind: Speed,
) -> Result<EvaporationRate, AirError> {
    let surface_power = libm::pow(above("surface temperature", surface, -18.0)? + 18.0, 2.5);
    let air_power = libm::pow(above("air temperature", air, -18.0)? + 18.0, 2.5);
    // E = 5 ((Tc + 18)^2.5 − r (Ta + 18)^2.5)(V + 4) 1e-6, kg/m²/h, °C, km/h
    Ok(EvaporationRate::kilograms_per_square_meter_hour(
        5.0 * (surface_power - humidity.as_share() * air_power) * (wind.as_kilometers_per_hour() + 4.0) * 1e-6,
    ))
}

fn uno_us_customary(
    surface: Temperature,
    air: Temperature,
    humidity: RelativeHumidity,
    wind: Speed,
) -> Result<EvaporationRate, AirError> {
    let zero_fahrenheit = Temperature::fahrenheit(0.0).as_celsius();
    above("surface temperature", surface, zero_fahrenheit)?;
    above("air temperature", air, zero_fahrenheit)?;
    let surface_power = libm::pow(surface.as_fahrenheit(), 2.5);
    let air_power = libm::pow(air.as_fahrenheit(), 2.5);
    // E = (Tc^2.5 − r Ta^2.5)(1 + 0.4 V) 1e-6, lb/ft²/h, °F, mph
    Ok(EvaporationRate::pounds_per_square_foot_hour(
        (surface_power - humidity.as_share() * air_power) * (1.0 + 0.4 * wind.as_miles_per_hour()) * 1e-6,
    ))
}

/// The temperature in °C when it lies above `lowest` and inside the range of the vapor formula.
fn above(field: &'static str, value: Temperature, lowest: f64) -> Result<f64, AirError> {
    super::saturation::covered(field, value)?;
    let celsius = value.as_celsius();
    if celsius > lowest { Ok(celsius) } else { Err(AirError::BelowUno { field, value }) }
}
