//! What the diary tells of the concrete until it began to dry: the pour and the cure.

use jiff::Timestamp;
use jiff::civil::Date;
use units::{AsWritten, Fraction, Length};

use super::{Assumption, CannotTell};
use crate::standing::{DryingStart, Judge};
use slab_diary::body::{Cured, Curing, CuringMethod, Pour};
use slab_diary::{EntryBody, EntryId};
use slab_diary::{EntryOf, Slab, Zone};

/// The concrete that is followed.
pub(super) struct Past {
    pub(super) pour: EntryId,
    pub(super) poured: Timestamp,
    pub(super) thickness: Length,
    pub(super) water_cement: Fraction,
    pub(super) drying_from: Timestamp,
    /// The zones of this pour.
    pub(super) zones: Vec<String>,
    pub(super) assumed: Vec<Assumption>,
    pub(super) evidence: Vec<EntryId>,
}

/// The pour and cure of the slab.
pub(super) fn past(slab: &Slab<'_>, judge: &Judge<'_>) -> Result<Past, CannotTell> {
    let missing = if slab.called_existing().is_some() { CannotTell::ExistingFloor } else { CannotTell::NoPour };
    let mut pours: Vec<EntryId> = slab.zones().iter().filter_map(|z| Some(judge.pour(z)?.entry.id)).collect();
    pours.sort();
    pours.dedup();
    // The youngest concrete decides; a pour noted at a place that nobody can find is still a pour.
    let pour =
        slab.all::<Pour>().rfind(|p| pours.contains(&p.entry.id)).or_else(|| slab.last::<Pour>()).ok_or(missing)?;
    let (thickness, water_cement) = concrete(pour)?;
    let of_pour = |zone: &&Zone| judge.pour(zone).is_none_or(|p| p.entry.id == pour.entry.id);
    let zones: Vec<&Zone> = slab.zones().iter().filter(of_pour).collect();
    let mut past = Past {
        pour: pour.entry.id,
        poured: pour.entry.happened.instant(),
        thickness,
        water_cement,
        drying_from: pour.entry.happened.instant(),
        zones: zones.iter().map(|z| z.name.clone()).collect(),
        assumed: Vec::new(),
        evidence: vec![pour.entry.id],
    };
    if pours.len() > 1 {
        past.assumed.push(Assumption::SeveralPours { count: pours.len() as u32, taken: pour.entry.happened.date() });
    }
    if let Some(share) = pour.body.fly_ash.as_ref().map(AsWritten::value).filter(|f| f.as_share() > 0.0) {
        past.assumed.push(Assumption::FlyAshNotCounted { share });
    }
    for zone in zones {
        past.cure(slab, judge, zone);
    }
    Ok(past)
}

fn concrete(pour: EntryOf<'_, Pour>) -> Result<(Length, Fraction), CannotTell> {
    let id = pour.entry.id;
    let thickness = pour.body.thickness.as_ref().map(AsWritten::value).ok_or(CannotTell::NoThickness { pour: id })?;
    if !(0.01..=2.0).contains(&thickness.as_meters()) {
        return Err(CannotTell::ThicknessOutside { pour: id, thickness });
    }
    let ratio = pour.body.water_cement.as_ref().map(AsWritten::value).ok_or(CannotTell::NoWaterCement { pour: id })?;
    if !(0.35..=0.75).contains(&ratio.as_share()) {
        return Err(CannotTell::WaterCementOutside { pour: id, ratio });
    }
    Ok((thickness, ratio))
}

impl Past {
    /// Takes the end of a zone's cure into account: the zone that begins to dry last decides.
    fn cure(&mut self, slab: &Slab<'_>, judge: &Judge<'_>, zone: &Zone) {
        let longest = judge.longest_wet_cure();
        let local = |at: Timestamp| -> Date { at.to_zoned_datetime(slab.time_zone()).date() };
        // A cure noted before this pour was that of other concrete.
        let since = |e: &slab_diary::Entry| e.happened.instant() >= self.poured;
        let (from, entry, assumed) = match judge.drying_since(zone) {
            DryingStart::From(entry) if since(entry) => {
                let assumed = match Curing::of(&entry.body).map(|c| c.method) {
                    Some(CuringMethod::Membrane) => Some(Assumption::MembraneCure),
                    Some(CuringMethod::Unknown) => Some(Assumption::CureMethodUnknown),
                    _ => None,
                };
                (entry.happened.instant(), Some(entry.id), assumed)
            }
            DryingStart::StillWet(entry) if since(entry) => {
                let until = entry.happened.instant() + longest;
                (until, Some(entry.id), Some(Assumption::CureNotEnded { until: local(until) }))
            }
            _ => match slab.all::<Cured>().find(|s| slab.touches(s.entry, zone) && since(s.entry)) {
                Some(cured) => (cured.entry.happened.instant(), Some(cured.entry.id), None),
                None => {
                    let until = self.poured + longest;
                    (until, None, Some(Assumption::CureNotNoted { until: local(until) }))
                }
            },
        };
        self.drying_from = self.drying_from.max(from);
        self.evidence.extend(entry);
        if let Some(assumed) = assumed.filter(|a| !self.assumed.contains(a)) {
            self.assumed.push(assumed);
        }
    }
}
