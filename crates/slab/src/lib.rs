//! The slab: its plan, its diary, its standing, and what to order for it.
//!
//! Why this crate exists: it is the domain. A slab has one append-only [`diary`]; everything else
//! is a pure function of the entries, the [`trade`] facts and the moment asked about. Nothing here
//! does input or output, reads a clock, or holds state: `now`, time zone and ids are arguments.
//! It returns codes and quantities with the entries that prove them, never sentences; the words
//! are in crate `words`.

pub mod diary;
pub mod drying;
pub mod layout;
pub mod map;
pub mod order;
pub mod panels;
pub mod plan;
pub mod pour_day;
pub mod slab;
pub mod standing;
pub mod trade;
pub mod weather;
