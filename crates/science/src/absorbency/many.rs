//! Mean and variance at many places, on the widest numbers the processor has.
//!
//! `pulp` chooses between the processor's abilities when the program runs. The digits may differ in
//! the last place from one kind of processor to another, as they do with any product of matrices.

use nalgebra::DMatrix;
use pulp::{Arch, Simd, WithSimd};

use super::system::System;

/// Rows of L⁻¹ worked together: with two vectors of places they fill the registers.
const ROWS: usize = 4;

/// L⁻¹, lower triangular, in groups of four rows, each group column by column to its last row's end.
#[derive(Debug, Clone)]
pub(crate) struct Packed(Vec<Vec<[f64; ROWS]>>);

impl Packed {
    pub(crate) fn new(whitener: &DMatrix<f64>) -> Self {
        let n = whitener.nrows();
        let entry = |i: usize, j: usize| if i < n && j <= i { whitener[(i, j)] } else { 0.0 };
        let group = |first: usize| {
            let columns = 0..n.min(first + ROWS);
            columns.map(|j| std::array::from_fn(|row| entry(first + row, j))).collect()
        };
        Self((0..n).step_by(ROWS).map(group).collect())
    }
}

/// Mean and latent variance at places: m = level + cᵀV⁻¹(y − level) and
/// v = s² − cᵀV⁻¹c + (1 − 1ᵀV⁻¹c)²/1ᵀV⁻¹1 (Cressie 1993; grade M).
pub(crate) fn predict(system: &System, packed: &Packed, places: &[[f64; 2]]) -> Vec<(f64, f64)> {
    let mut found = Vec::with_capacity(places.len());
    Arch::new().dispatch(Work { system, packed, places, found: &mut found });
    found
}

struct Work<'a> {
    system: &'a System,
    packed: &'a Packed,
    places: &'a [[f64; 2]],
    found: &'a mut Vec<(f64, f64)>,
}

impl WithSimd for Work<'_> {
    type Output = ();

    #[inline(always)]
    fn with_simd<S: Simd>(self, simd: S) {
        let wide = 2 * S::F64_LANES;
        let drops = self.system.places.len();
        let mut shared = vec![0.0; drops * wide];
        let (mut xs, mut ys, mut sums) = (vec![0.0; wide], vec![0.0; wide], vec![0.0; 3 * wide]);
        for strip in self.places.chunks(wide) {
            // Lanes without a place are given the strip's first one.
            for lane in 0..wide {
                [xs[lane], ys[lane]] = *strip.get(lane).unwrap_or(&strip[0]);
            }
            for (row, [x, y]) in shared.chunks_exact_mut(wide).zip(&self.system.places) {
                let kernel = self.system.kernel;
                for ((shared, px), py) in row.iter_mut().zip(&xs).zip(&ys) {
                    *shared = kernel.between([*px, *py], [*x, *y]);
                }
            }
            let (columns, _) = S::as_simd_f64s(&shared).0.as_chunks::<2>();
            let (sums_wide, _) = S::as_mut_simd_f64s(&mut sums);
            let [means, unities] = self.weighted(simd, columns);
            let squares = self.squares(simd, columns);
            sums_wide[..2].copy_from_slice(&means);
            sums_wide[2..4].copy_from_slice(&unities);
            sums_wide[4..6].copy_from_slice(&squares);
            for lane in 0..strip.len() {
                let unseen = 1.0 - sums[wide + lane];
                let variance = self.system.kernel.sill - sums[2 * wide + lane] + unseen * unseen / self.system.weight;
                self.found.push((self.system.level + sums[lane], variance.max(0.0)));
            }
        }
    }
}

impl Work<'_> {
    /// cᵀV⁻¹(y − level) and cᵀV⁻¹1.
    #[inline(always)]
    fn weighted<S: Simd>(&self, simd: S, columns: &[[S::f64s; 2]]) -> [[S::f64s; 2]; 2] {
        let mut sums = [[simd.splat_f64s(0.0); 2]; 2];
        let weights = self.system.residual.iter().zip(self.system.ones.iter());
        for (column, (residual, one)) in columns.iter().zip(weights) {
            for (sum, weight) in sums.iter_mut().zip([*residual, *one]) {
                let weight = simd.splat_f64s(weight);
                *sum = std::array::from_fn(|half| simd.mul_add_e_f64s(weight, column[half], sum[half]));
            }
        }
        sums
    }

    /// cᵀV⁻¹c as the square of L⁻¹c.
    #[inline(always)]
    fn squares<S: Simd>(&self, simd: S, columns: &[[S::f64s; 2]]) -> [S::f64s; 2] {
        let mut squares = [simd.splat_f64s(0.0); 2];
        for group in &self.packed.0 {
            let mut white = [[simd.splat_f64s(0.0); 2]; ROWS];
            for (entries, column) in group.iter().zip(columns) {
                for (sum, entry) in white.iter_mut().zip(entries) {
                    let entry = simd.splat_f64s(*entry);
                    sum[0] = simd.mul_add_e_f64s(entry, column[0], sum[0]);
                    sum[1] = simd.mul_add_e_f64s(entry, column[1], sum[1]);
                }
            }
            for sum in white {
                squares[0] = simd.mul_add_e_f64s(sum[0], sum[0], squares[0]);
                squares[1] = simd.mul_add_e_f64s(sum[1], sum[1], squares[1]);
            }
        }
        squares
    }
}
