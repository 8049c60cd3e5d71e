//! Restricted maximum likelihood of the covariance, within bounds.

use nalgebra::{Matrix3, Vector3};
use rayon::prelude::*;
use units::Length;

use super::covariance::{Covariance, distance};
use super::drop::Drops;
use super::reml::{Logs, Restricted, covariance_at};
use super::{AbsorbencyError, DropTest, Nugget, NuggetBasis};

/// s² is sought in this range: a factor of 1.01 to one of 150 at one deviation.
const SILL: (f64, f64) = (1e-4, 25.0);
/// l is sought from this share of the smallest spacing …
const SHORTEST: f64 = 0.5;
/// … to this multiple of the largest distance; beyond, s² and l only rise together.
const LONGEST: f64 = 3.0;
/// t² is never sought above this: a factor of 7 between drops at one place is no measurement.
const LARGEST_NUGGET: f64 = 4.0;
/// Rounds from one start; some ten usually do.
const MAX_ROUNDS: usize = 100;
/// Halvings of one step; forty shrink any to rounding.
const MAX_HALVINGS: usize = 40;
/// Rise of the likelihood promised by a step below which the rounds end: in the first climb …
const NEARLY: f64 = 1e-3;
/// … and in the last. What is left after that step is far smaller still.
const SETTLED: f64 = 1e-12;
/// Length of a step beyond which the curvature is taken anew.
const LONG_STEP: f64 = 0.5;
/// A first climb is finished when it ended no further than this below the best, …
const WITHIN_REACH: f64 = 1.0;
/// … and no number of another lies within this share of its own.
const SAME_TOP: f64 = 0.02;
/// Lengths from which the search starts, evenly in ln l. The likelihood can have two tops: a short
/// length with little noise, and a long one that takes the short pattern for noise.
const LENGTHS: u32 = 8;
/// With this many drops or fewer the likelihood is flatter, has more tops, and is cheap …
const FEW: usize = 40;
/// … so that the net is made finer.
const LENGTHS_OF_FEW: u32 = 16;
/// A start is followed up unless it lies this far below the best one, in units of likelihood. Many
/// drops leave few such starts, few drops many.
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
    let here = Restricted::new(&read).at(covariance.checked()?).ok_or(AbsorbencyError::Unsolvable)?;
    Ok(here.likelihood)
}

/// s², l and, as told, t² where the restricted likelihood is largest (Patterson and Thompson 1971,
/// by average information; grade M; the optimum checked against a reference, grade V).
///
/// # Errors
/// When there are too few drops, the nugget is not above 0 or the equations cannot be solved.
pub fn fit_covariance(drops: &[DropTest], nugget: Nugget) -> Result<Fitted, AbsorbencyError> {
    fit(&Drops::enough(drops)?, nugget, None)
}

