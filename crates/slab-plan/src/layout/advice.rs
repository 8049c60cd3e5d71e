//! Where to saw: a proposal of joints for a slab.
//!
//! Straight cuts from edge to edge along the slab's two main directions. First cuts through every
//! corner that points into the slab and through every column, then the gaps between them divided
//! evenly. Then single cuts are taken out or gaps divided once more, as long as less speaks against
//! the layout, the most helpful first; what still does is told. A proposal to start from, not the best
//! there is.

use std::cmp::Ordering;

use geo::{Coord, Line};
use units::Length;

use super::LayoutError;
use super::check::{JointCheck, Judge};
use super::panel::{Finding, FindingCode, Panel};
use super::rule::JointLimits;
use super::runs::{Placed, Segment};
use crate::clip::Clip;
use crate::{Plan, Point};

/// The most cuts one way; more is a slip of the unit.
const MAX_CUTS: usize = 400;
/// How many layouts are tried at most, and how many panels they may have together.
const MAX_TRIES: usize = 400;
const MAX_PANELS_TRIED: usize = 60_000;
/// Two wanted cuts nearer than this are one.
const ONE_CUT: Length = Length::inches(6.0);

/// A proposal of joints, and what still speaks against it.
#[derive(Debug, Clone, PartialEq)]
pub struct JointAdvice {
    /// The cuts, each from edge to edge, as if the slab had no joints yet.
    pub cuts: Vec<Segment>,
    /// All cuts together.
    pub length: Length,
    /// The panels that they make.
    pub panels: Vec<Panel>,
    /// What speaks against them.
    pub findings: Vec<Finding>,
    /// The shorter and the longer end of the rule's spacing for the thickness.
    pub spacing: (Length, Length),
}

/// Proposes saw cuts for a slab of this thickness. `more_columns` are columns that are no cut-outs.
/// Joints that the plan has are not looked at; [`super::check_joints`] does that.
///
/// # Errors
/// As [`super::check_joints`], and [`LayoutError::TooManyCuts`].
pub fn advise_joints(
    plan: &Plan,
    thickness: Length,
    more_columns: &[Point],
    limits: &JointLimits,
) -> Result<JointAdvice, LayoutError> {
    let judge = Judge::of(plan, thickness, more_columns, limits)?;
    let placed = Placed::walls_of(plan)?;
    let desk = Desk { plan, placed: &placed, clip: Clip::by(plan.slab_ground().ok_or(LayoutError::NotDrawn)?), judge };
    let (cuts, check) = desk.best()?;
    let cuts: Vec<Segment> = cuts.iter().map(|l| Segment { from: Point::of(l.start), to: Point::of(l.end) }).collect();
    let length = cuts.iter().map(Segment::length).sum();
    Ok(JointAdvice { cuts, length, panels: check.panels, findings: check.findings, spacing: check.spacing })
}

/// Cuts one way: places that are wanted, and into how many parts each gap between them is divided.
#[derive(Debug, Clone, PartialEq)]
struct Way {
    /// From edge to edge, both counted in.
    wanted: Vec<f64>,
    parts: Vec<usize>,
}

/// A layout: the cuts across the first direction, and those across the second.
type Layout = [Way; 2];

/// What speaks against a layout, the gravest first.
type Cost = [f64; 4];

struct Desk<'a> {
    plan: &'a Plan,
    placed: &'a Placed,
    clip: Clip<'a>,
    judge: Judge,
}

