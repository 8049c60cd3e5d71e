//! An illustration of the floor from a photographed panel: its colors and mottling, at true scale.
//!
//! Why this module exists: a mean color shows none of the mottling that makes reactive stain what
//! it is, and a client who saw a flat swatch feels cheated by a living floor. A patch of a panel is
//! reduced to its mean color, its three directions of variation in CIELAB, and for each how much
//! varies at which wavelength and how often each value occurs; seeded noise with the same figures
//! is then drawn as large as wanted.
//!
//! It shows color and mottling, not the pattern: veins, trowel arcs, brush marks and puddle rims
//! cannot come of it, and a screen is not a floor. Wherever it is shown, say so.
//!
//! Method: shaping noise in frequency and mapping its ranks is common in the making of textures
//! (M, no one source); after the mapping the power at each wavelength is near the panel's, not equal.
//!
//! ```
//! use science::chance::Seed;
//! use science::color::Lab;
//! use science::color::preview::{PanelColor, PixelSize};
//! use units::Length;
//! let size = PixelSize { width: 64, height: 64 };
//! let patch: Vec<Lab> = (0..64 * 64)
//!     .map(|i| Lab::new(45.0 + f64::from(i % 64 / 8), 12.0, 20.0))
//!     .collect::<Result<_, _>>()?;
//! let panel = PanelColor::from_lab(&patch, size, Length::millimeters(1.0))?;
//! let wide = PixelSize { width: 320, height: 200 };
//! let floor = panel.floor(wide, Length::millimeters(2.0), Seed(7))?;
//! assert_eq!(floor.pixels.len(), 320 * 200);
//! # Ok::<(), Box<dyn std::error::Error>>(())
//! ```

mod error;
mod floor;
mod levels;
mod panel_color;
mod plane;
mod principal;
mod radial;

pub use error::PreviewError;
pub use floor::Illustration;
pub use panel_color::{Channel, PanelColor};
pub use radial::Band;

use units::Length;

/// Most pixels drawn in one piece, those of a panel larger than the stretch among them.
pub const MAX_PIXELS: usize = 16_000_000;

/// Pixels across and along.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub struct PixelSize {
    /// Across.
    pub width: usize,
    /// Along.
    pub height: usize,
}

impl PixelSize {
    /// Fewest pixels on a side of a panel that mottling is measured from.
    pub const LEAST: usize = 32;
    /// Most pixels on a side.
    pub const MOST: usize = 4096;

    fn checked(self, least: usize) -> Result<(), PreviewError> {
        let fits = |side: usize| (least..=Self::MOST).contains(&side);
        if fits(self.width) && fits(self.height) { Ok(()) } else { Err(PreviewError::Size { size: self }) }
    }
}

/// The side of a pixel in meters.
fn checked(pixel: Length) -> Result<f64, PreviewError> {
    let side = pixel.as_meters();
    if (1e-5..=1.0).contains(&side) { Ok(side) } else { Err(PreviewError::Pixel(pixel)) }
}
