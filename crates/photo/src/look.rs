//! What the caller knows about a photograph: where the reference card lies, and the scale.

use crate::decode::Decoded;

/// A rectangle of the upright picture, in pixels from its top left corner.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Rect {
    /// Left edge, in pixels.
    pub x: u32,
    /// Top edge, in pixels.
    pub y: u32,
    /// Width, in pixels.
    pub w: u32,
    /// Height, in pixels.
    pub h: u32,
}

impl Rect {
    /// From percent of the picture's width (`left`, `wide`) and height (`top`, `high`): the way a
    /// diary keeps a card's place. Nothing if it leaves the picture or is no rectangle.
    #[must_use]
    #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "checked to lie in the picture")]
    pub fn from_percent([left, top, wide, high]: [f64; 4], picture: &Decoded) -> Option<Self> {
        let of = |percent: f64, side: u32| {
            (0.0..=100.0).contains(&percent).then(|| (percent / 100.0 * f64::from(side)).round() as u32)
        };
        let (width, height) = (picture.width(), picture.height());
        let rect = Self { x: of(left, width)?, y: of(top, height)?, w: of(wide, width)?, h: of(high, height)? };
        rect.is_inside(picture).then_some(rect)
    }

    /// Whether it covers at least a pixel and none outside the picture.
    #[must_use]
    pub fn is_inside(&self, picture: &Decoded) -> bool {
        let fits = |start: u32, size: u32, side: u32| size > 0 && u64::from(start) + u64::from(size) <= u64::from(side);
        fits(self.x, self.w, picture.width()) && fits(self.y, self.h, picture.height())
    }

    /// Where to measure a panel: the box drawn round the whole of it, less a twentieth on each side
    /// since taps are not exact; without one, the larger part of the picture left or right of the
    /// card, a tenth in from its edges.
    #[must_use]
    pub fn of_panel(picture: &Decoded, card: Option<Self>, marked: Option<Self>) -> Self {
        if let Some(marked) = marked {
            return marked.inner(0.9);
        }
        let (width, height) = (picture.width(), picture.height());
        let end = card.map_or(0, |card| (card.x + card.w).min(width));
        let start = card.map_or(0, |card| card.x);
        let (left, right) = if start > width - end { (0, start) } else { (end, width) };
        let wide = right.saturating_sub(left);
        Self {
            x: left + wide / 10,
            y: height / 10,
            w: wide.saturating_sub(wide / 5).max(1),
            h: height.saturating_sub(height / 5).max(1),
        }
    }

    /// Its middle part: `share` of each side, 0 to 1, at least a pixel.
    pub(crate) fn inner(&self, share: f64) -> Self {
        #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "a part of the side")]
        let cut = |size: u32| ((f64::from(size) * share) as u32).clamp(1, size.max(1));
        let (w, h) = (cut(self.w), cut(self.h));
        Self { x: self.x + (self.w - w.min(self.w)) / 2, y: self.y + (self.h - h.min(self.h)) / 2, w, h }
    }
}

/// How much of the light a card throws back, 0.02 to 1.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Reflectance(f64);

/// A number that a photograph cannot have.
#[derive(Debug, Clone, Copy, PartialEq, thiserror::Error)]
pub enum LookError {
    /// A card that is too dark, or brighter than all the light.
    #[error("reflectance {0}; accepted: 0.02 to 1, such as 0.184 for a gray card")]
    Reflectance(f64),
    /// A scale that no photograph of a slab has.
    #[error("scale {0} mm a pixel; accepted: 0.001 to 100")]
    Scale(f64),
}

impl Reflectance {
    /// A photographer's gray card: 0.184 (common practice, M).
    pub const GRAY_CARD: Self = Self(0.184);
    /// A sheet of white office paper: 0.87, assumed (M; sheets differ by some hundredths).
    pub const WHITE_PAPER: Self = Self(0.87);

    /// From a share of 1.
    ///
    /// # Errors
    /// Outside 0.02 to 1.
    pub fn new(share: f64) -> Result<Self, LookError> {
        if (0.02..=1.0).contains(&share) { Ok(Self(share)) } else { Err(LookError::Reflectance(share)) }
    }

    /// As a share of 1.
    #[must_use]
    pub const fn as_share(self) -> f64 {
        self.0
    }
}

/// A neutral card of known reflectance lying on the slab.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Card {
    /// Where it lies.
    pub rect: Rect,
    /// How much light it throws back, the same in red, green and blue.
    pub reflectance: Reflectance,
}

/// How much of the slab one pixel shows.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct PixelScale(f64);

impl PixelScale {
    /// From millimeters a pixel.
    ///
    /// # Errors
    /// Outside 0.001 to 100.
    pub fn millimeters(millimeters: f64) -> Result<Self, LookError> {
        if (0.001..=100.0).contains(&millimeters) { Ok(Self(millimeters)) } else { Err(LookError::Scale(millimeters)) }
    }

    /// As millimeters a pixel.
    #[must_use]
    pub const fn as_millimeters(self) -> f64 {
        self.0
    }
}

/// What is known about a photograph whose evenness is asked for.
#[derive(Debug, Clone, Copy, Default, PartialEq)]
pub struct EvennessLook {
    /// The reference card, if there is one. Without it only differences mean anything.
    pub card: Option<Card>,
    /// The scale; then the smoothing is 20 mm on the slab instead of 1 % of the picture's width.
    pub scale: Option<PixelScale>,
}
