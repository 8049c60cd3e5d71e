//! Diluting solvent vapor indoors: for health, for the explosive limit, and afterwards.
//!
//! Why this module exists: sealers give off solvent, and a room that is far below the explosive
//! limit is still far from healthy, so both flows are always shown. Sprayed mist and acid are
//! refused: droplets do not mix like vapor, and dilution is no protection from acid.
//!
//! Checked against `reference/physics/ventilation_checks.csv` and `exposure_limits.csv`. Numbers
//! here guide the choice of a fan; a respirator program and the safety data sheet are for a
//! competent person.

mod dilution;
mod error;
mod room;
mod substances;

pub use dilution::{
    DILUTION_FOR_HEALTH, DILUTION_FOR_LEL, ExplosiveMargin, Flows, How, Mixing, Release, Solvent, dilution_flows,
    explosive_flow, health_flow, vapor_rate,
};
pub use error::VentilationError;
pub use room::{Room, air_changes_for_removal, mass_concentration};
pub use substances::{AirLimit, FlashPoint, LimitKind, Substance, SubstanceData};
