//! Direct solution of a tridiagonal system, factored once and solved for several right sides.

/// The factors of a tridiagonal matrix whose columns are dominated by the diagonal, so that
/// elimination needs no row exchange (Thomas algorithm).
#[derive(Debug, Clone, Default)]
pub(crate) struct Tridiagonal {
    /// Multiplier of the row above.
    multiplier: Vec<f64>,
    /// One over the pivot.
    inverse: Vec<f64>,
    /// Entry above the diagonal over the pivot.
    above: Vec<f64>,
}

impl Tridiagonal {
    pub(crate) fn resize(&mut self, size: usize) {
        self.multiplier.resize(size, 0.0);
        self.inverse.resize(size, 0.0);
        self.above.resize(size, 0.0);
    }

    /// Factors the matrix whose row `i` is `(below, diagonal, above) = row(i)`.
    pub(crate) fn factor(&mut self, row: impl Fn(usize) -> (f64, f64, f64)) {
        let size = self.inverse.len();
        let mut above_before = 0.0;
        let mut inverse_before = 0.0;
        for i in 0..size {
            let (below, diagonal, above) = row(i);
            let multiplier = below * inverse_before;
            let inverse = 1.0 / (diagonal - multiplier * above_before);
            self.multiplier[i] = multiplier;
            self.inverse[i] = inverse;
            self.above[i] = above * inverse;
            above_before = above;
            inverse_before = inverse;
        }
    }

    /// Replaces the right side by the solution.
    pub(crate) fn solve(&self, right: &mut [f64]) {
        let mut before = 0.0;
        for (x, multiplier) in right.iter_mut().zip(&self.multiplier) {
            *x -= multiplier * before;
            before = *x;
        }
        let mut after = 0.0;
        for ((x, inverse), above) in right.iter_mut().zip(&self.inverse).zip(&self.above).rev() {
            *x = *x * inverse - above * after;
            after = *x;
        }
    }
}

#[cfg(test)]
mod tests {
    use super::Tridiagonal;

    #[test]
    fn solution_satisfies_the_rows() {
        let rows = [(0.0, 4.0, -1.0), (-2.0, 5.0, -1.5), (-0.5, 3.0, -1.0), (-1.0, 6.0, 0.0)];
        let right = [1.0, -2.0, 0.5, 3.0];
        let mut factors = Tridiagonal::default();
        factors.resize(4);
        factors.factor(|i| rows[i]);
        let mut x = right;
        factors.solve(&mut x);
        for i in 0..4 {
            let left = if i > 0 { rows[i].0 * x[i - 1] } else { 0.0 };
            let next = if i < 3 { rows[i].2 * x[i + 1] } else { 0.0 };
            assert!((left + rows[i].1 * x[i] + next - right[i]).abs() < 1e-14, "row {i}");
        }
    }
}
