//! Which single leg, mistyped, would explain a walk that does not close.

use units::{AsWritten, Length};

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
    /// This turn, since what was typed is the angle inside the corner: 135° inside is 45° turned.
    Inside(Turn),
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
/// then turns taken the other way or typed as the angle inside the corner, least remaining gap first. When there is
/// none, all turns typed as inside angles, if that closes the walk; else the one leg that comes nearest to the gap's
/// direction, if any comes near.
pub(super) fn find(spec: &WalkSpec, legs: &[Leg], limit: Precision) -> Vec<Suspect> {
    let perimeter: f64 = legs.iter().map(|l| l.length).sum();
    let allowed = perimeter / limit.parts();
    let lengths = lengths(spec, legs);
    let mut found: Vec<Suspect> = lengths.iter().filter(|s| within(s, allowed)).cloned().collect();
    found.extend(turns(spec, legs).into_iter().filter(|s| within(s, allowed)));
    if found.is_empty() {
        found.extend(all_inside(spec, legs).into_iter().filter(|s| within(s, allowed)));
    }
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

/// Within this many degrees of square the angle inside and the turn are the same to a tape. Common practice, no
/// source.
const SQUARE_WITHIN: f64 = 0.5;

/// The turn at a corner whose inside angle was typed; nothing where both are the same, or it is no corner.
fn turned(inside: Turn) -> Option<Turn> {
    let typed = inside.as_right_degrees();
    let corner = typed.abs() > SQUARE_WITHIN && typed.abs() < 180.0 - SQUARE_WITHIN;
    (corner && (typed.abs() - 90.0).abs() > SQUARE_WITHIN)
        .then(|| Turn::right_degrees((180.0 - typed.abs()).copysign(typed)))
}

/// The gap with other turns before some legs.
fn left_with(legs: &[Leg], turn: impl Fn(usize) -> Option<Turn>) -> Length {
    let trial: Vec<Leg> =
        legs.iter().enumerate().map(|(j, l)| Leg { turn: turn(j).unwrap_or(l.turn), length: l.length }).collect();
    let (right, up) = gap(&run(&trial));
    Length::meters(libm::hypot(right, up))
}

/// For each leg after the first, the gap with its turn taken the other way, and with its angle taken as the one
/// inside the corner.
fn turns(spec: &WalkSpec, legs: &[Leg]) -> Vec<Suspect> {
    let suspect = |i: usize, turn: Turn, remedy: Remedy| Suspect {
        leg: i + 1,
        typed: typed_turn(spec, i),
        remedy,
        leaves: Some(left_with(legs, |j| (j == i).then_some(turn))),
    };
    let mut found: Vec<Suspect> = (1..legs.len())
        .flat_map(|i| {
            let flipped = Some(legs[i].turn.flipped()).filter(|flipped| *flipped != legs[i].turn);
            let inside = turned(legs[i].turn);
            flipped
                .map(|turn| suspect(i, turn, Remedy::Turn(turn)))
                .into_iter()
                .chain(inside.map(|turn| suspect(i, turn, Remedy::Inside(turn))))
        })
        .collect();
    sort(&mut found);
    found
}

/// Every turn that is not square taken as the angle inside its corner, all at once.
fn all_inside(spec: &WalkSpec, legs: &[Leg]) -> Vec<Suspect> {
    let leaves = left_with(legs, |j| if j == 0 { None } else { turned(legs[j].turn) });
    (1..legs.len())
        .filter_map(|i| {
            let remedy = Remedy::Inside(turned(legs[i].turn)?);
            Some(Suspect { leg: i + 1, typed: typed_turn(spec, i), remedy, leaves: Some(leaves) })
        })
        .collect()
}

/// Least remaining gap first, to the hundredth of a millimeter; then in the order walked.
fn sort(suspects: &mut [Suspect]) {
    suspects.sort_by_key(|s| (s.leaves.map(|l| (l.as_meters() * 1e5).round() as u64), s.leg));
}

/// Turns that, taken the other way or as the angle inside the corner, would make all turns one full turn; and all of
/// them as inside angles, where that does.
pub(super) fn suspected_turns(spec: &WalkSpec, sum: f64, limit: f64) -> Vec<Suspect> {
    let last = spec.closing_turn.iter().map(|t| (spec.legs.len(), t));
    let legs = spec.legs.iter().enumerate().skip(1).filter_map(|(i, leg)| leg.turn.as_ref().map(|t| (i, t)));
    let typed: Vec<(usize, &AsWritten<Turn>)> = legs.chain(last).collect();
    let full = |sum: f64| (sum.abs() - 360.0).abs() <= limit;
    let suspect = |(i, turn): (usize, &AsWritten<Turn>), remedy| Suspect {
        leg: i + 1,
        typed: turn.text().to_owned(),
        remedy,
        leaves: None,
    };
    let change = |turn: Turn, to: Turn| to.as_right_degrees() - turn.as_right_degrees();
    let mut found = Vec::new();
    for (i, turn) in &typed {
        let flipped = turn.value().flipped();
        if full(sum + change(turn.value(), flipped)) {
            found.push(suspect((*i, turn), Remedy::Turn(flipped)));
        }
        if let Some(inside) = turned(turn.value()).filter(|inside| full(sum + change(turn.value(), *inside))) {
            found.push(suspect((*i, turn), Remedy::Inside(inside)));
        }
    }
    let inside: Vec<(usize, &AsWritten<Turn>, Turn)> =
        typed.iter().filter_map(|(i, turn)| Some((*i, *turn, turned(turn.value())?))).collect();
    let all: f64 = inside.iter().map(|(_, turn, to)| change(turn.value(), *to)).sum();
    // All together are the likelier slip: who reads one angle from inside reads them all so.
    if inside.len() > 1 && full(sum + all) {
        found.retain(|s| !matches!(s.remedy, Remedy::Inside(_)));
        found.extend(inside.into_iter().map(|(i, turn, to)| suspect((i, turn), Remedy::Inside(to))));
    }
    found
}

fn typed_turn(spec: &WalkSpec, leg: usize) -> String {
    spec.legs[leg].turn.as_ref().map(|t| t.text().to_owned()).unwrap_or_default()
}
