//! How the slab came to be: pour, finish, curing.

use serde::{Deserialize, Serialize};
use units::{AsWritten, Density, FilmThickness, Fraction, Length, Pressure};

/// Concrete was placed; when it happened is the age's beginning.
#[derive(Debug, Clone, PartialEq, Default, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Pour {
    /// Name of the mix, as on the ticket.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub mix: Option<String>,
    /// Thickness.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub thickness: Option<AsWritten<Length>>,
    /// Water to cementitious material by mass, 0.3 to 0.8.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub water_cement: Option<AsWritten<Fraction>>,
    /// Cement in the mix.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub cement: Option<AsWritten<Density>>,
    /// Strength ordered.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub strength: Option<AsWritten<Pressure>>,
    /// Share of the cementitious material that is fly ash or slag.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub fly_ash: Option<AsWritten<Fraction>>,
    /// Calcium chloride in the mix.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub chloride: Option<bool>,
    /// Thickness of the vapor retarder directly below; absent when unknown.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub retarder: Option<AsWritten<FilmThickness>>,
}

/// The surface was finished.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Finish {
    /// Which finish, by its id in the trade facts.
    pub finish: String,
}

/// Curing began.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Curing {
    /// How.
    pub method: CuringMethod,
}

/// Ways to cure a slab.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum CuringMethod {
    /// Covers kept wet, flat on the slab.
    WetCovers,
    /// Water sprayed or ponded.
    Water,
    /// A plastic sheet laid on the slab.
    Sheet,
    /// A sprayed compound that leaves a film.
    Membrane,
    /// Nothing was done.
    None,
    /// Nobody knows.
    Unknown,
}

/// Curing ended; the slab dries from here.
#[derive(Debug, Clone, PartialEq, Eq, Default, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Cured {}
