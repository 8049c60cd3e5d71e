//! Where the next drops teach most, and when they no longer do.

use units::{Area, Duration, Fraction};

use super::criterion::{Criterion, changed, misclassified};
use super::estimate::fraction;
use super::planner::Planner;
use super::{AbsorbencyError, Field, LogVariance, Place};

/// Pairs of places worked through at most; 20 million are 160 MB.
pub(crate) const MAX_PAIRS: usize = 20_000_000;
/// Most places named at once: further ones rest on drops nobody has set yet.
const MAX_PLACES: usize = 5;

/// The ground of one finish on which tests are planned.
#[derive(Debug, Clone, PartialEq)]
pub struct Ground {
    /// Centers of the pieces the finish is cut into.
    pub map: Vec<Place>,
    /// Area of each piece, above 0.
    pub each: Area,
    /// Where a drop can be set: on this finish, off incidents, within reach. The caller's choice.
    pub reachable: Vec<Place>,
}

/// What the drops are for.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Aim {
    /// To tell where the slab drinks quicker or slower than a limit.
    Limit {
        /// The limit, above 0 s.
        limit: Duration,
        /// A drop is worth setting when it is expected to settle at least this share of the area.
        least_gain: Fraction,
        /// … and when at least this share of the area is expected to change its call: otherwise
        /// the work would be done as now planned, whatever the drop shows.
        least_change: Fraction,
    },
    /// To know the slab evenly well.
    Spread {
        /// A drop is worth setting when the mean variance falls by at least this share of itself.
        least_fall: Fraction,
    },
}

impl Aim {
    /// For a limit, with 0.2 % of the area to settle and 0.5 % to change. Our choice, no source.
    #[must_use]
    pub fn at_limit(limit: Duration) -> Self {
        Self::Limit { limit, least_gain: fraction(0.002), least_change: fraction(0.005) }
    }

    /// Without a limit, with 2 % of the mean variance to fall. Our choice, no source.
    #[must_use]
    pub fn spread() -> Self {
        Self::Spread { least_fall: fraction(0.02) }
    }

    fn criterion(&self) -> Result<Criterion, AbsorbencyError> {
        match self {
            Self::Spread { .. } => Ok(Criterion::Variance),
            Self::Limit { limit, .. } => {
                let seconds = limit.as_seconds();
                if !(seconds.is_finite() && seconds > 0.0) {
                    return Err(AbsorbencyError::Limits { index: 0 });
                }
                Ok(Criterion::Bernoulli(libm::log(seconds)))
            }
        }
    }
}

/// How the next places are sought.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct NextRule {
    /// What the drops are for.
    pub aim: Aim,
    /// How many places to name at most, 1 to 5.
    pub most: usize,
}

/// How much is not known.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum State {
    /// Area expected to be called wrongly against the limit.
    Misclassified(Area),
    /// Mean variance of ln(seconds) over the map.
    MeanVariance(LogVariance),
}

/// What one drop is expected to do, after those named before it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Gain {
    /// Against a limit.
    Limit {
        /// By how much the area expected to be called wrongly falls.
        settles: Area,
        /// The area expected to change its call.
        changes: Area,
    },
    /// Without a limit: by how much the mean variance falls, as a share of itself.
    Spread(Fraction),
}

/// Why no more places are named.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Enough {
    /// As many as asked for are named.
    AsAsked,
    /// The best further drop would settle less than is worth it.
    LittleGain(Gain),
    /// The best further drop would hardly change where what is done.
    PlanStays(Gain),
    /// Every reachable place is named.
    NoPlaceLeft,
}

/// The next drop: which finish, which of its reachable places, what it does, and what is left.
pub(crate) struct Step {
    pub(crate) group: usize,
    pub(crate) at: usize,
    pub(crate) gain: Gain,
    pub(crate) after: State,
}

/// Finishes planned together.
pub(crate) struct Plan {
    planners: Vec<Planner>,
    /// The criterion after one more drop at each place of each finish; none when to be worked out.
    weights: Vec<Option<Vec<Option<f64>>>>,
    criterion: Criterion,
    aim: Aim,
}

impl Plan {
    pub(crate) fn new(fields: &[(&Field, &Ground)], aim: Aim) -> Result<Self, AbsorbencyError> {
        let criterion = aim.criterion()?;
        let planners =
            fields.iter().map(|(field, ground)| Planner::new(field, ground)).collect::<Result<Vec<_>, _>>()?;
        if planners.is_empty() {
            return Err(AbsorbencyError::NothingToPlan);
        }
        Ok(Self { weights: vec![None; planners.len()], planners, criterion, aim })
    }

