//! What happened to the slab, as ground.

use units::{Area, Length};

use crate::standing::{Code, IncidentJudged, State, for_map};
use slab_diary::EntryId;
use slab_diary::Slab;
use slab_plan::{Patch, Plan};
use trade_facts::Trade;

/// How far around a bare point an incident is taken to reach: about an arm's length of smear. Our
/// choice, no source; the answer says that it was assumed.
const ASSUMED_REACH: Length = Length::inches(12.0);

/// An incident and the ground it covers.
#[derive(Debug, Clone)]
pub struct Spot {
    /// Its entry.
    pub entry: EntryId,
    /// What happened, by the id in the trade facts.
    pub what: String,
    /// The day it happened.
    pub on: jiff::civil::Date,
    /// Whether it still stands against the stain: released is settled.
    pub state: State,
    /// Why, as the hold point says it.
    pub code: Code,
    /// Its photographs.
    pub photographs: usize,
    /// Nobody noted how far it reaches; a foot around its point was taken.
    pub reach_assumed: bool,
    /// What it covers of each zone; empty when its place is not known.
    pub covers: Vec<(String, Area)>,
    pub(crate) patch: Option<Patch>,
    /// It was noted for whole zones, or for the whole slab.
    pub(crate) zones: Vec<usize>,
}

impl Spot {
    /// Whether it still stands against the stain.
    #[must_use]
    pub fn is_open(&self) -> bool {
        self.state != State::Released
    }

    /// All it covers.
    #[must_use]
    pub fn area(&self) -> Area {
        self.covers.iter().map(|(_, area)| *area).sum()
    }
}

pub(super) fn spots(slab: &Slab<'_>, trade: &Trade, plan: &Plan) -> Vec<Spot> {
    let (_, judged) = for_map(slab, trade);
    judged.iter().map(|judged| spot(slab, plan, judged)).collect()
}

fn spot(slab: &Slab<'_>, plan: &Plan, judged: &IncidentJudged<'_>) -> Spot {
    let entry = judged.seen.entry;
    let drawn = slab.patch_of(entry);
    let at = slab.point_of(entry);
    let noted = judged.seen.body.area.as_ref().map(|area| area.value());
    // A point with an area is a circle of that area.
    let reach = noted.map(|area| Length::meters((area.as_square_meters() / std::f64::consts::PI).sqrt()));
    let reach_assumed = drawn.is_none() && at.is_some() && reach.is_none();
    let around = at.and_then(|at| Patch::circle(at, reach.unwrap_or(ASSUMED_REACH)).ok());
    let patch = drawn.or(around);
    let zones: Vec<usize> = match patch {
        Some(_) => Vec::new(),
        None => (0..slab.zones().len()).filter(|zone| slab.touches(entry, &slab.zones()[*zone])).collect(),
    };
    let covers = match &patch {
        Some(patch) => plan.shares(patch).iter().map(|share| (share.zone.name().to_owned(), share.area)).collect(),
        None => zones
            .iter()
            .filter_map(|zone| {
                let zone = &slab.zones()[*zone];
                Some((zone.name.clone(), zone.area?))
            })
            .collect(),
    };
    Spot {
        entry: entry.id,
        what: judged.seen.body.what.clone(),
        on: entry.happened.date(),
        state: judged.state,
        code: judged.code,
        photographs: entry.photographs.len(),
        reach_assumed,
        covers,
        patch,
        zones,
    }
}
