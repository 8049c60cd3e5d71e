//! The air over the slab since the pour, day by day, from what the diary holds of it.
//!
//! Days count from the pour, 24 hours each. Until the first day on record the air is as on that day,
//! between two days a straight line joins them, and after the last it stays at the mean of the last
//! month on record. Where nothing is on record indoors, the air for which the prior was fitted stands
//! in (60 % and 18 °C, `reference/physics/drying_calibration.csv`; grade M).

use std::collections::BTreeMap;

use jiff::Timestamp;
use jiff::tz::TimeZone;
use science::moisture::{Ambient, Spell};
use units::{AsWritten, Duration, RelativeHumidity, Temperature};

use super::{Assumption, CannotTell};
use slab_diary::EntryId;
use slab_diary::Slab;
use slab_diary::body::{AirReading, AirSeries, Exposure, Temperature as TemperatureBody};
use weather_series::Series;

const DAY: f64 = 86_400.0;
/// Days whose mean stands for the time after the record.
const LAST_MONTH: i64 = 30;
const ASSUMED_PERCENT: f64 = 60.0;
const ASSUMED_CELSIUS: f64 = 18.0;

/// What is known of the air, and what was assumed.
pub(super) struct Air {
    pub(super) ambient: Ambient,
    pub(super) assumed: Vec<Assumption>,
    pub(super) evidence: Vec<EntryId>,
}

/// Means by day.
#[derive(Default)]
struct Days(BTreeMap<i64, (f64, f64)>);

impl Days {
    fn add(&mut self, day: i64, value: Option<f64>) {
        if let Some(value) = value {
            let (sum, count) = self.0.entry(day).or_default();
            *sum += value;
            *count += 1.0;
        }
    }

    fn means(&self) -> BTreeMap<i64, f64> {
        self.0.iter().map(|(day, (sum, count))| (*day, sum / count)).collect()
    }
}

/// Everything read since the pour. Humidity in percent, temperatures in °C.
#[derive(Default)]
struct Record {
    humidity: Days,
    slab: Days,
    air: Days,
    evidence: Vec<EntryId>,
}

/// One quantity on every day from the pour on, and what it stays at afterwards.
struct Course {
    days: BTreeMap<i64, f64>,
    after: f64,
}

impl Course {
    fn of(days: BTreeMap<i64, f64>) -> Option<Self> {
        let last = *days.keys().next_back()?;
        let month: Vec<f64> = days.range(last - LAST_MONTH + 1..).map(|(_, v)| *v).collect();
        let after = month.iter().sum::<f64>() / month.len() as f64;
        Some(Self { days, after })
    }

    fn constant(value: f64) -> Self {
        Self { days: BTreeMap::new(), after: value }
    }

    fn on(&self, day: i64) -> f64 {
        let before = self.days.range(..=day).next_back();
        let next = self.days.range(day..).next();
        match (before, next) {
            (Some((d, a)), Some((e, b))) if e > d => a + (b - a) * ((day - d) as f64 / (e - d) as f64),
            (Some(_), None) => self.after,
            (_, Some((_, v))) => *v,
            (None, None) => self.after,
        }
    }

    fn end(&self) -> i64 {
        self.days.keys().next_back().map_or(0, |last| last + 1)
    }
}

/// The air from the pour to the horizon.
pub(super) fn air(slab: &Slab<'_>, poured: Timestamp, horizon: Duration) -> Result<Air, CannotTell> {
    let outdoors = slab.exposure() == Exposure::Exterior;
    let now = slab.knowledge().at;
    let mut assumed = Vec::new();
    let mut record = Record::default();
    record.spot_readings(slab, poured);
    let mut typical = None;
    for seen in slab.all::<AirSeries>() {
        let series = &seen.body.series;
        let weather = series.typical_year || series.samples.iter().any(|s| s.wind.is_some() || s.rain.is_some());
        if weather && !outdoors {
            if !assumed.contains(&Assumption::WeatherNotRoom) {
                assumed.push(Assumption::WeatherNotRoom);
            }
        } else if series.typical_year {
            typical = Some((series, seen.entry.id));
        } else if record.take(series, poured, now) {
            record.evidence.push(seen.entry.id);
        }
    }
    // The slab's own temperature is what moves the drying; that of the air stands in for it.
    let mut temperature = record.air.means();
    temperature.extend(record.slab.means());
    let mut humidity = record.humidity.means();
    let of = (seconds(poured, now) / DAY).floor().max(0.0) as u32 + 1;
    few_days(&mut assumed, &humidity, &temperature, of);
    if let Some((series, id)) = typical {
        let (typical_humidity, typical_temperature) = typical_days(series, &slab.time_zone(), poured, horizon);
        for (day, value) in typical_humidity {
            humidity.entry(day).or_insert(value);
        }
        for (day, value) in typical_temperature {
            temperature.entry(day).or_insert(value);
        }
        assumed.push(Assumption::TypicalYearOutdoors);
        record.evidence.push(id);
    }
    if outdoors {
        assumed.push(Assumption::RainNotCounted);
    }
    let held = typical.is_none();
    let humidity = match Course::of(humidity) {
        Some(course) => {
            if held {
                assumed.push(Assumption::HumidityAfterRecord { humidity: percent(course.after) });
            }
            course
        }
        None if outdoors => return Err(CannotTell::OutdoorsNoAir),
        None => {
            assumed.push(Assumption::AirHumidityAssumed { humidity: percent(ASSUMED_PERCENT) });
            Course::constant(ASSUMED_PERCENT)
        }
    };
    let temperature = match Course::of(temperature) {
        Some(course) => {
            if held {
                let temperature = Temperature::celsius(course.after);
                assumed.push(Assumption::TemperatureAfterRecord { temperature });
            }
            course
        }
        None => {
            assumed.push(Assumption::AirTemperatureAssumed { temperature: Temperature::celsius(ASSUMED_CELSIUS) });
            Course::constant(ASSUMED_CELSIUS)
        }
    };
    Ok(Air { ambient: ambient(&humidity, &temperature), assumed, evidence: record.evidence })
}

