//! When the slab is likely to be dry: the forecast, what it took for granted, and how far it is.

use std::sync::Arc;

use askama::Template;
use axum::Router;
use axum::response::IntoResponse;
use localization::Locale;
use pictures::{BandPoint, DryingChart, LimitLine, Look, ReadingPoint, drying_chart};
use serde_json::json;
use slab_answers::drying::{
    Band, BandDay, CannotTell, Caution, DryingForecast, Limit, LimitFrom, RestsOn, Unexplained,
};
use slab_answers::standing::{HoldPointId, judge};
use slab_diary::Knowledge;
use slab_diary::{Slab, fold};
use trade_facts::Trade;
use units::{Duration, HumidityDifference};

use crate::app::App;
use crate::chart_section::{Charted, DESK_UNITS, evidence, source};
use crate::context::{Answer, RequestContext, page};
use crate::entries::Opened;
use crate::forecast::{Begun, Waiting, begin, governing, said, slab_of, stage};
use crate::frame::{Frame, NavLink, show};
use crate::page_error::PageError;
use crate::visitor::Permission;

pub(super) fn routes() -> Router<Arc<App>> {
    Router::new()
        .route("/slab/{slab}/drying", page(Permission::Read, shown))
        .route("/work/{name}", page(Permission::Read, progress))
}

/// A limit with its dates.
struct LimitRow {
    limit: String,
    early: String,
    middle: String,
    late: String,
}

/// What the page says, with or without a forecast.
#[derive(Default)]
struct Said {
    answer: String,
    more: Vec<String>,
    care: Option<String>,
    step: Option<NavLink>,
    waiting: Option<Waiting>,
    chart: Option<Charted>,
    before: Option<Charted>,
    limits: Vec<LimitRow>,
    rule: Option<String>,
    rests: Option<String>,
    assumed: Vec<String>,
    mind: Vec<String>,
    /// Link, what was read, and why it was left out.
    left_out: Vec<(String, String, String)>,
    evidence: Vec<(String, String)>,
}

#[derive(Template)]
#[template(path = "drying.html")]
struct Page {
    frame: Frame,
    said: Said,
    why: String,
    sources: Vec<String>,
    model: &'static str,
    model_grade: String,
}

fn shown(context: &RequestContext) -> Answer {
    let opened = context.opened()?;
    let (locale, trade) = (context.locale(), Trade::built_in());
    let slab = fold(&opened.diary, Knowledge::noted_by(context.app.asked_at(opened.record.id)));
    let id = opened.record.id.to_string();
    let mut said = match begin(&context.app, &opened, &slab, trade) {
        Ok(begun) => told(&begun, &opened, &slab, locale),
        Err(why) => cannot(why, &id, locale),
    };
    said.step = said.step.filter(|_| context.visitor.permission >= Permission::Write);
    let moisture = judge(&slab, trade).hold_point(HoldPointId::Moisture).citation.clone();
    Ok(show(&Page {
        frame: context.frame(locale.message("way-drying", &[])).about(context, &opened.record, &opened.zone),
        said,
        why: locale
            .message("standing-if-ignored", &[("consequence", locale.consequence(HoldPointId::Moisture).into())]),
        sources: vec![source(&moisture, trade, locale)],
        model: science::moisture::DRYING_PRIOR.document,
        model_grade: locale.message("grade-from-memory", &[]),
    }))
}

fn way(href: String, key: &'static str, locale: Locale) -> NavLink {
    NavLink { href, label: locale.message(key, &[]), here: false }
}

