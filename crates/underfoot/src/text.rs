//! The answers as text for a terminal: the answer first, then why.

use std::fmt::Write;

use jiff::Timestamp;
use jiff::tz::TimeZone;
use slab::diary::Entry;
use slab::order::{CoverageBasis, Order};
use slab::slab::Slab;
use slab::standing::{HoldPoint, Standing, State};
use slab::trade::Trade;
use words::Voice;

const WIDTH: usize = 100;

fn wrapped(out: &mut String, first: &str, rest: &str, text: &str) {
    let options = textwrap::Options::new(WIDTH).initial_indent(first).subsequent_indent(rest);
    let _ = writeln!(out, "{}", textwrap::fill(text, options));
}

/// A moment in the slab's own clock.
pub(crate) fn moment(at: Timestamp, zone: &TimeZone, voice: &Voice) -> String {
    let local = at.to_zoned_datetime(zone.clone());
    format!("{} {:02}:{:02}", voice.date(local.date()), local.hour(), local.minute())
}

/// The standing: one sentence, then the open hold points with what to do, then the released ones.
pub(crate) fn standing(name: &str, standing: &Standing, voice: &Voice, trade: &Trade, zone: &TimeZone) -> String {
    let mut out = String::new();
    let when = moment(standing.knowledge.at, zone, voice);
    let _ = writeln!(out, "{}", voice.say("standing-head", &[("slab", name.into()), ("moment", when.into())]));
    wrapped(&mut out, "", "", &voice.overall(&standing.overall));
    if let Some(care) = standing.overall.next.as_ref().and_then(|next| voice.care(next)) {
        wrapped(&mut out, "  ! ", "    ", &care);
    }
    let _ = writeln!(out, "{}", voice.open_hold_points(&standing.overall));
    for state in [State::Held, State::CantTell, State::Unproven, State::Released] {
        for point in standing.hold_points.iter().filter(|h| h.state == state) {
            hold_point(&mut out, point, voice, trade);
        }
    }
    out
}

fn hold_point(out: &mut String, point: &HoldPoint, voice: &Voice, trade: &Trade) {
    let _ = writeln!(out, "\n{}: {}", voice.hold_point(point.id), voice.state(point.state));
    for reason in &point.why {
        wrapped(out, "  - ", "    ", &voice.reason(reason));
    }
    if let Some(next) = &point.next {
        let time = voice.action_time(next);
        let order = voice.order(next);
        let text = if time.is_empty() { order } else { format!("{order} ({time})") };
        wrapped(out, "  > ", "    ", &text);
        if let Some(care) = voice.care(next) {
            wrapped(out, "  ! ", "    ", &care);
        }
        let consequence = voice.consequence(point.id);
        wrapped(out, "    ", "    ", &voice.say("standing-if-ignored", &[("consequence", consequence.into())]));
    }
    let grade = voice.grade(point.citation.grade);
    let source = voice.cite(trade, &point.citation);
    let evidence = voice.say("standing-evidence", &[("count", (point.evidence.len() as u32).into())]);
    let source = voice.say("standing-source", &[("source", source.into()), ("grade", grade.into())]);
    wrapped(out, "    ", "    ", &format!("{evidence} {source}"));
}

/// The order: recipe, coverage, lines.
pub(crate) fn order(name: &str, order: &Order, voice: &Voice) -> String {
    let mut out = String::new();
    let _ = writeln!(out, "{}", voice.say("order-head", &[("slab", name.into())]));
    let recipe = &order.recipe;
    let text = match &recipe.panel {
        Some(panel) => voice.say(
            "order-recipe-panel",
            &[
                ("panel", panel.as_str().into()),
                ("coats", recipe.coats.usual.into()),
                ("water", recipe.water_parts.usual.into()),
            ],
        ),
        None => voice.say(
            "order-recipe-usual",
            &[
                ("low", recipe.coats.low.into()),
                ("high", recipe.coats.high.into()),
                ("water", recipe.water_parts.low.into()),
            ],
        ),
    };
    wrapped(&mut out, "", "", &text);
    for zone in &order.coverage {
        let coverage = voice.range(&voice.coverage(zone.coverage.low), &voice.coverage(zone.coverage.high));
        let finish = zone.finish.as_deref().map_or_else(|| "?".to_owned(), |f| voice.term(f));
        let basis = match zone.basis {
            CoverageBasis::Panels(count) => voice.say("order-zone-panels", &[("count", count.into())]),
            CoverageBasis::Table => voice.say("order-zone-table", &[]),
            CoverageBasis::Unknown => voice.say("order-zone-unknown", &[]),
        };
        let line = voice.say(
            "order-zone",
            &[
                ("zone", zone.zone.as_str().into()),
                ("area", voice.area(zone.area).into()),
                ("finish", finish.into()),
                ("coverage", coverage.into()),
            ],
        );
        wrapped(&mut out, "  ", "    ", &format!("{line} ({basis}; {})", voice.grade(zone.grade)));
    }
    for line in &order.lines {
        let which = line.which.as_deref().map_or_else(String::new, |w| format!(" ({})", voice.term(w)));
        let _ = writeln!(out, "\n{}{which}", voice.item(line.item));
        let need = voice.need(&line.need);
        let buy = voice.packs(&line.buy).map_or_else(String::new, |packs| format!("; {packs}"));
        wrapped(&mut out, "  ", "    ", &format!("{need}{buy} [{}]", voice.grade(line.grade)));
        for note in &line.notes {
            wrapped(&mut out, "  - ", "    ", &voice.order_note(*note));
        }
    }
    let _ = writeln!(out);
    wrapped(&mut out, "", "", &voice.say("order-next", &[]));
    out
}

/// One entry of the diary on one line.
pub(crate) fn entry(entry: &Entry, slab: &Slab<'_>, voice: &Voice) -> String {
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
        format!(" {}", voice.say("diary-corrected", &[]))
    } else {
        String::new()
    };
    let (date, hour, minute) = (local.date(), local.hour(), local.minute());
    format!(
        "{date} {hour:02}:{minute:02}  {}{place}  {told}{corrected}\n    {}",
        voice.kind(entry.body.kind()),
        entry.id
    )
}
