//! Every drawing keeps what the crate promises, with plain and with hostile data, in both languages.

use localization::{Lang, Locale, UnitSystem};
use pictures::{
    AlarmLine, Drawing, DryingChart, EvaporationChart, ForecastSpan, LimitLine, Look, PlanLayers, PlanLook, TimeLine,
    drying_chart, evaporation_chart, marks_of, plan_svg, time_line,
};
use trade_facts::Trade;

use crate::frame::sound;
use crate::samples::{self, HOSTILE};

fn voices() -> impl Iterator<Item = Locale> {
    Lang::ALL
        .into_iter()
        .flat_map(|lang| UnitSystem::ALL.into_iter().map(move |unit_system| Locale::new(lang, unit_system)))
}

/// Lettering never below fourteen units in a drawing at most a phone wide.
fn readable(found: &crate::frame::Found) {
    assert!(found.texts.iter().all(|(_, size)| *size >= 14.0), "{:?}", found.texts);
}

fn check(drawing: &Drawing, prefix: &str) {
    let found = sound(&drawing.svg, prefix);
    readable(&found);
    assert!(found.coordinates > 20, "only {} coordinates", found.coordinates);
    assert!(drawing.sentences.iter().all(|s| !s.contains("pic-") && !s.is_empty()), "{:?}", drawing.sentences);
    assert!(drawing.table.rows.iter().all(|r| r.len() == drawing.table.head.len()));
}

#[test]
fn charts_and_time_line() {
    for locale in voices() {
        check(&drying_chart(&samples::drying(locale)), "dry");
        check(&evaporation_chart(&samples::evaporation(locale)), "air");
        check(&time_line(&samples::time_line_sample(locale)), "line");
    }
}

#[test]
fn a_desk_gets_wider_charts_that_tell_the_same() {
    let largest = |drawing: &Drawing, prefix: &str| {
        let found = sound(&drawing.svg, prefix);
        readable(&found);
        found.texts.iter().map(|(_, size)| *size).fold(0.0, f64::max)
    };
    for locale in voices() {
        let (narrow, air) = (samples::drying(locale), samples::evaporation(locale));
        let wide = DryingChart { look: Look::new("dry", "Wide", locale).wide(960.0), ..narrow.clone() };
        let wide_air = EvaporationChart { look: Look::new("air", "Wide", locale).wide(960.0), ..air.clone() };
        let pairs = [
            ("dry", drying_chart(&narrow), drying_chart(&wide)),
            ("air", evaporation_chart(&air), evaporation_chart(&wide_air)),
        ];
        for (prefix, phone, desk) in pairs {
            assert!(phone.svg.contains("viewBox=\"0 0 312 ") && desk.svg.contains("viewBox=\"0 0 960 "), "{prefix}");
            assert_eq!((&phone.sentences, &phone.table), (&desk.sentences, &desk.table));
            assert!((largest(&phone, prefix) - largest(&desk, prefix)).abs() < 1e-9, "the lettering keeps its size");
        }
        let at_most = Look::new("dry", "Wide", locale).wide(f64::NAN);
        assert_eq!(at_most, Look::new("dry", "Wide", locale), "no width is no change");
    }
}

#[test]
fn charts_of_nothing() {
    for locale in voices() {
        let look = |prefix: &str| Look::new(prefix, "Nothing", locale);
        let sample = samples::drying(locale);
        let empty = DryingChart {
            look: look("dry"),
            band: Vec::new(),
            readings: Vec::new(),
            limits: Vec::new(),
            month_per_inch: None,
            today: None,
            ..sample
        };
        check(&drying_chart(&empty), "dry");
        check(
            &evaporation_chart(&EvaporationChart { look: look("air"), hours: Vec::new(), alarms: Vec::new() }),
            "air",
        );
        let bare = TimeLine {
            look: look("line"),
            today: sample.poured,
            happened: Vec::new(),
            milestones: Vec::new(),
            forecasts: Vec::new(),
        };
        check(&time_line(&bare), "line");
    }
}

