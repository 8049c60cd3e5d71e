//! Surface pH: lime enough before the stain, no acid left before the sealer.
//!
//! A pH test speaks only for the surface after the last acid, strip or wash.

use units::Ph;

use super::finding::{Finding, Value};
use super::stage::Stage;
use super::{Action, Code, Judge};
use slab_diary::Entry;
use slab_diary::body::{PhMoment, RagResult, SurfacePh};
use slab_diary::{EntryOf, Zone};

impl Judge<'_> {
    pub(super) fn surface_ph(&self, zone: &Zone) -> Finding {
        match self.stained(zone).next_back() {
            Some(coat) => self.ph_after_rinse(zone, coat.entry),
            None => self.ph_before_stain(zone),
        }
    }

    /// Readings for a moment of the work that still speak, and those that do not: made before something moved the
    /// pH there, too old, or made again since at the same place.
    fn ph_tests<'s>(
        &'s self,
        zone: &'s Zone,
        since: &[&Entry],
        moment: PhMoment,
    ) -> (Vec<EntryOf<'s, SurfacePh>>, Vec<EntryOf<'s, SurfacePh>>) {
        let near = self.one_place();
        let stands = |s: &EntryOf<'s, SurfacePh>| {
            self.keeps(s.entry, "surface-tests-keep")
                && since.iter().all(|e| s.entry.happened > e.happened || !self.slab.reaches(e, s.entry, near))
        };
        let (tests, outdated) = self
            .slab
            .all::<SurfacePh>()
            .filter(|s| self.slab.speaks_for(s.entry, zone) && s.body.moment.is_none_or(|m| m == moment))
            .partition(stands);
        (self.last_at_each_place(tests, |s| s.entry), outdated)
    }

    fn ph_before_stain(&self, zone: &Zone) -> Finding {
        let moved = self.ph_moved(zone);
        let (tests, outdated) = self.ph_tests(zone, &moved, PhMoment::BeforeStain);
        let moved: Vec<_> = moved.iter().map(|e| e.id).collect();
        let (have, needed) = self.ph_count(zone, tests.len());
        let counted = |f: Finding| f.with("have", Value::Count(have)).with("needed", Value::Count(needed));
        let (Some(lowest), Some(highest)) = extremes(&tests) else {
            return if outdated.is_empty() {
                counted(Finding::unproven(Code::NoPhTest, Action::TestPh))
            } else {
                let code = if moved.is_empty() { Code::PhTestLapsed } else { Code::PhTestOlderThanWash };
                counted(Finding::unproven(code, Action::TestPh))
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

    /// Readings over the slab before the stain, and how many it needs. A zone has at least one of its own, or
    /// nothing is said of it.
    fn ph_count(&self, zone: &Zone, own: usize) -> (u32, u32) {
        let needed = self.slab.area().map_or(self.figures.number("surface-ph-tests") as u32, |area| {
            self.figures.tests_for(area, "surface-ph-tests", Some("surface-ph-tests-further"))
        });
        // What was read elsewhere counts even if it no longer speaks there: nothing that happens in another zone
        // takes anything from this one.
        let others = self.slab.zones().iter().filter(|other| other.name != zone.name);
        let elsewhere: usize = others
            .map(|other| {
                let read = self.slab.all::<SurfacePh>().filter(|s| {
                    self.slab.speaks_for(s.entry, other) && s.body.moment.is_none_or(|m| m == PhMoment::BeforeStain)
                });
                self.last_at_each_place(read.collect(), |s| s.entry).len()
            })
            .sum();
        ((own + elsewhere) as u32, needed)
    }

    fn ph_after_rinse(&self, zone: &Zone, coat: &Entry) -> Finding {
        let neutralized = self.neutralized(zone, coat);
        let Some(neutralized) = neutralized else {
            return self.until_neutralized(zone).because([coat.id]);
        };
        let Some(rinsed) = self.rinsed(zone, neutralized) else {
            return Finding::held(Code::NotRinsed, Action::NeutralizeAndRinse).because([coat.id, neutralized.id]);
        };
        let done = [coat.id, neutralized.id, rinsed.entry.id];
        if rinsed.body.rag == Some(RagResult::Colored) {
            return Finding::held(Code::RagColored, Action::NeutralizeAndRinse).because(done);
        }
        let (tests, outdated) = self.ph_tests(zone, &[rinsed.entry], PhMoment::AfterRinse);
        let needed = zone.area.map_or(2, |area| self.figures.tests_for(area, "ph-readings-after-rinse", None));
        let have = tests.len() as u32;
        let counted = |f: Finding| f.with("have", Value::Count(have)).with("needed", Value::Count(needed));
        let (Some(lowest), Some(highest)) = extremes(&tests) else {
            let code = match outdated.iter().map(|s| &s.entry.happened).max() {
                None => Code::NoPhTestAfterRinse,
                Some(last) if *last > rinsed.entry.happened => Code::PhTestLapsed,
                Some(_) => Code::PhTestOlderThanWash,
            };
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

impl Judge<'_> {
    /// What a stained zone waits for until it is neutralized.
    fn until_neutralized(&self, zone: &Zone) -> Finding {
        let coat =
            self.coat_to_come(zone).map(|(coat, of)| vec![("coat", Value::Count(coat)), ("of", Value::Count(of))]);
        let then = |mut f: Finding| {
            f.further.extend(coat.clone().map(|about| (Action::LayCoat, about)));
            f
        };
        match self.stage(zone) {
            Stage::Dwell { until: Some(until) } => {
                then(Finding::held(Code::DwellRuns, Action::WaitDwell).with("until", Value::Moment(until)))
            }
            Stage::Dwell { until: None } => then(Finding::held(Code::DwellNotNoted, Action::WaitDwell)),
            Stage::NextCoat { coat, of } => Finding::held(Code::CoatToCome, Action::LayCoat)
                .with("coat", Value::Count(coat))
                .with("of", Value::Count(of)),
            _ => Finding::held(Code::NotNeutralized, Action::NeutralizeAndRinse),
        }
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
