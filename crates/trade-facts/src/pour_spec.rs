//! The clauses of the pour sheet (`pour_spec.toml`).

use serde::{Deserialize, Serialize};

use super::facts::Number;
use super::grade::Grade;
use super::record::{record, translated};

/// A clause of the pour sheet (`pour_spec.toml`).
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct PourSpec {
    /// Word id.
    pub id: String,
    /// Short code, such as `P10`.
    pub code: String,
    /// What it is about.
    pub item: String,
    /// What is asked.
    pub requirement: String,
    /// The value as printed.
    pub range: Option<String>,
    /// Why.
    pub why: Option<String>,
    /// The value in machine form.
    pub numbers: Vec<Number>,
    /// Where sources differ.
    pub conflict: Option<String>,
    /// Grade of the requirement.
    pub grade: Grade,
    /// Grade of the part of the wording that the sources do not carry.
    pub grade_rest: Option<Grade>,
    /// Grade of the numbers, where it differs.
    pub grade_numbers: Option<Grade>,
    /// Source keys.
    pub source: Vec<String>,
    /// Sources that touch the matter without carrying it.
    #[serde(default)]
    pub see: Vec<String>,
    /// What the sources say of it.
    pub source_note: Option<String>,
}
record!(PourSpec, optional grade_rest, optional grade_numbers);
translated!(PourSpec, "clause" id: "item" item, "requirement" requirement, "range" range, "why" why);
