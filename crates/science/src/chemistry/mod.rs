//! Acid, water and what neutralizes them: strengths, dilution by mass, stoichiometry, waste.
//!
//! Why this module exists: volumes of acid and water do not add up, dilution is not neutralization,
//! and "about a box of baking soda" is off by pounds. Amounts come from atomic weights; every
//! answer carries its cautions as codes. Nothing here says that a liquid may be poured away.
//!
//! Checked against `reference/physics/`: `molar_masses`, `neutralization`, `hcl_density_20C`,
//! `hcl_baume`, `chem_worked_examples`.

mod acid;
mod acidity;
mod caution;
mod dilution;
mod error;
mod neutralize;
mod solution;
mod species;
mod waste;

pub use acid::{
    BAUME, Baume, COMMERCIAL_GRADES, CommercialGrade, HCL_DENSITY, density_at_20_celsius, hcl_density, hcl_strength,
    hcl_strength_from_baume,
};
pub use acidity::{IdealPh, ideal_ph, molarity_at, water_only_dilution};
pub use caution::Caution;
pub use dilution::{Dilution, dilute_by_parts, dilute_to};
pub use error::ChemistryError;
pub use neutralize::{
    Base, CarbonDioxide, Mineral, Neutralization, STOICHIOMETRY, etched_depth, gas_volume, neutralize,
};
pub use solution::Solution;
pub use species::Species;
pub use waste::{PhFinding, Tell, WastePhLimits, ph_findings, what_to_tell_the_sewer_authority};