/// Why there is no forecast, and the form that puts it right.
fn cannot(why: CannotTell, id: &str, locale: Locale) -> Said {
    let step = match why {
        CannotTell::NoPour => way(format!("/slab/{id}/add/pour"), "drying-do-pour", locale),
        CannotTell::NoThickness { pour }
        | CannotTell::NoWaterCement { pour }
        | CannotTell::ThicknessOutside { pour, .. }
        | CannotTell::WaterCementOutside { pour, .. } => {
            way(format!("/slab/{id}/fix/{pour}"), "drying-do-fix-pour", locale)
        }
        CannotTell::OutdoorsNoAir => way(format!("/slab/{id}/air-record"), "drying-do-air", locale),
        CannotTell::ExistingFloor => read_step(id, locale),
    };
    Said {
        answer: locale.message("drying-answer-cannot", &[]),
        more: vec![locale.drying_cannot_tell(&why)],
        step: Some(step),
        care: Some(locale.drying_caution(Caution::ForecastNeverReleases)),
        ..Said::default()
    }
}

fn read_step(id: &str, locale: Locale) -> NavLink {
    way(format!("/slab/{id}/add/slab_humidity"), "drying-do-read", locale)
}

/// What can be said before the forecast is there, and the forecast when it is.
fn told(begun: &Begun, opened: &Opened, slab: &Slab<'_>, locale: Locale) -> Said {
    let id = opened.record.id.to_string();
    let question = &begun.question;
    let left_out = question.left_out.iter().map(|reading| {
        let day = reading.at.to_zoned_datetime(question.zone.clone()).date();
        let read = format!("{}: {}", locale.date(day), locale.humidity(reading.humidity));
        (format!("/slab/{id}/entry/{}", reading.entry), read, locale.reading_left_out(reading.why))
    });
    let mut page = Said {
        step: Some(read_step(&id, locale)),
        care: Some(locale.drying_caution(Caution::ForecastNeverReleases)),
        assumed: question.assumptions.iter().map(|a| locale.drying_assumption(a)).collect(),
        left_out: left_out.collect(),
        evidence: evidence(&question.evidence, slab, &id, locale),
        ..Said::default()
    };
    match begun.soon().as_deref() {
        Some(Ok(forecast)) => fill(&mut page, begun, forecast, &id, locale),
        Some(Err(error)) => {
            page.answer = locale.message("drying-answer-failed", &[]);
            page.more = vec![error.to_string()];
        }
        None if begun.work.is_broken() => page.answer = locale.message("drying-answer-failed", &[]),
        None => {
            page.answer = locale.message("drying-answer-working", &[]);
            page.waiting = Some(Waiting::of(begun, locale));
        }
    }
    page
}

fn fill(page: &mut Said, begun: &Begun, forecast: &DryingForecast, id: &str, locale: Locale) {
    let question = &begun.question;
    page.answer = said(forecast, question, begun.today(), locale);
    if let Some(why) = &forecast.unexplained {
        page.more.push(locale.unexplained(why));
        if let Unexplained::Reading { entry, .. } = why {
            page.step = Some(way(format!("/slab/{id}/entry/{entry}"), "drying-do-look", locale));
        }
    } else if let Some(limit) = governing(forecast) {
        page.more.push(format!("{}.", locale.drying_limit(&limit.limit)));
        page.rule = limit.rule.map(|check| locale.rule_check(check));
    }
    let past = || locale.message("drying-past", &[]);
    page.limits = forecast
        .limits
        .iter()
        .filter_map(|limit| {
            let dates = forecast.dates(limit)?;
            let [early, middle, late] =
                [dates.p10, dates.p50, dates.p90].map(|d| d.map_or_else(past, |d| locale.date(d.date)));
            Some(LimitRow { limit: locale.drying_limit(&limit.limit), early, middle, late })
        })
        .collect();
    page.rests = Some(locale.rests_on(forecast.rests_on));
    // That a forecast releases nothing stands beside the answer already.
    let mind = forecast.cautions.iter().filter(|c| **c != Caution::ForecastNeverReleases);
    page.mind = mind.map(|c| locale.drying_caution(*c)).collect();
    let weighed = forecast.rests_on == RestsOn::Readings;
    let title = locale.message(if weighed { "drying-chart-readings" } else { "drying-chart-mix" }, &[]);
    page.chart = Some(chart("dry", title, begun, forecast, weighed, locale));
    page.before = weighed
        .then(|| chart("dry-before", locale.message("drying-chart-before", &[]), begun, forecast, false, locale));
}

