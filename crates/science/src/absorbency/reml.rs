//! One step up the restricted likelihood: its value, slope and expected curvature.

use nalgebra::{DMatrix, Matrix3, Vector3};

use super::AbsorbencyError;
use super::covariance::{Covariance, LogVariance, distance};
use super::drop::Drops;
use super::system::System;
use units::Length;

/// ln s², ln l, ln t².
pub(crate) type Logs = Vector3<f64>;

pub(crate) fn covariance_at(logs: &Logs) -> Covariance {
    Covariance {
        sill: LogVariance::computed(libm::exp(logs[0])),
        length: Length::metres(libm::exp(logs[1])),
        nugget: LogVariance::computed(libm::exp(logs[2])),
    }
}

/// The likelihood with all drops as times: those that still stood count at their bound.
pub(crate) fn solved(drops: &Drops, covariance: &Covariance) -> Result<System, AbsorbencyError> {
    let noise = vec![covariance.nugget.value(); drops.logs.len()];
    System::solve(&drops.places, &drops.logs, covariance.kernel(), &noise)
}

/// Slope and Fisher information in ln s², ln l, ln t²: ∂/∂θᵢ = −½[tr(PVᵢ) − yᵀPVᵢPy],
/// Fᵢⱼ = ½ tr(PVᵢPVⱼ) with Vᵢ = ∂V/∂θᵢ (Harville, JASA 72, 1977; grade M).
pub(crate) fn slope_and_information(
    drops: &Drops,
    covariance: &Covariance,
    system: &System,
) -> (Vector3<f64>, Matrix3<f64>) {
    let (n, kernel) = (drops.logs.len(), covariance.kernel());
    let p = system.projection();
    let mut by_sill = DMatrix::zeros(n, n);
    let mut by_length = DMatrix::zeros(n, n);
    for j in 0..n {
        for i in j..n {
            let (shared, slope) = kernel.with_slope(distance(drops.places[i], drops.places[j]));
            (by_sill[(i, j)], by_sill[(j, i)]) = (shared, shared);
            (by_length[(i, j)], by_length[(j, i)]) = (slope, slope);
        }
    }
    let projected = system.projected();
    let nugget = covariance.nugget.value();
    let products = [&p * &by_sill, &p * &by_length, &p * nugget];
    let squares = [
        projected.dot(&(&by_sill * projected)),
        projected.dot(&(&by_length * projected)),
        nugget * projected.norm_squared(),
    ];
    let slope = Vector3::from_fn(|i, _| -0.5 * (products[i].trace() - squares[i]));
    let turned = products.each_ref().map(DMatrix::transpose);
    let information = Matrix3::from_fn(|i, j| 0.5 * products[i].dot(&turned[j]));
    (slope, information)
}
