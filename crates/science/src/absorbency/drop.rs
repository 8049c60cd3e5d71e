//! One timed water drop.

use units::{Duration, Length};

use super::covariance::distance;
use super::{AbsorbencyError, FEWEST_PLACES, SAME_PLACE};

/// A place on the plan, from any fixed corner and in any fixed direction.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Place {
    /// Along the first direction.
    pub x: Length,
    /// Across it.
    pub y: Length,
}

impl Place {
    pub(crate) fn meters(self) -> [f64; 2] {
        [self.x.as_meters(), self.y.as_meters()]
    }

    pub(crate) fn is_finite(self) -> bool {
        self.meters().iter().all(|m| m.is_finite())
    }
}

/// How the watching of a drop ended.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum End {
    /// It was gone after this time, above 0.
    SoakedIn(Duration),
    /// The watching stopped after this time, above 0, and it still stood.
    StillStood(Duration),
}

/// One drop. Repeats are several drops within [`SAME_PLACE`] of each other.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct DropTest {
    /// Where.
    pub place: Place,
    /// What happened.
    pub end: End,
}

/// Drops in plain numbers, checked.
#[derive(Debug, Clone)]
pub(crate) struct Drops {
    pub(crate) places: Vec<[f64; 2]>,
    /// ln of the seconds; of the bound where the drop still stood.
    pub(crate) logs: Vec<f64>,
    pub(crate) standing: Vec<bool>,
}

/// Fewest drops whose end was seen; a slope needs two and a spread one more.
const FEWEST_TIMED: usize = 3;

impl Drops {
    /// Refuses drops without a place or a time.
    pub(crate) fn read(drops: &[DropTest]) -> Result<Self, AbsorbencyError> {
        let mut read = Self { places: Vec::new(), logs: Vec::new(), standing: Vec::new() };
        for (index, drop) in drops.iter().enumerate() {
            if !drop.place.is_finite() {
                return Err(AbsorbencyError::Place { index });
            }
            let (time, stands) = match drop.end {
                End::SoakedIn(time) => (time, false),
                End::StillStood(time) => (time, true),
            };
            if !(time.as_seconds().is_finite() && time > Duration::ZERO) {
                return Err(AbsorbencyError::Time { index, time });
            }
            read.places.push(drop.place.meters());
            read.logs.push(libm::log(time.as_seconds()));
            read.standing.push(stands);
        }
        Ok(read)
    }

    /// Refuses also what a map cannot be drawn from.
    pub(crate) fn enough(drops: &[DropTest]) -> Result<Self, AbsorbencyError> {
        let read = Self::read(drops)?;
        let places = read.groups().len();
        if places < FEWEST_PLACES {
            return Err(AbsorbencyError::TooFewPlaces { places, needed: FEWEST_PLACES, more: FEWEST_PLACES - places });
        }
        let timed = read.standing.iter().filter(|s| !**s).count();
        if timed < FEWEST_TIMED {
            return Err(AbsorbencyError::NearlyAllStood { drops: drops.len(), timed, needed: FEWEST_TIMED });
        }
        Ok(read)
    }

    /// Drops by place: each within [`SAME_PLACE`] of the first drop of its group.
    pub(crate) fn groups(&self) -> Vec<Vec<usize>> {
        let mut groups: Vec<Vec<usize>> = Vec::new();
        for (index, place) in self.places.iter().enumerate() {
            let near = |group: &&mut Vec<usize>| distance(self.places[group[0]], *place) <= SAME_PLACE.as_meters();
            match groups.iter_mut().find(near) {
                Some(group) => group.push(index),
                None => groups.push(vec![index]),
            }
        }
        groups
    }
}
