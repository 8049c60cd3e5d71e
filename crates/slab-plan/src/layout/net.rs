//! A net of straight pieces that meet only at their ends, made from any lines.
//!
//! Lines are split wherever they cross or touch; places nearer than `same` become one; a piece that
//! several lines share is kept once and remembers all of them.

use std::collections::{BTreeMap, HashMap};

use geo::{Coord, Line};

use super::LayoutError;
use crate::clip::{cross, distance};

/// The most places a net may have: far more than any slab, and still quick.
const MAX_PLACES: usize = 100_000;

/// What a piece belongs to.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq)]
pub(super) struct Tags {
    /// An edge of the ground, which lies to the left going from the lower to the higher number.
    pub(super) wall_up: bool,
    /// An edge of the ground, which lies to the left going from the higher to the lower number.
    pub(super) wall_down: bool,
    /// A joint runs along it, whatever else does.
    pub(super) joint: bool,
}

/// What a line is.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Role {
    /// An edge of the ground, with the ground to its left.
    Wall,
    Joint,
    Score,
}

/// The net: places by number, and pieces between them, each from the lower to the higher number.
#[derive(Debug, Clone, Default)]
pub(super) struct Net {
    pub(super) places: Vec<Coord<f64>>,
    pub(super) pieces: BTreeMap<(usize, usize), Tags>,
}

/// Places by the cell of a raster of width `same` that they lie in.
struct Places {
    same: f64,
    cells: HashMap<(i64, i64), Vec<usize>>,
    all: Vec<Coord<f64>>,
}

impl Places {
    fn number(&mut self, at: Coord<f64>) -> usize {
        let cell = |v: f64| (v / self.same).floor() as i64;
        let (x, y) = (cell(at.x), cell(at.y));
        for dx in -1..=1 {
            for dy in -1..=1 {
                let near = self.cells.get(&(x.saturating_add(dx), y.saturating_add(dy)));
                let hit = near.into_iter().flatten().find(|i| {
                    let other = self.all[**i];
                    libm::hypot(other.x - at.x, other.y - at.y) <= self.same
                });
                if let Some(i) = hit {
                    return *i;
                }
            }
        }
        self.all.push(at);
        self.cells.entry((x, y)).or_default().push(self.all.len() - 1);
        self.all.len() - 1
    }
}

impl Net {
    /// Splits the lines into a net. Walls keep their corners to the digit when they come first.
    ///
    /// # Errors
    /// [`LayoutError::TooMany`] when the lines cross in too many places.
    pub(super) fn of(lines: &[(Line<f64>, Role)], same: f64) -> Result<Self, LayoutError> {
        let same = same.max(f64::MIN_POSITIVE);
        let mut cuts: Vec<Vec<Coord<f64>>> = lines.iter().map(|(l, _)| vec![l.start, l.end]).collect();
        let mut count = 0_usize;
        for (i, j) in close_pairs(lines, same) {
            let (a, b) = (lines[i].0, lines[j].0);
            let mut touched = false;
            for (own, other, onto) in [(a, b, j), (b, a, i)] {
                for end in [own.start, own.end] {
                    if distance(end, other) <= same {
                        cuts[onto].push(end);
                        touched = true;
                    }
                }
            }
            if let Some(at) = crossing(a, b).filter(|_| !touched) {
                cuts[i].push(at);
                cuts[j].push(at);
            }
            count += 1;
            if count > 20 * MAX_PLACES {
                return Err(LayoutError::TooMany { most: MAX_PLACES });
            }
        }
        let mut places = Places { same, cells: HashMap::new(), all: Vec::new() };
        // Ends of lines before crossings, so that what was typed stays as typed.
        for (line, _) in lines {
            places.number(line.start);
            places.number(line.end);
        }
        let mut pieces: BTreeMap<(usize, usize), Tags> = BTreeMap::new();
        for ((line, role), mut cuts) in lines.iter().zip(cuts) {
            let along = line.delta();
            let share = |c: &Coord<f64>| (*c - line.start).x * along.x + (*c - line.start).y * along.y;
            cuts.sort_by(|a, b| share(a).total_cmp(&share(b)));
            let numbers: Vec<usize> = cuts.into_iter().map(|c| places.number(c)).collect();
            if places.all.len() > MAX_PLACES {
                return Err(LayoutError::TooMany { most: MAX_PLACES });
            }
            for pair in numbers.windows(2).filter(|pair| pair[0] != pair[1]) {
                let up = pair[0] < pair[1];
                let key = if up { (pair[0], pair[1]) } else { (pair[1], pair[0]) };
                let tags = pieces.entry(key).or_default();
                match role {
                    Role::Wall if up => tags.wall_up = true,
                    Role::Wall => tags.wall_down = true,
                    Role::Joint => tags.joint = true,
                    Role::Score => {}
                }
            }
        }
        Ok(Self { places: places.all, pieces })
    }

    pub(super) fn line(&self, piece: (usize, usize)) -> Line<f64> {
        Line::new(self.places[piece.0], self.places[piece.1])
    }

    /// The length of one piece, meters.
    pub(super) fn length(&self, piece: (usize, usize)) -> f64 {
        let line = self.line(piece);
        libm::hypot(line.dx(), line.dy())
    }
}

/// Pairs of lines whose boxes touch, by a sweep from left to right.
fn close_pairs(lines: &[(Line<f64>, Role)], same: f64) -> impl Iterator<Item = (usize, usize)> {
    let low_x = |i: usize| lines[i].0.start.x.min(lines[i].0.end.x) - same;
    let high_x = |i: usize| lines[i].0.start.x.max(lines[i].0.end.x) + same;
    let span_y = |i: usize| {
        let line = lines[i].0;
        (line.start.y.min(line.end.y) - same, line.start.y.max(line.end.y) + same)
    };
    let mut order: Vec<usize> = (0..lines.len()).collect();
    order.sort_by(|a, b| low_x(*a).total_cmp(&low_x(*b)));
    let mut open: Vec<usize> = Vec::new();
    let mut pairs = Vec::new();
    for j in order {
        open.retain(|i| high_x(*i) >= low_x(j));
        let (low, high) = span_y(j);
        pairs.extend(open.iter().copied().filter(|i| span_y(*i).0 <= high && span_y(*i).1 >= low).map(|i| (i, j)));
        open.push(j);
    }
    pairs.into_iter()
}

/// Where two lines cross, both ends of each on either side of the other.
fn crossing(a: Line<f64>, b: Line<f64>) -> Option<Coord<f64>> {
    let (from, to) = (cross(a.delta(), b.start - a.start), cross(a.delta(), b.end - a.start));
    let (back, forth) = (cross(b.delta(), a.start - b.start), cross(b.delta(), a.end - b.start));
    let opposite = |u: f64, v: f64| (u < 0.0 && v > 0.0) || (u > 0.0 && v < 0.0);
    (opposite(from, to) && opposite(back, forth)).then(|| {
        let at = b.start + b.delta() * (from / (from - to));
        // Along an axis a crossing keeps the line's own coordinate to the digit.
        let keep = |value: f64, s: f64, e: f64, s2: f64, e2: f64| {
            if s == e {
                s
            } else if s2 == e2 {
                s2
            } else {
                value
            }
        };
        Coord {
            x: keep(at.x, a.start.x, a.end.x, b.start.x, b.end.x),
            y: keep(at.y, a.start.y, a.end.y, b.start.y, b.end.y),
        }
    })
}
