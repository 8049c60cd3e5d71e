//! What is added for waste and reserve (`allowances.toml`).

use serde::{Deserialize, Serialize};

use super::grade::Grade;
use super::record::{measured_three, record, translated};
use super::unit::Unit;

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
translated!(Allowance, "allowance" id: "meaning" meaning);
