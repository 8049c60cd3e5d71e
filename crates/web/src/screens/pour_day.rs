//! How fast the fresh slab would lose water, hour by hour on the day of the pour.

use std::sync::Arc;

use askama::Template;
use axum::Router;
use jiff::Timestamp;
use jiff::civil::Date;
use jiff::tz::TimeZone;
use pictures::{AlarmLine, EvaporationChart, EvaporationHour, Look, RateBand, evaporation_chart};
use slab::diary::Knowledge;
use slab::pour_day::{Basis, CannotTell, EvaporationMoment, FACTS, Level, PourDay, PourHour, evaporation_at, pour_day};
use slab::slab::{Slab, fold};
use slab::trade::{Record, Trade};
use words::Voice;

use crate::app::App;
use crate::ask::{Answer, Ask, page};
use crate::charted::{Charted, evidence, hour, source};
use crate::frame::{Frame, Way, show};
use crate::visitor::May;

pub(super) fn routes() -> Router<Arc<App>> {
    Router::new().route("/slab/{slab}/pour-day", page(May::Read, shown)).merge(super::air_record::routes())
}

/// One hour in words.
struct HourRow {
    hour: String,
    air: String,
    humidity: String,
    wind: String,
    rate: String,
    level: String,
}

/// What is said of the day.
#[derive(Default)]
struct Said {
    answer: String,
    more: Vec<String>,
    step: Option<Way>,
    chart: Option<Charted>,
    hours: Vec<HourRow>,
    assumed: Vec<String>,
    evidence: Vec<(String, String)>,
}

/// What is said of the last air reading.
struct Moment {
    said: String,
    assumed: Vec<String>,
    step: Option<Way>,
}

#[derive(Template)]
#[template(path = "pour_day.html")]
struct Page {
    frame: Frame,
    said: Said,
    day: String,
    day_mistake: Option<String>,
    moment: Moment,
    sources: Vec<String>,
    formula: &'static str,
    formula_grade: String,
}

fn shown(ask: &Ask) -> Answer {
    let opened = ask.opened()?;
    let (voice, trade) = (ask.voice(), Trade::built_in());
    let at = ask.app.asked_at(opened.record.id);
    let slab = fold(&opened.diary, Knowledge::noted_by(at));
    let id = opened.record.id.to_string();
    let typed = ask.query.first("day").map(str::trim).filter(|text| !text.is_empty());
    let asked: Option<Date> = typed.and_then(|text| text.parse().ok());
    let day_mistake =
        typed.filter(|_| asked.is_none()).map(|text| voice.say("pour-day-mistake", &[("typed", text.into())]));
    let told = pour_day(&slab, trade, asked);
    let day = match (&told, typed) {
        (_, Some(typed)) => typed.to_owned(),
        (Ok(day), None) => day.day.to_string(),
        (Err(_), None) => String::new(),
    };
    let today = at.to_zoned_datetime(opened.zone.clone()).date();
    let mut said = match &told {
        Ok(told) => day_said(told, &slab, &id, today, voice),
        Err(why) => cannot(why, &id, voice),
    };
    let mut moment = moment(evaporation_at(&slab, trade, None), &id, &opened.zone, voice);
    if ask.visitor.may < May::Write {
        said.step = None;
        moment.step = None;
    }
    let fact = |fact: &&str| {
        let fact = trade.fact(fact)?;
        Some(format!("{} {}", fact_said(&fact.id, told.as_ref().ok(), voice)?, source(&fact.citation(), trade, voice)))
    };
    Ok(show(&Page {
        frame: ask.frame(voice.say("way-pour-day", &[])).about(ask, &opened.record, &opened.zone),
        said,
        day,
        day_mistake,
        moment,
        sources: FACTS.iter().filter_map(fact).collect(),
        formula: science::air::MENZEL.document,
        formula_grade: voice.say("grade-from-memory", &[]),
    }))
}

/// A figure that the answer used, with its value.
fn fact_said(fact: &str, told: Option<&PourDay>, voice: Voice) -> Option<String> {
    let told = told?;
    let (key, value) = match fact {
        "evaporation-alarm" => ("pour-day-fact-alarm", voice.evaporation(told.alarms.usual)),
        "evaporation-alarm-silica-fume" => ("pour-day-fact-silica-fume", voice.evaporation(told.alarms.silica_fume)),
        "pour-concrete-temperature" => ("pour-day-fact-concrete", voice.temperature(told.concrete.temperature)),
        "wind-at-slab" => ("pour-day-fact-wind", voice.percent(told.wind_factor * 100.0)),
        _ => return None,
    };
    Some(voice.say(key, &[("value", value.into())]))
}

