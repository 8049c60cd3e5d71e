//! The color of a panel in a photograph: mean, spread, and at what sizes it is mottled.

use science::color::bulk::{Bulk, ciede2000_to};
use science::color::{Lab, LinearRgb};

use crate::card_color;
use crate::decode::Decoded;
use crate::field::quantile;
use crate::look::{Card, PixelScale, Rect};

/// Most points along the longer side of the area that are looked at.
const MAX_POINTS: u32 = 1024;
/// Points along a side of the square whose frequencies are taken; a quarter of a million products.
const SQUARE: usize = 128;
/// Blocks along the area's longer side for the mottling figure.
const BLOCKS: u32 = 32;

/// Mottling in one band of frequencies.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct BandPower {
    /// Middle of the band, in cycles a pixel of the photograph.
    pub cycles_per_px: f64,
    /// The same in cycles a millimeter of the panel, where the scale is known.
    pub cycles_per_mm: Option<f64>,
    /// Variance of L, a and b in the band, with a plane taken out; the bands add up to about all of
    /// the variance between those frequencies.
    pub power: [f64; 3],
}

/// What a photograph says of the color of a panel. Whether it was bare, stained or sealed is the
/// caller's to say.
#[derive(Debug, Clone, PartialEq)]
pub struct PanelColor {
    /// Mean color of the light, by the card.
    pub mean: Lab,
    /// Covariance of L, a, b between points.
    pub covariance: [[f64; 3]; 3],
    /// Bands by frequency, lowest first; empty for an area below 32 points.
    pub radial_power: Vec<BandPower>,
    /// 95th percentile of ΔE00 of small blocks (1/32 of the longer side) to the mean color.
    pub mottling_de00: f64,
    /// Number of points.
    pub n: usize,
}

/// Why a panel's color is not given.
#[derive(Debug, Clone, Copy, PartialEq, thiserror::Error)]
pub enum PanelError {
    /// Without a card the color of the light is not known, and only differences mean anything.
    #[error("no card is marked; a panel's color needs a gray card or white paper in the same picture")]
    NoCard,
    /// The card cannot be read.
    #[error(
        "the card is overexposed, not uniform, outside the picture, or below 8 pixels; mark it again, or take the picture anew"
    )]
    BadCard,
    /// The area is not in the picture, or too small.
    #[error("the area of {w} by {h} pixels at {x}, {y} must lie in the picture and be at least 16 by 16", w = .0.w, h = .0.h, x = .0.x, y = .0.y)]
    Area(Rect),
    /// The area and the card share pixels.
    #[error("the area and the card overlap; mark the panel without the card")]
    Overlap,
    /// Too much of the area is over- or underexposed.
    #[error("{:.0} % of the panel is over- or underexposed; at most 2 % is accepted", 100.0 * .share)]
    Clipped {
        /// Share, 0 to 1.
        share: f64,
    },
}

/// Points of a panel as light, the card's tint and the strength of the light taken out.
#[derive(Debug, Clone, PartialEq)]
pub struct PanelLight {
    /// By row.
    pub light: Vec<LinearRgb>,
    /// Points across.
    pub cols: usize,
    /// Points down.
    pub rows: usize,
    /// Pixels of the photograph from one point to the next.
    pub step_px: u32,
}

