//! The light on the slab: a smooth surface per channel, fitted so that patches do not pull it.
//!
//! ln I = c0 + c1 x + c2 y + c3 x² + c4 xy + c5 y² + an offset for each region between hard edges,
//! by iteratively reweighted least squares: first Huber's weights, then Tukey's, with the scale
//! from the median absolute deviation. Order 1 leaves light in, order 3 swallows large patches.

use rayon::prelude::*;

use crate::cells::Cells;
use crate::field::quantile;
use crate::line::{Line, LineKind};

/// Terms of the second-order polynomial.
const TERMS: usize = 6;
/// Most regions with an offset of their own: four lines cut a plane into at most eleven.
const REGIONS: usize = 11;
const MOST: usize = TERMS + REGIONS - 1;
/// A region with fewer cells has no offset worth fitting, and is left out.
const MIN_CELLS: usize = 60;
/// Tuning constants for 95 % efficiency with normal errors (common practice, M).
const HUBER: f64 = 1.345;
const TUKEY: f64 = 4.685;

/// The fitted light.
#[derive(Debug, Clone)]
pub(crate) struct Light {
    /// ln of the smooth part in each cell and channel, without the offsets of regions.
    pub(crate) smooth: Vec<[f32; 3]>,
    /// What is left in each cell and channel, in ln; 0 where a cell is not usable.
    pub(crate) left: Vec<[f32; 3]>,
    /// Spread of the smooth part over the usable cells in green: 99th less 1st percentile, in ln.
    pub(crate) range: f64,
    /// Which hard-edge region a cell is in.
    region: Vec<u8>,
    /// Offset of each region in each channel, in ln.
    offsets: [[f32; 3]; 16],
}

impl Light {
    /// ln of the fitted light in a cell and channel, with the offset of its region.
    pub(crate) fn fitted(&self, at: usize) -> [f32; 3] {
        let offset = self.offsets[usize::from(self.region[at])];
        [0, 1, 2].map(|i| self.smooth[at][i] + offset[i])
    }
}

/// Region of each cell by the sides of the hard edges it lies on.
fn regions(cells: &Cells, lines: &[Line]) -> Vec<u8> {
    let edges: Vec<&Line> = lines.iter().filter(|line| line.kind == LineKind::Edge).collect();
    let mut known: Vec<u8> = Vec::new();
    (0..cells.light.len())
        .map(|at| {
            let center = cells.center(at);
            let sides = edges.iter().enumerate().map(|(i, line)| u8::from(line.side(center) > 0.0) << i).sum();
            let index = known.iter().position(|other| *other == sides).unwrap_or_else(|| {
                known.push(sides);
                known.len() - 1
            });
            u8::try_from(index).unwrap_or(u8::MAX)
        })
        .collect()
}

impl Cells {
    /// Middle of a cell, in pixels.
    #[expect(clippy::cast_precision_loss, reason = "places in a picture")]
    pub(crate) fn center(&self, at: usize) -> [f32; 2] {
        let side = self.side as f32;
        [((at % self.cols) as f32 + 0.5) * side, ((at / self.cols) as f32 + 0.5) * side]
    }
}

/// Fits the light on the usable cells. Cells in regions too small to fit become unusable.
pub(crate) fn fit(cells: &Cells, usable: &mut [bool], lines: &[Line]) -> Option<Light> {
    let region = regions(cells, lines);
    let mut counts = [0_usize; 16];
    for (ok, region) in usable.iter().zip(&region) {
        counts[usize::from(*region)] += usize::from(*ok);
    }
    // Offsets count from the largest region, which has none of its own.
    let largest = (0..16).max_by_key(|&i| counts[i])?;
    let mut column = [None; 16];
    let mut terms = TERMS;
    for i in (0..16).filter(|&i| i != largest && counts[i] >= MIN_CELLS) {
        column[i] = (terms < MOST).then_some(terms);
        terms += usize::from(terms < MOST);
    }
    for (ok, region) in usable.iter_mut().zip(&region) {
        let region = usize::from(*region);
        *ok &= region == largest || column[region].is_some();
    }
    let rows: Vec<[f64; TERMS]> = (0..cells.light.len()).map(|at| terms_of(cells, at)).collect();
    // Every other cell each way holds all there is to a surface this smooth.
    let chosen: Vec<usize> = (0..rows.len())
        .filter(|&at| usable[at] && (at % cells.cols).is_multiple_of(2) && (at / cells.cols).is_multiple_of(2))
        .collect();
    if chosen.len() < 4 * terms {
        return None;
    }
    let ln: Vec<[f32; 3]> = (0..rows.len()).map(|at| cells.ln(at)).collect();
    let fits: Vec<[f64; MOST]> = (0..3)
        .into_par_iter()
        .map(|channel| {
            let samples: Vec<Sample> = chosen
                .iter()
                .map(|&at| Sample {
                    row: rows[at],
                    offset: column[usize::from(region[at])],
                    value: f64::from(ln[at][channel]),
                })
                .collect();
            robust(&samples, terms)
        })
        .collect::<Option<_>>()?;
    Some(surface(&rows, &ln, usable, region, &column, &fits))
}

