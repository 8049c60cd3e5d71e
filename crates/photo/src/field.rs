//! Numbers on a grid of cells: smoothing that knows of holes, medians and quantiles.

/// Weights of a Gaussian out to three times its width, in cells.
fn kernel(sigma: f32) -> Vec<f32> {
    #[expect(clippy::cast_possible_truncation, reason = "a few cells")]
    let reach = (3.0 * sigma).ceil().clamp(1.0, 60.0) as i16;
    (-reach..=reach).map(|i| libm::expf(-0.5 * (f32::from(i) / sigma).powi(2))).collect()
}

/// Smooths `values` with a Gaussian of `sigma` cells over the cells that are `usable`; the others
/// neither give nor get a value (they keep 0).
pub(crate) fn smoothed(values: &[f32], usable: &[bool], cols: usize, sigma: f32) -> Vec<f32> {
    let kernel = kernel(sigma);
    let weights: Vec<f32> = usable.iter().map(|&ok| f32::from(u8::from(ok))).collect();
    let filled: Vec<f32> = values.iter().zip(&weights).map(|(value, weight)| value * weight).collect();
    let top = along_columns(&along_rows(&filled, cols, &kernel), cols, &kernel);
    let bottom = along_columns(&along_rows(&weights, cols, &kernel), cols, &kernel);
    let mut out = top;
    for ((value, weight), ok) in out.iter_mut().zip(&bottom).zip(usable) {
        *value = if *ok { *value / weight.max(1e-6) } else { 0.0 };
    }
    out
}

fn along_rows(values: &[f32], cols: usize, kernel: &[f32]) -> Vec<f32> {
    let reach = kernel.len() / 2;
    let mut out = vec![0.0; values.len()];
    let mut padded = vec![0.0; cols + 2 * reach];
    for (row, out) in values.chunks_exact(cols).zip(out.chunks_exact_mut(cols)) {
        padded[reach..reach + cols].copy_from_slice(row);
        for (shift, weight) in kernel.iter().enumerate() {
            for (value, source) in out.iter_mut().zip(&padded[shift..]) {
                *value += weight * source;
            }
        }
    }
    out
}

fn along_columns(values: &[f32], cols: usize, kernel: &[f32]) -> Vec<f32> {
    let (reach, rows) = (kernel.len() / 2, values.len() / cols);
    let mut out = vec![0.0; values.len()];
    for (row, out) in out.chunks_exact_mut(cols).enumerate() {
        for (shift, weight) in kernel.iter().enumerate() {
            if let Some(from) = (row + shift).checked_sub(reach).filter(|from| *from < rows) {
                for (value, source) in out.iter_mut().zip(&values[from * cols..]) {
                    *value += weight * source;
                }
            }
        }
    }
    out
}

/// The value below which `share` of the numbers lie; 0 for none.
pub(crate) fn quantile(values: &mut [f32], share: f64) -> f32 {
    if values.is_empty() {
        return 0.0;
    }
    #[expect(
        clippy::cast_possible_truncation,
        clippy::cast_sign_loss,
        clippy::cast_precision_loss,
        reason = "an index"
    )]
    let at = ((values.len() - 1) as f64 * share).round() as usize;
    *values.select_nth_unstable_by(at, f32::total_cmp).1
}

/// The cells within `reach` of one that is set, along rows and columns.
pub(crate) fn grown(set: &[bool], cols: usize, reach: usize) -> Vec<bool> {
    let rows = set.len() / cols.max(1);
    let mut across = vec![false; set.len()];
    for (at, _) in set.iter().enumerate().filter(|(_, set)| **set) {
        let (row, col) = (at / cols, at % cols);
        across[row * cols + col.saturating_sub(reach)..=row * cols + (col + reach).min(cols - 1)].fill(true);
    }
    let mut out = vec![false; set.len()];
    for (at, _) in across.iter().enumerate().filter(|(_, set)| **set) {
        let (row, col) = (at / cols, at % cols);
        for near in row.saturating_sub(reach)..=(row + reach).min(rows - 1) {
            out[near * cols + col] = true;
        }
    }
    out
}

/// Share of `set` among `of`, 0 to 1; 0 where there are none.
#[expect(clippy::cast_precision_loss, reason = "counts of cells")]
pub(crate) fn share(set: usize, of: usize) -> f64 {
    if of == 0 { 0.0 } else { set as f64 / of as f64 }
}
