//! The slab as its diary tells it, as of a moment.
//!
//! [`fold`] is a pure function of the entries and the moment: it does not matter in which order
//! entries arrived. It keeps references into the diary; judgment is left to `standing`.

mod figures;
mod zones;

use std::collections::{BTreeMap, HashMap};

use crate::body::{Exposure, JobOpened, Plan as PlanBody, SlabAge};
use crate::{Body, Diary, Entry, EntryBody, EntryId, EntryKind, Knowledge};
use slab_plan::{Plan, PlanError};

pub use figures::Figures;
pub(crate) use figures::own_range;
pub use zones::Zone;

/// An entry with its body of a known kind.
#[derive(Debug)]
pub struct EntryOf<'d, T> {
    /// The entry.
    pub entry: &'d Entry,
    /// Its body.
    pub body: &'d T,
}

impl<T> Clone for EntryOf<'_, T> {
    fn clone(&self) -> Self {
        *self
    }
}
impl<T> Copy for EntryOf<'_, T> {}

/// A slab as of a moment.
#[derive(Debug)]
pub struct Slab<'d> {
    knowledge: Knowledge,
    live: Vec<&'d Entry>,
    by_kind: HashMap<EntryKind, Vec<&'d Entry>>,
    corrected: BTreeMap<EntryId, EntryId>,
    plan: Option<(&'d Entry, Result<Plan, PlanError>)>,
    zones: Vec<Zone>,
    /// Where each entry with a place lies, found once: judging asks again and again.
    places: HashMap<EntryId, Vec<usize>>,
}

/// Folds a diary to the slab as known at a moment.
///
/// Of an entry and its corrections the one noted last stands (of two noted in the same instant, the
/// one with the larger id, so that every device agrees).
#[must_use]
pub fn fold(diary: &Diary, knowledge: Knowledge) -> Slab<'_> {
    // Corrections are settled on everything known, before what lies ahead is left out: a test that
    // was moved into the future by a correction must not come back in its old form.
    let known: Vec<&Entry> = diary
        .entries()
        .filter(|e| knowledge.basis == crate::Basis::HappenedBy || e.noted.instant() <= knowledge.at)
        .collect();
    let corrected = corrections(diary, &known);
    let mut live: Vec<&Entry> =
        known.into_iter().filter(|e| !corrected.contains_key(&e.id) && e.happened.instant() <= knowledge.at).collect();
    live.sort_by_key(|e| e.order());
    assemble(knowledge, live, corrected)
}

/// Builds the slab from the entries that stand, in order.
fn assemble<'d>(knowledge: Knowledge, live: Vec<&'d Entry>, corrected: BTreeMap<EntryId, EntryId>) -> Slab<'d> {
    let mut by_kind: HashMap<EntryKind, Vec<&Entry>> = HashMap::new();
    for entry in &live {
        if let Some(kind) = entry.body.kind() {
            by_kind.entry(kind).or_default().push(entry);
        }
    }
    let plan = by_kind.get(&EntryKind::Plan).and_then(|plans| plans.last()).and_then(|entry| match &entry.body {
        Body::Plan(spec) => Some((*entry, Plan::resolve(spec))),
        _ => None,
    });
    let drawn = plan.as_ref().and_then(|(_, plan)| plan.as_ref().ok());
    let zones = zones::zones(drawn, &live);
    let places = live.iter().filter_map(|e| Some((e.id, zones::zones_of(e.place.as_ref()?, drawn, &zones)))).collect();
    Slab { knowledge, live, by_kind, corrected, plan, zones, places }
}

/// Each entry that no longer stands, with the one that stands for it.
fn corrections(diary: &Diary, known: &[&Entry]) -> BTreeMap<EntryId, EntryId> {
    let age = |e: &Entry| (e.noted.instant(), e.id);
    // A correction is younger than what it corrects; a link that is not (a clock set wrong, or a
    // loop) is not followed. So oldest first, each finds the first of its family in one step.
    let mut correcting: Vec<&Entry> = known.iter().copied().filter(|e| e.replaces.is_some()).collect();
    correcting.sort_by_key(|e| age(e));
    let mut first_of: HashMap<EntryId, EntryId> = HashMap::new();
    let mut families: BTreeMap<EntryId, Vec<&Entry>> = BTreeMap::new();
    for entry in correcting {
        let older = entry.replaces.and_then(|id| diary.get(id));
        let first = older
            .filter(|older| age(older) < age(entry) && older.slab == entry.slab)
            .map_or(entry.id, |older| first_of.get(&older.id).copied().unwrap_or(older.id));
        first_of.insert(entry.id, first);
        families.entry(first).or_default().push(entry);
    }
    let mut corrected = BTreeMap::new();
    for (first, members) in families {
        let Some(standing) = members.iter().max_by_key(|e| age(e)) else { continue };
        if standing.id == first {
            continue;
        }
        corrected.insert(first, standing.id);
        for member in &members {
            if member.id != standing.id {
                corrected.insert(member.id, standing.id);
            }
        }
    }
    corrected
}

