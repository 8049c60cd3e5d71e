//! What a fact rests on.

use serde::{Deserialize, Serialize};

pub use science::Grade;

/// What a fact rests on.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Citation {
    /// How well the idea is known.
    pub grade: Grade,
    /// The weakest grade of any part: numbers, effects and wording beside the idea.
    /// A number must never be shown under a better grade than this.
    pub weakest: Grade,
    /// Keys of [`super::Source`] records; empty for trade habit and judgment.
    pub sources: Vec<String>,
}
