//! The overall answer: the worst hold point, with the one thing to do now.

use super::{HoldPoint, HoldPointId, Next, State};

/// The overall answer.
#[derive(Debug, Clone, PartialEq)]
pub struct Overall {
    /// The worst state of all hold points.
    pub state: State,
    /// The hold point that the answer names; none when all are released.
    pub hold_point: Option<HoldPointId>,
    /// The next thing to do.
    pub next: Option<Next>,
    /// How many hold points are not released.
    pub open: usize,
    /// Stain was laid: the question is the sealer now, not the stain.
    pub stained: bool,
}

/// Names the worst hold point; of several equally bad ones the first that work can move today.
pub(super) fn overall(hold_points: &[HoldPoint], stained: bool) -> Overall {
    let state = hold_points.iter().map(|h| h.state).max().unwrap_or(State::Unproven);
    let open = hold_points.iter().filter(|h| h.state != State::Released).count();
    if open == 0 {
        return Overall { state, hold_point: None, next: None, open, stained };
    }
    let worst = || hold_points.iter().filter(|h| h.state == state);
    let named = worst().find(|h| h.next.is_some_and(|n| n.minutes > 0)).or_else(|| worst().next());
    Overall { state, hold_point: named.map(|h| h.id), next: named.and_then(|h| h.next), open, stained }
}
