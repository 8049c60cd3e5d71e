//! Why there is no illustration.

use super::PixelSize;
use units::{Length, LengthUnit};

/// A picture that cannot be measured, or a floor that cannot be drawn from it.
#[derive(Debug, Clone, Copy, PartialEq, thiserror::Error)]
pub enum PreviewError {
    /// Not as many colors as the size says.
    #[error("{found} colors for {} by {} pixels; accepted: one for each pixel, row by row", size.width, size.height)]
    Count {
        /// Colors given.
        found: usize,
        /// Size given.
        size: PixelSize,
    },
    /// Too few pixels on a side to tell mottling, or too many.
    #[error("{} by {} pixels; accepted: {least} to {most} on a side", size.width, size.height, least = PixelSize::LEAST, most = PixelSize::MOST)]
    Size {
        /// Size given.
        size: PixelSize,
    },
    /// No side of a pixel.
    #[error("side of a pixel {}; accepted: 0.01 mm to 1 m", .0.show(LengthUnit::Millimeter, 4))]
    Pixel(Length),
    /// A color is not a number.
    #[error("color of pixel {0} (from 0) is not a number")]
    NotANumber(usize),
    /// Finer than the panel was measured: nothing is known of such detail.
    #[error("side of a pixel {}; the panel was measured at {}; accepted: the same or coarser",
        asked.show(LengthUnit::Millimeter, 4), measured.show(LengthUnit::Millimeter, 4))]
    FinerThanPanel {
        /// Asked for.
        asked: Length,
        /// The panel's.
        measured: Length,
    },
    /// More pixels than are drawn in one piece.
    #[error("the illustration needs {pixels} pixels; accepted: up to {most}; draw it coarser or smaller", most = super::MAX_PIXELS)]
    TooLarge {
        /// Pixels it needs.
        pixels: usize,
    },
}
