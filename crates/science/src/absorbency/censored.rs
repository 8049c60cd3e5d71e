//! Drops that still stood: what "longer than this" is worth, by expectation propagation.
//!
//! Each such drop is replaced by a value with its own noise such that, at its place, mean and
//! variance equal those of the normal distribution from all other drops, cut by the chance that
//! this drop takes longer than the bound (Minka 2001; the factor is that of probit regression,
//! Rasmussen and Williams 2006, eq. 3.58, with the noise t² inside; grade M).

use super::covariance::{Covariance, Kernel};
use super::drop::Drops;
use super::system::System;
use super::{AbsorbencyError, LogVariance};
use crate::chance::normal_cdf;

/// Rounds beyond which the values are taken as they are; twenty usually do.
const MAX_ROUNDS: usize = 500;
/// Share of the step taken in each round: all are changed at once, and full steps may swing.
const STEP: f64 = 0.7;
/// Change of the values, in deviations of what they say, below which the rounds end.
const SETTLED: f64 = 1e-11;
/// Least precision of a value: its noise is then so large that it says nothing.
const MIN_PRECISION: f64 = 1e-8;

/// Precision and precision × value of one replaced drop.
#[derive(Debug, Clone, Copy)]
struct Site {
    precision: f64,
    pull: f64,
}

/// The equations with every standing drop replaced, and the noise of each value.
pub(crate) fn solve(drops: &Drops, covariance: &Covariance) -> Result<(System, Vec<f64>), AbsorbencyError> {
    let (kernel, nugget) = (covariance.kernel(), covariance.nugget);
    let standing: Vec<usize> = (0..drops.logs.len()).filter(|i| drops.standing[*i]).collect();
    let mut sites: Vec<Site> =
        standing.iter().map(|i| Site { precision: MIN_PRECISION, pull: MIN_PRECISION * drops.logs[*i] }).collect();
    let mut solved = with_sites(drops, kernel, nugget, &standing, &sites)?;
    for _ in 0..MAX_ROUNDS {
        if standing.is_empty() {
            break;
        }
        let left_out = solved.0.left_out();
        let mut change = 0.0_f64;
        for (site, &i) in sites.iter_mut().zip(&standing) {
            let (mean, with_noise) = left_out[i];
            let cavity = (mean, (with_noise - 1.0 / site.precision).max(0.0));
            let wanted = matched(cavity, drops.logs[i], nugget.value());
            let scale = libm::sqrt(cavity.1.max(f64::MIN_POSITIVE));
            change = change
                .max((wanted.precision - site.precision).abs() * scale * scale)
                .max((wanted.pull - site.pull - mean * (wanted.precision - site.precision)).abs() * scale);
            site.precision += STEP * (wanted.precision - site.precision);
            site.pull += STEP * (wanted.pull - site.pull);
        }
        solved = with_sites(drops, kernel, nugget, &standing, &sites)?;
        if change < SETTLED {
            break;
        }
    }
    Ok(solved)
}

fn with_sites(
    drops: &Drops,
    kernel: Kernel,
    nugget: LogVariance,
    standing: &[usize],
    sites: &[Site],
) -> Result<(System, Vec<f64>), AbsorbencyError> {
    let mut values = drops.logs.clone();
    let mut noise = vec![nugget.value(); values.len()];
    for (site, &i) in sites.iter().zip(standing) {
        values[i] = site.pull / site.precision;
        noise[i] = 1.0 / site.precision;
    }
    Ok((System::solve(&drops.places, &values, kernel, &noise)?, noise))
}

/// The normal factor that gives N(m, v) the mean and variance of N(m, v) × Φ((y − bound)/t).
///
/// With z = (m − bound)/√(v+t²) and r = φ(z)/Φ(z): mean m + vr/√(v+t²) and variance
/// v − v²q, q = r(z+r)/(v+t²); so precision q/(1 − vq) and pull (mq + r/√(v+t²))/(1 − vq).
fn matched((mean, variance): (f64, f64), bound: f64, nugget: f64) -> Site {
    let spread = libm::sqrt(variance + nugget);
    let z = (mean - bound) / spread;
    let r = hazard(z);
    let q = r * (z + r) / (variance + nugget);
    let left = 1.0 - variance * q;
    let precision = (q / left).max(MIN_PRECISION);
    let pull = mean * precision + r / spread / left;
    Site { precision, pull }
}

/// φ(z)/Φ(z). Far below zero both vanish, and −z − 1/z + 2/z³ is used (Mills' ratio; grade M).
fn hazard(z: f64) -> f64 {
    if z < -30.0 {
        return -z - 1.0 / z + 2.0 / (z * z * z);
    }
    libm::exp(-0.5 * z * z) / libm::sqrt(std::f64::consts::TAU) / normal_cdf(z)
}

#[cfg(test)]
mod tests {
    use super::hazard;

    /// The two branches meet where one takes over.
    #[test]
    fn the_far_form_continues_the_near_one() {
        let (near, far) = (hazard(-30.0 + 1e-9), hazard(-30.0 - 1e-9));
        assert!((near / far - 1.0).abs() < 1e-6, "{near} {far}");
    }
}
