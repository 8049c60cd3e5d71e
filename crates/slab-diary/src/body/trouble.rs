//! What went wrong on the slab, and what was done about it.

use serde::{Deserialize, Serialize};
use units::{Area, AsWritten, Length};

use crate::EntryId;

/// Something happened to the slab.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Incident {
    /// What, by its id in the trade facts.
    pub what: String,
    /// The trade that did it.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub trade: Option<String>,
    /// Area touched, when it is not drawn.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub area: Option<AsWritten<Area>>,
    /// Anything else.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub note: Option<String>,
}

/// A cover was laid or lifted.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Cover {
    /// Laid or lifted.
    pub action: CoverAction,
    /// Of what.
    pub material: CoverMaterial,
    /// Which side carries print.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub printed: Option<PrintedSide>,
}

/// Laid or lifted.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum CoverAction {
    /// Laid.
    Laid,
    /// Lifted.
    Lifted,
}

/// What a cover is made of.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum CoverMaterial {
    /// Breathing board.
    Board,
    /// Paper.
    Paper,
    /// Cardboard.
    Cardboard,
    /// Plastic sheet.
    Plastic,
    /// Plywood.
    Plywood,
    /// Something else.
    Other,
}

/// Which side of a cover carries print.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum PrintedSide {
    /// Print up, away from the slab.
    Up,
    /// Print down, against the slab.
    Down,
    /// No print.
    None,
}

/// The surface was cleaned, stripped, washed or abraded.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Cleaning {
    /// How.
    pub method: CleaningMethod,
    /// The incident it was for.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub of: Option<EntryId>,
}

/// Ways to clean a slab.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum CleaningMethod {
    /// Sweep and vacuum.
    Sweep,
    /// Scrub with a neutral cleaner.
    NeutralScrub,
    /// Scrub with an alkaline cleaner.
    AlkalineScrub,
    /// Degreaser.
    Degreaser,
    /// Poultice.
    Poultice,
    /// Solvent on a spot.
    Solvent,
    /// Chemical stripper.
    Stripper,
    /// Acid wash.
    Acid,
    /// Screen with an abrasive disc.
    Screen,
    /// Grind.
    Grind,
    /// Blast with shot or grit.
    Blast,
    /// Plain water.
    Water,
}

/// The spot of an incident was looked at again after the treatment.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Retest {
    /// The incident.
    pub of: EntryId,
    /// What was seen.
    pub result: RetestResult,
}

/// What was seen at the second look.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum RetestResult {
    /// Nothing left.
    Clear,
    /// A trace.
    Faint,
    /// Still there.
    StillThere,
}

/// A crack, hole or patch was found.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Defect {
    /// What.
    pub what: DefectKind,
    /// Width of a crack.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub width: Option<AsWritten<Length>>,
    /// Its sides move against each other.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub moving: Option<bool>,
}

/// Kinds of defect.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum DefectKind {
    /// A crack.
    Crack,
    /// A nail or anchor hole.
    Hole,
    /// A spall.
    Spall,
    /// An old patch.
    Patch,
    /// A weak, dusting surface.
    Dusting,
}

/// A defect was repaired.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Repair {
    /// The defect or incident.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub of: Option<EntryId>,
    /// With what.
    pub material: RepairMaterial,
    /// The owner knows that it will show.
    #[serde(default, skip_serializing_if = "std::ops::Not::not")]
    pub owner_told: bool,
}

/// Repair materials by class.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum RepairMaterial {
    /// Plain cement patch: takes stain, in another color.
    Cement,
    /// Polymer or epoxy: takes no stain.
    Polymer,
    /// Gypsum: takes no stain.
    Gypsum,
}

/// An incident or defect was accepted as it is.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Accepted {
    /// The incident or defect.
    pub of: EntryId,
    /// Who accepted it.
    pub by: String,
    /// In what words.
    pub reason: String,
}

/// The mist-and-look round over the bare slab.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Survey {
    /// Oil, marks, drips and shadows were looked for.
    #[serde(default = "yes")]
    pub contamination: bool,
    /// Cracks, holes and patches were looked for.
    #[serde(default = "yes")]
    pub cracks: bool,
}

fn yes() -> bool {
    true
}
