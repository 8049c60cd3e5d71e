//! Is there a film on the surface? Water and blade must agree.
//!
//! A membrane is never released by age (common practice, no source): what the diary says was
//! sprayed on stays until the diary says it came off and new tests prove it.

use units::Length;

use super::drops::{Drink, Tried};
use super::finding::{Finding, Value};
use super::{Action, Code, Judge};
use slab_diary::Entry;
use slab_diary::Zone;

impl Judge<'_> {
    pub(super) fn membrane(&self, zone: &Zone) -> Finding {
        let tried = self.tried(zone);
        if let Some(film) = self.film_laid(zone) {
            let removed = self.film_removed(zone).filter(|e| e.happened >= film.happened);
            if removed.is_none() {
                let tests_clear = !tried.nothing() && !tried.film() && !tried.water_is_stopped();
                return Finding::held(Code::MembraneOnSlab, Action::StripAndRetest)
                    .with("date", Value::Date(film.happened.date()))
                    .and_if(tests_clear, Code::TestsLookClearAllTheSame)
                    .because([film.id])
                    .because(tried.ids());
            }
        }
        self.membrane_by_tests(zone, tried)
            .because(tried.ids())
            .because(tried.outdated.iter().copied())
            .and_if(!tried.outdated.is_empty(), Code::OlderTestsOutdated)
            .and_if(!tried.unplaced.is_empty(), Code::TestsWithoutPlace)
    }

    fn membrane_by_tests(&self, zone: &Zone, tried: &Tried<'_>) -> Finding {
        let needed = self.drops_needed(zone);
        let count = |finding: Finding| {
            finding
                .with("drops", Value::Count(tried.drops.len() as u32))
                .with("scrapes", Value::Count(tried.scrapes.len() as u32))
                .with("needed", Value::Count(needed))
        };
        if tried.nothing() {
            return count(Finding::unproven(Code::NoFilmTest, Action::DropAndScrape));
        }
        if tried.film() {
            let soaks_everywhere = !tried.drops.is_empty() && tried.drops.iter().all(|d| d.drink == Drink::Soaks);
            return if soaks_everywhere {
                count(Finding::cant_tell(Code::DropSoaksBladeCurls, Action::RepeatDropAndScrape))
            } else if tried.drops.is_empty() {
                count(Finding::held(Code::FilmOnBlade, Action::StripAndRetest))
            } else {
                count(Finding::held(Code::FilmOnBladeWaterStopped, Action::StripAndRetest))
            };
        }
        if tried.any(Drink::Beads) {
            return if tried.powder() {
                count(Finding::cant_tell(Code::BeadsOnPowder, Action::SolventWipe))
            } else {
                count(Finding::held(Code::WaterStandsNoBlade, Action::ScrapeWhereWaterStands))
            };
        }
        if tried.scrapes.is_empty() {
            return if tried.water_is_stopped() {
                count(Finding::held(Code::WaterStandsNoBlade, Action::ScrapeWhereWaterStands))
            } else {
                count(Finding::unproven(Code::ScrapeMissing, Action::Scrape))
            };
        }
        if !tried.powder() || tried.shine() {
            return count(Finding::cant_tell(Code::ShineChangeOnly, Action::SolventWipe));
        }
        if tried.drops.is_empty() {
            return count(Finding::unproven(Code::DropMissing, Action::WaterDrops));
        }
        if (tried.drops.len() as u32) < needed {
            let finding = count(Finding::unproven(Code::TooFewDrops, Action::WaterDrops));
            return finding.and_if(tried.water_is_stopped(), Code::PowderWhereWaterStands);
        }
        let stopped: Vec<&Entry> =
            tried.drops.iter().filter(|d| d.drink >= Drink::Slow).map(|d| d.seen.entry).collect();
        if stopped.is_empty() {
            return count(Finding::released(Code::WaterAndBladeAgree));
        }
        let everywhere = stopped.len() == tried.drops.len();
        let explained =
            everywhere || stopped.iter().all(|drop| tried.scrapes.iter().any(|s| self.same_spot(drop, s.entry)));
        if explained {
            // Powder under the blade: dense paste, which the absorbency hold point judges.
            count(Finding::released(Code::DensePasteNotFilm))
        } else {
            count(Finding::cant_tell(Code::WaterStandsInPlaces, Action::ScrapeWhereWaterStands))
        }
    }

    fn same_spot(&self, a: &Entry, b: &Entry) -> bool {
        match (self.slab.point_of(a), self.slab.point_of(b)) {
            (Some(a), Some(b)) => a.distance(b) <= ONE_SPOT,
            _ => false,
        }
    }
}

/// Two tests within two feet of each other count as one spot.
const ONE_SPOT: Length = Length::feet(2.0);
