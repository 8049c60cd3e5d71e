//! How old concrete really is: temperature–time factor and equivalent age from a temperature log.
//!
//! Why this module exists: 28 days in the cold are not 28 days. The log is integrated reading by
//! reading, never by one mean, and a silence longer than a stated limit is a gap that widens the
//! answer to an interval instead of being filled in.
//!
//! Checked against `reference/physics/maturity_checks.csv` (V by arithmetic; formulas of ASTM C1074
//! from memory of its text).

mod error;
mod log;
mod maturity;

pub use error::CureError;
pub use log::{Between, GapRule, TemperatureLog, TemperatureReading};
pub use maturity::{
    Activation, ArrheniusAge, EQUIVALENT_AGE, EquivalentAge, KelvinOffset, Maturity, NURSE_SAUL, TemperatureTime,
    TemperatureTimeFactor, equivalent_age, temperature_time_factor,
};
