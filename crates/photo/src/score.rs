//! How far the slab's own color spreads: the score and the two classes.

use science::color::bulk::{Bulk, ciede2000_to};
use science::color::{Lab, LinearRgb};

use crate::field::{quantile, share, smoothed};

/// The slab's color in each cell with the light taken out, and its spread.
#[derive(Debug, Clone)]
pub(crate) struct Score {
    /// What is left of ln light in each channel, smoothed.
    pub(crate) left: [Vec<f32>; 3],
    /// L, a, b of each cell.
    pub(crate) lab: Vec<f32>,
    /// ΔE00 of each cell to the median color; 0 where not usable.
    pub(crate) difference: Vec<f32>,
    /// 95th percentile of the differences.
    pub(crate) s: f64,
    /// Median of the differences.
    pub(crate) usual: f64,
    /// Median color.
    pub(crate) median: Lab,
    /// Lightness that parts the two classes (Otsu).
    pub(crate) split: f32,
    /// ΔE00 between the mean colors of the two classes.
    pub(crate) class: f64,
    /// Share of the smaller class.
    pub(crate) share: f64,
    /// Whether the smaller class is the darker one.
    pub(crate) dark: bool,
    /// Variance between the classes over all variance: about 0.64 for one bell curve.
    pub(crate) parted: f64,
}

/// The cells' colors around `base` (linear light), over the usable cells.
pub(crate) fn colors(
    left: &[[f32; 3]],
    usable: &[bool],
    cols: usize,
    base: [f64; 3],
    sigma: f32,
    bulk: &Bulk,
) -> Option<Score> {
    let smooth = |channel: usize| {
        let values: Vec<f32> = left.iter().map(|cell| cell[channel]).collect();
        smoothed(&values, usable, cols, sigma)
    };
    let left = [smooth(0), smooth(1), smooth(2)];
    #[expect(clippy::cast_possible_truncation, reason = "light")]
    let base = base.map(|value| value as f32);
    let mut lab = vec![0.0; 3 * usable.len()];
    for (at, out) in lab.as_chunks_mut::<3>().0.iter_mut().enumerate() {
        let channel = |i: usize| base[i] * libm::expf(left[i][at]);
        *out = bulk.lab_of_light([channel(0), channel(1), channel(2)]);
    }
    measured(left, lab, usable)
}

/// Spread and classes over the usable cells only: used again when strange things are left out.
pub(crate) fn measured(left: [Vec<f32>; 3], lab: Vec<f32>, usable: &[bool]) -> Option<Score> {
    let cells: Vec<&[f32; 3]> =
        lab.as_chunks::<3>().0.iter().zip(usable).filter(|(_, ok)| **ok).map(|(lab, _)| lab).collect();
    let middle = |i: usize| f64::from(quantile(&mut cells.iter().map(|lab| lab[i]).collect::<Vec<_>>(), 0.5));
    let median = Lab::new(middle(0).clamp(0.0, 105.0), middle(1), middle(2)).ok()?;
    let mut difference = vec![0.0; usable.len()];
    ciede2000_to(&lab, median, &mut difference);
    difference.iter_mut().zip(usable).filter(|(_, ok)| !**ok).for_each(|(d, _)| *d = 0.0);
    let mut known: Vec<f32> = difference.iter().zip(usable).filter(|(_, ok)| **ok).map(|(d, _)| *d).collect();
    let (s, usual) = (f64::from(quantile(&mut known, 0.95)), f64::from(quantile(&mut known, 0.5)));
    let mut lightness: Vec<f32> = cells.iter().map(|lab| lab[0]).collect();
    let (split, parted) = otsu(&mut lightness);
    let (dark, bright): (Vec<&[f32; 3]>, Vec<&[f32; 3]>) = cells.iter().copied().partition(|lab| lab[0] < split);
    let class = match (mean(&dark), mean(&bright)) {
        (Some(dark), Some(bright)) => science::color::ciede2000(dark, bright).as_units(),
        _ => 0.0,
    };
    let of = share(dark.len(), cells.len());
    Some(Score {
        left,
        lab,
        difference,
        s,
        usual,
        median,
        split,
        class,
        share: of.min(1.0 - of),
        dark: of <= 0.5,
        parted,
    })
}

fn mean(cells: &[&[f32; 3]]) -> Option<Lab> {
    let of = |i: usize| {
        cells.iter().map(|lab| f64::from(lab[i])).sum::<f64>() / f64::from(u32::try_from(cells.len()).unwrap_or(1))
    };
    Lab::new(of(0).clamp(0.0, 105.0), of(1), of(2)).ok()
}

/// Otsu's threshold over 256 steps between the extremes, and the part of the variance it explains.
fn otsu(values: &mut [f32]) -> (f32, f64) {
    let (low, high) = (quantile(values, 0.001), quantile(values, 0.999));
    if high - low < 1e-4 {
        return (low, 0.0);
    }
    let mut bins = [0.0_f64; 256];
    for value in values.iter() {
        #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "clamped to a bin")]
        let bin = ((value - low) / (high - low) * 255.0).clamp(0.0, 255.0) as usize;
        bins[bin] += 1.0;
    }
    let count: f64 = bins.iter().sum();
    let at = |i: usize| f64::from(u16::try_from(i).unwrap_or(0));
    let total: f64 = bins.iter().enumerate().map(|(i, n)| at(i) * n).sum::<f64>() / count;
    let variance: f64 = bins.iter().enumerate().map(|(i, n)| (at(i) - total).powi(2) * n).sum::<f64>() / count;
    let (mut below, mut moment, mut best) = (0.0, 0.0, (0, 0.0));
    for (i, n) in bins.iter().enumerate().take(255) {
        below += n / count;
        moment += at(i) * n / count;
        let between = (total * below - moment).powi(2) / (below * (1.0 - below)).max(1e-9);
        if between > best.1 {
            best = (i, between);
        }
    }
    #[expect(clippy::cast_possible_truncation, reason = "a lightness")]
    let split = low + (high - low) * ((at(best.0) + 1.0) / 255.0) as f32;
    (split, best.1 / variance.max(1e-12))
}

/// The color of the slab where the card lies: the card's reflectance times the slab's light over
/// the card's; without a card a neutral Y of 0.30 is assumed.
pub(crate) fn base_lab(base: [f64; 3]) -> Lab {
    LinearRgb::new(base).xyz().lab()
}
