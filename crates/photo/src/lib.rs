//! Underfoot: photographs to color measurements.
//!
//! Why this crate exists: it is the one place where a file from someone's phone is taken apart.
//! [`inspect`] says what the file is before anything else touches it, and [`without_location`]
//! hands it on without saying where it was taken; neither decodes a pixel. [`decode`] makes pixels
//! of it, bounded in memory, and [`evenness`] asks them whether the slab is one color. Everything
//! works on bytes alone: no file names, no clock, no state.
//!
//! # Is the slab one color?
//! Damp and shade are the same to a camera: less light. So a smooth light is fitted and taken out,
//! what is left is measured in ΔE00, and a verdict is given only where nothing speaks against it:
//! an edge or a color that shade could have, a peak as of glare, boots in the frame, blur. Each such
//! thing is a [`Why`] with its numbers. "Even" on a patchy slab gets it stained and "patchy" on an
//! even one costs days, so can't tell comes first, and [`two`] photographs settle more than one.
//! **Every threshold is provisional: they come from synthetic pictures, not from slabs**
//! (`reference/photos/`, with the rates measured there). Even color is no proof of dryness.
//!
//! # To add something
//! What is kept of the data around the pixels is a list of what may stay, not of what must go, so
//! a carrier of positions nobody has heard of yet is dropped as well. To let a further EXIF value
//! stay, add its tag to the list in `exif.rs`; to accept a further picture format, add it to
//! [`Format`] with a reader beside `jpeg.rs` and `png.rs`. A further doubt about a verdict is a
//! [`Why`], a measurement in the file of its subject, and one rule in `rules.rs`.

mod card;
mod card_color;
mod cells;
mod decode;
mod edges;
mod error;
mod evenness;
mod exif;
mod field;
mod grid;
mod header;
mod jpeg;
mod kind;
mod light;
mod line;
mod location;
mod look;
mod marks;
mod overlay;
mod panel;
mod png;
mod rules;
mod score;
mod series;
mod shade;
mod small;
mod verdict;
mod why;

pub use card::{CardKind, FoundCard, MIN_CONFIDENCE, NoCard, find_card};
pub use decode::{Decoded, decode};
pub use error::{Found, PhotoError};
pub use evenness::evenness;
pub use grid::{CellState, Grid};
pub use header::{Format, Header, MAX_BYTES, MAX_PIXELS, Orientation, Taken, inspect};
pub use line::{Line, LineKind};
pub use location::without_location;
pub use look::{Card, EvennessLook, LookError, PixelScale, Rect, Reflectance};
pub use overlay::{MAX_WIDTH, overlay};
pub use panel::{BandPower, PanelColor, PanelError, PanelLight, panel_color, panel_light};
pub use rules::{EVEN_BELOW, PATCHY_FROM};
pub use series::{Agreement, Point, Series, Trend, series, two};
pub use small::small;
pub use verdict::{Evenness, Verdict};
pub use why::Why;
