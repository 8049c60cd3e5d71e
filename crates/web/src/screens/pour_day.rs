//! How fast the fresh slab would lose water, hour by hour on the day of the pour.

use std::sync::Arc;

use askama::Template;
use axum::Router;
use jiff::Timestamp;
use jiff::civil::Date;
use jiff::tz::TimeZone;
use localization::Locale;
use pictures::{AlarmLine, EvaporationChart, EvaporationHour, Look, RateBand, evaporation_chart};
use slab_answers::pour_day::{
    Basis, CannotTell, EvaporationMoment, FACTS, Level, PourDay, PourHour, evaporation_at, pour_day,
};
use slab_diary::Knowledge;
use slab_diary::{Slab, fold};
use trade_facts::{Record, Trade};

use crate::app::App;
use crate::chart_section::{Charted, DESK_UNITS, evidence, hour, source};
use crate::context::{Answer, RequestContext, page};
use crate::frame::{Frame, NavLink, show};
use crate::visitor::Permission;

pub(super) fn routes() -> Router<Arc<App>> {
    Router::new().route("/slab/{slab}/pour-day", page(Permission::Read, shown)).merge(super::air_record::routes())
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
    step: Option<NavLink>,
    chart: Option<Charted>,
    hours: Vec<HourRow>,
    assumed: Vec<String>,
    evidence: Vec<(String, String)>,
}

