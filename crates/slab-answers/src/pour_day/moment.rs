//! Evaporation at one moment, from a reading of the air at the slab.

use jiff::Timestamp;
use science::air::{AirSample, EvaporationForm, EvaporationHour, WeatherSeries, evaporation_hours};
use units::{AsWritten, Duration};

use super::setting::Setting;
use super::{Alarms, Assumption, CannotTell, ConcreteFrom, ConcreteTemperature, Evaporation, Lacks};
use slab_diary::EntryId;
use slab_diary::body::AirReading;
use slab_diary::{EntryOf, Slab};
use trade_facts::Trade;

/// What a reading of the air does to fresh concrete.
#[derive(Debug, Clone, PartialEq)]
pub struct EvaporationMoment {
    /// The reading.
    pub entry: EntryId,
    /// When it was taken.
    pub at: Timestamp,
    /// The concrete: the surface read with the air, where it was.
    pub concrete: ConcreteTemperature,
    /// The alarms.
    pub alarms: Alarms,
    /// The estimate against them. The wind is that at the slab, as the reading has it.
    pub evaporation: Evaporation,
    /// What was taken for granted.
    pub assumptions: Vec<Assumption>,
}

/// Evaporation from fresh concrete in the air of a reading; without one, of the last reading that has
/// air, humidity and wind.
///
/// # Errors
/// [`CannotTell`] when there is no such reading, it lacks something, or a number lies outside the
/// formula.
pub fn evaporation_at(
    slab: &Slab<'_>,
    trade: &Trade,
    reading: Option<EntryId>,
) -> Result<EvaporationMoment, CannotTell> {
    let mut all = slab.all::<AirReading>().rev();
    let seen = match reading {
        Some(id) => all.find(|s| s.entry.id == id),
        // When none has everything, the last one says what to add.
        None => all.find(|s| lacks(s).is_empty()).or_else(|| slab.last::<AirReading>()),
    };
    let seen = seen.ok_or(CannotTell::NoAirReading)?;
    let mut setting = Setting::of(slab, trade);
    let mut assumptions = Vec::new();
    match (&seen.body.slab, setting.concrete.from) {
        (Some(read), _) => {
            setting.concrete =
                ConcreteTemperature { temperature: read.value(), from: ConcreteFrom::Read(seen.entry.id) };
        }
        (None, ConcreteFrom::MiddleOf { low, high }) => {
            assumptions.push(Assumption::ConcreteTemperature { taken: setting.concrete.temperature, low, high });
        }
        (None, ConcreteFrom::Read(_)) => {}
    }
    Ok(EvaporationMoment {
        entry: seen.entry.id,
        at: seen.entry.happened.instant(),
        concrete: setting.concrete,
        alarms: setting.alarms,
        evaporation: evaporation(&seen, &setting)?,
        assumptions,
    })
}

fn lacks(seen: &EntryOf<'_, AirReading>) -> Vec<Lacks> {
    let body = seen.body;
    [(body.air.is_none(), Lacks::Air), (body.humidity.is_none(), Lacks::Humidity), (body.wind.is_none(), Lacks::Wind)]
        .into_iter()
        .filter_map(|(lacking, what)| lacking.then_some(what))
        .collect()
}

fn evaporation(seen: &EntryOf<'_, AirReading>, setting: &Setting) -> Result<Evaporation, CannotTell> {
    let body = seen.body;
    let incomplete = || CannotTell::ReadingLacks { entry: seen.entry.id, lacks: lacks(seen) };
    let sample = AirSample {
        at: Duration::ZERO,
        air: body.air.as_ref().map(AsWritten::value).ok_or_else(incomplete)?,
        humidity: body.humidity.as_ref().map(AsWritten::value).ok_or_else(incomplete)?,
        wind: Some(body.wind.as_ref().map(AsWritten::value).ok_or_else(incomplete)?),
        slab: Some(setting.concrete.temperature),
        rain: None,
        pressure: None,
    };
    let samples = [sample];
    let series = WeatherSeries::new(&samples, Duration::hours(1.0))?;
    let usual = evaporation_hours(series, EvaporationForm::Menzel, setting.alarms.usual)?;
    let silica_fume = evaporation_hours(series, EvaporationForm::Menzel, setting.alarms.silica_fume)?;
    match (usual.hours.first(), silica_fume.hours.first()) {
        (
            Some(EvaporationHour::Known { estimate, level: usual, .. }),
            Some(EvaporationHour::Known { level: silica_fume, .. }),
        ) => Ok(Evaporation { estimate: *estimate, usual: *usual, silica_fume: *silica_fume }),
        _ => Err(incomplete()),
    }
}