/// `basis` when a rule chose the nugget.
pub(crate) fn fit(drops: &Drops, nugget: Nugget, basis: Option<NuggetBasis>) -> Result<Fitted, AbsorbencyError> {
    let search = Search::new(drops, nugget)?;
    let (log_likelihood, logs) = search.top().ok_or(AbsorbencyError::Unsolvable)?;
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

/// The first of the highest.
fn highest(found: &[(f64, Logs)]) -> Option<(f64, Logs)> {
    found.iter().copied().reduce(|best, next| if next.0 > best.0 { next } else { best })
}

/// A curvature that gives the change of slope just met (Broyden, Fletcher, Goldfarb and Shanno 1970;
/// grade M); the information where that change has the wrong sign.
fn bend(curvature: &Matrix3<f64>, moved: &Logs, bent: &Logs, information: Matrix3<f64>) -> Matrix3<f64> {
    let (along, pull) = (moved.dot(bent), curvature * moved);
    let before = moved.dot(&pull);
    if !(along > 1e-6 * before && before > 0.0) {
        return information;
    }
    curvature - pull * pull.transpose() / before + bent * bent.transpose() / along
}

/// Bounds in ln s², ln l, ln t².
struct Search {
    restricted: Restricted,
    low: Logs,
    high: Logs,
}

impl Search {
    fn new(drops: &Drops, nugget: Nugget) -> Result<Self, AbsorbencyError> {
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
            length: Length::meters(SHORTEST * near),
            nugget: super::LogVariance::computed(least),
        };
        low.checked()?;
        let logs = |sill: f64, length: f64, nugget: f64| Vector3::new(sill, length, nugget).map(libm::log);
        Ok(Self {
            restricted: Restricted::new(drops),
            low: logs(SILL.0, SHORTEST * near, least),
            high: logs(SILL.1, LONGEST * far, most),
        })
    }

    /// The likelihood and where it is largest; none where no start can be solved.
    fn top(&self) -> Option<(f64, Logs)> {
        let lengths = if self.restricted.off.len() <= FEW { LENGTHS_OF_FEW } else { LENGTHS };
        let share = |step: u32| (f64::from(step) + 0.5) / f64::from(lengths);
        let starts: Vec<(f64, Logs)> =
            (0..lengths).into_par_iter().flat_map_iter(|step| self.starts(share(step))).collect();
        let best = highest(&starts)?.0;
        let near: Vec<Logs> = starts.into_iter().filter(|s| s.0 >= best - HOPELESS).map(|s| s.1).collect();
        let found: Vec<(f64, Logs)> = near.into_par_iter().filter_map(|start| self.climb(start, NEARLY)).collect();
        let best = highest(&found)?.0;
        let mut apart: Vec<Logs> = Vec::new();
        for (_, logs) in found.into_iter().filter(|f| f.0 >= best - WITHIN_REACH) {
            if apart.iter().all(|other| (other - logs).amax() > SAME_TOP) {
                apart.push(logs);
            }
        }
        let tops: Vec<(f64, Logs)> = apart.into_par_iter().filter_map(|logs| self.climb(logs, SETTLED)).collect();
        highest(&tops)
    }

    /// At a length this share of the way through its range, a net of sills and nuggets about the
    /// spread seen.
    fn starts(&self, share: f64) -> Vec<(f64, Logs)> {
        let off = &self.restricted.off;
        let spread = (off.iter().map(|y| y * y).sum::<f64>() / (off.len() - 1) as f64).max(SILL.0);
        let length = self.low[1] + (self.high[1] - self.low[1]) * share;
        let mut tried: Vec<(f64, Logs)> = Vec::new();
        // Shares of the spread; nuggets below the least allowed are raised to it. The last one is a
        // slab without a pattern, where a climb from a strong one can end at the wrong length.
        let sills: &[f64] = if off.len() <= FEW { &[0.4, 1.0, 3.0, 10.0] } else { &[0.4, 1.0, 3.0] };
        let net = sills.iter().flat_map(|sill| [0.0, 0.2, 0.6].map(|nugget| (*sill, nugget)));
        for (sill, nugget) in net.chain([(0.0, 1.0)]) {
            let log = |share: f64| libm::log((share * spread).max(f64::MIN_POSITIVE));
            let logs = self.within(Vector3::new(log(sill), length, log(nugget)));
            if tried.iter().all(|(_, other)| *other != logs) {
                tried.extend(self.restricted.at(covariance_at(&logs)).map(|here| (here.likelihood, logs)));
            }
        }
        tried
    }

    fn within(&self, logs: Logs) -> Logs {
        logs.zip_zip_map(&self.low, &self.high, |value, low, high| value.clamp(low, high))
    }

    /// Newton's steps until one promises less than `enough`; a step that does not rise is halved. A
    /// number on its bound with the slope outward stays there. The curvature is the average
    /// information while steps are long, and from then on corrected by the slopes met (BFGS).
    fn climb(&self, mut logs: Logs, enough: f64) -> Option<(f64, Logs)> {
        let mut here = self.restricted.at(covariance_at(&logs))?;
        let (mut slope, mut curvature) = self.restricted.rise(&here);
        for _ in 0..MAX_ROUNDS {
            let mut step = self.step(&logs, &slope, &curvature);
            let promised = 0.5 * slope.dot(&(self.within(logs + step) - logs));
            let mut risen = None;
            for _ in 0..MAX_HALVINGS {
                let next = self.within(logs + step);
                let there = self.restricted.at(covariance_at(&next)).filter(|t| t.likelihood > here.likelihood);
                if let Some(there) = there {
                    risen = Some((there, next));
                    break;
                }
                if promised < enough {
                    break;
                }
                step *= 0.5;
            }
            let Some((there, next)) = risen else { break };
            let moved = next - logs;
            (here, logs) = (there, next);
            if promised < enough {
                break;
            }
            let (steeper, information) = self.restricted.rise(&here);
            let bent = slope - steeper;
            slope = steeper;
            curvature =
                if moved.amax() > LONG_STEP { information } else { bend(&curvature, &moved, &bent, information) };
        }
        Some((here.likelihood, logs))
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
