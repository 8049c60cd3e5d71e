//! Buying, mixing, staining, rinsing, sealing.

use serde::{Deserialize, Serialize};
use units::{AsWritten, Duration, Ph, Volume};

use super::color::StainShare;
use super::testing::RagResult;

/// Material arrived.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Delivery {
    /// What.
    pub item: String,
    /// How much, as on the slip.
    pub amount: String,
    /// Batch number.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub batch: Option<String>,
}

/// A batch was mixed: water first, then the acid stain into the water.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct BatchMixed {
    /// The stains and their parts.
    pub mix: Vec<StainShare>,
    /// Stain in the batch.
    pub stain: AsWritten<Volume>,
    /// Water in the batch.
    pub water: AsWritten<Volume>,
}

/// A coat of stain was laid.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct CoatLaid {
    /// Which coat, from 1.
    pub coat: u32,
    /// Working mix used.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub used: Option<AsWritten<Volume>>,
    /// Time it was left alone.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub dwell: Option<AsWritten<Duration>>,
}

/// The floor was neutralized.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Neutralized {
    /// With what.
    pub with: Neutralizer,
    /// Solution used.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub used: Option<AsWritten<Volume>>,
}

/// Neutralizers by class.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Neutralizer {
    /// Sodium bicarbonate.
    Bicarbonate,
    /// Sodium carbonate.
    Carbonate,
    /// Household ammonia.
    Ammonia,
    /// Alkaline cleaner.
    AlkalineCleaner,
}

/// The floor was rinsed.
#[derive(Debug, Clone, PartialEq, Default, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Rinsed {
    /// Passes of scrub and vacuum.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub passes: Option<u32>,
    /// pH of the rinse water that came up.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub ph: Option<AsWritten<Ph>>,
    /// A damp white rag afterwards.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub rag: Option<RagResult>,
}

/// Waste was collected.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct WasteCollected {
    /// How much.
    pub volume: AsWritten<Volume>,
    /// Its pH.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub ph: Option<AsWritten<Ph>>,
    /// Where it went.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub went_to: Option<String>,
}

/// A coat of sealer was laid.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct SealerCoat {
    /// Which coat, from 1.
    pub coat: u32,
    /// How much was used.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub used: Option<AsWritten<Volume>>,
}
