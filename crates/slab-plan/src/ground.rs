//! Pieces of ground: joining, cutting and measuring polygons, in meters.
//!
//! Cutting works on a grid of about 10⁻⁹ of the extent. So that typed corners stay exactly as typed,
//! every corner of a result is put back onto the typed coordinates it came from, and shapes that
//! need no cutting are not cut.

use geo::algorithm::bool_ops::unary_union;
use geo::{Area as _, BooleanOps, BoundingRect, Centroid, Coord, Distance, Euclidean, Intersects, Orient};
use geo::{LineString, MultiPolygon, Polygon};

use super::Point;

/// How far off its edge a point still counts as on it, meters: a hundredth of a millimeter.
const TOUCH_METERS: f64 = 1e-5;

/// Share of the extent within which a corner is put back onto a typed coordinate: four grid steps.
const GRID_SHARE: f64 = 4e-9;

/// One connected piece of ground for drawing: corners without the closing repeat.
#[derive(Debug, Clone, PartialEq)]
pub struct Piece {
    /// The outer edge, counter-clockwise.
    pub outer: Vec<Point>,
    /// The edges of what is left out inside it, clockwise.
    pub holes: Vec<Vec<Point>>,
}

pub(crate) fn pieces(ground: &MultiPolygon<f64>) -> Vec<Piece> {
    let ring = |line: &LineString<f64>| line.0.iter().skip(1).map(|c| Point::of(*c)).collect();
    ground
        .orient(geo::orient::Direction::Default)
        .iter()
        .map(|p| Piece { outer: ring(p.exterior()), holes: p.interiors().iter().map(ring).collect() })
        .collect()
}

pub(crate) fn area(ground: &MultiPolygon<f64>) -> f64 {
    ground.unsigned_area()
}

/// All edges together, those of cut-outs too.
pub(super) fn perimeter(ground: &MultiPolygon<f64>) -> f64 {
    ground.iter().map(edges).sum()
}

fn edges(polygon: &Polygon<f64>) -> f64 {
    let ring = |line: &LineString<f64>| line.lines().map(|l| libm::hypot(l.dx(), l.dy())).sum::<f64>();
    ring(polygon.exterior()) + polygon.interiors().iter().map(ring).sum::<f64>()
}

pub(super) fn centroid(ground: &MultiPolygon<f64>) -> Option<Point> {
    ground.centroid().map(|p| Point::of(p.0))
}

pub(crate) fn bounds(ground: &MultiPolygon<f64>) -> Option<(Point, Point)> {
    ground.bounding_rect().map(|r| (Point::of(r.min()), Point::of(r.max())))
}

/// Inside or on the edge.
pub(crate) fn holds(ground: &MultiPolygon<f64>, at: Point) -> bool {
    ground.intersects(&at.coord())
}

/// Inside, on the edge, or so near it that only rounding tells them apart.
pub(super) fn touches(ground: &MultiPolygon<f64>, at: Point) -> bool {
    holds(ground, at) || Euclidean.distance(&geo::Point(at.coord()), ground) <= TOUCH_METERS
}

/// Twice the area over the perimeter: the width of a long sliver, half the side of a square.
fn mean_width(polygon: &Polygon<f64>) -> f64 {
    let edge = edges(polygon);
    if edge > 0.0 { 2.0 * polygon.unsigned_area() / edge } else { 0.0 }
}

/// The area of those pieces that are wider than `width` meters on average.
pub(super) fn area_wider_than(ground: &MultiPolygon<f64>, width: f64) -> f64 {
    // Summed from +0, so that nothing is not printed as minus nothing.
    ground.iter().filter(|p| mean_width(p) > width).map(|p| p.unsigned_area()).fold(0.0, |a, b| a + b)
}

pub(crate) fn common(a: &MultiPolygon<f64>, b: &MultiPolygon<f64>) -> MultiPolygon<f64> {
    if apart(a, b) { MultiPolygon(Vec::new()) } else { tidy(a.intersection(b), &[a, b]) }
}