#[expect(clippy::cast_possible_truncation, reason = "logarithms of light")]
fn surface(
    rows: &[[f64; TERMS]],
    ln: &[[f32; 3]],
    usable: &[bool],
    region: Vec<u8>,
    column: &[Option<usize>; 16],
    fits: &[[f64; MOST]],
) -> Light {
    let offsets = std::array::from_fn(|i| [0, 1, 2].map(|channel| column[i].map_or(0.0, |c| fits[channel][c] as f32)));
    let mut light = Light { smooth: Vec::new(), left: Vec::new(), range: 0.0, region, offsets };
    let mut seen = Vec::new();
    for (at, row) in rows.iter().enumerate() {
        let (mut smooth, mut left) = ([0.0; 3], [0.0; 3]);
        for channel in 0..3 {
            let value: f64 = row.iter().zip(&fits[channel]).map(|(x, c)| x * c).sum();
            let offset = light.offsets[usize::from(light.region[at])][channel];
            smooth[channel] = value as f32;
            left[channel] = if usable[at] { ln[at][channel] - value as f32 - offset } else { 0.0 };
        }
        if usable[at] {
            seen.push(smooth[1]);
        }
        light.smooth.push(smooth);
        light.left.push(left);
    }
    light.range = f64::from(quantile(&mut seen, 0.99) - quantile(&mut seen, 0.01));
    light
}

/// 1, x, y, x², xy, y² with x and y from −1 to 1 along the longer side.
fn terms_of(cells: &Cells, at: usize) -> [f64; TERMS] {
    let [x, y] = cells.center(at).map(f64::from);
    #[expect(clippy::cast_precision_loss, reason = "sides of a picture")]
    let (w, h) = ((cells.cols as f64) * f64::from(cells.side), (cells.rows as f64) * f64::from(cells.side));
    let half = 0.5 * w.max(h);
    let (x, y) = ((x - 0.5 * w) / half, (y - 0.5 * h) / half);
    [1.0, x, y, x * x, x * y, y * y]
}

struct Sample {
    row: [f64; TERMS],
    /// Column of the region's offset, which is 1 for this sample.
    offset: Option<usize>,
    value: f64,
}

/// Six rounds of Huber's weights, then ten of Tukey's: enough for the fit to move less than 1e-3
/// in the pictures tried.
fn robust(samples: &[Sample], terms: usize) -> Option<[f64; MOST]> {
    let mut weights = vec![1.0; samples.len()];
    let mut fit = weighted(samples, &weights, terms)?;
    for round in 0..16 {
        let errors: Vec<f64> = samples
            .iter()
            .map(|s| {
                let value: f64 = s.row.iter().zip(&fit).map(|(x, c)| x * c).sum();
                s.value - value - s.offset.map_or(0.0, |i| fit[i])
            })
            .collect();
        #[expect(clippy::cast_possible_truncation, reason = "a scale")]
        let mut sizes: Vec<f32> = errors.iter().map(|e| e.abs() as f32).collect();
        let scale = 1.4826 * f64::from(quantile(&mut sizes, 0.5)).max(1e-5);
        for (weight, error) in weights.iter_mut().zip(&errors) {
            let size = error.abs() / scale;
            *weight = if round < 6 {
                if size <= HUBER { 1.0 } else { HUBER / size }
            } else {
                let rest = 1.0 - (size / TUKEY).powi(2);
                if rest > 0.0 { rest * rest } else { 0.0 }
            };
        }
        // Where Tukey's weights leave too little to stand on, the last fit holds.
        match weighted(samples, &weights, terms) {
            Some(next) => fit = next,
            None => break,
        }
    }
    Some(fit)
}

/// Weighted least squares by the normal equations and Cholesky's decomposition.
fn weighted(samples: &[Sample], weights: &[f64], terms: usize) -> Option<[f64; MOST]> {
    let mut normal = [[0.0; MOST]; MOST];
    let mut right = [0.0; MOST];
    for (sample, weight) in samples.iter().zip(weights).filter(|(_, w)| **w > 0.0) {
        for i in 0..TERMS {
            let scaled = weight * sample.row[i];
            for (cell, term) in normal[i].iter_mut().zip(&sample.row).take(i + 1) {
                *cell += scaled * term;
            }
            right[i] += scaled * sample.value;
        }
        if let Some(column) = sample.offset {
            for (cell, term) in normal[column].iter_mut().zip(&sample.row) {
                *cell += weight * term;
            }
            normal[column][column] += weight;
            right[column] += weight * sample.value;
        }
    }
    for i in 0..terms {
        for j in 0..=i {
            let dot: f64 = (0..j).map(|k| normal[i][k] * normal[j][k]).sum();
            let rest = normal[i][j] - dot;
            if i == j {
                if rest <= 1e-9 * normal[i][i].abs().max(1e-12) {
                    return None;
                }
                normal[i][i] = rest.sqrt();
            } else {
                normal[i][j] = rest / normal[j][j];
            }
        }
    }
    for i in 0..terms {
        let dot: f64 = (0..i).map(|k| normal[i][k] * right[k]).sum();
        right[i] = (right[i] - dot) / normal[i][i];
    }
    for i in (0..terms).rev() {
        let dot: f64 = (i + 1..terms).map(|k| normal[k][i] * right[k]).sum();
        right[i] = (right[i] - dot) / normal[i][i];
    }
    Some(right)
}
