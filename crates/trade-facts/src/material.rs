//! How much of a material a job takes (`materials.toml`).

use serde::{Deserialize, Serialize};

use super::grade::Grade;
use super::record::{measured_three, record, translated};
use super::unit::Unit;

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
translated!(Material, "material" id: "item" item);
