//! Restricted maximum likelihood of the covariance, within bounds.

use nalgebra::{Matrix3, Vector3};
use units::Length;

use super::covariance::{Covariance, distance};
use super::drop::Drops;
use super::reml::{Logs, covariance_at, slope_and_information, solved};
use super::{AbsorbencyError, DropTest, Nugget, NuggetBasis};

/// s² is sought in this range: a factor of 1.01 to one of 150 at one deviation.
const SILL: (f64, f64) = (1e-4, 25.0);
/// l is sought from this share of the smallest spacing …
const SHORTEST: f64 = 0.5;
/// … to this multiple of the largest distance; beyond, s² and l only rise together.
const LONGEST: f64 = 3.0;
/// t² is never sought above this: a factor of 7 between drops at one place is no measurement.
const LARGEST_NUGGET: f64 = 4.0;
/// Rounds from one start; scoring usually settles within thirty.
const MOST_ROUNDS: usize = 100;
/// Step in ln s², ln l, ln t² below which the rounds end.
const SETTLED: f64 = 1e-10;
/// Lengths from which the search starts, evenly in ln l. The likelihood can have two tops: a short
/// length with little noise, and a long one that takes the short pattern for noise.
const LENGTHS: u32 = 8;
/// A start is followed up unless it lies this far below the best one, in units of likelihood.
const HOPELESS: f64 = 8.0;

/// A fitted covariance and how it came about.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Fitted {
    /// s², l and t².
    pub covariance: Covariance,
    /// Restricted log-likelihood there.
    pub log_likelihood: f64,
    /// Where t² comes from.
    pub basis: NuggetBasis,
    /// The likelihood rose towards a length shorter than half the smallest spacing, or longer than
    /// three times the largest distance: the drops do not tell the length.
    pub length_at_limit: bool,
    /// The likelihood rose towards the end of the range of s², 0.0001 or 25: no pattern was seen,
    /// or no level.
    pub sill_at_limit: bool,
}

/// The restricted log-likelihood of drops at a covariance, with the constant −½(n−1)ln 2π. Drops
/// that still stood count at their bound.
///
/// # Errors
/// When there are too few drops, a number is out of range or the equations cannot be solved.
pub fn log_likelihood(drops: &[DropTest], covariance: Covariance) -> Result<f64, AbsorbencyError> {
    let read = Drops::enough(drops)?;
    Ok(solved(&read, &covariance.checked()?)?.restricted_log_likelihood())
}

/// s², l and, as told, t² where the restricted likelihood is largest (Patterson and Thompson 1971,
/// by Fisher scoring; grade M; the optimum checked against a reference, grade V).
///
/// # Errors
/// When there are too few drops, the nugget is not above 0 or the equations cannot be solved.
pub fn fit_covariance(drops: &[DropTest], nugget: Nugget) -> Result<Fitted, AbsorbencyError> {
    fit(&Drops::enough(drops)?, nugget, None)
}

/// `basis` when a rule chose the nugget.
pub(crate) fn fit(drops: &Drops, nugget: Nugget, basis: Option<NuggetBasis>) -> Result<Fitted, AbsorbencyError> {
    let search = Search::new(drops, nugget)?;
    let starts = search.starts();
    let top = starts.iter().map(|start| start.0).fold(f64::NEG_INFINITY, f64::max);
    let mut best: Option<(f64, Logs)> = None;
    // Where no start can be solved, all lie at minus infinity and the first climb says so.
    for (likelihood, start) in starts.into_iter().filter(|start| start.0 >= top - HOPELESS) {
        let found = search.climb(likelihood, start)?;
        if best.is_none_or(|b| found.0 > b.0) {
            best = Some(found);
        }
    }
    let (log_likelihood, logs) = best.ok_or(AbsorbencyError::Unsolvable)?;
    let at_limit = |i: usize| logs[i] <= search.low[i] || logs[i] >= search.high[i];
    let basis = match (basis, nugget) {
        (Some(basis), _) => basis,
        (None, Nugget::Fixed(_)) => NuggetBasis::Given,
        (None, Nugget::AtLeast(_)) if logs[2] <= search.low[2] => NuggetBasis::Floor,
        (None, Nugget::AtLeast(_)) => NuggetBasis::NotIdentified,
    };
    let covariance = covariance_at(&logs);
    Ok(Fitted { covariance, log_likelihood, basis, length_at_limit: at_limit(1), sill_at_limit: at_limit(0) })
}

/// Bounds in ln s², ln l, ln t².
struct Search<'a> {
    drops: &'a Drops,
    low: Logs,
    high: Logs,
}

