//! What can be wrong with drops, or with what is asked of them.

use units::Duration;

/// A map that was not drawn, or a place that was not sought, and why.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
pub enum AbsorbencyError {
    /// Too few places on this finish.
    #[error(
        "drops at {places} places of this finish: give at least {needed}; places to add: {more}, spread over the finish and \
         at least a hand's width from the others"
    )]
    TooFewPlaces {
        /// Places with drops.
        places: usize,
        /// Places needed.
        needed: usize,
        /// How many are missing.
        more: usize,
    },
    /// Hardly any drop soaked in: that asks what lies on the surface, and no map answers it.
    #[error(
        "{timed} of {drops} drops soaked in: give at least {needed} drops that did; where water stands everywhere, \
         scrape the surface before mapping how it drinks"
    )]
    NearlyAllStood {
        /// All drops.
        drops: usize,
        /// Drops that soaked in.
        timed: usize,
        /// Drops needed that soaked in.
        needed: usize,
    },
    /// A time is not above zero.
    #[error("time of drop {index} is {} s: give seconds above 0", time.as_seconds())]
    Time {
        /// Which drop, from 0.
        index: usize,
        /// Its time.
        time: Duration,
    },
    /// A place is not a number.
    #[error("place {index} is not a number: give both distances")]
    Place {
        /// Which place of those given, from 0.
        index: usize,
    },
    /// A variance is negative or not a number.
    #[error("variance of ln seconds {0}: give a number that is 0 or more")]
    LogVariance(f64),
    /// A number of the covariance is not above zero.
    #[error("{field} of the covariance is {value}: give a number above 0")]
    Covariance {
        /// Which number.
        field: &'static str,
        /// Its value.
        value: f64,
    },
    /// The places, length and nugget leave the equations without an answer in double precision.
    #[error(
        "the equations cannot be solved: the length is too long for so small a nugget; give a nugget of 1e-6 × sill or more"
    )]
    Unsolvable,
    /// Limits are missing, not above zero or not rising.
    #[error("limit {index}: give at least one limit, seconds above 0, each above the one before")]
    Limits {
        /// The first limit that does not fit, from 0.
        index: usize,
    },
    /// The ground has no map, no area, or more pairs than are worked through.
    #[error(
        "{map} map places of {square_meters} m² and {reachable} reachable places: give at least 1 map place with an area above 0, and at most 20 million pairs"
    )]
    Ground {
        /// Map places.
        map: usize,
        /// Area of each, m².
        square_meters: f64,
        /// Reachable places.
        reachable: usize,
    },
    /// The number of places asked for is out of range.
    #[error("{0} next places: ask for 1 to 5")]
    Most(usize),
    /// No group has both drops for a field and a ground.
    #[error("no finish has both enough drops and a map to plan on: time drops on one finish first")]
    NothingToPlan,
}
