//! Water leaving fresh concrete over a weather file, and the hours that call for an alarm.

use jiff::Timestamp;
use science::Span;
use science::air::{AirSample, EvaporationForm, EvaporationHour, EvaporationHours, WeatherSeries, evaporation_hours};
use units::{Duration, EvaporationRate};

use super::prelude::*;
use crate::caution::Caution;
use crate::log_file::{self, LogFile};
use crate::rests_on::fact;

pub(super) fn run(
    mut sum: Calculation,
    given: &mut Given<'_>,
    form: EvaporationForm,
    limit: EvaporationRate,
) -> Result<Calculation, CalculatorError> {
    let log = log_file::read(given)?.ok_or_else(|| CalculatorError::missing("file"))?;
    given.note("file", &log.name, Shown::Text(log.name.clone()));
    let surface = given.some("surface", Shown::Temperature)?;
    let wind = given.some("wind", Shown::Wind)?;
    if surface.is_none() && log.series.samples.iter().all(|s| s.slab.is_none()) {
        return Err(CalculatorError::missing_but("surface", "sum-accepts-surface-beside-file"));
    }
    if wind.is_none() && log.series.samples.iter().all(|s| s.wind.is_none()) {
        return Err(CalculatorError::missing_but("wind", "sum-accepts-wind-beside-file"));
    }
    let Some(zero) = log.series.samples.first().map(|s| s.at) else {
        return Err(log.refused("it is empty; accepted: at least one row"));
    };
    let samples: Vec<AirSample> = log
        .series
        .samples
        .iter()
        .filter_map(|s| {
            Some(AirSample {
                at: since(zero, s.at) - log.lead,
                air: s.air?,
                humidity: s.humidity?,
                wind: wind.or(s.wind),
                slab: surface.or(s.slab),
                rain: None,
                pressure: s.pressure,
            })
        })
        .collect();
    if samples.is_empty() {
        return Err(log.refused("no row has air and humidity; accepted: at least one"));
    }
    let series = WeatherSeries::new(&samples, log.step).map_err(CalculatorError::core)?;
    let hours = evaporation_hours(series, form, limit).map_err(CalculatorError::core)?;
    fill(&mut sum, &hours, &log, zero);
    sum.note_also(fact("evaporation-alarm"));
    if log.wind_at_station && wind.is_none() {
        sum.caution([Caution::WindAtStation]);
    }
    if log.series.typical_year {
        sum.caution([Caution::TypicalYear]);
    }
    Ok(sum)
}

fn fill(sum: &mut Calculation, hours: &EvaporationHours, log: &LogFile, zero: Timestamp) {
    let at = |time: Duration| zero + jiff::SignedDuration::from_secs_f64(time.as_seconds());
    let total = |spans: &[Span]| spans.iter().map(|span| span.length()).sum::<Duration>();
    let spans = |spans: &[Span]| {
        let moments = spans.iter().map(|span| (at(span.start), at(span.end))).collect();
        Shown::Spans(moments, log.zone.clone())
    };
    sum.result("alarm_hours", Shown::Hours(total(&hours.alarms)));
    sum.result("alarms", spans(&hours.alarms));
    sum.result("possible_alarm_hours", Shown::Hours(total(&hours.possible)));
    sum.result("not_known_hours", Shown::Hours(total(&hours.not_known)));
    let highest = hours
        .hours
        .iter()
        .filter_map(|hour| match hour {
            EvaporationHour::Known { span, estimate, .. } => Some((estimate.rate, span.start)),
            EvaporationHour::NotKnown { .. } => None,
        })
        .reduce(|top, next| if next.0 > top.0 { next } else { top });
    if let Some((rate, start)) = highest {
        sum.result("highest", Shown::Evaporation(rate));
        sum.result("highest_at", Shown::Moment(at(start), log.zone.clone()));
    }
}

/// Time from one moment to a later one.
pub(crate) fn since(from: Timestamp, at: Timestamp) -> Duration {
    Duration::seconds(at.duration_since(from).as_secs_f64())
}
