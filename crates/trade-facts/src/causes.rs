//! Why colors fail: causes, observations, and the chance of each observation under each cause.

use std::collections::BTreeMap;

use serde::{Deserialize, Serialize};
use units::Duration;

use super::grade::Grade;
use super::record::record;

/// A cause of failed color (`diagnosis.toml`).
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Cause {
    /// Word id.
    pub id: String,
    /// Short code, such as `K01`.
    pub code: String,
    /// The cause.
    pub cause: String,
    /// Chance before anything is observed; all causes sum to one.
    pub prior: f64,
    /// What helps.
    pub remedy: String,
    /// Grade.
    pub grade: Grade,
    /// Source keys.
    pub source: Vec<String>,
}
record!(Cause);

/// When an observation exists at all.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Stage {
    /// At any time.
    Any,
    /// Only while staining.
    Staining,
    /// Only after sealing.
    Sealed,
}

/// Something that can be observed on a failed floor (`diagnosis.toml`). Not made is missing, not false.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Observation {
    /// Word id.
    pub id: String,
    /// Short code, such as `O01`.
    pub code: String,
    /// What is true when it is observed.
    pub observation: String,
    /// When it exists.
    pub stage: Stage,
    /// Minutes until the answer.
    pub minutes: f64,
    /// Minutes of work, where most of the time is waiting.
    pub work_minutes: Option<f64>,
    /// How it is made.
    pub how: String,
    /// Grade.
    pub grade: Grade,
    /// Source keys.
    pub source: Vec<String>,
}
record!(Observation);

impl Observation {
    /// Time until the answer.
    #[must_use]
    pub fn time(&self) -> Duration {
        Duration::minutes(self.minutes)
    }

    /// Time of work.
    #[must_use]
    pub fn work(&self) -> Duration {
        Duration::minutes(self.work_minutes.unwrap_or(self.minutes))
    }
}

/// The chance of each observation being true under one cause (`diagnosis.toml`).
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Likelihood {
    /// Id of the cause.
    pub id: String,
    /// Chance of each observation, by observation id; above 0 and below 1.
    pub given: BTreeMap<String, f64>,
    /// Grade.
    pub grade: Grade,
    /// Source keys.
    pub source: Vec<String>,
}
record!(Likelihood);
