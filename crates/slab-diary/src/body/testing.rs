//! Readings and tests.

use serde::{Deserialize, Serialize};
use units::{Area, AsWritten, Duration, Length, Mass, Ph, RelativeHumidity, Speed};

/// One reading of the air, and of the slab's surface where it was taken.
#[derive(Debug, Clone, PartialEq, Default, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct AirReading {
    /// Air temperature.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub air: Option<AsWritten<units::Temperature>>,
    /// Relative humidity of the air.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub humidity: Option<AsWritten<RelativeHumidity>>,
    /// Wind at slab height.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub wind: Option<AsWritten<Speed>>,
    /// Surface temperature of the slab.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub slab: Option<AsWritten<units::Temperature>>,
    /// It rains, or rain is forecast for the work.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub rain: Option<bool>,
}

/// A series of readings from a weather file or a logger.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct AirSeries {
    /// Where it came from, such as the file's name.
    pub source: String,
    /// The readings.
    pub series: weather_series::Series,
}

/// Slab or air temperature.
#[derive(Debug, Clone, PartialEq, Default, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Temperature {
    /// Of the slab, on or in it.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub slab: Option<AsWritten<units::Temperature>>,
    /// Of the air.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub air: Option<AsWritten<units::Temperature>>,
}

/// A photograph of the slab, with what was measured in it.
#[derive(Debug, Clone, PartialEq, Default, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct SlabPhotograph {
    /// What lay in the picture as a reference.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub card: Option<ReferenceCard>,
    /// Verdict of the measurement.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub evenness: Option<Evenness>,
    /// Where the reference lies in the picture.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub card_box: Option<PictureBox>,
}

/// A box in the upright picture. All four are percent of the picture, 0 to 100; the box lies wholly
/// inside it.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields, try_from = "PictureBoxAsWritten")]
pub struct PictureBox {
    /// Left edge, percent of the width.
    pub x: f64,
    /// Upper edge, percent of the height.
    pub y: f64,
    /// Width, percent of the picture's.
    pub w: f64,
    /// Height, percent of the picture's.
    pub h: f64,
}

/// A box that is not read yet.
#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct PictureBoxAsWritten {
    x: f64,
    y: f64,
    w: f64,
    h: f64,
}

/// A box that does not lie in the picture.
#[derive(Debug, Clone, Copy, PartialEq, thiserror::Error)]
#[error("the box x {x}, y {y}, w {w}, h {h} leaves the picture; accepted: each 0 to 100, x + w and y + h up to 100")]
pub struct PictureBoxError {
    /// Left edge, percent.
    pub x: f64,
    /// Upper edge, percent.
    pub y: f64,
    /// Width, percent.
    pub w: f64,
    /// Height, percent.
    pub h: f64,
}

impl PictureBox {
    /// A box from its left and upper edge, width and height, in percent of the picture.
    ///
    /// # Errors
    /// [`PictureBoxError`] when a number is not 0 to 100, or the box leaves the picture.
    pub fn percent(x: f64, y: f64, w: f64, h: f64) -> Result<Self, PictureBoxError> {
        // Sums of typed decimals may end a rounding error beyond the edge.
        let inside = |number: f64| (0.0..=100.0 + 1e-9).contains(&number);
        if [x, y, w, h, x + w, y + h].into_iter().all(inside) {
            Ok(Self { x, y, w, h })
        } else {
            Err(PictureBoxError { x, y, w, h })
        }
    }
}

impl TryFrom<PictureBoxAsWritten> for PictureBox {
    type Error = PictureBoxError;
    fn try_from(written: PictureBoxAsWritten) -> Result<Self, PictureBoxError> {
        Self::percent(written.x, written.y, written.w, written.h)
    }
}

/// A thing of known lightness in a photograph.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum ReferenceCard {
    /// A gray card, 18 %.
    GrayCard,
    /// A sheet of white paper.
    WhitePaper,
}

/// Is the slab one color?
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Evenness {
    /// One color.
    Even,
    /// Light and dark fields.
    Patchy,
    /// Can't tell.
    CantTell,
}

/// The color judged by eye, dry and then misted.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct ColorLook {
    /// What was seen.
    pub evenness: Evenness,
}

/// Seconds for a water drop to soak in.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct WaterDrop {
    /// Time until it was absorbed.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub soaked_in: Option<AsWritten<Duration>>,
    /// It still stood after this time, when the watching stopped.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub still_stood_after: Option<AsWritten<Duration>>,
    /// It stood up as a bead, as on wax.
    #[serde(default, skip_serializing_if = "std::ops::Not::not")]
    pub beads: bool,
    /// The incident whose spot was tested.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub of: Option<crate::EntryId>,
}

/// What a blade lifts.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Scrape {
    /// What came up.
    pub result: ScrapeResult,
    /// The incident whose spot was tested.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub of: Option<crate::EntryId>,
}

/// What came up under the blade.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum ScrapeResult {
    /// Gray powder: bare paste.
    Powder,
    /// Nothing but a slight change of shine.
    ShineChange,
    /// A wax-like curl or shaving.
    Curl,
    /// Flakes of a film.
    Flake,
    /// Tacky.
    Tacky,
}

/// What a solvent rag lifts. Small spot, ventilated, by the solvent's safety data sheet.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct SolventWipe {
    /// The rag afterwards.
    pub result: WipeResult,
}

/// The rag afterwards.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum WipeResult {
    /// Clean.
    Clean,
    /// Clean, but the spot changed its shine.
    ShineChange,
    /// Sticky or yellow.
    StickyOrYellow,
}

/// Does the surface fizz under a drop of dilute acid.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct AcidDrop {
    /// How much.
    pub fizz: Fizz,
}

/// How much it fizzed.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Fizz {
    /// At once and strong.
    Strong,
    /// A little.
    Weak,
    /// Not at all.
    None,
}

/// Surface pH, with distilled water.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct SurfacePh {
    /// The reading.
    pub ph: AsWritten<Ph>,
    /// Before the stain or after the rinse; taken from the diary when absent.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub moment: Option<PhMoment>,
    /// pH of the rinse water itself, for comparison.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub rinse_water: Option<AsWritten<Ph>>,
}

/// When a pH was taken.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum PhMoment {
    /// Before any stain.
    BeforeStain,
    /// After the last rinse.
    AfterRinse,
}

/// Relative humidity in the slab, by a probe in a drilled hole.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct SlabHumidity {
    /// The reading.
    pub humidity: AsWritten<RelativeHumidity>,
    /// Depth of the probe.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub depth: Option<AsWritten<Length>>,
    /// How long the hole stood closed before the reading.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub equilibrated: Option<AsWritten<Duration>>,
}

/// Moisture emission by a dish of calcium chloride under a dome.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct EmissionDish {
    /// Mass the dish gained.
    pub gain: AsWritten<Mass>,
    /// Area under the dome.
    pub area: AsWritten<Area>,
    /// How long it stood.
    pub exposed: AsWritten<Duration>,
}

/// Moisture under a taped plastic sheet.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct PlasticSheet {
    /// What was seen when it was lifted.
    pub result: SheetResult,
    /// How long it lay.
    pub covered: AsWritten<Duration>,
    /// Its side.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub side: Option<AsWritten<Length>>,
}

/// What was seen under the sheet.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum SheetResult {
    /// No drops, no darkening.
    Dry,
    /// Slightly darker.
    Darkened,
    /// Drops.
    Drops,
}

/// A damp white rag after the rinse.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum RagResult {
    /// Mostly clean.
    Clean,
    /// A faint tint.
    Faint,
    /// Colored.
    Colored,
}
