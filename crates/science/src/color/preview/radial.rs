//! How much of a channel's variation lies at which wavelength, the same in all directions.

use std::f64::consts::PI;

use units::{Fraction, Length};

use super::PixelSize;
use super::plane::Plane;

/// Each ring of frequencies is this much wider than the one before: forty rings for a panel of 512
/// pixels, each with enough waves for a steady mean.
const RING: f64 = 1.15;

/// Power for each ring of frequencies.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Radial {
    /// Waves a meter in rising order, and variance for each square wave a meter; the whole panel's
    /// variance is 1.
    rings: Vec<(f64, f64)>,
    size: PixelSize,
    pixel: f64,
}

/// A range of wavelengths and its share of the variation.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Band {
    /// The middle of the range.
    pub wavelength: Length,
    /// Its share of the channel's variance.
    pub share: Fraction,
}

fn hann(index: usize, count: usize) -> f64 {
    0.5 - 0.5 * libm::cos(2.0 * PI * (index as f64 + 0.5) / count as f64)
}

impl Radial {
    /// From the values of a channel, row by row, and the side of a pixel in meters.
    ///
    /// The window of von Hann keeps the edges of the panel, which do not meet, from counting as
    /// fine detail (M).
    pub(super) fn of(values: &[f64], size: PixelSize, pixel: f64) -> Self {
        let plane = Plane::new(size.width, size.height);
        let across: Vec<f64> = (0..size.width).map(|x| hann(x, size.width)).collect();
        let weight = |i: usize| across[i % size.width] * hann(i / size.width, size.height);
        let weights: Vec<f64> = (0..values.len()).map(weight).collect();
        let whole: f64 = weights.iter().sum();
        let mean = values.iter().zip(&weights).map(|(v, w)| v * w).sum::<f64>() / whole;
        let windowed: Vec<f64> = values.iter().zip(&weights).map(|(v, w)| (v - mean) * w).collect();
        let first = 1.0 / size.width.max(size.height) as f64;
        let mut sums: Vec<(f64, f64, f64)> = Vec::new();
        for ((fx, fy), power) in plane.frequencies().zip(plane.waves(&windowed).powers()) {
            let frequency = libm::hypot(fx, fy);
            if frequency > 0.0 {
                let ring = (libm::log(frequency / first) / libm::log(RING) + 0.5).max(0.0) as usize;
                if sums.len() <= ring {
                    sums.resize(ring + 1, (0.0, 0.0, 0.0));
                }
                let (count, at, sum) = &mut sums[ring];
                (*count, *at, *sum) = (*count + 1.0, *at + frequency, *sum + power);
            }
        }
        let rings = sums.iter().filter(|ring| ring.0 > 0.0).map(|(n, at, sum)| (at / n / pixel, sum / n)).collect();
        let mut radial = Self { rings, size, pixel };
        let total = radial.variance_from(f64::INFINITY);
        // A channel without variation has no power anywhere; any shape will do.
        for ring in &mut radial.rings {
            ring.1 = if total > 0.0 { ring.1 / total } else { 1.0 };
        }
        radial
    }

    /// The power at a frequency in waves a meter: straight lines between the rings in logarithms,
    /// flat for longer waves than the panel could show, none beyond its finest.
    pub(super) fn at(&self, frequency: f64) -> f64 {
        let above = self.rings.partition_point(|ring| ring.0 < frequency);
        match (above.checked_sub(1).map(|below| self.rings[below]), self.rings.get(above)) {
            (None, first) => first.map_or(0.0, |ring| ring.1),
            (Some(_), None) => 0.0,
            (Some((f0, s0)), Some((f1, s1))) if s0 > 0.0 && *s1 > 0.0 => {
                let part = libm::log(frequency / f0) / libm::log(f1 / f0);
                s0 * libm::pow(s1 / s0, part)
            }
            (Some((_, s0)), Some((_, s1))) => 0.5 * (s0 + s1),
        }
    }

    /// The share of the variance that pixels of this side can show: waves of two pixels and longer.
    pub(super) fn shown_by(&self, pixel: f64) -> f64 {
        let finest = 0.5 / pixel * (1.0 + 1e-9);
        let all = self.variance_from(f64::INFINITY);
        if all > 0.0 { (self.variance_from(finest) / all).min(1.0) } else { 1.0 }
    }

    /// Variance of the waves of the panel's own grid up to a frequency each way, in waves a meter.
    fn variance_from(&self, finest: f64) -> f64 {
        let (width, height) = (self.size.width, self.size.height);
        let step = |count: usize| 1.0 / (count as f64 * self.pixel);
        let sum: f64 = (0..=width / 2)
            .flat_map(|x| (0..=height / 2).map(move |y| (x, y)))
            .filter(|(x, y)| *x + *y > 0)
            .map(|(x, y)| {
                let (fx, fy) = (x as f64 * step(width), y as f64 * step(height));
                // A wave and its mirror images.
                let mirrored = |index: usize, count: usize| if index == 0 || 2 * index == count { 1.0 } else { 2.0 };
                if fx > finest || fy > finest {
                    return 0.0;
                }
                mirrored(x, width) * mirrored(y, height) * self.at(libm::hypot(fx, fy))
            })
            .sum();
        sum * step(width) * step(height)
    }

    /// Each ring with its share of the variance.
    pub(super) fn bands(&self) -> Vec<Band> {
        let weight = |(frequency, power): (f64, f64)| power * frequency * frequency;
        let whole: f64 = self.rings.iter().map(|ring| weight(*ring)).sum();
        self.rings
            .iter()
            .map(|ring| {
                let share = if whole > 0.0 { weight(*ring) / whole } else { 0.0 };
                Band {
                    wavelength: Length::meters(1.0 / ring.0),
                    share: Fraction::share(share.clamp(0.0, 1.0)).expect("clamped to 0 to 1"),
                }
            })
            .collect()
    }
}
