//! What would make this slab ready: the deeds that could release everything that is still asked, each with its
//! work, its waiting and what follows it, in an order in which none undoes the one before.
//!
//! It takes for granted that every test passes; one that fails brings deeds of its own, which the next answer tells.

use jiff::civil::DateTime;

use crate::standing::{Action, HoldPointId, Next, Standing, State, Value, deed};
use slab_diary::Slab;
use trade_facts::Trade;

/// One deed on the way.
#[derive(Debug, Clone, PartialEq)]
pub struct Deed {
    /// The hold points that it is for.
    pub points: Vec<HoldPointId>,
    /// What, where and how long.
    pub next: Next,
}

/// The way to ready.
#[derive(Debug, Clone, PartialEq)]
pub struct ToReady {
    /// The deeds, in order; empty when everything that is asked is released.
    pub deeds: Vec<Deed>,
    /// Minutes of work in all.
    pub minutes: u32,
    /// Hours of the longest wait: waits of separate hold points run side by side.
    pub wait_hours: u32,
    /// Not before this, by the slab's clock, if every test passes: the waits, the work in one go, and the days that
    /// the rule of age still asks for.
    pub earliest: DateTime,
    /// Open hold points that no deed of ours releases.
    pub unknown: Vec<HoldPointId>,
}

/// A chain of deeds longer than this goes in a circle.
const LONGEST_CHAIN: usize = 8;

/// The deeds that could make a slab ready.
#[must_use]
pub fn to_ready(slab: &Slab<'_>, trade: &Trade, standing: &Standing) -> ToReady {
    let open = standing.hold_points.iter().filter(|h| h.asked && h.state != State::Released);
    let mut deeds: Vec<Deed> = Vec::new();
    let mut unknown = Vec::new();
    let (mut wait_hours, mut ready) = (0, None);
    for point in open {
        if point.deeds.is_empty() {
            unknown.push(point.id);
        }
        ready = ready.max(rule_of_age(point.id, &point.why));
        for first in &point.deeds {
            let chain = chain(slab, trade, first);
            wait_hours = wait_hours.max(chain.iter().map(|next| next.wait_hours).sum());
            for next in chain {
                add(&mut deeds, point.id, next);
            }
        }
    }
    if let (Some(next), None) = (&standing.overall.next, standing.overall.next_for) {
        deeds.push(Deed { points: Vec::new(), next: next.clone() });
    }
    deeds.sort_by_key(rank);
    let minutes = deeds.iter().map(|deed| deed.next.minutes).sum();
    let now = slab.knowledge().at.to_zoned_datetime(slab.time_zone()).datetime();
    let worked = now.saturating_add(jiff::SignedDuration::from_mins(i64::from(minutes) + 60 * i64::from(wait_hours)));
    let earliest = ready.map_or(worked, |day: jiff::civil::Date| worked.max(day.at(0, 0, 0, 0)));
    ToReady { deeds, minutes, wait_hours, earliest, unknown }
}

/// A deed with what the trade says must follow it.
fn chain(slab: &Slab<'_>, trade: &Trade, first: &Next) -> Vec<Next> {
    let mut chain = vec![first.clone()];
    let mut at = 0;
    while at < chain.len() && chain.len() < LONGEST_CHAIN {
        let zones = chain[at].zones.clone();
        let follow = trade.action(chain[at].action.name()).map_or(&[][..], |record| &record.then);
        for action in follow.iter().filter_map(|id| Action::named(id)) {
            if chain.iter().all(|known| known.action != action) {
                let mut next = deed(slab, trade, action, &zones);
                // What follows is about the same spot.
                let spot = chain[at].values.iter().filter(|(name, _)| ["place", "what", "date"].contains(name));
                next.values.extend(spot.cloned());
                chain.push(next);
            }
        }
        at += 1;
    }
    chain
}

/// The day on which the rule of age is met, where it is what holds.
fn rule_of_age(id: HoldPointId, why: &[crate::standing::Reason]) -> Option<jiff::civil::Date> {
    let days = why.iter().filter(|_| id == HoldPointId::Age).flat_map(|reason| &reason.values);
    let days = days.filter_map(|(name, value)| match value {
        Value::Date(day) if *name == "ready" => Some(*day),
        _ => None,
    });
    days.max()
}

/// The same deed for two hold points is done once, for the zones of both; no zones mean the whole slab.
fn add(deeds: &mut Vec<Deed>, point: HoldPointId, next: Next) {
    // Two spots are two deeds; the same test for two hold points or zones is one.
    let spot = |next: &Next| {
        next.values.iter().find(|(name, _)| *name == "place" || *name == "what").map(|(_, value)| value.clone())
    };
    match deeds.iter_mut().find(|deed| deed.next.action == next.action && spot(&deed.next) == spot(&next)) {
        Some(known) => {
            if !known.points.contains(&point) {
                known.points.push(point);
            }
            if next.zones.is_empty() || known.next.zones.is_empty() {
                known.next.zones.clear();
            } else {
                for zone in next.zones {
                    if !known.next.zones.contains(&zone) {
                        known.next.zones.push(zone);
                    }
                }
            }
            known.next.minutes = known.next.minutes.max(next.minutes);
        }
        None => deeds.push(Deed { points: vec![point], next }),
    }
}

/// What is done first: what needs no look at the surface, then what changes it, then tests on it, then what waits
/// for a panel, then the day itself.
fn rank(deed: &Deed) -> u8 {
    match deed.next.action {
        Action::WaitDwell => 0,
        Action::LayCoat => 1,
        Action::NotePour | Action::ChooseSealer | Action::NotePanel | Action::EndWetCure | Action::AskSealerMaker => 0,
        Action::MakePanel => 1,
        action if action.changes_surface() => 2,
        Action::TreatAndRetest | Action::NeutralizeAndRinse | Action::RepairOrAccept => 2,
        Action::GetApproval => 5,
        Action::StainPanels | Action::SealPanelAndShow | Action::TryThisConcrete => 4,
        Action::SetUpSite | Action::CheckSiteAgain => 6,
        Action::ReadAir | Action::WaitForAir => 7,
        Action::LaySealerCoat | Action::KeepOff => 8,
        _ => 3,
    }
}