#[test]
fn hostile_names_are_only_text() {
    let locale = Locale::default();
    let look = |prefix: &str| Look::new(prefix, HOSTILE, locale);
    let mut drying = samples::drying(locale);
    drying.look = look("dry");
    drying.limits = vec![LimitLine { humidity: samples::percent(80.0), label: HOSTILE.repeat(9) }];
    let mut air = samples::evaporation(locale);
    air.look = look("air");
    air.alarms = vec![AlarmLine { label: HOSTILE.repeat(9), ..air.alarms[0].clone() }];
    let mut line = samples::time_line_sample(locale);
    line.look = look("line");
    for happened in &mut line.happened {
        happened.label = HOSTILE.repeat(5);
        happened.id = Some(HOSTILE.to_owned());
    }
    line.milestones[0].label = HOSTILE.to_owned();
    line.forecasts[0].label = HOSTILE.to_owned();
    for (drawing, prefix) in
        [(drying_chart(&drying), "dry"), (evaporation_chart(&air), "air"), (time_line(&line), "line")]
    {
        check(&drawing, prefix);
        assert!(!drawing.svg.contains("<script"), "{prefix}");
    }
    let json = serde_free_name(HOSTILE);
    let plan = samples::plan(&format!(
        r#"{{"outline":{{"rectangles":[{{"corner":["0 ft","0 ft"],"width":"40 ft","depth":"30 ft"}}]}},"zones":[{{"name":"{json}"}}]}}"#
    ));
    let mut marks = samples::one_of_each();
    for mark in &mut marks {
        (mark.id, mark.short, mark.title) = (HOSTILE.to_owned(), HOSTILE.to_owned(), HOSTILE.to_owned());
    }
    let drawing = plan_svg(&plan, &PlanLayers { marks, ..PlanLayers::default() }, &PlanLook::new("p", HOSTILE, locale));
    let svg = drawing.svg.expect("the plan is drawn");
    readable(&sound(&svg, "p"));
    assert!(!svg.contains("<script"));
}

/// A text inside a JSON string.
fn serde_free_name(text: &str) -> String {
    text.chars()
        .flat_map(|c| {
            if c.is_control() || c == '"' || c == '\\' { format!("\\u{:04x}", c as u32) } else { c.to_string() }
                .chars()
                .collect::<Vec<_>>()
        })
        .collect()
}

#[test]
fn a_prefix_cannot_break_an_id() {
    for (prefix, kept) in [("a b\"><x", "abx"), ("7up", "p7up"), ("", "p"), ("öl", "l")] {
        let mut chart = samples::drying(Locale::default());
        chart.look.prefix = prefix.to_owned();
        sound(&drying_chart(&chart).svg, kept);
    }
}

#[test]
fn plans_of_every_form() {
    for locale in voices() {
        let diary = samples::demo();
        let slab = slab_diary::fold(&diary, samples::after_all());
        let demo = slab.plan().expect("the demo has a plan").clone();
        let marks = marks_of(&slab, Trade::built_in(), locale);
        assert!(marks.len() > 15, "only {} marks", marks.len());
        let bare = |marks| PlanLayers { marks, ..PlanLayers::default() };
        let mapped = samples::diary(&samples::mapped_lines());
        let plans = [
            (demo, bare(marks)),
            (samples::crooked(), bare(samples::one_of_each())),
            (samples::rooms(7, 4), PlanLayers::default()),
            samples::layers_of(&diary, &[("shop", "light-steel-trowel")], locale),
            samples::layers_of(&mapped, &samples::FINISHES, locale),
        ];
        for (plan, layers) in plans {
            for width in [390.0, 900.0] {
                let drawing = plan_svg(&plan, &layers, &PlanLook::new("p", "Plan", locale).wide(width));
                let found = sound(&drawing.svg.expect("the plan is drawn"), "p");
                readable(&found);
                assert!(found.coordinates > 60, "only {} coordinates", found.coordinates);
                assert!(drawing.items.iter().all(|i| !i.text.contains("pic-")), "{:?}", drawing.items);
            }
        }
    }
}

#[test]
fn an_open_forecast_says_so() {
    let mut line = samples::time_line_sample(Locale::default());
    let open = ForecastSpan { p50: None, p90: None, ..line.forecasts[0].clone() };
    line.forecasts = vec![open];
    let drawing = time_line(&line);
    check(&drawing, "line");
    assert!(drawing.sentences.iter().any(|s| s.contains("not likely within the forecast")), "{:?}", drawing.sentences);
}
