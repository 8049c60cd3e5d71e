//! Age at a reference temperature, from a temperature log or a stated history.

use std::path::PathBuf;

use clap::Args;
use science::cure::{
    Activation, ArrheniusAge, Between, EQUIVALENT_AGE, GapRule, NURSE_SAUL, TemperatureLog, TemperatureReading,
    TemperatureTimeFactor, equivalent_age, temperature_time_factor,
};
use units::{Duration, Temperature, TemperatureDifference};

use super::evaporation_file::since;
use crate::accepted::Accepted;
use crate::caution::Caution;
use crate::error::SumError;
use crate::files::{NamedFile, Reader};
use crate::log_file::{self, LogArgs};
use crate::read::{missing, number, quantity, unclear};
use crate::shown::Shown;
use crate::sum::Sum;

/// What is asked.
#[derive(Debug, Args)]
pub struct EquivalentAge {
    /// Stated history in steps, such as 12h@15C,12h@25C
    #[arg(long, value_name = "TIME@TEMPERATURE,…", conflicts_with = "file", allow_hyphen_values = true)]
    history: Option<String>,
    /// Temperature log: a CSV with times and the slab's (or the air's) temperature
    #[arg(long, value_name = "FILE")]
    file: Option<PathBuf>,
    #[command(flatten)]
    log: LogArgs,
    /// Temperature at which an hour counts as an hour [default: 20 °C]
    #[arg(long, value_name = "TEMPERATURE", allow_hyphen_values = true)]
    reference: Option<String>,
    /// Activation temperature Q of the cement, in kelvins [default: 5000]
    #[arg(long, value_name = "KELVINS", conflicts_with = "energy", allow_hyphen_values = true)]
    activation: Option<String>,
    /// Activation energy of the cement, in J/mol, instead of Q
    #[arg(long, value_name = "J/MOL", allow_hyphen_values = true)]
    energy: Option<String>,
    /// Datum temperature below which nothing counts [default: 0 °C]
    #[arg(long, value_name = "TEMPERATURE", allow_hyphen_values = true)]
    datum: Option<String>,
    /// Longest silence of a log that is bridged [default: 3 h, or twice the log's step]
    #[arg(long, value_name = "DURATION", requires = "file", allow_hyphen_values = true)]
    longest_gap: Option<String>,
    /// How far beyond its readings the slab may have been in a gap [default: 5 °C]
    #[arg(long, value_name = "DIFFERENCE", requires = "file", allow_hyphen_values = true)]
    gap_margin: Option<String>,
}

/// Readings with what is assumed between them.
struct History {
    readings: Vec<TemperatureReading>,
    until: Duration,
    between: Between,
    rule: GapRule,
}

pub(crate) fn run(args: &EquivalentAge, files: &Reader<'_>) -> Result<Sum, SumError> {
    let mut sum = Sum::new("equivalent-age", EQUIVALENT_AGE);
    let history = match (&args.history, &args.file) {
        (Some(text), _) => stated(&mut sum, text)?,
        (None, Some(file)) => logged(&mut sum, args, files.named(file))?,
        (None, None) => return Err(missing("history", Accepted::naming("history-or-file", &["file"]))),
    };
    let usual = ArrheniusAge::default();
    let reference = sum.read_or("reference", args.reference.as_ref(), usual.reference, Shown::Temperature)?;
    let activation = activation(&mut sum, args, usual.activation)?;
    let datum = TemperatureTimeFactor::default().datum;
    let datum = sum.read_or("datum", args.datum.as_ref(), datum, Shown::Temperature)?;

    let log = TemperatureLog::new(&history.readings, history.between, history.rule).map_err(SumError::core)?;
    let constants = ArrheniusAge { activation, reference, offset: usual.offset };
    let from = Duration::ZERO;
    let age = equivalent_age(log, from, history.until, &constants).map_err(SumError::core)?;
    let warmth = temperature_time_factor(log, from, history.until, TemperatureTimeFactor { datum });
    let warmth = warmth.map_err(SumError::core)?;
    if age.gaps.is_empty() {
        sum.result("equivalent_age", Shown::Hours(age.low));
    } else {
        sum.result("equivalent_age_low", Shown::Hours(age.low));
        sum.result("equivalent_age_high", Shown::Hours(age.high));
        sum.result("equivalent_age_proven", Shown::Hours(age.proven));
        sum.result("gap_hours", Shown::Hours(age.gaps.iter().map(|gap| gap.length()).sum()));
        sum.caution([Caution::GapsWiden]);
    }
    sum.result("calendar_age", Shown::Hours(history.until));
    sum.result("share_of_calendar", Shown::Percent(age.low / history.until * 100.0));
    let finding = if age.high < history.until {
        "younger-than-calendar"
    } else if age.low > history.until {
        "older-than-calendar"
    } else {
        "as-old-as-calendar"
    };
    sum.result("against_calendar", Shown::Code(finding));
    if warmth.gaps.is_empty() {
        sum.result("temperature_time", Shown::DegreeHours(warmth.low));
    } else {
        sum.result("temperature_time_low", Shown::DegreeHours(warmth.low));
        sum.result("temperature_time_high", Shown::DegreeHours(warmth.high));
    }
    sum.note_also(NURSE_SAUL);
    sum.caution([Caution::ConstantsOfCement, Caution::AgeReleasesNothing]);
    Ok(sum)
}

