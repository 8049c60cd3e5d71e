//! Saturation pressure of water vapor, over water and over ice.

use units::{Pressure, Temperature};

use super::AirError;
use crate::{FormulaSource, Grade};

/// The vapor pressure formula. The constants agree with psychrolib 2.5.0 to all printed digits.
pub const HYLAND_WEXLER: FormulaSource = FormulaSource {
    id: "hyland-wexler",
    document: "ASHRAE Fundamentals 2017, chapter 1",
    locator: "equations 5 and 6",
    grade: Grade::Verified,
};

/// The triple point of water, K. The two formulas meet here (they differ by 6e-9 of the value); the
/// handbook's text says 0 °C, where they would leave a step and an inversion would not converge.
pub(super) const TRIPLE_POINT_K: f64 = 273.16;
/// Lowest temperature of the formula, K.
pub(super) const LOWEST_K: f64 = 173.15;
/// Highest temperature of the formula, K.
pub(super) const HIGHEST_K: f64 = 473.15;

// ln p = C1/T + C2 + C3·T + C4·T² + C5·T³ + C6·T⁴ + C7·ln T   (eq. 5, over ice, T in K, p in Pa)
const C1: f64 = -5.674_535_9e3;
const C2: f64 = 6.392_524_7;
const C3: f64 = -9.677_843_0e-3;
const C4: f64 = 6.221_570_1e-7;
const C5: f64 = 2.074_782_5e-9;
const C6: f64 = -9.484_024_0e-13;
const C7: f64 = 4.163_501_9;
// ln p = C8/T + C9 + C10·T + C11·T² + C12·T³ + C13·ln T   (eq. 6, over water)
const C8: f64 = -5.800_220_6e3;
const C9: f64 = 1.391_499_3;
const C10: f64 = -4.864_023_9e-2;
const C11: f64 = 4.176_476_8e-5;
const C12: f64 = -1.445_209_3e-8;
const C13: f64 = 6.545_967_3;

/// ln of the saturation pressure in Pa over ice, T in K.
#[inline]
pub(super) fn ln_over_ice(t: f64) -> f64 {
    C1 / t + C2 + t * (C3 + t * (C4 + t * (C5 + t * C6))) + C7 * libm::log(t)
}

/// Its derivative by T, 1/K.
#[inline]
pub(super) fn ln_slope_over_ice(t: f64) -> f64 {
    (C7 - C1 / t) / t + C3 + t * (2.0 * C4 + t * (3.0 * C5 + t * 4.0 * C6))
}

/// ln of the saturation pressure in Pa over water, T in K.
#[inline]
pub(super) fn ln_over_water(t: f64) -> f64 {
    C8 / t + C9 + t * (C10 + t * (C11 + t * C12)) + C13 * libm::log(t)
}

/// Its derivative by T, 1/K.
#[inline]
pub(super) fn ln_slope_over_water(t: f64) -> f64 {
    (C13 - C8 / t) / t + C10 + t * (2.0 * C11 + t * 3.0 * C12)
}

/// ln of the saturation pressure in Pa, over ice up to the triple point and over water above it.
#[inline]
pub(super) fn ln_saturation(t: f64) -> f64 {
    if t <= TRIPLE_POINT_K { ln_over_ice(t) } else { ln_over_water(t) }
}

/// The temperature in K when the formula covers it.
#[inline]
pub(super) fn covered(field: &'static str, value: Temperature) -> Result<f64, AirError> {
    let kelvins = value.as_kelvins();
    // A hair of slack so that -100 °C and 200 °C themselves survive their conversion.
    if (LOWEST_K - 1e-9..=HIGHEST_K + 1e-9).contains(&kelvins) {
        Ok(kelvins)
    } else {
        Err(AirError::Temperature { field, value })
    }
}

/// Saturation pressure of water vapor at a temperature, over ice up to 0.01 °C and over water above.
///
/// Source: [`HYLAND_WEXLER`], V (psychrolib 2.5.0 to 1e-6 of the value; within 5e-4 of IAPWS-95 by
/// CoolProp 8.0.0).
///
/// # Errors
/// Outside -100 °C to 200 °C.
pub fn saturation_pressure(temperature: Temperature) -> Result<Pressure, AirError> {
    let t = covered("temperature", temperature)?;
    Ok(Pressure::pascals(libm::exp(ln_saturation(t))))
}
