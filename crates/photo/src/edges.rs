//! Straight lines in the picture: hard edges, which a shadow may have made, and joints.
//!
//! Method (our own thresholds, provisional, from synthetic pictures): gradient of ln Y on about 400
//! cells at two widths, thinned to crests, gathered into straight lines by direction and distance
//! (a Hough transform with directed normals). A line with different light on its two sides is an
//! edge; one that is dark itself between equal sides is a joint.

use crate::cells::Cells;
use crate::field::{quantile, smoothed};
use crate::line::{Line, LineKind};

/// Most lines of each kind.
const MOST: usize = 4;
/// Bins of direction round the circle, and cells in a bin of distance.
const DIRECTIONS: usize = 120;
const DISTANCE_BIN: f32 = 2.0;
/// Least step in ln Y across a hard edge.
const MIN_STEP: f32 = 0.10;
/// Least length, as a share of the longer side, and least part of it that is seen.
const MIN_LENGTH: f32 = 0.2;
const MIN_SEEN: f32 = 0.6;

struct Crest {
    x: f32,
    y: f32,
    normal: [f32; 2],
    taken: bool,
}

/// One smoothed picture of ln Y.
struct Scene<'a> {
    cols: usize,
    rows: usize,
    values: Vec<f32>,
    usable: &'a [bool],
    sigma: f32,
}

/// The straight lines of the picture, at most four of each kind, longest first at each width.
pub(crate) fn lines(cells: &Cells, usable: &[bool]) -> Vec<Line> {
    if cells.cols < 40 || cells.rows < 40 {
        return Vec::new();
    }
    let values: Vec<f32> = (0..cells.light.len()).map(|at| luminance(cells.light[at])).collect();
    let mut found: Vec<Line> = Vec::new();
    for sigma in [1.2, 4.0] {
        let scene = Scene {
            cols: cells.cols,
            rows: cells.rows,
            values: smoothed(&values, usable, cells.cols, sigma),
            usable,
            sigma,
        };
        let mut crests = scene.crests();
        for line in &found {
            scene.take(&mut crests, line.normal, line.distance / px(cells.side));
        }
        for _ in 0..3 * MOST {
            let Some(line) = scene.next_line(&mut crests, px(cells.side)) else { break };
            let same = found.iter().filter(|other| other.kind == line.kind).count();
            if same < MOST {
                found.push(line);
            }
        }
    }
    found
}

fn px(side: u32) -> f32 {
    f32::from(u16::try_from(side).unwrap_or(u16::MAX))
}

/// ln Y.
fn luminance(light: [f32; 3]) -> f32 {
    libm::logf((0.2126 * light[0] + 0.7152 * light[1] + 0.0722 * light[2]).max(1e-4))
}

