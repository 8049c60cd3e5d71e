//! The course of humidity at chosen points, readable at any moment.

use units::{Duration, HumidityDifference, Length, RelativeHumidity};

/// A place in the slab whose humidity is followed.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Point {
    /// Depth of the humidity probe: 40 % of the thickness drying one side, 20 % drying two.
    Probe,
    /// The bottom drying one side, the middle drying two: the last place to dry.
    Deepest,
    /// A depth from the top.
    Depth(Length),
    /// The mean over the thickness.
    Mean,
}

/// Where the moisture went, each as a mean over the thickness. What is left over measures the
/// solver: it is rounding, below 1e-10 of RH.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Balance {
    /// Fall of the mean humidity, summed from the cells.
    pub lost_by_cells: HumidityDifference,
    /// Flowed out through the faces, summed from the flows.
    pub left_through_faces: HumidityDifference,
    /// Taken up by self-desiccation.
    pub taken_by_hydration: HumidityDifference,
}

impl Balance {
    /// What the cells lost and nothing accounts for.
    #[must_use]
    pub fn unexplained(&self) -> HumidityDifference {
        HumidityDifference::points(
            self.lost_by_cells.as_points() - self.left_through_faces.as_points() - self.taken_by_hydration.as_points(),
        )
    }
}

/// Humidity over time at the points asked for.
///
/// Between the solver's steps it is a cubic with the solver's own slopes, so reading it at any
/// moment forces no step. Where a sharp knee passes the point during a long step the cubic errs: up to
/// 7.8e-4 RH seen at 0.2 to 0.8 of the thickness, rarely more than 1e-3 nearer to a face. Steps may
/// straddle an abrupt change of air: within a day of one the mean over the thickness may err by 5e-3.
#[derive(Debug, Clone, PartialEq)]
pub struct DryingHistory {
    pub(crate) points: usize,
    /// Seconds.
    pub(crate) times: Vec<f64>,
    /// For each time, the humidity at each point.
    pub(crate) values: Vec<f64>,
    /// For each time, its change per second.
    pub(crate) slopes: Vec<f64>,
    /// When the face began to dry, seconds.
    pub(crate) drying_from: f64,
    pub(crate) balance: Balance,
}

impl DryingHistory {
    /// Humidity at the point with this place in the list asked for, at a time since placing (held
    /// at the first and last moment beyond them).
    ///
    /// # Panics
    /// When `point` is not a place in the list.
    #[must_use]
    pub fn humidity(&self, point: usize, at: Duration) -> RelativeHumidity {
        let percent = (self.share(point, at.as_seconds()) * 100.0).clamp(0.0, 100.0);
        RelativeHumidity::percent(percent).expect("clamped to 0 to 100 %")
    }

    /// The first time since placing, not before the wet cure ended, at which the humidity of the
    /// point is at or below the limit; `None` when that is not within the horizon.
    ///
    /// # Panics
    /// When `point` is not a place in the list.
    #[must_use]
    pub fn time_to(&self, point: usize, limit: RelativeHumidity) -> Option<Duration> {
        assert!(point < self.points, "point {point} of {}", self.points);
        let limit = limit.as_share();
        let first = self.times.partition_point(|t| *t < self.drying_from);
        // The last knot at the end of the wet cure, when two share that moment.
        let first = (first..self.times.len()).take_while(|k| self.times[*k] <= self.drying_from).last()?;
        if self.value(first, point) <= limit {
            return Some(Duration::seconds(self.times[first]));
        }
        let knot = (first + 1..self.times.len()).find(|k| self.value(*k, point) <= limit)?;
        let (mut early, mut late) = (self.times[knot - 1], self.times[knot]);
        // Halving until the interval is a tenth of a second.
        while late - early > 0.1 {
            let middle = 0.5 * (early + late);
            if self.within(knot - 1, point, middle) > limit {
                early = middle;
            } else {
                late = middle;
            }
        }
        Some(Duration::seconds(late))
    }

    /// How far the history reaches.
    #[must_use]
    pub fn horizon(&self) -> Duration {
        Duration::seconds(self.times.last().copied().unwrap_or(0.0))
    }

    /// How many steps the solver took.
    #[must_use]
    pub fn steps(&self) -> usize {
        self.times.len().saturating_sub(1)
    }

    /// Where the moisture went.
    #[must_use]
    pub fn balance(&self) -> Balance {
        self.balance
    }

    fn value(&self, knot: usize, point: usize) -> f64 {
        self.values[knot * self.points + point]
    }

    pub(crate) fn share(&self, point: usize, seconds: f64) -> f64 {
        assert!(point < self.points, "point {point} of {}", self.points);
        let after = self.times.partition_point(|t| *t <= seconds);
        if after == 0 {
            self.value(0, point)
        } else if after == self.times.len() {
            self.value(after - 1, point)
        } else {
            self.within(after - 1, point, seconds)
        }
    }

    /// Cubic Hermite between knot `k` and the next.
    fn within(&self, k: usize, point: usize, seconds: f64) -> f64 {
        let length = self.times[k + 1] - self.times[k];
        let (a, b) = (self.value(k, point), self.value(k + 1, point));
        let slope = |knot: usize| self.slopes[knot * self.points + point] * length;
        let (m, n) = (slope(k), slope(k + 1));
        let t = (seconds - self.times[k]) / length;
        a + t * (m + t * (3.0 * (b - a) - 2.0 * m - n + t * (2.0 * (a - b) + m + n)))
    }
}
