//! The loops at a constant distance inside the edges of a piece of ground.

use geo::algorithm::buffer::{Buffer, BufferStyle, LineJoin};
use geo::{Coord, Line, LineString, MultiPolygon};

use super::clip::{cross, same_place, walls};
use super::ground;

/// The offset polygon's grid is coarser than that of cutting polygons, by this.
const COARSER: f64 = 100.0;

/// Sharpest corner that keeps its point, radians; a sharper one is cut off square.
const SHARPEST: f64 = 0.02;

/// The edges of `scope` moved inward, corners kept sharp; none where nothing is left inside.
///
/// The offset polygon comes on a grid of up to 10⁻⁷ of the extent; each of its corners is put back to
/// where the two moved edges cross.
pub(super) fn inside(scope: &MultiPolygon<f64>, inset: f64) -> Vec<Line<f64>> {
    let style = BufferStyle::new(-inset).line_join(LineJoin::Miter(SHARPEST));
    let left = scope.buffer_with_style(style);
    let moved: Vec<Line<f64>> = walls(scope).into_iter().filter_map(|wall| shifted(wall, inset)).collect();
    let same = COARSER * same_place(scope);
    left.iter().flat_map(ground::rings).flat_map(|ring| exact(ring, &moved, same)).collect()
}

/// The line moved to its left.
fn shifted(line: Line<f64>, by: f64) -> Option<Line<f64>> {
    let length = libm::hypot(line.dx(), line.dy());
    if length <= 0.0 {
        return None;
    }
    let off = Coord { x: -line.dy() / length * by, y: line.dx() / length * by };
    Some(Line::new(line.start + off, line.end + off))
}

fn exact(ring: &LineString<f64>, moved: &[Line<f64>], same: f64) -> Vec<Line<f64>> {
    let edges: Vec<Line<f64>> = ring.lines().collect();
    let source: Vec<Option<Line<f64>>> = edges.iter().map(|edge| on(*edge, moved, same)).collect();
    let corner = |i: usize| {
        let (before, after) = ((i + edges.len() - 1) % edges.len(), i);
        let rough = edges[i].start;
        source[before]
            .zip(source[after])
            .and_then(|(a, b)| crossing(a, b))
            // The sharper the corner, the farther the grid moves it.
            .filter(|(exact, sine)| libm::hypot(exact.x - rough.x, exact.y - rough.y) <= same / sine)
            .map_or(rough, |(exact, _)| exact)
    };
    // A place amid one moved edge is no corner, and may lie off it by the grid.
    let straight = |i: usize| source[i].is_some() && source[i] == source[(i + edges.len() - 1) % edges.len()];
    let corners: Vec<Coord<f64>> = (0..edges.len()).filter(|i| !straight(*i)).map(corner).collect();
    let next = |i: usize| corners[(i + 1) % corners.len()];
    (0..corners.len()).map(|i| Line::new(corners[i], next(i))).filter(|l| l.start != l.end).collect()
}

/// The moved edge that the offset edge lies on.
fn on(edge: Line<f64>, moved: &[Line<f64>], same: f64) -> Option<Line<f64>> {
    let off = |wall: &Line<f64>| {
        let length = libm::hypot(wall.dx(), wall.dy());
        let far = |c: Coord<f64>| (cross(wall.delta(), c - wall.start) / length).abs();
        far(edge.start).max(far(edge.end))
    };
    moved
        .iter()
        .map(|wall| (off(wall), *wall))
        .filter(|(off, _)| *off <= same)
        .min_by(|a, b| a.0.total_cmp(&b.0))
        .map(|(_, w)| w)
}

/// Where the two lines, made endless, cross, and the sine of their angle; `None` when they are nearly
/// parallel.
fn crossing(a: Line<f64>, b: Line<f64>) -> Option<(Coord<f64>, f64)> {
    let across = cross(a.delta(), b.delta());
    let sizes = libm::hypot(a.dx(), a.dy()) * libm::hypot(b.dx(), b.dy());
    if across.abs() <= 1e-6 * sizes {
        return None;
    }
    let at = a.start + a.delta() * (cross(b.start - a.start, b.delta()) / across);
    Some((at, across.abs() / sizes))
}
