//! What others leave on a slab (`incidents.toml`).

use serde::{Deserialize, Serialize};

use super::grade::Grade;
use super::record::{record, translated};

/// What kind of effect an incident has on the stain. Our judgment.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Blocks {
    /// A layer that keeps the stain off.
    Film,
    /// Something in the pores or on the paste that weakens the reaction.
    Residue,
    /// A color of its own that shows through.
    Dye,
    /// Iron that has colored or will color the paste.
    Iron,
    /// A difference in curing or moisture that the stain will copy.
    Shadow,
    /// A changed surface: burnt, etched, scratched, patched.
    Surface,
    /// No effect.
    None,
}

/// What releases an incident. Time alone never does.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Clears {
    /// No treatment is known; only acceptance by a named person.
    Never,
    /// Treated, and a test passed afterwards.
    TreatedAndRetested,
}

/// Something that other trades or accidents leave on a slab (`incidents.toml`).
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Incident {
    /// Word id.
    pub id: String,
    /// Short code, such as `I01`.
    pub code: String,
    /// Name.
    pub name: String,
    /// Trades that usually do it.
    pub trades: Vec<String>,
    /// When it shows.
    pub visible_when: String,
    /// What it does to the stain.
    pub effect: String,
    /// What helps.
    pub remedy: String,
    /// 1 slight to 5 spoils the floor.
    pub severity: u8,
    /// Kind of effect.
    pub blocks: Blocks,
    /// What releases it.
    pub clears: Clears,
    /// A named person may accept what stays.
    pub acceptable: bool,
    /// What the site notice asks.
    pub en: String,
    /// Short name, for a list of what was found.
    pub short: String,
    /// Grade of the hazard.
    pub grade: Grade,
    /// Grade of the part of the wording that the sources do not carry.
    pub grade_rest: Option<Grade>,
    /// Grade of effect, remedy and severity.
    pub grade_effect: Grade,
    /// Source keys.
    pub source: Vec<String>,
    /// Sources that touch the matter without carrying it.
    #[serde(default)]
    pub see: Vec<String>,
    /// What the sources say of it.
    pub source_note: Option<String>,
}
record!(Incident, optional grade_rest, plain grade_effect);
translated!(
    Incident, "incident" id: "name" name, "short" short, "notice" en, "remedy" remedy, "effect" effect,
    "visible" visible_when
);