/// What is said of the last air reading.
struct Moment {
    said: String,
    assumed: Vec<String>,
    step: Option<NavLink>,
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

fn shown(context: &RequestContext) -> Answer {
    let opened = context.opened()?;
    let (locale, trade) = (context.locale(), Trade::built_in());
    let at = context.app.asked_at(opened.record.id);
    let slab = fold(&opened.diary, Knowledge::noted_by(at));
    let id = opened.record.id.to_string();
    let typed = context.query.first("day").map(str::trim).filter(|text| !text.is_empty());
    let asked: Option<Date> = typed.and_then(|text| text.parse().ok());
    let day_mistake =
        typed.filter(|_| asked.is_none()).map(|text| locale.message("pour-day-mistake", &[("typed", text.into())]));
    let told = pour_day(&slab, trade, asked);
    let day = match (&told, typed) {
        (_, Some(typed)) => typed.to_owned(),
        (Ok(day), None) => day.day.to_string(),
        (Err(_), None) => String::new(),
    };
    let today = at.to_zoned_datetime(opened.zone.clone()).date();
    let mut said = match &told {
        Ok(told) => day_said(told, &slab, &id, today, locale),
        Err(why) => cannot(why, &id, locale),
    };
    let mut moment = moment(evaporation_at(&slab, trade, None), &id, &opened.zone, locale);
    if context.visitor.permission < Permission::Write {
        said.step = None;
        moment.step = None;
    }
    let fact = |fact: &&str| {
        let fact = trade.fact(fact)?;
        Some(format!(
            "{} {}",
            fact_said(&fact.id, told.as_ref().ok(), locale)?,
            source(&fact.citation(), trade, locale)
        ))
    };
    Ok(show(&Page {
        frame: context.frame(locale.message("way-pour-day", &[])).about(context, &opened.record, &opened.zone),
        said,
        day,
        day_mistake,
        moment,
        sources: FACTS.iter().filter_map(fact).collect(),
        formula: science::air::MENZEL.document,
        formula_grade: locale.message("grade-from-memory", &[]),
    }))
}

/// A figure that the answer used, with its value.
fn fact_said(fact: &str, told: Option<&PourDay>, locale: Locale) -> Option<String> {
    let told = told?;
    let (key, value) = match fact {
        "evaporation-alarm" => ("pour-day-fact-alarm", locale.evaporation(told.alarms.usual)),
        "evaporation-alarm-silica-fume" => ("pour-day-fact-silica-fume", locale.evaporation(told.alarms.silica_fume)),
        "pour-concrete-temperature" => ("pour-day-fact-concrete", locale.temperature(told.concrete.temperature)),
        "wind-at-slab" => ("pour-day-fact-wind", locale.percent(told.wind_factor * 100.0)),
        _ => return None,
    };
    Some(locale.message(key, &[("value", value.into())]))
}

fn way(href: String, key: &'static str, locale: Locale) -> NavLink {
    NavLink { href, label: locale.message(key, &[]), here: false }
}

fn cannot(why: &CannotTell, id: &str, locale: Locale) -> Said {
    let step = match why {
        CannotTell::NoDay => way(format!("/slab/{id}/add/pour"), "drying-do-pour", locale),
        CannotTell::NoSeries | CannotTell::DayNotCovered { .. } => {
            way(format!("/slab/{id}/air-record"), "drying-do-air", locale)
        }
        CannotTell::NoAirReading | CannotTell::ReadingLacks { .. } | CannotTell::Series(_) => air_step(id, locale),
    };
    Said {
        answer: locale.message("pour-day-answer-cannot", &[]),
        more: vec![locale.pour_day_cannot_tell(why)],
        step: Some(step),
        ..Said::default()
    }
}

fn air_step(id: &str, locale: Locale) -> NavLink {
    way(format!("/slab/{id}/add/air_reading"), "pour-day-do-air", locale)
}

fn day_said(told: &PourDay, slab: &Slab<'_>, id: &str, today: Date, locale: Locale) -> Said {
    let zone = slab.time_zone();
    let known = told.hours.iter().filter(|h| h.evaporation.is_some()).count();
    let usual = |level: Level| move |h: &PourHour| h.evaporation.is_some_and(|e| e.usual == level);
    let (above, possible) = (told.stretches(usual(Level::Above)), told.stretches(usual(Level::Possible)));
    let day = day_of(told, locale);
    let sentence = |key: &'static str, times: &[(Timestamp, Timestamp)]| {
        let times = stretches(times, &zone, locale);
        locale.message(key, &[("times", times.into()), ("day", day.as_str().into())])
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
        more.push(locale.message(if past { "pour-day-look-back" } else { "pour-day-protect" }, &[]));
    }
    let fume = told.stretches(|h| h.evaporation.is_some_and(|e| e.silica_fume != Level::Below));
    if !fume.is_empty() {
        more.push(sentence("pour-day-silica-fume", &fume));
    }
    let step = match (known, past, risky) {
        (0, ..) => Some(way(format!("/slab/{id}/air-record"), "drying-do-air", locale)),
        (_, true, true) => Some(way(format!("/slab/{id}/add/defect"), "pour-day-do-crack", locale)),
        (_, true, false) => None,
        (_, false, _) => Some(air_step(id, locale)),
    };
    Said {
        answer,
        more,
        step,
        chart: Some(chart(told, &zone, locale)),
        hours: told.hours.iter().map(|h| row(h, &zone, locale)).collect(),
        assumed: told.assumptions.iter().map(|a| locale.pour_day_assumption(a)).collect(),
        evidence: evidence(&told.evidence, slab, id, locale),
    }
}

/// The day; of a typical year it is such a day, never that date.
fn day_of(told: &PourDay, locale: Locale) -> String {
    match told.basis {
        Basis::Recorded => locale.message("pour-day-on", &[("date", locale.date(told.day).into())]),
        Basis::TypicalYear => {
            let month = locale.month(told.day);
            let args = [("month", month.into()), ("day", told.day.day().to_string().into())];
            locale.message("pour-day-typical", &args)
        }
    }
}

/// Times of the day in words: `from 11 AM to 4 PM and from 6 PM to 7 PM`.
fn stretches(times: &[(Timestamp, Timestamp)], zone: &TimeZone, locale: Locale) -> String {
    let clock = |at: Timestamp| hour(at.to_zoned_datetime(zone.clone()).datetime(), locale);
    let one = |(from, to): &(Timestamp, Timestamp)| {
        locale.message("pour-day-stretch", &[("from", clock(*from).into()), ("to", clock(*to).into())])
    };
    locale.list(&times.iter().map(one).collect::<Vec<_>>())
}

