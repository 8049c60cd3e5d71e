//! What the photographs of a slab's diary measure.
//!
//! Why this crate exists: `photo` measures pictures and knows no diary, `slab` keeps the diary and
//! opens no file. Here the two meet, for the command line and the pages alike: what an entry says of
//! its photograph (where the card lies, where the panel) goes into the measurement, and the verdict of
//! an entry with two photographs is that of both together.
//!
//! Everything works on bytes handed in: no disk, no clock.
//!
//! To measure a further kind of photograph: one file with a function from an entry's body and the
//! decoded picture to the measurement.

mod card;
mod floor;
mod panel;
mod place;

pub use card::{card, rect};
pub use floor::{Illustrated, illustrated, over};
pub use panel::{Mottling, MottlingError, ScaleFrom, panel_lab, panel_mottling};
pub use place::{Looked, look, row};
