//! Standing: is this slab ready, what proves it, what comes next.
//!
//! Eleven hold points, each judged zone by zone from the entries known at a moment. A hold point is as
//! good as its worst zone that it is still asked of: once stain is on a zone, the questions of the bare slab are
//! closed there ([`Stage`]). The answer is codes and quantities with the entries that prove them; the
//! sentences are in crate `localization`.
//!
//! To add a hold point: a variant of [`HoldPointId`], a file beside this one with its rules, one
//! line in `hold_point.rs`, and cases in `reference/standing/`.

mod absorbency;
mod age;
mod air;
mod code;
mod contamination;
mod deeds;
mod drops;
mod finding;
mod for_map;
mod hold_point;
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

use serde::{Deserialize, Serialize};

use slab_diary::body::Incident;
use slab_diary::{Diary, EntryId, Knowledge};
use slab_diary::{EntryOf, Figures, Slab, fold};
use trade_facts::{Citation, Trade};

pub use age::AgeRules;
pub use code::{Action, Code};
pub(crate) use deeds::deed;
pub use finding::{Reason, Value};
pub(crate) use for_map::{IncidentJudged, ZoneTried, for_map};
pub use overall::Overall;
pub use stage::Stage;
pub use trade_facts::HoldPointId;

pub(crate) use surface::DryingStart;
pub(crate) use temperature::between;

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
    let overall =
        overall::overall(&hold_points, together, slab.zones(), |stage, zones| judge.sealer_work(stage, zones));
    Standing { knowledge: slab.knowledge(), overall, hold_points }
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
}