impl<'d> Slab<'d> {
    /// The moment and basis it was folded for.
    #[must_use]
    pub fn knowledge(&self) -> Knowledge {
        self.knowledge
    }

    /// The slab as it was at an earlier moment, told with what is known now.
    #[must_use]
    pub fn as_it_was(&self, at: jiff::Timestamp) -> Slab<'d> {
        let live = self.live.iter().copied().filter(|e| e.happened.instant() <= at).collect();
        assemble(Knowledge { at, ..self.knowledge }, live, self.corrected.clone())
    }

    /// All entries that stand, in the order they happened.
    #[must_use]
    pub fn entries(&self) -> &[&'d Entry] {
        &self.live
    }

    /// The entry that stands in place of a corrected one.
    #[must_use]
    pub fn corrected_by(&self, id: EntryId) -> Option<EntryId> {
        self.corrected.get(&id).copied()
    }

    /// All entries of a kind that stand, in the order they happened.
    pub fn all<T: EntryBody + 'd>(&self) -> impl DoubleEndedIterator<Item = EntryOf<'d, T>> + '_ {
        self.by_kind
            .get(&T::SCHEMA.kind)
            .map_or(&[][..], Vec::as_slice)
            .iter()
            .filter_map(|entry| Some(EntryOf { entry, body: T::of(&entry.body)? }))
    }

    /// All entries of these kinds that stand, kind by kind.
    pub fn of_kinds<'s>(&'s self, kinds: &'s [EntryKind]) -> impl Iterator<Item = &'d Entry> + 's {
        kinds.iter().flat_map(|kind| self.by_kind.get(kind).map_or(&[][..], Vec::as_slice)).copied()
    }

    /// The last entry of a kind.
    #[must_use]
    pub fn last<T: EntryBody + 'd>(&self) -> Option<EntryOf<'d, T>> {
        self.all::<T>().next_back()
    }

    /// The job.
    #[must_use]
    pub fn job(&self) -> Option<EntryOf<'d, JobOpened>> {
        self.last::<JobOpened>()
    }

    /// What the last job entry that speaks of it says: a later entry that leaves it out changes nothing.
    fn told<T>(&self, of: impl Fn(&'d JobOpened) -> Option<T>) -> Option<(T, EntryId)> {
        self.all::<JobOpened>().rev().find_map(|job| Some((of(job.body)?, job.entry.id)))
    }

    /// Indoors or out.
    #[must_use]
    pub fn exposure(&self) -> Exposure {
        self.told(|job| job.exposure).map_or(Exposure::Interior, |(exposure, _)| exposure)
    }

    /// The entry that calls this an old floor, when one does.
    #[must_use]
    pub fn called_existing(&self) -> Option<EntryId> {
        self.told(|job| job.age).filter(|(age, _)| *age == SlabAge::Existing).map(|(_, entry)| entry)
    }

    /// How many faces can dry, when the job says it.
    #[must_use]
    pub fn drying_sides(&self) -> Option<u8> {
        self.told(|job| job.drying_sides).map(|(sides, _)| sides)
    }

    /// The zone of local times on this slab: the job's, or that of its first entry, or UTC.
    #[must_use]
    pub fn time_zone(&self) -> jiff::tz::TimeZone {
        self.told(|job| job.time_zone.as_deref().and_then(|name| jiff::tz::TimeZone::get(name).ok()))
            .map(|(zone, _)| zone)
            .or_else(|| self.live.first().map(|e| e.happened.zone().clone()))
            .unwrap_or(jiff::tz::TimeZone::UTC)
    }

    /// The plan, when one was drawn and holds together.
    #[must_use]
    pub fn plan(&self) -> Option<&Plan> {
        self.plan.as_ref().and_then(|(_, plan)| plan.as_ref().ok())
    }

    /// The entry of the plan that stands, and what is wrong with it if something is.
    #[must_use]
    pub fn plan_entry(&self) -> Option<(EntryOf<'d, PlanBody>, Option<&PlanError>)> {
        let (entry, plan) = self.plan.as_ref()?;
        Some((EntryOf { entry, body: PlanBody::of(&entry.body)? }, plan.as_ref().err()))
    }

    /// The zones, each judged on its own: those of the plan, or those named in the diary, or the
    /// one whole slab.
    #[must_use]
    pub fn zones(&self) -> &[Zone] {
        &self.zones
    }

    /// Area of the whole slab, when the plan tells it.
    #[must_use]
    pub fn area(&self) -> Option<units::Area> {
        self.plan().map(Plan::area)
    }
}