#[expect(
    clippy::cast_precision_loss,
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "places on a grid of some hundred cells"
)]
impl Scene<'_> {
    fn at(&self, x: f32, y: f32) -> Option<f32> {
        let (col, row) = (x.round(), y.round());
        if col < 0.0 || row < 0.0 || col >= self.cols as f32 || row >= self.rows as f32 {
            return None;
        }
        let at = row as usize * self.cols + col as usize;
        self.usable[at].then(|| self.values[at])
    }

    /// Cells where the gradient is strong and greatest along its own direction.
    fn crests(&self) -> Vec<Crest> {
        let (cols, rows) = (self.cols, self.rows);
        let mut gradient = vec![[0.0_f32; 2]; cols * rows];
        let mut strength = vec![0.0_f32; cols * rows];
        for row in 1..rows - 1 {
            for col in 1..cols - 1 {
                let at = row * cols + col;
                let around = [at, at - 1, at + 1, at - cols, at + cols];
                if around.iter().all(|&i| self.usable[i]) {
                    let v = &self.values;
                    gradient[at] = [0.5 * (v[at + 1] - v[at - 1]), 0.5 * (v[at + cols] - v[at - cols])];
                    strength[at] = libm::hypotf(gradient[at][0], gradient[at][1]);
                }
            }
        }
        let mut known: Vec<f32> = strength.iter().copied().filter(|s| *s > 0.0).collect();
        // A step of h smoothed by σ has its steepest gradient h/(σ √2π); 0.7 for a slanted start.
        let least = 0.7 * MIN_STEP / (self.sigma * 2.506_6);
        let least = least.max((if self.sigma < 2.0 { 4.0 } else { 2.5 }) * quantile(&mut known, 0.5));
        let mut crests = Vec::new();
        for row in 1..rows - 1 {
            for col in 1..cols - 1 {
                let at = row * cols + col;
                let s = strength[at];
                if s < least {
                    continue;
                }
                let normal = gradient[at].map(|g| g / s);
                let step = |n: f32| {
                    if n > 0.383 {
                        1
                    } else if n < -0.383 {
                        -1
                    } else {
                        0_isize
                    }
                };
                let shift = step(normal[0]) + step(normal[1]) * cols as isize;
                let (before, after) = (at.wrapping_add_signed(-shift), at.wrapping_add_signed(shift));
                if s >= strength[before] && s > strength[after] {
                    crests.push(Crest { x: col as f32, y: row as f32, normal, taken: false });
                }
            }
        }
        crests
    }

    /// Marks the crests of a line (normal, distance in cells) as used.
    fn take(&self, crests: &mut [Crest], normal: [f32; 2], distance: f32) {
        for crest in crests {
            let off = crest.x * normal[0] + crest.y * normal[1] - distance;
            let along = crest.normal[0] * normal[0] + crest.normal[1] * normal[1];
            if off.abs() < 3.0 + self.sigma && along.abs() > 0.9 {
                crest.taken = true;
            }
        }
    }

    /// The direction and distance that most free crests share.
    fn peak(&self, crests: &[Crest]) -> Option<([f32; 2], f32)> {
        let reach = libm::hypotf(self.cols as f32, self.rows as f32);
        let bins = (2.0 * reach / DISTANCE_BIN) as usize + 2;
        let mut votes = vec![0_u16; DIRECTIONS * bins];
        let turn = std::f32::consts::TAU / DIRECTIONS as f32;
        for crest in crests.iter().filter(|crest| !crest.taken) {
            let angle = libm::atan2f(crest.normal[1], crest.normal[0]).rem_euclid(std::f32::consts::TAU);
            for shift in -2..=2_i16 {
                let bin =
                    ((angle / turn).round() + f32::from(shift)).rem_euclid(DIRECTIONS as f32) as usize % DIRECTIONS;
                let (sin, cos) = (libm::sinf(bin as f32 * turn), libm::cosf(bin as f32 * turn));
                let distance = (crest.x * cos + crest.y * sin + reach) / DISTANCE_BIN;
                votes[bin * bins + (distance as usize).min(bins - 1)] += 1;
            }
        }
        let (best, count) = votes.iter().enumerate().max_by_key(|(_, count)| **count)?;
        // Half a line of the least length must already agree.
        let least = MIN_LENGTH * 0.3 * self.cols.max(self.rows) as f32;
        (f32::from(*count) >= least).then(|| {
            let angle = (best / bins) as f32 * turn;
            ([libm::cosf(angle), libm::sinf(angle)], ((best % bins) as f32 + 0.5) * DISTANCE_BIN - reach)
        })
    }

    /// The next line; its crests are marked as used whether it passes or not.
    fn next_line(&self, crests: &mut [Crest], side: f32) -> Option<Line> {
        for _ in 0..12 {
            let (mut normal, mut distance) = self.peak(crests)?;
            for reach in [3.0, 2.0] {
                (normal, distance) = refined(crests, normal, distance, reach + 0.25 * self.sigma);
            }
            let line = self.measured(crests, normal, distance, side);
            self.take(crests, normal, distance);
            if line.is_some() {
                return line;
            }
        }
        None
    }

    /// Length, what is seen of it, and the light on both sides.
    fn measured(&self, crests: &[Crest], normal: [f32; 2], distance: f32, side: f32) -> Option<Line> {
        let tangent = [-normal[1], normal[0]];
        let mut places: Vec<f32> = supports(crests, normal, distance, 2.0 + 0.25 * self.sigma)
            .map(|crest| crest.x * tangent[0] + crest.y * tangent[1])
            .collect();
        places.sort_by(f32::total_cmp);
        let run = longest_run(&places, 12.0);
        let (first, last) = (*run.first()?, *run.last()?);
        let length = last - first;
        if length < MIN_LENGTH * self.cols.max(self.rows) as f32 {
            return None;
        }
        let mut seen: Vec<i32> = run.iter().map(|place| (place / 2.0) as i32).collect();
        seen.dedup();
        if (seen.len() as f32) < MIN_SEEN * length / 2.0 {
            return None;
        }
        let point = |along: f32, off: f32| {
            let d = distance + off;
            [d * normal[0] + along * tangent[0], d * normal[1] + along * tangent[1]]
        };
        let off = 2.0 * self.sigma + 3.0;
        let (mut steps, mut dips) = (Vec::new(), Vec::new());
        for i in 0..length as u16 {
            let value = |off: f32| {
                let [x, y] = point(first + f32::from(i), off);
                self.at(x, y)
            };
            if let (Some(low), Some(high)) = (value(-off), value(off)) {
                steps.push(high - low);
                let middle = [-2.0, -1.0, 0.0, 1.0, 2.0].iter().filter_map(|o| value(*o)).fold(f32::MAX, f32::min);
                dips.push(low.min(high) - middle);
            }
        }
        if steps.len() < 20 {
            return None;
        }
        let (step, dip) = (quantile(&mut steps, 0.5).abs(), quantile(&mut dips, 0.5));
        let kind = if step >= MIN_STEP {
            LineKind::Edge
        } else if dip >= 0.03 && self.sigma < 2.0 {
            LineKind::Joint
        } else {
            return None;
        };
        let scaled = |[x, y]: [f32; 2]| [(x + 0.5) * side, (y + 0.5) * side];
        Some(Line {
            from: scaled(point(first, 0.0)),
            to: scaled(point(last, 0.0)),
            step: if kind == LineKind::Edge { step } else { dip },
            kind,
            reach: side * (2.5 + 1.5 * self.sigma),
            normal,
            distance: (distance + 0.5 * (normal[0] + normal[1])) * side,
        })
    }
}

