//! Is there a film on the surface? Water and blade must agree.
//!
//! A membrane is never released by age (common practice, no source): what the diary says was
//! sprayed on stays until the diary says it came off and new tests prove it.

use super::drops::{Drink, Tried};
use super::finding::{Finding, Value};
use super::{Action, Code, Judge, State};
use slab_diary::Entry;
use slab_diary::Zone;
use slab_diary::body::Fizz;

impl Judge<'_> {
    pub(super) fn membrane(&self, zone: &Zone) -> Finding {
        let tried = self.tried(zone);
        if let Some(film) = self.film_laid(zone) {
            let removed = self.film_removed(zone, film).filter(|e| e.happened >= film.happened);
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
            .because(tried.acid.iter().map(|s| s.entry.id))
            .because(tried.outdated.iter().copied())
            .and_if(!tried.outdated.is_empty(), Code::OlderTestsOutdated)
            .and_if(!tried.lapsed.is_empty(), Code::TestsLapsed)
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
        if tried.curl() {
            return count(if tried.water_is_stopped() || tried.any(Drink::Slow) {
                Finding::held(Code::FilmOnBladeWaterStopped, Action::StripAndRetest)
            } else {
                Finding::held(Code::FilmOnBlade, Action::StripAndRetest)
            });
        }
        if tried.film() {
            // Only the rag speaks for it.
            let soaks_everywhere = !tried.drops.is_empty() && tried.drops.iter().all(|d| d.drink == Drink::Soaks);
            return count(if soaks_everywhere {
                Finding::cant_tell(Code::RagAgainstWater, Action::RepeatDropAndScrape)
            } else {
                Finding::held(Code::FilmOnRag, Action::StripAndRetest)
            });
        }
        if tried.scrapes.is_empty() {
            return if tried.water_is_stopped() {
                count(Finding::held(Code::WaterStandsNoBlade, Action::ScrapeWhereWaterStands))
            } else {
                count(Finding::unproven(Code::ScrapeMissing, Action::Scrape))
            };
        }
        if tried.any(Drink::Beads) && !tried.powder() {
            return count(Finding::held(Code::WaterStandsNoBlade, Action::ScrapeWhereWaterStands));
        }
        if !tried.powder() || tried.shine() {
            let finding = self.beyond_blade(tried, Code::ShineChangeOnly);
            if finding.state != State::Released {
                return count(finding);
            }
        }
        if tried.drops.is_empty() {
            return count(Finding::unproven(Code::DropMissing, Action::WaterDrops));
        }
        if (tried.drops.len() as u32) < needed {
            let finding = count(Finding::unproven(Code::TooFewDrops, Action::WaterDrops));
            return finding.and_if(tried.water_is_stopped(), Code::PowderWhereWaterStands);
        }
        if tried.drops.iter().all(|d| d.drink == Drink::Soaks) {
            return count(Finding::released(Code::WaterAndBladeAgree));
        }
        if tried.fizz() == Some(Fizz::None) {
            return count(Finding::held(Code::PenetratingTreatment, Action::MockUpOrGrind));
        }
        let stopped = |least: Drink| tried.drops.iter().filter(move |d| d.drink >= least).map(|d| d.seen.entry);
        let everywhere = stopped(Drink::Stands).count() == tried.drops.len();
        let scraped = |drop: &Entry| tried.scrapes.iter().any(|s| self.same_place(drop, s.entry));
        // A slow drop is explained by what was tried there, or by tests that name no point.
        let near = |drop: &Entry, test: &Entry| self.slab.point_of(test).is_none() || self.same_place(drop, test);
        let tests = || {
            let rags = tried.wipes.iter().map(|s| s.entry);
            tried.scrapes.iter().map(|s| s.entry).chain(rags).chain(tried.acid.iter().map(|s| s.entry))
        };
        let explained = everywhere
            || (stopped(Drink::Stands).all(scraped)
                && stopped(Drink::Slow).all(|drop| tests().any(|test| near(drop, test))));
        if !explained {
            return count(Finding::cant_tell(Code::WaterStandsInPlaces, Action::ScrapeWhereWaterStands));
        }
        count(self.beyond_blade(tried, if tried.any(Drink::Beads) { Code::BeadsOnPowder } else { Code::SlowOnPowder }))
    }

    /// Where the blade leaves it open, dense paste is told from a treatment that sank in and that no blade lifts: a
    /// clean rag rules out oil and silicone, a fizzing acid drop what also keeps the acid out. `until_wiped` is said
    /// before the rag spoke.
    fn beyond_blade(&self, tried: &Tried<'_>, until_wiped: Code) -> Finding {
        if tried.wipes.is_empty() {
            return Finding::cant_tell(until_wiped, Action::SolventWipe);
        }
        if !tried.clean_rag() {
            return Finding::cant_tell(Code::RagChangesShine, Action::MockUpOrGrind);
        }
        match tried.fizz() {
            None => Finding::cant_tell(Code::CleanRagNoAcidDrop, Action::AcidDrop),
            Some(Fizz::Strong) => Finding::released(Code::DensePasteNotFilm),
            Some(Fizz::Weak) => Finding::cant_tell(Code::CleanRagWeakFizz, Action::MockUpOrGrind),
            Some(Fizz::None) => Finding::held(Code::PenetratingTreatment, Action::MockUpOrGrind),
        }
    }

    pub(super) fn same_place(&self, a: &Entry, b: &Entry) -> bool {
        match (self.slab.point_of(a), self.slab.point_of(b)) {
            (Some(a), Some(b)) => a.distance(b) <= self.one_place(),
            _ => false,
        }
    }
}