fn way(href: String, key: &str, voice: Voice) -> Way {
    Way { href, label: voice.say(key, &[]), here: false }
}

fn cannot(why: &CannotTell, id: &str, voice: Voice) -> Said {
    let step = match why {
        CannotTell::NoDay => way(format!("/slab/{id}/add/pour"), "drying-do-pour", voice),
        CannotTell::NoSeries | CannotTell::DayNotCovered { .. } => {
            way(format!("/slab/{id}/air-record"), "drying-do-air", voice)
        }
        CannotTell::NoAirReading | CannotTell::ReadingLacks { .. } | CannotTell::Series(_) => air_step(id, voice),
    };
    Said {
        answer: voice.say("pour-day-answer-cannot", &[]),
        more: vec![voice.pour_day_cannot_tell(why)],
        step: Some(step),
        ..Said::default()
    }
}

fn air_step(id: &str, voice: Voice) -> Way {
    way(format!("/slab/{id}/add/air_reading"), "pour-day-do-air", voice)
}

fn day_said(told: &PourDay, slab: &Slab<'_>, id: &str, today: Date, voice: Voice) -> Said {
    let zone = slab.time_zone();
    let known = told.hours.iter().filter(|h| h.evaporation.is_some()).count();
    let usual = |level: Level| move |h: &PourHour| h.evaporation.is_some_and(|e| e.usual == level);
    let (above, possible) = (told.stretches(usual(Level::Above)), told.stretches(usual(Level::Possible)));
    let day = day_of(told, voice);
    let sentence = |key: &str, times: &[(Timestamp, Timestamp)]| {
        let times = stretches(times, &zone, voice);
        voice.say(key, &[("times", times.into()), ("day", day.as_str().into())])
    };
    let answer = match (above.is_empty(), possible.is_empty()) {
        _ if known == 0 => sentence("pour-day-answer-unknown", &[]),
        (false, _) => sentence("pour-day-answer-above", &above),
        (true, false) => sentence("pour-day-answer-possible", &possible),
        (true, true) if known < told.hours.len() => sentence("pour-day-answer-below-known", &[]),
        (true, true) => sentence("pour-day-answer-below", &[]),
    };
    let risky = !above.is_empty() || !possible.is_empty();
    let past = told.day < today;
    let mut more = Vec::new();
    if !above.is_empty() && !possible.is_empty() {
        more.push(sentence("pour-day-also-possible", &possible));
    }
    if risky {
        more.push(voice.say(if past { "pour-day-look-back" } else { "pour-day-protect" }, &[]));
    }
    let fume = told.stretches(|h| h.evaporation.is_some_and(|e| e.silica_fume != Level::Below));
    if !fume.is_empty() {
        more.push(sentence("pour-day-silica-fume", &fume));
    }
    let step = match (known, past, risky) {
        (0, ..) => Some(way(format!("/slab/{id}/air-record"), "drying-do-air", voice)),
        (_, true, true) => Some(way(format!("/slab/{id}/add/defect"), "pour-day-do-crack", voice)),
        (_, true, false) => None,
        (_, false, _) => Some(air_step(id, voice)),
    };
    Said {
        answer,
        more,
        step,
        chart: Some(chart(told, &zone, voice)),
        hours: told.hours.iter().map(|h| row(h, &zone, voice)).collect(),
        assumed: told.assumptions.iter().map(|a| voice.pour_day_assumption(a)).collect(),
        evidence: evidence(&told.evidence, slab, id, voice),
    }
}

/// The day; of a typical year it is such a day, never that date.
fn day_of(told: &PourDay, voice: Voice) -> String {
    match told.basis {
        Basis::Recorded => voice.say("pour-day-on", &[("date", voice.date(told.day).into())]),
        Basis::TypicalYear => {
            let month = voice.say(&format!("month-{}", told.day.month()), &[]);
            let args = [("month", month.into()), ("day", told.day.day().to_string().into())];
            voice.say("pour-day-typical", &args)
        }
    }
}

