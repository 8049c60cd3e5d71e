//! The hold points: what must be settled before a slab is stained. The tests of `trade/hold_point_tests.toml`
//! belong to them, and a person may release one by word in the diary.

use serde::{Deserialize, Serialize};

/// The ten hold points.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum HoldPointId {
    /// Old enough, or one uniform color.
    Age,
    /// No film on the surface.
    Membrane,
    /// It drinks, and evenly.
    Absorbency,
    /// No oil, marks, drips or shadows.
    Contamination,
    /// Dry enough for the chosen sealer.
    Moisture,
    /// Surface pH fit for the stain, or for the sealer after the rinse.
    SurfacePh,
    /// Cracks and patches known and settled.
    Repairs,
    /// A panel of this concrete and finish approved.
    Panel,
    /// Water, eyewash, waste plan, safety data sheets.
    Site,
    /// Air and surface fit for work on the day.
    Air,
}

impl HoldPointId {
    /// All, in the order they are told.
    pub const ALL: [Self; 10] = [
        Self::Age,
        Self::Membrane,
        Self::Absorbency,
        Self::Contamination,
        Self::Moisture,
        Self::SurfacePh,
        Self::Repairs,
        Self::Panel,
        Self::Site,
        Self::Air,
    ];

    /// Its name in the diary and in JSON.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::Age => "age",
            Self::Membrane => "membrane",
            Self::Absorbency => "absorbency",
            Self::Contamination => "contamination",
            Self::Moisture => "moisture",
            Self::SurfacePh => "surface_ph",
            Self::Repairs => "repairs",
            Self::Panel => "panel",
            Self::Site => "site",
            Self::Air => "air",
        }
    }

    /// Its name in the trade records, whose ids are hyphenated words.
    #[must_use]
    pub const fn record_name(self) -> &'static str {
        match self {
            Self::SurfacePh => "surface-ph",
            other => other.name(),
        }
    }
}
