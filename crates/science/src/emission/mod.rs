//! The dish test: how much vapor a slab gives off under a sealed cover.
//!
//! Why this module exists: the sealer's own limit is often given in pounds from 1000 ft² in 24 h,
//! and the test yields grams, square feet and hours. It sees the top half inch or so of the slab
//! and cannot be converted to relative humidity in it.
//!
//! Checked against `reference/physics/mver_checks.csv`.

use units::{Area, Duration, Mass, MoistureEmission};

use crate::{FormulaSource, Grade};

/// lb/1000 ft²/24 h = 52.91 · Δm\[g\] / (A\[ft²\] · t\[h\]): the constant is the unit conversion
/// 24 · 1000 / 453.59237 (V); the form of the standard is from memory.
pub const DISH_TEST: FormulaSource = FormulaSource {
    id: "dish-test",
    document: "ASTM F1869",
    locator: "mass gain over area and time, 60 to 72 h; rate definition read in F1869-11, formula text from memory",
    grade: Grade::SecondaryCopy,
};

/// Shortest exposure of the standard test, hours (V2).
const SHORTEST_H: f64 = 60.0;
/// Longest exposure of the standard test, hours (V2).
const LONGEST_H: f64 = 72.0;

/// A dish test that cannot be evaluated.
#[derive(Debug, Clone, Copy, PartialEq, thiserror::Error)]
pub enum EmissionError {
    /// The dish lost mass, or the gain is not a number.
    #[error("mass gain {} g; accepted: 0 or more (a dish that lost mass was opened, spilt or weighed wrongly)", .0.as_grams())]
    Gain(Mass),
    /// The area under the cover is not above zero.
    #[error("area {} ft²; accepted: above 0, such as 0.5 ft²", .0.as_square_feet())]
    Area(Area),
    /// The time is not above zero.
    #[error("exposure {} h; accepted: above 0, and 60 to 72 h for the standard test", .0.as_hours())]
    Time(Duration),
}

/// How the exposure lies against the 60 to 72 hours of the standard.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Exposure {
    /// Below 60 h: not the standard test.
    TooShort,
    /// 60 to 72 h.
    Standard,
    /// Above 72 h: not the standard test.
    TooLong,
}

/// The outcome of a dish test.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct EmissionReading {
    /// Emission at the place of the dish.
    pub emission: MoistureEmission,
    /// Whether it counts as the standard test.
    pub exposure: Exposure,
}

/// Moisture emission from the mass a dish gained over an area in a time.
///
/// # Errors
/// A gain below zero; an area or a time not above zero.
pub fn moisture_emission(gain: Mass, area: Area, exposed: Duration) -> Result<EmissionReading, EmissionError> {
    let (kilograms, square_meters, seconds) = (gain.as_kilograms(), area.as_square_meters(), exposed.as_seconds());
    if !(kilograms >= 0.0 && kilograms.is_finite()) {
        return Err(EmissionError::Gain(gain));
    }
    if !(square_meters > 0.0 && square_meters.is_finite()) {
        return Err(EmissionError::Area(area));
    }
    if !(seconds > 0.0 && seconds.is_finite()) {
        return Err(EmissionError::Time(exposed));
    }
    let exposure = match exposed.as_hours() {
        h if h < SHORTEST_H => Exposure::TooShort,
        h if h > LONGEST_H => Exposure::TooLong,
        _ => Exposure::Standard,
    };
    let emission = MoistureEmission::kilograms_per_square_meter_second(kilograms / (square_meters * seconds));
    Ok(EmissionReading { emission, exposure })
}
