//! Checks of `science` (all but moisture and chance) against values from outside, and laws.
//!
//! The reference values are files in `reference/physics`; each file's head says where it comes from
//! and how good it is. Row counts are pinned so that no case vanishes in silence.

mod air;
mod alarms;
mod chemistry;
mod concrete;
mod cure;
mod emission;
mod evaporation;
mod film;
mod laws_air;
mod laws_materials;
mod laws_time;
mod markup;
mod reference;
mod refusals;
mod ventilation;
mod waste;
mod windows;