impl<'a> Search<'a> {
    fn new(drops: &'a Drops, nugget: Nugget) -> Result<Self, AbsorbencyError> {
        let firsts: Vec<[f64; 2]> = drops.groups().iter().map(|group| drops.places[group[0]]).collect();
        let (mut near, mut far) = (f64::INFINITY, 0.0_f64);
        for (i, a) in firsts.iter().enumerate() {
            for b in &firsts[..i] {
                let apart = distance(*a, *b);
                (near, far) = (near.min(apart), far.max(apart));
            }
        }
        let (least, most) = match nugget {
            Nugget::Fixed(value) => (value.value(), value.value()),
            Nugget::AtLeast(floor) => (floor.value(), floor.value().max(LARGEST_NUGGET)),
        };
        let low = Covariance {
            sill: super::LogVariance::computed(SILL.0),
            length: Length::metres(SHORTEST * near),
            nugget: super::LogVariance::computed(least),
        };
        low.checked()?;
        let logs = |sill: f64, length: f64, nugget: f64| Vector3::new(sill, length, nugget).map(libm::log);
        Ok(Self { drops, low: logs(SILL.0, SHORTEST * near, least), high: logs(SILL.1, LONGEST * far, most) })
    }

    /// Below everything where the equations cannot be solved, so that the search turns away.
    fn likelihood(&self, logs: &Logs) -> f64 {
        solved(self.drops, &covariance_at(logs)).map_or(f64::NEG_INFINITY, |s| s.restricted_log_likelihood())
    }

    /// For each of some lengths over the whole range, the best of a net of sills and nuggets about
    /// the spread seen.
    fn starts(&self) -> Vec<(f64, Logs)> {
        let n = self.drops.logs.len() as f64;
        let mean = self.drops.logs.iter().sum::<f64>() / n;
        let spread = self.drops.logs.iter().map(|y| (y - mean) * (y - mean)).sum::<f64>() / (n - 1.0);
        let spread = spread.max(SILL.0);
        let mut starts = Vec::new();
        for step in 0..LENGTHS {
            let share = (f64::from(step) + 0.5) / f64::from(LENGTHS);
            let length = self.low[1] + (self.high[1] - self.low[1]) * share;
            let mut best: Option<(f64, Logs)> = None;
            for sill in [0.4, 1.0, 3.0] {
                // The least nugget allowed, and shares of the spread; without choice all are one.
                let mut before = None;
                for nugget in [0.0, 0.2, 0.6] {
                    let logs = self.within(Vector3::new(
                        libm::log(sill * spread),
                        length,
                        libm::log((nugget * spread).max(f64::MIN_POSITIVE)),
                    ));
                    if before.replace(logs) == Some(logs) {
                        continue;
                    }
                    let likelihood = self.likelihood(&logs);
                    if best.is_none_or(|b| likelihood > b.0) {
                        best = Some((likelihood, logs));
                    }
                }
            }
            starts.extend(best);
        }
        starts
    }

    fn within(&self, logs: Logs) -> Logs {
        logs.zip_zip_map(&self.low, &self.high, |value, low, high| value.clamp(low, high))
    }

    /// Fisher scoring; a step that does not rise is halved. A number on its bound with the slope
    /// outward stays there.
    fn climb(&self, mut likelihood: f64, mut logs: Logs) -> Result<(f64, Logs), AbsorbencyError> {
        for _ in 0..MOST_ROUNDS {
            let covariance = covariance_at(&logs);
            let system = solved(self.drops, &covariance)?;
            let (slope, information) = slope_and_information(self.drops, &covariance, &system);
            let mut step = self.step(&logs, &slope, &information);
            let mut risen = None;
            // Forty halvings shrink any step to rounding.
            for _ in 0..40 {
                let next = self.within(logs + step);
                let there = self.likelihood(&next);
                if there > likelihood {
                    risen = Some((there, next));
                    break;
                }
                step *= 0.5;
            }
            let Some((there, next)) = risen else { break };
            let moved = (next - logs).amax();
            (likelihood, logs) = (there, next);
            if moved < SETTLED {
                break;
            }
        }
        Ok((likelihood, logs))
    }

    fn step(&self, logs: &Logs, slope: &Vector3<f64>, information: &Matrix3<f64>) -> Vector3<f64> {
        let (mut matrix, mut right) = (*information, *slope);
        for i in 0..3 {
            let stuck = (logs[i] <= self.low[i] && slope[i] < 0.0) || (logs[i] >= self.high[i] && slope[i] > 0.0);
            if stuck || self.low[i] >= self.high[i] {
                matrix.row_mut(i).fill(0.0);
                matrix.column_mut(i).fill(0.0);
                matrix[(i, i)] = 1.0;
                right[i] = 0.0;
            } else {
                // Keeps two numbers that only matter together from making the matrix singular.
                matrix[(i, i)] += 1e-9 + 1e-9 * information[(i, i)];
            }
        }
        let step = matrix.cholesky().map_or(right, |factor| factor.solve(&right));
        // No more than a factor of e² at once.
        step * (2.0 / step.amax().max(2.0))
    }
}
