//! The picture in cells: mean light of small squares, and how much fine detail it has.
//!
//! One pass over the pixels, by bands of rows at once. About 400 cells along the longer side for
//! edges; four of them make one of the 200 that color is measured on.

use rayon::prelude::*;
use science::color::bulk::Bulk;

use crate::decode::Decoded;

/// Cells along the longer side, about, for edges.
const FINE: u32 = 400;
/// A byte at or above is clipped bright, at or below [`DARK_CLIP`] dark.
const BRIGHT_CLIP: u8 = 250;
const DARK_CLIP: u8 = 4;
/// A cell with this share of clipped pixels is not measured.
const CLIPPED_CELL: f32 = 0.02;

/// Means of linear light in squares of the picture.
#[derive(Debug, Clone)]
pub(crate) struct Cells {
    pub(crate) cols: usize,
    pub(crate) rows: usize,
    /// Side of a cell, in pixels.
    pub(crate) side: u32,
    /// Mean red, green and blue light, 0 to 1, by row.
    pub(crate) light: Vec<[f32; 3]>,
    /// Share of the cell's pixels that are clipped.
    pub(crate) clipped: Vec<f32>,
}

/// How the picture's finest steps compare: whether it is blurred, blank or built of blocks.
#[derive(Debug, Clone, Copy, Default)]
pub(crate) struct Detail {
    /// Mean step in green between points one unit apart, over that between points eight apart.
    pub(crate) sharpness: f64,
    /// Mean step across the strongest of the eight phases, over the mean of the others; at most 100.
    pub(crate) blockiness: f64,
    /// Share of pixels at the end of a run of sixteen equal ones.
    pub(crate) blank: f64,
}

impl Cells {
    /// The cells of a picture at about 400 along its longer side.
    pub(crate) fn fine(picture: &Decoded, bulk: &Bulk) -> Self {
        let side = (picture.width().max(picture.height()) / FINE).max(1);
        let (cols, rows) = ((picture.width() / side) as usize, (picture.height() / side) as usize);
        let light = bulk.light();
        let mut cells = vec![([0.0; 3], 0.0); cols * rows];
        cells.par_chunks_mut(cols.max(1)).enumerate().for_each(|(row, out)| {
            for line in 0..side {
                let pixels = picture.row(u32::try_from(row).unwrap_or(0) * side + line);
                for (cell, pixels) in out.iter_mut().zip(pixels.chunks_exact(side as usize)) {
                    add(cell, pixels, light);
                }
            }
            let count = f32::from(u16::try_from(side).unwrap_or(u16::MAX)).powi(2);
            for cell in out {
                cell.0 = cell.0.map(|sum| sum / count);
                cell.1 /= count;
            }
        });
        let (light, clipped) = cells.into_iter().unzip();
        Self { cols, rows, side, light, clipped }
    }

    /// The same at half the number of cells each way.
    pub(crate) fn halved(&self) -> Self {
        let (cols, rows) = (self.cols / 2, self.rows / 2);
        let mut out = Self { cols, rows, side: self.side * 2, light: Vec::new(), clipped: Vec::new() };
        for row in 0..rows {
            for col in 0..cols {
                let at = 2 * row * self.cols + 2 * col;
                let four = [at, at + 1, at + self.cols, at + self.cols + 1];
                let mean = |channel: usize| 0.25 * four.iter().map(|&i| self.light[i][channel]).sum::<f32>();
                out.light.push([mean(0), mean(1), mean(2)]);
                out.clipped.push(0.25 * four.iter().map(|&i| self.clipped[i]).sum::<f32>());
            }
        }
        out
    }

    /// Which cells can be measured: not clipped.
    pub(crate) fn usable(&self) -> Vec<bool> {
        self.clipped.iter().map(|&share| share < CLIPPED_CELL).collect()
    }

    /// The natural logarithm of a cell's light; no light counts as very little.
    pub(crate) fn ln(&self, at: usize) -> [f32; 3] {
        self.light[at].map(|value| libm::logf(value.max(1e-4)))
    }
}

fn add((sums, clipped): &mut ([f32; 3], f32), pixels: &[[u8; 3]], light: &[f32; 256]) {
    let mut count = 0_u32;
    for pixel in pixels {
        for channel in 0..3 {
            sums[channel] += light[usize::from(pixel[channel])];
        }
        let most = pixel[0].max(pixel[1]).max(pixel[2]);
        let least = pixel[0].min(pixel[1]).min(pixel[2]);
        count += u32::from(most >= BRIGHT_CLIP || least <= DARK_CLIP);
    }
    *clipped += f32::from(u16::try_from(count).unwrap_or(u16::MAX));
}

/// Sums of steps along rows.
#[derive(Clone, Copy, Default)]
struct Steps {
    near: u64,
    far: u64,
    phases: [u64; 8],
    pixels: u64,
    blank: u64,
}

impl Detail {
    /// From about 300 rows spread over the picture. One unit is 1/1600 of the longer side.
    pub(crate) fn of(picture: &Decoded) -> Self {
        let unit = (picture.width().max(picture.height()) as usize / 1600).max(1);
        let every = (picture.height() / 300).max(1);
        let rows: Vec<u32> = (0..picture.height()).step_by(every as usize).collect();
        let all = rows.par_iter().map(|&y| steps(picture.row(y), unit)).reduce(Steps::default, |mut a, b| {
            a.near += b.near;
            a.far += b.far;
            a.pixels += b.pixels;
            a.blank += b.blank;
            for (sum, more) in a.phases.iter_mut().zip(b.phases) {
                *sum += more;
            }
            a
        });
        let number = |count: u64| f64::from(u32::try_from(count).unwrap_or(u32::MAX));
        let most = number(all.phases.iter().copied().max().unwrap_or(0));
        let phases: f64 = all.phases.iter().map(|&sum| number(sum)).sum();
        let pixels = number(all.pixels).max(1.0);
        Self {
            sharpness: number(all.near) / number(all.far).max(1.0),
            blockiness: (7.0 * most / (phases - most).max(1.0)).min(100.0),
            blank: number(all.blank) / pixels,
        }
    }
}

fn steps(row: &[[u8; 3]], unit: usize) -> Steps {
    let mut sums = Steps::default();
    let mut run = 0_u32;
    for x in 0..row.len().saturating_sub(8 * unit) {
        let here = row[x];
        let next = u64::from(here[1].abs_diff(row[x + 1][1]));
        sums.near += u64::from(here[1].abs_diff(row[x + unit][1]));
        sums.far += u64::from(here[1].abs_diff(row[x + 8 * unit][1]));
        sums.phases[(x + 1) % 8] += next;
        sums.pixels += 1;
        run = if here == row[x + 1] { run + 1 } else { 0 };
        sums.blank += u64::from(run >= 16);
    }
    sums
}
