//! What is wrong with entries before they are added: dates, places and names that cannot be.
//!
//! The diary itself takes whatever was written on another device; these checks are for the moment
//! of writing, when the person is there to mend it.

use form_schema::{FieldErrorKind, InputKind};
use jiff::Timestamp;
use jiff::civil::Date;
use slab_plan::{Plan, PlanError, Point};
use trade_facts::Trade;
use units::{AsWritten, Length};

use crate::body::{Body, EntryKind, PanelMade, PlaceInput, Pour};
use crate::slab::own_range;
use crate::{Diary, Entry, EntryId, Knowledge, Slab, fold};

/// What is wrong with an entry beside its fields. Its sentence is in crate `localization`.
#[derive(Debug, Clone, PartialEq)]
pub enum ProblemKind {
    /// A field by itself.
    Field(FieldErrorKind),
    /// Dated before the concrete was there.
    BeforePour {
        /// The day of the pour.
        poured: Date,
    },
    /// Dated after the moment of writing.
    InFuture,
    /// Names an entry that is not there.
    NoSuchEntry,
    /// Takes an entry back, and does not say which.
    NothingTakenBack,
    /// Takes back the opening of the job, on which everything else rests.
    JobTakenBack,
    /// Names an entry of another kind.
    OtherKind {
        /// What would be accepted.
        accepted: &'static [&'static str],
    },
    /// Names a panel that was never made.
    NoSuchPanel {
        /// Those that were.
        made: Vec<String>,
    },
    /// Tells of one spot, and says no place on a slab of several zones.
    NoPlace {
        /// The zones there are.
        zones: Vec<String>,
    },
    /// Names a zone that the plan has not.
    NoSuchZone {
        /// Those it has.
        zones: Vec<String>,
    },
    /// Lies off the plan.
    OffPlan {
        /// Lower left and upper right corner of the box round the plan.
        within: Option<(Point, Point)>,
    },
    /// The plan does not hold together.
    BadPlan(PlanError),
    /// Deeper than the slab is thick.
    DeeperThanSlab(Length),
    /// A figure too far from the trade's own to be meant.
    Figure {
        /// The least that is taken, in the fact's own unit.
        low: f64,
        /// The most.
        high: f64,
    },
    /// Nothing at all where something must be.
    NotAboveZero,
}

impl ProblemKind {
    /// Whether a file of lines is taken all the same: what it tells is doubtful to us, but may be all that whoever
    /// wrote it down knew. Such an entry proves nothing of what it leaves open.
    #[must_use]
    pub const fn only_doubtful(&self) -> bool {
        matches!(self, Self::InFuture | Self::NoPlace { .. })
    }
}

/// One thing that is wrong with an entry: which field, what was there.
#[derive(Debug, Clone, PartialEq)]
pub struct Problem {
    /// The entry.
    pub entry: EntryId,
    /// Its kind; none for one of a newer program.
    pub kind: Option<EntryKind>,
    /// The field.
    pub field: String,
    /// What was there, as text.
    pub value: String,
    /// What is wrong.
    pub what: ProblemKind,
}

/// A clock a few minutes ahead of another is no mistake.
const CLOCK_SLACK_SECONDS: i64 = 600;

