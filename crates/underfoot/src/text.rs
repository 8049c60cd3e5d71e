//! The answers as text for a terminal: the answer first, then why.

use std::fmt::Write;

use jiff::Timestamp;
use jiff::tz::TimeZone;
use localization::Locale;
use slab_answers::order::{CoverageBasis, Order};
use slab_answers::ready::ToReady;
use slab_answers::standing::{HoldPoint, Standing, State};
use slab_diary::Entry;
use slab_diary::Slab;
use trade_facts::Trade;

const WIDTH: usize = 100;

fn wrapped(out: &mut String, first: &str, rest: &str, text: &str) {
    let options = textwrap::Options::new(WIDTH).initial_indent(first).subsequent_indent(rest);
    let _ = writeln!(out, "{}", textwrap::fill(text, options));
}

/// A moment in the slab's own clock.
pub(crate) fn moment(at: Timestamp, zone: &TimeZone, locale: &Locale) -> String {
    let local = at.to_zoned_datetime(zone.clone());
    format!("{} {:02}:{:02}", locale.date(local.date()), local.hour(), local.minute())
}

/// The standing: one sentence, then the open hold points with what to do, then the released ones.
pub(crate) fn standing(name: &str, standing: &Standing, locale: &Locale, trade: &Trade, zone: &TimeZone) -> String {
    let mut out = String::new();
    let when = moment(standing.knowledge.at, zone, locale);
    let _ = writeln!(out, "{}", locale.message("standing-head", &[("slab", name.into()), ("moment", when.into())]));
    wrapped(&mut out, "", "", &locale.overall(&standing.overall));
    if let Some(care) = standing.overall.next.as_ref().and_then(|next| locale.care(next)) {
        wrapped(&mut out, "  ! ", "    ", &care);
    }
    let _ = writeln!(out, "{}", locale.open_hold_points(&standing.overall));
    for state in [State::Held, State::CantTell, State::Unproven, State::Released] {
        for point in standing.hold_points.iter().filter(|h| h.state == state) {
            hold_point(&mut out, point, locale, trade);
        }
    }
    out
}

/// The way to ready: a numbered list with the caution under each dangerous deed.
pub(crate) fn missing(name: &str, at: Timestamp, way: &ToReady, locale: &Locale, zone: &TimeZone) -> String {
    let mut out = String::new();
    let when = moment(at, zone, locale);
    let _ = writeln!(out, "{}", locale.message("ready-head", &[("slab", name.into()), ("moment", when.into())]));
    for (number, line) in locale.to_ready(way).iter().enumerate() {
        let Some(deed) = way.deeds.get(number) else {
            wrapped(&mut out, "", "", line);
            continue;
        };
        wrapped(&mut out, &format!("{:>2}. ", number + 1), "    ", line);
        if let Some(care) = locale.care(&deed.next) {
            wrapped(&mut out, "    ! ", "      ", &care);
        }
    }
    out
}

fn hold_point(out: &mut String, point: &HoldPoint, locale: &Locale, trade: &Trade) {
    let _ =
        writeln!(out, "\n{}: {}", localization::capitalized(&locale.hold_point(point.id)), locale.state(point.state));
    for reason in &point.why {
        wrapped(out, "  - ", "    ", &locale.reason(reason));
    }
    if let Some(own) = locale.own_limits(point) {
        wrapped(out, "  - ", "    ", &own);
    }
    if let Some(proposed) = &point.proposed {
        wrapped(out, "  > ", "    ", &locale.order(proposed));
    }
    if let Some(next) = &point.next {
        let time = locale.action_time(next);
        let order = locale.order(next);
        let text = if time.is_empty() { order } else { format!("{order} ({time})") };
        wrapped(out, "  > ", "    ", &text);
        if let Some(care) = locale.care(next) {
            wrapped(out, "  ! ", "    ", &care);
        }
        let consequence = locale.consequence(point.id);
        wrapped(out, "    ", "    ", &locale.message("standing-if-ignored", &[("consequence", consequence.into())]));
    }
    let grade = locale.grade(point.citation.grade);
    let source = locale.cite(trade, &point.citation);
    let evidence = locale.message("standing-evidence", &[("count", (point.evidence.len() as u32).into())]);
    let source = locale.message("standing-source", &[("source", source.into()), ("grade", grade.into())]);
    let lapses = locale.lapses(point).map_or_else(String::new, |lapses| format!(" {lapses}"));
    wrapped(out, "    ", "    ", &format!("{evidence}{lapses} {source}"));
}