/// The points of the area as reflectances, for those who want more than [`panel_color`] gives.
/// Even light on panel and card is taken for granted: lay the card on or against the panel.
///
/// # Errors
/// [`PanelError`].
pub fn panel_light(picture: &Decoded, card: Option<Card>, area: Rect) -> Result<PanelLight, PanelError> {
    let card = card.ok_or(PanelError::NoCard)?;
    if !area.is_inside(picture) || area.w.min(area.h) < 16 {
        return Err(PanelError::Area(area));
    }
    let apart = |a: u32, size: u32, b: u32| u64::from(a) + u64::from(size) <= u64::from(b);
    let (c, a) = (card.rect, area);
    if !(apart(c.x, c.w, a.x) || apart(a.x, a.w, c.x) || apart(c.y, c.h, a.y) || apart(a.y, a.h, c.y)) {
        return Err(PanelError::Overlap);
    }
    let bulk = Bulk::new();
    let read = card_color::read(picture, &card, &bulk).ok_or(PanelError::BadCard)?;
    let step = area.w.max(area.h).div_ceil(MAX_POINTS);
    let (cols, rows) = (area.w / step, area.h / step);
    let table = bulk.light();
    let (mut light, mut clipped) = (Vec::new(), 0_u32);
    for row in 0..rows {
        for col in 0..cols {
            let mut sums = [0.0; 3];
            let mut worst = false;
            for y in 0..step {
                let pixels = &picture.row(area.y + row * step + y)[(area.x + col * step) as usize..][..step as usize];
                for pixel in pixels {
                    for (sum, byte) in sums.iter_mut().zip(pixel) {
                        *sum += f64::from(table[usize::from(*byte)]);
                    }
                    worst |= pixel.iter().any(|v| *v >= 250) || pixel.iter().all(|v| *v <= 4);
                }
            }
            clipped += u32::from(worst);
            let scale = card.reflectance.as_share() / f64::from(step).powi(2);
            light.push(LinearRgb::new([0, 1, 2].map(|i| sums[i] * scale / read.light[i])));
        }
    }
    let share = f64::from(clipped) / (f64::from(cols) * f64::from(rows));
    if share > 0.02 {
        return Err(PanelError::Clipped { share });
    }
    Ok(PanelLight { light, cols: cols as usize, rows: rows as usize, step_px: step })
}

/// Measures a panel: mean color, covariance, bands of mottling.
///
/// # Errors
/// [`PanelError`]; without a card there is no color, only differences.
pub fn panel_color(
    picture: &Decoded,
    card: Option<Card>,
    area: Rect,
    scale: Option<PixelScale>,
) -> Result<PanelColor, PanelError> {
    let points = panel_light(picture, card, area)?;
    let n = points.light.len();
    #[expect(clippy::cast_precision_loss, reason = "at most a million points")]
    let count = n as f64;
    let mut sum = [0.0; 3];
    for light in &points.light {
        for (sum, value) in sum.iter_mut().zip(light.as_light()) {
            *sum += value;
        }
    }
    let mean = LinearRgb::new(sum.map(|s| s / count)).xyz().lab();
    let labs: Vec<[f64; 3]> = points.light.iter().map(|light| values(light.xyz().lab())).collect();
    let middle = [0, 1, 2].map(|i| labs.iter().map(|lab| lab[i]).sum::<f64>() / count);
    let mut covariance = [[0.0; 3]; 3];
    for lab in &labs {
        for (i, row) in covariance.iter_mut().enumerate() {
            for (j, value) in row.iter_mut().enumerate() {
                *value += (lab[i] - middle[i]) * (lab[j] - middle[j]) / (count - 1.0);
            }
        }
    }
    let radial_power = bands(&labs, &points, scale);
    Ok(PanelColor { mean, covariance, radial_power, mottling_de00: mottling(&labs, &points, mean), n })
}

fn values(lab: Lab) -> [f64; 3] {
    [lab.lightness(), lab.a(), lab.b()]
}

/// ΔE00 of block means to the mean color, 95th percentile.
#[expect(clippy::cast_possible_truncation, reason = "colors")]
fn mottling(labs: &[[f64; 3]], points: &PanelLight, mean: Lab) -> f64 {
    let block = (points.cols.max(points.rows) / BLOCKS as usize).max(1);
    let mut means = Vec::new();
    for row in (0..points.rows + 1 - block).step_by(block) {
        for col in (0..points.cols + 1 - block).step_by(block) {
            let cells = (row..row + block).flat_map(|r| &labs[r * points.cols + col..][..block]);
            let mut sum = [0.0; 3];
            for lab in cells {
                for (sum, value) in sum.iter_mut().zip(lab) {
                    *sum += value;
                }
            }
            means.extend(sum.map(|s| (s / (block * block) as f64) as f32));
        }
    }
    let mut out = vec![0.0; means.len() / 3];
    ciede2000_to(&means, mean, &mut out);
    f64::from(quantile(&mut out, 0.95))
}

