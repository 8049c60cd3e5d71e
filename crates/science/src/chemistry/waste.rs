//! What the numbers of a waste mean for the rules, and what to tell those who decide.
//!
//! Nothing here says that a liquid may be poured away: the sewer authority and local code decide.

use units::Ph;

/// The bounds of pH that a watery waste is held against.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct WastePhLimits {
    /// Waste water to a sewer must not be below this.
    pub sewer_floor: Ph,
    /// Waste at or below this is corrosive hazardous waste.
    pub corrosive_low: Ph,
    /// Waste at or above this is corrosive hazardous waste.
    pub corrosive_high: Ph,
}

/// What a pH says about a watery waste. Local permits are often stricter.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum PhFinding {
    /// Below the federal floor for a sewer (40 CFR 403.5(b)(2)).
    BelowSewerFloor,
    /// Corrosive hazardous waste, both ends inclusive (40 CFR 261.22(a)(1)).
    CorrosiveHazardousWaste,
}

/// Everything a pH says; empty means only that these two rules are silent.
#[must_use]
pub fn ph_findings(ph: Ph, limits: &WastePhLimits) -> Vec<PhFinding> {
    let mut found = Vec::new();
    if ph < limits.sewer_floor {
        found.push(PhFinding::BelowSewerFloor);
    }
    if ph <= limits.corrosive_low || ph >= limits.corrosive_high {
        found.push(PhFinding::CorrosiveHazardousWaste);
    }
    found
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
