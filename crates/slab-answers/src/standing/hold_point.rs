//! One hold point, from what its rule finds in each zone.

use std::rc::Rc;

use super::finding::Finding;
use super::{Code, HoldPoint, Judge, Reason, Stage, State};
use slab_diary::{EntryId, Slab, Zone};
use trade_facts::{Citation, Grade, HoldPointId, HoldPointTest, Record};

impl<'a> Judge<'a> {
    /// The slab as it was just before the first stain came onto each zone.
    pub(super) fn before_stain(&self) -> Vec<Option<Rc<Slab<'a>>>> {
        let mut known: Vec<(jiff::Timestamp, Rc<Slab<'a>>)> = Vec::new();
        let zones = self.slab.zones().iter();
        zones
            .map(|zone| {
                let at = self.stained(zone).next()?.entry.happened.instant() - jiff::SignedDuration::from_nanos(1);
                if let Some((_, slab)) = known.iter().find(|(moment, _)| *moment == at) {
                    return Some(Rc::clone(slab));
                }
                let slab = Rc::new(self.slab.as_it_was(at));
                known.push((at, Rc::clone(&slab)));
                Some(slab)
            })
            .collect()
    }

    pub(super) fn hold_point(&self, id: HoldPointId, stages: &[Stage], before: &[Option<Rc<Slab<'a>>>]) -> HoldPoint {
        let zones = self.slab.zones().iter().zip(stages);
        let asks: Vec<bool> = zones.map(|(zone, stage)| stage.asks(id) || self.partly_stained(zone)).collect();
        let asked = asks.contains(&true);
        let mut findings: Vec<Finding> = match id {
            // These two are the same for the whole slab.
            HoldPointId::Site => vec![self.released_or(id, self.site())],
            HoldPointId::Air => vec![self.released_or(id, self.air())],
            _ => self
                .slab
                .zones()
                .iter()
                .zip(asks.iter().zip(before))
                .map(|(zone, (asks, before))| match before {
                    Some(before) if !asks && !matches!(id, HoldPointId::SurfacePh | HoldPointId::Moisture) => {
                        self.as_it_was(id, zone, before)
                    }
                    _ => self.released_or(id, self.zone(id, zone)),
                })
                .collect(),
        };
        if !asked {
            for finding in &mut findings {
                finding.next = None;
                finding.further.clear();
            }
        }
        let zones = findings.iter().filter_map(|f| Some((f.zone.clone()?, f.state))).collect();
        let counts = |finding: &Finding| {
            let zone = finding.zone.as_ref().and_then(|name| self.slab.zones().iter().position(|z| z.name == *name));
            !asked || zone.is_none_or(|zone| asks[zone])
        };
        let state = findings.iter().filter(|f| counts(f)).map(|f| f.state).max().unwrap_or(State::Unproven);
        let by_word = findings.iter().any(|f| f.by_word);
        findings.sort_by_key(|f| (!counts(f), std::cmp::Reverse(f.state)));
        let next = self.next_of(&findings);
        let (next, proposed) = if state == State::Released { (None, next) } else { (next, None) };
        let deeds = if state == State::Released { Vec::new() } else { self.deeds(&findings, next.as_ref()) };
        let mut seen = std::collections::HashSet::new();
        let evidence: Vec<EntryId> =
            findings.iter().flat_map(|f| &f.evidence).copied().filter(|id| seen.insert(*id)).collect();
        let why = self.told_once(findings);
        let lapses = if state == State::Released && asked && !by_word { self.lapses(&evidence) } else { None };
        let (tests, citation) = self.cited(id);
        let own_limits = self.own_limits(id);
        HoldPoint {
            id,
            state,
            asked,
            by_word,
            zones,
            why,
            evidence,
            proposed,
            deeds,
            next,
            lapses,
            tests,
            citation,
            own_limits,
        }
    }

    pub(super) fn released_or(&self, id: HoldPointId, mut finding: Finding) -> Finding {
        self.apply_release(id, &mut finding);
        finding
    }

    /// How a zone stood at a question when the first stain came onto it. Nothing is proposed any more: a test would
    /// mark the floor and could change nothing.
    fn as_it_was(&self, id: HoldPointId, zone: &Zone, before: &Slab<'_>) -> Finding {
        let judge = Judge::new(before, self.figures);
        let mut finding = judge.released_or(id, judge.zone(id, zone));
        finding.next = None;
        finding.further.clear();
        finding.and(Code::ClosedByStain)
    }

    /// The reasons of all zones, worst first. What is the same in several zones is told once.
    pub(super) fn told_once(&self, findings: Vec<Finding>) -> Vec<Reason> {
        let mut why: Vec<Reason> = Vec::new();
        for finding in findings {
            for mut reason in finding.reasons {
                let zone = finding.zone.clone();
                match why.iter_mut().find(|told| told.code == reason.code && told.values == reason.values) {
                    Some(told) => told.zones.extend(zone.filter(|zone| !told.zones.contains(zone))),
                    None => {
                        reason.zones.extend(zone);
                        why.push(reason);
                    }
                }
            }
        }
        for reason in &mut why {
            if reason.zones.len() == self.slab.zones().len() {
                reason.zones.clear();
            }
        }
        why
    }

    pub(super) fn zone(&self, id: HoldPointId, zone: &Zone) -> Finding {
        let mut finding = match id {
            HoldPointId::Age => self.age(zone),
            HoldPointId::Membrane => self.membrane(zone),
            HoldPointId::Absorbency => self.absorbency(zone),
            HoldPointId::Reaction => self.reaction(zone),
            HoldPointId::Contamination => self.contamination(zone),
            HoldPointId::Moisture => self.moisture(zone),
            HoldPointId::SurfacePh => self.surface_ph(zone),
            HoldPointId::Repairs => self.repairs(zone),
            HoldPointId::Panel => self.panel(zone),
            HoldPointId::Site => self.site(),
            HoldPointId::Air => self.air(),
        };
        finding.zone = Some(zone.name.clone());
        finding
    }

    /// The figures of a hold point's tests that the diary of this slab sets for itself.
    fn own_limits(&self, id: HoldPointId) -> Vec<(String, EntryId)> {
        let trade = self.figures.trade();
        let tests = trade.hold_point_tests().filter(|test| test.hold_point == id.record_name());
        let named = tests.flat_map(|test| &test.limits);
        let about = trade.limits().filter(|fact| fact.about.as_deref() == Some(id.record_name())).map(|fact| &fact.id);
        let mut limits: Vec<(String, EntryId)> =
            named.chain(about).filter_map(|fact| Some((fact.clone(), self.figures.set_by(fact)?))).collect();
        limits.sort();
        limits.dedup();
        limits
    }

    /// The trade records on a hold point's tests, and the weakest ground any of them stands on.
    fn cited(&self, id: HoldPointId) -> (Vec<String>, Citation) {
        let trade = self.figures.trade();
        let tests: Vec<&HoldPointTest> =
            trade.hold_point_tests().filter(|t| t.hold_point == id.record_name()).collect();
        let citations: Vec<Citation> = match id {
            HoldPointId::Panel => trade.fact("panels-settle-the-color").map(Record::citation).into_iter().collect(),
            HoldPointId::Site => {
                trade.safety().filter(|r| r.code == "F01" || r.code == "F03").map(Record::citation).collect()
            }
            _ => tests.iter().map(|t| t.citation()).collect(),
        };
        let mut sources: Vec<String> = Vec::new();
        for source in citations.iter().flat_map(|c| &c.sources) {
            if !sources.contains(source) {
                sources.push(source.clone());
            }
        }
        let grade = citations.iter().map(|c| trade.grade_to_show(c)).max().unwrap_or(Grade::CommonPractice);
        (tests.iter().map(|t| t.id.clone()).collect(), Citation { grade, weakest: grade, sources })
    }
}
