//! Where a slab wants to crack: corners that point into it, and columns.

use geo::Coord;
use units::Length;

use super::{LayoutError, measure};
use crate::{Plan, Point};

/// A corner counts as pointing into the slab from this inner angle on, degrees: the chords of a round
/// wall turn by less. Grade: expert judgment.
const REENTRANT_FROM: f64 = 200.0;

/// The longest side of a cut-out that can be a column. Grade: expert judgment.
const COLUMN_MOST: Length = Length::feet(4.0);

/// The longest side over the shortest of a cut-out that can be a column. Grade: expert judgment.
const COLUMN_ASPECT: f64 = 2.0;

/// A column that goes through the slab.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Column {
    /// Its middle.
    pub at: Point,
    /// Half of the longest way across it; nothing for one given by a point alone.
    pub reach: Length,
}

/// The cut-outs that look like columns: within the slab, up to 4 ft, at most twice as long as wide.
///
/// # Errors
/// [`LayoutError::NotDrawn`].
pub fn columns(plan: &Plan) -> Result<Vec<Column>, LayoutError> {
    Ok(holes(plan)?.iter().filter_map(|ring| column(ring)).collect())
}

/// The corners that point into the slab: of its outline, and of cut-outs that are no columns.
///
/// # Errors
/// [`LayoutError::NotDrawn`].
pub fn reentrant_corners(plan: &Plan) -> Result<Vec<Point>, LayoutError> {
    plan.slab_ground().ok_or(LayoutError::NotDrawn)?;
    let pieces = plan.pieces();
    let outer = pieces.iter().map(|piece| coords(&piece.outer));
    let pits = holes(plan)?.into_iter().filter(|ring| column(ring).is_none());
    let mut found: Vec<Point> = outer
        .chain(pits)
        .flat_map(|ring| measure::corners(&ring).filter(|(angle, _)| *angle > REENTRANT_FROM).collect::<Vec<_>>())
        .map(|(_, at)| Point::of(at))
        .collect();
    found.sort_by(|a, b| (a.y, a.x).partial_cmp(&(b.y, b.x)).unwrap_or(std::cmp::Ordering::Equal));
    Ok(found)
}

/// The holes of the slab, clockwise.
fn holes(plan: &Plan) -> Result<Vec<Vec<Coord<f64>>>, LayoutError> {
    plan.slab_ground().ok_or(LayoutError::NotDrawn)?;
    Ok(plan.pieces().iter().flat_map(|piece| piece.holes.iter().map(|hole| coords(hole)).collect::<Vec<_>>()).collect())
}

fn coords(points: &[Point]) -> Vec<Coord<f64>> {
    points.iter().map(|p| p.coord()).collect()
}

fn column(ring: &[Coord<f64>]) -> Option<Column> {
    let extent = measure::extent(ring);
    let slim = extent.long <= COLUMN_MOST.as_meters() && extent.long <= COLUMN_ASPECT * extent.short;
    let middle = geo::Centroid::centroid(&geo::Polygon::new(geo::LineString(ring.to_vec()), Vec::new()))?;
    let reach = ring.iter().map(|c| libm::hypot(c.x - middle.x(), c.y - middle.y())).fold(0.0, f64::max);
    slim.then(|| Column { at: Point::of(middle.0), reach: Length::meters(reach) })
}