/// Times of the day in words: `from 11 AM to 4 PM and from 6 PM to 7 PM`.
fn stretches(times: &[(Timestamp, Timestamp)], zone: &TimeZone, voice: Voice) -> String {
    let clock = |at: Timestamp| hour(at.to_zoned_datetime(zone.clone()).datetime(), voice);
    let one = |(from, to): &(Timestamp, Timestamp)| {
        voice.say("pour-day-stretch", &[("from", clock(*from).into()), ("to", clock(*to).into())])
    };
    voice.list(&times.iter().map(one).collect::<Vec<_>>())
}

fn chart(told: &PourDay, zone: &TimeZone, voice: Voice) -> Charted {
    let hours = told.hours.iter().map(|h| EvaporationHour {
        from: h.begins.to_zoned_datetime(zone.clone()).datetime(),
        rate: h.evaporation.map(|e| RateBand { low: e.estimate.low(), rate: e.estimate.rate, high: e.estimate.high() }),
    });
    let alarm = |rate, key: &str| AlarmLine { rate, label: voice.say(key, &[]) };
    let title = voice.say("pour-day-chart", &[("day", day_of(told, voice).into())]);
    let drawing = evaporation_chart(&EvaporationChart {
        look: Look::new("air", &title, voice),
        hours: hours.collect(),
        alarms: vec![
            alarm(told.alarms.usual, "pour-day-line-usual"),
            alarm(told.alarms.silica_fume, "pour-day-line-silica-fume"),
        ],
    });
    // The table below tells the same hours with their weather.
    let mut charted = Charted { rows: Vec::new(), ..Charted::new(&title, drawing) };
    if told.basis == Basis::TypicalYear {
        // Such a day, never that date: what names the date is said without it.
        let year = told.day.year().to_string();
        charted.sentences.retain(|said| !said.contains(&year));
        charted.sentences.splice(0..0, highest(told, zone, voice));
    }
    charted
}

fn highest(told: &PourDay, zone: &TimeZone, voice: Voice) -> Option<String> {
    let worst = told.worst()?;
    let at = hour(worst.begins.to_zoned_datetime(zone.clone()).datetime(), voice);
    let rate = voice.evaporation(worst.evaporation?.estimate.rate);
    Some(voice.say("pour-day-highest", &[("hour", at.into()), ("rate", rate.into())]))
}

fn row(hour_of: &PourHour, zone: &TimeZone, voice: Voice) -> HourRow {
    let dash = || "–".to_owned();
    let (rate, level) = match hour_of.evaporation {
        Some(found) => {
            let span = voice.range(&voice.evaporation(found.estimate.low()), &voice.evaporation(found.estimate.high()));
            let rate = voice.evaporation(found.estimate.rate);
            (format!("{rate} ({span})"), voice.evaporation_level(found.usual))
        }
        None => (dash(), voice.say("pour-day-not-known", &[])),
    };
    HourRow {
        hour: hour(hour_of.begins.to_zoned_datetime(zone.clone()).datetime(), voice),
        air: hour_of.air.map_or_else(dash, |t| voice.temperature(t)),
        humidity: hour_of.humidity.map_or_else(dash, |h| voice.humidity(h)),
        wind: hour_of.wind_at_slab.map_or_else(dash, |w| voice.speed(w)),
        rate,
        level,
    }
}

fn moment(found: Result<EvaporationMoment, CannotTell>, id: &str, zone: &TimeZone, voice: Voice) -> Moment {
    match found {
        Ok(found) => {
            let estimate = found.evaporation.estimate;
            let span = voice.range(&voice.evaporation(estimate.low()), &voice.evaporation(estimate.high()));
            let args = [
                ("moment", voice.moment(found.at, zone).into()),
                ("rate", voice.evaporation(estimate.rate).into()),
                ("span", span.into()),
                ("level", voice.evaporation_level(found.evaporation.usual).into()),
            ];
            Moment {
                said: voice.say("pour-day-moment", &args),
                assumed: found.assumptions.iter().map(|a| voice.pour_day_assumption(a)).collect(),
                step: None,
            }
        }
        Err(why) => {
            Moment { said: voice.pour_day_cannot_tell(&why), assumed: Vec::new(), step: Some(air_step(id, voice)) }
        }
    }
}
