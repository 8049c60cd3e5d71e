//! A stretch of floor with the color and mottling of a panel.

use rayon::prelude::*;
use units::{Fraction, Length};

use super::panel_color::PanelColor;
use super::plane::{Plane, smooth};
use super::{MAX_PIXELS, PixelSize, PreviewError};
use crate::chance::{Seed, Stream};
use crate::color::Lab;

/// A picture of a stretch of floor. It is an illustration of color and mottling, not of the pattern:
/// veins, trowel arcs and puddle rims cannot come from it. Say so wherever it is shown.
#[derive(Debug, Clone, PartialEq)]
pub struct Illustration {
    /// Its size.
    pub size: PixelSize,
    /// Bytes of sRGB, row by row.
    pub pixels: Vec<[u8; 3]>,
    /// The share of pixels whose color no screen can show; they were brought to the nearest byte.
    pub clipped: Fraction,
    /// The share of the panel's variation that pixels of this size can show; finer mottling is
    /// averaged away within a pixel.
    pub shown: Fraction,
}

impl PanelColor {
    /// Draws a stretch of floor of so many pixels, each of the given side on the floor.
    ///
    /// For each direction of variation: seeded noise, shaped to the panel's power at physical
    /// scale, its values put in order of rank into the panel's, and turned back into CIELAB. The
    /// same seed and sizes give the same picture; another size is another picture. A stretch
    /// smaller than the panel is cut from one of the panel's size, so it need not hold all of the
    /// panel's colors.
    ///
    /// # Errors
    /// A size or scale outside what is accepted, pixels finer than the panel's, or more than 16
    /// million pixels.
    pub fn floor(&self, size: PixelSize, pixel: Length, seed: Seed) -> Result<Illustration, PreviewError> {
        size.checked(1)?;
        let side = super::checked(pixel)?;
        let measured = self.pixel.as_meters();
        // A thousandth finer is rounding of the scale.
        if side < measured * 0.999 {
            return Err(PreviewError::FinerThanPanel { asked: pixel, measured: self.pixel });
        }
        let reach = |asked: usize, panel: usize| smooth(asked.max((panel as f64 * measured / side).ceil() as usize));
        let (width, height) = (reach(size.width, self.size.width), reach(size.height, self.size.height));
        if width * height > MAX_PIXELS {
            return Err(PreviewError::TooLarge { pixels: width * height });
        }
        let plane = Plane::new(width, height);
        let mut fields: Vec<Vec<f64>> =
            (0..3_usize).into_par_iter().map(|channel| self.noise(channel, &plane, side, seed)).collect();
        let shown = [0, 1, 2].map(|channel| self.channels[channel].radial.shown_by(side));
        part(&mut fields);
        fields.par_iter_mut().enumerate().for_each(|(channel, field)| {
            self.channels[channel].levels.map(field);
            let scale = libm::sqrt(shown[channel]);
            field.iter_mut().for_each(|value| *value *= scale);
        });
        Ok(self.picture(size, width, &fields, shown))
    }

    /// Noise of one channel's power, mean 0 and variance 1.
    fn noise(&self, channel: usize, plane: &Plane, side: f64, seed: Seed) -> Vec<f64> {
        let mut chance = Stream::of_member(seed, channel as u64);
        let white: Vec<f64> = (0..plane.width * plane.height).map(|_| chance.standard_normal()).collect();
        let radial = &self.channels[channel].radial;
        let amplitudes = plane.frequencies().map(|(fx, fy)| {
            let frequency = libm::hypot(fx, fy) / side;
            if frequency > 0.0 { libm::sqrt(radial.at(frequency)) } else { 0.0 }
        });
        let mut field = plane.values(plane.waves(&white).shaped(amplitudes));
        standardize(&mut field);
        field
    }

    fn picture(&self, size: PixelSize, width: usize, fields: &[Vec<f64>], shown: [f64; 3]) -> Illustration {
        let colors: Vec<([u8; 3], bool)> = (0..size.width * size.height)
            .into_par_iter()
            .map(|i| {
                let at = i / size.width * width + i % size.width;
                let [lightness, a, b] = self.principal.back([0, 1, 2].map(|channel| fields[channel][at]));
                let color = Lab::sum(lightness, a, b).srgb();
                (color.as_bytes(), color.is_displayable())
            })
            .collect();
        let off = colors.iter().filter(|(_, displayable)| !displayable).count() as f64 / colors.len() as f64;
        let variance = |axis: usize| {
            let axis = self.principal.axes[axis];
            (0..3)
                .map(|i| (0..3).map(|j| axis[i] * self.principal.covariance[i][j] * axis[j]).sum::<f64>())
                .sum::<f64>()
        };
        let whole: f64 = (0..3).map(variance).sum();
        let seen: f64 = (0..3).map(|channel| variance(channel) * shown[channel]).sum();
        let share = |value: f64| Fraction::share(value.clamp(0.0, 1.0)).expect("clamped to 0 to 1");
        Illustration {
            size,
            pixels: colors.into_iter().map(|(bytes, _)| bytes).collect(),
            clipped: share(off),
            shown: share(if whole > 0.0 { seen / whole } else { 1.0 }),
        }
    }
}

fn standardize(field: &mut [f64]) {
    let count = field.len() as f64;
    let mean = field.iter().sum::<f64>() / count;
    let variance = field.iter().map(|value| (value - mean) * (value - mean)).sum::<f64>() / count;
    let scale = if variance > 0.0 { 1.0 / libm::sqrt(variance) } else { 0.0 };
    field.iter_mut().for_each(|value| *value = (*value - mean) * scale);
}

/// Takes out of each field what it shares with those before. The panel's directions vary without
/// each other, and few large patches would by chance agree.
fn part(fields: &mut [Vec<f64>]) {
    for later in 1..fields.len() {
        let (before, rest) = fields.split_at_mut(later);
        let field = &mut rest[0];
        for other in before {
            let shared = other.iter().zip(field.iter()).map(|(a, b)| a * b).sum::<f64>() / field.len() as f64;
            field.iter_mut().zip(other.iter()).for_each(|(value, a)| *value -= shared * a);
        }
        standardize(field);
    }
}
