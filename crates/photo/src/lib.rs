//! Underfoot: photographs to colour measurements.
//!
//! Why this crate exists: it is the one place where a file from someone's phone is taken apart.
//! [`inspect`] says what the file is before anything else touches it, and [`without_location`]
//! hands it on without saying where it was taken. Both work on bytes alone: no file names, no
//! clock, no state; both are linear in the size of the file, and neither decodes a pixel.
//!
//! What is kept of the data around the pixels is a list of what may stay, not of what must go, so
//! a carrier of positions nobody has heard of yet is dropped as well. To let a further EXIF value
//! stay, add its tag to the list in `exif.rs`; to accept a further picture format, add it to
//! [`Format`] with a reader beside `jpeg.rs` and `png.rs`.

mod card;
mod card_colour;
mod cells;
mod decode;
mod edges;
mod error;
mod evenness;
mod exif;
mod field;
mod header;
mod jpeg;
mod kind;
mod light;
mod location;
mod look;
mod marks;
mod overlay;
mod panel;
mod png;
mod score;
mod series;
mod shade;
mod verdict;
mod why;

pub use card::{CardKind, FoundCard, LEAST_CONFIDENCE, NoCard, find_card};
pub use decode::{Decoded, decode};
pub use edges::{Line, LineKind};
pub use error::{Found, PhotoError};
pub use evenness::evenness;
pub use header::{Format, Header, MOST_BYTES, MOST_PIXELS, Orientation, Taken, inspect};
pub use location::without_location;
pub use look::{Card, EvennessLook, LookError, PixelScale, Rect, Reflectance};
pub use overlay::{MOST_WIDTH, overlay};
pub use panel::{BandPower, PanelColour, PanelError, PanelLight, panel_colour, panel_light};
pub use series::{Agreement, Point, Series, Trend, series, two};
pub use verdict::{CellState, EVEN_BELOW, Evenness, Grid, PATCHY_FROM, Verdict};
pub use why::Why;
