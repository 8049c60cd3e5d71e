//! What is kept of a photographed panel: its mean color and how it is mottled.

use units::Length;

use super::levels::Levels;
use super::principal::Principal;
use super::radial::{Band, Radial};
use super::{PixelSize, PreviewError};
use crate::color::{Lab, LinearRgb};

/// The color and mottling of a panel, measured from one patch of a photograph of known scale.
#[derive(Debug, Clone, PartialEq)]
pub struct PanelColor {
    pub(super) principal: Principal,
    pub(super) channels: [Channel; 3],
    pub(super) size: PixelSize,
    pub(super) pixel: Length,
}

/// One direction in CIELAB in which the panel varies on its own.
#[derive(Debug, Clone, PartialEq)]
pub struct Channel {
    axis: [f64; 3],
    pub(super) radial: Radial,
    pub(super) levels: Levels,
}

impl Channel {
    /// The direction in L, a and b, of length 1.
    #[must_use]
    pub const fn axis(&self) -> [f64; 3] {
        self.axis
    }

    /// 257 quantiles in units of CIELAB from the mean, from least to greatest, close in the tails.
    #[must_use]
    pub fn quantiles(&self) -> &[f64] {
        self.levels.values()
    }

    /// How the variation is shared among wavelengths, from long to short.
    #[must_use]
    pub fn bands(&self) -> Vec<Band> {
        self.radial.bands()
    }
}

impl PanelColor {
    /// From the colors of a patch, row by row, and the side of one pixel on the panel.
    ///
    /// # Errors
    /// A size that does not fit, fewer than 32 or more than 4096 pixels on a side, a scale outside
    /// 0.01 mm to 1 m a pixel, or a color that is not a number.
    pub fn from_lab(colors: &[Lab], size: PixelSize, pixel: Length) -> Result<Self, PreviewError> {
        let colors: Vec<[f64; 3]> = colors.iter().map(|lab| [lab.lightness(), lab.a(), lab.b()]).collect();
        Self::of(&colors, size, pixel)
    }

    /// The same from light.
    ///
    /// # Errors
    /// As [`Self::from_lab`].
    pub fn from_light(light: &[LinearRgb], size: PixelSize, pixel: Length) -> Result<Self, PreviewError> {
        let colors: Vec<Lab> = light.iter().map(|light| light.xyz().lab()).collect();
        Self::from_lab(&colors, size, pixel)
    }

    fn of(colors: &[[f64; 3]], size: PixelSize, pixel: Length) -> Result<Self, PreviewError> {
        size.checked(PixelSize::LEAST)?;
        if colors.len() != size.width * size.height {
            return Err(PreviewError::Count { found: colors.len(), size });
        }
        let side = super::checked(pixel)?;
        if let Some(index) = colors.iter().position(|color| !color.iter().all(|part| part.is_finite())) {
            return Err(PreviewError::NotANumber(index));
        }
        let principal = Principal::of(colors);
        let channels = [0, 1, 2].map(|axis| {
            let values: Vec<f64> = colors.iter().map(|color| principal.along(axis, *color)).collect();
            let radial = Radial::of(&values, size, side);
            Channel { axis: principal.axes[axis], radial, levels: Levels::of(values) }
        });
        Ok(Self { principal, channels, size, pixel })
    }

    /// The mean color.
    #[must_use]
    pub const fn mean(&self) -> Lab {
        let [lightness, a, b] = self.principal.mean;
        Lab::sum(lightness, a, b)
    }

    /// The same mottling about another mean: for a color that was worked out, not made.
    #[must_use]
    pub fn moved_to(mut self, mean: Lab) -> Self {
        self.principal.mean = [mean.lightness(), mean.a(), mean.b()];
        self
    }

    /// Mean products of the deviations of L, a and b from the mean.
    #[must_use]
    pub const fn covariance(&self) -> [[f64; 3]; 3] {
        self.principal.covariance
    }

    /// The directions of variation, from most to least.
    #[must_use]
    pub const fn channels(&self) -> &[Channel; 3] {
        &self.channels
    }

    /// The side of a pixel of the photograph on the panel.
    #[must_use]
    pub const fn pixel(&self) -> Length {
        self.pixel
    }
}
