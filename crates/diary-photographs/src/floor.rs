//! A panel's colors spread over the whole floor.

use science::chance::Seed;
use science::color::preview::{Illustration, PanelColor, PixelSize, PreviewError};
use slab_plan::Plan;
use units::Length;

/// Pixels along the longer side of the floor.
const ALONG: f64 = 1000.0;

/// Colors over the box round a plan, from its upper left corner.
#[derive(Debug, Clone, PartialEq)]
pub struct Illustrated {
    /// The colors.
    pub colors: Illustration,
    /// Side of a pixel on the floor.
    pub pixel: Length,
}

/// Spreads a panel's colors over the box round a drawn plan, about a thousand pixels along its longer
/// side, never finer than the panel was photographed.
///
/// # Errors
/// As [`PanelColor::floor`]; a plan that is not drawn has no size.
pub fn illustrated(panel: &PanelColor, plan: &Plan, seed: Seed) -> Result<Illustrated, PreviewError> {
    let (low, high) = plan.bounds().ok_or(PreviewError::Size { size: PixelSize { width: 0, height: 0 } })?;
    let (wide, deep) = (Length::from(high.x - low.x), Length::from(high.y - low.y));
    over(panel, wide, deep, seed)
}

/// The same over a stretch of floor of any size.
///
/// # Errors
/// As [`illustrated`].
pub fn over(panel: &PanelColor, wide: Length, deep: Length, seed: Seed) -> Result<Illustrated, PreviewError> {
    let pixel = (wide.max(deep) / ALONG).max(panel.pixel());
    let count = |side: Length| {
        #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "at most a thousand, and one")]
        let whole = (side.as_meters() / pixel.as_meters()).ceil() as usize;
        whole.max(1)
    };
    let size = PixelSize { width: count(wide), height: count(deep) };
    Ok(Illustrated { colors: panel.floor(size, pixel, seed)?, pixel })
}