impl Desk<'_> {
    fn best(&self) -> Result<(Vec<Line<f64>>, JointCheck), LayoutError> {
        let along = main_direction(&self.placed.walls);
        let across = Coord { x: -along.y, y: along.x };
        let longest = self.judge.spacing.high.as_meters();
        let way = |axis| self.way(axis, longest);
        let mut best: Layout = [way(along)?, way(across)?];
        let (mut cuts, mut check) = self.judged(&best, along)?;
        let mut cost = cost_of(&check, &cuts);
        let mut tries = (MAX_PANELS_TRIED / check.panels.len().max(1)).clamp(4, MAX_TRIES);
        loop {
            let mut better = None;
            for next in neighbors(&best, longest).into_iter().take(tries) {
                tries -= 1;
                let (new_cuts, new_check) = self.judged(&next, along)?;
                let new_cost = cost_of(&new_check, &new_cuts);
                if order(&new_cost, &cost) == Ordering::Less {
                    cost = new_cost;
                    better = Some((next, new_cuts, new_check));
                }
            }
            match better {
                Some(found) => (best, cuts, check) = found,
                None => return Ok((cuts, check)),
            }
        }
    }

    /// The first layout one way: edges, corners and columns; of two that are near, the corner stays.
    fn way(&self, axis: Coord<f64>, longest: f64) -> Result<Way, LayoutError> {
        let far = |c: Coord<f64>| c.x * axis.x + c.y * axis.y;
        let ends = self.placed.walls.iter().map(|w| far(w.start));
        let (low, high) = ends.fold((f64::INFINITY, f64::NEG_INFINITY), |(l, h), v| (l.min(v), h.max(v)));
        let mut wanted = vec![low, high];
        let corners = self.judge.corners.iter().map(|p| far(p.coord()));
        let columns = self.judge.columns.iter().map(|c| far(c.at.coord()));
        for place in corners.chain(columns) {
            if wanted.iter().all(|w| (w - place).abs() > ONE_CUT.as_meters()) {
                wanted.push(place);
            }
        }
        wanted.sort_by(f64::total_cmp);
        let parts: Vec<usize> = wanted.windows(2).map(|gap| fewest(gap[1] - gap[0], longest)).collect();
        let count = parts.iter().sum();
        if count > MAX_CUTS {
            return Err(LayoutError::TooManyCuts { count, most: MAX_CUTS });
        }
        Ok(Way { wanted, parts })
    }

    fn judged(&self, layout: &Layout, along: Coord<f64>) -> Result<(Vec<Line<f64>>, JointCheck), LayoutError> {
        let across = Coord { x: -along.y, y: along.x };
        let mut cuts = Vec::new();
        for (i, (axis, run)) in [(along, across), (across, along)].into_iter().enumerate() {
            let (from, to) = (layout[1 - i].wanted[0], layout[1 - i].wanted[layout[1 - i].wanted.len() - 1]);
            let margin = (to - from) * 0.01;
            for place in places(&layout[i]) {
                let at = |far: f64| axis * place + run * far;
                cuts.extend(self.clip.line(Line::new(at(from - margin), at(to + margin))));
            }
        }
        let check = self.judge.judged(self.plan, self.placed, &cuts)?;
        Ok((cuts, check))
    }
}

/// The cuts between the two edges.
fn places(way: &Way) -> Vec<f64> {
    let gap = |(gap, parts): (&[f64], &usize)| {
        let (from, width, parts) = (gap[0], gap[1] - gap[0], *parts);
        (0..parts).map(move |i| from + width * i as f64 / parts as f64).collect::<Vec<_>>()
    };
    way.wanted.windows(2).zip(&way.parts).flat_map(gap).skip(1).collect()
}

/// Fewest equal parts of a gap that are no longer than `longest`; a hair over is no extra cut.
fn fewest(gap: f64, longest: f64) -> usize {
    libm::ceil(gap / longest - 1e-9).clamp(1.0, 1e6) as usize
}

/// Layouts one step away: one wanted cut less, then one gap with a cut more.
fn neighbors(layout: &Layout, longest: f64) -> Vec<Layout> {
    let mut out = Vec::new();
    for i in 0..2 {
        for place in 1..layout[i].wanted.len() - 1 {
            let mut next = layout.clone();
            let way = &mut next[i];
            way.wanted.remove(place);
            way.parts.remove(place);
            way.parts[place - 1] = fewest(way.wanted[place] - way.wanted[place - 1], longest);
            out.push(next);
        }
    }
    for i in 0..2 {
        for gap in 0..layout[i].parts.len() {
            let mut next = layout.clone();
            next[i].parts[gap] += 1;
            out.push(next);
        }
    }
    out
}

/// Too long, corners and columns without a joint, shape; then how much is sawn.
fn cost_of(check: &JointCheck, cuts: &[Line<f64>]) -> Cost {
    let mut cost = [0.0; 4];
    for finding in &check.findings {
        let grave = match finding.code {
            FindingCode::PanelTooLong { .. } => 0,
            FindingCode::CornerWithoutJoint | FindingCode::ColumnWithoutJoint => 1,
            FindingCode::AspectTooLarge { .. } | FindingCode::TaperingPanel { .. } | FindingCode::JointStopsShort => 2,
        };
        cost[grave] += 1.0;
    }
    cost[3] = cuts.iter().map(|l| libm::hypot(l.dx(), l.dy())).sum();
    cost
}

fn order(a: &Cost, b: &Cost) -> Ordering {
    // Rounding of the length alone makes no layout better.
    let near =
        |x: f64, y: f64| if (x - y).abs() <= 1e-9 * x.abs().max(y.abs()) { Ordering::Equal } else { x.total_cmp(&y) };
    a.iter().zip(b).map(|(x, y)| near(*x, *y)).find(|o| *o != Ordering::Equal).unwrap_or(Ordering::Equal)
}

/// The direction that most of the walls run along or across, as a unit: angles count four times, so
/// that directions at right angles are one.
fn main_direction(walls: &[Line<f64>]) -> Coord<f64> {
    let (mut x, mut y) = (0.0, 0.0);
    for wall in walls {
        let length = libm::hypot(wall.dx(), wall.dy());
        let angle = 4.0 * libm::atan2(wall.dy(), wall.dx());
        x += length * libm::cos(angle);
        y += length * libm::sin(angle);
    }
    let angle = libm::atan2(y, x) / 4.0;
    // Along the axes to the digit, where only rounding says otherwise.
    if angle.abs() < 1e-9 { Coord { x: 1.0, y: 0.0 } } else { Coord { x: libm::cos(angle), y: libm::sin(angle) } }
}
