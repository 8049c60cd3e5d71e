//! The joints and score lines of a plan, proved to lie on it.

use geo::{Line, MultiPolygon};
use units::AsWritten;

use super::clip::Clip;
use super::limits::{joint_limit, offset, pattern_limit, point_limit, segment_limit};
use super::{JointKind, JointSpec, PlanError, PlanSpec, Point, ScoreSpec, WrittenPoint, Zone, pattern, zones};

/// A joint of the plan.
#[derive(Debug, Clone, PartialEq)]
pub struct Joint {
    kind: Option<JointKind>,
    points: Vec<Point>,
    pub(crate) run: Run,
}

/// A pattern of score lines of the plan.
#[derive(Debug, Clone, PartialEq)]
pub struct Pattern {
    spec: ScoreSpec,
    pub(crate) run: Run,
}

/// Lines, not clipped yet, and the zone that they are limited to.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct Run {
    pub(crate) lines: Vec<Line<f64>>,
    /// Its place among the zones of the plan.
    pub(crate) zone: Option<usize>,
    /// Whether a person put the ends where they are, so that a near miss means a hit.
    pub(crate) taped: bool,
}

impl Joint {
    /// How it was made, where that is known.
    #[must_use]
    pub fn kind(&self) -> Option<JointKind> {
        self.kind
    }

    /// Its points as typed, not clipped to the slab.
    #[must_use]
    pub fn points(&self) -> &[Point] {
        &self.points
    }
}

impl Pattern {
    /// As typed.
    #[must_use]
    pub fn spec(&self) -> &ScoreSpec {
        &self.spec
    }
}

/// Refuses joints and score lines on a plan of areas alone.
pub(super) fn none(spec: &PlanSpec) -> Result<(), PlanError> {
    for (path, given) in [("joints", spec.joints.len()), ("score_lines", spec.score_lines.len())] {
        if given > 0 {
            return Err(PlanError::LinesWithoutShape { path: path.to_owned() });
        }
    }
    Ok(())
}

/// Reads both kinds of line and proves that each has a part on the slab.
pub(super) fn resolve(
    spec: &PlanSpec,
    slab: &MultiPolygon<f64>,
    zones: &[Zone],
) -> Result<(Vec<Joint>, Vec<Pattern>), PlanError> {
    joint_limit(spec.joints.len(), "joints")?;
    pattern_limit(spec.score_lines.len(), "score_lines")?;
    let reading = Reading { slab, zones };
    let joints = spec.joints.iter().enumerate().map(|(i, joint)| reading.joint(joint, &format!("joints[{i}]")));
    let joints: Vec<Joint> = joints.collect::<Result<_, _>>()?;
    let patterns =
        spec.score_lines.iter().enumerate().map(|(i, score)| reading.pattern(score, &format!("score_lines[{i}]")));
    let patterns: Vec<Pattern> = patterns.collect::<Result<_, _>>()?;
    let together = joints.iter().map(|j| &j.run).chain(patterns.iter().map(|p| &p.run));
    segment_limit(together.map(|run| run.lines.len()).sum())?;
    Ok((joints, patterns))
}

struct Reading<'a> {
    slab: &'a MultiPolygon<f64>,
    zones: &'a [Zone],
}

impl Reading<'_> {
    fn joint(&self, spec: &JointSpec, path: &str) -> Result<Joint, PlanError> {
        let points = points(&spec.line, &format!("{path}.line"))?;
        let zone = self.zone(spec.zone.as_deref(), path)?;
        let run = Run { lines: segments(&points), zone, taped: true };
        self.on_slab(&run, path)?;
        Ok(Joint { kind: spec.kind, points, run })
    }

    fn pattern(&self, spec: &ScoreSpec, path: &str) -> Result<Pattern, PlanError> {
        let path = format!("{path}.{}", spec.code());
        let zone = self.zone(spec.zone(), &path)?;
        let scope = self.scope(zone);
        let origin = |typed: &Option<WrittenPoint>| {
            typed.as_ref().map(|typed| point(typed, &format!("{path}.origin"))).transpose()
        };
        let lines = match spec {
            ScoreSpec::Grid(grid) => {
                let left = -grid.turn.as_ref().map_or(0.0, |turn| AsWritten::value(turn).as_right_degrees());
                let spacing = [(&grid.spacing_x, "spacing_x"), (&grid.spacing_y, "spacing_y")];
                pattern::grid(spacing, &path, origin(&grid.origin)?, left.to_radians(), scope)?
            }
            ScoreSpec::Diagonal(diagonal) => {
                let spacing = [(&diagonal.spacing, "spacing"), (&diagonal.spacing, "spacing")];
                let eighth = std::f64::consts::FRAC_PI_4;
                pattern::grid(spacing, &path, origin(&diagonal.origin)?, eighth, scope)?
            }
            ScoreSpec::Border(border) => pattern::along_edges(&border.inset, &path, scope)?,
            ScoreSpec::Lines(free) => {
                let path = format!("{path}.lines");
                if free.lines.is_empty() {
                    return Err(PlanError::TooFew { path, count: 0, least: 1 });
                }
                joint_limit(free.lines.len(), &path)?;
                let each = free.lines.iter().enumerate();
                let each = each.map(|(i, line)| points(line, &format!("{path}[{i}]")).map(|p| segments(&p)));
                each.collect::<Result<Vec<_>, _>>()?.concat()
            }
        };
        let run = Run { lines, zone, taped: matches!(spec, ScoreSpec::Lines(_)) };
        self.on_slab(&run, &path)?;
        Ok(Pattern { spec: spec.clone(), run })
    }

    fn zone(&self, name: Option<&str>, path: &str) -> Result<Option<usize>, PlanError> {
        let Some(name) = name else { return Ok(None) };
        let place = self.zones.iter().position(|zone| zones::folded(&zone.name) == zones::folded(name));
        let known = || self.zones.iter().map(|zone| zone.name.clone()).collect();
        let unknown = || PlanError::UnknownZone { path: format!("{path}.zone"), name: name.to_owned(), known: known() };
        place.map(Some).ok_or_else(unknown)
    }

    fn scope(&self, zone: Option<usize>) -> &MultiPolygon<f64> {
        zone.and_then(|i| self.zones[i].ground.as_ref()).unwrap_or(self.slab)
    }

    fn on_slab(&self, run: &Run, path: &str) -> Result<(), PlanError> {
        let clip = Clip::by(self.scope(run.zone));
        if run.lines.iter().all(|line| clip.line(*line).is_empty()) {
            return Err(PlanError::LineOffSlab { path: path.to_owned() });
        }
        Ok(())
    }
}

fn point(typed: &WrittenPoint, path: &str) -> Result<Point, PlanError> {
    Ok(Point::new(offset(&typed[0], path, "[0]")?, offset(&typed[1], path, "[1]")?))
}

fn points(typed: &[WrittenPoint], path: &str) -> Result<Vec<Point>, PlanError> {
    point_limit(typed.len(), path)?;
    let points: Vec<Point> =
        typed.iter().enumerate().map(|(i, p)| point(p, &format!("{path}[{i}]"))).collect::<Result<_, _>>()?;
    if let Some(i) = points.windows(2).position(|pair| pair[0] == pair[1]) {
        let typed = format!("point {} and point {} in one place", i + 1, i + 2);
        return Err(PlanError::ZeroLength { path: path.to_owned(), typed });
    }
    Ok(points)
}

fn segments(points: &[Point]) -> Vec<Line<f64>> {
    points.windows(2).map(|pair| Line::new(pair[0].coord(), pair[1].coord())).collect()
}