fn chart(told: &PourDay, zone: &TimeZone, locale: Locale) -> Charted {
    let hours = told.hours.iter().map(|h| EvaporationHour {
        from: h.begins.to_zoned_datetime(zone.clone()).datetime(),
        rate: h.evaporation.map(|e| RateBand { low: e.estimate.low(), rate: e.estimate.rate, high: e.estimate.high() }),
    });
    let alarm = |rate, key: &'static str| AlarmLine { rate, label: locale.message(key, &[]) };
    let title = locale.message("pour-day-chart", &[("day", day_of(told, locale).into())]);
    let drawn = EvaporationChart {
        look: Look::new("air", &title, locale),
        hours: hours.collect(),
        alarms: vec![
            alarm(told.alarms.usual, "pour-day-line-usual"),
            alarm(told.alarms.silica_fume, "pour-day-line-silica-fume"),
        ],
    };
    let desk = Look::new("air-desk", &title, locale).wide(DESK_UNITS);
    let wide = evaporation_chart(&EvaporationChart { look: desk, ..drawn.clone() });
    // The table below tells the same hours with their weather.
    let both = Charted::new(&title, evaporation_chart(&drawn)).with_wide(wide);
    let mut charted = Charted { rows: Vec::new(), ..both };
    if told.basis == Basis::TypicalYear {
        // Such a day, never that date: what names the date is said without it.
        let year = told.day.year().to_string();
        charted.sentences.retain(|said| !said.contains(&year));
        charted.sentences.splice(0..0, highest(told, zone, locale));
    }
    charted
}

fn highest(told: &PourDay, zone: &TimeZone, locale: Locale) -> Option<String> {
    let worst = told.worst()?;
    let at = hour(worst.begins.to_zoned_datetime(zone.clone()).datetime(), locale);
    let rate = locale.evaporation(worst.evaporation?.estimate.rate);
    Some(locale.message("pour-day-highest", &[("hour", at.into()), ("rate", rate.into())]))
}

fn row(hour_of: &PourHour, zone: &TimeZone, locale: Locale) -> HourRow {
    let dash = || "–".to_owned();
    let (rate, level) = match hour_of.evaporation {
        Some(found) => {
            let span =
                locale.range(&locale.evaporation(found.estimate.low()), &locale.evaporation(found.estimate.high()));
            let rate = locale.evaporation(found.estimate.rate);
            (format!("{rate} ({span})"), locale.evaporation_level(found.usual))
        }
        None => (dash(), locale.message("pour-day-not-known", &[])),
    };
    HourRow {
        hour: hour(hour_of.begins.to_zoned_datetime(zone.clone()).datetime(), locale),
        air: hour_of.air.map_or_else(dash, |t| locale.temperature(t)),
        humidity: hour_of.humidity.map_or_else(dash, |h| locale.humidity(h)),
        wind: hour_of.wind_at_slab.map_or_else(dash, |w| locale.speed(w)),
        rate,
        level,
    }
}

fn moment(found: Result<EvaporationMoment, CannotTell>, id: &str, zone: &TimeZone, locale: Locale) -> Moment {
    match found {
        Ok(found) => {
            let estimate = found.evaporation.estimate;
            let span = locale.range(&locale.evaporation(estimate.low()), &locale.evaporation(estimate.high()));
            let args = [
                ("moment", locale.moment(found.at, zone).into()),
                ("rate", locale.evaporation(estimate.rate).into()),
                ("span", span.into()),
                ("level", locale.evaporation_level(found.evaporation.usual).into()),
            ];
            Moment {
                said: locale.message("pour-day-moment", &args),
                assumed: found.assumptions.iter().map(|a| locale.pour_day_assumption(a)).collect(),
                step: None,
            }
        }
        Err(why) => {
            Moment { said: locale.pour_day_cannot_tell(&why), assumed: Vec::new(), step: Some(air_step(id, locale)) }
        }
    }
}
