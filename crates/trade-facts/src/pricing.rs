//! The parts of a price, and mark-up against margin (`pricing.toml`).

use serde::{Deserialize, Serialize};

use super::facts::Number;
use super::grade::Grade;
use super::record::record;

/// A part of a price (`pricing.toml`).
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct PricingItem {
    /// Word id.
    pub id: String,
    /// Group on the estimate.
    pub group: String,
    /// What it is.
    pub item: String,
    /// What it is counted in.
    pub basis: String,
    /// What the user enters.
    pub input: Option<String>,
    /// Range or rule in words.
    pub rule: Option<String>,
    /// The range in machine form.
    pub numbers: Vec<Number>,
    /// What goes wrong.
    pub pitfall: Option<String>,
    /// Grade.
    pub grade: Grade,
    /// Source keys.
    pub source: Vec<String>,
}
record!(PricingItem);

/// A row of the table that keeps mark-up and margin apart (`pricing.toml`):
/// markup = margin / (1 − margin).
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct MarginRow {
    /// Word id.
    pub id: String,
    /// Margin, percent of price.
    pub margin_pct: f64,
    /// Mark-up, percent of cost, to two decimals.
    pub markup_pct: f64,
    /// Price of a cost of 100, to two decimals.
    pub price_per_100_cost: f64,
    /// Grade.
    pub grade: Grade,
    /// Source keys.
    pub source: Vec<String>,
}
record!(MarginRow);
