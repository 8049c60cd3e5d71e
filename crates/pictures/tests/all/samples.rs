//! Sample drawings for tests and for looking at.

use std::sync::Arc;

use jiff::civil::{Date, date};
use jiff::tz::TimeZone;
use localization::Locale;
use pictures::{
    AlarmLine, BandPoint, DryingChart, EvaporationChart, EvaporationHour, ForecastSpan, Happened, Layer, LimitLine,
    Look, MarkKind, MarkPlace, Milestone, PlanLayers, PlanMark, RateBand, ReadingPoint, TimeLine, marks_of, next_marks,
};
use slab_answers::map::{Fineness, SlabMap};
use slab_diary::{Context, Diary, Knowledge, SlabId, read_lines};
use slab_plan::{Offset, Plan, PlanSpec, Point};
use trade_facts::Trade;
use units::{Duration, EvaporationRate, HumidityDifference, Length, RelativeHumidity};

/// Names that try to break out of the drawing.
pub(crate) const HOSTILE: &str = "\"><script>alert(1)</script>&'\u{0}\u{1b}]]> --> <![CDATA[ ünïcødé 龍";

/// The invented slab of `demo/`.
pub(crate) fn demo() -> Diary {
    diary(&[include_str!("../../../../demo/slab.jsonl").to_owned()])
}

