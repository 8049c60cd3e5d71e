//! The hold points: what must be settled before a slab is stained. The tests of `trade/hold_point_tests.toml`
//! belong to them, and a person may release one by word in the diary.

use serde::{Deserialize, Serialize};

/// The eleven hold points.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum HoldPointId {
    /// Old enough, or one uniform color.
    Age,
    /// No film on the surface.
    Membrane,
    /// It drinks, and evenly.
    Absorbency,
    /// This concrete reacts with the stain at all.
    Reaction,
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
    pub const ALL: [Self; 11] = [
        Self::Age,
        Self::Membrane,
        Self::Absorbency,
        Self::Reaction,
        Self::Contamination,
        Self::Moisture,
        Self::SurfacePh,
        Self::Repairs,
        Self::Panel,
        Self::Site,
        Self::Air,
    ];

    /// Their names.
    pub const NAMES: [&'static str; 11] = {
        let mut names = [""; 11];
        let mut i = 0;
        while i < names.len() {
            names[i] = Self::ALL[i].name();
            i += 1;
        }
        names
    };

    /// Those that a person may release by word: not the site set-up, which is checked, and not the air, which
    /// is read.
    pub const BY_WORD: [&'static str; 9] = {
        let mut names = [""; 9];
        let (mut i, mut n) = (0, 0);
        while i < Self::ALL.len() {
            if !matches!(Self::ALL[i], Self::Site | Self::Air) {
                names[n] = Self::ALL[i].name();
                n += 1;
            }
            i += 1;
        }
        names
    };

    /// Its name in the diary and in JSON.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::Age => "age",
            Self::Membrane => "membrane",
            Self::Absorbency => "absorbency",
            Self::Reaction => "reaction",
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
            Self::Reaction => "substrate",
            other => other.name(),
        }
    }
}
