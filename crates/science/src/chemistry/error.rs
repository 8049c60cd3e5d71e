//! What can be wrong with a question of chemistry.

use units::{Area, Density, Fraction, Mass, Molarity, Pressure, Temperature, Volume};

/// A question of chemistry that has no answer.
#[derive(Debug, Clone, Copy, PartialEq, thiserror::Error)]
pub enum ChemistryError {
    /// Stronger than the density table, or than acid can be bought.
    #[error("hydrochloric acid of {} % by mass; accepted: 0 % to 40 %", .0.as_percent())]
    Strength(Fraction),
    /// Nothing to dilute.
    #[error("stock of 0 % by mass holds no acid; accepted: above 0 % up to 40 %, such as 31.45 %")]
    NoAcid,
    /// Water cannot make acid stronger.
    #[error("a mix of {} % cannot be made from stock of {} %; accepted: up to the strength of the stock", .target.as_percent(), .stock.as_percent())]
    BeyondStock {
        /// Strength wished, by mass.
        target: Fraction,
        /// Strength of the stock, by mass.
        stock: Fraction,
    },
    /// A density that no hydrochloric acid has at 20 °C.
    #[error("density {} g/mL; accepted for hydrochloric acid at 20 °C: 0.9982 to 1.198 g/mL", .0.as_grams_per_milliliter())]
    AcidDensity(Density),
    /// Degrees Baumé outside the heavy scale of acids.
    #[error("{0} degrees Baumé; accepted: 0 to 70 on the scale for liquids heavier than water")]
    Baume(f64),
    /// Degrees Baumé that no acid as sold has.
    #[error("hydrochloric acid of {0} degrees Baumé; accepted: 15 to 24, such as 20")]
    AcidBaume(f64),
    /// A density that is not above zero.
    #[error("density {} g/mL; accepted: above 0, such as 0.977 g/mL", .0.as_grams_per_milliliter())]
    Density(Density),
    /// A solution without anything dissolved.
    #[error("a solution of 0 % has nothing dissolved in it; accepted: above 0 %")]
    NoSolute,
    /// A volume below zero or not a number.
    #[error("volume {} gal; accepted: 0 or more", .0.as_us_gallons())]
    Volume(Volume),
    /// A mass below zero or not a number.
    #[error("mass {} kg; accepted: 0 or more", .0.as_kilograms())]
    Mass(Mass),
    /// An area that is not above zero.
    #[error("area {} ft²; accepted: above 0", .0.as_square_feet())]
    Area(Area),
    /// A molarity that is not above zero has no pH of the ideal kind.
    #[error("acid of {} mol/L; accepted: above 0", .0.as_moles_per_liter())]
    Molarity(Molarity),
    /// A gas at no temperature or no pressure.
    #[error("gas at {} and {} kPa; accepted: above absolute zero and above 0 kPa", .temperature.show_celsius(1), .pressure.as_kilopascals())]
    Gas {
        /// Its temperature.
        temperature: Temperature,
        /// Its pressure.
        pressure: Pressure,
    },
}

pub(super) fn checked_volume(volume: Volume) -> Result<Volume, ChemistryError> {
    if volume >= Volume::ZERO && volume.as_cubic_meters().is_finite() {
        Ok(volume)
    } else {
        Err(ChemistryError::Volume(volume))
    }
}

pub(super) fn checked_mass(mass: Mass) -> Result<Mass, ChemistryError> {
    if mass >= Mass::ZERO && mass.as_kilograms().is_finite() { Ok(mass) } else { Err(ChemistryError::Mass(mass)) }
}
