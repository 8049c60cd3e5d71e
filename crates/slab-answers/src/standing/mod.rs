//! Standing: is this slab ready, what proves it, what comes next.
//!
//! Eleven hold points, each judged zone by zone from the entries known at a moment. A hold point is as
//! good as its worst zone that it is still asked of: once stain is on a zone, the questions of the bare slab are
//! closed there ([`Stage`]). The answer is codes and quantities with the entries that prove them; the
//! sentences are in crate `localization`.
//!
//! To add a hold point: a variant of [`HoldPointId`], a file beside this one with its rules, one
//! line in `judge_zone`, and cases in `reference/standing/`.

mod absorbency;
mod age;
mod air;
mod code;
mod contamination;
mod drops;
mod finding;
mod for_map;
mod keeping;
mod membrane;
mod moisture;
mod overall;
mod panel;
mod reaction;
mod release;
mod repairs;
mod site;
mod spread;
mod stage;
mod surface;
mod surface_ph;
mod temperature;

use std::rc::Rc;

use serde::{Deserialize, Serialize};

use slab_diary::body::Incident;
use slab_diary::{Diary, EntryId, Knowledge};
use slab_diary::{EntryOf, Figures, Slab, Zone, fold};
use trade_facts::{Citation, Grade, HoldPointTest, Record, Trade};

pub use age::AgeRules;
pub use code::{Action, Code};
pub use finding::{Reason, Value};
pub(crate) use for_map::{IncidentJudged, ZoneTried, for_map};
pub use overall::Overall;
pub use stage::Stage;
pub use trade_facts::HoldPointId;

pub(crate) use surface::DryingStart;
pub(crate) use temperature::between;

use finding::Finding;

/// State of a hold point, best first; the worse of two is their `max`.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum State {
    /// Proven fit.
    Released,
    /// Nothing tried yet, too little, or too old.
    Unproven,
    /// Evidence conflicts or is too weak.
    CantTell,
    /// Known unfit.
    Held,
}

impl State {
    /// Its name in JSON.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::Released => "released",
            Self::Unproven => "unproven",
            Self::CantTell => "cant_tell",
            Self::Held => "held",
        }
    }
}

/// The next thing to do at a hold point.
#[derive(Debug, Clone, PartialEq)]
pub struct Next {
    /// What.
    pub action: Action,
    /// Where: the zones it is for; none when it is for the whole slab.
    pub zones: Vec<String>,
    /// The numbers and names in it.
    pub values: Vec<(&'static str, Value)>,
    /// Minutes of work it takes.
    pub minutes: u32,
    /// Hours to wait for the answer afterwards.
    pub wait_hours: u32,
}

/// One hold point's judgment.
#[derive(Debug, Clone, PartialEq)]
pub struct HoldPoint {
    /// Which.
    pub id: HoldPointId,
    /// The worst of its zones.
    pub state: State,
    /// It is still a question somewhere on the slab.
    pub asked: bool,
    /// A person's word released it, at least in one zone.
    pub by_word: bool,
    /// State zone by zone.
    pub zones: Vec<(String, State)>,
    /// Why, worst first.
    pub why: Vec<Reason>,
    /// The entries it rests on.
    pub evidence: Vec<EntryId>,
    /// What is worth doing although the point is released; nothing when it is open.
    pub proposed: Option<Next>,
    /// Everything that its zones still ask for, the next thing first; nothing when released.
    pub deeds: Vec<Next>,
    /// What to do next; nothing when released.
    pub next: Option<Next>,
    /// When the first of the entries that release it will no longer count, by the slab's clock; nothing when it is
    /// open, rests on a word, or on what does not lapse.
    pub lapses: Option<jiff::civil::DateTime>,
    /// Ids of the trade records on the test and on what happens if it is skipped.
    pub tests: Vec<String>,
    /// What the rule rests on.
    pub citation: Citation,
    /// The figures of its tests that this slab has set for itself, with the entry that did.
    pub own_limits: Vec<(String, EntryId)>,
}

/// The standing of a slab at a moment.
#[derive(Debug, Clone, PartialEq)]
pub struct Standing {
    /// What was known, and when.
    pub knowledge: Knowledge,
    /// The overall answer.
    pub overall: Overall,
    /// The hold points, in the order of the job.
    pub hold_points: Vec<HoldPoint>,
}

impl Standing {
    /// A hold point by its id.
    #[must_use]
    pub fn hold_point(&self, id: HoldPointId) -> &HoldPoint {
        self.hold_points.iter().find(|h| h.id == id).expect("every standing judges all of them")
    }
}

/// What every rule sees: the slab, the figures that hold for it, and the moment. The drying forecast
/// asks it too, so that both count the same cure and the same limits.
pub(crate) struct Judge<'a> {
    slab: &'a Slab<'a>,
    figures: &'a Figures<'a>,
    at: jiff::Timestamp,
    today: jiff::civil::Date,
    /// Drops, scrapes and wipes zone by zone, gathered once for two hold points.
    tried: std::cell::OnceCell<Vec<drops::Tried<'a>>>,
}

