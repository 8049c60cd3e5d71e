//! Air as a whole: temperature, humidity and pressure together.

use units::{Length, Pressure, RelativeHumidity, Temperature};

use super::{AirError, dew_point, saturation_pressure, wet_bulb};
use crate::{FormulaSource, Grade};

/// Pressure against height above sea level.
pub const STANDARD_ATMOSPHERE: FormulaSource = FormulaSource {
    id: "standard-atmosphere",
    document: "ASHRAE Fundamentals 2017, chapter 1",
    locator: "equation 3",
    grade: Grade::Verified,
};

/// Molar mass of water over that of dry air (ASHRAE 2017 ch. 1, in eq. 20; V via psychrolib).
pub(super) const MASS_RATIO: f64 = 0.621_945;

/// Air pressure at a height above sea level in the standard atmosphere.
///
/// Weather moves it by some ± 3 %; a barometer on site is better. Source: [`STANDARD_ATMOSPHERE`], V.
///
/// # Errors
/// Outside -5000 m to 11 000 m.
pub fn standard_pressure(elevation: Length) -> Result<Pressure, AirError> {
    let z = elevation.as_meters();
    if !(-5000.0..=11_000.0).contains(&z) {
        return Err(AirError::Elevation(elevation));
    }
    // p = 101.325 (1 − 2.25577e-5 Z)^5.2559   (eq. 3, kPa, m)
    Ok(Pressure::kilopascals(101.325 * libm::pow(1.0 - 2.255_77e-5 * z, 5.2559)))
}

/// Partial pressure of the water vapor in air: humidity times saturation pressure.
///
/// # Errors
/// Air outside -100 °C to 200 °C.
pub fn vapor_pressure(temperature: Temperature, humidity: RelativeHumidity) -> Result<Pressure, AirError> {
    Ok(saturation_pressure(temperature)? * humidity.as_share())
}

/// Mass of water vapor per mass of dry air.
#[derive(Debug, Clone, Copy, PartialEq, PartialOrd)]
pub struct HumidityRatio(f64);

impl HumidityRatio {
    /// In kilograms per kilogram, which is also pounds per pound.
    #[must_use]
    pub const fn as_mass_per_mass(self) -> f64 {
        self.0
    }

    /// In grains of water per pound of dry air (7000 grains to the pound).
    #[must_use]
    pub const fn as_grains_per_pound(self) -> f64 {
        self.0 * 7000.0
    }
}

/// Humidity ratio at a vapor pressure and an air pressure.
///
/// ASHRAE 2017 ch. 1 eq. 20, V (psychrolib).
///
/// # Errors
/// Air pressure not above zero, or vapor pressure not below it.
pub fn humidity_ratio(vapor: Pressure, air: Pressure) -> Result<HumidityRatio, AirError> {
    checked_pressure(air)?;
    if vapor < air { Ok(ratio(vapor, air)) } else { Err(AirError::Boiling { vapor, air }) }
}

/// W = 0.621945 pw / (p − pw)   (eq. 20)
fn ratio(vapor: Pressure, air: Pressure) -> HumidityRatio {
    HumidityRatio(MASS_RATIO * (vapor / (air - vapor)))
}

pub(super) fn checked_pressure(air: Pressure) -> Result<Pressure, AirError> {
    if air > Pressure::ZERO && air.as_pascals().is_finite() { Ok(air) } else { Err(AirError::Pressure(air)) }
}

/// Air that has been checked: within the formula's range, vapor below the air pressure.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Air {
    temperature: Temperature,
    humidity: RelativeHumidity,
    pressure: Pressure,
    vapor: Pressure,
}

impl Air {
    /// Air at a site pressure.
    ///
    /// # Errors
    /// Temperature outside -100 °C to 200 °C, pressure not above zero, or air at or above boiling.
    pub fn new(temperature: Temperature, humidity: RelativeHumidity, pressure: Pressure) -> Result<Self, AirError> {
        let saturated = saturation_pressure(temperature)?;
        if saturated < checked_pressure(pressure)? {
            Ok(Self { temperature, humidity, pressure, vapor: saturated * humidity.as_share() })
        } else {
            Err(AirError::Boiling { vapor: saturated, air: pressure })
        }
    }

    /// Air at a height above sea level in the standard atmosphere.
    ///
    /// # Errors
    /// As [`Air::new`], and heights outside -5000 m to 11 000 m.
    pub fn at_elevation(
        temperature: Temperature,
        humidity: RelativeHumidity,
        elevation: Length,
    ) -> Result<Self, AirError> {
        Self::new(temperature, humidity, standard_pressure(elevation)?)
    }

    /// Air temperature (dry bulb).
    #[must_use]
    pub const fn temperature(self) -> Temperature {
        self.temperature
    }

    /// Relative humidity.
    #[must_use]
    pub const fn humidity(self) -> RelativeHumidity {
        self.humidity
    }

    /// Air pressure.
    #[must_use]
    pub const fn pressure(self) -> Pressure {
        self.pressure
    }

    /// Partial pressure of the water vapor.
    #[must_use]
    pub const fn vapor_pressure(self) -> Pressure {
        self.vapor
    }

    /// Dew point; frost point below 0.01 °C.
    ///
    /// # Errors
    /// No vapor in the air.
    pub fn dew_point(self) -> Result<Temperature, AirError> {
        dew_point(self.temperature, self.humidity)
    }

    /// Mass of vapor per mass of dry air.
    #[must_use]
    pub fn humidity_ratio(self) -> HumidityRatio {
        ratio(self.vapor, self.pressure)
    }

    /// Thermodynamic wet bulb: liquid water where the answer is 0 °C or above, ice below.
    ///
    /// ASHRAE 2017 ch. 1 eq. 33 and 35, V (psychrolib). Libraries differ on either side of 0 °C, so
    /// an answer within about 1 °C of it is not checked against them.
    #[must_use]
    pub fn wet_bulb(self) -> Temperature {
        wet_bulb::wet_bulb(self)
    }
}
