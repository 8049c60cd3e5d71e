//! Joints and score lines: strokes of four kinds that are told apart without color.

use localization::Locale;
use slab_plan::layout::{Segment, joint_lines, score_lines};
use slab_plan::{JointKind, Plan, Point};
use units::Length;

use super::mark::Layer;
use super::{PlanItem, Sheet};
use crate::boxes::Xy;
use crate::key::KeyEntry;
use crate::svg::{CEMENT, INK, Svg, outline};

/// How joints are told apart on the drawing; the last is a joint whose kind nobody noted.
const KINDS: [Option<JointKind>; 4] =
    [Some(JointKind::SawCut), Some(JointKind::Construction), Some(JointKind::Isolation), None];
/// Half the gap of a double line, and half a tick across a construction joint with the way between two.
const APART: f64 = 1.8;
const TICK: (f64, f64) = (3.6, 14.0);
/// In one line when they turn less than this against each other, and lie less apart; drawn units.
const SAME_WAY: f64 = 1e-3;
const SAME_LINE: f64 = 0.05;

/// The joints of one kind.
pub(super) struct Joints {
    kind: Option<JointKind>,
    lines: Vec<(Xy, Xy)>,
    length: Length,
}

impl Sheet<'_> {
    /// Score lines, then joints over them.
    pub(super) fn draw_lines(&mut self) {
        if self.shows(Layer::ScoreLines)
            && let Ok(lineal) = score_lines(self.plan)
            && !lineal.segments.is_empty()
        {
            let drawn = self.drawn(&lineal.segments);
            let d: Vec<String> = drawn.iter().map(|(a, b)| outline(&[*a, *b], false)).collect();
            let words = in_all(self.locale, "pic-score-lines", lineal.length);
            self.open_layer(Layer::ScoreLines);
            self.svg.title(&words);
            self.svg.put(format_args!(
                "<path class=\"p-score-line\" d=\"{}\" fill=\"none\" stroke=\"{CEMENT}\" stroke-width=\"0.8\"/>",
                d.join(" ")
            ));
            self.svg.close();
            self.items.push(PlanItem { id: None, layer: Layer::ScoreLines, number: None, text: words });
            self.line_kinds.push(LineKind::Score);
        }
        let joints = if self.shows(Layer::Joints) { self.joints() } else { Vec::new() };
        if joints.is_empty() {
            return;
        }
        self.open_layer(Layer::Joints);
        for joint in joints {
            let words = in_all(self.locale, key(joint.kind), joint.length);
            self.svg.open(" class=\"p-joint\"");
            self.svg.title(&words);
            for (from, to) in &joint.lines {
                draw(&mut self.svg, joint.kind, (*from, *to));
            }
            self.rules.extend(&joint.lines);
            self.svg.close();
            self.items.push(PlanItem { id: None, layer: Layer::Joints, number: None, text: words });
            self.line_kinds.push(LineKind::Joint(joint.kind));
        }
        self.svg.close();
    }

    /// The joints by kind; a stretch that two share has the kind of the nearer.
    fn joints(&self) -> Vec<Joints> {
        let Ok(lineal) = joint_lines(self.plan) else { return Vec::new() };
        let kinds: Vec<Option<JointKind>> = lineal.segments.iter().map(|segment| kind_of(self.plan, segment)).collect();
        KINDS
            .into_iter()
            .filter_map(|kind| {
                let own = lineal.segments.iter().zip(&kinds).filter(|(_, of)| **of == kind);
                let own: Vec<Segment> = own.map(|(segment, _)| *segment).collect();
                let length = own.iter().map(Segment::length).sum();
                (!own.is_empty()).then(|| Joints { kind, lines: self.drawn(&own), length })
            })
            .collect()
    }

    /// Segments on the drawing; those that go on in one line are one, so that dashes run through.
    fn drawn(&self, segments: &[Segment]) -> Vec<(Xy, Xy)> {
        let lines = segments.iter().map(|s| (self.view.to_svg(s.from), self.view.to_svg(s.to)));
        joined(lines.collect())
    }

    /// What the strokes mean.
    pub(super) fn line_key(&self) -> Vec<KeyEntry> {
        let entry = |of: &LineKind| {
            let of = *of;
            KeyEntry {
                words: self.locale.message(
                    match of {
                        LineKind::Score => "pic-key-score-line",
                        LineKind::Joint(kind) => key_of_one(kind),
                    },
                    &[],
                ),
                swatch: Box::new(move |svg, (x, y)| {
                    let (from, to) = ((x - 11.0, y), (x + 11.0, y));
                    match of {
                        LineKind::Score => svg.stroke(&[from, to], "p-score-line", (CEMENT, 0.8), ""),
                        LineKind::Joint(kind) => draw(svg, kind, (from, to)),
                    }
                }),
            }
        };
        self.line_kinds.iter().map(entry).collect()
    }
}

/// A kind of stroke on the drawing.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) enum LineKind {
    Score,
    Joint(Option<JointKind>),
}

fn in_all(locale: Locale, key: &'static str, length: Length) -> String {
    locale.message(key, &[("length", locale.length(length).into())])
}

const fn key(kind: Option<JointKind>) -> &'static str {
    match kind {
        Some(JointKind::SawCut) => "pic-saw-cuts",
        Some(JointKind::Construction) => "pic-construction-joints",
        Some(JointKind::Isolation) => "pic-isolation-joints",
        None => "pic-joints",
    }
}

const fn key_of_one(kind: Option<JointKind>) -> &'static str {
    match kind {
        Some(JointKind::SawCut) => "pic-key-saw-cut",
        Some(JointKind::Construction) => "pic-key-construction-joint",
        Some(JointKind::Isolation) => "pic-key-isolation-joint",
        None => "pic-key-joint",
    }
}

