//! The slowest drop takes two to four times as long as the fastest: neither even nor clearly uneven.
//!
//! More drops cannot end that, since slowest over fastest only grows. So after a while the question becomes
//! where the slow ones lie, and what the owner says of the color at both ends.

use units::{Duration, Length};

use super::drops::Drop;
use super::finding::{Finding, Value};
use super::{Action, Code, Judge};
use slab_diary::body::{ChoiceApproved, PanelMade, PanelStained};
use slab_diary::{Entry, EntryId, EntryOf};
use slab_plan::{Offset, Point};

impl Judge<'_> {
    /// What to say of a field whose spread lies in between; `told` adds the numbers.
    pub(super) fn in_between(&self, field: &[Drop<'_>], told: impl Fn(Finding) -> Finding) -> Finding {
        let timed: Vec<(Duration, &Entry)> = field.iter().filter_map(|d| Some((d.time?, d.seen.entry))).collect();
        let by_time = |a: &&(Duration, &Entry), b: &&(Duration, &Entry)| a.0.as_seconds().total_cmp(&b.0.as_seconds());
        let (Some(fastest), Some(slowest)) = (timed.iter().min_by(by_time), timed.iter().max_by(by_time)) else {
            return told(Finding::cant_tell(Code::DrinksSomewhatUnevenly, Action::MoreDrops));
        };
        if let Some(seen) = self.shown_at_both_ends(fastest.1, slowest.1) {
            return told(Finding::released(Code::BothEndsApproved)).because(seen);
        }
        let enough = self.figures.number("more-drops-times") * f64::from(self.places_needed());
        if (timed.len() as f64) < enough {
            return told(Finding::cant_tell(Code::DrinksSomewhatUnevenly, Action::MoreDrops))
                .asking("places", Value::Count((enough - timed.len() as f64).ceil() as u32));
        }
        // Slow against this field: over the even factor behind its fastest.
        let even = self.figures.number("absorbency-even-factor");
        let fast = fastest.0.max(Duration::seconds(1.0));
        let (slow, others): (Vec<_>, Vec<_>) = timed.iter().partition(|(time, _)| *time / fast > even);
        let of_zone = |all: &[&(Duration, &Entry)]| -> Vec<String> {
            let zones = self.slab.zones().iter();
            let named = zones.filter(|zone| all.iter().any(|(_, e)| self.slab.speaks_for(e, zone)));
            named.map(|zone| zone.name.clone()).collect()
        };
        let (slow_zones, other_zones) = (of_zone(&slow), of_zone(&others));
        if !slow_zones.iter().any(|zone| other_zones.contains(zone)) {
            let finding = told(Finding::cant_tell(Code::SlowByZone, Action::MixByZone));
            return slow_zones.into_iter().fold(finding, |f, zone| f.asking("slow_zone", Value::Text(zone)));
        }
        if let Some(middle) = self.lie_together(&slow, &others) {
            return told(Finding::cant_tell(Code::SlowPlacesTogether, Action::ScreenPlace))
                .asking("place", Value::Point(middle));
        }
        let mut finding = told(Finding::cant_tell(Code::SlowScattered, Action::MockUpBothEnds));
        for (name, entry) in [("slow_place", slowest.1), ("fast_place", fastest.1)] {
            if let Some(at) = self.slab.point_of(entry) {
                finding = finding.asking(name, Value::Point(at));
            }
        }
        finding
    }

    /// The middle of the slow places, when no other place lies among them: none nearer to the middle than the
    /// farthest of the slow.
    fn lie_together(&self, slow: &[&(Duration, &Entry)], others: &[&(Duration, &Entry)]) -> Option<Point> {
        let points = |all: &[&(Duration, &Entry)]| -> Option<Vec<Point>> {
            all.iter().map(|(_, entry)| self.slab.point_of(entry)).collect()
        };
        let (slow, others) = (points(slow)?, points(others)?);
        let share = 1.0 / slow.len() as f64;
        let mean = |of: fn(&Point) -> Offset| Offset::meters(slow.iter().map(|p| of(p).as_meters() * share).sum());
        let middle = Point::new(mean(|p| p.x), mean(|p| p.y));
        let reach = slow.iter().map(|p| p.distance(middle)).fold(Length::default(), Length::max);
        (!slow.is_empty() && others.iter().all(|p| p.distance(middle) > reach)).then_some(middle)
    }

    /// Mock-ups at the slowest and at the fastest place, both stained and approved by the owner.
    fn shown_at_both_ends(&self, fastest: &Entry, slowest: &Entry) -> Option<Vec<EntryId>> {
        let mut seen = Vec::new();
        for place in [fastest, slowest] {
            seen.extend(self.slab.all::<PanelMade>().rev().find_map(|made| self.approved_mock_up(made, place))?);
        }
        Some(seen)
    }

    fn approved_mock_up(&self, made: EntryOf<'_, PanelMade>, place: &Entry) -> Option<Vec<EntryId>> {
        if !made.body.on_the_floor || !self.same_place(made.entry, place) {
            return None;
        }
        let of = |panel: &str| crate::panels::same(panel, &made.body.panel);
        let stained = self.slab.all::<PanelStained>().rfind(|s| of(&s.body.panel))?;
        let approved = self.slab.all::<ChoiceApproved>().rfind(|s| of(&s.body.panel))?;
        let stands = approved.entry.order() > stained.entry.order() && !self.withdrawn(&approved);
        stands.then(|| vec![made.entry.id, stained.entry.id, approved.entry.id])
    }
}
