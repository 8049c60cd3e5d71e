//! The hours of the likely pour as the template prints them.

use std::collections::BTreeMap;

use localization::Locale;
use serde_json::{Value, json};

use super::chart::{ChartWords, hour_bars};
use super::hours::{FIRST, LAST, stretches};
use super::sheet::{Writer, lacking};
use super::{HourRisk, PourWeather, WeatherBasis};
use crate::error::PaperError;
use crate::show;

impl Writer {
    pub(super) fn weather(
        &mut self,
        weather: Option<&PourWeather>,
        pictures: &mut BTreeMap<String, Vec<u8>>,
    ) -> Result<Value, PaperError> {
        let locale = self.locale;
        let grade = self.noted("evaporation-alarm", "P14")?;
        let limit = match weather {
            Some(weather) => weather.alarm.as_pounds_per_square_foot_hour(),
            None => self
                .trade
                .limit("evaporation-alarm")
                .and_then(|fact| fact.value)
                .ok_or_else(|| lacking("evaporation-alarm"))?,
        };
        if !(limit > 0.0 && limit <= 10.0) {
            return Err(PaperError::field(
                "weather.alarm",
                format!("{limit} lb/ft²/h"),
                "above 0, at most 10 lb/ft²/h",
            ));
        }
        let rule = locale.message("paper-weather-rule", &[("limit", show::short(limit).into())]);
        let Some(weather) = weather else {
            let none = locale.message("paper-weather-no-series", &[]);
            return Ok(json!({"grade": grade, "rule": rule, "none": none}));
        };
        let month = show::month(locale, weather.month)?;
        let hours = printed_hours(weather);
        let error = show::short(weather.relative_error.as_share() * 100.0);
        pictures.insert("hours.svg".to_owned(), hour_bars(&hours, &chart_words(locale, &hours, &error)).into_bytes());
        Ok(json!({
            "grade": grade,
            "rule": rule,
            "chart": chart_text(locale, &month, &hours),
            "summary": summary(locale, &hours),
            "estimate": estimate(locale, weather, &month, error),
        }))
    }
}

fn chart_words(locale: Locale, hours: &[HourRisk], error: &str) -> ChartWords {
    let edges = hours.iter().map(|hour| hour.hour).chain([LAST + 1]);
    let label = |at: u8| if (at - FIRST).is_multiple_of(2) { show::hour(locale, at) } else { String::new() };
    ChartWords {
        axis: locale.message("paper-weather-axis", &[]),
        above: locale.message("paper-weather-above", &[]),
        possible: locale.message("paper-weather-possible", &[("error", error.into())]),
        hours: edges.map(label).collect(),
    }
}

/// The chart in words, for those who cannot see it.
fn chart_text(locale: Locale, month: &str, hours: &[HourRisk]) -> String {
    let percent = |share: f64| show::number(share * 100.0, 0);
    let each = hours.iter().map(|hour| {
        let name = ("hour", show::hour(locale, hour.hour).into());
        let (Some(above), Some(reach)) = (hour.above_share(), hour.reach_share()) else {
            return locale.message("paper-weather-chart-unknown", &[name]);
        };
        let shares = [name, ("above", percent(above).into()), ("reach", percent(reach).into())];
        locale.message("paper-weather-chart-hour", &shares)
    });
    let hours = format!("{}.", each.collect::<Vec<_>>().join("; "));
    locale.message("paper-weather-chart", &[("month", month.into()), ("hours", hours.into())])
}

fn summary(locale: Locale, hours: &[HourRisk]) -> Vec<String> {
    let say = |found: Vec<(u8, u8)>, some: &'static str, none: Option<&'static str>| match none {
        Some(none) if found.is_empty() => Some(locale.message(none, &[])),
        _ if found.is_empty() => None,
        _ => Some(locale.message(some, &[("hours", stretch_words(locale, &found).into())])),
    };
    let often = stretches(hours, |hour| hour.above_share().is_some_and(|share| share >= 0.5));
    let seldom = stretches(hours, |hour| hour.above_share().is_some_and(|share| share <= 0.1));
    let unknown = stretches(hours, |hour| hour.days == 0);
    let lines = [
        say(often, "paper-weather-often", Some("paper-weather-often-none")),
        say(seldom, "paper-weather-seldom", Some("paper-weather-seldom-none")),
        say(unknown, "paper-weather-unknown", None),
    ];
    lines.into_iter().flatten().collect()
}

fn stretch_words(locale: Locale, found: &[(u8, u8)]) -> String {
    let each = found.iter().map(|(start, end)| {
        let ends = [("low", show::hour(locale, *start).into()), ("high", show::hour(locale, *end).into())];
        locale.message("range", &ends)
    });
    each.collect::<Vec<_>>().join(", ")
}

fn estimate(locale: Locale, weather: &PourWeather, month: &str, error: String) -> String {
    let basis = locale.message(
        match weather.basis {
            WeatherBasis::TypicalYear => "paper-weather-basis-typical",
            WeatherBasis::Recorded => "paper-weather-basis-recorded",
        },
        &[],
    );
    let args = [
        ("error", error.into()),
        ("month", capital(month).into()),
        ("place", weather.place.as_str().into()),
        ("basis", basis.into()),
        ("concrete", format!("{} °F", show::number(weather.concrete.as_fahrenheit(), 0)).into()),
    ];
    locale.message("paper-weather-estimate", &args)
}

fn printed_hours(weather: &PourWeather) -> Vec<HourRisk> {
    let none = |hour| HourRisk { hour, days: 0, above: 0, possible: 0 };
    let of = |hour: u8| weather.hours.iter().find(|row| row.hour == hour).copied();
    (FIRST..=LAST).map(|hour| of(hour).unwrap_or_else(|| none(hour))).collect()
}

fn capital(word: &str) -> String {
    let mut chars = word.chars();
    chars.next().map_or_else(String::new, |first| first.to_uppercase().chain(chars).collect())
}