/// A slab with everything on it that a map has: 40 by 30 ft, three zones of three finishes, drops that
/// go from quick in the west of the shop to standing in its east, an oil spot, joints of each kind,
/// score lines.
pub(crate) fn mapped_lines() -> Vec<String> {
    let plan = r#"{"happened":"2026-03-01 06:00","body":{"kind":"plan","outline":{"rectangles":[{"corner":["0 ft","0 ft"],"width":"40 ft","depth":"30 ft"}]},"cut_outs":[{"rectangles":[{"corner":["9 ft","20 ft"],"width":"2 ft","depth":"2 ft"}]}],"zones":[{"name":"shop","shape":{"rectangles":[{"corner":["0 ft","0 ft"],"width":"24 ft","depth":"30 ft"}]}},{"name":"office","shape":{"rectangles":[{"corner":["24 ft","0 ft"],"width":"16 ft","depth":"12 ft"}]}},{"name":"hall"}],"joints":[{"line":[["12 ft","0 ft"],["12 ft","30 ft"]],"kind":"saw_cut"},{"line":[["0 ft","14 ft"],["24 ft","14 ft"]],"kind":"saw_cut"},{"line":[["24 ft","0 ft"],["24 ft","30 ft"]],"kind":"construction"},{"line":[["8 ft","19 ft"],["11.5 ft","19 ft"],["11.5 ft","23 ft"],["8 ft","23 ft"]],"kind":"isolation"},{"line":[["24 ft","12 ft"],["40 ft","12 ft"]]}],"score_lines":[{"grid":{"spacing_x":"4 ft","spacing_y":"4 ft","origin":["24 ft","12 ft"],"zone":"hall"}}]}}"#;
    let mut lines = vec![plan.to_owned()];
    for (zone, finish) in FINISHES {
        lines.push(format!(
            r#"{{"happened":"2026-03-02 12:00","place":{{"zone":"{zone}"}},"body":{{"kind":"finish","finish":"{finish}"}}}}"#
        ));
    }
    for (x, y, seconds) in DROPS {
        lines.push(drop_line(x, y, seconds));
    }
    lines.push(r##"{"id":"#oil","happened":"2026-03-20 08:00","place":{"point":["6 ft","6 ft"],"radius":"2 ft"},"body":{"kind":"incident","what":"cutting-oil"}}"##.to_owned());
    lines
}

/// Zones of the mapped slab with their finishes.
pub(crate) const FINISHES: [(&str, &str); 3] =
    [("shop", "light-steel-trowel"), ("office", "hard-steel-trowel"), ("hall", "broom")];

/// Feet and seconds: eleven drops in the shop, seven in the hall, two in the office.
const DROPS: [(f64, f64, f64); 20] = [
    (2.0, 3.0, 45.0),
    (3.0, 16.0, 55.0),
    (2.0, 27.0, 60.0),
    (7.0, 11.0, 90.0),
    (10.0, 3.0, 130.0),
    (10.0, 26.0, 150.0),
    (14.0, 16.0, 330.0),
    (17.0, 6.0, 480.0),
    (17.0, 25.0, 420.0),
    (22.0, 13.0, 1100.0),
    (22.0, 3.0, 950.0),
    (26.0, 14.0, 30.0),
    (32.0, 16.0, 38.0),
    (38.0, 14.0, 42.0),
    (26.0, 28.0, 90.0),
    (33.0, 22.0, 75.0),
    (38.0, 28.0, 160.0),
    (30.0, 27.0, 110.0),
    (28.0, 4.0, 200.0),
    (36.0, 9.0, 260.0),
];

pub(crate) fn drop_line(x: f64, y: f64, seconds: f64) -> String {
    format!(
        r#"{{"happened":"2026-03-25 08:00","place":{{"point":["{x} ft","{y} ft"]}},"body":{{"kind":"water_drop","soaked_in":"{seconds} s"}}}}"#
    )
}

/// A diary of lines, noted by one person.
pub(crate) fn diary(lines: &[String]) -> Diary {
    let context = Context {
        slab: SlabId::of_name("pictures"),
        zone: TimeZone::UTC,
        author: "crew".to_owned(),
        device: "phone".to_owned(),
        noted: None,
    };
    read_lines(&lines.join("\n"), &context).expect("the lines read").into_iter().collect()
}

/// What can be drawn of a diary: its plan and all its layers.
pub(crate) fn layers_of(diary: &Diary, finishes: &[(&str, &str)], locale: Locale) -> (Plan, PlanLayers) {
    let slab = slab_diary::fold(diary, after_all());
    let trade = Trade::built_in();
    let map = SlabMap::of(&slab, trade, Fineness::SCREEN).expect("a plan is drawn");
    let mut marks = marks_of(&slab, trade, locale);
    marks.extend(next_marks(&map, locale));
    let finishes = finishes.iter().map(|(zone, finish)| ((*zone).to_owned(), (*finish).to_owned())).collect();
    let plan = slab.plan().expect("a plan is drawn").clone();
    (plan, PlanLayers { marks, map: Some(Arc::new(map)), finishes, hidden: Vec::new() })
}

/// Everything in the demo has happened by then.
pub(crate) fn after_all() -> Knowledge {
    Knowledge::noted_by("2026-12-31T00:00:00Z".parse().expect("a moment"))
}

pub(crate) fn plan(json: &str) -> Plan {
    Plan::resolve(&PlanSpec::from_json(json).expect("the plan reads")).expect("the plan makes sense")
}

/// A plan of `across` × `up` rooms of 10 ft, each its own zone.
pub(crate) fn rooms(across: u32, up: u32) -> Plan {
    let zones: Vec<String> = (0..across * up)
        .map(|i| {
            let (x, y) = (10 * (i % across), 10 * (i / across));
            format!(
                r#"{{"name":"room {}","shape":{{"rectangles":[{{"corner":["{x} ft","{y} ft"],"width":"10 ft","depth":"10 ft"}}]}}}}"#,
                i + 1
            )
        })
        .collect();
    plan(&format!(
        r#"{{"outline":{{"rectangles":[{{"corner":["0 ft","0 ft"],"width":"{} ft","depth":"{} ft"}}]}},"zones":[{}],"north":"340"}}"#,
        10 * across,
        10 * up,
        zones.join(",")
    ))
}

/// An L with a slanted wall, two cut-outs and a small closet.
pub(crate) fn crooked() -> Plan {
    plan(
        r#"{"outline":{"polygon":[["0 ft","0 ft"],["40 ft","0 ft"],["40 ft","18 ft"],["31 ft","27 ft"],["18 ft","27 ft"],["18 ft","44 ft"],["0 ft","44 ft"]]},
        "cut_outs":[{"rectangles":[{"corner":["8 ft","30 ft"],"width":"3 ft","depth":"5 ft"}]},{"rectangles":[{"corner":["26 ft","8 ft"],"width":"2 ft","depth":"2 ft"}]}],
        "zones":[{"name":"walk-in closet with the water heater","shape":{"rectangles":[{"corner":["0 ft","0 ft"],"width":"5 ft","depth":"6 ft"}]}},
                 {"name":"kitchen and dining room","shape":{"rectangles":[{"corner":["0 ft","27 ft"],"width":"18 ft","depth":"17 ft"}]}},
                 {"name":"great room"}],"north":"65"}"#,
    )
}

