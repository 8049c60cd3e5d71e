//! Square symmetric matrices by columns in one slice: factor, inverse, product.
//!
//! Everything here is inlined, so that `pulp` can have it compiled for the widest vectors of the
//! processor. The inner loops run down columns.

/// L with V = LLᵀ in the lower triangle of V; false where V is not positive definite.
#[inline(always)]
pub(crate) fn factor(cells: &mut [f64], n: usize) -> bool {
    for j in 0..n {
        let (done, rest) = cells.split_at_mut((j + 1) * n);
        let column = &mut done[j * n..];
        let pivot = column[j];
        // "Not above" also where it is not a number.
        if !(pivot > 0.0 && pivot.is_finite()) {
            return false;
        }
        let scale = 1.0 / pivot.sqrt();
        for cell in &mut column[j..] {
            *cell *= scale;
        }
        for (k, later) in (j + 1..n).zip(rest.chunks_exact_mut(n)) {
            add(&mut later[k..], -column[k], &column[k..]);
        }
    }
    true
}

/// `to` + `times` × `from`.
#[inline(always)]
fn add(to: &mut [f64], times: f64, from: &[f64]) {
    for (to, from) in to.iter_mut().zip(from) {
        *to += times * from;
    }
}

/// L⁻¹x in place of x.
#[inline(always)]
pub(crate) fn forward(factor: &[f64], n: usize, x: &mut [f64]) {
    forward_from(factor, n, 0, x);
}

/// As [`forward`] where x is nothing before `first`.
#[inline(always)]
fn forward_from(factor: &[f64], n: usize, first: usize, x: &mut [f64]) {
    for (k, column) in factor.chunks_exact(n).enumerate().skip(first) {
        let (done, rest) = x.split_at_mut(k + 1);
        done[k] /= column[k];
        add(rest, -done[k], &column[k + 1..]);
    }
}

/// V⁻¹, both triangles, from L.
#[inline(always)]
pub(crate) fn inverse(factor: &[f64], n: usize) -> Vec<f64> {
    // L⁻¹ by columns into the rows of another, since the sum below runs over its rows.
    let mut rows = vec![0.0; n * n];
    let mut x = vec![0.0; n];
    for j in 0..n {
        x.fill(0.0);
        x[j] = 1.0;
        forward_from(factor, n, j, &mut x);
        for i in j..n {
            rows[i * n + j] = x[i];
        }
    }
    let mut inverse = vec![0.0; n * n];
    for (k, row) in rows.chunks_exact(n).enumerate() {
        for (j, column) in inverse.chunks_exact_mut(n).enumerate().take(k + 1) {
            add(&mut column[j..=k], row[j], &row[j..=k]);
        }
    }
    for j in 0..n {
        for i in 0..j {
            inverse[j * n + i] = inverse[i * n + j];
        }
    }
    inverse
}

/// Ax of a symmetric A with both triangles.
#[inline(always)]
pub(crate) fn product(cells: &[f64], n: usize, x: &[f64]) -> Vec<f64> {
    let mut sum = vec![0.0; n];
    for (column, x) in cells.chunks_exact(n).zip(x) {
        add(&mut sum, *x, column);
    }
    sum
}

/// xᵀy, in eight sums side by side.
#[inline(always)]
pub(crate) fn dot(x: &[f64], y: &[f64]) -> f64 {
    let ((x, x_rest), (y, y_rest)) = (x.as_chunks::<8>(), y.as_chunks::<8>());
    let mut sums = [0.0; 8];
    for (x, y) in x.iter().zip(y) {
        for ((sum, x), y) in sums.iter_mut().zip(x).zip(y) {
            *sum += x * y;
        }
    }
    sums.iter().sum::<f64>() + x_rest.iter().zip(y_rest).map(|(x, y)| x * y).sum::<f64>()
}
