//! Where a point lies on the plan: signed distances from the plan's own corner.

pub use units::Offset;
use units::{AsWritten, Length};

/// The largest distance a plan accepts, meters.
pub(super) const LARGEST_METERS: f64 = Offset::LARGEST.as_meters();

/// A point of the plan: x to the right (plan east), y up (plan north).
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Point {
    /// To the right of the origin.
    pub x: Offset,
    /// Up from the origin.
    pub y: Offset,
}

/// A point as it is typed and kept: `["12' 6\"", "-3 ft"]`.
pub type WrittenPoint = [AsWritten<Offset>; 2];

impl Point {
    /// The point with these two offsets.
    #[must_use]
    pub const fn new(x: Offset, y: Offset) -> Self {
        Self { x, y }
    }

    /// The straight distance to another point.
    #[must_use]
    pub fn distance(self, other: Self) -> Length {
        Length::meters(libm::hypot((self.x - other.x).as_meters(), (self.y - other.y).as_meters()))
    }

    pub(crate) const fn coord(self) -> geo::Coord<f64> {
        geo::Coord { x: self.x.as_meters(), y: self.y.as_meters() }
    }

    pub(crate) const fn of(coord: geo::Coord<f64>) -> Self {
        Self { x: Offset::meters(coord.x), y: Offset::meters(coord.y) }
    }
}

impl From<&WrittenPoint> for Point {
    fn from(written: &WrittenPoint) -> Self {
        Self { x: written[0].value(), y: written[1].value() }
    }
}
