//! The trade facts: what the trade knows, how sure it is, and where that comes from.
//!
//! Why this crate exists: every rule, range, notice and caution of the tool is a record in a data
//! file under `trade/`, with a grade and sources, so that an answer can show what it rests on and a
//! reader can correct it without touching code. The crate only reads and checks those records; it
//! holds no rule of its own and does no I/O: the texts are arguments, or built in.
//!
//! ```
//! use trade_facts::{Grade, Measured, Trade};
//! use units::Duration;
//! let trade = Trade::built_in();
//! let age = trade.fact("age-before-stain-days").expect("a house rule");
//! assert_eq!(age.value_as::<Duration>(), Some(Duration::days(28.0)));
//! assert_eq!(age.grade, Grade::CommonPractice);
//! ```
//!
//! To add a fact: one record in the file of its topic, with its grade and source keys, and the Spanish of its
//! texts, where its kind has [`Translated`], in `locales/es/trade`. To add a kind of record: a struct with [`Record`],
//! a line in the loader's file list and in `typed`, and a list here.
//! The loader refuses what it does not know; `tests.rs` pins how many records each file has.

mod action;
mod allowance;
mod callback;
mod causes;
mod check;
mod conflict;
mod error;
mod facts;
mod finish;
mod glossary;
mod grade;
mod hold_point;
mod incident;
mod load;
mod material;
mod pack;
mod pour_spec;
mod pricing;
mod record;
mod safety;
mod sealer;
mod settable;
mod sign;
#[cfg(test)]
mod tests;
mod unit;
mod work_step;

use std::sync::LazyLock;

pub use action::NextAction;
pub use allowance::Allowance;
pub use callback::Callback;
pub use causes::{Cause, Likelihood, Observation, Stage};
pub use conflict::{Conflict, Position};
pub use error::{TradeError, TradeErrorKind};
pub use facts::{Bound, Fact, HoldPointTest, Number, Source};
pub use finish::{Finish, Marbling, Thirst, Traction};
pub use glossary::Term;
pub use grade::{Citation, Grade};
pub use hold_point::HoldPointId;
pub use incident::{Blocks, Clears, Incident};
pub use material::{Each, Material};
pub use pack::Pack;
pub use pour_spec::PourSpec;
pub use pricing::{MarginRow, PricingItem};
pub use record::{Measured, Record, Translated, Which};
pub use safety::SafetyRule;
pub use sealer::{MoistureRule, Sealer, SealerHazard, Vehicles};
pub use settable::SETTABLE;
pub use sign::{Sign, Signal};
pub use unit::{InUnit, Unit};
pub use work_step::{DurationKind, RateEach, WorkStep};

macro_rules! built_in_files {
    ($($name:literal),* $(,)?) => {
        &[$(($name, include_str!(concat!("../../../trade/", $name)))),*]
    };
}

/// The data files of this build: name and text.
const BUILT_IN: &[(&str, &str)] = built_in_files![
    "sources.toml",
    "practice.toml",
    "hold_point_tests.toml",
    "incidents.toml",
    "finishes.toml",
    "allowances.toml",
    "materials.toml",
    "sealers.toml",
    "pour_spec.toml",
    "safety.toml",
    "signs.toml",
    "limits.toml",
    "conflicts.toml",
    "glossary.toml",
    "work_breakdown.toml",
    "pricing.toml",
    "diagnosis.toml",
    "callbacks.toml",
    "next_actions.toml",
    "packs.toml",
];

/// All trade facts, checked.
#[derive(Debug, Clone, PartialEq)]
pub struct Trade {
    sources: Vec<Source>,
    facts: Vec<Fact>,
    hold_point_tests: Vec<HoldPointTest>,
    incidents: Vec<Incident>,
    finishes: Vec<Finish>,
    allowances: Vec<Allowance>,
    materials: Vec<Material>,
    sealers: Vec<Sealer>,
    pour_spec: Vec<PourSpec>,
    safety: Vec<SafetyRule>,
    signs: Vec<Sign>,
    limits: Vec<Fact>,
    conflicts: Vec<Conflict>,
    glossary: Vec<Term>,
    steps: Vec<WorkStep>,
    pricing: Vec<PricingItem>,
    margins: Vec<MarginRow>,
    causes: Vec<Cause>,
    observations: Vec<Observation>,
    likelihoods: Vec<Likelihood>,
    callbacks: Vec<Callback>,
    actions: Vec<NextAction>,
    packs: Vec<Pack>,
}

