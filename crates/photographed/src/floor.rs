//! A panel's colours spread over the whole floor.

use science::chance::Seed;
use science::colour::preview::{Illustration, PanelColour, PixelSize, PreviewError};
use slab::plan::Plan;
use units::Length;

/// Pixels along the longer side of the floor.
const ALONG: f64 = 1000.0;

/// Colours over the box round a plan, from its upper left corner.
#[derive(Debug, Clone, PartialEq)]
pub struct Illustrated {
    /// The colours.
    pub colours: Illustration,
    /// Side of a pixel on the floor.
    pub pixel: Length,
}

/// Spreads a panel's colours over the box round a drawn plan, about a thousand pixels along its longer
/// side, never finer than the panel was photographed.
///
/// # Errors
/// As [`PanelColour::floor`]; a plan that is not drawn has no size.
pub fn illustrated(panel: &PanelColour, plan: &Plan, seed: Seed) -> Result<Illustrated, PreviewError> {
    let (low, high) = plan.bounds().ok_or(PreviewError::Size { size: PixelSize { width: 0, height: 0 } })?;
    let (wide, deep) = (Length::from(high.x - low.x), Length::from(high.y - low.y));
    over(panel, wide, deep, seed)
}

/// The same over a stretch of floor of any size.
///
/// # Errors
/// As [`illustrated`].
pub fn over(panel: &PanelColour, wide: Length, deep: Length, seed: Seed) -> Result<Illustrated, PreviewError> {
    let pixel = (wide.max(deep) / ALONG).max(panel.pixel());
    let count = |side: Length| {
        #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "at most a thousand, and one")]
        let whole = (side.as_metres() / pixel.as_metres()).ceil() as usize;
        whole.max(1)
    };
    let size = PixelSize { width: count(wide), height: count(deep) };
    Ok(Illustrated { colours: panel.floor(size, pixel, seed)?, pixel })
}
