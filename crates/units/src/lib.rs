//! Typed quantities for the slab trade.
//!
//! Why this crate exists: a job on a slab mixes feet-inches-fractions, gallons, mils, °F and SI in
//! one conversation, and a bare `f64` with its unit in someone's head ends as a wrong order or a
//! wrong mix. Each quantity here is its own type with one private SI value, named constructors and
//! getters, a forgiving reader for trade notation and an exact printer.
//!
//! ```
//! use units::{Length, Notation};
//! let wall = Length::read("12' 6 1/2\"")?;
//! assert_eq!(wall, Length::feet_inches(12.0, 6.5));
//! assert_eq!(wall.show_feet_inches(16), "12' 6 1/2\"");
//! assert!((wall.as_meters() - 3.8227).abs() < 1e-12);
//! # Ok::<(), units::ReadError>(())
//! ```
//!
//! To add a quantity: one `quantity!` call with its units, the words a person may write for each,
//! and two examples that an error message can offer.
//!
//! Conversion factors are exact by definition (NIST SP 811, Appendix B.8: inch 25.4 mm, US gallon
//! 231 in³, pound 0.45359237 kg, standard gravity 9.80665 m/s²) unless said otherwise.

mod feet_inches;
mod notation;
mod number;
#[macro_use]
mod quantity;
mod air;
mod amounts;
mod kinds;
mod measures;
mod mechanics;
mod offset;
mod temperature;
mod unit_system;
mod written;

pub use air::{Fraction, HumidityDifference, Ph, RelativeHumidity};
pub use amounts::{
    AmountOfSubstance, AmountOfSubstanceUnit, Area, AreaUnit, Coverage, CoverageUnit, Density, DensityUnit, Length,
    LengthUnit, Mass, MassUnit, MolarMass, MolarMassUnit, Molarity, MolarityUnit, Volume, VolumeUnit,
};
pub use kinds::{Quantity, QuantityKind};
pub use measures::{
    Concentration, ConcentrationUnit, Diffusivity, DiffusivityUnit, EvaporationRate, EvaporationRateUnit,
    FilmThickness, FilmThicknessUnit, MoistureEmission, MoistureEmissionUnit, Percentage, PercentageUnit,
    VaporPermeance, VaporPermeanceUnit,
};
pub use mechanics::{AirFlow, AirFlowUnit, Duration, DurationUnit, Pressure, PressureUnit, Speed, SpeedUnit};
pub use notation::{Notation, Problem, ReadError};
pub use offset::Offset;
pub use temperature::{Temperature, TemperatureDifference};
pub use unit_system::{UnitSystem, UnknownChoice};
pub use written::AsWritten;