/// The chart with the band that the readings narrowed, or the one before.
fn chart(
    prefix: &str,
    title: String,
    begun: &Begun,
    forecast: &DryingForecast,
    weighed: bool,
    locale: Locale,
) -> Charted {
    let question = &begun.question;
    let point = |day: &BandDay| {
        let Band { p10, p50, p90 } = if weighed { day.after_readings? } else { day.before_readings };
        Some(BandPoint { since: day.day, p10, p50, p90 })
    };
    let readings = forecast.points.iter().filter(|p| p.weighed).map(|p| ReadingPoint {
        since: p.day,
        humidity: p.humidity,
        error: Some(HumidityDifference::points(p.humidity.as_percent() - p.low.as_percent())),
    });
    let mut limits: Vec<LimitLine> = Vec::new();
    for limit in &question.limits {
        let line = LimitLine { humidity: limit.humidity, label: limit_name(limit, locale) };
        if !limits.contains(&line) {
            limits.push(line);
        }
    }
    let cure = question.drying_from.duration_since(question.poured).as_secs_f64();
    let drawn = DryingChart {
        look: Look::new(prefix, &title, locale),
        poured: question.date(Duration::ZERO),
        today: Some(begun.today()),
        band: forecast.bands.iter().filter_map(point).collect(),
        readings: readings.collect(),
        limits: limits.clone(),
        month_per_inch: forecast.rule_of_thumb.map(|rule| Duration::seconds(cure) + rule.wait),
    };
    let desk = Look::new(&format!("{prefix}-desk"), &title, locale).wide(DESK_UNITS);
    let wide = drying_chart(&DryingChart { look: desk, ..drawn.clone() });
    let mut charted = Charted::new(&title, drying_chart(&drawn)).with_wide(wide);
    // The chart reads its dates off a coarse band; the table of limits has them to the day. That it
    // proves nothing stands beside the answer.
    let coarse = |said: &String| {
        let of_limit = |line: &LimitLine| {
            let named = [("name", line.label.as_str().into()), ("value", locale.humidity(line.humidity).into())];
            said.starts_with(&locale.message("pic-named", &named))
        };
        limits.iter().any(of_limit) || *said == locale.message("pic-drying-not-proof", &[])
    };
    charted.sentences.retain(|said| !coarse(said));
    charted
}

/// The name of a limit beside its line.
fn limit_name(limit: &Limit, locale: Locale) -> String {
    match &limit.from {
        LimitFrom::Maker { sealer, .. } | LimitFrom::Class { sealer, .. } => locale.term(sealer),
        LimitFrom::NoSealerBreathing => locale.message("drying-line-breathing", &[]),
        LimitFrom::NoSealerFilm => locale.message("drying-line-film", &[]),
    }
}

/// How far a piece of work is, for the script that waits.
fn progress(context: &RequestContext) -> Answer {
    let name = context.part("name");
    let slab = slab_of(name).ok_or(PageError::NotFound)?;
    context.app.store().slab_record(slab)?.ok_or(PageError::NotFound)?;
    let locale = context.locale();
    if let Some(work) = context.app.works.known_looks(name) {
        let (share, done) = (work.share(), work.answer().is_some() || work.is_broken());
        return Ok(axum::Json(json!({ "done": done, "share": share, "said": locale.message("photos-working", &[]) }))
            .into_response());
    }
    let answer = match context.app.works.known_forecast(name) {
        Some(work) => {
            let share = work.share();
            let done = work.answer().is_some() || work.is_broken();
            json!({ "done": done, "share": share, "said": stage(share, locale) })
        }
        // Begun before this server was: the page is to load again, and begins it anew.
        None => json!({ "done": true, "share": 1.0, "said": "" }),
    };
    Ok(axum::Json(answer).into_response())
}
