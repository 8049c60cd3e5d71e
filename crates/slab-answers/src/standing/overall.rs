//! The overall answer: the worst hold point that is still asked, with the one thing to do now.

use slab_diary::Zone;
use units::Area;

use super::{Action, HoldPoint, HoldPointId, Next, Stage, State};

/// The overall answer.
#[derive(Debug, Clone, PartialEq)]
pub struct Overall {
    /// The worst state of all hold points that are asked, and of what the sealer still waits for.
    pub state: State,
    /// The hold point that the answer names; none when all are released.
    pub hold_point: Option<HoldPointId>,
    /// The next thing to do.
    pub next: Option<Next>,
    /// The hold point that it moves; none for the work on a sealed floor.
    pub next_for: Option<HoldPointId>,
    /// How many hold points are not released.
    pub open: usize,
    /// How many are asked.
    pub asked: usize,
    /// Those that stand by a person's word.
    pub by_word: Vec<HoldPointId>,
    /// Those that go by figures which this slab has set for itself.
    pub own_figures: Vec<HoldPointId>,
    /// The zones that the answer speaks of, with their areas where the plan tells them: those where the named hold
    /// point is in its worst state, or those that are ready.
    pub zones: Vec<(String, Option<Area>)>,
    /// How far the zones are, those of one stage together, in the order of the job. One line where nothing is
    /// stained yet.
    pub stages: Vec<(Stage, Vec<String>)>,
}

impl Overall {
    /// Stain lies on every zone.
    #[must_use]
    pub fn stained(&self) -> bool {
        self.stages.iter().all(|(stage, _)| stage.is_stained())
    }

    /// Sealer lies on every zone.
    #[must_use]
    pub fn sealed(&self) -> bool {
        self.stages.iter().all(|(stage, _)| stage.is_sealed())
    }
}

/// What a sealed floor still waits for.
fn after_sealer(stage: Stage) -> State {
    match stage {
        Stage::Seal { .. } => State::Unproven,
        Stage::Cure { .. } => State::Held,
        _ => State::Released,
    }
}

/// Names the worst hold point, and among the open ones the first useful work that can start now: work before
/// waiting, what changes the surface only once it is known to be needed, and the reading of the hour last.
pub(super) fn overall(
    hold_points: &[HoldPoint],
    stages: Vec<(Stage, Vec<String>)>,
    zones: &[Zone],
    seal: impl Fn(Stage, &[String]) -> Option<Next>,
) -> Overall {
    let asked: Vec<&HoldPoint> = hold_points.iter().filter(|h| h.asked).collect();
    let sealer = stages.iter().map(|(stage, _)| after_sealer(*stage)).max().unwrap_or(State::Released);
    let worst = asked.iter().map(|h| h.state).max().unwrap_or(State::Released);
    let open: Vec<&HoldPoint> = asked.iter().copied().filter(|h| h.state != State::Released).collect();
    let first = open
        .iter()
        .filter_map(|h| h.next.as_ref().map(|next| (*h, next)))
        .min_by_key(|(h, next)| (rank(h, next), std::cmp::Reverse(h.state)));
    let to_seal = || stages.iter().find_map(|(stage, zones)| seal(*stage, zones));
    let (next, next_for) = match first {
        Some((h, next)) => (Some(next.clone()), Some(h.id)),
        None => (to_seal(), None),
    };
    // Of several equally bad ones the answer names the one that the next work moves.
    let named = open.iter().filter(|h| h.state == worst);
    let hold_point = named.clone().find(|h| Some(h.id) == next_for).or_else(|| named.clone().next()).map(|h| h.id);
    let spoken_of: Vec<&String> = match hold_point.and_then(|id| open.iter().find(|h| h.id == id)) {
        Some(h) => h.zones.iter().filter(|(_, state)| *state == h.state).map(|(zone, _)| zone).collect(),
        None => {
            let first = stages.iter().find(|(stage, _)| !stage.is_stained()).or_else(|| stages.first());
            first.iter().flat_map(|(_, zones)| zones).collect()
        }
    };
    let spoken_of = zones.iter().filter(|zone| spoken_of.contains(&&zone.name));
    let spoken_of = spoken_of.map(|zone| (zone.name.clone(), zone.area)).collect();
    Overall {
        zones: spoken_of,
        state: worst.max(sealer),
        hold_point,
        next,
        next_for,
        open: open.len(),
        asked: asked.len(),
        own_figures: asked.iter().filter(|h| !h.own_limits.is_empty()).map(|h| h.id).collect(),
        by_word: asked.iter().filter(|h| h.by_word).map(|h| h.id).collect(),
        stages,
    }
}

/// What comes first: smaller is sooner.
fn rank(point: &HoldPoint, next: &Next) -> u8 {
    if next.minutes == 0 {
        return 4;
    }
    match next.action {
        // A reading counts for hours and a last check for the day: they come when the rest is done.
        Action::ReadAir | Action::CheckSiteAgain => 3,
        // What opens the surface undoes the tests on it: only when it is known to be needed.
        action if action.changes_surface() && point.state != State::Held => 2,
        // Drying takes its time by itself.
        Action::DryAndMeasureAgain => 1,
        _ => 0,
    }
}
