//! From the pour to the hand-over: what happened, what the calendar sets, and when the rest is likely.

use std::sync::Arc;

use askama::Template;
use axum::Router;
use jiff::ToSpan;
use jiff::civil::Date;
use localization::Locale;
use pictures::{Drawing, ForecastSpan, Happened, Look, Milestone, TimeLine, time_line};
use slab_answers::drying::{Caution, DryingForecast};
use slab_answers::standing::{Code, HoldPointId, Reason, judge};
use slab_diary::Knowledge;
use slab_diary::body::Pour;
use slab_diary::{Figures, Slab, fold};
use trade_facts::{Record, Trade};

use crate::app::App;
use crate::chart_section::{Charted, source};
use crate::context::{Answer, RequestContext, page};
use crate::forecast::{Begun, Waiting, begin, governing, said};
use crate::frame::{Frame, NavLink, show};
use crate::time_line_rows::happened;
use crate::visitor::Permission;

/// Units across the line at a desk: wide enough for what is said beside it, in one line mostly.
const DESK: f64 = 600.0;

pub(super) fn routes() -> Router<Arc<App>> {
    Router::new().route("/slab/{slab}/time", page(Permission::Read, shown))
}

#[derive(Template)]
#[template(path = "time_line.html")]
struct Page {
    frame: Frame,
    answer: String,
    more: Vec<String>,
    waiting: Option<Waiting>,
    care: Option<String>,
    step: NavLink,
    line: Option<Charted>,
    sources: Vec<String>,
}

fn shown(context: &RequestContext) -> Answer {
    let opened = context.opened()?;
    let (locale, trade) = (context.locale(), Trade::built_in());
    let slab = fold(&opened.diary, Knowledge::noted_by(context.app.asked_at(opened.record.id)));
    let id = opened.record.id.to_string();
    let today = today(&slab);
    let mut more = Vec::new();
    let (mut waiting, mut care) = (None, None);
    let begun = begin(&context.app, &opened, &slab, trade);
    let found = begun.as_ref().ok().and_then(Begun::soon);
    let forecast = found.as_deref().and_then(|found| found.as_ref().ok());
    match (&begun, forecast) {
        (Ok(begun), Some(forecast)) => {
            more.push(said(forecast, &begun.question, today, locale));
            care = Some(locale.drying_caution(Caution::ForecastNeverReleases));
        }
        (Ok(_), None) if found.is_some() => more.push(locale.message("drying-answer-failed", &[])),
        (Ok(begun), None) if begun.work.is_broken() => more.push(locale.message("drying-answer-failed", &[])),
        (Ok(begun), None) => {
            more.push(locale.message("drying-answer-working", &[]));
            waiting = Some(Waiting::of(begun, locale));
        }
        (Err(why), _) => more.push(locale.drying_cannot_tell(why)),
    }
    let pour = slab.last::<Pour>().map(|p| p.entry.happened.instant().to_zoned_datetime(slab.time_zone()).date());
    let answer = match pour {
        Some(pour) => locale.message("time-answer-day", &[("days", (days(pour, today).max(0) as u32).into())]),
        None => locale.message("time-answer-no-pour", &[]),
    };
    more.extend(equivalent_age(&slab, trade).map(|reason| locale.reason(&reason)));
    let step = match pour {
        Some(_) => NavLink { href: format!("/slab/{id}"), label: locale.message("time-do-next", &[]), here: false },
        None if context.visitor.permission >= Permission::Write => {
            NavLink { href: format!("/slab/{id}/add/pour"), label: locale.message("drying-do-pour", &[]), here: false }
        }
        None => NavLink { href: format!("/slab/{id}/diary"), label: locale.message("way-diary", &[]), here: false },
    };
    let spans = begun.as_ref().ok().zip(forecast);
    let title = locale.message("time-chart", &[]);
    let draw = |look: Look| time_line_of(&slab, trade, spans, look);
    let wide = draw(Look::new("line-desk", &title, locale).wide(DESK));
    let line = draw(Look::new("line", &title, locale)).map(|drawing| Charted::new(&title, drawing));
    let rule = trade.fact("age-before-stain-days").map(|fact| source(&fact.citation(), trade, locale));
    Ok(show(&Page {
        frame: context.frame(locale.message("way-time", &[])).about(context, &opened.record, &opened.zone),
        answer,
        more,
        waiting,
        care,
        step,
        line: line.zip(wide).map(|(line, wide)| line.with_wide(wide)),
        sources: rule.into_iter().collect(),
    }))
}

