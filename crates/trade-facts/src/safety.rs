//! Hazards with their cautions (`safety.toml`).

use serde::{Deserialize, Serialize};

use super::grade::Grade;
use super::record::record;

/// A hazard and its usual cautions (`safety.toml`). The safety data sheet and local rules govern.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct SafetyRule {
    /// Word id.
    pub id: String,
    /// Short code, such as `F02`.
    pub code: String,
    /// The hazard.
    pub hazard: String,
    /// The kinds of work it goes with.
    pub when: Vec<String>,
    /// The rule or fact.
    pub rule: Option<String>,
    /// The usual controls.
    pub control: Option<String>,
    /// The sign to stop work.
    pub stop_work_if: Option<String>,
    /// Ids of the [`super::Fact`]s with its numbers.
    pub limits: Vec<String>,
    /// Grade of the rule.
    pub grade: Grade,
    /// Grade of the part of the wording that the sources do not carry.
    pub grade_rest: Option<Grade>,
    /// Source keys.
    pub source: Vec<String>,
    /// Sources that touch the matter without carrying it.
    #[serde(default)]
    pub see: Vec<String>,
    /// What the sources say of it.
    pub source_note: Option<String>,
}
record!(SafetyRule, optional grade_rest);
