//! Standing: is this slab ready, what proves it, what comes next.
//!
//! Ten hold points, each judged zone by zone from the entries known at a moment. A hold point is as
//! good as its worst zone. The answer is codes and quantities with the entries that prove them; the
//! sentences are in crate `words`.
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
mod membrane;
mod moisture;
mod overall;
mod panel;
mod release;
mod repairs;
mod site;
mod surface;
mod surface_ph;
mod temperature;

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
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Next {
    /// What.
    pub action: Action,
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
    /// State zone by zone.
    pub zones: Vec<(String, State)>,
    /// Why, worst first.
    pub why: Vec<Reason>,
    /// The entries it rests on.
    pub evidence: Vec<EntryId>,
    /// What to do next; nothing when released.
    pub next: Option<Next>,
    /// Ids of the trade records on the test and on what happens if it is skipped.
    pub tests: Vec<String>,
    /// What the rule rests on.
    pub citation: Citation,
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
        self.hold_points.iter().find(|h| h.id == id).expect("every standing judges all ten")
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
    let hold_points: Vec<HoldPoint> = HoldPointId::ALL.iter().map(|id| judge.hold_point(*id)).collect();
    let stained = slab.last::<slab_diary::body::CoatLaid>().is_some();
    Standing { knowledge: slab.knowledge(), overall: overall::overall(&hold_points, stained), hold_points }
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

    fn hold_point(&self, id: HoldPointId) -> HoldPoint {
        let mut findings: Vec<Finding> = match id {
            // These two are the same for the whole slab.
            HoldPointId::Site => vec![self.site()],
            HoldPointId::Air => vec![self.air()],
            _ => self.slab.zones().iter().map(|zone| self.zone(id, zone)).collect(),
        };
        for finding in &mut findings {
            self.apply_release(id, finding);
        }
        let state = findings.iter().map(|f| f.state).max().unwrap_or(State::Unproven);
        let zones = findings.iter().filter_map(|f| Some((f.zone.clone()?, f.state))).collect();
        findings.sort_by_key(|f| std::cmp::Reverse(f.state));
        let next = (state != State::Released)
            .then(|| findings.iter().find_map(|f| f.next))
            .flatten()
            .map(|action| self.next(action));
        let mut seen = std::collections::HashSet::new();
        let evidence = findings.iter().flat_map(|f| &f.evidence).copied().filter(|id| seen.insert(*id)).collect();
        let why = self.told_once(findings);
        let (tests, citation) = self.cited(id);
        HoldPoint { id, state, zones, why, evidence, next, tests, citation }
    }

    /// The reasons of all zones, worst first. What is the same in several zones is told once.
    fn told_once(&self, findings: Vec<Finding>) -> Vec<Reason> {
        let mut why: Vec<Reason> = Vec::new();
        for finding in findings {
            for mut reason in finding.reasons {
                let zone = finding.zone.clone();
                match why.iter_mut().find(|told| told.code == reason.code && told.values == reason.values) {
                    Some(told) => told.zones.extend(zone),
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

    fn next(&self, action: Action) -> Next {
        let record = self.figures.trade().action(action.name());
        Next { action, minutes: record.map_or(0, |r| r.minutes), wait_hours: record.map_or(0, |r| r.wait_hours) }
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
