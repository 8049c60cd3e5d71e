//! Dew point: the vapor pressure formula turned round.

use units::{Pressure, RelativeHumidity, Temperature};

use super::AirError;
use super::saturation::{
    HIGHEST_K, LOWEST_K, TRIPLE_POINT_K, covered, ln_over_ice, ln_over_water, ln_saturation, ln_slope_over_ice,
    ln_slope_over_water,
};

/// ln of 611.657 Pa, the saturation pressure at the triple point.
const LN_TRIPLE: f64 = 6.416_171_713_6;
/// ln of the saturation pressure at -100 °C and at 200 °C, the ends of the formula, rounded outward.
const LN_LOWEST: f64 = -6.567_645_3;
const LN_HIGHEST: f64 = 14.257_033_6;

/// A Newton step below this, K, is the last one.
///
/// The step is taken on 1/T, in which ln p is almost a straight line. There the error after a step
/// is |f''/(2f') + 1/T| times the square of the error before it, f = ln p: at most 4.6e-4 /K over
/// water and 8.5e-5 /K over ice, over the whole -100 to 200 °C. The step is the error before it (to
/// the same order), so after a step of 0.05 K the error is at most 4.6e-4 · 0.05² = 1.2e-6 K.
const LAST_STEP_K: f64 = 0.05;

/// Constants of the Magnus form p = A·exp(B·t/(C + t)), t in °C: only a start for Newton.
/// Alduchov & Eskridge 1996, over water and over ice (M; the answer does not depend on them).
struct Magnus {
    ln_a: f64,
    b: f64,
    c: f64,
}

const OVER_WATER: Magnus = Magnus { ln_a: 6.414_998_754_7, b: 17.625, c: 243.04 };
const OVER_ICE: Magnus = Magnus { ln_a: 6.415_440_599_0, b: 22.587, c: 273.86 };

impl Magnus {
    /// Solved for the temperature, K.
    #[inline]
    fn inverted(&self, ln_pressure: f64) -> f64 {
        let l = ln_pressure - self.ln_a;
        self.c * l / (self.b - l) + 273.15
    }
}

/// Newton on 1/T for f(T) = `ln_pressure`.
#[inline]
fn newton(ln_pressure: f64, start: f64, f: impl Fn(f64) -> f64, slope: impl Fn(f64) -> f64) -> f64 {
    let mut t = start;
    // The Magnus start is within 5.2 K over the whole range, so the second step is already below
    // the last one; the bound only keeps a mistake from looping.
    for _ in 0..4 {
        let step = (f(t) - ln_pressure) / slope(t);
        // 1/T₁ = 1/T + step/T²
        t /= 1.0 + step / t;
        if step.abs() < LAST_STEP_K {
            break;
        }
    }
    t
}

/// The temperature in K at which ln of the saturation pressure is `ln_pressure`.
#[inline]
fn inverted(ln_pressure: f64) -> f64 {
    // Each branch stays on its own side of the triple point, so the answer rises with the pressure.
    if ln_pressure > LN_TRIPLE {
        newton(ln_pressure, OVER_WATER.inverted(ln_pressure), ln_over_water, ln_slope_over_water).max(TRIPLE_POINT_K)
    } else {
        newton(ln_pressure, OVER_ICE.inverted(ln_pressure), ln_over_ice, ln_slope_over_ice).min(TRIPLE_POINT_K)
    }
}

/// Dew point of air at a temperature and relative humidity (frost point below 0.01 °C).
///
/// It does not depend on air pressure. Never above the air temperature.
///
/// Source: [`super::HYLAND_WEXLER`], V (psychrolib 2.5.0 within 0.01 °C, CoolProp 8.0.0 within 0.03 °C).
///
/// # Errors
/// Air outside -100 °C to 200 °C; no vapor, or a dew point below -100 °C.
pub fn dew_point(temperature: Temperature, humidity: RelativeHumidity) -> Result<Temperature, AirError> {
    let t = covered("air temperature", temperature)?;
    let ln_pressure = ln_saturation(t) + libm::log(humidity.as_share());
    // Also catches the -infinity of dry air.
    if ln_pressure < LN_LOWEST {
        return Err(AirError::NoDewPoint(Pressure::pascals(libm::exp(ln_pressure))));
    }
    Ok(Temperature::kelvins(inverted(ln_pressure).min(t)))
}

/// Dew point of air with a known vapor pressure.
///
/// # Errors
/// Pressures outside the saturation pressures of -100 °C to 200 °C.
pub fn dew_point_of_vapor(vapor: Pressure) -> Result<Temperature, AirError> {
    let pascals = vapor.as_pascals();
    let ln_pressure = if pascals > 0.0 { libm::log(pascals) } else { f64::NEG_INFINITY };
    if (LN_LOWEST..=LN_HIGHEST).contains(&ln_pressure) {
        Ok(Temperature::kelvins(inverted(ln_pressure).clamp(LOWEST_K, HIGHEST_K)))
    } else {
        Err(AirError::NoDewPoint(vapor))
    }
}
