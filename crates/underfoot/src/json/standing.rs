//! The standing as JSON.

use localization::Locale;
use serde_json::{Map, Value, json};
use slab_answers::ready::ToReady;
use slab_answers::standing::{HoldPoint, Reason, Standing, Value as Shown};
use trade_facts::Trade;

use super::amount::rounded;

pub(crate) fn standing(name: &str, id: &str, standing: &Standing, locale: &Locale, trade: &Trade) -> Value {
    let overall = &standing.overall;
    json!({
        "schema": "underfoot.standing/1",
        "slab": { "id": id, "name": name },
        "at": standing.knowledge.at.to_string(),
        "known": match standing.knowledge.basis {
            slab_diary::Basis::NotedBy => "noted",
            slab_diary::Basis::HappenedBy => "happened",
        },
        "overall": {
            "state": overall.state.name(),
            "sentence": locale.overall(overall),
            "hold_point": overall.hold_point.map(|h| h.name()),
            "next_action": overall.next.as_ref().map(|n| locale.action(n)),
            "next_for": overall.next_for.map(|h| h.name()),
            "zones": overall.next.as_ref().map(|n| n.zones.clone()),
            "minutes": overall.next.as_ref().map(|n| n.minutes),
            "wait_hours": overall.next.as_ref().map(|n| n.wait_hours),
            "open": overall.open,
            "asked": overall.asked,
            "by_word": overall.by_word.iter().map(|h| h.name()).collect::<Vec<_>>(),
            "own_figures": overall.own_figures.iter().map(|h| h.name()).collect::<Vec<_>>(),
            "stages": overall.stages.iter().map(|(stage, zones)| json!({ "stage": stage.name(), "zones": zones })).collect::<Vec<_>>(),
        },
        "hold_points": standing.hold_points.iter().map(|h| hold_point(h, locale, trade)).collect::<Vec<_>>(),
    })
}

/// The way to ready.
pub(crate) fn missing(name: &str, id: &str, at: jiff::Timestamp, way: &ToReady, locale: &Locale) -> Value {
    json!({
        "schema": "underfoot.missing/1",
        "slab": { "id": id, "name": name },
        "at": at.to_string(),
        "deeds": way.deeds.iter().map(|deed| json!({
            "action": deed.next.action.name(),
            "sentence": locale.order(&deed.next),
            "care": locale.care(&deed.next),
            "hold_points": deed.points.iter().map(|id| id.name()).collect::<Vec<_>>(),
            "zones": deed.next.zones,
            "minutes": deed.next.minutes,
            "wait_hours": deed.next.wait_hours,
        })).collect::<Vec<_>>(),
        "minutes": way.minutes,
        "wait_hours": way.wait_hours,
        "not_before": way.earliest.to_string(),
        "unknown": way.unknown.iter().map(|id| id.name()).collect::<Vec<_>>(),
    })
}

fn hold_point(point: &HoldPoint, locale: &Locale, trade: &Trade) -> Value {
    json!({
        "id": point.id.name(),
        "name": locale.hold_point(point.id),
        "question": locale.hold_point_question(point.id),
        "state": point.state.name(),
        "asked": point.asked,
        "by_word": point.by_word,
        "zones": point.zones.iter().map(|(zone, state)| json!({ "zone": zone, "state": state.name() })).collect::<Vec<_>>(),
        "why": point.why.iter().map(|r| locale.reason(r)).collect::<Vec<_>>(),
        "reasons": point.why.iter().map(reason).collect::<Vec<_>>(),
        "evidence": point.evidence.iter().map(ToString::to_string).collect::<Vec<_>>(),
        "next_action": point.next.as_ref().map(|n| locale.action(n)),
        "action": point.next.as_ref().map(|n| n.action.name()),
        "action_zones": point.next.as_ref().map(|n| n.zones.clone()),
        "minutes": point.next.as_ref().map(|n| n.minutes),
        "wait_hours": point.next.as_ref().map(|n| n.wait_hours),
        "proposed": point.proposed.as_ref().map(|n| locale.action(n)),
        "lapses": point.lapses.map(|at| at.to_string()),
        "own_limits": point.own_limits.iter().map(|(fact, entry)| json!({ "fact": fact, "entry": entry.to_string() })).collect::<Vec<_>>(),
        "consequence": locale.consequence(point.id),
        "source": locale.cite(trade, &point.citation),
        "sources": point.citation.sources,
        "grade": point.citation.grade.words(),
    })
}

fn reason(reason: &Reason) -> Value {
    let mut values = Map::new();
    for (name, value) in &reason.values {
        let (name, value) = shown(name, value);
        // A reason may name several items; they become a list.
        match values.get_mut(&name) {
            None => {
                values.insert(name, value);
            }
            Some(Value::Array(list)) => list.push(value),
            Some(first) => *first = json!([first.clone(), value]),
        }
    }
    json!({ "code": reason.code.name(), "zones": reason.zones, "values": values })
}

fn shown(name: &str, value: &Shown) -> (String, Value) {
    match value {
        Shown::Count(n) => (name.to_owned(), json!(n)),
        Shown::Ratio(x) => (name.to_owned(), rounded(*x, 4)),
        Shown::Text(text) | Shown::Term(text) => (name.to_owned(), json!(text)),
        Shown::Date(date) => (name.to_owned(), json!(date.to_string())),
        Shown::Duration(d) => (format!("{name}_s"), rounded(d.as_seconds(), 0)),
        Shown::Length(l) => (format!("{name}_m"), rounded(l.as_meters(), 6)),
        Shown::Area(a) => (format!("{name}_m2"), rounded(a.as_square_meters(), 4)),
        Shown::Temperature(t) => (format!("{name}_c"), rounded(t.as_celsius(), 2)),
        Shown::Difference(d) => (format!("{name}_c_degrees"), rounded(d.as_celsius_degrees(), 2)),
        Shown::Humidity(h) => (format!("{name}_pct"), rounded(h.as_percent(), 2)),
        Shown::Emission(e) => (format!("{name}_g_m2_d"), rounded(e.as_grams_per_square_meter_day(), 3)),
        Shown::Share(share) => (format!("{name}_pct"), rounded(share.as_share() * 100.0, 2)),
        Shown::Speed(speed) => (format!("{name}_m_s"), rounded(speed.as_meters_per_second(), 2)),
        Shown::Moment(at) => (name.to_owned(), json!(at.to_string())),
        Shown::Point(at) => (format!("{name}_m"), json!([rounded(at.x.as_meters(), 3), rounded(at.y.as_meters(), 3)])),
        Shown::Remedy(incident) => (name.to_owned(), json!(incident)),
        Shown::Ph(ph) => (format!("{name}_ph"), rounded(ph.value(), 2)),
    }
}
