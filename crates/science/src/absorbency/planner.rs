//! One finish while tests are planned: what its map would be after drops not yet set.

use nalgebra::DMatrix;
use rayon::prelude::*;

use super::covariance::Kernel;
use super::criterion::Criterion;
use super::next::{Ground, MAX_PAIRS};
use super::{AbsorbencyError, Field, Place};

/// The map and the reachable places of one finish. The value of a drop not yet set is unknown, but
/// what it does to the variances is not, and the criteria need no more.
pub(crate) struct Planner {
    /// m − ln T has no meaning without a limit, so the means are kept plain.
    pub(crate) means: Vec<f64>,
    /// Variances with the drops there are.
    pub(crate) first: Vec<f64>,
    /// Variances after the drops planned so far.
    pub(crate) now: Vec<f64>,
    /// m² of each map place.
    pub(crate) each: f64,
    /// Shared variance of map place (row) and reachable place (column) after the drops planned.
    cross: DMatrix<f64>,
    /// The same among reachable places.
    among: DMatrix<f64>,
    taken: Vec<bool>,
    nugget: f64,
}

fn kernel_matrix(kernel: Kernel, a: &[[f64; 2]], b: &[[f64; 2]]) -> DMatrix<f64> {
    DMatrix::from_fn(a.len(), b.len(), |i, j| kernel.between(a[i], b[j]))
}

fn meters(places: &[Place]) -> Result<Vec<[f64; 2]>, AbsorbencyError> {
    match places.iter().position(|p| !p.is_finite()) {
        Some(index) => Err(AbsorbencyError::Place { index }),
        None => Ok(places.iter().map(|p| p.meters()).collect()),
    }
}

impl Planner {
    pub(crate) fn new(field: &Field, ground: &Ground) -> Result<Self, AbsorbencyError> {
        let square_meters = ground.each.as_square_meters();
        let reach = ground.reachable.len();
        let pairs = reach.saturating_mul(ground.map.len() + reach);
        let has_area = square_meters.is_finite() && square_meters > 0.0;
        if ground.map.is_empty() || !has_area || pairs > MAX_PAIRS {
            return Err(AbsorbencyError::Ground { map: ground.map.len(), square_meters, reachable: reach });
        }
        let (map, reachable) = (meters(&ground.map)?, meters(&ground.reachable)?);
        let estimates = field.map(&ground.map);
        let system = &field.system;
        let by_map = system.explained(&field.whitener, &map);
        let mut by_reach = system.explained(&field.whitener, &reachable);
        let among_plain = by_reach.clone();
        // The last row is added where the others are taken off.
        by_reach.row_mut(system.places.len()).neg_mut();
        let cross = kernel_matrix(system.kernel, &map, &reachable) - by_map.tr_mul(&by_reach);
        let among = kernel_matrix(system.kernel, &reachable, &reachable) - among_plain.tr_mul(&by_reach);
        let first: Vec<f64> = estimates.iter().map(|e| e.variance).collect();
        Ok(Self {
            means: estimates.iter().map(|e| e.mean).collect(),
            now: first.clone(),
            first,
            each: square_meters,
            cross,
            among,
            taken: vec![false; reach],
            nugget: field.covariance().nugget.value(),
        })
    }

    /// m² of the whole map.
    pub(crate) fn area(&self) -> f64 {
        self.each * self.now.len() as f64
    }

    /// Variance of a fresh drop at a reachable place.
    fn drop_variance(&self, at: usize) -> f64 {
        self.among[(at, at)].max(0.0) + self.nugget
    }

    /// The variances after one more drop: v(x) − cov(x, new)²/(v(new) + t²).
    pub(crate) fn after(&self, at: usize) -> Vec<f64> {
        let drop = self.drop_variance(at);
        self.now.iter().zip(self.cross.column(at).iter()).map(|(v, c)| (v - c * c / drop).max(0.0)).collect()
    }

    /// The criterion after one more drop at each reachable place, m² × the criterion's own unit;
    /// none for a place already planned.
    pub(crate) fn weigh(&self, criterion: Criterion) -> Vec<Option<f64>> {
        (0..self.taken.len())
            .into_par_iter()
            .map(|at| (!self.taken[at]).then(|| criterion.total(self, &self.after(at))))
            .collect()
    }

    /// Plans a drop.
    pub(crate) fn take(&mut self, at: usize) {
        let scale = 1.0 / libm::sqrt(self.drop_variance(at));
        let by_map = self.cross.column(at) * scale;
        let by_reach = self.among.column(at) * scale;
        self.now = self.after(at);
        self.cross.ger(-1.0, &by_map, &by_reach, 1.0);
        self.among.ger(-1.0, &by_reach, &by_reach, 1.0);
        self.taken[at] = true;
    }
}
