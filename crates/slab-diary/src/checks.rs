//! What is wrong with entries before they are added: dates, places and names that cannot be.
//!
//! The diary itself takes whatever was written on another device; these checks are for the moment
//! of writing, when the person is there to mend it.

use jiff::Timestamp;

use super::body::{Body, PanelMade, Pour};
use super::{Diary, Entry, EntryId, Knowledge};
use crate::{Slab, fold};
use slab_plan::{Plan, Point};
use trade_facts::Trade;

/// What kind of mistake it is.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum ComplaintKind {
    /// Dated before the concrete was there.
    BeforePour,
    /// Dated after the moment of writing.
    InFuture,
    /// Names an entry, panel or zone that is not there.
    Unknown,
    /// Names a trade term that is not one.
    UnknownTerm,
    /// Lies off the plan.
    OffPlan,
    /// The plan does not hold together.
    BadPlan,
    /// Says too little or contradicts itself.
    Incomplete,
    /// A number outside what can be.
    OutOfRange,
}

/// One mistake: which entry, which field, what was there, what would be accepted.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Complaint {
    /// The entry.
    pub entry: EntryId,
    /// Its kind.
    pub kind_of_entry: String,
    /// The field.
    pub field: &'static str,
    /// What was there, as text.
    pub value: String,
    /// What would be accepted.
    pub accepted: String,
    /// What kind of mistake it is.
    pub kind: ComplaintKind,
}

impl std::fmt::Display for Complaint {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        let Self { kind_of_entry, field, value, accepted, .. } = self;
        if self.kind == ComplaintKind::BadPlan {
            // The plan's own error names the path and what would be accepted.
            return write!(f, "{kind_of_entry}: {value}");
        }
        write!(f, "{kind_of_entry}.{field} {value}: {accepted}")
    }
}

impl std::error::Error for Complaint {}

/// Kinds that may lie before the pour: they speak of the job, not of the concrete.
const BEFORE_POUR: &[&str] = &[
    "job_opened",
    "plan",
    "pour",
    "air_reading",
    "air_series",
    "temperature",
    "sealer_chosen",
    "delivery",
    "site_check",
    "time_cost",
    "payment_terms",
    "hold_released",
    "limit_set",
    "note",
    "panel_made",
    "panel_stained",
    "panel_photographed",
    "choice_approved",
    "batch_mixed",
];

/// Coats that anyone ever laid.
const COATS: std::ops::RangeInclusive<u32> = 1..=20;

/// A clock a few minutes ahead of another is no mistake.
const CLOCK_SLACK_SECONDS: i64 = 600;

/// Checks new entries against the diary they are to join, at a moment.
#[must_use]
pub fn complaints(diary: &Diary, new: &[Entry], trade: &Trade, now: Timestamp) -> Vec<Complaint> {
    let mut joined = diary.clone();
    for entry in new {
        // A clash of ids is found when the entries are added for good.
        let _ = joined.add(entry.clone());
    }
    let end = joined.entries().map(|e| e.happened.instant().max(e.noted.instant())).max().unwrap_or(now).max(now);
    let slab = fold(&joined, Knowledge::happened_by(end));
    let checker = Checker { slab: &slab, diary: &joined, trade, now };
    new.iter().flat_map(|entry| checker.entry(entry)).collect()
}

struct Checker<'a> {
    slab: &'a Slab<'a>,
    diary: &'a Diary,
    trade: &'a Trade,
    now: Timestamp,
}

