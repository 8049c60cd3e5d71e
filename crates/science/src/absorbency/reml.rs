//! The restricted likelihood at one covariance, its slope and its curvature.

use nalgebra::{Matrix3, Vector3};
use pulp::{Arch, Simd, WithSimd};
use units::Length;

use super::covariance::{Covariance, LogVariance, distance};
use super::dense::{dot, factor, forward, inverse, product};
use super::drop::Drops;

/// ln s², ln l, ln t².
pub(crate) type Logs = Vector3<f64>;

pub(crate) fn covariance_at(logs: &Logs) -> Covariance {
    Covariance {
        sill: LogVariance::computed(libm::exp(logs[0])),
        length: Length::meters(libm::exp(logs[1])),
        nugget: LogVariance::computed(libm::exp(logs[2])),
    }
}

/// Drops with all of them as times: those that still stood count at their bound.
pub(crate) struct Restricted {
    n: usize,
    /// Meters between all pairs.
    apart: Vec<f64>,
    /// ln seconds less their mean, which the unknown level takes up.
    pub(crate) off: Vec<f64>,
}

/// The likelihood at one covariance.
pub(crate) struct Here {
    pub(crate) likelihood: f64,
    covariance: Covariance,
    /// L of V = LLᵀ, in the lower triangle.
    factor: Vec<f64>,
}

impl Restricted {
    pub(crate) fn new(drops: &Drops) -> Self {
        let n = drops.logs.len();
        let mean = drops.logs.iter().sum::<f64>() / n as f64;
        let apart = drops.places.iter().flat_map(|a| drops.places.iter().map(|b| distance(*a, *b))).collect();
        Self { n, apart, off: drops.logs.iter().map(|y| y - mean).collect() }
    }

    /// None where the equations cannot be solved in double precision.
    pub(crate) fn at(&self, covariance: Covariance) -> Option<Here> {
        Arch::new().dispatch(Likelihood { of: self, covariance })
    }

    /// Slope and average information in ln s², ln l, ln t².
    pub(crate) fn rise(&self, here: &Here) -> (Vector3<f64>, Matrix3<f64>) {
        Arch::new().dispatch(Rise { of: self, here })
    }
}

struct Likelihood<'a> {
    of: &'a Restricted,
    covariance: Covariance,
}

impl WithSimd for Likelihood<'_> {
    type Output = Option<Here>;

    /// −½[(n−1) ln 2π + ln|V| + ln 1ᵀV⁻¹1 + yᵀPy] (Patterson and Thompson 1971; grade M).
    #[inline(always)]
    fn with_simd<S: Simd>(self, _: S) -> Option<Here> {
        let n = self.of.n;
        let (kernel, nugget) = (self.covariance.kernel(), self.covariance.nugget.value());
        let mut cells = vec![0.0; n * n];
        for (j, (column, apart)) in cells.chunks_exact_mut(n).zip(self.of.apart.chunks_exact(n)).enumerate() {
            for (cell, apart) in column[j..].iter_mut().zip(&apart[j..]) {
                *cell = kernel.at(*apart);
            }
            column[j] += nugget;
        }
        if !factor(&mut cells, n) {
            return None;
        }
        let (mut ones, mut off) = (vec![1.0; n], self.of.off.clone());
        forward(&cells, n, &mut ones);
        forward(&cells, n, &mut off);
        let (weight, shared) = (dot(&ones, &ones), dot(&ones, &off));
        let squares = dot(&off, &off) - shared * shared / weight;
        let determinant = 2.0 * (0..n).map(|i| libm::log(cells[i * n + i])).sum::<f64>();
        let constant = (n - 1) as f64 * libm::log(std::f64::consts::TAU);
        let likelihood = -0.5 * (constant + determinant + libm::log(weight) + squares);
        likelihood.is_finite().then_some(Here { likelihood, covariance: self.covariance, factor: cells })
    }
}

struct Rise<'a> {
    of: &'a Restricted,
    here: &'a Here,
}

impl WithSimd for Rise<'_> {
    type Output = (Vector3<f64>, Matrix3<f64>);

    /// With Vᵢ = ∂V/∂θᵢ and uᵢ = VᵢPy: slope −½[tr(PVᵢ) − uᵢᵀPy] and average information ½uᵢᵀPuⱼ,
    /// the mean of the observed and the expected one where V is linear in θ (Gilmour, Thompson and
    /// Cullis, Biometrics 51, 1995; grade M). It needs no product of matrices.
    #[inline(always)]
    fn with_simd<S: Simd>(self, _: S) -> Self::Output {
        let n = self.of.n;
        let (kernel, nugget) = (self.here.covariance.kernel(), self.here.covariance.nugget.value());
        let inverse = inverse(&self.here.factor, n);
        let ones = product(&inverse, n, &vec![1.0; n]);
        let weight: f64 = ones.iter().sum();
        let project = |x: &[f64]| {
            let mut projected = product(&inverse, n, x);
            let level = dot(&ones, x) / weight;
            projected.iter_mut().zip(&ones).for_each(|(p, one)| *p -= level * one);
            projected
        };
        let projected = project(&self.of.off);
        let (mut by_sill, mut by_length) = (vec![0.0; n * n], vec![0.0; n * n]);
        for ((sill, length), apart) in by_sill.iter_mut().zip(&mut by_length).zip(&self.of.apart) {
            (*sill, *length) = kernel.with_slope(*apart);
        }
        let (ones_sill, ones_length) = (product(&by_sill, n, &ones), product(&by_length, n, &ones));
        let trace: f64 = (0..n).map(|i| inverse[i * n + i]).sum();
        let traces = [
            dot(&inverse, &by_sill) - dot(&ones, &ones_sill) / weight,
            dot(&inverse, &by_length) - dot(&ones, &ones_length) / weight,
            nugget * (trace - dot(&ones, &ones) / weight),
        ];
        let pulls = [
            product(&by_sill, n, &projected),
            product(&by_length, n, &projected),
            projected.iter().map(|p| nugget * p).collect(),
        ];
        let slope = Vector3::from_fn(|i, _| -0.5 * (traces[i] - dot(&projected, &pulls[i])));
        let turned = pulls.each_ref().map(|pull| project(pull));
        (slope, Matrix3::from_fn(|i, j| 0.5 * dot(&pulls[i], &turned[j])))
    }
}
