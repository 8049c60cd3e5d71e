//! What a forecast answers.

use jiff::civil::Date;
use science::moisture::RuleCheck;
use units::{Duration, Fraction, RelativeHumidity};

use super::{Caution, Limit};
use slab_diary::EntryId;

/// When the slab is likely to reach its limits, and the band of its humidity by day.
///
/// It never releases a hold point: it says when a measurement is worth the trouble. The same question,
/// members and seed give the same answer on any machine.
#[derive(Debug, Clone, PartialEq)]
pub struct DryingForecast {
    /// Possible slabs followed.
    pub members: usize,
    /// The number they were drawn from.
    pub seed: u64,
    /// How far it looks, since placing.
    pub horizon: Duration,
    /// What its dates rest on.
    pub rests_on: RestsOn,
    /// Each limit with its dates, the one reached first in front.
    pub limits: Vec<LimitForecast>,
    /// The band of humidity at probe depth, day by day, for a chart.
    pub bands: Vec<BandDay>,
    /// All readings, for the chart.
    pub points: Vec<ReadingPoint>,
    /// The rule of thumb; of a slab that dries two ways it says nothing.
    pub rule_of_thumb: Option<RuleOfThumb>,
    /// How many equally likely slabs are left after the readings, where they were weighed.
    pub effective_members: Option<f64>,
    /// Why the readings could not be weighed, when they could not.
    pub unexplained: Option<Unexplained>,
    /// What belongs beside it.
    pub cautions: Vec<Caution>,
}

/// What the dates of a forecast rest on.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum RestsOn {
    /// On what was entered for the slab alone: no reading was weighed.
    Description,
    /// On the readings in the slab too.
    Readings,
    /// On nothing: the readings cannot be this slab's, so no date is given.
    Nothing,
}

/// When a limit is likely to be reached.
#[derive(Debug, Clone, PartialEq)]
pub struct LimitForecast {
    /// The limit.
    pub limit: Limit,
    /// By what was entered for the slab.
    pub before_readings: Dates,
    /// With the readings weighed, where they were.
    pub after_readings: Option<Dates>,
    /// How the rule of thumb compares with the dates that count; nothing where either is missing.
    pub rule: Option<RuleCheck>,
}

impl DryingForecast {
    /// The dates that count for a limit: those after readings where they were weighed, none where
    /// the readings could not be this slab's.
    #[must_use]
    pub fn dates<'f>(&self, limit: &'f LimitForecast) -> Option<&'f Dates> {
        match self.rests_on {
            RestsOn::Description => Some(&limit.before_readings),
            RestsOn::Readings => limit.after_readings.as_ref(),
            RestsOn::Nothing => None,
        }
    }
}

/// Three dates to a limit. One that is `None` lies past the horizon.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Dates {
    /// One slab in ten is there by then.
    pub p10: Option<ForecastDate>,
    /// Half are.
    pub p50: Option<ForecastDate>,
    /// Nine in ten are.
    pub p90: Option<ForecastDate>,
    /// Share of the slabs that are not there within the horizon.
    pub not_within_horizon: Fraction,
}

/// A day to come.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ForecastDate {
    /// Time since placing.
    pub day: Duration,
    /// The local day.
    pub date: Date,
}

/// The band on one day.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct BandDay {
    /// Time since placing.
    pub day: Duration,
    /// The local day.
    pub date: Date,
    /// By what was entered for the slab.
    pub before_readings: Band,
    /// With the readings weighed, where they were.
    pub after_readings: Option<Band>,
}

/// Humidity at probe depth: one slab in ten is drier than P10, nine in ten are drier than P90.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Band {
    /// One in ten is drier.
    pub p10: RelativeHumidity,
    /// Half are drier.
    pub p50: RelativeHumidity,
    /// Nine in ten are drier.
    pub p90: RelativeHumidity,
}

/// A reading on the chart.
#[derive(Debug, Clone, PartialEq)]
pub struct ReadingPoint {
    /// The entry.
    pub entry: EntryId,
    /// Time since placing; below zero when it was taken before.
    pub day: Duration,
    /// What was read.
    pub humidity: RelativeHumidity,
    /// One standard error of a reading below.
    pub low: RelativeHumidity,
    /// One standard error of a reading above.
    pub high: RelativeHumidity,
    /// Whether it was meant to be weighed; the question says why not.
    pub weighed: bool,
    /// The zones it was read in; none when nobody noted where.
    pub zones: Vec<String>,
}

/// One month per inch, counted from the end of the cure (common practice, no source).
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct RuleOfThumb {
    /// How long it asks to wait after the cure.
    pub wait: Duration,
    /// The local day on which that is over.
    pub date: Date,
}

/// Why readings could not be weighed.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Unexplained {
    /// No likely slab comes near a reading: the probe is wrong, or what was entered is.
    Reading {
        /// The entry, where one of the weighed readings is meant.
        entry: EntryId,
        /// What was read.
        read: RelativeHumidity,
        /// What the nearest of the likely slabs has then and there.
        nearest: RelativeHumidity,
        /// The distance in standard errors of a reading.
        sigmas: f64,
    },
    /// Too few of the likely slabs agree with all readings together.
    TooFewAgree {
        /// How many do.
        effective: f64,
        /// How many are needed.
        needed: f64,
    },
}

impl Unexplained {
    /// Its name: key of its sentence, and its name in JSON.
    #[must_use]
    pub const fn code(&self) -> &'static str {
        match self {
            Self::Reading { .. } => "reading",
            Self::TooFewAgree { .. } => "too-few-agree",
        }
    }
}