fn activation(sum: &mut Sum, args: &EquivalentAge, usual: Activation) -> Result<Activation, SumError> {
    if let Some(text) = &args.energy {
        let energy = number("energy", text, "energy")?;
        sum.given("energy", text, Shown::Number(energy, 0));
        return Activation::joules_per_mole(energy).map_err(SumError::core);
    }
    let accepted = "activation";
    let kelvins = sum.number_or("activation", args.activation.as_ref(), usual.as_kelvins(), accepted)?;
    Activation::kelvins(kelvins).map_err(SumError::core)
}

/// Steps that each hold their temperature; there is no silence in what is stated.
fn stated(sum: &mut Sum, text: &str) -> Result<History, SumError> {
    let mut readings = Vec::new();
    let mut until = Duration::ZERO;
    for step in text.split(',').map(str::trim).filter(|step| !step.is_empty()) {
        let Some((time, temperature)) = step.split_once('@') else {
            return Err(unclear("history", step, "history-step"));
        };
        let time: Duration = quantity("history", time)?;
        readings.push(TemperatureReading { at: until, temperature: quantity::<Temperature>("history", temperature)? });
        until += time;
    }
    sum.given("history", text, Shown::Text(text.trim().to_owned()));
    let longest = if until > Duration::ZERO { until } else { Duration::hours(1.0) };
    let rule = GapRule { longest, margin: TemperatureDifference::celsius_degrees(0.0) };
    if !readings.is_empty() && until <= Duration::ZERO {
        return Err(crate::read::impossible("history", text, "history-steps"));
    }
    Ok(History { readings, until, between: Between::Step, rule })
}

/// The slab's own readings, or the air's where the log has none.
fn logged(sum: &mut Sum, args: &EquivalentAge, file: NamedFile<'_>) -> Result<History, SumError> {
    let log = log_file::read(file, &args.log)?;
    sum.given("file", &log.name, Shown::Text(log.name.clone()));
    let of_slab = log.series.samples.iter().any(|s| s.slab.is_some());
    let read: Vec<_> =
        log.series.samples.iter().filter_map(|s| Some((s.at, if of_slab { s.slab } else { s.air }?))).collect();
    let Some(zero) = read.first().map(|(at, _)| *at) else {
        return Err(log.refused("no temperature in it; accepted: a column of slab or air"));
    };
    let readings: Vec<_> =
        read.iter().map(|(at, t)| TemperatureReading { at: since(zero, *at), temperature: *t }).collect();
    let until = readings.last().map_or(Duration::ZERO, |last| last.at);
    if until <= Duration::ZERO {
        return Err(log.refused("one reading covers no time; accepted: two or more"));
    }
    if !of_slab {
        sum.caution([Caution::AirForSlab]);
    }
    let usual = Duration::hours(3.0).max(log.step * 2.0);
    let margin = TemperatureDifference::celsius_degrees(5.0);
    let rule = GapRule {
        longest: sum.read_or("longest_gap", args.longest_gap.as_ref(), usual, Shown::Hours)?,
        margin: sum.read_or("gap_margin", args.gap_margin.as_ref(), margin, Shown::Difference)?,
    };
    Ok(History { readings, until, between: Between::StraightLine, rule })
}
