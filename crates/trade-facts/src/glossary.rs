//! The words of the trade (`glossary.toml`).

use serde::{Deserialize, Serialize};

use super::grade::Grade;
use super::record::{record, translated};

/// A word of the trade (`glossary.toml`).
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Term {
    /// Word id.
    pub id: String,
    /// English.
    pub en: String,
    /// Remark.
    pub note: Option<String>,
    /// Grade of the word with its Spanish.
    pub grade: Grade,
    /// Source keys.
    pub source: Vec<String>,
}
record!(Term);
translated!(Term, "term" id: "word" en, "note" note);
