//! Sample panels and the client's choice.

use serde::{Deserialize, Serialize};
use units::{Area, AsWritten, Duration, Length, Volume};

use super::{PictureBox, ReferenceCard};

/// A sample panel was made.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct PanelMade {
    /// Its name, such as `P1`.
    pub panel: String,
    /// The mix it was poured from, as on the ticket.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub mix: Option<String>,
    /// Its finish, by the id in the trade facts.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub finish: Option<String>,
    /// Its side.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub side: Option<AsWritten<Length>>,
    /// It is a corner of the real floor, not a poured panel.
    #[serde(default, skip_serializing_if = "std::ops::Not::not")]
    pub on_the_floor: bool,
}

/// A share of one stain in a mix.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct StainShare {
    /// The stain, by the crew's own name for its color.
    pub stain: String,
    /// Parts of it in the mix.
    pub parts: f64,
}

/// A panel was stained.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct PanelStained {
    /// Which panel.
    pub panel: String,
    /// The stains and their parts.
    pub mix: Vec<StainShare>,
    /// Parts of water to one part of stain.
    #[serde(default)]
    pub water_parts: f64,
    /// Coats laid.
    pub coats: u32,
    /// Working mix used in all coats together.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub used: Option<AsWritten<Volume>>,
    /// Area stained, when it is not the whole panel.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub area: Option<AsWritten<Area>>,
    /// Time each coat was left alone.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub dwell: Option<AsWritten<Duration>>,
}

/// A panel was photographed.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct PanelPhotographed {
    /// Which panel.
    pub panel: String,
    /// In which state.
    pub state: PanelState,
    /// Measured color, CIELAB (D65, 2°).
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub lab: Option<[f64; 3]>,
    /// What lay beside it to measure by.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub card: Option<ReferenceCard>,
    /// Where that lies in the first photograph.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub card_box: Option<PictureBox>,
    /// Where the whole panel lies in the first photograph. With the panel's side it tells how large a
    /// pixel is on the panel.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub panel_box: Option<PictureBox>,
}

/// State of a panel.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum PanelState {
    /// Bare concrete.
    Bare,
    /// Stained, not sealed.
    Stained,
    /// Stained and sealed.
    Sealed,
}

/// The client chose.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct ChoiceApproved {
    /// Which panel.
    pub panel: String,
    /// Who approved it.
    pub by: String,
    /// State of the panel when it was shown.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub state: Option<PanelState>,
    /// The text that was agreed.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub words: Option<String>,
}
