//! What people come back about (`callbacks.toml`).

use serde::{Deserialize, Serialize};

use super::grade::Grade;
use super::record::record;

/// What people come back about (`callbacks.toml`).
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Callback {
    /// Word id.
    pub id: String,
    /// 1 is the most frequent, as far as the pages read can tell.
    pub rank: u8,
    /// The complaint.
    pub complaint: String,
    /// What they wish they had had.
    pub wanted: String,
    /// Grade.
    pub grade: Grade,
    /// Source keys.
    pub source: Vec<String>,
}
record!(Callback);
