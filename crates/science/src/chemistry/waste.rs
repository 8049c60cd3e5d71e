//! What the numbers of a waste mean for the rules, and what to tell those who decide.
//!
//! Nothing here says that a liquid may be poured away: the sewer authority and local code decide.

use units::{Density, Ph};

use crate::limits::{corrosive_waste_ph, sewer_ph_floor, toxic_leachate};

/// The metals of the federal toxicity list, for which a laboratory's leachate test gives a number.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Metal {
    /// Arsenic.
    Arsenic,
    /// Barium.
    Barium,
    /// Cadmium.
    Cadmium,
    /// Chromium.
    Chromium,
    /// Lead.
    Lead,
    /// Mercury.
    Mercury,
    /// Selenium.
    Selenium,
    /// Silver.
    Silver,
}

impl Metal {
    /// Every metal of the list.
    pub const ALL: [Self; 8] = [
        Self::Arsenic,
        Self::Barium,
        Self::Cadmium,
        Self::Chromium,
        Self::Lead,
        Self::Mercury,
        Self::Selenium,
        Self::Silver,
    ];
}

/// What a pH says about a watery waste. Local permits are often stricter.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum PhFinding {
    /// Below the federal floor of pH 5.0 for a sewer (40 CFR 403.5(b)(2)).
    BelowSewerFloor,
    /// Corrosive hazardous waste: pH 2 or below, 12.5 or above (40 CFR 261.22(a)(1)).
    CorrosiveHazardousWaste,
}

/// Everything a pH says; empty means only that these two rules are silent.
#[must_use]
pub fn ph_findings(ph: Ph) -> Vec<PhFinding> {
    let mut found = Vec::new();
    if ph < sewer_ph_floor() {
        found.push(PhFinding::BelowSewerFloor);
    }
    let (low, high) = corrosive_waste_ph();
    if ph <= low || ph >= high {
        found.push(PhFinding::CorrosiveHazardousWaste);
    }
    found
}

/// Whether a leachate reaches the federal toxicity limit of a metal (40 CFR 261.24): equal counts.
#[must_use]
pub fn leachate_is_toxic(metal: Metal, measured: Density) -> bool {
    measured >= toxic_leachate(metal)
}

/// What the sewer authority needs to hear before it can answer.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Tell {
    /// How much liquid.
    Volume,
    /// Its pH, and how it was measured.
    Ph,
    /// What it was neutralized with.
    Neutralizer,
    /// Which metal salts the stain holds, from its safety data sheet.
    MetalSalts,
    /// Whether the solids were settled and kept back.
    Solids,
    /// The laboratory's metals, if measured.
    LaboratoryMetals,
    /// When and where it would be discharged.
    WhenAndWhere,
}

/// The list to go through with the sewer authority.
#[must_use]
pub const fn what_to_tell_the_sewer_authority() -> &'static [Tell] {
    &[
        Tell::Volume,
        Tell::Ph,
        Tell::Neutralizer,
        Tell::MetalSalts,
        Tell::Solids,
        Tell::LaboratoryMetals,
        Tell::WhenAndWhere,
    ]
}
