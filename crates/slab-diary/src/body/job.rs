//! The job itself: what it is, what was chosen, who released what.

use serde::{Deserialize, Serialize};
use units::{AsWritten, FilmThickness, Fraction, Length, MoistureEmission, RelativeHumidity};

/// A job begins.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct JobOpened {
    /// What the crew calls this slab.
    pub name: String,
    /// Where it is, in the words needed to find it.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub site: Option<String>,
    /// Indoors or out; indoors when no entry says it.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub exposure: Option<Exposure>,
    /// Poured for this job, or an old floor; poured for it when no entry says it.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub age: Option<SlabAge>,
    /// Time zone by its name, such as `America/Chicago`.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub time_zone: Option<String>,
    /// Height above the sea.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub elevation: Option<AsWritten<Length>>,
    /// How many faces can dry: 1 on ground or on a sheet, 2 when the underside is open.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub drying_sides: Option<u8>,
}

/// Indoors or out.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Exposure {
    /// Under a roof.
    #[default]
    Interior,
    /// In the weather.
    Exterior,
}

/// Poured for this job, or an old floor.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum SlabAge {
    /// Poured for this job.
    #[default]
    New,
    /// An old floor; never held for its age.
    Existing,
}

/// The sealer was chosen, with its maker's own limits where they are known.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct SealerChosen {
    /// Class of sealer, by the id in the trade facts.
    pub sealer: String,
    /// Highest relative humidity in the slab that the maker allows.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub humidity_limit: Option<AsWritten<RelativeHumidity>>,
    /// Highest moisture emission that the maker allows.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub emission_limit: Option<AsWritten<MoistureEmission>>,
    /// Solids by volume from the maker's sheet.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub solids: Option<AsWritten<Fraction>>,
    /// Dry film wanted, one coat.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub dry_film: Option<AsWritten<FilmThickness>>,
    /// Coats wanted.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub coats: Option<u32>,
}

/// The site is set up for acid work. What is not mentioned was not checked.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct SiteCheck {
    /// Running water or enough of it brought along.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub water: Option<bool>,
    /// Eyewash within reach, tested.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub eyewash: Option<bool>,
    /// Where the rinse water goes, agreed in writing.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub waste_plan: Option<bool>,
    /// Safety data sheets on site and read.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub data_sheets: Option<bool>,
}

/// A named person released a hold point.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct HoldReleased {
    /// Which hold point.
    pub hold_point: trade_facts::HoldPointId,
    /// Who released it.
    pub by: String,
    /// Why.
    pub reason: String,
}

/// A trade figure was replaced for this slab, by its id in the trade facts.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct LimitSet {
    /// Id of the fact.
    pub fact: String,
    /// The value to use, in the fact's own unit.
    pub value: f64,
    /// Why.
    pub reason: String,
}

/// A free note.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Note {
    /// The text.
    pub text: String,
}
