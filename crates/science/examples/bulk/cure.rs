//! Questions about maturity: a log of temperatures from its first to its last reading.

use std::error::Error;

use science::cure::{
    self, Activation, ArrheniusAge, Between, GapRule, KelvinOffset, TemperatureLog, TemperatureReading,
    TemperatureTimeFactor,
};
use units::{Duration, TemperatureDifference};

use crate::Answer;
use crate::ask::Ask;

fn readings(ask: &Ask<'_>) -> Result<Vec<TemperatureReading>, Box<dyn Error>> {
    let (hours, celsius) = (ask.numbers("at_h")?, ask.numbers("log_c")?);
    if hours.len() != celsius.len() {
        return Err("at_h and log_c differ in length".into());
    }
    let reading = |(h, c): (&f64, &f64)| TemperatureReading {
        at: Duration::hours(*h),
        temperature: units::Temperature::celsius(*c),
    };
    Ok(hours.iter().zip(&celsius).map(reading).collect())
}

/// Whether readings are joined by straight lines or hold until the next; silences longer than
/// `bridge_h` are gaps, within `margin_k` of the coldest and warmest reading.
fn log<'a>(ask: &Ask<'_>, readings: &'a [TemperatureReading]) -> Result<TemperatureLog<'a>, Box<dyn Error>> {
    let between = match ask.word("between")? {
        "line" => Between::StraightLine,
        "step" => Between::Step,
        other => return Err(format!("between={other}: line or step").into()),
    };
    let rule = GapRule {
        longest: Duration::hours(ask.number("bridge_h")?),
        margin: TemperatureDifference::celsius_degrees(ask.number("margin_k")?),
    };
    Ok(TemperatureLog::new(readings, between, rule)?)
}

fn period(readings: &[TemperatureReading]) -> Result<(Duration, Duration), Box<dyn Error>> {
    let (first, last) = readings.first().zip(readings.last()).ok_or("an empty log")?;
    Ok((first.at, last.at))
}

/// Low, high and proven, h.
pub(crate) fn equivalent_age(ask: &Ask<'_>) -> Answer {
    let readings = readings(ask)?;
    let (from, until) = period(&readings)?;
    let constants = ArrheniusAge {
        activation: Activation::kelvins(ask.number("q_k")?)?,
        reference: ask.celsius("ts_c")?,
        offset: match ask.word("kelvin")? {
            "273" => KelvinOffset::AsPrinted273,
            "273.15" => KelvinOffset::Exact273_15,
            other => return Err(format!("kelvin={other}: 273 or 273.15").into()),
        },
    };
    let age = cure::equivalent_age(log(ask, &readings)?, from, until, &constants)?;
    Ok([age.low, age.high, age.proven].map(Duration::as_hours).to_vec())
}

/// Low, high and proven, °C·h.
pub(crate) fn temperature_time(ask: &Ask<'_>) -> Answer {
    let readings = readings(ask)?;
    let (from, until) = period(&readings)?;
    let constants = TemperatureTimeFactor { datum: ask.celsius("datum_c")? };
    let sum = cure::temperature_time_factor(log(ask, &readings)?, from, until, constants)?;
    Ok([sum.low, sum.high, sum.proven].map(|factor| factor.as_celsius_hours()).to_vec())
}
