//! Oil, marks, drips, shadows: what other trades left, and whether it was dealt with.
//!
//! Time never clears a deposit. An incident is settled by treatment and a passed test on its spot,
//! or, where the trade says it may be, by a named person's acceptance.

use jiff::Timestamp;

use super::drops::Drink;
use super::finding::{Finding, Value};
use super::{Action, Code, Judge};
use slab_diary::body::{
    Accepted, Cleaning, CleaningMethod, Cover, CoverAction, CoverMaterial, Incident, Pour, PrintedSide, Repair, Retest,
    RetestResult, Scrape, ScrapeResult, Survey, WaterDrop,
};
use slab_diary::{Entry, EntryId};
use slab_diary::{EntryOf, Zone};
use trade_facts::{Blocks, Clears};

/// Incidents that other hold points judge.
const ELSEWHERE: [&str; 3] = ["membrane-compound", "trowel-burn", "nailed-into-field"];

impl Judge<'_> {
    pub(super) fn contamination(&self, zone: &Zone) -> Finding {
        let mut findings: Vec<Finding> = self
            .slab
            .all::<Incident>()
            .filter(|s| !ELSEWHERE.contains(&s.body.what.as_str()) && self.slab.touches(s.entry, zone))
            .map(|incident| self.incident(incident))
            .collect();
        findings.extend(self.covers(zone));
        findings.push(self.survey(zone));
        Finding::worst(findings).unwrap_or_else(|| Finding::unproven(Code::NoSurvey, Action::MistAndLook))
    }

    /// Whether an incident was settled, by the same rules.
    pub(super) fn incident_settled(&self, incident: EntryOf<'_, Incident>) -> bool {
        self.incident(incident).state == super::State::Released
    }

    pub(super) fn incident(&self, incident: EntryOf<'_, Incident>) -> Finding {
        let id = incident.entry.id;
        let record = self.figures.trade().incident(&incident.body.what);
        let named = |f: Finding| {
            let f = f
                .with("what", Value::Term(incident.body.what.clone()))
                .with("date", Value::Date(incident.entry.happened.date()))
                .because([id]);
            // What to do about it names what takes this kind out, and where it lies.
            let f = f.asking("remedy", Value::Remedy(incident.body.what.clone()));
            match self.slab.point_of(incident.entry) {
                Some(at) => f.asking("place", Value::Point(at)),
                None => f,
            }
        };
        // Nobody accepts what has not happened yet.
        let accepted =
            self.slab.all::<Accepted>().rfind(|s| s.body.of == id && s.entry.happened >= incident.entry.happened);
        if let Some(accepted) = accepted
            && record.is_some_and(|r| r.acceptable)
        {
            return named(Finding::released(Code::IncidentAccepted))
                .with("by", Value::Text(accepted.body.by.to_string()))
                .because([accepted.entry.id]);
        }
        let finding = self.incident_by_tests(incident, &named);
        // What can't be accepted stands as if nobody had: no better, and no worse.
        match accepted {
            Some(accepted) => named(finding.and(Code::IncidentNotAcceptable)).because([accepted.entry.id]),
            None => finding,
        }
    }

    fn incident_by_tests(&self, incident: EntryOf<'_, Incident>, named: &impl Fn(Finding) -> Finding) -> Finding {
        let happened = incident.entry.happened.instant();
        let record = self.figures.trade().incident(&incident.body.what);
        if record.is_some_and(|r| r.clears == Clears::Never) {
            return named(Finding::held(Code::NothingTakesItOut, Action::AskOwnerToAccept));
        }
        let treated = self.treated(incident).filter(|(at, _)| *at >= happened);
        let since = treated.map_or(happened, |(at, _)| at);
        let film_or_residue = record.is_none_or(|r| matches!(r.blocks, Blocks::Film | Blocks::Residue));
        let (look, drop, tests) = self.retests(incident, since, treated.is_some());
        let finding = match (treated, look, drop) {
            (None, None, None) => named(Finding::held(Code::IncidentUntreated, Action::TreatAndRetest)),
            (_, Some(RetestResult::StillThere), _) => {
                named(Finding::held(Code::IncidentStillThere, Action::TreatAndRetest))
            }
            (_, Some(RetestResult::Clear), Some(false)) => {
                named(Finding::cant_tell(Code::LooksClearButWaterStops, Action::TreatAndRetest))
            }
            (_, _, Some(false)) => named(Finding::held(Code::IncidentStopsWater, Action::TreatAndRetest)),
            (_, Some(RetestResult::Faint), _) => named(Finding::cant_tell(Code::IncidentFaint, Action::TreatAndRetest)),
            (None, _, _) => named(Finding::cant_tell(Code::ClearWithoutTreatment, Action::TreatAndRetest)),
            (Some(_), None, None) => named(Finding::unproven(Code::TreatedNotRetested, Action::RetestSpot)),
            // What sits in the pores can look gone: only water proves it.
            (Some(_), Some(RetestResult::Clear), None) if film_or_residue => {
                named(Finding::unproven(Code::TreatedLooksClearNoDrop, Action::RetestSpot))
            }
            (Some(_), _, _) => named(Finding::released(Code::IncidentCleared)),
        };
        finding.because(treated.map(|(_, by)| by)).because(tests)
    }

    /// The last treatment of an incident: one meant for it, or one that reached where it lies.
    fn treated(&self, incident: EntryOf<'_, Incident>) -> Option<(Timestamp, EntryId)> {
        let lifts = |s: &EntryOf<'_, Cleaning>| self.takes_it_out(s.body.method, incident);
        let there = |e: &Entry| e.place.is_none() || self.slab.reaches(e, incident.entry, self.one_place());
        let of = Some(incident.entry.id);
        let cleaned =
            self.slab.all::<Cleaning>().filter(|s| s.body.of == of && lifts(s) && there(s.entry)).map(|s| s.entry);
        let repaired = self.slab.all::<Repair>().filter(|s| s.body.of == of).map(|s| s.entry);
        let ground = self
            .slab
            .zones()
            .iter()
            .filter(|zone| self.slab.touches(incident.entry, zone))
            .flat_map(|zone| self.cleanings(zone).filter(lifts).map(|s| s.entry))
            .filter(|cleaning| self.slab.reaches(cleaning, incident.entry, self.one_place()));
        cleaned
            .chain(repaired)
            .chain(ground)
            .filter(|e| e.happened >= incident.entry.happened)
            .max_by_key(|e| e.order())
            .map(|e| (e.happened.instant(), e.id))
    }

    /// Whether a method can take out what an incident left; whether it did, only a test on the spot tells. What the
    /// acid dissolved is ground away; water alone evens a shadow and nothing else.
    fn takes_it_out(&self, method: CleaningMethod, incident: EntryOf<'_, Incident>) -> bool {
        if incident.body.what == "acid-or-bleach" {
            return super::surface::opens(method) && method != CleaningMethod::Acid;
        }
        let blocks = self.figures.trade().incident(&incident.body.what).map(|record| record.blocks);
        match method {
            CleaningMethod::Sweep | CleaningMethod::Acid => false,
            CleaningMethod::Water => blocks == Some(Blocks::Shadow),
            _ => true,
        }
    }

    /// The last look and whether the last drop soaked in, on the spot of an incident since a moment. A drop or scrape
    /// on the very spot counts after a treatment whether or not it names the incident; one that names it and lies
    /// elsewhere does not.
    fn retests(
        &self,
        incident: EntryOf<'_, Incident>,
        since: Timestamp,
        treated: bool,
    ) -> (Option<RetestResult>, Option<bool>, Vec<EntryId>) {
        let mut evidence = Vec::new();
        let id = incident.entry.id;
        let there = |e: &Entry| self.slab.reaches(incident.entry, e, self.one_place());
        let on_it = |e: &Entry, of: Option<EntryId>| {
            let point = self.slab.point_of(e).is_some();
            let named = of == Some(id) && (e.place.is_none() || there(e));
            let spot = self.slab.point_of(incident.entry).is_some() || self.slab.patch_of(incident.entry).is_some();
            e.happened.instant() >= since && (named || (treated && of.is_none() && point && spot && there(e)))
        };
        let look = self
            .slab
            .all::<Retest>()
            .rfind(|s| {
                s.body.of == id && s.entry.happened.instant() >= since && (s.entry.place.is_none() || there(s.entry))
            })
            .map(|s| (s.body.result, s.entry.id));
        let drop = self
            .slab
            .all::<WaterDrop>()
            .filter(|s| on_it(s.entry, s.body.of))
            .filter_map(|s| self.drink(s.body).map(|(drink, _)| (drink == Drink::Soaks, s.entry.id)))
            .last();
        let blade = self
            .slab
            .all::<Scrape>()
            .rfind(|s| on_it(s.entry, s.body.of))
            .map(|s| (s.body.result == ScrapeResult::Powder, s.entry.id));
        evidence.extend(look.map(|(_, id)| id));
        evidence.extend(drop.map(|(_, id)| id));
        evidence.extend(blade.map(|(_, id)| id));
        // A blade that still lifts something outweighs a drop that soaked in.
        let water = match (drop, blade) {
            (Some((soaks, _)), Some((powder, _))) => Some(soaks && powder),
            (Some((soaks, _)), None) => Some(soaks),
            (None, Some((false, _))) => Some(false),
            (None, _) => None,
        };
        (look.map(|(result, _)| result), water, evidence)
    }

    /// Covers that lie on the slab, or lay with ink or plastic against it and were not looked under.
    fn covers(&self, zone: &Zone) -> Vec<Finding> {
        let covers: Vec<EntryOf<'_, Cover>> =
            self.slab.all::<Cover>().filter(|s| self.slab.touches(s.entry, zone)).collect();
        let mut findings = Vec::new();
        for laid in covers.iter().filter(|s| s.body.action == CoverAction::Laid) {
            let lifted = covers.iter().find(|s| self.lifts(zone, **s, *laid));
            let told = |f: Finding| f.with("date", Value::Date(laid.entry.happened.date())).because([laid.entry.id]);
            let Some(lifted) = lifted else {
                findings.push(told(Finding::unproven(Code::CoverStillLies, Action::LiftMistAndLook)));
                continue;
            };
            let risky = laid.body.printed == Some(PrintedSide::Down) || laid.body.material == CoverMaterial::Plastic;
            let looked = self.surveys(zone).any(|s| s.entry.happened >= lifted.entry.happened);
            if risky && !looked {
                let code = if laid.body.printed == Some(PrintedSide::Down) {
                    Code::InkLayAgainstSlab
                } else {
                    Code::PlasticLayOnSlab
                };
                findings.push(told(Finding::unproven(code, Action::MistAndLook)).because([lifted.entry.id]));
            }
        }
        findings
    }

    fn surveys<'s>(&'s self, zone: &'s Zone) -> impl DoubleEndedIterator<Item = EntryOf<'s, Survey>> {
        self.slab.all::<Survey>().filter(move |s| s.body.contamination && self.sees_all(zone, s.entry))
    }

    /// Whether a look took in all of the zone's bare surface: none of it was left out, none lay under a cover, and none
    /// was placed since.
    pub(super) fn sees_all(&self, zone: &Zone, look: &Entry) -> bool {
        let placed =
            self.slab.all::<Pour>().any(|s| self.slab.touches(s.entry, zone) && s.entry.happened > look.happened);
        self.slab.covers(look, zone) && !self.covered(zone, look) && !placed
    }

    /// Whether a cover lay in the zone when somebody looked: what lies under it was not seen.
    pub(super) fn covered(&self, zone: &Zone, look: &Entry) -> bool {
        let at = |e: &Entry| e.happened.instant();
        let covers = || self.slab.all::<Cover>().filter(|s| self.slab.touches(s.entry, zone));
        covers()
            .filter(|s| s.body.action == CoverAction::Laid && at(s.entry) <= at(look))
            .any(|laid| !covers().any(|s| self.lifts(zone, s, laid) && at(s.entry) <= at(look)))
    }

    /// Whether lifting took away what was laid: all of it, since a lift frees only what it names.
    fn lifts(&self, zone: &Zone, lifted: EntryOf<'_, Cover>, laid: EntryOf<'_, Cover>) -> bool {
        let at_a_spot = laid.entry.place.as_ref().is_some_and(|place| place.zone.is_none());
        let all = self.slab.covers(lifted.entry, zone)
            || lifted.entry.place == laid.entry.place
            || (at_a_spot && self.slab.reaches(lifted.entry, laid.entry, self.one_place()));
        lifted.body.action == CoverAction::Lifted
            && lifted.body.material == laid.body.material
            && lifted.entry.happened >= laid.entry.happened
            && all
    }

    fn survey(&self, zone: &Zone) -> Finding {
        let Some(last) = self.surveys(zone).next_back() else {
            let looked = self.slab.all::<Survey>().rfind(|s| s.body.contamination && self.slab.touches(s.entry, zone));
            return match looked {
                // A look at a spot, or from before this concrete was placed, is none at the floor.
                Some(looked) if self.covered(zone, looked.entry) => {
                    Finding::unproven(Code::SurveyUnderCover, Action::LiftMistAndLook)
                        .with("date", Value::Date(looked.entry.happened.date()))
                        .because([looked.entry.id])
                }
                _ => Finding::unproven(Code::NoSurvey, Action::MistAndLook),
            };
        };
        let days = last.entry.happened.date().until(self.today).map_or(0, |span| span.get_days()).max(0);
        let keeps = self.figures.number("survey-keeps");
        let told = |f: Finding| {
            f.with("date", Value::Date(last.entry.happened.date()))
                .with("days", Value::Count(days as u32))
                .with("keeps", Value::Count(keeps as u32))
                .because([last.entry.id])
        };
        if f64::from(days) > keeps {
            told(Finding::unproven(Code::SurveyOld, Action::MistAndLook))
        } else {
            told(Finding::released(Code::Surveyed))
        }
    }
}
