//! Colors as numbers: from a screen's bytes to a space in which distances match the eye, and how
//! far two colors lie apart.
//!
//! Why this module exists: "one color" and "the panel the client chose" are said by eye and
//! disputed by eye. A measured difference can be written down. It is no better than the photograph
//! or instrument behind it.
//!
//! The white point is D65 (x 0.3127, y 0.3290, 2° observer) and the matrix between linear light and
//! XYZ is derived from the primaries, so that equal red, green and blue are exactly neutral; the
//! four-digit matrix printed in the standard leaves grays up to 0.008 in a and b off.
//!
//! ```
//! use science::color::{Lab, Srgb, ciede2000};
//! let panel = Srgb::read("#7a563a")?;
//! let floor = Lab::new(42.0, 10.0, 21.0)?;
//! let apart = ciede2000(panel.lab(), floor);
//! assert!(apart.as_units() < 3.0);
//! # Ok::<(), science::color::ColorError>(())
//! ```
//!
//! Checked against `reference/color/` (V: published pairs, and colour-science 0.4.7).
//! To add a space: one file with its newtype and the way from and to [`Xyz`].

pub mod bulk;
pub mod preview;
pub mod recipe;

mod ciede2000;
mod error;
mod lab;
mod srgb;
mod xyz;

pub use ciede2000::{CIEDE2000, ColorDifference, ciede2000};
pub use error::ColorError;
pub use lab::Lab;
pub use srgb::{LinearRgb, Srgb};
pub use xyz::Xyz;