/// Power in octave-wide bands of the middle square, by a discrete Fourier transform, rows then
/// columns, of what a fitted plane and a Hann window leave.
fn bands(labs: &[[f64; 3]], points: &PanelLight, scale: Option<PixelScale>) -> Vec<BandPower> {
    let size = SQUARE.min(points.cols.min(points.rows));
    if size < 32 {
        return Vec::new();
    }
    let (left, top) = ((points.cols - size) / 2, (points.rows - size) / 2);
    let at = |i: usize| i as f64;
    let spectra = [0, 1, 2].map(|channel| {
        let square: Vec<f64> =
            (0..size * size).map(|i| labs[(top + i / size) * points.cols + left + i % size][channel]).collect();
        spectrum(&flattened(square, size), size)
    });
    let mut out = Vec::new();
    let mut low = 1.5;
    while low < at(size) / 2.0 {
        let high = low * 2.0;
        let mut power = [0.0; 3];
        for i in 0..size * size {
            let fold = |k: usize| at(k.min(size - k));
            let radius = fold(i / size).hypot(fold(i % size));
            if (low..high).contains(&radius) {
                for (power, spectrum) in power.iter_mut().zip(&spectra) {
                    *power += spectrum[i];
                }
            }
        }
        let cycles_per_px = (low * high).sqrt() / at(size) / f64::from(points.step_px);
        let cycles_per_mm = scale.map(|scale| cycles_per_px / scale.as_millimeters());
        out.push(BandPower { cycles_per_px, cycles_per_mm, power });
        low = high;
    }
    out
}

/// Takes the least-squares plane out and applies the window; on a grid centered at zero the terms of
/// the plane are independent.
fn flattened(mut square: Vec<f64>, size: usize) -> Vec<f64> {
    let n = (size * size) as f64;
    let place = |i: usize| i as f64 - 0.5 * (size as f64 - 1.0);
    let mean = square.iter().sum::<f64>() / n;
    let spread: f64 = (0..size).map(|i| place(i).powi(2)).sum::<f64>() * size as f64;
    let slope = |of: &dyn Fn(usize) -> f64| square.iter().enumerate().map(|(i, v)| v * of(i)).sum::<f64>() / spread;
    let (across, down) = (slope(&|i| place(i % size)), slope(&|i| place(i / size)));
    let hann = |i: usize| 0.5 - 0.5 * libm::cos(std::f64::consts::TAU * (i as f64 + 0.5) / size as f64);
    for (i, value) in square.iter_mut().enumerate() {
        let (row, col) = (i / size, i % size);
        *value = (*value - mean - across * place(col) - down * place(row)) * hann(row) * hann(col);
    }
    square
}

/// Squared amplitudes, scaled so that they add up to the variance before the window.
fn spectrum(square: &[f64], size: usize) -> Vec<f64> {
    let waves: Vec<(f64, f64)> = (0..size)
        .map(|i| {
            let angle = -std::f64::consts::TAU * i as f64 / size as f64;
            (libm::cos(angle), libm::sin(angle))
        })
        .collect();
    let mut half = vec![(0.0, 0.0); size * size];
    for row in 0..size {
        for k in 0..size {
            let (mut re, mut im) = (0.0, 0.0);
            for (i, value) in square[row * size..][..size].iter().enumerate() {
                let (c, s) = waves[i * k % size];
                re += value * c;
                im += value * s;
            }
            // By column, so that the second pass runs along memory.
            half[k * size + row] = (re, im);
        }
    }
    // Mean square of the two windows is (3/8)² of one; a transform of n² points scales by n⁴.
    let scale = 1.0 / ((size as f64).powi(4) * 0.375 * 0.375);
    let mut out = vec![0.0; size * size];
    for col in 0..size {
        for k in 0..size {
            let (mut re, mut im) = (0.0, 0.0);
            for (i, (a, b)) in half[col * size..][..size].iter().enumerate() {
                let (c, s) = waves[i * k % size];
                re += a * c - b * s;
                im += a * s + b * c;
            }
            out[k * size + col] = (re * re + im * im) * scale;
        }
    }
    out
}
