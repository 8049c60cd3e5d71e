//! Possible slabs, run in parallel and weighed by readings.

use nalgebra::{Cholesky, Const, SMatrix, SVector};
use rayon::prelude::*;
use units::{Duration, RelativeHumidity};

use super::prior::{Scores, UNKNOWNS, draw_scores, humidity};
use super::{Accuracy, Draws, DryingError, DryingHistory, DryingSlab, Point, Reading, ReadingError, Spread, Workspace};
use crate::chance::Stream;

/// Fewest effective members whose spread still means something.
pub(crate) const FEWEST_EFFECTIVE: f64 = 30.0;
/// Standard errors beyond which a reading is not this slab's.
const IMPOSSIBLE_SIGMAS: f64 = 4.0;
/// Rounds of drawing anew near the members that agree, beyond which readings are not chased.
const MAX_ROUNDS: u64 = 3;
/// Share of a new round still drawn from the prior, which bounds every weight.
const PRIOR_SHARE: f64 = 0.2;
/// How much wider than the agreeing members the new round is drawn, as a standard deviation.
const WIDENING: f64 = 1.3;

type Matrix = SMatrix<f64, UNKNOWNS, UNKNOWNS>;
type Vector = SVector<f64, UNKNOWNS>;

/// What all members share.
pub(crate) struct Setting<'a> {
    pub(crate) slab: &'a DryingSlab,
    pub(crate) spread: &'a Spread,
    pub(crate) draws: Draws,
    pub(crate) horizon: Duration,
    pub(crate) accuracy: Accuracy,
    pub(crate) readings: &'a [Reading],
    pub(crate) error: ReadingError,
}

/// One possible slab: the course of its humidity and what lies between solution and slab.
#[derive(Debug, Clone)]
pub(crate) struct Member {
    history: DryingHistory,
    /// Share of 1, added to the solution.
    offset: f64,
}

/// Members with their weights, which sum to 1.
#[derive(Debug, Clone)]
pub(crate) struct Ensemble {
    pub(crate) members: Vec<Member>,
    pub(crate) weights: Vec<f64>,
    pub(crate) effective: f64,
}

/// Scores and runs of one round with the logarithm of likelihood, and of prior over proposal.
struct Round {
    scores: Vec<Scores>,
    members: Vec<Member>,
    likelihood: Vec<f64>,
    correction: Vec<f64>,
}

/// Where a new round is drawn from: a normal distribution about the members that agree.
struct Proposal {
    mean: Vector,
    factor: Cholesky<f64, Const<UNKNOWNS>>,
}

impl Setting<'_> {
    /// Draws from the prior, weighs by the readings and, when few members agree, draws again near
    /// those (adaptive importance sampling; Cappé et al. 2008, grade M): every round is weighed
    /// by prior × likelihood ÷ proposal, so the answer tends to the same limit.
    pub(crate) fn ensemble(&self) -> Result<Ensemble, DryingError> {
        let mut round = self.run(None, 0)?;
        if self.readings.is_empty() {
            return Ok(round.weighed());
        }
        self.refuse_impossible(&round)?;
        let wanted = (self.draws.members as f64 / 10.0).max(FEWEST_EFFECTIVE);
        for number in 1..=MAX_ROUNDS {
            if effective(&round.weights(1.0)) >= wanted {
                break;
            }
            round = self.run(Some(&round.proposal()), number)?;
        }
        let ensemble = round.weighed();
        if ensemble.effective < FEWEST_EFFECTIVE {
            return Err(DryingError::TooFewAgree { effective: ensemble.effective, needed: FEWEST_EFFECTIVE });
        }
        Ok(ensemble)
    }

    fn run(&self, proposal: Option<&Proposal>, number: u64) -> Result<Round, DryingError> {
        let count = self.draws.members as u64;
        let scores: Vec<Scores> = (0..count)
            .map(|i| {
                let mut stream = Stream::of_member(self.draws.seed, number * count + i);
                match proposal {
                    Some(p) if stream.unit() > PRIOR_SHARE => p.draw(&mut stream),
                    _ => draw_scores(&mut stream),
                }
            })
            .collect();
        let correction = scores.iter().map(|z| proposal.map_or(0.0, |p| p.correction(z))).collect();
        // Results come back in the order of members whatever the threads did, and the first
        // failing member is the one reported.
        let runs: Vec<Result<Member, DryingError>> =
            scores.par_iter().map_init(Workspace::default, |space, z| self.member(space, z)).collect();
        let members = runs.into_iter().collect::<Result<Vec<_>, _>>()?;
        let likelihood = members
            .iter()
            .map(|member| self.error.log_likelihood((0..self.readings.len()).map(|r| self.difference(member, r))))
            .collect();
        Ok(Round { scores, members, likelihood, correction })
    }

    /// Point 0 is the probe of the described slab; each reading's depth follows in its order.
    fn member(&self, space: &mut Workspace, scores: &Scores) -> Result<Member, DryingError> {
        let slab = self.spread.slab(self.slab, scores);
        let within = |depth: units::Length| Point::Depth(depth.min(slab.thickness));
        let mut points = Vec::with_capacity(1 + self.readings.len());
        points.push(within(self.slab.probe_depth()));
        points.extend(self.readings.iter().map(|r| within(r.depth)));
        let history = slab.dry_in(space, self.horizon, &points, self.accuracy)?;
        Ok(Member { history, offset: self.spread.offset(scores) })
    }

    /// Reading minus member, share of 1.
    fn difference(&self, member: &Member, reading: usize) -> f64 {
        let read = &self.readings[reading];
        read.humidity.as_share() - member.share(reading + 1, read.at)
    }

    fn refuse_impossible(&self, prior: &Round) -> Result<(), DryingError> {
        let best = (0..prior.likelihood.len())
            .max_by(|a, b| prior.likelihood[*a].total_cmp(&prior.likelihood[*b]))
            .expect("an ensemble has at least 50 members");
        for (r, read) in self.readings.iter().enumerate() {
            let difference = self.difference(&prior.members[best], r);
            let sigmas = difference.abs() / self.error.total();
            if sigmas > IMPOSSIBLE_SIGMAS {
                let nearest: RelativeHumidity = humidity(read.humidity.as_share() - difference);
                return Err(DryingError::ImpossibleReading { at: read.at, read: read.humidity, nearest, sigmas });
            }
        }
        Ok(())
    }
}

