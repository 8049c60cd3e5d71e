//! Curves as chords.
//!
//! A chord spans at most [`STEP`] degrees and has its ends on the curve, so it lies off an arc of
//! radius r by at most r (1 − cos 1°) = 0.00015 r: 1.5 mm on a radius of 10 m, and the sector loses
//! 0.02 % of its area. How much it is in all is kept with each path.

use crate::Spot;
use crate::affine::Affine;

/// The angle that one chord spans at most, degrees.
pub(crate) const STEP: f64 = 2.0;

/// A line through points, and what its chords leave out.
#[derive(Debug, Clone, Default, PartialEq)]
pub(crate) struct Path {
    pub(crate) points: Vec<Spot>,
    /// The farthest a chord lies from its curve.
    pub(crate) deviation: f64,
    /// The area between chords and curves.
    pub(crate) area_error: f64,
}

/// Part of an ellipse: its middle, its two half axes as vectors, from angle to angle in radians
/// counter-clockwise (from the first axis toward the second).
#[derive(Debug, Clone, Copy)]
pub(crate) struct Arc {
    pub(crate) center: Spot,
    pub(crate) major: Spot,
    pub(crate) minor: Spot,
    pub(crate) from: f64,
    pub(crate) sweep: f64,
}

impl Arc {
    /// An arc of a circle.
    pub(crate) const fn circular(center: Spot, radius: f64, from: f64, sweep: f64) -> Self {
        Self { center, major: Spot::new(radius, 0.0), minor: Spot::new(0.0, radius), from, sweep }
    }

    fn at(&self, angle: f64) -> Spot {
        let (sin, cos) = (libm::sin(angle), libm::cos(angle));
        Spot::new(
            self.center.x + self.major.x * cos + self.minor.x * sin,
            self.center.y + self.major.y * cos + self.minor.y * sin,
        )
    }

    /// Its chords; the end point only when `last`, since a full turn or a next piece brings it anyway.
    pub(crate) fn chords(&self, path: &mut Path, last: bool) {
        let count = libm::ceil(self.sweep.abs().to_degrees() / STEP - 1e-9).clamp(1.0, 360.0 / STEP);
        let step = self.sweep / count;
        for i in 0..count as usize {
            path.points.push(self.at(self.from + step * i as f64));
        }
        if last {
            path.points.push(self.at(self.from + self.sweep));
        }
        let size = |v: Spot| libm::hypot(v.x, v.y);
        let half = step.abs() / 2.0;
        path.deviation = path.deviation.max(size(self.major).max(size(self.minor)) * (1.0 - libm::cos(half)));
        let parallelogram = (self.major.x * self.minor.y - self.major.y * self.minor.x).abs();
        // Area between arc and chord on the unit circle, (θ − sin θ) / 2, stretched with the ellipse.
        path.area_error += count * parallelogram * (step.abs() - libm::sin(step.abs())) / 2.0;
    }
}

impl Path {
    pub(crate) fn placed(mut self, place: Affine) -> Self {
        self.points.iter_mut().for_each(|p| *p = place.of(*p));
        self.deviation *= place.stretch();
        self.area_error *= place.area();
        self
    }

    /// A line of corners with bulges: the tangent of a quarter of the angle that the piece from that
    /// corner to the next turns by, to the left when positive.
    pub(crate) fn bulged(corners: &[(Spot, f64)], closed: bool) -> Self {
        let mut path = Self::default();
        let count = corners.len();
        for (i, (from, bulge)) in corners.iter().enumerate() {
            if i + 1 == count && !closed {
                path.points.push(*from);
                break;
            }
            let to = corners[(i + 1) % count].0;
            match arc_between(*from, to, *bulge) {
                // The exact corner, not the arc's idea of it.
                Some(arc) => {
                    let begin = path.points.len();
                    arc.chords(&mut path, false);
                    path.points[begin] = *from;
                }
                None => path.points.push(*from),
            }
        }
        path
    }
}

fn arc_between(from: Spot, to: Spot, bulge: f64) -> Option<Arc> {
    let chord = from.distance(to);
    if bulge == 0.0 || chord == 0.0 || bulge.abs() < 1e-12 {
        return None;
    }
    // Apex height is bulge × chord / 2; the radius follows from the two right triangles.
    let radius = chord * (1.0 + bulge * bulge) / (4.0 * bulge.abs());
    // From the chord's middle toward the middle of the circle, to the left for a bulge to the left.
    let off = chord * (1.0 - bulge * bulge) / (4.0 * bulge);
    let (x, y) = ((to.x - from.x) / chord, (to.y - from.y) / chord);
    let center = Spot::new((from.x + to.x) / 2.0 - y * off, (from.y + to.y) / 2.0 + x * off);
    if !(center.x.is_finite() && center.y.is_finite() && radius.is_finite()) {
        return None;
    }
    let begin = libm::atan2(from.y - center.y, from.x - center.x);
    Some(Arc::circular(center, radius, begin, 4.0 * libm::atan(bulge)))
}
