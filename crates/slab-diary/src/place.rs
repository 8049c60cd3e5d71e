//! Where on the plan an entry belongs.

use serde::{Deserialize, Serialize};
use units::{AsWritten, Length};

use slab_plan::Offset;

/// A place: a zone by name, a point with an optional radius, or a polygon. An entry without one
/// speaks of the whole slab.
#[derive(Debug, Clone, PartialEq, Default, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Place {
    /// Name of a zone of the plan.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub zone: Option<String>,
    /// A point, measured from the plan's origin along x and y.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub point: Option<[AsWritten<Offset>; 2]>,
    /// How far around the point.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub radius: Option<AsWritten<Length>>,
    /// A patch drawn corner by corner.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub polygon: Option<Vec<[AsWritten<Offset>; 2]>>,
}

/// A place that says nothing or too much.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum PlaceError {
    /// None of zone, point and polygon is given.
    #[error("place is empty; accepted: a zone, a point with an optional radius, or a polygon of 3 or more corners")]
    Empty,
    /// A radius without its point.
    #[error("place.radius is given without place.point; accepted: both, or neither")]
    RadiusAlone,
    /// Fewer than three corners.
    #[error("place.polygon has {0} corners; accepted: 3 or more")]
    TooFewCorners(usize),
}

impl Place {
    /// A zone by its name.
    #[must_use]
    pub fn in_zone(name: &str) -> Self {
        Self { zone: Some(name.to_owned()), ..Self::default() }
    }

    /// Whether it says one usable thing.
    ///
    /// # Errors
    /// [`PlaceError`] when it is empty or half given.
    pub fn check(&self) -> Result<(), PlaceError> {
        if self.radius.is_some() && self.point.is_none() {
            return Err(PlaceError::RadiusAlone);
        }
        if let Some(corners) = &self.polygon
            && corners.len() < 3
        {
            return Err(PlaceError::TooFewCorners(corners.len()));
        }
        if self.zone.is_none() && self.point.is_none() && self.polygon.is_none() {
            return Err(PlaceError::Empty);
        }
        Ok(())
    }
}
