//! What can be wrong with a drying problem or with readings held against it.

use units::{Diffusivity, Duration, Length, RelativeHumidity, Speed};

/// A drying calculation that was not done, and why.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
pub enum DryingError {
    /// The thickness is out of range.
    #[error("thickness {:.1} mm: give 10 mm to 2000 mm (3/8 in to 79 in)", .0.as_millimeters())]
    Thickness(Length),
    /// The diffusivity is out of range.
    #[error("diffusivity {:e} m²/s: give 1e-13 to 1e-6 m²/s", .0.as_square_meters_per_second())]
    Diffusivity(Diffusivity),
    /// The water-cement ratio is outside what the prior was fitted to.
    #[error("water-cement ratio {0}: give 0.35 to 0.75")]
    WaterCement(f64),
    /// The strength is too low for the published link from strength to diffusivity.
    #[error("characteristic strength {0:.1} MPa: give 10 to 100 MPa (1450 to 14500 psi)")]
    Strength(f64),
    /// A number that shapes the fall of diffusivity is out of range.
    #[error("{field} {value}: give a dry share above 0, a knee between 0 and 100 % and an exponent of 1 to 60")]
    Shape {
        /// Which number.
        field: &'static str,
        /// Its value.
        value: f64,
    },
    /// The film coefficient is not above zero.
    #[error("film coefficient {:e} m/s: give a number above 0", .0.as_meters_per_second())]
    Film(Speed),
    /// The time looked at is not above zero or too long.
    #[error("horizon {:.1} days: give more than 0 and at most 36500 days", .0.as_days())]
    Horizon(Duration),
    /// A depth lies outside the slab.
    #[error("depth {:.1} mm in a slab of {:.1} mm: give a depth within the slab", depth.as_millimeters(), thickness.as_millimeters())]
    Depth {
        /// The depth asked for.
        depth: Length,
        /// The thickness of the slab.
        thickness: Length,
    },
    /// The spells of an ambient series are missing or out of order.
    #[error("ambient spell {index}: give at least one spell, the first at 0, each later than the one before")]
    Spells {
        /// The first spell that does not fit, from 0.
        index: usize,
    },
    /// The time constant of self-desiccation is not above zero, or its drop is not a share below 1.
    #[error("self-desiccation: give a time constant above 0 and a fall below 100 % RH")]
    SelfDesiccation,
    /// The number of cells or the tolerance is out of range.
    #[error("{cells} cells at tolerance {tolerance:e}: give 8 to 4000 cells and 1e-12 to 1e-2")]
    Accuracy {
        /// Cells asked for.
        cells: usize,
        /// Tolerance asked for, RH as a share of 1.
        tolerance: f64,
    },
    /// The time step fell to nothing: the problem has numbers that do not go together.
    #[error("the calculation stopped at day {:.3}: the step became too small", .0.as_days())]
    Stuck(Duration),
    /// The spread of the prior is out of range.
    #[error("{field} of the prior is {value}: give {accepted}")]
    Spread {
        /// Which spread.
        field: &'static str,
        /// Its value.
        value: f64,
        /// What would do.
        accepted: &'static str,
    },
    /// The ensemble is too small to read a band from.
    #[error("{0} members: give 50 to 100000")]
    Members(usize),
    /// A reading lies outside the time looked at.
    #[error("reading at day {:.1}: give a day after 0 and up to the horizon, day {:.1}", at.as_days(), horizon.as_days())]
    ReadingTime {
        /// When it was taken, since placing.
        at: Duration,
        /// The end of the time looked at.
        horizon: Duration,
    },
    /// The error of the readings is not above zero.
    #[error("reading error {0} points of RH: give 0.1 to 20")]
    ReadingError(f64),
    /// No member of the prior comes near the reading: the slab is not the slab described, or the
    /// probe is wrong. Nothing is forecast from such readings.
    #[error(
        "reading {:.1} % RH at day {:.1} cannot be this slab: the nearest of the likely slabs has {:.1} %, {sigmas:.1} \
         standard errors away; check the probe and what was entered for mix, thickness, cure and room", read.as_percent(), at.as_days(), nearest.as_percent()
    )]
    ImpossibleReading {
        /// When it was taken, since placing.
        at: Duration,
        /// What was read.
        read: RelativeHumidity,
        /// What the best-fitting member has there.
        nearest: RelativeHumidity,
        /// The distance in standard errors of a reading.
        sigmas: f64,
    },
    /// Too few members agree with the readings for their spread to mean anything.
    #[error(
        "the readings leave {effective:.1} effective members, fewer than {needed:.0}: take more members, or doubt the readings"
    )]
    TooFewAgree {
        /// Effective number of members that agree.
        effective: f64,
        /// How many are needed.
        needed: f64,
    },
}
