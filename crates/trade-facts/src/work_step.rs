//! The steps of a job (`work_breakdown.toml`).

use serde::{Deserialize, Serialize};
use units::{Area, Duration, Length};

use super::grade::Grade;
use super::record::record;
use super::unit::{InUnit, Unit};

/// Whether a step's duration takes people or only time.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum DurationKind {
    /// People work.
    Work,
    /// Time passes.
    Wait,
}

/// What a rate is for one of.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum RateEach {
    /// One coat.
    Coat,
    /// One pass.
    Pass,
}

/// A step of a job (`work_breakdown.toml`).
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct WorkStep {
    /// Word id.
    pub id: String,
    /// Two-digit number in the list.
    pub code: String,
    /// Phase of the job.
    pub phase: String,
    /// What is done.
    pub name: String,
    /// Who does it.
    pub who: Option<String>,
    /// What it needs.
    pub inputs: Option<String>,
    /// What it leaves.
    pub outputs: Option<String>,
    /// Ids of steps that must all be done first.
    pub after: Vec<String>,
    /// Ids of steps of which one must be done first.
    #[serde(default)]
    pub after_any: Vec<String>,
    /// A further condition.
    pub condition: Option<String>,
    /// Shortest wait after the steps before, hours.
    pub lag_hours_low: Option<f64>,
    /// Longest wait after the steps before, hours.
    pub lag_hours_high: Option<f64>,
    /// Number of the hold that ends the step, such as `H14`.
    pub hold: Option<String>,
    /// What the hold asks.
    pub hold_text: Option<String>,
    /// Shortest duration, in `duration_unit`.
    pub duration_low: Option<f64>,
    /// Longest duration, in `duration_unit`.
    pub duration_high: Option<f64>,
    /// Unit of the duration.
    pub duration_unit: Option<Unit>,
    /// Whether the duration takes people.
    pub duration_kind: Option<DurationKind>,
    /// Remark on the duration.
    pub duration_note: Option<String>,
    /// Slow rate of one person, in `rate_unit`.
    pub rate_low: Option<f64>,
    /// Fast rate of one person, in `rate_unit`.
    pub rate_high: Option<f64>,
    /// Unit of the rate.
    pub rate_unit: Option<Unit>,
    /// What the rate is for one of.
    pub rate_each: Option<RateEach>,
    /// Weather and surroundings it asks for.
    pub environment: Option<String>,
    /// Grade of the step.
    pub grade: Grade,
    /// Grade of the part of the wording that the sources do not carry.
    pub grade_rest: Option<Grade>,
    /// Grade of durations and rates.
    pub grade_numbers: Grade,
    /// Source keys.
    pub source: Vec<String>,
    /// Sources that touch the matter without carrying it.
    #[serde(default)]
    pub see: Vec<String>,
    /// What the sources say of it.
    pub source_note: Option<String>,
}
record!(WorkStep, optional grade_rest, plain grade_numbers);

impl WorkStep {
    /// Shortest and longest duration, where the step has a fixed one.
    #[must_use]
    pub fn duration(&self) -> Option<(Duration, Duration)> {
        let unit = self.duration_unit?;
        Some((
            <Duration as InUnit>::in_unit(self.duration_low?, unit)?,
            <Duration as InUnit>::in_unit(self.duration_high?, unit)?,
        ))
    }

    /// Shortest and longest wait after the steps before.
    #[must_use]
    pub fn lag(&self) -> Option<(Duration, Duration)> {
        Some((Duration::hours(self.lag_hours_low?), Duration::hours(self.lag_hours_high?)))
    }

    /// Shortest and longest time one person takes over an area; nothing where the step has no area rate.
    #[must_use]
    pub fn time_over(&self, area: Area) -> Option<(Duration, Duration)> {
        self.times(Unit::SquareFootPerHour, area.as_square_feet())
    }

    /// Shortest and longest time one person takes along a length; nothing where the step has no length rate.
    #[must_use]
    pub fn time_along(&self, length: Length) -> Option<(Duration, Duration)> {
        self.times(Unit::FootPerHour, length.as_feet())
    }

    fn times(&self, unit: Unit, amount: f64) -> Option<(Duration, Duration)> {
        if self.rate_unit? != unit {
            return None;
        }
        Some((Duration::hours(amount / self.rate_high?), Duration::hours(amount / self.rate_low?)))
    }
}