/// Folds and judges a diary: what stood at a moment.
#[must_use]
pub fn standing(diary: &Diary, trade: &Trade, knowledge: Knowledge) -> Standing {
    judge(&fold(diary, knowledge), trade)
}

/// Judges a folded slab.
#[must_use]
pub fn judge(slab: &Slab<'_>, trade: &Trade) -> Standing {
    let figures = Figures::new(trade, slab);
    let judge = Judge::new(slab, &figures);
    let stages: Vec<Stage> = slab.zones().iter().map(|zone| judge.stage(zone)).collect();
    let before = judge.before_stain();
    let hold_points: Vec<HoldPoint> =
        HoldPointId::ALL.iter().map(|id| judge.hold_point(*id, &stages, &before)).collect();
    let mut together: Vec<(Stage, Vec<String>)> = Vec::new();
    for (stage, zone) in stages.iter().zip(slab.zones()) {
        match together.iter_mut().find(|(known, _)| known == stage) {
            Some((_, zones)) => zones.push(zone.name.clone()),
            None => together.push((*stage, vec![zone.name.clone()])),
        }
    }
    let overall = overall::overall(&hold_points, together, |stage, zones| judge.sealer_work(stage, zones));
    Standing { knowledge: slab.knowledge(), overall, hold_points }
}

/// A deed of its own, for zones of the slab (none: all of it), with the time it takes.
pub(crate) fn deed(slab: &Slab<'_>, trade: &Trade, action: Action, zones: &[String]) -> Next {
    let figures = Figures::new(trade, slab);
    let judge = Judge::new(slab, &figures);
    let here = || slab.zones().iter().filter(|zone| zones.is_empty() || zones.contains(&zone.name));
    let area = here().map(|zone| zone.area).sum::<Option<units::Area>>();
    let missing: u32 = match action {
        Action::TestPh => here().count() as u32,
        Action::WaterDrops | Action::DropAndScrape => here().map(|zone| judge.drops_needed(zone)).sum(),
        _ => 1,
    };
    judge.next(action, zones.to_vec(), vec![("missing", Value::Count(missing))], missing, area)
}

/// The two rules of age for each zone, side by side: days since the pour, and one color.
#[must_use]
pub fn age_rules(slab: &Slab<'_>, trade: &Trade) -> Vec<AgeRules> {
    let figures = Figures::new(trade, slab);
    let judge = Judge::new(slab, &figures);
    slab.zones().iter().map(|zone| judge.age_rules(zone)).collect()
}

/// Incidents that are not settled, in the order they happened.
#[must_use]
pub fn open_incidents<'d>(slab: &Slab<'d>, trade: &Trade) -> Vec<EntryOf<'d, Incident>> {
    let figures = Figures::new(trade, slab);
    let judge = Judge::new(slab, &figures);
    slab.all::<Incident>().filter(|incident| !judge.incident_settled(*incident)).collect()
}

/// What the standing says of one incident.
#[derive(Debug, Clone)]
pub struct IncidentStanding {
    /// Its state: released is settled.
    pub state: State,
    /// Why.
    pub reasons: Vec<Reason>,
    /// Treatments and tests on its spot, itself among them.
    pub evidence: Vec<EntryId>,
}

/// What the standing says of one incident; nothing when the entry is none or no longer stands.
#[must_use]
pub fn incident_standing(slab: &Slab<'_>, trade: &Trade, id: EntryId) -> Option<IncidentStanding> {
    let figures = Figures::new(trade, slab);
    let judge = Judge::new(slab, &figures);
    let seen = slab.all::<Incident>().find(|seen| seen.entry.id == id)?;
    let finding = judge.incident(seen);
    Some(IncidentStanding { state: finding.state, reasons: finding.reasons, evidence: finding.evidence })
}

impl<'a> Judge<'a> {
    pub(crate) fn new(slab: &'a Slab<'a>, figures: &'a Figures<'a>) -> Self {
        let at = slab.knowledge().at;
        let today = at.to_zoned_datetime(slab.time_zone()).date();
        Self { slab, figures, at, today, tried: std::cell::OnceCell::new() }
    }

    /// The slab as it was just before the first stain came onto each zone.
    fn before_stain(&self) -> Vec<Option<Rc<Slab<'a>>>> {
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