/// A list of one kind of record, in the order of its file, and the lookup by id.
macro_rules! list {
    ($(#[$all_doc:meta])* $all:ident, $(#[$one_doc:meta])* $one:ident: $type:ty) => {
        $(#[$all_doc])*
        pub fn $all(&self) -> impl ExactSizeIterator<Item = &$type> {
            self.$all.iter()
        }

        $(#[$one_doc])*
        #[must_use]
        pub fn $one(&self, id: &str) -> Option<&$type> {
            self.$all.iter().find(|record| record.id == id)
        }
    };
}

impl Trade {
    /// Reads and checks the data files, given as file name and text.
    ///
    /// # Errors
    ///
    /// The first mistake found, with file, record, field, what was found and what would be accepted;
    /// [`TradeErrorKind`] lists what is checked.
    pub fn load(files: &[(&str, &str)]) -> Result<Self, TradeError> {
        load::load(files)
    }

    /// The facts of this build. Read once; constant data.
    #[must_use]
    pub fn built_in() -> &'static Self {
        static TRADE: LazyLock<Trade> =
            LazyLock::new(|| Trade::load(BUILT_IN).expect("a test of this module loads the built-in files"));
        &TRADE
    }

    /// The sizes in which a class of material is sold.
    #[must_use]
    pub fn pack(&self, id: &str) -> Option<&Pack> {
        self.packs.iter().find(|record| record.id == id)
    }

    /// What an action of the standing costs in work and waiting.
    #[must_use]
    pub fn action(&self, id: &str) -> Option<&NextAction> {
        self.actions.iter().find(|record| record.id == id)
    }

    /// A statement or limit by id, from `practice.toml` or `limits.toml`.
    #[must_use]
    pub fn fact(&self, id: &str) -> Option<&Fact> {
        self.facts.iter().chain(&self.limits).find(|fact| fact.id == id)
    }

    /// A house rule by its short code, such as `R14`.
    #[must_use]
    pub fn house_rule(&self, code: &str) -> Option<&Fact> {
        self.facts.iter().find(|fact| fact.code.as_deref() == Some(code))
    }

    /// The statements of `practice.toml`, house rules first.
    pub fn facts(&self) -> impl ExactSizeIterator<Item = &Fact> {
        self.facts.iter()
    }

    /// A source by key.
    #[must_use]
    pub fn source(&self, key: &str) -> Option<&Source> {
        self.sources.iter().find(|source| source.key == key)
    }

    /// Every source.
    pub fn sources(&self) -> impl ExactSizeIterator<Item = &Source> {
        self.sources.iter()
    }

    /// The clauses of the pour sheet.
    pub fn pour_spec(&self) -> impl ExactSizeIterator<Item = &PourSpec> {
        self.pour_spec.iter()
    }

    /// A clause of the pour sheet by id.
    #[must_use]
    pub fn pour_clause(&self, id: &str) -> Option<&PourSpec> {
        self.pour_spec.iter().find(|clause| clause.id == id)
    }

    /// The hazards and cautions.
    pub fn safety(&self) -> impl ExactSizeIterator<Item = &SafetyRule> {
        self.safety.iter()
    }

    /// A hazard by id.
    #[must_use]
    pub fn safety_rule(&self, id: &str) -> Option<&SafetyRule> {
        self.safety.iter().find(|rule| rule.id == id)
    }

    /// The words of the trade.
    pub fn glossary(&self) -> impl ExactSizeIterator<Item = &Term> {
        self.glossary.iter()
    }

    /// A word of the trade by id.
    #[must_use]
    pub fn term(&self, id: &str) -> Option<&Term> {
        self.glossary.iter().find(|term| term.id == id)
    }

    /// The parts of a price.
    pub fn pricing(&self) -> impl ExactSizeIterator<Item = &PricingItem> {
        self.pricing.iter()
    }

    /// A part of a price by id.
    #[must_use]
    pub fn pricing_item(&self, id: &str) -> Option<&PricingItem> {
        self.pricing.iter().find(|item| item.id == id)
    }

    list!(
        /// The public limits and working thresholds.
        limits,
        /// A limit by id.
        limit: Fact
    );
    list!(
        /// The tests that release or hold a slab.
        hold_point_tests,
        /// A hold point test by id.
        hold_point_test: HoldPointTest
    );
    list!(
        /// What others leave on a slab.
        incidents,
        /// An incident kind by id.
        incident: Incident
    );
    list!(
        /// The slab finishes.
        finishes,
        /// A finish by id.
        finish: Finish
    );
    list!(
        /// The waste and reserve allowances.
        allowances,
        /// An allowance by id.
        allowance: Allowance
    );
    list!(
        /// The consumption figures.
        materials,
        /// A consumption figure by id.
        material: Material
    );
    list!(
        /// The sealer classes.
        sealers,
        /// A sealer class by id.
        sealer: Sealer
    );
    list!(
        /// The signs for the site.
        signs,
        /// A sign by id.
        sign: Sign
    );
    list!(
        /// The matters on which sources disagree.
        conflicts,
        /// A conflict by id.
        conflict: Conflict
    );
    list!(
        /// The steps of a job, in order.
        steps,
        /// A step by id.
        step: WorkStep
    );
    list!(
        /// The mark-up and margin table.
        margins,
        /// A row of the mark-up and margin table by id.
        margin: MarginRow
    );
    list!(
        /// The causes of failed color.
        causes,
        /// A cause by id.
        cause: Cause
    );
    list!(
        /// What can be observed on a failed floor.
        observations,
        /// An observation by id.
        observation: Observation
    );
    list!(
        /// The chances of the observations, a row for each cause.
        likelihoods,
        /// The chances under one cause, by the id of the cause.
        likelihood: Likelihood
    );
    list!(
        /// What people come back about.
        callbacks,
        /// A callback by id.
        callback: Callback
    );

    /// The grade a fact may be shown under: the weakest of its parts, and no surer than its best
    /// source carries. A statement read in a page that is cited as common practice shows as common
    /// practice.
    #[must_use]
    pub fn grade_to_show(&self, citation: &Citation) -> Grade {
        let best = citation.sources.iter().filter_map(|key| self.source(key)).map(Source::carries).min();
        best.map_or(citation.weakest, |best| best.max(citation.weakest))
    }

    /// What to print as the sources of a fact, each wording once; empty where no source carries it.
    #[must_use]
    pub fn cite(&self, citation: &Citation) -> Vec<&Source> {
        let mut out: Vec<&Source> = Vec::new();
        for source in citation.sources.iter().filter_map(|key| self.source(key)) {
            if out.iter().all(|known| known.cite != source.cite) {
                out.push(source);
            }
        }
        out
    }
}
