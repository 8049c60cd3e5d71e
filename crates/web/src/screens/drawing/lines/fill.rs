//! From joints and patterns to the rows that tell them again, and from a proposal to rows.

use form_schema::FormData;
use localization::{Locale, UnitSystem};
use slab_plan::layout::Segment;
use slab_plan::{JointKind, Offset, PlanSpec, ScoreSpec, WrittenPoint};
use units::{Length, LengthUnit, Notation};

use super::super::fill::side_and_angle;
use super::super::way::rows;
use super::read::{BORDER, DIAGONAL, FREE, GRID, JOINT};

/// The rows of a plan's lines.
pub(super) fn fill(spec: &PlanSpec) -> FormData {
    let mut typed = FormData::new();
    for joint in &spec.joints {
        let kind = joint.kind.map_or("", JointKind::code);
        let [from_x, from_y, to_x, to_y, between] = line(&joint.line);
        let zone = joint.zone.clone().unwrap_or_default();
        push(&mut typed, &JOINT, [from_x, from_y, to_x, to_y, kind.to_owned(), zone, between]);
    }
    for pattern in &spec.score_lines {
        let zone = pattern.zone().unwrap_or_default().to_owned();
        match pattern {
            ScoreSpec::Grid(grid) => {
                let (side, angle) = grid.turn.as_ref().map_or_else(Default::default, side_and_angle);
                let [at_x, at_y] = point(grid.origin.as_ref());
                let [x, y] = [&grid.spacing_x, &grid.spacing_y].map(|spacing| spacing.text().to_owned());
                push(&mut typed, &GRID, [x, y, side, angle, at_x, at_y, zone]);
            }
            ScoreSpec::Diagonal(diagonal) => {
                let [at_x, at_y] = point(diagonal.origin.as_ref());
                push(&mut typed, &DIAGONAL, [diagonal.spacing.text().to_owned(), at_x, at_y, zone]);
            }
            ScoreSpec::Border(border) => push(&mut typed, &BORDER, [border.inset.text().to_owned(), zone]),
            ScoreSpec::Lines(free) => {
                for one in &free.lines {
                    let [from_x, from_y, to_x, to_y, between] = line(one);
                    push(&mut typed, &FREE, [from_x, from_y, to_x, to_y, zone.clone(), between]);
                }
            }
        }
    }
    typed
}

fn push<const N: usize>(typed: &mut FormData, names: &[&str; N], texts: [String; N]) {
    for (name, text) in names.iter().zip(texts) {
        typed.push(format!("{name}[]"), text);
    }
}

fn point(at: Option<&WrittenPoint>) -> [String; 2] {
    at.map_or_else(Default::default, |[x, y]| [x.text().to_owned(), y.text().to_owned()])
}

/// The ends of a line, and what lies between them as the diary keeps it.
fn line(points: &[WrittenPoint]) -> [String; 5] {
    let [from_x, from_y] = point(points.first());
    let [to_x, to_y] = point(points.last());
    let between = points.get(1..points.len().saturating_sub(1)).unwrap_or_default();
    let via = if between.is_empty() { String::new() } else { serde_json::to_string(between).unwrap_or_default() };
    [from_x, from_y, to_x, to_y, via]
}

/// The same form with these saw cuts in place of those it had. Joints between pours and joints that
/// let the slab move are there already, so they stay.
pub(super) fn proposed(typed: &FormData, cuts: &[Segment], locale: Locale) -> FormData {
    let stays = [JointKind::Construction, JointKind::Isolation].map(JointKind::code);
    let old: Vec<[String; 7]> = rows(typed, &JOINT)
        .into_iter()
        .filter(|(_, cells)| stays.contains(&cells[4]))
        .map(|(_, cells)| cells.map(str::to_owned))
        .collect();
    let own = |name: &str| JOINT.iter().any(|joint| name.strip_suffix("[]") == Some(joint));
    let kept = typed.iter().filter(|(name, _)| !own(name));
    let mut all: FormData =
        kept.flat_map(|(name, texts)| texts.iter().map(move |text| (name.to_owned(), text.clone()))).collect();
    old.into_iter().for_each(|cells| push(&mut all, &JOINT, cells));
    for cut in cuts {
        let [x, y, to_x, to_y] = [cut.from.x, cut.from.y, cut.to.x, cut.to.y].map(|at| offset(at, locale));
        let kind = JointKind::SawCut.code().to_owned();
        push(&mut all, &JOINT, [x, y, to_x, to_y, kind, String::new(), String::new()]);
    }
    all
}

/// As a tape reads it: sixteenths of an inch, or millimeters. Ends that fall short of a wall by that
/// little are made to meet it.
fn offset(at: Offset, locale: Locale) -> String {
    let size = Length::meters(at.as_meters().abs());
    let sign = if at < Offset::ZERO { "-" } else { "" };
    let shown = match locale.unit_system {
        UnitSystem::Imperial => size.show_feet_inches(16),
        UnitSystem::Metric => size.show(LengthUnit::Meter, 3),
    };
    let nothing = Length::read(&shown).is_ok_and(|read| read == Length::ZERO);
    if nothing { "0".to_owned() } else { format!("{sign}{shown}") }
}