    fn hold_point(&self, id: HoldPointId, stages: &[Stage], before: &[Option<Rc<Slab<'a>>>]) -> HoldPoint {
        let asks: Vec<bool> = stages.iter().map(|stage| stage.asks(id)).collect();
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

    fn released_or(&self, id: HoldPointId, mut finding: Finding) -> Finding {
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

    /// The next thing to do: of the worst finding that proposes something, for all zones that are asked for the same.
    fn next_of(&self, findings: &[Finding]) -> Option<Next> {
        let led = findings.iter().find(|f| f.next.is_some())?;
        let action = led.next?;
        let alike: Vec<&Finding> = findings.iter().filter(|f| f.next == Some(action) && f.state == led.state).collect();
        let zones: Vec<String> = alike.iter().filter_map(|f| f.zone.clone()).collect();
        let whole = zones.len() == self.slab.zones().len();
        let area = self.slab.zones().iter().filter(|zone| zones.contains(&zone.name)).map(|zone| zone.area);
        let area = area.sum::<Option<units::Area>>().or(self.slab.area());
        let mut values = led.asked_about();
        let missing: u32 = alike.iter().map(|f| missing(&f.asked_about())).sum();
        values.push(("missing", Value::Count(missing)));
        Some(self.next(action, if whole { Vec::new() } else { zones }, values, missing, area))
    }

    /// Everything that open zones ask for, the same in several zones once, after the next thing.
    fn deeds(&self, findings: &[Finding], next: Option<&Next>) -> Vec<Next> {
        let mut deeds: Vec<Next> = next.cloned().into_iter().collect();
        for finding in findings.iter().filter(|f| f.state != State::Released) {
            let led = finding.next.map(|action| (action, finding.asked_about()));
            for (action, mut values) in led.into_iter().chain(finding.further.iter().cloned()) {
                let zones: Vec<String> = finding.zone.iter().cloned().collect();
                // Two spots are two deeds; the same test in two zones is one.
                let spot = |values: &[(&str, Value)]| {
                    values.iter().find(|(name, _)| *name == "place" || *name == "what").map(|(_, value)| value.clone())
                };
                let same = |known: &Next| known.action == action && spot(&known.values) == spot(&values);
                if let Some(known) = deeds.iter_mut().find(|known| same(known)) {
                    let missing = zones.iter().filter(|zone| !known.zones.contains(zone)).cloned().collect::<Vec<_>>();
                    if !known.zones.is_empty() {
                        known.zones.extend(missing);
                    }
                    continue;
                }
                let lacking = missing(&values);
                values.push(("missing", Value::Count(lacking)));
                let area = self.slab.zones().iter().find(|zone| zones.contains(&zone.name)).and_then(|zone| zone.area);
                let zones = if self.slab.zones().len() == 1 { Vec::new() } else { zones };
                deeds.push(self.next(action, zones, values, lacking, area.or(self.slab.area())));
            }
        }
        deeds
    }

    /// The work that a sealed floor still asks for.
    fn sealer_work(&self, stage: Stage, zones: &[String]) -> Option<Next> {
        let zones = if zones.len() == self.slab.zones().len() { Vec::new() } else { zones.to_vec() };
        let (action, values) = match stage {
            Stage::Seal { coat, of, from } => (
                Action::LaySealerCoat,
                vec![("coat", Value::Count(coat)), ("of", Value::Count(of)), ("from", Value::Moment(from))],
            ),
            Stage::Cure { until } => (Action::KeepOff, vec![("until", Value::Moment(until))]),
            _ => return None,
        };
        Some(self.next(action, zones, values, 0, self.slab.area()))
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

    /// The reasons of all zones, worst first. What is the same in several zones is told once.
    fn told_once(&self, findings: Vec<Finding>) -> Vec<Reason> {
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

    fn zone(&self, id: HoldPointId, zone: &Zone) -> Finding {
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

    /// An action with the time it takes: by itself, for each test still missing, and for the area.
    fn next(
        &self,
        action: Action,
        zones: Vec<String>,
        values: Vec<(&'static str, Value)>,
        missing: u32,
        area: Option<units::Area>,
    ) -> Next {
        let record = self.figures.trade().action(action.name());
        let minutes = record.map_or(0, |r| r.minutes_for(missing, area));
        Next { action, zones, values, minutes, wait_hours: record.map_or(0, |r| r.wait_hours) }
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

/// How many tests an action still lacks, by what is told with it.
fn missing(values: &[(&'static str, Value)]) -> u32 {
    let count = |wanted: &[&str]| {
        values.iter().find_map(|(name, value)| match value {
            Value::Count(count) if wanted.contains(name) => Some(*count),
            _ => None,
        })
    };
    match (count(&["needed"]), count(&["have", "drops"])) {
        (Some(needed), Some(have)) => needed.saturating_sub(have).max(1),
        (Some(needed), None) => needed,
        _ => count(&["places"]).unwrap_or(1),
    }
}
