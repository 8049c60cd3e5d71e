//! The hours of one day.

use jiff::Timestamp;
use jiff::civil::Date;

use super::hours::hours;
use super::setting::Setting;
use super::{Alarms, Assumption, CannotTell, ConcreteFrom, ConcreteTemperature, PourHour};
use slab_diary::EntryId;
use slab_diary::body::{AirSeries, Exposure, Pour};
use slab_diary::{EntryOf, Slab};
use trade_facts::Trade;

/// Evaporation by the hour on the day of the pour.
#[derive(Debug, Clone, PartialEq)]
pub struct PourDay {
    /// The local day.
    pub day: Date,
    /// Why this day.
    pub day_from: DayFrom,
    /// The entry of the series.
    pub series: EntryId,
    /// Where the series came from, such as the file's name.
    pub source: String,
    /// What kind of series it is.
    pub basis: Basis,
    /// The concrete.
    pub concrete: ConcreteTemperature,
    /// Wind at the slab as a share of the wind of the station: the fact `wind-at-slab`.
    pub wind_factor: f64,
    /// The alarms the hours are held against.
    pub alarms: Alarms,
    /// The hours, in order.
    pub hours: Vec<PourHour>,
    /// What was taken for granted.
    pub assumptions: Vec<Assumption>,
    /// The entries it rests on.
    pub evidence: Vec<EntryId>,
}

/// Why a day was taken.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum DayFrom {
    /// It was asked for.
    Asked,
    /// It is the day of this pour.
    Pour(EntryId),
}

/// What kind of series the hours come from.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Basis {
    /// Hours recorded, or forecast, for that date.
    Recorded,
    /// A typical year laid on that year.
    TypicalYear,
}

/// Evaporation by the hour on a day; without one, on the day of the last pour.
///
/// The last series that holds the day counts: recorded hours before a typical year.
///
/// # Errors
/// [`CannotTell`] when there is no day, no series with it, or a number lies outside the formula.
pub fn pour_day(slab: &Slab<'_>, trade: &Trade, day: Option<Date>) -> Result<PourDay, CannotTell> {
    let (day, day_from) = match (day, slab.last::<Pour>()) {
        (Some(day), _) => (day, DayFrom::Asked),
        (None, Some(pour)) => (pour.entry.happened.date(), DayFrom::Pour(pour.entry.id)),
        (None, None) => return Err(CannotTell::NoDay),
    };
    if slab.last::<AirSeries>().is_none() {
        return Err(CannotTell::NoSeries);
    }
    let setting = Setting::of(slab, trade).with_reading(slab, day);
    let (series, basis, hours) = covering(slab, &setting, day)?.ok_or(CannotTell::DayNotCovered { day })?;
    let mut assumptions = Vec::new();
    if let ConcreteFrom::MiddleOf { low, high } = setting.concrete.from {
        assumptions.push(Assumption::ConcreteTemperature { taken: setting.concrete.temperature, low, high });
    }
    assumptions.push(Assumption::WindFromStation { factor: setting.wind_factor });
    if basis == Basis::TypicalYear {
        assumptions.push(Assumption::TypicalYear);
    }
    if slab.exposure() == Exposure::Interior {
        assumptions.push(Assumption::OpenToTheWeather);
    }
    assumptions.push(Assumption::StampedAtTheEnd);
    let pour = match day_from {
        DayFrom::Pour(pour) => Some(pour),
        DayFrom::Asked => None,
    };
    let read = match setting.concrete.from {
        ConcreteFrom::Read(entry) => Some(entry),
        ConcreteFrom::MiddleOf { .. } => None,
    };
    Ok(PourDay {
        day,
        day_from,
        series: series.entry.id,
        source: series.body.source.clone(),
        basis,
        concrete: setting.concrete,
        wind_factor: setting.wind_factor,
        alarms: setting.alarms,
        hours,
        assumptions,
        evidence: pour.into_iter().chain([series.entry.id]).chain(read).collect(),
    })
}

type Covering<'d> = (EntryOf<'d, AirSeries>, Basis, Vec<PourHour>);

fn covering<'d>(slab: &Slab<'d>, setting: &Setting, day: Date) -> Result<Option<Covering<'d>>, CannotTell> {
    let zone = slab.time_zone();
    for seen in slab.all::<AirSeries>().rev().filter(|s| !s.body.series.typical_year) {
        let hours = hours(&seen.body.series, &zone, setting, |local| local.date() == day)?;
        if !hours.is_empty() {
            return Ok(Some((seen, Basis::Recorded, hours)));
        }
    }
    for seen in slab.all::<AirSeries>().rev().filter(|s| s.body.series.typical_year) {
        let Ok(laid) = seen.body.series.typical_to_year_in(day.year(), &zone) else { continue };
        let hours = hours(&laid, &zone, setting, |local| local.date() == day)?;
        if !hours.is_empty() {
            return Ok(Some((seen, Basis::TypicalYear, hours)));
        }
    }
    Ok(None)
}

impl PourDay {
    /// Unbroken times whose hours are wanted, such as those above an alarm: start and end.
    #[must_use]
    pub fn stretches(&self, wanted: impl Fn(&PourHour) -> bool) -> Vec<(Timestamp, Timestamp)> {
        let mut out: Vec<(Timestamp, Timestamp)> = Vec::new();
        for hour in self.hours.iter().filter(|hour| wanted(hour)) {
            match out.last_mut() {
                Some((_, end)) if *end >= hour.begins => *end = hour.ends,
                _ => out.push((hour.begins, hour.ends)),
            }
        }
        out
    }

    /// The hour with the highest rate.
    #[must_use]
    pub fn worst(&self) -> Option<&PourHour> {
        let known = self.hours.iter().filter_map(|hour| Some((hour, hour.evaporation?.estimate.rate)));
        known.reduce(|top, next| if next.1 > top.1 { next } else { top }).map(|(hour, _)| hour)
    }
}
