//! The hours of the likely pour as the template prints them.

use std::collections::BTreeMap;

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
        let words = self.words;
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
        let rule = words.fill("pour.weather.rule", &[("limit", &show::short(limit))])?;
        let Some(weather) = weather else {
            return Ok(json!({"grade": grade, "rule": rule, "none": words.message("pour.weather.no_series")?}));
        };
        let hours = printed_hours(weather);
        let error = show::short(weather.relative_error.as_share() * 100.0);
        pictures.insert("hours.svg".to_owned(), hour_bars(&hours, &self.chart_words(&hours, &error)?).into_bytes());
        Ok(json!({
            "grade": grade,
            "rule": rule,
            "chart": self.chart_text(weather, &hours)?,
            "summary": self.summary(&hours)?,
            "estimate": self.estimate(weather, &error)?,
        }))
    }

    fn chart_words(&self, hours: &[HourRisk], error: &str) -> Result<ChartWords, PaperError> {
        let words = self.words;
        let edges = hours.iter().map(|hour| hour.hour).chain([LAST + 1]);
        let labels: Result<Vec<String>, PaperError> = edges
            .map(|at| if (at - FIRST).is_multiple_of(2) { show::hour(words, at) } else { Ok(String::new()) })
            .collect();
        Ok(ChartWords {
            axis: words.message("pour.weather.axis")?.to_owned(),
            above: words.message("pour.weather.above")?.to_owned(),
            possible: words.fill("pour.weather.possible", &[("error", error)])?,
            hours: labels?,
        })
    }

    /// The chart in words, for those who cannot see it.
    fn chart_text(&self, weather: &PourWeather, hours: &[HourRisk]) -> Result<String, PaperError> {
        let words = self.words;
        let percent = |share: f64| show::number(share * 100.0, 0);
        let each: Result<Vec<String>, PaperError> = hours
            .iter()
            .map(|hour| {
                let name = show::hour(words, hour.hour)?;
                let (Some(above), Some(reach)) = (hour.above_share(), hour.reach_share()) else {
                    return words.fill("pour.weather.chart_unknown", &[("hour", &name)]);
                };
                let with = [("hour", name), ("above", percent(above)), ("reach", percent(reach))];
                let with: Vec<(&str, &str)> = with.iter().map(|(name, value)| (*name, value.as_str())).collect();
                words.fill("pour.weather.chart_hour", &with)
            })
            .collect();
        let month = show::month(words, weather.month)?;
        words.fill("pour.weather.chart", &[("month", month), ("hours", &format!("{}.", each?.join("; ")))])
    }

    fn summary(&self, hours: &[HourRisk]) -> Result<Vec<String>, PaperError> {
        let words = self.words;
        let say = |found: Vec<(u8, u8)>, key: &str, none: Option<&str>| -> Result<Option<String>, PaperError> {
            if found.is_empty() {
                return none.map(|none| words.message(none).map(str::to_owned)).transpose();
            }
            words.fill(key, &[("hours", &self.stretch_words(&found)?)]).map(Some)
        };
        let often = stretches(hours, |hour| hour.above_share().is_some_and(|share| share >= 0.5));
        let seldom = stretches(hours, |hour| hour.above_share().is_some_and(|share| share <= 0.1));
        let unknown = stretches(hours, |hour| hour.days == 0);
        let lines = [
            say(often, "pour.weather.often", Some("pour.weather.often_none"))?,
            say(seldom, "pour.weather.seldom", Some("pour.weather.seldom_none"))?,
            say(unknown, "pour.weather.unknown", None)?,
        ];
        Ok(lines.into_iter().flatten().collect())
    }

    fn stretch_words(&self, found: &[(u8, u8)]) -> Result<String, PaperError> {
        let words = self.words;
        let to = words.message("to")?;
        let each: Result<Vec<String>, PaperError> = found
            .iter()
            .map(|(start, end)| Ok(format!("{} {to} {}", show::hour(words, *start)?, show::hour(words, *end)?)))
            .collect();
        Ok(each?.join(", "))
    }

    fn estimate(&self, weather: &PourWeather, error: &str) -> Result<String, PaperError> {
        let words = self.words;
        let month = capital(show::month(words, weather.month)?);
        let basis = words.message(match weather.basis {
            WeatherBasis::TypicalYear => "pour.weather.basis_typical",
            WeatherBasis::Recorded => "pour.weather.basis_recorded",
        })?;
        let concrete = format!("{} °F", show::number(weather.concrete.as_fahrenheit(), 0));
        let with = [
            ("error", error),
            ("month", month.as_str()),
            ("place", weather.place.as_str()),
            ("basis", basis),
            ("concrete", concrete.as_str()),
        ];
        words.fill("pour.weather.estimate", &with)
    }
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
