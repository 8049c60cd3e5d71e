//! The signs for the site (`signs.toml`).

use serde::{Deserialize, Serialize};

use super::grade::Grade;
use super::record::{record, translated};

/// The signal word of a sign, by the definitions of ANSI Z535.4 as quoted in a secondary copy.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Signal {
    /// Will cause death or serious injury.
    Danger,
    /// Could cause death or serious injury.
    Warning,
    /// Could cause minor or moderate injury.
    Caution,
    /// No injury.
    Notice,
}

/// A sign for the site (`signs.toml`).
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Sign {
    /// Word id.
    pub id: String,
    /// Signal word.
    pub signal: Signal,
    /// Where it hangs.
    pub place: String,
    /// What it says.
    pub en: String,
    /// Grade of the signal word; the wording is our own.
    pub grade: Grade,
    /// Source keys.
    pub source: Vec<String>,
    /// What the sources say of it.
    pub source_note: Option<String>,
}
record!(Sign);
translated!(Sign, "sign" id: "text" en);
