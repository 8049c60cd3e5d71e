//! The question put to the forecast, gathered from the diary.

use jiff::Timestamp;
use jiff::civil::Date;
use jiff::tz::TimeZone;
use science::moisture::{Ambient, Concrete, DryingSlab, Sides};
use units::{Duration, Fraction, Length};

use super::past::past;
use super::{Assumption, CannotTell, LeftOut, Limit, SlabReading};
use crate::standing::{Judge, between};
use slab_diary::EntryId;
use slab_diary::body::Rinsed;
use slab_diary::{Figures, Slab};
use trade_facts::Trade;

/// Days looked at from the pour on: nobody waits three years for a sealer.
const HORIZON_DAYS: f64 = 1095.0;
/// Days looked at from now on, for a slab that is older.
const AHEAD_DAYS: f64 = 365.0;

/// What is known of a slab's drying, and what was taken for granted.
#[derive(Debug, Clone, PartialEq)]
pub struct DryingQuestion {
    /// The moment asked about.
    pub at: Timestamp,
    /// The zone of the slab's local days.
    pub zone: TimeZone,
    /// The pour that is followed.
    pub pour: EntryId,
    /// When it was placed.
    pub poured: Timestamp,
    /// Thickness, 10 mm to 2 m.
    pub thickness: Length,
    /// Water to cement by mass, 0.35 to 0.75.
    pub water_cement: Fraction,
    /// The faces that dry.
    pub sides: Sides,
    /// When it began to dry: the end of the wet cure.
    pub drying_from: Timestamp,
    /// The air over it, since placing.
    pub air: Ambient,
    /// The readings that are weighed, in the order they were taken.
    pub readings: Vec<SlabReading>,
    /// The readings that are not.
    pub left_out: Vec<LeftOut>,
    /// The limits of the chosen sealers, the one reached first in front.
    pub limits: Vec<Limit>,
    /// What was taken for granted.
    pub assumptions: Vec<Assumption>,
    /// The entries it rests on, each once.
    pub evidence: Vec<EntryId>,
    /// How well the described slab is known to dry; made from the fields above.
    concrete: Concrete,
}

/// Gathers the question from a folded slab: only entries known at its moment enter, in any order of
/// arrival.
///
/// The whole slab is followed as one. Where zones were poured at different times, the youngest pour
/// is followed and readings of the others are left out.
///
/// # Errors
/// [`CannotTell`] naming what is missing: a pour, its thickness, its water-cement ratio, or outdoors
/// the humidity of the air.
pub fn question(slab: &Slab<'_>, trade: &Trade) -> Result<DryingQuestion, CannotTell> {
    let figures = Figures::new(trade, slab);
    let judge = Judge::new(slab, &figures);
    let past = past(slab, &judge)?;
    let (at, zone) = (slab.knowledge().at, slab.time_zone());
    let mut assumptions = past.assumed.clone();
    let sides = match slab.drying_sides() {
        Some(2) => Sides::Two,
        Some(_) => Sides::One,
        None => {
            assumptions.push(Assumption::SidesNotNoted);
            Sides::One
        }
    };
    let concrete = Concrete::default_prior(past.water_cement, past.thickness, sides)
        .expect("thickness and ratio were checked against the same ranges");
    let air = super::air::air(slab, past.poured, horizon(past.poured, at))?;
    assumptions.extend(air.assumed);
    let (readings, left_out) = super::readings::readings(slab, &past, figures.value("humidity-equilibrate"));
    let mut read_in: Vec<&String> = readings.iter().flat_map(|r| &r.zones).collect();
    read_in.sort();
    read_in.dedup();
    if read_in.len() > 1 {
        assumptions.push(Assumption::ZonesAsOneSlab { zones: read_in.len() as u32 });
    }
    let (limits, no_sealer, sealers) = super::limits::limits(slab, &figures, &judge);
    assumptions.extend(no_sealer);
    let rinsed = slab.last::<Rinsed>().filter(|r| r.entry.happened.instant() >= past.drying_from);
    assumptions.extend(rinsed.map(|r| Assumption::RinseNotCounted { date: r.entry.happened.date() }));
    let read = readings.iter().map(|r| r.entry);
    let mut evidence: Vec<EntryId> = Vec::new();
    let mut seen = std::collections::HashSet::new();
    evidence.extend(
        past.evidence.iter().copied().chain(sealers).chain(read).chain(air.evidence).filter(|id| seen.insert(*id)),
    );
    Ok(DryingQuestion {
        at,
        zone,
        pour: past.pour,
        poured: past.poured,
        thickness: past.thickness,
        water_cement: past.water_cement,
        sides,
        drying_from: past.drying_from,
        air: air.ambient,
        readings,
        left_out,
        limits,
        assumptions,
        evidence,
        concrete,
    })
}

fn horizon(poured: Timestamp, at: Timestamp) -> Duration {
    Duration::days((between(poured, at).as_days() + AHEAD_DAYS).clamp(HORIZON_DAYS, 36_500.0))
}

impl DryingQuestion {
    /// The slab as it is described, for `science`.
    #[must_use]
    pub fn slab(&self) -> DryingSlab {
        let mut slab = DryingSlab::new(self.thickness, self.sides, self.concrete, self.air.clone());
        slab.wet_cure = between(self.poured, self.drying_from);
        slab
    }

    /// How long since placing is looked at: three years, and never less than a year from now.
    #[must_use]
    pub fn horizon(&self) -> Duration {
        horizon(self.poured, self.at)
    }

    /// The local day of a time since placing.
    #[must_use]
    pub fn date(&self, day: Duration) -> Date {
        let at = self.poured + jiff::SignedDuration::from_secs(day.as_seconds() as i64);
        at.to_zoned_datetime(self.zone.clone()).date()
    }
}
