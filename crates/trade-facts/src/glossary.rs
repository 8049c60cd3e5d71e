//! The words of the trade in two languages (`glossary.toml`).

use serde::{Deserialize, Serialize};

use super::grade::Grade;
use super::record::record;

/// A trade word in two languages (`glossary.toml`).
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct TermPair {
    /// Word id.
    pub id: String,
    /// English.
    pub en: String,
    /// United States trade Spanish.
    pub es: String,
    /// Remark.
    pub note: Option<String>,
    /// Grade.
    pub grade: Grade,
    /// Source keys.
    pub source: Vec<String>,
}
record!(TermPair);
