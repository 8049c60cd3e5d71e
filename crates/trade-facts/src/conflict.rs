//! Matters on which sources disagree (`conflicts.toml`).

use serde::{Deserialize, Serialize};

use super::grade::Grade;
use super::record::record;

/// Which position our default follows.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Position {
    /// The first.
    A,
    /// The second.
    B,
    /// Both.
    Both,
    /// Neither.
    Neither,
}

/// A matter on which sources disagree (`conflicts.toml`).
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Conflict {
    /// Word id.
    pub id: String,
    /// What it is about.
    pub topic: String,
    /// First position.
    pub a: String,
    /// Who holds it; empty where the sources were too weak to cite.
    pub a_source: Vec<String>,
    /// Second position.
    pub b: String,
    /// Who holds it; empty where the sources were too weak to cite.
    pub b_source: Vec<String>,
    /// What we do.
    pub choice: String,
    /// Why.
    pub why: String,
    /// Which position our default follows.
    pub ours: Position,
    /// Grade of the disagreement.
    pub grade: Grade,
    /// Grade of our choice.
    pub grade_choice: Grade,
    /// Source keys of both sides.
    pub source: Vec<String>,
    /// What the sources say of it.
    pub source_note: Option<String>,
}
record!(Conflict, plain grade_choice);
