//! The sizes in which materials are sold (`packs.toml`).

use serde::{Deserialize, Serialize};

use super::grade::Grade;
use super::record::record;
use super::unit::{InUnit, Unit};

/// Sizes of one class of material.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Pack {
    /// Class of material: `stain`, `sealer`, `bicarbonate`.
    pub id: String,
    /// Sizes, in `unit`.
    pub sizes: Vec<f64>,
    /// Unit of the sizes.
    pub unit: Unit,
    /// Grade of the sizes.
    pub grade: Grade,
    /// Source keys.
    pub source: Vec<String>,
}
record!(Pack);

impl Pack {
    /// The sizes as quantities, smallest first; empty when the unit measures something else.
    #[must_use]
    pub fn sizes<Q: InUnit + PartialOrd>(&self) -> Vec<Q> {
        let mut numbers = self.sizes.clone();
        numbers.sort_by(f64::total_cmp);
        numbers.into_iter().filter_map(|size| Q::in_unit(size, self.unit)).collect()
    }
}
