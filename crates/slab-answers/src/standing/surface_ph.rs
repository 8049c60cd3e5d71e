//! Surface pH: lime enough before the stain, no acid left before the sealer.
//!
//! A pH test speaks only for the surface after the last acid, strip or wash.

use units::Ph;

use super::finding::{Finding, Value};
use super::{Action, Code, Judge};
use slab_diary::Entry;
use slab_diary::body::{Neutralized, PhMoment, RagResult, Rinsed, SurfacePh};
use slab_diary::{EntryOf, Zone};

impl Judge<'_> {
    pub(super) fn surface_ph(&self, zone: &Zone) -> Finding {
        match self.stained(zone) {
            Some(coat) => self.ph_after_rinse(zone, coat.entry),
            None => self.ph_before_stain(zone),
        }
    }

    fn ph_tests<'s>(
        &'s self,
        zone: &'s Zone,
        since: Option<&'s Entry>,
        moment: PhMoment,
    ) -> (Vec<EntryOf<'s, SurfacePh>>, Vec<EntryOf<'s, SurfacePh>>) {
        self.slab
            .all::<SurfacePh>()
            .filter(|s| self.slab.speaks_for(s.entry, zone) && s.body.moment.is_none_or(|m| m == moment))
            .partition(|s| since.is_none_or(|e| s.entry.happened > e.happened))
    }

    fn ph_before_stain(&self, zone: &Zone) -> Finding {
        let (tests, outdated) = self.ph_tests(zone, self.ph_moved(zone), PhMoment::BeforeStain);
        let needed = zone.area.map_or(1, |area| self.figures.tests_for(area, "surface-ph-tests", None));
        let have = tests.len() as u32;
        let moved = self.ph_moved(zone).map(|e| e.id);
        let counted = |f: Finding| f.with("have", Value::Count(have)).with("needed", Value::Count(needed));
        let (Some(lowest), Some(highest)) = extremes(&tests) else {
            return if outdated.is_empty() {
                counted(Finding::unproven(Code::NoPhTest, Action::TestPh))
            } else {
                counted(Finding::unproven(Code::PhTestOlderThanWash, Action::TestPh))
                    .because(outdated.iter().map(|s| s.entry.id))
                    .because(moved)
            };
        };
        let (low, high) = self.figures.range::<Ph>("ph-before-stain");
        let stop: Ph = self.figures.value("ph-before-stain-stop");
        let told = |f: Finding| with_readings(counted(f), (lowest, highest), (low, high));
        let finding = if lowest < stop {
            told(Finding::held(Code::PhTooLow, Action::MockUpOrGrind))
        } else if lowest < low || highest > high {
            told(Finding::cant_tell(Code::PhOutsideWindow, Action::MockUpOrGrind))
        } else if have < needed {
            told(Finding::unproven(Code::TooFewPhTests, Action::TestPh))
        } else {
            told(Finding::released(Code::PhFit))
        };
        finding.because(tests.iter().map(|s| s.entry.id)).because(moved)
    }

    fn ph_after_rinse(&self, zone: &Zone, coat: &Entry) -> Finding {
        let after = |e: &Entry| self.slab.touches(e, zone) && e.happened >= coat.happened;
        let neutralized = self.slab.all::<Neutralized>().rfind(|s| after(s.entry)).map(|s| s.entry);
        let rinsed = self.slab.all::<Rinsed>().rfind(|s| after(s.entry));
        let Some(neutralized) = neutralized else {
            return Finding::held(Code::NotNeutralized, Action::NeutralizeAndRinse).because([coat.id]);
        };
        let Some(rinsed) = rinsed.filter(|r| r.entry.happened >= neutralized.happened) else {
            return Finding::held(Code::NotRinsed, Action::NeutralizeAndRinse).because([coat.id, neutralized.id]);
        };
        let done = [coat.id, neutralized.id, rinsed.entry.id];
        if rinsed.body.rag == Some(RagResult::Colored) {
            return Finding::held(Code::RagColored, Action::NeutralizeAndRinse).because(done);
        }
        let (tests, outdated) = self.ph_tests(zone, Some(rinsed.entry), PhMoment::AfterRinse);
        let needed = zone.area.map_or(2, |area| self.figures.tests_for(area, "ph-readings-after-rinse", None));
        let have = tests.len() as u32;
        let counted = |f: Finding| f.with("have", Value::Count(have)).with("needed", Value::Count(needed));
        let (Some(lowest), Some(highest)) = extremes(&tests) else {
            let code = if outdated.is_empty() { Code::NoPhTestAfterRinse } else { Code::PhTestOlderThanWash };
            return counted(Finding::unproven(code, Action::TestPh))
                .because(done)
                .because(outdated.iter().map(|s| s.entry.id));
        };
        let (low, high) = self.figures.range::<Ph>("ph-after-rinse");
        let stop: Ph = self.figures.value("ph-after-rinse-stop");
        let told = |f: Finding| with_readings(counted(f), (lowest, highest), (low, high));
        let finding = if lowest < stop {
            told(Finding::held(Code::AcidLeft, Action::NeutralizeAndRinse))
        } else if lowest < low || highest > high {
            told(Finding::cant_tell(Code::PhOutsideWindow, Action::NeutralizeAndRinse))
        } else if have < needed {
            told(Finding::unproven(Code::TooFewPhTests, Action::TestPh))
        } else if rinsed.body.rag == Some(RagResult::Faint) {
            told(Finding::cant_tell(Code::RagFaint, Action::NeutralizeAndRinse))
        } else {
            told(Finding::released(Code::PhFit)).and_if(rinsed.body.rag.is_none(), Code::NoRag)
        };
        finding.because(tests.iter().map(|s| s.entry.id)).because(done)
    }
}

/// Names the readings and the window they should lie in.
fn with_readings(finding: Finding, read: (Ph, Ph), window: (Ph, Ph)) -> Finding {
    finding
        .with("lowest", Value::Ph(read.0))
        .with("highest", Value::Ph(read.1))
        .with("low", Value::Ph(window.0))
        .with("high", Value::Ph(window.1))
}

fn extremes(tests: &[EntryOf<'_, SurfacePh>]) -> (Option<Ph>, Option<Ph>) {
    let values = || tests.iter().map(|s| s.body.ph.value());
    (values().reduce(|a, b| if b < a { b } else { a }), values().reduce(|a, b| if b > a { b } else { a }))
}
