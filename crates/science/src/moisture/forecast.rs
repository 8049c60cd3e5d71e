//! The forecast: a band of humidity by day and a date to a limit, before and after readings.

use units::{Duration, Fraction, RelativeHumidity};

use super::ensemble::{Ensemble, Member, Setting};
use super::prior::humidity;
use super::{Accuracy, Draws, DryingError, DryingSlab, Reading, ReadingError, Spread};
use crate::chance::Sample;

/// What a forecast is made from.
#[derive(Debug, Clone, PartialEq)]
pub struct ForecastPlan {
    /// The slab as described.
    pub slab: DryingSlab,
    /// How far the description may be off.
    pub spread: Spread,
    /// How many possible slabs, from which seed.
    pub draws: Draws,
    /// How long since placing to look.
    pub horizon: Duration,
    /// How finely each slab is solved.
    pub accuracy: Accuracy,
}

/// Humidity at probe depth over time, with its chance.
///
/// It never releases a hold point: a measurement does. It says when measuring is worth the
/// trouble. The band is of the humidity in the slab, without the error of a future probe.
#[derive(Debug, Clone)]
pub struct Forecast {
    ensemble: Ensemble,
    horizon: Duration,
    cured: Duration,
}

/// A humidity with the interval its sampling error leaves (95 %).
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct HumidityQuantile {
    /// The estimate.
    pub value: RelativeHumidity,
    /// Lower end.
    pub low: RelativeHumidity,
    /// Upper end.
    pub high: RelativeHumidity,
}

/// Humidity at one moment: one slab in ten lies below P10, half below P50, nine in ten below P90.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct HumidityBand {
    /// One in ten is drier.
    pub p10: HumidityQuantile,
    /// Half are drier.
    pub p50: HumidityQuantile,
    /// Nine in ten are drier.
    pub p90: HumidityQuantile,
}

/// A time since placing with the interval its sampling error leaves (95 %).
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct DateQuantile {
    /// The estimate.
    pub value: Duration,
    /// Lower end.
    pub low: Duration,
    /// Upper end; `None` when it lies past the horizon.
    pub high: Option<Duration>,
}

/// When the humidity at probe depth first reaches a limit, not before the wet cure ended.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct DateToLimit {
    /// The limit.
    pub limit: RelativeHumidity,
    /// One slab in ten is there by then; `None` when that is past the horizon.
    pub p10: Option<DateQuantile>,
    /// Half are.
    pub p50: Option<DateQuantile>,
    /// Nine in ten are.
    pub p90: Option<DateQuantile>,
    /// Share of the slabs that do not reach it within the horizon.
    pub not_within_horizon: Fraction,
    /// When the wet cure ended, since placing.
    pub cured: Duration,
}

impl ForecastPlan {
    /// A plan with the default spread, solver and a year to look ahead.
    #[must_use]
    pub fn new(slab: DryingSlab, draws: Draws) -> Self {
        Self { slab, spread: Spread::default(), draws, horizon: Duration::days(365.0), accuracy: Accuracy::default() }
    }

    /// The forecast before any reading.
    ///
    /// # Errors
    /// When a number of the slab, the spread or the draws is out of its range.
    pub fn before_readings(&self) -> Result<Forecast, DryingError> {
        self.after_readings(&[], ReadingError::default())
    }

    /// The forecast after readings in this slab: possible slabs weigh as much as they agree with
    /// them (Bayes' rule with normal reading errors, part of each shared by all).
    ///
    /// # Errors
    /// As before; when a reading lies outside the horizon or the slab; when no likely slab comes
    /// within four standard errors of a reading, or too few agree for a band: then nothing is
    /// forecast, since either the probe or the description is wrong.
    pub fn after_readings(&self, readings: &[Reading], error: ReadingError) -> Result<Forecast, DryingError> {
        self.slab.check(self.horizon)?;
        self.spread.check()?;
        error.check()?;
        if !(50..=100_000).contains(&self.draws.members) {
            return Err(DryingError::Members(self.draws.members));
        }
        for reading in readings {
            if !(reading.at > Duration::ZERO && reading.at <= self.horizon) {
                return Err(DryingError::ReadingTime { at: reading.at, horizon: self.horizon });
            }
            if !(reading.depth >= units::Length::ZERO && reading.depth <= self.slab.thickness) {
                return Err(DryingError::Depth { depth: reading.depth, thickness: self.slab.thickness });
            }
        }
        let setting = Setting {
            slab: &self.slab,
            spread: &self.spread,
            draws: self.draws,
            horizon: self.horizon,
            accuracy: self.accuracy,
            readings,
            error,
        };
        Ok(Forecast { ensemble: setting.ensemble()?, horizon: self.horizon, cured: self.slab.wet_cure })
    }
}

impl Forecast {
    /// How many equally likely slabs the forecast rests on; all members before readings.
    #[must_use]
    pub fn effective_members(&self) -> f64 {
        self.ensemble.effective
    }

    /// How far it looks.
    #[must_use]
    pub fn horizon(&self) -> Duration {
        self.horizon
    }

    /// The band of humidity at probe depth at a time since placing (held at the horizon past it).
    #[must_use]
    pub fn humidity(&self, at: Duration) -> HumidityBand {
        let sample = self.sample(|member| member.share(0, at));
        let quantile = |share: f64| {
            let estimate = sample.quantile(share).expect("the share is from 0 to 1");
            HumidityQuantile {
                value: humidity(estimate.value),
                low: humidity(estimate.low),
                high: humidity(estimate.high),
            }
        };
        HumidityBand { p10: quantile(0.1), p50: quantile(0.5), p90: quantile(0.9) }
    }

    /// The chance that the humidity at probe depth is at or below a limit at a time since placing.
    #[must_use]
    pub fn chance_at_or_below(&self, limit: RelativeHumidity, at: Duration) -> Fraction {
        let sample = self.sample(|member| member.share(0, at));
        Fraction::share(sample.share_at_or_below(limit.as_share())).expect("a share of weights is from 0 to 1")
    }

    /// When the humidity at probe depth first reaches a limit.
    #[must_use]
    pub fn date_to(&self, limit: RelativeHumidity) -> DateToLimit {
        let sample = self.sample(|member| member.time_to(limit).map_or(f64::INFINITY, Duration::as_seconds));
        let reached = sample.share_at_or_below(f64::MAX);
        let within = |seconds: f64| seconds.is_finite().then(|| Duration::seconds(seconds.max(0.0)));
        let quantile = |share: f64| {
            let estimate = sample.quantile(share).expect("the share is from 0 to 1");
            let value = within(estimate.value)?;
            Some(DateQuantile {
                value,
                low: within(estimate.low).unwrap_or(self.cured).min(value),
                high: within(estimate.high),
            })
        };
        DateToLimit {
            limit,
            p10: quantile(0.1),
            p50: quantile(0.5),
            p90: quantile(0.9),
            not_within_horizon: Fraction::share((1.0 - reached).clamp(0.0, 1.0)).expect("clamped to 0 to 1"),
            cured: self.cured,
        }
    }

    fn sample(&self, read: impl Fn(&Member) -> f64) -> Sample {
        let values = self.ensemble.members.iter().map(read).collect();
        Sample::weighted(values, self.ensemble.weights.clone())
            .expect("an ensemble has members with finite weights that sum to 1")
    }
}