pub(crate) fn feet(x: f64, y: f64) -> Point {
    Point::new(Offset::feet(x), Offset::feet(y))
}

pub(crate) fn mark(id: &str, kind: MarkKind, at: MarkPlace, short: &str) -> PlanMark {
    let layer = match kind {
        MarkKind::Incident | MarkKind::Defect => Layer::Incidents,
        MarkKind::Next => Layer::Next,
        MarkKind::Section => Layer::Sections,
        _ => Layer::Tests,
    };
    PlanMark {
        id: id.to_owned(),
        layer,
        kind,
        at,
        short: short.to_owned(),
        title: format!("{id}: {short}"),
        settled: false,
    }
}

/// One of each kind, some of them crowded.
pub(crate) fn one_of_each() -> Vec<PlanMark> {
    let mut marks: Vec<PlanMark> = MarkKind::ALL
        .iter()
        .enumerate()
        .map(|(i, kind)| {
            let at = feet(3.0 + 8.0 * (i % 5) as f64, 3.0 + 6.0 * (i / 5) as f64);
            let short = if *kind == MarkKind::Next { "3" } else { "85 %" };
            mark(&format!("m{i}"), *kind, MarkPlace::Point(at), short)
        })
        .collect();
    marks.push(PlanMark {
        settled: true,
        ..mark(
            "done",
            MarkKind::Incident,
            MarkPlace::Circle { center: feet(6.0, 39.0), radius: Length::feet(3.0) },
            "mud",
        )
    });
    marks.push(mark(
        "strip",
        MarkKind::Incident,
        MarkPlace::Polygon(vec![feet(20.0, 20.0), feet(30.0, 20.0), feet(30.0, 22.0), feet(20.0, 22.0)]),
        "red chalk",
    ));
    marks.push(mark(
        "far",
        MarkKind::Incident,
        MarkPlace::Circle { center: feet(900.0, 39.0), radius: Length::feet(3.0) },
        "off the sheet",
    ));
    marks.push(mark("near1", MarkKind::WaterDrop, MarkPlace::Point(feet(12.0, 20.0)), "75 s"));
    marks.push(mark("near2", MarkKind::Scrape, MarkPlace::Point(feet(12.3, 20.1)), "powder"));
    marks.push(mark("near3", MarkKind::Ph, MarkPlace::Point(feet(12.1, 19.6)), "11.5"));
    marks.push(mark("zone", MarkKind::Sheet, MarkPlace::Zone("great room".to_owned()), "dry"));
    marks.push(mark("nowhere", MarkKind::Sheet, MarkPlace::Zone("attic".to_owned()), "dry"));
    marks
}

pub(crate) fn percent(value: f64) -> RelativeHumidity {
    RelativeHumidity::percent(value).expect("between 0 and 100")
}

