//! The joints of a plan against the rule.

use std::collections::BTreeMap;

use geo::{Coord, Line};
use units::Length;

use super::corners::{Column, columns, reentrant_corners};
use super::net::Role;
use super::panel::{Finding, FindingCode, Panel};
use super::rule::{JointFact, JointLimits, JointSpacing};
use super::runs::Placed;
use super::sections::{Sections, lined};
use super::{LayoutError, measure};
use crate::clip::distance;
use crate::{FIT_TOLERANCE, Plan, Point, Turn};
use trade_facts::Grade;

/// The sharpest corner of a panel that is let pass, degrees. Grade: common practice, no source.
const SHARPEST: f64 = 60.0;

/// How near to a column's middle, beyond its own size, a joint must pass. Grade: expert judgment.
const COLUMN_ROOM: Length = Length::inches(6.0);

/// The panels between the joints and what speaks against them.
#[derive(Debug, Clone, PartialEq)]
pub struct JointCheck {
    /// The panels.
    pub panels: Vec<Panel>,
    /// What speaks against them; nothing is fine by the rule, which is not to say that nothing cracks.
    pub findings: Vec<Finding>,
    /// The shorter and the longer end of the rule's spacing for the thickness.
    pub spacing: (Length, Length),
}

/// Checks the joints that a plan has. `more_columns` are columns that are no cut-outs; cut-outs that
/// look like columns ([`columns`]) count anyway. A side may be longer than the rule by
/// [`FIT_TOLERANCE`], which no tape is surer of.
///
/// # Errors
/// [`LayoutError::NotDrawn`], [`LayoutError::Rule`] for a thickness or a rule out of range,
/// [`LayoutError::TooMany`] or [`LayoutError::TooFine`].
pub fn check_joints(
    plan: &Plan,
    thickness: Length,
    more_columns: &[Point],
    limits: &JointLimits,
) -> Result<JointCheck, LayoutError> {
    let placed = Placed::of(plan)?;
    Judge::of(plan, thickness, more_columns, limits)?.judged(plan, &placed, &placed.joints)
}

/// Everything that a layout is judged by.
pub(super) struct Judge {
    pub(super) spacing: JointSpacing,
    aspect_max: f64,
    aspect_fact: JointFact,
    pub(super) corners: Vec<Point>,
    pub(super) columns: Vec<Column>,
}

impl Judge {
    pub(super) fn of(
        plan: &Plan,
        thickness: Length,
        more_columns: &[Point],
        limits: &JointLimits,
    ) -> Result<Self, LayoutError> {
        let spacing = limits.spacing(thickness)?;
        let mut all = columns(plan)?;
        for at in more_columns {
            if !plan.contains(*at) && all.iter().all(|c| c.at.distance(*at) > c.reach) {
                return Err(LayoutError::length("column", Length::from(at.x), "columns on the slab"));
            }
            all.push(Column { at: *at, reach: Length::ZERO });
        }
        Ok(Self {
            spacing,
            aspect_max: limits.rule.aspect_max,
            aspect_fact: limits.aspect,
            corners: reentrant_corners(plan)?,
            columns: all,
        })
    }

    /// The panels between these joints, clipped already, and what speaks against them.
    pub(super) fn judged(&self, plan: &Plan, placed: &Placed, joints: &[Line<f64>]) -> Result<JointCheck, LayoutError> {
        let sections = Sections::cut(plan, placed, lined(joints, Role::Joint))?;
        let panels: Vec<Panel> = sections.sections().iter().map(Panel::from).collect();
        let mut findings = Vec::new();
        for (panel, section) in panels.iter().zip(sections.sections()) {
            self.panel(panel, &section.rings()[0], &mut findings);
        }
        self.places(joints, &mut findings);
        findings.extend(stops_short(&sections));
        Ok(JointCheck { panels, findings, spacing: (self.spacing.low, self.spacing.high) })
    }

    fn panel(&self, panel: &Panel, ring: &[Coord<f64>], findings: &mut Vec<Finding>) {
        let at = middle(ring);
        let about = |code, facts: &[&'static str], grade| Finding {
            code,
            panel: Some(panel.id),
            at,
            facts: facts.to_vec(),
            grade,
        };
        let limit = self.spacing.high;
        if panel.long > limit + FIT_TOLERANCE {
            let code = FindingCode::PanelTooLong { side: panel.long, limit };
            findings.push(about(code, &[self.spacing.fact.id], self.spacing.fact.grade));
        }
        if panel.aspect > self.aspect_max * (1.0 + 1e-6) {
            let code = FindingCode::AspectTooLarge { aspect: panel.aspect, limit: self.aspect_max };
            findings.push(about(code, &[self.aspect_fact.id], self.aspect_fact.grade));
        }
        if let Some((angle, corner)) = measure::sharpest(ring).filter(|(angle, _)| *angle < SHARPEST) {
            let code =
                FindingCode::TaperingPanel { angle: Turn::right_degrees(angle), limit: Turn::right_degrees(SHARPEST) };
            findings.push(Finding { at: Point::of(corner), ..about(code, &[], Grade::CommonPractice) });
        }
    }

    fn places(&self, joints: &[Line<f64>], findings: &mut Vec<Finding>) {
        let missed = |at: Point, room: Length| joints.iter().all(|j| distance(at.coord(), *j) > room.as_meters());
        let about = |code, at| Finding { code, panel: None, at, facts: Vec::new(), grade: Grade::CommonPractice };
        let corners = self.corners.iter().filter(|at| missed(**at, FIT_TOLERANCE));
        findings.extend(corners.map(|at| about(FindingCode::CornerWithoutJoint, *at)));
        let columns = self.columns.iter().filter(|c| missed(c.at, c.reach + COLUMN_ROOM));
        findings.extend(columns.map(|c| about(FindingCode::ColumnWithoutJoint, c.at)));
    }
}

/// Ends of joints that meet nothing.
fn stops_short(sections: &Sections) -> Vec<Finding> {
    let net = sections.net();
    let mut met: BTreeMap<usize, usize> = BTreeMap::new();
    for (a, b) in net.pieces.keys() {
        *met.entry(*a).or_default() += 1;
        *met.entry(*b).or_default() += 1;
    }
    met.into_iter()
        .filter(|(_, count)| *count == 1)
        .map(|(place, _)| Finding {
            code: FindingCode::JointStopsShort,
            panel: None,
            at: Point::of(net.places[place]),
            facts: Vec::new(),
            grade: Grade::CommonPractice,
        })
        .collect()
}

fn middle(ring: &[Coord<f64>]) -> Point {
    let count = ring.len().max(1) as f64;
    let sum = ring.iter().fold(Coord { x: 0.0, y: 0.0 }, |sum, c| sum + *c);
    Point::of(sum / count)
}