fn today(slab: &Slab<'_>) -> Date {
    slab.knowledge().at.to_zoned_datetime(slab.time_zone()).date()
}

fn days(from: Date, to: Date) -> i32 {
    from.until(to).map_or(0, |span| span.get_days())
}

/// The time line of a slab; nothing while nothing that belongs on it happened. `forecast` adds the
/// likely span of its driest limit.
fn time_line_of(
    slab: &Slab<'_>,
    trade: &Trade,
    forecast: Option<(&Begun, &DryingForecast)>,
    look: Look,
) -> Option<Drawing> {
    let locale = look.locale;
    let happened: Vec<Happened> = happened(slab, locale);
    if happened.is_empty() {
        return None;
    }
    let line = TimeLine {
        look,
        today: today(slab),
        happened,
        milestones: milestones(slab, trade, locale),
        forecasts: forecast.and_then(|(begun, forecast)| span(begun, forecast, locale)).into_iter().collect(),
    };
    Some(time_line(&line))
}

/// The days that the calendar sets, counted from the last pour: the age that the trade waits for, and
/// the day on which the temperature record reached the same age.
fn milestones(slab: &Slab<'_>, trade: &Trade, locale: Locale) -> Vec<Milestone> {
    let Some(pour) = slab.last::<Pour>() else { return Vec::new() };
    let poured = pour.entry.happened.instant().to_zoned_datetime(slab.time_zone()).date();
    let needed = Figures::new(trade, slab).number("age-before-stain-days").ceil();
    let count = ("days", needed.into());
    let mut all = Vec::new();
    if let Ok(on) = poured.checked_add((needed as i64).days()) {
        all.push(Milestone { on, label: locale.message("time-days-since-pour", std::slice::from_ref(&count)) });
    }
    if let Some(on) = equivalent_age_day(slab, trade, poured) {
        all.push(Milestone { on, label: locale.message("time-equivalent-age", &[count]) });
    }
    all
}

/// What the age hold point says of the age with temperature counted in.
fn equivalent_age(slab: &Slab<'_>, trade: &Trade) -> Option<Reason> {
    let standing = judge(slab, trade);
    let of_age = &standing.hold_point(HoldPointId::Age).why;
    of_age.iter().find(|r| matches!(r.code, Code::ColdCure | Code::EquivalentAge | Code::EquivalentAgeReached)).cloned()
}

/// The day on which the temperature record first gave the age the rule asks for, everywhere.
fn equivalent_age_day(slab: &Slab<'_>, trade: &Trade, poured: Date) -> Option<Date> {
    let reached = |at: jiff::Timestamp| {
        let standing = judge(&slab.as_it_was(at), trade);
        let why = &standing.hold_point(HoldPointId::Age).why;
        why.iter().any(|r| r.code == Code::EquivalentAgeReached)
            && why.iter().all(|r| !matches!(r.code, Code::ColdCure | Code::EquivalentAge))
    };
    let at = slab.knowledge().at;
    if !reached(at) {
        return None;
    }
    let end_of = |day: Date| Some(day.tomorrow().ok()?.to_zoned_datetime(slab.time_zone()).ok()?.timestamp().min(at));
    // Age only grows, so the first day is found by halving; a year of days takes nine looks.
    let (mut not_yet, mut there) = (0, days(poured, today(slab)).max(0));
    while not_yet < there {
        let middle = not_yet + (there - not_yet) / 2;
        let day = poured.checked_add(i64::from(middle).days()).ok()?;
        if reached(end_of(day)?) {
            there = middle;
        } else {
            not_yet = middle + 1;
        }
    }
    poured.checked_add(i64::from(there).days()).ok()
}

/// When the limit that governs is likely to be met; nothing when not even one slab in ten is there
/// within the forecast.
fn span(begun: &Begun, forecast: &DryingForecast, locale: Locale) -> Option<ForecastSpan> {
    let limit = governing(forecast)?;
    let dates = forecast.dates(limit)?;
    let value = locale.humidity(limit.limit.humidity);
    Some(ForecastSpan {
        label: locale.message("time-dry-enough", &[("limit", value.into())]),
        p10: dates.p10?.date,
        p50: dates.p50.map(|d| d.date),
        p90: dates.p90.map(|d| d.date),
        horizon: begun.question.date(forecast.horizon),
    })
}
