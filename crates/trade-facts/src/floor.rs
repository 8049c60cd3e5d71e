//! What lies on and in the floor: finishes, incidents, materials, allowances.

use serde::{Deserialize, Serialize};
use units::Coverage;

use super::grade::Grade;
use super::record::{measured_three, record};
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
    /// Notice for the site, English.
    pub en: String,
    /// Notice for the site, Spanish.
    pub es: String,
    /// Grade of the hazard.
    pub grade: Grade,
    /// Grade of the part of the wording that the sources do not carry.
    pub grade_rest: Option<Grade>,
    /// Grade of effect, remedy and severity.
    pub grade_effect: Grade,
    /// How the Spanish was checked.
    pub spanish_grade: String,
    /// Source keys.
    pub source: Vec<String>,
    /// Sources that touch the matter without carrying it.
    #[serde(default)]
    pub see: Vec<String>,
    /// What the sources say of it.
    pub source_note: Option<String>,
}
record!(Incident, optional grade_rest, plain grade_effect);

/// What one application of a material is.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Each {
    /// One coat.
    Coat,
    /// One pass.
    Pass,
}

/// A consumption figure (`materials.toml`).
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Material {
    /// Word id.
    pub id: String,
    /// What it is.
    pub item: String,
    /// Low figure, in `unit`.
    pub low: f64,
    /// Usual figure, in `unit`.
    pub mid: f64,
    /// High figure, in `unit`.
    pub high: f64,
    /// Unit.
    pub unit: Unit,
    /// What one application is, where the figure is for one.
    pub each: Option<Each>,
    /// How it is used.
    pub how_used: Option<String>,
    /// Grade of the idea.
    pub grade: Grade,
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
record!(Material, optional grade_numbers);
measured_three!(Material);

/// A waste or reserve allowance (`allowances.toml`).
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Allowance {
    /// Word id.
    pub id: String,
    /// What it allows for.
    pub meaning: String,
    /// Low figure, in `unit`.
    pub low: f64,
    /// Usual figure, in `unit`.
    pub mid: f64,
    /// High figure, in `unit`.
    pub high: f64,
    /// Unit.
    pub unit: Unit,
    /// Grade.
    pub grade: Grade,
    /// Source keys.
    pub source: Vec<String>,
    /// Sources that touch the matter without carrying it.
    #[serde(default)]
    pub see: Vec<String>,
}
record!(Allowance);
measured_three!(Allowance);
