//! What to do next, in work and waiting (`next_actions.toml`).

use serde::{Deserialize, Serialize};

use super::grade::Grade;
use super::record::record;

/// An action the standing can ask for.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct NextAction {
    /// Word id, as in `standing::Action`.
    pub id: String,
    /// Minutes of work; 0 when there is only waiting.
    pub minutes: u32,
    /// Hours to wait for the answer afterwards.
    pub wait_hours: u32,
    /// Grade of the figures.
    pub grade: Grade,
    /// Source keys.
    pub source: Vec<String>,
}
record!(NextAction);
