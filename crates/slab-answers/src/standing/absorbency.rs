//! Does the surface drink, and evenly? A burnished slab is found here, not at the membrane.

use units::Duration;

use super::drops::{Drink, Drop, Tried};
use super::finding::{Finding, Value};
use super::surface::opens;
use super::{Action, Code, Judge};
use slab_diary::body::{Finish, Incident, WaterDrop};
use slab_diary::{EntryOf, Zone};
use trade_facts::Thirst;

impl Judge<'_> {
    pub(super) fn absorbency(&self, zone: &Zone) -> Finding {
        let tried = self.tried(zone);
        let burn = self.untreated_burn(zone);
        let finding = match burn {
            Some(burn) => Finding::held(Code::TrowelBurn, Action::ScreenAndRetest)
                .with("date", Value::Date(burn.entry.happened.date()))
                .because([burn.entry.id]),
            None => self.absorbency_by_drops(zone, tried),
        };
        finding
            .because(tried.drops.iter().map(|d| d.seen.entry.id))
            .and_if(!tried.outdated.is_empty(), Code::OlderTestsOutdated)
            .and_if(!tried.lapsed.is_empty(), Code::TestsLapsed)
            .and_if(!tried.unplaced.is_empty(), Code::TestsWithoutPlace)
    }

    /// The finish of a zone, where one is noted.
    pub(super) fn finish(&self, zone: &Zone) -> Option<EntryOf<'_, Finish>> {
        crate::panels::finish_of(self.slab, zone)
    }

    fn untreated_burn(&self, zone: &Zone) -> Option<EntryOf<'_, Incident>> {
        let burn =
            self.slab.all::<Incident>().rfind(|s| s.body.what == "trowel-burn" && self.slab.touches(s.entry, zone))?;
        let near = self.one_place();
        let opened = self.cleanings(zone).any(|s| {
            opens(s.body.method)
                && s.entry.happened > burn.entry.happened
                && self.slab.reaches(s.entry, burn.entry, near)
        });
        let treated = self.incident_settled(burn);
        (!opened && !treated).then_some(burn)
    }

    fn absorbency_by_drops(&self, zone: &Zone, tried: &Tried<'_>) -> Finding {
        let needed = self.drops_needed(zone);
        let have = tried.drops.len() as u32;
        let counted = |f: Finding| f.with("drops", Value::Count(have)).with("needed", Value::Count(needed));
        let dense_finish = self.finish(zone).is_some_and(|f| {
            self.figures
                .trade()
                .finish(&f.body.finish)
                .is_some_and(|finish| matches!(finish.absorbency, Thirst::Low | Thirst::VeryLow))
        });
        if tried.drops.is_empty() {
            return counted(Finding::unproven(Code::NoDrops, Action::WaterDrops))
                .and_if(dense_finish, Code::DenseFinishNeedsCoat);
        }
        // A rag that speaks alone against blade and water leaves the drops standing.
        if tried.curl() || (tried.film() && (tried.water_is_stopped() || tried.any(Drink::Slow))) {
            return counted(Finding::cant_tell(Code::FilmHidesAbsorbency, Action::StripAndRetest));
        }
        if tried.water_is_stopped() {
            return if tried.powder() && !tried.any(Drink::Beads) {
                counted(Finding::held(Code::Burnished, Action::ScreenAndRetest)).and(Code::DenseFinishNeedsCoat)
            } else {
                counted(Finding::cant_tell(Code::WaterStandsUnknownWhy, Action::ScrapeWhereWaterStands))
            };
        }
        let field = self.field(zone);
        let times: Vec<Duration> = field.iter().filter_map(|d| d.time).collect();
        let fastest = times.iter().copied().reduce(Duration::min);
        let slowest = times.iter().copied().reduce(Duration::max);
        let factor = match (fastest, slowest) {
            // Nobody times a drop better than to a second.
            (Some(fast), Some(slow)) => slow / fast.max(Duration::seconds(1.0)),
            _ => 1.0,
        };
        let spread = |f: Finding| {
            let f = counted(f).with("factor", Value::Ratio(factor));
            match (fastest, slowest) {
                (Some(fast), Some(slow)) => {
                    f.with("fastest", Value::Duration(fast)).with("slowest", Value::Duration(slow))
                }
                _ => f,
            }
        };
        if factor > self.figures.number("absorbency-uneven-factor") {
            return spread(Finding::held(Code::DrinksUnevenly, Action::ScreenAndRetest));
        }
        if tried.any(Drink::Slow) {
            return spread(Finding::cant_tell(Code::DrinksSlowly, Action::TryOnPanelOrScreen))
                .and_if(dense_finish, Code::DenseFinishNeedsCoat);
        }
        if factor > self.figures.number("absorbency-even-factor") {
            return self.in_between(&field, spread);
        }
        if have < needed {
            return counted(Finding::unproven(Code::TooFewDrops, Action::WaterDrops));
        }
        let (places, over_slab) = (self.places_needed(), self.places_tried(zone));
        if over_slab < places {
            return counted(Finding::unproven(Code::TooFewPlaces, Action::WaterDrops))
                .with("places", Value::Count(over_slab))
                .with("places_needed", Value::Count(places));
        }
        spread(Finding::released(Code::DrinksEvenly)).and_if(dense_finish, Code::DenseFinishNeedsCoat)
    }

    /// The drops on every zone with this zone's finish: one finish is one field, wherever its zones lie; another
    /// finish may drink differently.
    fn field(&self, zone: &Zone) -> Vec<Drop<'_>> {
        let finish = |zone: &Zone| self.finish(zone).map(|f| f.body.finish.clone());
        let own = finish(zone);
        let zones = self.slab.zones().iter().filter(|other| finish(other) == own);
        zones.flat_map(|other| self.tried(other).drops.iter().copied()).collect()
    }

    /// Places that must be tried over the slab: few on a small one.
    pub(super) fn places_needed(&self) -> u32 {
        let most = self.figures.number("drop-places") as u32;
        let least = (self.figures.number("drop-places-least") as u32).min(most);
        self.slab
            .area()
            .map_or(most, |area| self.figures.tests_for(area, "drop-places-by-area", None).clamp(least, most))
    }

    /// Places tried over the slab, for a zone: where another concrete or finish begins, what was tried there counts
    /// even if it no longer speaks for its own surface, so that nothing that happens there takes anything from here.
    fn places_tried(&self, zone: &Zone) -> u32 {
        let concrete = |zone: &Zone| {
            let mix = self.pour(zone).and_then(|pour| pour.body.mix.clone());
            (mix, self.finish(zone).map(|finish| finish.body.finish.clone()))
        };
        let own = concrete(zone);
        let places = |other: &Zone| {
            if concrete(other) == own {
                return self.tried(other).drops.len();
            }
            let drops = self.slab.all::<WaterDrop>().filter(|s| self.slab.speaks_for(s.entry, other));
            self.last_at_each_place(drops.collect(), |s| s.entry).len()
        };
        self.slab.zones().iter().map(|other| places(other) as u32).sum()
    }
}
