//! Joints and score lines as they lie on the slab: clipped, ends pulled to what they nearly touch,
//! what two lines share counted once.

use geo::{Coord, Line, MultiPolygon};
use units::Length;

use super::LayoutError;
use super::net::{Net, Role};
use crate::clip::{Clip, cross, distance, same_place, walls};
use crate::{FIT_TOLERANCE, Plan, Point, Run};

/// A line this near to another ends on it, meters.
const TOUCHES: f64 = 1e-9;

/// A straight piece of a joint or a score line.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Segment {
    /// Where it begins.
    pub from: Point,
    /// Where it ends.
    pub to: Point,
}

impl Segment {
    /// Its length, above zero.
    #[must_use]
    pub fn length(&self) -> Length {
        self.from.distance(self.to)
    }
}

/// Lines on the slab and what there is of them.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Lineal {
    /// The pieces between the places where lines meet each other; none twice.
    pub segments: Vec<Segment>,
    /// All of them together; a stretch that two lines share counts once.
    pub length: Length,
}

/// The joints on the slab.
///
/// # Errors
/// [`LayoutError::NotDrawn`], or [`LayoutError::TooMany`].
pub fn joint_lines(plan: &Plan) -> Result<Lineal, LayoutError> {
    let placed = Placed::of(plan)?;
    placed.lineal(&placed.joints)
}

/// The score lines of all patterns on the slab.
///
/// # Errors
/// As [`joint_lines`].
pub fn score_lines(plan: &Plan) -> Result<Lineal, LayoutError> {
    let placed = Placed::of(plan)?;
    placed.lineal(&placed.scores.concat())
}

/// The score lines of one pattern, by its place in [`Plan::patterns`].
///
/// # Errors
/// As [`joint_lines`], and [`LayoutError::NoPattern`].
pub fn pattern_lines(plan: &Plan, index: usize) -> Result<Lineal, LayoutError> {
    let placed = Placed::of(plan)?;
    let lines = placed.scores.get(index).ok_or(LayoutError::NoPattern { index, count: placed.scores.len() })?;
    placed.lineal(lines)
}

/// All lines of a plan in their place.
pub(super) struct Placed {
    pub(super) same: f64,
    pub(super) walls: Vec<Line<f64>>,
    pub(super) joints: Vec<Line<f64>>,
    /// For each pattern its lines.
    pub(super) scores: Vec<Vec<Line<f64>>>,
}

impl Placed {
    pub(super) fn of(plan: &Plan) -> Result<Self, LayoutError> {
        let slab = plan.slab_ground().ok_or(LayoutError::NotDrawn)?;
        let (same, walls) = (same_place(slab), walls(slab));
        let scope = |run: &Run| plan.scope(run.zone).unwrap_or(slab);
        // A joint may end on a joint; a score line on either.
        let stops = |others: &mut dyn Iterator<Item = &Run>| -> Vec<Line<f64>> {
            others.flat_map(|run| run.lines.iter().copied()).chain(walls.iter().copied()).collect()
        };
        let by_joints = stops(&mut plan.joints().iter().map(|j| &j.run));
        let by_all = stops(&mut plan.joints().iter().map(|j| &j.run).chain(plan.patterns().iter().map(|p| &p.run)));
        let joints = plan.joints().iter().flat_map(|j| placed(&j.run, scope(&j.run), &by_joints)).collect();
        let scores = plan.patterns().iter().map(|p| placed(&p.run, scope(&p.run), &by_all)).collect();
        Ok(Self { same, walls, joints, scores })
    }

    /// The edges alone, as if the plan had no lines.
    pub(super) fn walls_of(plan: &Plan) -> Result<Self, LayoutError> {
        let slab = plan.slab_ground().ok_or(LayoutError::NotDrawn)?;
        Ok(Self { same: same_place(slab), walls: walls(slab), joints: Vec::new(), scores: Vec::new() })
    }

    fn lineal(&self, lines: &[Line<f64>]) -> Result<Lineal, LayoutError> {
        let lines: Vec<(Line<f64>, Role)> = lines.iter().map(|l| (*l, Role::Score)).collect();
        let net = Net::of(&lines, self.same)?;
        let segments = net.pieces.keys().map(|piece| net.line(*piece));
        let mut segments: Vec<Segment> =
            segments.map(|l| Segment { from: Point::of(l.start), to: Point::of(l.end) }).collect();
        segments.sort_by(|a, b| key(a).partial_cmp(&key(b)).unwrap_or(std::cmp::Ordering::Equal));
        let length = segments.iter().map(Segment::length).sum();
        Ok(Lineal { segments, length })
    }
}

fn key(segment: &Segment) -> [f64; 4] {
    [segment.from.y, segment.from.x, segment.to.y, segment.to.x].map(crate::Offset::as_meters)
}

fn placed(run: &Run, scope: &MultiPolygon<f64>, stops: &[Line<f64>]) -> Vec<Line<f64>> {
    let clip = Clip::by(scope);
    run.lines.iter().flat_map(|line| clip.line(if run.taped { reaching(*line, stops) } else { *line })).collect()
}

/// The line with each end that stops short of another line by no more than [`FIT_TOLERANCE`] made
/// longer to meet it.
fn reaching(line: Line<f64>, stops: &[Line<f64>]) -> Line<f64> {
    let longer = |from: Coord<f64>, to: Coord<f64>| {
        // The next piece of the same line, or something else that it already ends on.
        if stops.iter().any(|stop| *stop != line && distance(to, *stop) <= TOUCHES) {
            return to;
        }
        let length = libm::hypot(to.x - from.x, to.y - from.y);
        let along = (to - from) / length;
        let hit =
            stops.iter().filter_map(|stop| ahead(to, along, *stop)).filter(|far| *far <= FIT_TOLERANCE.as_meters());
        hit.min_by(f64::total_cmp).map_or(to, |far| to + along * far)
    };
    Line::new(longer(line.end, line.start), longer(line.start, line.end))
}

/// How far ahead of `from` the ray meets the line; nothing where it does not, or starts on it.
fn ahead(from: Coord<f64>, along: Coord<f64>, line: Line<f64>) -> Option<f64> {
    let across = cross(along, line.delta());
    let length = libm::hypot(line.dx(), line.dy());
    if across.abs() <= 1e-6 * length {
        return None;
    }
    let far = cross(line.start - from, line.delta()) / across;
    let share = cross(line.start - from, along) / across;
    let room = 1e-9;
    (far > 0.0 && (-room..=1.0 + room).contains(&share)).then_some(far)
}
