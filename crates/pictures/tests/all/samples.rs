//! Sample drawings for tests and for looking at.

use jiff::civil::{Date, date};
use jiff::tz::TimeZone;
use pictures::{
    AlarmLine, BandPoint, DryingChart, EvaporationChart, EvaporationHour, ForecastSpan, Happened, Layer, LimitLine,
    Look, MarkKind, MarkPlace, Milestone, PlanMark, RateBand, ReadingPoint, TimeLine,
};
use slab::diary::{Context, Diary, Knowledge, SlabId, read_lines};
use slab::plan::{Offset, Plan, PlanSpec, Point};
use units::{Duration, EvaporationRate, HumidityDifference, Length, RelativeHumidity};
use words::Voice;

/// Names that try to break out of the drawing.
pub(crate) const HOSTILE: &str = "\"><script>alert(1)</script>&'\u{0}\u{1b}]]> --> <![CDATA[ ünïcødé 龍";

/// The invented slab of `demo/`.
pub(crate) fn demo() -> Diary {
    let context = Context {
        slab: SlabId::of_name("pictures"),
        zone: TimeZone::UTC,
        author: "crew".to_owned(),
        device: "phone".to_owned(),
        noted: None,
    };
    let entries = read_lines(include_str!("../../../../demo/slab.jsonl"), &context).expect("the demo reads");
    entries.into_iter().collect()
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

pub(crate) fn drying(voice: Voice) -> DryingChart {
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
        look: Look::new("dry", "Drying of the slab", voice),
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

pub(crate) fn evaporation(voice: Voice) -> EvaporationChart {
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
        look: Look::new("air", "Water leaving the fresh slab", voice),
        hours,
        alarms: vec![alarm(0.2, "act"), alarm(0.1, "watch")],
    }
}

pub(crate) fn time_line_sample(voice: Voice) -> TimeLine {
    let on = |on: Date, label: &str, trouble: bool| Happened {
        on,
        label: label.to_owned(),
        trouble,
        id: Some(format!("e-{label}")),
    };
    TimeLine {
        look: Look::new("line", "From pour to hand-over", voice),
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