impl Checker<'_> {
    fn entry(&self, entry: &Entry) -> Vec<Complaint> {
        let mut found = Vec::new();
        let mut complain = |field, value: String, accepted: String, kind| {
            found.push(Complaint {
                entry: entry.id,
                kind_of_entry: entry.body.kind().to_owned(),
                field,
                value,
                accepted,
                kind,
            });
        };
        self.dates(entry, &mut complain);
        self.place(entry, &mut complain);
        self.references(entry, &mut complain);
        self.terms(entry, &mut complain);
        self.body(entry, &mut complain);
        found
    }

    fn dates(&self, entry: &Entry, complain: &mut impl FnMut(&'static str, String, String, ComplaintKind)) {
        if entry.happened.instant().as_second() > self.now.as_second() + CLOCK_SLACK_SECONDS {
            complain(
                "happened",
                format!("{} lies in the future", entry.happened),
                format!("accepted: a moment up to now, {}", self.now),
                ComplaintKind::InFuture,
            );
        }
        if BEFORE_POUR.contains(&entry.body.kind()) || matches!(entry.body, Body::Unknown(_)) {
            return;
        }
        let first = self
            .slab
            .all::<Pour>()
            .filter(|pour| {
                entry.place.is_none()
                    || pour.entry.place.is_none()
                    || self.slab.zones().iter().any(|z| self.slab.touches(pour.entry, z) && self.slab.touches(entry, z))
            })
            .map(|pour| pour.entry.happened.date())
            .min();
        if let Some(poured) = first.filter(|poured| entry.happened.date() < *poured) {
            complain(
                "happened",
                format!("{} lies before the pour on {poured}", entry.happened.date()),
                format!("accepted: {poured} or later"),
                ComplaintKind::BeforePour,
            );
        }
    }

    fn place(&self, entry: &Entry, complain: &mut impl FnMut(&'static str, String, String, ComplaintKind)) {
        let (Some(place), Some(plan)) = (&entry.place, self.slab.plan()) else { return };
        if let Some(name) = &place.zone
            && plan.zone(name).is_none()
            && !(name.trim().eq_ignore_ascii_case(slab_plan::WHOLE) && plan.zones().len() == 1)
        {
            let names: Vec<&str> = plan.zones().iter().map(slab_plan::Zone::name).collect();
            complain(
                "place.zone",
                format!("\"{name}\" is not on the plan"),
                format!("accepted: {}", names.join(", ")),
                ComplaintKind::Unknown,
            );
        }
        if let Some([x, y]) = &place.point
            && plan.is_drawn()
            && place.radius.is_none()
            && !plan.contains(Point::new(x.value(), y.value()))
        {
            complain(
                "place.point",
                format!("[{x}, {y}] lies off the slab"),
                format!("accepted: a point on the slab{}", within(plan)),
                ComplaintKind::OffPlan,
            );
        }
    }

    fn references(&self, entry: &Entry, complain: &mut impl FnMut(&'static str, String, String, ComplaintKind)) {
        if let Some(old) = entry.replaces
            && self.diary.get(old).is_none()
        {
            complain(
                "replaces",
                format!("{old} is not in this diary"),
                "accepted: the id of an entry of this slab".to_owned(),
                ComplaintKind::Unknown,
            );
        }
        let of = match &entry.body {
            Body::WaterDrop(b) => b.of,
            Body::Scrape(b) => b.of,
            Body::Cleaning(b) => b.of,
            Body::Retest(b) => Some(b.of),
            Body::Repair(b) => b.of,
            Body::Accepted(b) => Some(b.of),
            _ => None,
        };
        if let Some(of) = of {
            let kind = self.diary.get(of).map(|e| e.body.kind().to_owned());
            if !matches!(kind.as_deref(), Some("incident" | "defect")) {
                complain(
                    "of",
                    kind.map_or_else(|| format!("{of} is not in this diary"), |k| format!("{of} is a {k}")),
                    "accepted: the id or #label of an incident or a defect of this slab".to_owned(),
                    ComplaintKind::Unknown,
                );
            }
        }
        let panel = match &entry.body {
            Body::PanelStained(b) => Some(&b.panel),
            Body::PanelPhotographed(b) => Some(&b.panel),
            Body::ChoiceApproved(b) => Some(&b.panel),
            _ => None,
        };
        if let Some(panel) = panel {
            let known: Vec<String> = self.slab.all::<PanelMade>().map(|s| s.body.panel.clone()).collect();
            if !known.iter().any(|k| k.trim().eq_ignore_ascii_case(panel.trim())) {
                complain(
                    "panel",
                    format!("\"{panel}\" was never made"),
                    if known.is_empty() {
                        "accepted: a panel after its panel_made entry".to_owned()
                    } else {
                        format!("accepted: {}", known.join(", "))
                    },
                    ComplaintKind::Unknown,
                );
            }
        }
    }

    fn terms(&self, entry: &Entry, complain: &mut impl FnMut(&'static str, String, String, ComplaintKind)) {
        let trade = self.trade;
        let (field, term, known, all): (_, &String, bool, Vec<&str>) = match &entry.body {
            Body::Finish(b) => (
                "finish",
                &b.finish,
                trade.finish(&b.finish).is_some(),
                trade.finishes().map(|f| f.id.as_str()).collect(),
            ),
            Body::PanelMade(b) => match &b.finish {
                Some(finish) => (
                    "finish",
                    finish,
                    trade.finish(finish).is_some(),
                    trade.finishes().map(|f| f.id.as_str()).collect(),
                ),
                None => return,
            },
            Body::Incident(b) => {
                ("what", &b.what, trade.incident(&b.what).is_some(), trade.incidents().map(|i| i.id.as_str()).collect())
            }
            Body::SealerChosen(b) => (
                "sealer",
                &b.sealer,
                trade.sealer(&b.sealer).is_some(),
                trade.sealers().map(|s| s.id.as_str()).collect(),
            ),
            Body::LimitSet(b) => {
                let known = trade.fact(&b.fact).is_some_and(|f| f.value.is_some());
                ("fact", &b.fact, known, trade.limits().filter(|f| f.value.is_some()).map(|f| f.id.as_str()).collect())
            }
            _ => return,
        };
        if !known {
            complain(
                field,
                format!("\"{term}\" is not known"),
                format!("accepted: {}", all.join(", ")),
                ComplaintKind::UnknownTerm,
            );
        }
    }

    fn body(&self, entry: &Entry, complain: &mut impl FnMut(&'static str, String, String, ComplaintKind)) {
        match &entry.body {
            Body::Plan(spec) => {
                if let Err(error) = Plan::resolve(spec) {
                    complain("outline", error.to_string(), String::new(), ComplaintKind::BadPlan);
                }
            }
            Body::LimitSet(b) => {
                let unit = self.trade.fact(&b.fact).and_then(|f| f.unit);
                let share = unit == Some(trade_facts::Unit::Fraction);
                if !(b.value > 0.0 && b.value.is_finite()) || share && b.value >= 1.0 {
                    let most = if share { " and below 1" } else { "" };
                    complain(
                        "value",
                        b.value.to_string(),
                        format!("accepted: above 0{most}, in the fact's own unit"),
                        ComplaintKind::OutOfRange,
                    );
                }
            }
            Body::SealerChosen(b) => {
                if let Some(coats) = b.coats.filter(|coats| !COATS.contains(coats)) {
                    complain("coats", coats.to_string(), "accepted: 1 to 20".to_owned(), ComplaintKind::OutOfRange);
                }
            }
            Body::EmissionDish(b) => {
                if let Err(error) =
                    science::emission::moisture_emission(b.gain.value(), b.area.value(), b.exposed.value())
                {
                    let (field, typed) = match error {
                        science::emission::EmissionError::Gain(_) => ("gain", b.gain.text()),
                        science::emission::EmissionError::Area(_) => ("area", b.area.text()),
                        science::emission::EmissionError::Time(_) => ("exposed", b.exposed.text()),
                    };
                    complain(field, format!("\"{typed}\""), error.to_string(), ComplaintKind::OutOfRange);
                }
            }
            Body::WaterDrop(b) => {
                let said = usize::from(b.soaked_in.is_some()) + usize::from(b.still_stood_after.is_some());
                if said == 2 || (said == 0 && !b.beads) {
                    complain(
                        "soaked_in",
                        if said == 2 { "and still_stood_after are both given" } else { "is missing" }.to_owned(),
                        "accepted: one of soaked_in and still_stood_after, or beads".to_owned(),
                        ComplaintKind::Incomplete,
                    );
                }
            }
            Body::JobOpened(b) => {
                if let Some(zone) = b.time_zone.as_ref().filter(|z| jiff::tz::TimeZone::get(z).is_err()) {
                    complain(
                        "time_zone",
                        format!("\"{zone}\" is not known"),
                        "accepted: a name such as America/Chicago".to_owned(),
                        ComplaintKind::UnknownTerm,
                    );
                }
                if let Some(sides) = b.drying_sides.filter(|s| !(1..=2).contains(s)) {
                    complain(
                        "drying_sides",
                        sides.to_string(),
                        "accepted: 1 or 2".to_owned(),
                        ComplaintKind::OutOfRange,
                    );
                }
            }
            Body::SlabHumidity(b) => {
                let thickness =
                    self.slab.last::<Pour>().and_then(|p| p.body.thickness.as_ref().map(units::AsWritten::value));
                if let (Some(depth), Some(thickness)) = (&b.depth, thickness)
                    && depth.value() > thickness
                {
                    complain(
                        "depth",
                        format!("\"{depth}\" is deeper than the slab"),
                        format!("accepted: up to {}", thickness.show_feet_inches(16)),
                        ComplaintKind::OutOfRange,
                    );
                }
            }
            Body::AirReading(b)
                if b.air.is_none()
                    && b.humidity.is_none()
                    && b.wind.is_none()
                    && b.slab.is_none()
                    && b.rain.is_none() =>
            {
                complain(
                    "air",
                    "nothing was read".to_owned(),
                    "accepted: at least one of air, humidity, wind, slab, rain".to_owned(),
                    ComplaintKind::Incomplete,
                );
            }
            Body::Temperature(b) if b.air.is_none() && b.slab.is_none() => {
                complain(
                    "slab",
                    "nothing was read".to_owned(),
                    "accepted: at least one of slab, air".to_owned(),
                    ComplaintKind::Incomplete,
                );
            }
            Body::PanelStained(b)
                if !COATS.contains(&b.coats)
                    || b.mix.is_empty()
                    || b.mix.iter().any(|s| s.parts <= 0.0 || s.parts.is_nan())
                    || b.water_parts < 0.0
                    || b.water_parts.is_nan() =>
            {
                complain(
                    "mix",
                    format!("{} coats, {} stains, {} parts water", b.coats, b.mix.len(), b.water_parts),
                    "accepted: 1 to 20 coats, at least one stain with parts above 0, water 0 or more".to_owned(),
                    ComplaintKind::OutOfRange,
                );
            }
            _ => {}
        }
    }
}

fn within(plan: &Plan) -> String {
    plan.bounds().map_or_else(String::new, |(low, high)| {
        format!(
            ", whose box runs from ({:.1} ft, {:.1} ft) to ({:.1} ft, {:.1} ft)",
            low.x.as_feet(),
            low.y.as_feet(),
            high.x.as_feet(),
            high.y.as_feet()
        )
    })
}