/// Checks new entries against the diary they are to join, at a moment.
#[must_use]
pub fn problems(diary: &Diary, new: &[Entry], trade: &Trade, now: Timestamp) -> Vec<Problem> {
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

/// A field, what was there and what is wrong with it.
type Found = (&'static str, String, ProblemKind);

impl Checker<'_> {
    fn entry(&self, entry: &Entry) -> Vec<Problem> {
        let found = self.dates(entry).into_iter().chain(self.place(entry)).chain(self.references(entry));
        found
            .chain(self.body(entry))
            .map(|(field, value, what)| Problem {
                entry: entry.id,
                kind: entry.body.kind(),
                field: field.to_owned(),
                value,
                what,
            })
            .collect()
    }

    fn dates(&self, entry: &Entry) -> Option<Found> {
        if entry.happened.instant().as_second() > self.now.as_second() + CLOCK_SLACK_SECONDS {
            return Some(("happened", entry.happened.to_string(), ProblemKind::InFuture));
        }
        if entry.body.kind().is_none_or(|kind| kind.schema().before_pour) {
            return None;
        }
        let same_place = |pour: &Entry| {
            entry.place.is_none()
                || pour.place.is_none()
                || self.slab.zones().iter().any(|z| self.slab.touches(pour, z) && self.slab.touches(entry, z))
        };
        let pours = self.slab.all::<Pour>().filter(|pour| same_place(pour.entry));
        let poured = pours.map(|pour| pour.entry.happened.date()).min()?;
        let happened = entry.happened.date();
        (happened < poured).then(|| ("happened", happened.to_string(), ProblemKind::BeforePour { poured }))
    }

    fn place(&self, entry: &Entry) -> Vec<Found> {
        let Some(place) = &entry.place else { return self.no_place(entry).into_iter().collect() };
        let Some(plan) = self.slab.plan() else { return Vec::new() };
        let mut found = Vec::new();
        if let Some(name) = &place.zone
            && plan.zone(name).is_none()
            && !(name.trim().eq_ignore_ascii_case(slab_plan::WHOLE) && plan.zones().len() == 1)
        {
            let zones = plan.zones().iter().map(|zone| zone.name().to_owned()).collect();
            found.push(("place.zone", name.clone(), ProblemKind::NoSuchZone { zones }));
        }
        if let Some([x, y]) = &place.point
            && plan.is_drawn()
            && place.radius.is_none()
            && !plan.contains(Point::new(x.value(), y.value()))
        {
            found.push(("place.point", format!("[{x}, {y}]"), ProblemKind::OffPlan { within: plan.bounds() }));
        }
        found
    }

    /// What tells of one spot needs a place where there are several zones, unless it is about an entry that has one.
    fn no_place(&self, entry: &Entry) -> Option<Found> {
        let schema = entry.body.kind()?.schema();
        if schema.place != PlaceInput::Spot || self.slab.zones().len() < 2 {
            return None;
        }
        let about = schema.fields.iter().filter(|field| matches!(field.input, InputKind::Entry(_)));
        let fields = entry.body.to_fields();
        if about.into_iter().any(|field| fields.contains_key(field.name)) {
            return None;
        }
        let zones = self.slab.zones().iter().map(|zone| zone.name.clone()).collect();
        Some(("place", String::new(), ProblemKind::NoPlace { zones }))
    }

    /// Entries and panels that the body names.
    fn references(&self, entry: &Entry) -> Vec<Found> {
        let mut found = Vec::new();
        if let Some(old) = entry.replaces
            && self.diary.get(old).is_none()
        {
            found.push(("replaces", old.to_string(), ProblemKind::NoSuchEntry));
        }
        let Some(schema) = entry.body.kind().map(EntryKind::schema) else { return found };
        if schema.only_corrects {
            let old = entry.replaces.map(|id| self.diary.get(id).and_then(|old| old.body.kind()));
            match old {
                None => found.push(("replaces", String::new(), ProblemKind::NothingTakenBack)),
                Some(Some(EntryKind::JobOpened)) => {
                    found.push(("replaces", EntryKind::JobOpened.name().to_owned(), ProblemKind::JobTakenBack));
                }
                Some(_) => {}
            }
        }
        let named = |field: &form_schema::Field| matches!(field.input, InputKind::Entry(_) | InputKind::Panel);
        if !schema.fields.iter().any(named) {
            return found;
        }
        let values = entry.body.to_fields();
        for field in schema.fields {
            let Some(text) = values.get(field.name).and_then(serde_json::Value::as_str) else { continue };
            match field.input {
                InputKind::Entry(accepted) => {
                    let there = text.parse::<EntryId>().ok().and_then(|id| self.diary.get(id));
                    match there.map(|there| there.body.kind_name()) {
                        None => found.push((field.name, text.to_owned(), ProblemKind::NoSuchEntry)),
                        Some(kind) if !accepted.contains(&kind) => {
                            found.push((field.name, kind.to_owned(), ProblemKind::OtherKind { accepted }));
                        }
                        Some(_) => {}
                    }
                }
                InputKind::Panel => {
                    let made: Vec<String> = self.slab.all::<PanelMade>().map(|s| s.body.panel.to_string()).collect();
                    if !made.iter().any(|name| name.eq_ignore_ascii_case(text.trim())) {
                        found.push((field.name, text.to_owned(), ProblemKind::NoSuchPanel { made }));
                    }
                }
                _ => {}
            }
        }
        found
    }

    /// What the schema of a kind cannot say.
    fn body(&self, entry: &Entry) -> Option<Found> {
        match &entry.body {
            Body::Plan(spec) => {
                let error = Plan::resolve(spec).err()?;
                Some(("outline", error.to_string(), ProblemKind::BadPlan(error)))
            }
            Body::LimitSet(b) => {
                let (low, high) = self.trade.fact(&b.fact).and_then(own_range)?;
                let fits = (low..=high).contains(&b.value);
                (!fits).then(|| ("value", b.value.to_string(), ProblemKind::Figure { low, high }))
            }
            Body::EmissionDish(b) => {
                if b.area.value() <= units::Area::ZERO {
                    Some(("area", b.area.to_string(), ProblemKind::NotAboveZero))
                } else if b.exposed.value() <= units::Duration::ZERO {
                    Some(("exposed", b.exposed.to_string(), ProblemKind::NotAboveZero))
                } else {
                    None
                }
            }
            Body::SlabHumidity(b) => {
                let thickness = self.slab.last::<Pour>()?.body.thickness.as_ref().map(AsWritten::value)?;
                let depth = b.depth.as_ref().filter(|depth| depth.value() > thickness)?;
                Some(("depth", depth.to_string(), ProblemKind::DeeperThanSlab(thickness)))
            }
            _ => None,
        }
    }
}
