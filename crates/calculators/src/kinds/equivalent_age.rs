//! Age at a reference temperature, from a temperature log or a stated history.

use science::cure::{
    Activation, ArrheniusAge, Between, EQUIVALENT_AGE, GapRule, NURSE_SAUL, TemperatureLog, TemperatureReading,
    TemperatureTimeFactor, equivalent_age, temperature_time_factor,
};
use units::{Duration, Temperature, TemperatureDifference};

use super::drying::list;
use super::evaporation_file::since;
use super::prelude::*;
use crate::caution::Caution;
use crate::given::part;
use crate::log_file::{self, LogFile};
use crate::shown::Shown;

pub(super) static CALCULATOR: Calculator = Calculator {
    form: Form {
        name: "equivalent-age",
        fields: &[
            optional("history", "sum-field-equivalent-age-history", LINE).in_answer("value-history").such_as("12h@59F,12h@77F", "12h@15C,12h@25C"),
            optional("file", "sum-field-equivalent-age-file", InputKind::File).in_answer("value-file"),
            optional("column", "sum-field-column", InputKind::Texts).such_as("air=T1", "air=T1").more(),
            optional("time_zone", "sum-field-time-zone", InputKind::TimeZone).usual("UTC", "UTC").more(),
            optional("year", "sum-field-year", count(1900, 2199)).such_as("2026", "2026").more(),
            optional("reference", "value-reference", quantity(Kind::Temperature, "68 °F", "20 °C")).usual("68 °F", "20 °C").more(),
            optional("activation", "value-activation", NUMBER).usual("5000", "5000").more(),
            optional("energy", "sum-field-equivalent-age-energy", NUMBER).in_answer("value-energy").such_as("41500", "41500").more(),
            optional("datum", "value-datum", quantity(Kind::Temperature, "32 °F", "0 °C")).usual("32 °F", "0 °C").more(),
            optional("longest_gap", "value-longest-gap", quantity(Kind::Duration, "3 h", "3 h")).usual_said("sum-usual-equivalent-age-longest-gap").more(),
            optional("gap_margin", "value-gap-margin", quantity(Kind::TemperatureDifference, "9 °F", "5 °C")).usual("9 °F", "5 °C").more(),
        ],
        presets: &[],
        rules: &[Rule::OneOf(&["history", "file"]), Rule::NotBoth("activation", "energy"), Rule::Needs("column", "file"), Rule::Needs("time_zone", "file"), Rule::Needs("year", "file"), Rule::Needs("longest_gap", "file"), Rule::Needs("gap_margin", "file")],
    },
    title: "sum-equivalent-age",
    about: "sum-about-equivalent-age",
    example: &["history"],
    lines: &[r#"--history "12h@15C,12h@25C""#,
        r#"--file logger.csv --time-zone America/Chicago"#],
    places: &[],
    run,
};

/// Readings with what is assumed between them.
struct History {
    readings: Vec<TemperatureReading>,
    until: Duration,
    between: Between,
    rule: GapRule,
}

fn run(given: &mut Given<'_>) -> Result<Calculation, CalculatorError> {
    let mut sum = Calculation::new(given, EQUIVALENT_AGE);
    let history = match log_file::read(given)? {
        Some(log) => logged(given, &mut sum, &log)?,
        None => stated(given)?,
    };
    let usual = ArrheniusAge::default();
    let reference = given.read_or("reference", usual.reference, Shown::Temperature)?;
    let activation = activation(given, usual.activation)?;
    let datum = TemperatureTimeFactor::default().datum;
    let datum = given.read_or("datum", datum, Shown::Temperature)?;

    let log = TemperatureLog::new(&history.readings, history.between, history.rule).map_err(CalculatorError::core)?;
    let constants = ArrheniusAge { activation, reference, offset: usual.offset };
    let from = Duration::ZERO;
    let age = equivalent_age(log, from, history.until, &constants).map_err(CalculatorError::core)?;
    let warmth = temperature_time_factor(log, from, history.until, TemperatureTimeFactor { datum });
    let warmth = warmth.map_err(CalculatorError::core)?;
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

fn activation(given: &mut Given<'_>, usual: Activation) -> Result<Activation, CalculatorError> {
    if let Some(energy) = given.number("energy", 0) {
        return Activation::joules_per_mole(energy).map_err(CalculatorError::core);
    }
    Activation::kelvins(given.number_or("activation", usual.as_kelvins())).map_err(CalculatorError::core)
}

/// Steps that each hold their temperature; there is no silence in what is stated.
fn stated(given: &mut Given<'_>) -> Result<History, CalculatorError> {
    const ACCEPTED: &str = "sum-accepts-history-step";
    let text = given.text("history")?;
    let mut readings = Vec::new();
    let mut until = Duration::ZERO;
    for step in list(&text) {
        let (time, temperature) =
            step.split_once('@').ok_or_else(|| CalculatorError::unclear("history", step, ACCEPTED))?;
        let temperature: Temperature = part("history", temperature, ACCEPTED)?;
        readings.push(TemperatureReading { at: until, temperature });
        until += part::<Duration>("history", time, ACCEPTED)?;
    }
    given.note("history", &text, Shown::Text(text.clone()));
    let longest = if until > Duration::ZERO { until } else { Duration::hours(1.0) };
    let rule = GapRule { longest, margin: TemperatureDifference::celsius_degrees(0.0) };
    if !readings.is_empty() && until <= Duration::ZERO {
        return Err(CalculatorError::impossible("history", &text, "sum-accepts-history-steps"));
    }
    Ok(History { readings, until, between: Between::Step, rule })
}

/// The slab's own readings, or the air's where the log has none.
fn logged(given: &mut Given<'_>, sum: &mut Calculation, log: &LogFile) -> Result<History, CalculatorError> {
    given.note("file", &log.name, Shown::Text(log.name.clone()));
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
        longest: given.read_or("longest_gap", usual, Shown::Hours)?,
        margin: given.read_or("gap_margin", margin, Shown::Difference)?,
    };
    Ok(History { readings, until, between: Between::StraightLine, rule })
}
