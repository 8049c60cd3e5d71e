//! Old enough, or one uniform color, whichever comes first (common practice, no source).
//!
//! Equivalent age stands beside the calendar: 28 cold days are not 28 days. A cold cure never changes what the
//! rule gives; it is a warning with its range, and makes a look at the color the next thing to do.

use jiff::ToSpan;
use units::Duration;

use super::finding::{Finding, Value};
use super::surface::DryingStart;
use super::{Action, Code, Judge};
use slab_diary::Entry;
use slab_diary::body::{ColorLook, Evenness, Pour, SlabPhotograph};
use slab_diary::{EntryOf, Zone};

/// The two rules for a zone, beside each other: whichever is met first counts.
#[derive(Debug, Clone, PartialEq)]
pub struct AgeRules {
    /// The zone.
    pub zone: String,
    /// The day of the pour, when it is noted.
    pub poured: Option<jiff::civil::Date>,
    /// Days since the pour, and days needed.
    pub days: Option<(u32, u32)>,
    /// The day on which the needed days are over.
    pub ready: Option<jiff::civil::Date>,
    /// The equivalent age at 20 °C, lowest and highest, when temperatures were noted.
    pub equivalent: Option<(Duration, Duration)>,
    /// The last word on the color, with the day of it.
    pub color: Option<(Evenness, jiff::civil::Date)>,
}

impl Judge<'_> {
    /// The two rules side by side.
    pub(super) fn age_rules(&self, zone: &Zone) -> AgeRules {
        let pour = self.pour(zone);
        let needed = self.figures.number("age-before-stain-days");
        let poured = pour.map(|pour| pour.entry.happened.date());
        let days = |poured: jiff::civil::Date| poured.until(self.today).map_or(0, |span| span.get_days()).max(0);
        let cure = pour.and_then(|pour| self.cure_age(zone, pour.entry.happened.instant()));
        let color = self
            .color(zone)
            .and_then(|(verdict, entries)| Some((verdict, entries.iter().map(|entry| entry.happened.date()).max()?)));
        AgeRules {
            zone: zone.name.clone(),
            poured,
            days: poured.map(|poured| (days(poured).unsigned_abs(), needed as u32)),
            ready: poured.and_then(|poured| poured.checked_add((needed.ceil() as i64).days()).ok()),
            equivalent: cure.map(|cure| cure.age),
            color,
        }
    }

    /// The zone's pour; of several the last, since the youngest concrete decides.
    pub(crate) fn pour(&self, zone: &Zone) -> Option<EntryOf<'_, Pour>> {
        self.slab.all::<Pour>().rfind(|s| self.slab.touches(s.entry, zone))
    }

    pub(super) fn age(&self, zone: &Zone) -> Finding {
        if let Some(job) = self.slab.called_existing() {
            return Finding::released(Code::OldSlab).because([job]);
        }
        let color = self.color(zone);
        let color_ids: Vec<_> = color.iter().flat_map(|(_, entries)| entries.iter().map(|e| e.id)).collect();
        let verdict = color.map(|(verdict, _)| verdict);
        let finding = match self.pour(zone) {
            None if verdict == Some(Evenness::Even) => Finding::released(Code::OneColor),
            None => Finding::unproven(Code::NoPourDate, Action::NotePour),
            Some(pour) => self.age_since(zone, pour, verdict),
        };
        finding
            .because(color_ids)
            .and_if(verdict == Some(Evenness::Patchy), Code::ColorPatchy)
            .and_if(verdict == Some(Evenness::CantTell), Code::ColorCantTell)
    }

    fn age_since(&self, zone: &Zone, pour: EntryOf<'_, Pour>, verdict: Option<Evenness>) -> Finding {
        let poured = pour.entry.happened.date();
        let days = poured.until(self.today).map_or(0, |span| span.get_days());
        let needed = self.figures.number("age-before-stain-days");
        let ready = poured.checked_add((needed.ceil() as i64).days()).unwrap_or(poured);
        let cure = self.cure_age(zone, pour.entry.happened.instant());
        let told = |f: Finding| {
            f.with("days", Value::Count(days.max(0) as u32))
                .with("needed", Value::Count(needed as u32))
                .with("poured", Value::Date(poured))
                .with("ready", Value::Date(ready))
                .because([pour.entry.id])
        };
        let green = f64::from(days) < self.figures.number("age-uncertain-from");
        let old = f64::from(days) >= needed;
        let finding = if verdict == Some(Evenness::Even) {
            told(Finding::released(Code::OneColor)).and_if(green, Code::OneColorButGreen)
        } else if old {
            told(Finding::released(Code::OldEnough))
        } else {
            // Nobody takes a fresh slab for one color; looking for it begins when it is no longer green.
            told(Finding::held(Code::TooYoung, if green { Action::WaitForAge } else { Action::LookForOneColor }))
        };
        let Some(cure) = cure else { return finding.and_if(old, Code::NoTemperatureRecord) };
        let (low, high) = cure.age;
        let finding = if old && low < self.figures.value::<Duration>("equivalent-age-doubt") {
            finding.and(Code::ColdCure).proposing(Action::LookForOneColor)
        } else if low >= Duration::days(needed) {
            finding.and(Code::EquivalentAgeReached)
        } else {
            finding.and(Code::EquivalentAge)
        };
        finding
            .with("low", Value::Duration(low))
            .with("high", Value::Duration(high))
            .and_if(cure.gaps, Code::TemperatureGaps)
            .because(cure.evidence)
    }

    /// The last word on the zone's color, by eye and by photograph. Where the two last words
    /// disagree nobody can tell. Looks made under a wet cure say
    /// nothing of the cured color, and looks made while a cover lay there saw the cover.
    fn color(&self, zone: &Zone) -> Option<(Evenness, Vec<&Entry>)> {
        let dry_from = match self.drying_since(zone) {
            DryingStart::From(entry) => Some(entry.happened.instant()),
            DryingStart::StillWet(entry) => Some(entry.happened.instant() + self.longest_wet_cure()),
            DryingStart::Unknown => None,
        };
        let counts = |entry: &Entry| {
            self.slab.touches(entry, zone)
                && dry_from.is_none_or(|from| entry.happened.instant() >= from)
                && !self.covered(zone, entry)
                && self.pour(zone).is_none_or(|pour| entry.happened >= pour.entry.happened)
        };
        // A spot that is even says nothing of the rest; one that is patchy does.
        let counts =
            |entry: &Entry, said: Evenness| counts(entry) && (said != Evenness::Even || self.slab.covers(entry, zone));
        let eye = self
            .slab
            .all::<ColorLook>()
            .rfind(|s| counts(s.entry, s.body.evenness))
            .map(|s| (s.body.evenness, s.entry));
        let photo = self
            .slab
            .all::<SlabPhotograph>()
            .rfind(|s| s.body.evenness.is_some_and(|said| counts(s.entry, said)))
            .and_then(|s| Some((s.body.evenness?, s.entry)));
        match (eye, photo) {
            (Some((a, e)), Some((b, p))) => Some((if a == b { a } else { Evenness::CantTell }, vec![e, p])),
            (Some((a, e)), None) | (None, Some((a, e))) => Some((a, vec![e])),
            (None, None) => None,
        }
    }

    /// After this long a wet cure whose end nobody noted counts as ended.
    pub(crate) fn longest_wet_cure(&self) -> jiff::SignedDuration {
        let longest: Duration = self.figures.value("wet-cure-longest");
        jiff::SignedDuration::from_secs(longest.as_seconds() as i64)
    }
}
