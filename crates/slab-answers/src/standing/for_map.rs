//! What the map of the slab takes over from the standing: the same drops count, the same incidents are
//! settled.

use units::Duration;

use super::drops::Drink;
use super::{Code, Judge, State};
use slab_diary::EntryId;
use slab_diary::body::Incident;
use slab_diary::{EntryOf, Figures, Slab};
use slab_plan::Point;
use trade_facts::{Thirst, Trade};

/// One zone as it was tried.
pub(crate) struct ZoneTried {
    pub(crate) drops: Vec<DropTried>,
    /// The blade or the rag found a film.
    pub(crate) film: bool,
    /// Water stands at every drop, and the drops are as many as the zone needs.
    pub(crate) stands: bool,
    /// The finish often needs one more coat.
    pub(crate) dense: bool,
    pub(crate) finish: Option<String>,
}

/// A drop that counts.
pub(crate) struct DropTried {
    pub(crate) entry: EntryId,
    /// Where; none when only its zone is noted.
    pub(crate) at: Option<Point>,
    pub(crate) soaked: bool,
    /// Time to soak in, or how long it still stood.
    pub(crate) time: Duration,
}

/// An incident with what the standing says of it.
pub(crate) struct IncidentJudged<'d> {
    pub(crate) seen: EntryOf<'d, Incident>,
    pub(crate) state: State,
    pub(crate) code: Code,
}

/// The zones as they were tried, in order, and all incidents.
pub(crate) fn for_map<'d>(slab: &Slab<'d>, trade: &Trade) -> (Vec<ZoneTried>, Vec<IncidentJudged<'d>>) {
    let figures = Figures::new(trade, slab);
    let judge = Judge::new(slab, &figures);
    let stands: Duration = figures.value("drop-stands");
    let zones = slab.zones().iter().map(|zone| {
        let tried = judge.tried(zone);
        let drops: Vec<DropTried> = tried
            .surface
            .iter()
            .map(|drop| {
                let stood = drop.seen.body.still_stood_after.as_ref().map(units::AsWritten::value);
                // A bead stands as long as anybody watches: at least as long as counts as standing.
                let time = drop.time.or(stood).unwrap_or(stands);
                let entry = drop.seen.entry;
                DropTried { entry: entry.id, at: slab.point_of(entry), soaked: drop.time.is_some(), time }
            })
            .collect();
        let all_stand = !tried.surface.is_empty() && tried.surface.iter().all(|drop| drop.drink >= Drink::Stands);
        let finish = judge.finish(zone).map(|seen| seen.body.finish.clone());
        let record = finish.as_deref().and_then(|finish| trade.finish(finish));
        ZoneTried {
            film: tried.film(),
            stands: all_stand && tried.surface.len() as u32 >= judge.drops_needed(zone),
            dense: record.is_some_and(|finish| matches!(finish.absorbency, Thirst::Low | Thirst::VeryLow)),
            finish,
            drops,
        }
    });
    let zones = zones.collect();
    let incidents = slab.all::<Incident>().map(|seen| {
        let finding = judge.incident(seen);
        IncidentJudged { seen, state: finding.state, code: finding.reasons[0].code }
    });
    (zones, incidents.collect())
}
