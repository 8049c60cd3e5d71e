//! How long, how wide and how pointed a face is.

use geo::{ConvexHull, Coord, LineString, MultiPoint, Point as Spot};
use units::Length;

use crate::clip::cross;

/// The sides of the smallest rectangle around a face, and its least width.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Extent {
    pub(super) long: f64,
    pub(super) short: f64,
    /// Between two parallel lines that touch it on either side, as near together as can be.
    pub(super) narrowest: f64,
}

/// Measures the points of an outer ring. One of the rectangle's sides lies along a side of the hull.
pub(super) fn extent(ring: &[Coord<f64>]) -> Extent {
    let points = MultiPoint(ring.iter().map(|c| Spot(*c)).collect());
    let hull: LineString<f64> = points.convex_hull().exterior().clone();
    let mut best: Option<(f64, Extent)> = None;
    let mut narrowest = f64::INFINITY;
    for edge in hull.lines() {
        let length = libm::hypot(edge.dx(), edge.dy());
        if length <= 0.0 {
            continue;
        }
        let along = edge.delta() / length;
        let (mut low, mut high, mut off) = (f64::INFINITY, f64::NEG_INFINITY, 0.0_f64);
        for corner in &hull.0 {
            let from = *corner - edge.start;
            let far = from.x * along.x + from.y * along.y;
            (low, high) = (low.min(far), high.max(far));
            off = off.max(cross(along, from).abs());
        }
        let span = high - low;
        narrowest = narrowest.min(off);
        let sides = Extent { long: span.max(off), short: span.min(off), narrowest };
        // Of two as large the one nearer to square, so that the order of corners does not matter.
        let better = |(area, kept): (f64, Extent)| {
            let alike = (span * off - area).abs() <= 1e-9 * area;
            if alike { sides.long < kept.long } else { span * off < area }
        };
        if best.is_none_or(better) {
            best = Some((span * off, sides));
        }
    }
    best.map_or(Extent { long: 0.0, short: 0.0, narrowest: 0.0 }, |(_, sides)| Extent { narrowest, ..sides })
}

/// The sharpest corner of a ring walked counter-clockwise: its inner angle in degrees, and its place.
pub(super) fn sharpest(ring: &[Coord<f64>]) -> Option<(f64, Coord<f64>)> {
    corners(ring).min_by(|a, b| a.0.total_cmp(&b.0))
}

/// The corners of a ring with the ground to its left: the angle on the ground's side, degrees.
pub(super) fn corners(ring: &[Coord<f64>]) -> impl Iterator<Item = (f64, Coord<f64>)> {
    let count = ring.len();
    (0..count).map(move |i| {
        let (before, here, after) = (ring[(i + count - 1) % count], ring[i], ring[(i + 1) % count]);
        let (a, b) = (here - before, after - here);
        let turn = libm::atan2(cross(a, b), a.x * b.x + a.y * b.y).to_degrees();
        (180.0 - turn, here)
    })
}

/// All sides of the rings together.
pub(super) fn around(rings: &[Vec<Coord<f64>>]) -> Length {
    let side = |ring: &Vec<Coord<f64>>| {
        let next = ring.iter().cycle().skip(1);
        ring.iter().zip(next).map(|(a, b)| libm::hypot(b.x - a.x, b.y - a.y)).sum::<f64>()
    };
    Length::meters(rings.iter().map(side).sum())
}