impl Member {
    /// Humidity at the described probe's depth (0) or a reading's (from 1), share of 1.
    pub(crate) fn share(&self, point: usize, at: Duration) -> f64 {
        self.history.share(point, at.as_seconds()) + self.offset
    }

    /// When the humidity at the described probe's depth first reaches a limit.
    pub(crate) fn time_to(&self, limit: RelativeHumidity) -> Option<Duration> {
        self.history.time_to(0, humidity(limit.as_share() - self.offset))
    }
}

impl Round {
    /// Weights with the likelihood raised to a power, summing to 1.
    fn weights(&self, power: f64) -> Vec<f64> {
        let logs: Vec<f64> = self.likelihood.iter().zip(&self.correction).map(|(l, c)| power * l + c).collect();
        let top = logs.iter().copied().fold(f64::NEG_INFINITY, f64::max);
        let mut weights: Vec<f64> = logs.iter().map(|l| libm::exp(l - top)).collect();
        let total: f64 = weights.iter().sum();
        for w in &mut weights {
            *w /= total;
        }
        weights
    }

    fn weighed(self) -> Ensemble {
        let weights = self.weights(1.0);
        let effective = effective(&weights);
        Ensemble { members: self.members, weights, effective }
    }

    /// A normal distribution with the mean and covariance of the members that agree. When few do,
    /// the likelihood is tempered (raised to a power below 1) until enough have a say.
    fn proposal(&self) -> Proposal {
        let enough = FEWEST_EFFECTIVE.max(self.scores.len() as f64 / 20.0);
        let mut power = 1.0;
        while effective(&self.weights(power)) < enough && power > 1e-3 {
            power *= 0.7;
        }
        let weights = self.weights(power);
        let vectors = || self.scores.iter().map(|z| Vector::from_row_slice(z)).zip(&weights);
        let mean: Vector = vectors().map(|(z, w)| z * *w).sum();
        let covariance: Matrix = vectors().map(|(z, w)| (z - mean) * (z - mean).transpose() * *w).sum();
        // Few members know their covariance badly, and too narrow a proposal is worse than too wide a
        // one: it is drawn towards the prior's, which is the unit matrix (shrinkage, Ledoit and Wolf
        // 2004, grade M; this weight is our choice).
        let unknowns = UNKNOWNS as f64;
        let towards_prior = unknowns / (unknowns + effective(&weights));
        let wide = covariance * (WIDENING * WIDENING * (1.0 - towards_prior)) + Matrix::identity() * towards_prior;
        let factor = Cholesky::new(wide).expect("a covariance plus a positive diagonal is positive definite");
        Proposal { mean, factor }
    }
}

impl Proposal {
    fn draw(&self, stream: &mut Stream) -> Scores {
        let z = self.mean + self.factor.l() * Vector::from_row_slice(&draw_scores(stream));
        z.into()
    }

    /// log of prior density over the density of the mixture drawn from.
    fn correction(&self, scores: &Scores) -> f64 {
        let z = Vector::from_row_slice(scores);
        let off = self.factor.l().solve_lower_triangular(&(z - self.mean)).expect("the factor is not singular");
        let determinant: f64 = (0..UNKNOWNS).map(|i| libm::log(self.factor.l_dirty()[(i, i)])).sum();
        let near_over_prior = libm::exp(0.5 * (z.norm_squared() - off.norm_squared()) - determinant);
        -libm::log(PRIOR_SHARE + (1.0 - PRIOR_SHARE) * near_over_prior)
    }
}

/// Kish's effective number of weights that sum to 1.
fn effective(weights: &[f64]) -> f64 {
    1.0 / weights.iter().map(|w| w * w).sum::<f64>()
}
