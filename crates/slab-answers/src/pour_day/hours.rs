//! Samples of a weather series as hours with their evaporation.

use std::collections::BTreeMap;

use jiff::tz::TimeZone;
use jiff::{SignedDuration, Timestamp};
use science::air::{
    AirSample, EstimatedRate, EvaporationForm, EvaporationHour, Level, SeriesError, WeatherSeries, evaporation_hours,
};
use units::{Duration, RelativeHumidity, Speed, Temperature};

use super::setting::Setting;
use crate::standing::between;
use weather_series::{Sample, Series};

/// One hour (or the step of the series) with its weather and what it does to fresh concrete.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct PourHour {
    /// When it begins.
    pub begins: Timestamp,
    /// When it ends.
    pub ends: Timestamp,
    /// The hour of the slab's clock it begins in, 0 to 23.
    pub hour: i8,
    /// Air temperature.
    pub air: Option<Temperature>,
    /// Relative humidity of the air.
    pub humidity: Option<RelativeHumidity>,
    /// Wind as the station read it.
    pub wind_at_station: Option<Speed>,
    /// Wind taken for the slab.
    pub wind_at_slab: Option<Speed>,
    /// Its evaporation; nothing where a reading is missing.
    pub evaporation: Option<Evaporation>,
}

/// An estimate against both alarms.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Evaporation {
    /// The rate with its band.
    pub estimate: EstimatedRate,
    /// Against the usual alarm.
    pub usual: Level,
    /// Against the alarm for a mix with silica fume.
    pub silica_fume: Level,
}

/// The usual step of a series: the most common time between two samples, an hour when there is none.
pub(super) fn usual_step(series: &Series) -> SignedDuration {
    let mut counts: BTreeMap<SignedDuration, usize> = BTreeMap::new();
    for pair in series.samples.windows(2) {
        *counts.entry(pair[1].at.duration_since(pair[0].at)).or_default() += 1;
    }
    let most = counts.into_iter().max_by_key(|(step, count)| (*count, std::cmp::Reverse(*step)));
    most.map_or(SignedDuration::from_hours(1), |(step, _)| step)
}

/// The samples that begin at a wanted local moment, as hours. A row is stamped at the end of its time.
pub(super) fn hours(
    series: &Series,
    zone: &TimeZone,
    setting: &Setting,
    wanted: impl Fn(jiff::civil::DateTime) -> bool,
) -> Result<Vec<PourHour>, SeriesError> {
    let step = usual_step(series);
    let mut hours = Vec::new();
    for sample in &series.samples {
        let Ok(begins) = sample.at.checked_sub(step) else { continue };
        let local = begins.to_zoned_datetime(zone.clone()).datetime();
        if wanted(local) {
            hours.push(hour(sample, begins, local.hour(), setting));
        }
    }
    judge(&mut hours, step, setting)?;
    Ok(hours)
}

fn hour(sample: &Sample, begins: Timestamp, hour: i8, setting: &Setting) -> PourHour {
    PourHour {
        begins,
        ends: sample.at,
        hour,
        air: sample.air,
        humidity: sample.humidity,
        wind_at_station: sample.wind,
        wind_at_slab: sample.wind.map(|wind| wind * setting.wind_factor),
        evaporation: None,
    }
}

/// Fills in the evaporation of each hour whose readings are complete.
fn judge(hours: &mut [PourHour], step: SignedDuration, setting: &Setting) -> Result<(), SeriesError> {
    let Some(zero) = hours.first().map(|h| h.begins) else { return Ok(()) };
    let complete: Vec<(usize, AirSample)> = hours
        .iter()
        .enumerate()
        .filter_map(|(index, h)| {
            let wind = Some(h.wind_at_slab?);
            let slab = Some(setting.concrete.temperature);
            let at = between(zero, h.begins);
            Some((index, AirSample { at, air: h.air?, humidity: h.humidity?, wind, slab, rain: None, pressure: None }))
        })
        .collect();
    if complete.is_empty() {
        return Ok(());
    }
    let samples: Vec<AirSample> = complete.iter().map(|(_, sample)| *sample).collect();
    let series = WeatherSeries::new(&samples, Duration::seconds(step.as_secs_f64()))?;
    let usual = evaporation_hours(series, EvaporationForm::Menzel, setting.alarms.usual)?;
    let silica_fume = evaporation_hours(series, EvaporationForm::Menzel, setting.alarms.silica_fume)?;
    for (((index, _), usual), silica_fume) in complete.iter().zip(usual.hours).zip(silica_fume.hours) {
        if let (
            EvaporationHour::Known { estimate, level: usual, .. },
            EvaporationHour::Known { level: silica_fume, .. },
        ) = (usual, silica_fume)
        {
            hours[*index].evaporation = Some(Evaporation { estimate, usual, silica_fume });
        }
    }
    Ok(())
}
