//! What can be wrong with a question about air.

use units::{Duration, Length, Pressure, Speed, Temperature};

/// A question about air that has no answer.
///
/// Relative humidity above 100 % never arrives here: [`units::RelativeHumidity`] refuses it.
#[derive(Debug, Clone, Copy, PartialEq, thiserror::Error)]
pub enum AirError {
    /// Outside the range of the vapor pressure formula.
    #[error("{field} {}; accepted: -100 °C (-148 °F) to 200 °C (392 °F)", .value.show_celsius(1))]
    Temperature {
        /// Which temperature.
        field: &'static str,
        /// What was given.
        value: Temperature,
    },
    /// Air without vapor, or with less than the formula covers, has no dew point.
    #[error(
        "vapor pressure {} Pa has no dew point; accepted: 0.0015 Pa to 1 550 000 Pa (relative humidity above 0 %)",
        .0.as_pascals()
    )]
    NoDewPoint(Pressure),
    /// The vapor pressure reaches the air pressure: that is steam, not moist air.
    #[error(
        "vapor pressure {} kPa is not below air pressure {} kPa; accepted: air below its boiling point",
        .vapor.as_kilopascals(), .air.as_kilopascals()
    )]
    Boiling {
        /// Vapor pressure asked for.
        vapor: Pressure,
        /// Air pressure given.
        air: Pressure,
    },
    /// Air pressure that is zero, negative or not a number.
    #[error("air pressure {} kPa; accepted: above 0, such as 101.325 kPa or 29.92 inHg", .0.as_kilopascals())]
    Pressure(Pressure),
    /// Wind below zero or not a number.
    #[error("wind {}; accepted: 0 mph or more", .0.show(units::SpeedUnit::MilePerHour, 1))]
    Wind(Speed),
    /// Site height outside the standard atmosphere formula.
    #[error("site height {} m; accepted: -5000 m to 11 000 m above sea level", .0.as_meters())]
    Elevation(Length),
    /// Below the temperature at which the Uno form stops meaning anything.
    #[error("{field} {}; accepted for the Uno form: above -18 °C (0 °F)", .value.show_celsius(1))]
    BelowUno {
        /// Which temperature.
        field: &'static str,
        /// What was given.
        value: Temperature,
    },
}

/// A reading that a sample lacks.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Missing {
    /// Slab surface temperature.
    Slab,
    /// Wind speed.
    Wind,
    /// Chance of rain.
    Rain,
}

/// A weather series that cannot be used.
#[derive(Debug, Clone, Copy, PartialEq, thiserror::Error)]
pub enum SeriesError {
    /// No samples.
    #[error("the weather series is empty; accepted: at least one sample")]
    Empty,
    /// Times do not rise.
    #[error("sample {index} at {} h is not after the one before it; accepted: finite, rising times", .at.as_hours())]
    Order {
        /// Position of the later sample, from 0.
        index: usize,
        /// Its time.
        at: Duration,
    },
    /// How long one sample speaks for is not above zero.
    #[error("a sample is said to hold for {} h; accepted: above 0, such as 1 h", .0.as_hours())]
    Holds(Duration),
    /// A limit that is not above zero.
    #[error("evaporation limit {} lb/ft²/h; accepted: above 0, such as 0.2 lb/ft²/h", .0.as_pounds_per_square_foot_hour())]
    Limit(units::EvaporationRate),
    /// One sample has a value the formulas refuse.
    #[error("sample {index}: {problem}")]
    Sample {
        /// Position of the sample, from 0.
        index: usize,
        /// What was wrong.
        problem: AirError,
    },
}
