//! The standing as a page: the answer first, then what to do, then why.

use askama::Template;
use jiff::tz::TimeZone;
use localization::{Lang, Locale};
use slab_answers::standing::{HoldPoint, Standing, State};
use trade_facts::Trade;

#[derive(Template)]
#[template(path = "standing.html")]
struct Page {
    lang: &'static str,
    slab: String,
    when: String,
    answer: String,
    care: Option<String>,
    open: String,
    points: Vec<Point>,
}

struct Point {
    id: &'static str,
    state_name: &'static str,
    question: String,
    state: String,
    why: Vec<String>,
    step: Option<String>,
    care: Option<String>,
    ignored: String,
    source: String,
    open: bool,
}

/// The standing of a slab as a whole HTML page, in the reader's language and units.
///
/// Names that people typed are escaped. `zone` is the slab's own, for the date in its head.
#[must_use]
pub fn standing_page(slab: &str, standing: &Standing, locale: Locale, trade: &Trade, zone: &TimeZone) -> String {
    let mut points: Vec<&HoldPoint> = standing.hold_points.iter().collect();
    points.sort_by_key(|p| std::cmp::Reverse(p.state));
    let local = standing.knowledge.at.to_zoned_datetime(zone.clone());
    let page = Page {
        lang: match locale.lang {
            Lang::En => "en",
            Lang::Es => "es",
        },
        slab: slab.to_owned(),
        when: format!("{} {:02}:{:02}", locale.date(local.date()), local.hour(), local.minute()),
        answer: locale.overall(&standing.overall),
        care: standing.overall.next.as_ref().and_then(|next| locale.care(next)),
        open: locale.open_hold_points(&standing.overall),
        points: points.into_iter().map(|p| point(p, locale, trade)).collect(),
    };
    page.render().expect("the template only joins texts")
}

fn point(point: &HoldPoint, locale: Locale, trade: &Trade) -> Point {
    let step = point.next.as_ref().or(point.proposed.as_ref()).map(|next| {
        let (order, time) = (locale.order(next), locale.action_time(next));
        if time.is_empty() { order } else { format!("{order} ({time})") }
    });
    let source = locale.cite(trade, &point.citation);
    let grade = locale.grade(point.citation.grade);
    Point {
        id: point.id.name(),
        state_name: point.state.name(),
        question: locale.hold_point_question(point.id),
        state: locale.state(point.state),
        why: point
            .why
            .iter()
            .map(|r| locale.reason(r))
            .chain(locale.own_limits(point))
            .chain(locale.lapses(point))
            .collect(),
        step,
        care: point.next.as_ref().and_then(|next| locale.care(next)),
        ignored: locale.message("standing-if-ignored", &[("consequence", locale.consequence(point.id).into())]),
        source: locale.message("standing-source", &[("source", source.into()), ("grade", grade.into())]),
        open: point.state != State::Released,
    }
}
