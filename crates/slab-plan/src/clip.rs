//! The parts of a line that lie on a piece of ground.

use geo::coordinate_position::{CoordPos, CoordinatePosition};
use geo::{Coord, Line, MultiPolygon};

use super::ground;

/// Share of the extent below which two places are one: the grid of the cutting of polygons, with room.
const SAME_SHARE: f64 = 1e-8;

/// The distance below which two places on this ground are one, meters.
pub(crate) fn same_place(ground: &MultiPolygon<f64>) -> f64 {
    let extent = ground::bounds(ground)
        .map_or(0.0, |(low, high)| (high.x - low.x).as_meters().max((high.y - low.y).as_meters()));
    SAME_SHARE * extent
}

/// All edges of the ground, each with the ground to its left.
pub(crate) fn walls(ground: &MultiPolygon<f64>) -> Vec<Line<f64>> {
    use geo::Orient as _;
    let oriented = ground.orient(geo::orient::Direction::Default);
    oriented.iter().flat_map(ground::rings).flat_map(|ring| ring.lines().collect::<Vec<_>>()).collect()
}

/// Ground ready to clip lines by.
pub(crate) struct Clip<'a> {
    ground: &'a MultiPolygon<f64>,
    walls: Vec<Line<f64>>,
    same: f64,
}

impl<'a> Clip<'a> {
    pub(crate) fn by(ground: &'a MultiPolygon<f64>) -> Self {
        Self { ground, walls: walls(ground), same: same_place(ground) }
    }

    /// The parts of the line inside the ground, in the sense of the line. What runs along an edge of
    /// the ground is no part of it: there is nothing to cut along a wall.
    pub(crate) fn line(&self, line: Line<f64>) -> Vec<Line<f64>> {
        let length = libm::hypot(line.dx(), line.dy());
        if length <= self.same {
            return Vec::new();
        }
        let mut cuts: Vec<f64> = self.walls.iter().flat_map(|wall| meets(line, *wall, self.same)).collect();
        cuts.extend([0.0, 1.0]);
        cuts.sort_by(f64::total_cmp);
        let mut parts: Vec<(f64, f64)> = Vec::new();
        let mut from = 0.0;
        for to in cuts {
            if (to - from) * length <= self.same {
                continue;
            }
            if self.holds(at(line, (from + to) / 2.0)) {
                match parts.last_mut() {
                    Some(last) if last.1 == from => last.1 = to,
                    _ => parts.push((from, to)),
                }
            }
            from = to;
        }
        parts.into_iter().map(|(from, to)| Line::new(at(line, from), at(line, to))).collect()
    }

    /// Inside, and not on an edge.
    fn holds(&self, place: Coord<f64>) -> bool {
        self.ground.coordinate_position(&place) == CoordPos::Inside
            && self.walls.iter().all(|wall| distance(place, *wall) > self.same)
    }
}

/// The place at that share of the line; exact at both ends.
fn at(line: Line<f64>, share: f64) -> Coord<f64> {
    if share >= 1.0 { line.end } else { line.start + line.delta() * share }
}

/// Shares of the line where it meets the wall: a crossing, and corners of the wall that lie on it.
fn meets(line: Line<f64>, wall: Line<f64>, same: f64) -> Vec<f64> {
    let along = line.delta();
    let length2 = along.x * along.x + along.y * along.y;
    let length = length2.sqrt();
    let off = |c: Coord<f64>| cross(along, c - line.start) / length;
    let share = |c: Coord<f64>| ((c - line.start).x * along.x + (c - line.start).y * along.y) / length2;
    let (a, b) = (off(wall.start), off(wall.end));
    let mut found = Vec::new();
    for (corner, off) in [(wall.start, a), (wall.end, b)] {
        if off.abs() <= same {
            found.push(share(corner));
        }
    }
    if found.is_empty() && (a < 0.0) != (b < 0.0) {
        found.push(share(wall.start + wall.delta() * (a / (a - b))));
    }
    found.retain(|s| (0.0..=1.0).contains(s));
    found
}

pub(crate) fn cross(a: Coord<f64>, b: Coord<f64>) -> f64 {
    a.x * b.y - a.y * b.x
}

/// From a place to the nearest point of a line.
pub(crate) fn distance(place: Coord<f64>, line: Line<f64>) -> f64 {
    let along = line.delta();
    let from = place - line.start;
    let length2 = along.x * along.x + along.y * along.y;
    let share = if length2 > 0.0 { ((from.x * along.x + from.y * along.y) / length2).clamp(0.0, 1.0) } else { 0.0 };
    let off = from - along * share;
    libm::hypot(off.x, off.y)
}