fn draw(svg: &mut Svg, kind: Option<JointKind>, (from, to): (Xy, Xy)) {
    let (dx, dy) = (to.0 - from.0, to.1 - from.1);
    let length = libm::hypot(dx, dy).max(f64::MIN_POSITIVE);
    let (ux, uy) = (dx / length, dy / length);
    // A point so far along it and so far beside it.
    let at = |along: f64, beside: f64| (from.0 + ux * along - uy * beside, from.1 + uy * along + ux * beside);
    match kind {
        Some(JointKind::SawCut) => {
            svg.stroke(&[from, to], "p-joint-saw-cut", (INK, 1.3), " stroke-dasharray=\"12 4\"");
        }
        Some(JointKind::Construction) => {
            svg.stroke(&[from, to], "p-joint-construction", (INK, 2.2), "");
            let count = (length / TICK.1).floor().max(1.0) as u32;
            let step = length / f64::from(count);
            for tick in 0..count {
                let along = step * (f64::from(tick) + 0.5);
                svg.stroke(&[at(along, -TICK.0), at(along, TICK.0)], "p-joint-construction", (INK, 1.2), "");
            }
        }
        Some(JointKind::Isolation) => {
            for side in [-APART, APART] {
                svg.stroke(&[at(0.0, side), at(length, side)], "p-joint-isolation", (INK, 1.1), "");
            }
        }
        None => svg.stroke(&[from, to], "p-joint-any", (INK, 1.2), " stroke-dasharray=\"9 3 2 3\""),
    }
}

/// The kind of the joint that runs through the middle of a segment.
fn kind_of(plan: &Plan, segment: &Segment) -> Option<JointKind> {
    let xy = |p: Point| (p.x.as_meters(), p.y.as_meters());
    let ((x1, y1), (x2, y2)) = (xy(segment.from), xy(segment.to));
    let middle = ((x1 + x2) / 2.0, (y1 + y2) / 2.0);
    let far = |points: &[Point]| {
        points.windows(2).map(|pair| distance(middle, xy(pair[0]), xy(pair[1]))).fold(f64::INFINITY, f64::min)
    };
    let nearest = plan.joints().iter().map(|joint| (joint.kind(), far(joint.points())));
    nearest.min_by(|a, b| a.1.total_cmp(&b.1)).and_then(|(kind, _)| kind)
}

/// From a point to a straight stroke.
pub(super) fn distance((x, y): Xy, (x1, y1): Xy, (x2, y2): Xy) -> f64 {
    let (dx, dy) = (x2 - x1, y2 - y1);
    let square = dx * dx + dy * dy;
    let share = if square > 0.0 { (((x - x1) * dx + (y - y1) * dy) / square).clamp(0.0, 1.0) } else { 0.0 };
    libm::hypot(x - x1 - share * dx, y - y1 - share * dy)
}

/// Straight strokes, with those that touch and go on in one line made one.
pub(super) fn joined(lines: Vec<(Xy, Xy)>) -> Vec<(Xy, Xy)> {
    /// A stroke as its direction, how far its line lies from the corner of the drawing, and from where
    /// to where it runs along it.
    struct Along {
        turn: f64,
        off: f64,
        span: (f64, f64),
    }
    let along = |(a, b): (Xy, Xy)| {
        let mut turn = libm::atan2(b.1 - a.1, b.0 - a.0);
        if !(-SAME_WAY..std::f64::consts::PI - SAME_WAY).contains(&turn) {
            turn -= std::f64::consts::PI * turn.signum();
        }
        let (sin, cos) = libm::sincos(turn);
        let (s, e) = (a.0 * cos + a.1 * sin, b.0 * cos + b.1 * sin);
        Along { turn, off: a.1 * cos - a.0 * sin, span: (s.min(e), s.max(e)) }
    };
    let mut all: Vec<Along> = lines.into_iter().map(along).collect();
    let step = |value: f64, step: f64| (value / step).round();
    let key = |l: &Along| (step(l.turn, SAME_WAY), step(l.off, SAME_LINE), l.span.0);
    all.sort_by(|a, b| key(a).partial_cmp(&key(b)).unwrap_or(std::cmp::Ordering::Equal));
    let mut out: Vec<Along> = Vec::new();
    for next in all {
        match out.last_mut() {
            Some(last)
                if (last.turn - next.turn).abs() < SAME_WAY
                    && (last.off - next.off).abs() < SAME_LINE
                    && next.span.0 <= last.span.1 + SAME_LINE =>
            {
                last.span.1 = last.span.1.max(next.span.1);
            }
            _ => out.push(next),
        }
    }
    let back = |l: &Along| {
        let (sin, cos) = libm::sincos(l.turn);
        let at = |s: f64| (s * cos - l.off * sin, s * sin + l.off * cos);
        (at(l.span.0), at(l.span.1))
    };
    out.iter().map(back).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn strokes_in_one_line_are_one_and_others_stay() {
        let lines = vec![
            ((0.0, 5.0), (10.0, 5.0)),
            ((20.0, 5.0), (10.0, 5.0)),
            // Another row, a gap, and across.
            ((0.0, 9.0), (10.0, 9.0)),
            ((30.0, 5.0), (40.0, 5.0)),
            ((10.0, 0.0), (10.0, 30.0)),
        ];
        let out = joined(lines);
        assert_eq!(out.len(), 4, "{out:?}");
        let near = |a: Xy, b: Xy| (a.0 - b.0).abs() < 1e-9 && (a.1 - b.1).abs() < 1e-9;
        assert!(out.iter().any(|(a, b)| near(*a, (0.0, 5.0)) && near(*b, (20.0, 5.0))), "{out:?}");
    }
}