/// The order: recipe, coverage, lines.
pub(crate) fn order(name: &str, order: &Order, locale: &Locale) -> String {
    let mut out = String::new();
    let _ = writeln!(out, "{}", locale.message("order-head", &[("slab", name.into())]));
    wrapped(&mut out, "", "", &locale.order_recipes(order));
    for zone in &order.coverage {
        let coverage = locale.range(&locale.coverage(zone.coverage.low), &locale.coverage(zone.coverage.high));
        let finish = zone.finish.as_deref().map_or_else(|| "?".to_owned(), |f| locale.term(f));
        let basis = match zone.basis {
            CoverageBasis::Panels(count) => locale.message("order-zone-panels", &[("count", count.into())]),
            CoverageBasis::Table => locale.message("order-zone-table", &[]),
            CoverageBasis::Unknown => locale.message("order-zone-unknown", &[]),
        };
        let line = locale.message(
            "order-zone",
            &[
                ("zone", zone.zone.as_str().into()),
                ("area", locale.area(zone.area).into()),
                ("finish", finish.into()),
                ("coverage", coverage.into()),
            ],
        );
        wrapped(&mut out, "  ", "    ", &format!("{line} ({basis}; {})", locale.grade(zone.grade)));
    }
    for line in &order.lines {
        let which = line.which.as_deref().map_or_else(String::new, |w| format!(" ({})", locale.term(w)));
        let _ = writeln!(out, "\n{}{which}", locale.item(line.item));
        let need = locale.need(&line.need);
        let buy = locale.packs(&line.buy).map_or_else(String::new, |packs| format!("; {packs}"));
        wrapped(&mut out, "  ", "    ", &format!("{need}{buy} [{}]", locale.grade(line.grade)));
        for note in &line.notes {
            wrapped(&mut out, "  - ", "    ", &locale.order_note(*note));
        }
    }
    let _ = writeln!(out);
    wrapped(&mut out, "", "", &locale.message("order-next", &[]));
    out
}

/// One entry of the diary on one line.
pub(crate) fn entry(entry: &Entry, slab: &Slab<'_>, locale: &Locale) -> String {
    let place = entry.place.as_ref().map_or_else(String::new, |place| {
        let point = place.point.as_ref().map(|[x, y]| format!("({x}, {y})"));
        let parts = [place.zone.clone(), point, place.polygon.as_ref().map(|p| format!("{} corners", p.len()))];
        format!(" [{}]", parts.into_iter().flatten().collect::<Vec<_>>().join(" "))
    });
    let mut fields: serde_json::Value = serde_json::from_str(entry.body.to_raw().get()).unwrap_or_default();
    let told = match &mut fields {
        serde_json::Value::Object(fields) => {
            fields.shift_remove("kind");
            let short = |v: &serde_json::Value| {
                let text = v.as_str().map_or_else(|| v.to_string(), str::to_owned);
                if text.chars().count() > 60 {
                    format!("{}…", text.chars().take(59).collect::<String>())
                } else {
                    text
                }
            };
            fields.iter().map(|(k, v)| format!("{k}={}", short(v))).collect::<Vec<_>>().join(", ")
        }
        _ => String::new(),
    };
    let local = entry.happened.local();
    let corrected = if slab.corrected_by(entry.id).is_some() {
        format!(" {}", locale.message("diary-corrected", &[]))
    } else {
        String::new()
    };
    let (date, hour, minute) = (local.date(), local.hour(), local.minute());
    format!("{date} {hour:02}:{minute:02}  {}{place}  {told}{corrected}\n    {}", locale.kind_of(&entry.body), entry.id)
}