fn few_days(assumed: &mut Vec<Assumption>, humidity: &BTreeMap<i64, f64>, temperature: &BTreeMap<i64, f64>, of: u32) {
    let few = |days: &BTreeMap<i64, f64>| Some(days.len() as u32).filter(|known| (1..of).contains(known));
    assumed.extend(few(humidity).map(|known| Assumption::HumidityOnFewDays { known, of }));
    assumed.extend(few(temperature).map(|known| Assumption::TemperatureOnFewDays { known, of }));
}

impl Record {
    /// Readings by hand. One without humidity or temperature adds nothing.
    fn spot_readings(&mut self, slab: &Slab<'_>, poured: Timestamp) {
        let celsius = |w: &Option<AsWritten<Temperature>>| w.as_ref().map(|w| w.value().as_celsius());
        for seen in slab.all::<AirReading>() {
            let Some(day) = day_of(poured, seen.entry.happened.instant()) else { continue };
            let humidity = seen.body.humidity.as_ref().map(|w| w.value().as_percent());
            self.read(day, (humidity, celsius(&seen.body.slab), celsius(&seen.body.air)), seen.entry.id);
        }
        for seen in slab.all::<TemperatureBody>() {
            let Some(day) = day_of(poured, seen.entry.happened.instant()) else { continue };
            self.read(day, (None, celsius(&seen.body.slab), celsius(&seen.body.air)), seen.entry.id);
        }
    }

    fn read(&mut self, day: i64, (humidity, slab, air): (Option<f64>, Option<f64>, Option<f64>), entry: EntryId) {
        self.humidity.add(day, humidity);
        self.slab.add(day, slab);
        self.air.add(day, air);
        if humidity.or(slab).or(air).is_some() {
            self.evidence.push(entry);
        }
    }

    /// Takes what a series holds between the pour and now; says whether that was anything.
    fn take(&mut self, series: &Series, poured: Timestamp, now: Timestamp) -> bool {
        let mut taken = false;
        for sample in series.samples.iter().filter(|s| s.at <= now) {
            let Some(day) = day_of(poured, sample.at) else { continue };
            self.humidity.add(day, sample.humidity.map(RelativeHumidity::as_percent));
            self.slab.add(day, sample.slab.map(Temperature::as_celsius));
            self.air.add(day, sample.air.map(Temperature::as_celsius));
            taken |= sample.humidity.is_some() || sample.slab.is_some() || sample.air.is_some();
        }
        taken
    }
}

/// Humidity and temperature of a typical year on each day from the pour to the horizon.
fn typical_days(
    series: &Series,
    zone: &TimeZone,
    poured: Timestamp,
    horizon: Duration,
) -> (BTreeMap<i64, f64>, BTreeMap<i64, f64>) {
    let (mut humidity, mut air) = (Days::default(), Days::default());
    let first = poured.to_zoned_datetime(zone.clone()).year();
    let years = (horizon.as_days() / 365.0).ceil() as i16;
    for year in first.saturating_sub(1)..=first.saturating_add(years) {
        let Ok(laid) = series.typical_to_year_in(year, zone) else { continue };
        for sample in laid.samples {
            let Some(day) = day_of(poured, sample.at).filter(|day| *day as f64 <= horizon.as_days()) else { continue };
            humidity.add(day, sample.humidity.map(RelativeHumidity::as_percent));
            air.add(day, sample.air.map(Temperature::as_celsius));
        }
    }
    (humidity.means(), air.means())
}

fn ambient(humidity: &Course, temperature: &Course) -> Ambient {
    let end = humidity.end().max(temperature.end());
    let mut spells: Vec<Spell> = Vec::new();
    for day in 0..=end {
        let spell = Spell {
            from: Duration::days(day as f64),
            humidity: percent(humidity.on(day)),
            temperature: Temperature::celsius(temperature.on(day)),
        };
        let same = |last: &Spell| last.humidity == spell.humidity && last.temperature == spell.temperature;
        if !spells.last().is_some_and(same) {
            spells.push(spell);
        }
    }
    Ambient::series(&spells).expect("one spell for each day from 0 on")
}

fn seconds(from: Timestamp, at: Timestamp) -> f64 {
    at.duration_since(from).as_secs_f64()
}

/// The day since the pour, from 0; nothing before it.
fn day_of(poured: Timestamp, at: Timestamp) -> Option<i64> {
    let seconds = seconds(poured, at);
    (seconds >= 0.0).then_some((seconds / DAY).floor() as i64)
}

fn percent(value: f64) -> RelativeHumidity {
    RelativeHumidity::percent(value.clamp(0.0, 100.0)).expect("clamped to 0 to 100 %")
}
