//! The slab finishes (`finishes.toml`).

use serde::{Deserialize, Serialize};
use units::Coverage;

use super::grade::Grade;
use super::record::{record, translated};
use super::unit::{InUnit, Unit};

/// How well a surface grips.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Traction {
    /// Slippery.
    Poor,
    /// Middling.
    Fair,
    /// Good.
    Good,
}

/// How thirsty a finish is.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Thirst {
    /// Nearly closed.
    VeryLow,
    /// Low.
    Low,
    /// Medium.
    Medium,
    /// Between medium and high.
    MediumToHigh,
    /// High.
    High,
}

/// How much marbling a finish gives.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Marbling {
    /// Little.
    Low,
    /// Between low and medium.
    LowToMedium,
    /// Medium.
    Medium,
    /// Much.
    High,
    /// No single word fits; see the note.
    Varies,
}

/// A slab finish (`finishes.toml`).
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Finish {
    /// Word id.
    pub id: String,
    /// Name.
    pub name: String,
    /// What it means for the stain, as the pour sheet says it.
    pub meaning: String,
    /// Grip when dry.
    pub traction_dry: Traction,
    /// Grip when wet.
    pub traction_wet: Traction,
    /// Thirst.
    pub absorbency: Thirst,
    /// Remark on thirst.
    pub absorbency_note: Option<String>,
    /// Marbling.
    pub marbling: Marbling,
    /// Remark on marbling.
    pub marbling_note: Option<String>,
    /// Least stain coverage of one coat, in `coverage_unit`.
    pub coverage_low: f64,
    /// Greatest stain coverage of one coat, in `coverage_unit`.
    pub coverage_high: f64,
    /// Unit of the coverage.
    pub coverage_unit: Unit,
    /// Fewest coats beyond the usual.
    pub extra_coats_low: u8,
    /// Most coats beyond the usual.
    pub extra_coats_high: u8,
    /// The finish can refuse stain altogether until it is opened.
    pub may_not_take: bool,
    /// Remark.
    pub note: String,
    /// Grade of the description.
    pub grade: Grade,
    /// Grade of the coverage and coats.
    pub grade_numbers: Grade,
    /// Source keys.
    pub source: Vec<String>,
    /// Sources that touch the matter without carrying it.
    #[serde(default)]
    pub see: Vec<String>,
    /// What the sources say of it.
    pub source_note: Option<String>,
}
record!(Finish, plain grade_numbers);
translated!(Finish, "finish" id: "name" name, "meaning" meaning);

impl Finish {
    /// Least and greatest stain coverage of one coat; a trade range, to be replaced by what panels drank.
    #[must_use]
    pub fn coverage(&self) -> (Coverage, Coverage) {
        (coverage(self.coverage_low, self.coverage_unit), coverage(self.coverage_high, self.coverage_unit))
    }
}

/// A coverage whose unit the loader has checked.
pub(super) fn coverage(value: f64, unit: Unit) -> Coverage {
    <Coverage as InUnit>::in_unit(value, unit).expect("the loader admits only ft2/gal as a coverage unit")
}
