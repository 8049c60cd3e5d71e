//! The kriging equations of one set of values, solved once.

use nalgebra::{Cholesky, DMatrix, DVector, Dyn};

use super::AbsorbencyError;
use super::covariance::{Kernel, distance};

/// V = C + D factored, with what every prediction needs. D holds the noise of each value.
#[derive(Debug, Clone)]
pub(crate) struct System {
    pub(crate) places: Vec<[f64; 2]>,
    pub(crate) kernel: Kernel,
    values: DVector<f64>,
    factor: Cholesky<f64, Dyn>,
    /// V⁻¹1.
    pub(crate) ones: DVector<f64>,
    /// 1ᵀV⁻¹1.
    pub(crate) weight: f64,
    /// The level, 1ᵀV⁻¹y / 1ᵀV⁻¹1.
    pub(crate) level: f64,
    /// V⁻¹(y − level).
    pub(crate) residual: DVector<f64>,
}

/// V with noise on its diagonal.
pub(crate) fn covariance_matrix(places: &[[f64; 2]], kernel: Kernel, noise: &[f64]) -> DMatrix<f64> {
    let mut matrix = DMatrix::zeros(places.len(), places.len());
    for j in 0..places.len() {
        for i in j..places.len() {
            let shared = kernel.at(distance(places[i], places[j]));
            matrix[(i, j)] = shared;
            matrix[(j, i)] = shared;
        }
        matrix[(j, j)] += noise[j];
    }
    matrix
}

impl System {
    pub(crate) fn solve(
        places: &[[f64; 2]],
        values: &[f64],
        kernel: Kernel,
        noise: &[f64],
    ) -> Result<Self, AbsorbencyError> {
        let factor = Cholesky::new(covariance_matrix(places, kernel, noise)).ok_or(AbsorbencyError::Unsolvable)?;
        let values = DVector::from_column_slice(values);
        let ones = factor.solve(&DVector::from_element(values.len(), 1.0));
        let weight = ones.sum();
        let level = ones.dot(&values) / weight;
        let residual = factor.solve(&values.add_scalar(-level));
        let sound = weight.is_finite() && weight > 0.0 && residual.iter().all(|r| r.is_finite());
        if !sound {
            return Err(AbsorbencyError::Unsolvable);
        }
        Ok(Self { places: places.to_vec(), kernel, values, factor, ones, weight, level, residual })
    }

    /// P = V⁻¹ − V⁻¹11ᵀV⁻¹/1ᵀV⁻¹1.
    pub(crate) fn projection(&self) -> DMatrix<f64> {
        let mut p = self.factor.inverse();
        p.ger(-1.0 / self.weight, &self.ones, &self.ones, 1.0);
        p
    }

    /// Mean and variance of each value from all the others, with its own noise:
    /// yᵢ − (Py)ᵢ/Pᵢᵢ and 1/Pᵢᵢ (Dubrule 1983; grade M).
    pub(crate) fn left_out(&self) -> Vec<(f64, f64)> {
        let p = self.projection();
        (0..self.values.len()).map(|i| (self.values[i] - self.residual[i] / p[(i, i)], 1.0 / p[(i, i)])).collect()
    }

    /// L⁻¹, by which many places are worked as one product of matrices.
    pub(crate) fn whitener(&self) -> DMatrix<f64> {
        let mut inverse = DMatrix::identity(self.values.len(), self.values.len());
        let solved = self.factor.l_dirty().solve_lower_triangular_mut(&mut inverse);
        debug_assert!(solved, "the factor has a positive diagonal");
        inverse
    }

    /// The shared variances of all values with these places, one column a place.
    pub(crate) fn shared(&self, places: &[[f64; 2]]) -> DMatrix<f64> {
        DMatrix::from_fn(self.places.len(), places.len(), |i, j| self.kernel.between(self.places[i], places[j]))
    }

    /// For each place a column z with cov(a, b | data) = C(a, b) − z_aᵀz_b, but for the last row,
    /// whose product is added: it carries the doubt about the level.
    pub(crate) fn explained(&self, whitener: &DMatrix<f64>, places: &[[f64; 2]]) -> DMatrix<f64> {
        let shared = self.shared(places);
        let unseen = shared.tr_mul(&self.ones).map(|sum| (1.0 - sum) / libm::sqrt(self.weight));
        let mut columns = (whitener * &shared).insert_row(self.places.len(), 0.0);
        columns.row_mut(self.places.len()).copy_from(&unseen.transpose());
        columns
    }
}
