//! The answers as JSON: units in the field names. Documented in `docs/json.md`.

mod amount;
mod entry;
mod map;
mod order;
mod standing;

pub(crate) use amount::rounded;
pub(crate) use entry::entry;
pub(crate) use map::map;
pub(crate) use order::order;
pub(crate) use standing::{missing, standing};
