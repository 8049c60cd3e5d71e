//! Which single leg, mistyped, would explain a walk that does not close.

use units::Length;

use super::walk::{Leg, gap, run};
use super::{Precision, Turn, WalkSpec};

/// How far a leg may stand off the direction of the gap and still be named when no single leg
/// closes the walk, as the sine of the angle: 10 degrees. Common practice, no source.
const NEAR_PARALLEL: f64 = 0.173_648;

/// What the suspected leg would have to be.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Remedy {
    /// This taped length: the leg runs along the gap.
    Length(Length),
    /// This turn before the leg.
    Turn(Turn),
}

/// One leg that alone could explain the gap.
#[derive(Debug, Clone, PartialEq)]
pub struct Suspect {
    /// Number of the leg, from 1; one more than there are legs means the closing turn.
    pub leg: usize,
    /// What was typed for the length or the turn.
    pub typed: String,
    /// What would close the walk best.
    pub remedy: Remedy,
    /// The gap that would remain; `None` when only the turns were looked at.
    pub leaves: Option<Length>,
}

/// All single changes that bring the gap within the limit: lengths of legs along the gap first,
/// then turns taken the other way, least remaining gap first. When there is none, the one leg that
/// comes nearest to the gap's direction, if any comes near.
pub(super) fn find(spec: &WalkSpec, legs: &[Leg], limit: Precision) -> Vec<Suspect> {
    let perimeter: f64 = legs.iter().map(|l| l.length).sum();
    let allowed = perimeter / limit.parts();
    let lengths = lengths(spec, legs);
    let mut found: Vec<Suspect> = lengths.iter().filter(|s| within(s, allowed)).cloned().collect();
    found.extend(turns(spec, legs).into_iter().filter(|s| within(s, allowed)));
    if found.is_empty() {
        let walked = run(legs);
        let (right, up) = gap(&walked);
        let near = NEAR_PARALLEL * libm::hypot(right, up);
        found.extend(lengths.into_iter().filter(|s| within(s, near)).take(1));
    }
    found
}

fn within(suspect: &Suspect, meters: f64) -> bool {
    suspect.leaves.is_some_and(|left| left.as_meters() <= meters)
}

/// For each leg, the length that brings the end of the walk nearest to its start.
fn lengths(spec: &WalkSpec, legs: &[Leg]) -> Vec<Suspect> {
    let walked = run(legs);
    let (right, up) = gap(&walked);
    let mut found: Vec<Suspect> = walked
        .iter()
        .enumerate()
        .filter_map(|(i, leg)| {
            let (leg_right, leg_up) = leg.bearing.right_and_up();
            let along = right * leg_right + up * leg_up;
            let across = right * leg_up - up * leg_right;
            let length = leg.length.as_meters() - along;
            (length > 0.0).then(|| Suspect {
                leg: i + 1,
                typed: spec.legs[i].length.text().to_owned(),
                remedy: Remedy::Length(Length::meters(length)),
                leaves: Some(Length::meters(across.abs())),
            })
        })
        .collect();
    sort(&mut found);
    found
}

/// For each leg after the first, the gap with its turn taken the other way.
fn turns(spec: &WalkSpec, legs: &[Leg]) -> Vec<Suspect> {
    let mut found: Vec<Suspect> = (1..legs.len())
        .filter(|i| legs[*i].turn != legs[*i].turn.flipped())
        .map(|i| {
            let trial: Vec<Leg> = legs
                .iter()
                .enumerate()
                .map(|(j, l)| Leg { turn: if i == j { l.turn.flipped() } else { l.turn }, length: l.length })
                .collect();
            let (right, up) = gap(&run(&trial));
            Suspect {
                leg: i + 1,
                typed: typed_turn(spec, i),
                remedy: Remedy::Turn(legs[i].turn.flipped()),
                leaves: Some(Length::meters(libm::hypot(right, up))),
            }
        })
        .collect();
    sort(&mut found);
    found
}

/// Least remaining gap first, to the hundredth of a millimeter; then in the order walked.
fn sort(suspects: &mut [Suspect]) {
    suspects.sort_by_key(|s| (s.leaves.map(|l| (l.as_meters() * 1e5).round() as u64), s.leg));
}

/// Turns that, taken the other way, would make all turns one full turn.
pub(super) fn flipped_turns(spec: &WalkSpec, sum: f64, limit: f64) -> Vec<Suspect> {
    let last = spec.closing_turn.iter().map(|t| (spec.legs.len(), t));
    spec.legs
        .iter()
        .enumerate()
        .skip(1)
        .filter_map(|(i, leg)| leg.turn.as_ref().map(|t| (i, t)))
        .chain(last)
        .filter(|(_, turn)| {
            let flipped = sum - 2.0 * turn.value().as_right_degrees();
            (flipped.abs() - 360.0).abs() <= limit
        })
        .map(|(i, turn)| Suspect {
            leg: i + 1,
            typed: turn.text().to_owned(),
            remedy: Remedy::Turn(turn.value().flipped()),
            leaves: None,
        })
        .collect()
}

fn typed_turn(spec: &WalkSpec, leg: usize) -> String {
    spec.legs[leg].turn.as_ref().map(|t| t.text().to_owned()).unwrap_or_default()
}