fn supports(crests: &[Crest], normal: [f32; 2], distance: f32, reach: f32) -> impl Iterator<Item = &Crest> {
    crests.iter().filter(move |crest| {
        let off = crest.x * normal[0] + crest.y * normal[1] - distance;
        !crest.taken && off.abs() < reach && crest.normal[0] * normal[0] + crest.normal[1] * normal[1] > 0.95
    })
}

/// The line of least squared distance through the crests near one.
fn refined(crests: &[Crest], normal: [f32; 2], distance: f32, reach: f32) -> ([f32; 2], f32) {
    let (mut n, mut sx, mut sy, mut sxx, mut sxy, mut syy) = (0.0_f32, 0.0, 0.0, 0.0, 0.0, 0.0);
    for crest in supports(crests, normal, distance, reach) {
        n += 1.0;
        sx += crest.x;
        sy += crest.y;
        sxx += crest.x * crest.x;
        sxy += crest.x * crest.y;
        syy += crest.y * crest.y;
    }
    if n < 8.0 {
        return (normal, distance);
    }
    let (mx, my) = (sx / n, sy / n);
    let (vxx, vxy, vyy) = (sxx / n - mx * mx, sxy / n - mx * my, syy / n - my * my);
    // The normal is the direction of least spread; the sign stays that of the old one.
    let angle = 0.5 * libm::atan2f(2.0 * vxy, vxx - vyy) + std::f32::consts::FRAC_PI_2;
    let mut out = [libm::cosf(angle), libm::sinf(angle)];
    if out[0] * normal[0] + out[1] * normal[1] < 0.0 {
        out = out.map(|v| -v);
    }
    (out, mx * out[0] + my * out[1])
}

/// The longest stretch of sorted places without a gap above `gap`.
fn longest_run(places: &[f32], gap: f32) -> &[f32] {
    let (mut best, mut start) = (0..0, 0);
    for i in 0..places.len() {
        if i > 0 && places[i] - places[i - 1] > gap {
            start = i;
        }
        if places[i] - places[start] >= places[best.clone()].last().map_or(-1.0, |last| last - places[best.start]) {
            best = start..i + 1;
        }
    }
    &places[best]
}