    fn area(&self) -> f64 {
        self.planners.iter().map(Planner::area).sum()
    }

    pub(crate) fn state(&self) -> State {
        match self.criterion {
            Criterion::Bernoulli(limit) => State::Misclassified(Area::square_meters(
                self.planners.iter().map(|p| misclassified(p, limit, &p.now)).sum(),
            )),
            Criterion::Variance => {
                let sum: f64 = self.planners.iter().map(|p| Criterion::Variance.total(p, &p.now)).sum();
                State::MeanVariance(LogVariance::computed(sum / self.area()))
            }
        }
    }

    /// The place whose drop lets the criterion, summed over all finishes, fall most; of equals the first.
    fn best(&mut self) -> Option<(usize, usize)> {
        let mut best: Option<(f64, usize, usize)> = None;
        for (group, planner) in self.planners.iter().enumerate() {
            let weights = self.weights[group].get_or_insert_with(|| planner.weigh(self.criterion));
            let before = self.criterion.total(planner, &planner.now);
            for (at, weight) in weights.iter().enumerate() {
                let Some(weight) = weight else { continue };
                let fall = before - weight;
                if best.is_none_or(|(most, ..)| fall > most) {
                    best = Some((fall, group, at));
                }
            }
        }
        best.map(|(_, group, at)| (group, at))
    }

    fn gain(&self, group: usize, at: usize) -> Gain {
        let planner = &self.planners[group];
        let after = planner.after(at);
        match self.criterion {
            Criterion::Bernoulli(limit) => {
                let wrong = misclassified(planner, limit, &planner.now) - misclassified(planner, limit, &after);
                Gain::Limit {
                    settles: Area::square_meters(wrong),
                    changes: Area::square_meters(changed(planner, limit, &after)),
                }
            }
            Criterion::Variance => {
                let before: f64 = self.planners.iter().map(|p| Criterion::Variance.total(p, &p.now)).sum();
                let fall =
                    Criterion::Variance.total(planner, &planner.now) - Criterion::Variance.total(planner, &after);
                Gain::Spread(fraction(fall / before.max(f64::MIN_POSITIVE)))
            }
        }
    }

    fn not_worth_it(&self, gain: Gain) -> Option<Enough> {
        let area = self.area();
        match (gain, self.aim) {
            (Gain::Limit { settles, changes }, Aim::Limit { least_gain, least_change, .. }) => {
                if changes.as_square_meters() < least_change.as_share() * area {
                    Some(Enough::PlanStays(gain))
                } else {
                    (settles.as_square_meters() < least_gain.as_share() * area).then_some(Enough::LittleGain(gain))
                }
            }
            (Gain::Spread(fall), Aim::Spread { least_fall }) => (fall < least_fall).then_some(Enough::LittleGain(gain)),
            _ => None,
        }
    }

    /// The next places, each chosen as if the drops before it had been set.
    pub(crate) fn places(&mut self, most: usize) -> Result<(Vec<Step>, Enough), AbsorbencyError> {
        if !(1..=MAX_PLACES).contains(&most) {
            return Err(AbsorbencyError::Most(most));
        }
        let mut steps = Vec::new();
        while steps.len() < most {
            let Some((group, at)) = self.best() else { return Ok((steps, Enough::NoPlaceLeft)) };
            let gain = self.gain(group, at);
            if let Some(enough) = self.not_worth_it(gain) {
                return Ok((steps, enough));
            }
            self.planners[group].take(at);
            self.weights[group] = None;
            steps.push(Step { group, at, gain, after: self.state() });
        }
        Ok((steps, Enough::AsAsked))
    }
}

impl Field {
    /// For each reachable place the criterion after one more drop there, as a mean over the map:
    /// expected Bernoulli variance with a limit, variance without. The lowest is the best place.
    ///
    /// # Errors
    /// When the ground has no map, no area or too many places, or the limit is not above 0.
    pub fn weigh_places(&self, ground: &Ground, aim: Aim) -> Result<Vec<f64>, AbsorbencyError> {
        let criterion = aim.criterion()?;
        let planner = Planner::new(self, ground)?;
        Ok(planner.weigh(criterion).into_iter().flatten().map(|sum| sum / planner.area()).collect())
    }
}
