//! Evaporation by the hour over a series, and the hours that call for an alarm.

use units::{Duration, EvaporationRate};

use super::{AirSample, EstimatedRate, EvaporationForm, Missing, SeriesError, WeatherSeries, evaporation_rate};
use crate::{Span, joined};

/// An estimate against the limit.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Level {
    /// The whole band lies at or below the limit.
    Below,
    /// The estimate is at or below the limit but its band reaches above.
    Possible,
    /// The estimate is above the limit.
    Above,
}

/// What is known of the evaporation while one sample speaks.
#[derive(Debug, Clone, PartialEq)]
pub enum EvaporationHour {
    /// The rate and how it stands against the limit.
    Known {
        /// When.
        span: Span,
        /// The rate with its error.
        estimate: EstimatedRate,
        /// Against the limit.
        level: Level,
    },
    /// A reading is missing, so nothing is said.
    NotKnown {
        /// When.
        span: Span,
        /// What is missing.
        missing: Vec<Missing>,
    },
}

/// Evaporation over a series.
#[derive(Debug, Clone, PartialEq)]
pub struct EvaporationHours {
    /// One per sample, in order.
    pub hours: Vec<EvaporationHour>,
    /// Unbroken times during which the estimate is above the limit.
    pub alarms: Vec<Span>,
    /// Unbroken times during which the estimate or its band is above the limit.
    pub possible: Vec<Span>,
    /// Unbroken times without an answer: a reading missing, or no sample.
    pub not_known: Vec<Span>,
}

impl EvaporationHours {
    /// When the samples begin whose estimate is above the limit.
    pub fn alarm_starts(&self) -> impl Iterator<Item = Duration> {
        self.hours.iter().filter_map(|hour| match hour {
            EvaporationHour::Known { span, level: Level::Above, .. } => Some(span.start),
            _ => None,
        })
    }
}

/// Evaporation for each sample of a series against a limit.
///
/// # Errors
/// A limit not above zero; a sample the formula refuses, named by its position.
pub fn evaporation_hours(
    series: WeatherSeries<'_>,
    form: EvaporationForm,
    limit: EvaporationRate,
) -> Result<EvaporationHours, SeriesError> {
    let usable = limit > EvaporationRate::ZERO;
    if !usable {
        return Err(SeriesError::Limit(limit));
    }
    let hours = series
        .spoken_for()
        .enumerate()
        .map(|(index, (span, sample))| hour(index, span, sample, form, limit))
        .collect::<Result<Vec<_>, _>>()?;
    let at_level = |wanted: fn(Level) -> bool| {
        joined(hours.iter().filter_map(|hour| match hour {
            EvaporationHour::Known { span, level, .. } if wanted(*level) => Some(*span),
            _ => None,
        }))
    };
    let alarms = at_level(|level| level == Level::Above);
    let possible = at_level(|level| level != Level::Below);
    let mut silent = series.gaps();
    silent.extend(hours.iter().filter_map(|hour| match hour {
        EvaporationHour::NotKnown { span, .. } => Some(*span),
        EvaporationHour::Known { .. } => None,
    }));
    silent.sort_by(|a, b| a.start.as_seconds().total_cmp(&b.start.as_seconds()));
    Ok(EvaporationHours { alarms, possible, not_known: joined(silent), hours })
}

fn hour(
    index: usize,
    span: Span,
    sample: &AirSample,
    form: EvaporationForm,
    limit: EvaporationRate,
) -> Result<EvaporationHour, SeriesError> {
    let (Some(slab), Some(wind)) = (sample.slab, sample.wind) else {
        let lacks = [(sample.slab.is_none(), Missing::Slab), (sample.wind.is_none(), Missing::Wind)];
        let missing = lacks.into_iter().filter_map(|(lacking, what)| lacking.then_some(what)).collect();
        return Ok(EvaporationHour::NotKnown { span, missing });
    };
    let estimate = evaporation_rate(form, slab, sample.air, sample.humidity, wind)
        .map_err(|problem| SeriesError::Sample { index, problem })?;
    let level = if estimate.rate > limit {
        Level::Above
    } else if estimate.high() > limit {
        Level::Possible
    } else {
        Level::Below
    };
    Ok(EvaporationHour::Known { span, estimate, level })
}