pub(crate) fn drying(locale: Locale) -> DryingChart {
    let band = (0..=30)
        .map(|i| {
            let days = 4.0 * f64::from(i);
            // A made-up fall: only the drawing is tested.
            let fall = |speed: f64| percent(60.0 + 40.0 * (-days / speed).exp());
            BandPoint { since: Duration::days(days), p10: fall(60.0), p50: fall(95.0), p90: fall(150.0) }
        })
        .collect();
    let reading = |days: f64, read: f64| ReadingPoint {
        since: Duration::days(days),
        humidity: percent(read),
        error: Some(HumidityDifference::points(2.0)),
    };
    DryingChart {
        look: Look::new("dry", "Drying of the slab", locale),
        poured: date(2026, 2, 23),
        today: Some(date(2026, 4, 20)),
        band,
        readings: vec![reading(28.0, 92.0), reading(55.0, 83.5)],
        limits: vec![
            LimitLine { humidity: percent(85.0), label: "acrylic, water".to_owned() },
            LimitLine { humidity: percent(75.0), label: "epoxy".to_owned() },
        ],
        month_per_inch: Some(Duration::days(120.0)),
    }
}

pub(crate) fn evaporation(locale: Locale) -> EvaporationChart {
    let from = date(2026, 2, 23).at(6, 0, 0, 0);
    let hours = (0..24_u32)
        .map(|i| {
            let rate = 0.02 + 0.18 * (f64::from(i) / 24.0 * std::f64::consts::PI).sin();
            let pounds = EvaporationRate::pounds_per_square_foot_hour;
            EvaporationHour {
                from: from.checked_add(jiff::Span::new().hours(i64::from(i))).expect("a near date"),
                rate: (i != 20).then(|| RateBand {
                    low: pounds(rate * 0.75),
                    rate: pounds(rate),
                    high: pounds(rate * 1.25),
                }),
            }
        })
        .collect();
    let alarm = |rate: f64, label: &str| AlarmLine {
        rate: EvaporationRate::pounds_per_square_foot_hour(rate),
        label: label.to_owned(),
    };
    EvaporationChart {
        look: Look::new("air", "Water leaving the fresh slab", locale),
        hours,
        alarms: vec![alarm(0.2, "act"), alarm(0.1, "watch")],
    }
}

pub(crate) fn time_line_sample(locale: Locale) -> TimeLine {
    let on = |on: Date, label: &str, trouble: bool| Happened {
        on,
        label: label.to_owned(),
        trouble,
        id: Some(format!("e-{label}")),
    };
    TimeLine {
        look: Look::new("line", "From pour to hand-over", locale),
        today: date(2026, 4, 3),
        happened: vec![
            on(date(2026, 2, 23), "Poured, mix 31, 4 in", false),
            on(date(2026, 2, 23), "Wet cure begun", false),
            on(date(2026, 3, 2), "Wet cure ended", false),
            on(date(2026, 3, 9), "Red chalk line snapped across the shop by the framer", true),
            on(date(2026, 3, 16), "Cutting oil, shop", true),
            on(date(2026, 3, 18), "Oil treated and tested again", false),
            on(date(2026, 3, 30), "Water drops in 8 places", false),
            on(date(2026, 3, 30), "Surface pH 11.5", false),
            on(date(2026, 3, 31), "Plastic sheet: darkened in the showroom", true),
        ],
        milestones: vec![Milestone { on: date(2026, 3, 23), label: "28 days since the pour".to_owned() }],
        forecasts: vec![
            ForecastSpan {
                label: "Dry enough for the sealer".to_owned(),
                p10: date(2026, 4, 12),
                p50: Some(date(2026, 5, 2)),
                p90: Some(date(2026, 6, 10)),
                horizon: date(2026, 8, 20),
            },
            ForecastSpan {
                label: "Hand-over".to_owned(),
                p10: date(2026, 4, 25),
                p50: Some(date(2026, 5, 20)),
                p90: None,
                horizon: date(2026, 8, 20),
            },
        ],
    }
}
