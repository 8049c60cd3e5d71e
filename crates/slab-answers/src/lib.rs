//! What follows from a slab's diary: a room for each answer.
//!
//! Why this crate exists: it is the judgment. Every answer is a pure function of the entries as folded by
//! [`slab_diary`], the [`trade_facts`] and the moment asked about. Nothing here does input or output, reads
//! a clock, or holds state: `now`, time zone and seeds are arguments. It returns codes and quantities with
//! the entries that prove them, never sentences; those are in crate `localization`.
//!
//! To add an answer: a module beside these with one function from the folded slab, its codes, and their
//! sentences in `locales/`.

pub mod drying;
pub mod map;
pub mod order;
pub mod panels;
pub mod pour_day;
pub mod ready;
pub mod standing;
