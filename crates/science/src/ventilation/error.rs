//! What can be wrong with a question of ventilation.

use units::{AirFlow, Concentration, Duration, Fraction, MolarMass, Pressure, Temperature, Volume};

/// A question of ventilation that is refused.
#[derive(Debug, Clone, Copy, PartialEq, thiserror::Error)]
pub enum VentilationError {
    /// Acid: mist and gas are captured or avoided, not diluted.
    #[error(
        "acid mist: dilution ventilation is no protection; accepted: solvent that evaporates quietly. See the safety data sheet"
    )]
    AcidMist,
    /// Spraying: droplets are not vapor.
    #[error(
        "spraying: droplets do not mix like vapor; accepted: rolled, mopped or poured liquid that evaporates quietly"
    )]
    Spraying,
    /// The substance does not burn in air.
    #[error("this substance has no lower explosive limit; accepted: a flammable vapor, such as acetone or xylene")]
    NoExplosiveLimit,
    /// A limit of nothing, or above the whole.
    #[error("{field} {} ppm; accepted: above 0 and up to 1 000 000 ppm", .value.as_parts_per_million())]
    Concentration {
        /// Which concentration.
        field: &'static str,
        /// What was given.
        value: Concentration,
    },
    /// A molar mass that is not above zero.
    #[error("molar mass {} g/mol; accepted: above 0, such as 106.17 g/mol", .0.as_grams_per_mole())]
    MolarMass(MolarMass),
    /// A volume that is not above zero (room) or is below zero (liquid).
    #[error("{field} {} ft³; accepted: above 0", .value.as_cubic_feet())]
    Volume {
        /// Which volume.
        field: &'static str,
        /// What was given.
        value: Volume,
    },
    /// A time that is below zero, or not above zero where it divides.
    #[error("{field} {} min; accepted: above 0", .value.as_minutes())]
    Time {
        /// Which time.
        field: &'static str,
        /// What was given.
        value: Duration,
    },
    /// A flow below zero, or none where a room is to be purged.
    #[error("{field} {} cfm; accepted: above 0", .value.as_cubic_feet_per_minute())]
    Flow {
        /// Which flow.
        field: &'static str,
        /// What was given.
        value: AirFlow,
    },
    /// A mixing factor out of range.
    #[error("mixing factor {0}; accepted: 1 (perfect mixing) to 10 (dead corners)")]
    Mixing(f64),
    /// A safety factor below one.
    #[error("safety factor {0} for the explosive limit; accepted: 1 to 20, such as 4 or 10")]
    Safety(f64),
    /// Everything cannot be removed.
    #[error("removal of {} %; accepted: below 100 %, such as 95 %", .0.as_percent())]
    Removal(Fraction),
    /// Air at no temperature or no pressure.
    #[error("air at {} and {} kPa; accepted: above absolute zero and above 0 kPa", .temperature.show_celsius(1), .pressure.as_kilopascals())]
    Air {
        /// Its temperature.
        temperature: Temperature,
        /// Its pressure.
        pressure: Pressure,
    },
}

pub(super) fn checked_flow(field: &'static str, value: AirFlow) -> Result<AirFlow, VentilationError> {
    if value >= AirFlow::ZERO && value.as_cubic_meters_per_second().is_finite() {
        Ok(value)
    } else {
        Err(VentilationError::Flow { field, value })
    }
}

pub(super) fn checked_share(field: &'static str, value: Concentration) -> Result<Concentration, VentilationError> {
    if value.as_share() > 0.0 && value.as_share() <= 1.0 {
        Ok(value)
    } else {
        Err(VentilationError::Concentration { field, value })
    }
}