/// `a` without `b`.
pub(super) fn without(a: &MultiPolygon<f64>, b: &MultiPolygon<f64>) -> MultiPolygon<f64> {
    if common(a, b).0.is_empty() { a.clone() } else { tidy(a.difference(b), &[a, b]) }
}

/// The part of `a` inside `b`.
pub(super) fn within(a: &MultiPolygon<f64>, b: &MultiPolygon<f64>) -> MultiPolygon<f64> {
    if without(a, b).0.is_empty() { a.clone() } else { common(a, b) }
}

pub(super) fn joined(parts: &[MultiPolygon<f64>]) -> MultiPolygon<f64> {
    match parts {
        [one] if one.0.len() == 1 => one.clone(),
        _ => {
            // The union tells inside from outside by the sense of the rings, so all must agree.
            let oriented: Vec<_> = parts.iter().map(|p| p.orient(geo::orient::Direction::Default)).collect();
            tidy(unary_union(&oriented), &parts.iter().collect::<Vec<_>>())
        }
    }
}

/// Nothing in common by their bounding boxes.
fn apart(a: &MultiPolygon<f64>, b: &MultiPolygon<f64>) -> bool {
    match (a.bounding_rect(), b.bounding_rect()) {
        (Some(a), Some(b)) => !a.intersects(&b),
        _ => true,
    }
}

/// Corners back onto the coordinates they came from; what the grid made out of nothing, out.
fn tidy(result: MultiPolygon<f64>, from: &[&MultiPolygon<f64>]) -> MultiPolygon<f64> {
    let known: Vec<Coord<f64>> = from.iter().flat_map(|g| g.iter()).flat_map(rings).flat_map(|r| r.0.clone()).collect();
    let step = GRID_SHARE * extent(&known);
    let mut xs: Vec<f64> = known.iter().map(|c| c.x).collect();
    let mut ys: Vec<f64> = known.iter().map(|c| c.y).collect();
    xs.sort_by(f64::total_cmp);
    ys.sort_by(f64::total_cmp);
    let restore = |c: Coord<f64>| {
        let corner = known
            .iter()
            .map(|k| (libm::hypot(k.x - c.x, k.y - c.y), *k))
            .filter(|(off, _)| *off <= step)
            .min_by(|(a, _), (b, _)| a.total_cmp(b));
        corner.map_or_else(|| Coord { x: nearest(&xs, c.x, step), y: nearest(&ys, c.y, step) }, |(_, k)| k)
    };
    let ring = |line: &LineString<f64>| LineString(line.0.iter().map(|c| restore(*c)).collect());
    let kept = result
        .iter()
        .map(|p| Polygon::new(ring(p.exterior()), p.interiors().iter().map(ring).collect()))
        .filter(|p| mean_width(p) > step);
    MultiPolygon(kept.collect())
}

pub(super) fn rings(polygon: &Polygon<f64>) -> impl Iterator<Item = &LineString<f64>> {
    std::iter::once(polygon.exterior()).chain(polygon.interiors())
}

fn extent(coords: &[Coord<f64>]) -> f64 {
    let spread = |values: &mut dyn Iterator<Item = f64>| {
        let (low, high) = values.fold((f64::INFINITY, f64::NEG_INFINITY), |(l, h), v| (l.min(v), h.max(v)));
        if low <= high { high - low } else { 0.0 }
    };
    spread(&mut coords.iter().map(|c| c.x)).max(spread(&mut coords.iter().map(|c| c.y)))
}

/// The value in a sorted list that is nearest, if it is within `step`; otherwise the value itself.
fn nearest(sorted: &[f64], value: f64, step: f64) -> f64 {
    let at = sorted.partition_point(|v| *v < value);
    let around = &sorted[at.saturating_sub(1)..(at + 1).min(sorted.len())];
    around
        .iter()
        .copied()
        .filter(|v| (v - value).abs() <= step)
        .min_by(|a, b| (a - value).abs().total_cmp(&(b - value).abs()))
        .unwrap_or(value)
}
