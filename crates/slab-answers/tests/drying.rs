//! The drying forecast asked of a diary: what it gathers, reference cases, and laws.

#![allow(clippy::unwrap_used, reason = "a test may stop")]

use jiff::tz::TimeZone;
use science::chance::Seed;
use science::moisture::{
    Accuracy, Ambient, Concrete, Draws, DryingSlab, ForecastPlan, Point, Reading, ReadingError, RuleCheck, Sides,
};
use slab_answers::drying::{
    Assumption, CannotTell, Caution, DryingForecast, DryingQuestion, LimitBound, LimitFrom, RestsOn, Unexplained,
    WhyLeftOut, question,
};
use slab_diary::fold;
use slab_diary::{Context, Diary, Knowledge, SlabId, problems, read_lines};
use trade_facts::Trade;
use units::{Duration, Fraction, Length, RelativeHumidity, Temperature};

const MEMBERS: usize = 300;

fn diary(lines: &[&str]) -> Diary {
    let context = Context {
        slab: SlabId::of_name("drying"),
        zone: TimeZone::UTC,
        author: "the crew".to_owned(),
        device: "phone".to_owned(),
        noted: None,
    };
    let entries = read_lines(&lines.join("\n"), &context).unwrap();
    let found = problems(&Diary::new(), &entries, Trade::built_in(), "2027-12-01T00:00:00Z".parse().unwrap());
    assert!(found.is_empty(), "{found:?}");
    let mut diary = Diary::new();
    for entry in entries {
        assert!(diary.add(entry).unwrap());
    }
    diary
}

fn asked(diary: &Diary, at: &str) -> Result<DryingQuestion, CannotTell> {
    question(&fold(diary, Knowledge::noted_by(at.parse().unwrap())), Trade::built_in())
}

fn ask(lines: &[&str], at: &str) -> DryingQuestion {
    asked(&diary(lines), at).unwrap()
}

const JOB: &str = r#"{"happened":"2026-01-01","body":{"kind":"job_opened","name":"drying","drying_sides":1}}"#;
const POUR: &str =
    r#"{"happened":"2026-03-01 00:00","body":{"kind":"pour","thickness":"100 mm","water_cement":"0.5"}}"#;
const CURING: &str = r#"{"happened":"2026-03-01 06:00","body":{"kind":"curing","method":"wet_covers"}}"#;
const CURED: &str = r#"{"happened":"2026-03-08 00:00","body":{"kind":"cured"}}"#;
const SEALER: &str =
    r#"{"happened":"2026-03-09","body":{"kind":"sealer_chosen","sealer":"acrylic-water","humidity_limit":"85 %"}}"#;
const LATER: &str = "2026-06-15T12:00:00Z";

fn probe(on: &str, humidity: f64) -> String {
    format!(
        r#"{{"happened":"{on}","body":{{"kind":"slab_humidity","humidity":"{humidity} %","depth":"40 mm","equilibrated":"24 h"}}}}"#
    )
}

fn percent(value: f64) -> RelativeHumidity {
    RelativeHumidity::percent(value).unwrap()
}

fn p50(forecast: &DryingForecast) -> f64 {
    forecast.dates(&forecast.limits[0]).unwrap().p50.unwrap().day.as_days()
}

/// Drying times fitted to recalled tables (grade M), 100 mm, one side, 60 % and 18 °C, no cure: the
/// very air that stands in where a diary has none.
#[test]
fn a_slab_without_readings_dries_as_the_calibration_table() {
    let table = include_str!("../../../reference/physics/drying_calibration.csv");
    let mut rows = 0;
    for row in table.lines().filter(|l| !l.starts_with('#')).skip(1) {
        let cells: Vec<f64> = row.split(',').map(|cell| cell.parse().unwrap()).collect();
        let pour = format!(
            r#"{{"happened":"2026-03-01 00:00","body":{{"kind":"pour","thickness":"100 mm","water_cement":"{}"}}}}"#,
            cells[0]
        );
        let none = r#"{"happened":"2026-03-01 00:00","body":{"kind":"curing","method":"none"}}"#;
        let asked = ask(&[JOB, &pour, none], LATER);
        let course = asked.slab().dry(asked.horizon(), &[Point::Probe], Accuracy::default()).unwrap();
        let days = course.time_to(0, percent(85.0)).unwrap().as_days();
        assert!((days - cells[4]).abs() <= 0.5 + 0.003 * cells[4], "w/c {}: {days} for {}", cells[0], cells[4]);
        rows += 1;
    }
    assert_eq!(rows, 4);
}

/// The same inputs given to `sums drying` make this plan; dates and bands must be the same but for its
/// longer look ahead.
#[test]
fn it_answers_as_the_single_calculation_does() {
    let lines = [JOB, POUR, CURING, CURED, SEALER, &probe("2026-04-20 00:00", 90.0), &probe("2026-05-20 00:00", 87.0)];
    let forecast = ask(&lines, LATER).forecast(1000, 1).unwrap();
    let thickness = Length::millimeters(100.0);
    let concrete = Concrete::default_prior(Fraction::share(0.5).unwrap(), thickness, Sides::One).unwrap();
    let room = Ambient::constant(percent(60.0), Temperature::celsius(18.0));
    let mut slab = DryingSlab::new(thickness, Sides::One, concrete, room);
    slab.wet_cure = Duration::days(7.0);
    let mut plan = ForecastPlan::new(slab.clone(), Draws { members: 1000, seed: Seed(1) });
    plan.horizon = Duration::days(3000.0);
    plan.accuracy = Accuracy::ENSEMBLE;
    let read = |day: f64, humidity: f64| Reading {
        at: Duration::days(day),
        depth: slab.probe_depth(),
        humidity: percent(humidity),
    };
    let after = plan.after_readings(&[read(50.0, 90.0), read(80.0, 87.0)], ReadingError::default()).unwrap();
    let before = plan.before_readings().unwrap();
    let limit = &forecast.limits[0];
    let pairs = [
        (before.date_to(percent(85.0)), limit.before_readings),
        (after.date_to(percent(85.0)), limit.after_readings.unwrap()),
    ];
    let mut compared = 0;
    for (sum, dates) in pairs {
        for (sum, date) in [(sum.p10, dates.p10), (sum.p50, dates.p50), (sum.p90, dates.p90)] {
            let (sum, day) = (sum.unwrap().value.as_days(), date.unwrap().day.as_days());
            assert!((sum - day).abs() < 0.1, "{sum} and {day}");
            compared += 1;
        }
    }
    assert_eq!(compared, 6);
    for band in forecast.bands.iter().step_by(10) {
        let sum = after.humidity(band.day).p50.value.as_percent();
        assert!((sum - band.after_readings.unwrap().p50.as_percent()).abs() < 0.02, "{:?}", band.day);
    }
    assert!((forecast.effective_members.unwrap() - after.effective_members()).abs() < 1.0);
    assert_eq!(forecast.rests_on, RestsOn::Readings);
}

#[test]
fn the_demo_slab_has_an_answer() {
    let text = include_str!("../../../demo/slab.jsonl");
    let context = Context {
        slab: SlabId::of_name("demo"),
        zone: TimeZone::get("America/New_York").unwrap(),
        author: "demo".to_owned(),
        device: "demo".to_owned(),
        noted: None,
    };
    let diary: Diary = read_lines(text, &context).unwrap().into_iter().collect();
    let asked = asked(&diary, "2026-03-27T12:00:00Z").unwrap();
    // Poured on 23 February at 08:30, covers off on 2 March at 08:00.
    assert_eq!(asked.slab().wet_cure.as_hours(), 167.5);
    assert_eq!((asked.thickness, asked.water_cement.as_share()), (Length::inches(4.0), 0.5));
    // One reading of the air on the last of 32 days, and 14 days with a temperature of the slab.
    assert!(asked.assumptions.contains(&Assumption::HumidityOnFewDays { known: 1, of: 32 }), "{:?}", asked.assumptions);
    assert!(asked.assumptions.contains(&Assumption::HumidityAfterRecord { humidity: percent(55.0) }));
    assert!(asked.readings.is_empty() && asked.left_out.is_empty());
    assert!(asked.evidence.len() > 15, "{:?}", asked.evidence);
    let mut steps = Vec::new();
    let forecast = asked.forecast_watched(MEMBERS, 1, &mut |done, of| steps.push((done, of))).unwrap();
    assert_eq!(steps, [(0, 2), (1, 2), (1, 2), (2, 2)]);
    assert_eq!(forecast.rests_on, RestsOn::Description);
    // 4 inches after 2 March: 120 days.
    assert_eq!(forecast.rule_of_thumb.unwrap().date.to_string(), "2026-06-30");
    assert!(!forecast.limits.is_empty() && forecast.limits.iter().all(|l| l.rule.is_some()));
    assert!(matches!(&forecast.limits[0].limit.from, LimitFrom::Class { sealer, .. } if sealer == "acrylic-water"));
    for caution in [Caution::ForecastNeverReleases, Caution::MakersSheetGoverns, Caution::PriorNeedsReadings] {
        assert!(forecast.cautions.contains(&caution), "{caution:?}");
    }
    let first = forecast.bands.first().unwrap();
    assert_eq!(first.date.to_string(), "2026-02-23");
    assert!(forecast.bands.len() >= 60 && forecast.bands.windows(2).all(|w| w[0].day < w[1].day));
}

#[test]
fn what_is_missing_is_named() {
    let lines = |pour: &str| diary(&[JOB, pour]);
    let told = |pour: &str| asked(&lines(pour), LATER).unwrap_err().code();
    assert_eq!(asked(&diary(&[JOB]), LATER).unwrap_err(), CannotTell::NoPour);
    let old = r#"{"happened":"2026-01-01","body":{"kind":"job_opened","name":"old","age":"existing"}}"#;
    assert_eq!(asked(&diary(&[old]), LATER).unwrap_err(), CannotTell::ExistingFloor);
    assert_eq!(told(r#"{"happened":"2026-03-01","body":{"kind":"pour","water_cement":"0.5"}}"#), "no-thickness");
    assert_eq!(told(r#"{"happened":"2026-03-01","body":{"kind":"pour","thickness":"4 in"}}"#), "no-water-cement");
    assert_eq!(
        told(r#"{"happened":"2026-03-01","body":{"kind":"pour","thickness":"4 in","water_cement":"0.8"}}"#),
        "water-cement-outside"
    );
    let outdoors = r#"{"happened":"2026-01-01","body":{"kind":"job_opened","name":"yard","exposure":"exterior"}}"#;
    assert_eq!(asked(&diary(&[outdoors, POUR]), LATER).unwrap_err(), CannotTell::OutdoorsNoAir);
}

#[test]
fn the_cure_is_taken_from_the_diary_or_the_longest_is_assumed() {
    let codes = |lines: &[&str]| -> (f64, Vec<&'static str>) {
        let asked = ask(lines, LATER);
        (asked.slab().wet_cure.as_days(), asked.assumptions.iter().map(Assumption::code).collect())
    };
    let air = ["air-humidity-assumed", "air-temperature-assumed"];
    assert_eq!(codes(&[JOB, POUR, CURING, CURED, SEALER]), (7.0, air.to_vec()));
    let (days, told) = codes(&[JOB, POUR, CURING, SEALER]);
    assert_eq!((days, told[0]), (10.25, "cure-not-ended"));
    let (days, told) = codes(&[JOB, POUR, SEALER]);
    assert_eq!((days, told[0]), (10.0, "cure-not-noted"));
    let membrane = CURING.replace("wet_covers", "membrane");
    let (days, told) = codes(&[JOB, POUR, &membrane, SEALER]);
    assert_eq!((days, told[0]), (0.25, "membrane-cure"));
    // The end of a cure whose beginning nobody noted is still its end.
    assert_eq!(codes(&[JOB, POUR, CURED, SEALER]), (7.0, air.to_vec()));
    // A cure of the concrete that was torn out before this was placed is not this one's.
    let torn_out = POUR.replace("2026-03-01", "2026-01-30");
    let early = CURING.replace("2026-03-01 06:00", "2026-02-01 06:00");
    let before = CURED.replace("2026-03-08", "2026-02-08");
    let (days, told) = codes(&[JOB, &torn_out, &early, &before, POUR, SEALER]);
    assert_eq!((days, told[0]), (10.0, "cure-not-noted"));
}

#[test]
fn without_a_sealer_both_usual_limits_are_shown() {
    let asked = ask(&[JOB, POUR, CURING, CURED], LATER);
    let limits: Vec<f64> = asked.limits.iter().map(|l| l.humidity.as_percent()).collect();
    assert_eq!(limits, [85.0, 75.0]);
    assert!(asked.assumptions.contains(&Assumption::NoSealerChosen));
    // A maker's own limit stands alone.
    let asked = ask(&[JOB, POUR, CURING, CURED, SEALER], LATER);
    assert_eq!(asked.limits.len(), 1);
    assert!(matches!(asked.limits[0].from, LimitFrom::Maker { .. }));
    assert_eq!(asked.limits[0].bound, LimitBound::Plain);
}

#[test]
fn readings_that_are_not_weighed_say_why() {
    let bare = |on: &str, more: &str| {
        format!(r#"{{"happened":"{on}","body":{{"kind":"slab_humidity","humidity":"88 %"{more}}}}}"#)
    };
    let lines = [
        JOB.to_owned(),
        POUR.replace("2026-03-01", "2026-01-30"),
        bare("2026-02-20", r#","depth":"40 mm","equilibrated":"24 h""#),
        POUR.to_owned(),
        CURING.to_owned(),
        bare("2026-03-05", r#","depth":"40 mm","equilibrated":"24 h""#),
        CURED.to_owned(),
        bare("2026-05-01", r#","equilibrated":"24 h""#),
        bare("2026-05-02", r#","depth":"40 mm""#),
        bare("2026-05-03", r#","depth":"40 mm","equilibrated":"3 h""#),
        probe("2026-05-04", 88.0),
    ];
    let lines: Vec<&str> = lines.iter().map(String::as_str).collect();
    let asked = ask(&lines, LATER);
    let why: Vec<&str> = asked.left_out.iter().map(|l| l.why.code()).collect();
    assert_eq!(why, ["before-pour", "under-wet-cure", "no-depth", "not-equilibrated", "not-equilibrated"]);
    assert_eq!(asked.left_out[4].why, WhyLeftOut::NotEquilibrated { needed: Duration::hours(24.0) });
    assert_eq!(asked.readings.len(), 1);
    let forecast = asked.forecast(MEMBERS, 1).unwrap();
    assert_eq!(forecast.points.iter().filter(|p| p.weighed).count(), 1);
    assert_eq!(forecast.points.len(), 6);
    // Two points each and 1.5 shared, together 2.5.
    let point = forecast.points.iter().find(|p| p.weighed).unwrap();
    assert!((point.high.as_percent() - 90.5).abs() < 1e-9 && (point.low.as_percent() - 85.5).abs() < 1e-9);
}

#[test]
fn a_corrected_reading_does_not_count() {
    let wrong = probe("2026-05-01", 60.0).replacen('{', r##"{"id":"#wrong","##, 1);
    let right = probe("2026-05-01", 89.0).replacen('{', r##"{"replaces":"#wrong","noted":"2026-05-02T00:00:00Z","##, 1);
    let asked = ask(&[JOB, POUR, CURING, CURED, SEALER, &wrong, &right], LATER);
    let read: Vec<f64> = asked.readings.iter().map(|r| r.humidity.as_percent()).collect();
    assert_eq!(read, [89.0]);
}

#[test]
fn readings_that_cannot_be_this_slab_give_no_date() {
    let asked = ask(&[JOB, POUR, CURING, CURED, SEALER, &probe("2026-03-20", 30.0)], LATER);
    let forecast = asked.forecast(MEMBERS, 1).unwrap();
    assert_eq!(forecast.rests_on, RestsOn::Nothing);
    let entry = asked.readings[0].entry;
    assert!(matches!(forecast.unexplained, Some(Unexplained::Reading { entry: e, .. }) if e == entry));
    assert!(forecast.dates(&forecast.limits[0]).is_none() && forecast.limits[0].rule.is_none());
    assert!(forecast.cautions.contains(&Caution::ReadingsUnexplained));
    assert!(forecast.bands.iter().all(|b| b.after_readings.is_none()));
}

#[test]
fn a_later_reading_below_the_band_never_moves_the_middle_date_later() {
    let base = [JOB, POUR, CURING, CURED, SEALER].map(str::to_owned);
    let mut lines = base.to_vec();
    lines.push(probe("2026-04-20 00:00", 91.0));
    let mut compared = 0;
    for (day, on) in [(60.0, "2026-04-30 00:00"), (75.0, "2026-05-15 00:00"), (90.0, "2026-05-30 00:00")] {
        let text: Vec<&str> = lines.iter().map(String::as_str).collect();
        let before = ask(&text, LATER).forecast(MEMBERS, 1).unwrap();
        let near = |b: &&slab_answers::drying::BandDay| (b.day.as_days() - day).abs();
        let band = before.bands.iter().min_by(|a, b| near(a).total_cmp(&near(b))).unwrap().after_readings.unwrap();
        for below in [1.0, 2.5] {
            let read = probe(on, (band.p10.as_percent() - below).round());
            let more: Vec<&str> = text.iter().copied().chain([read.as_str()]).collect();
            let after = ask(&more, LATER).forecast(MEMBERS, 1).unwrap();
            assert!(p50(&after) <= p50(&before), "{} after {}", p50(&after), p50(&before));
            compared += 1;
        }
        lines.push(probe(on, band.p50.as_percent().round()));
    }
    assert_eq!(compared, 6);
}

#[test]
fn only_what_was_known_enters() {
    let late = probe("2026-05-01", 88.0).replacen('{', r#"{"noted":"2026-06-01T00:00:00Z","#, 1);
    let diary = diary(&[JOB, POUR, CURING, CURED, SEALER, &late]);
    let read = |knowledge: Knowledge| {
        let asked = question(&fold(&diary, knowledge), Trade::built_in()).unwrap();
        asked.readings.len()
    };
    let at = |text: &str| text.parse().unwrap();
    assert_eq!(read(Knowledge::noted_by(at("2026-05-20T00:00:00Z"))), 0);
    assert_eq!(read(Knowledge::noted_by(at("2026-06-02T00:00:00Z"))), 1);
    assert_eq!(read(Knowledge::happened_by(at("2026-05-20T00:00:00Z"))), 1);
    assert_eq!(read(Knowledge::happened_by(at("2026-04-20T00:00:00Z"))), 0);
}

#[test]
fn the_order_of_arrival_does_not_matter() {
    let air = |on: &str, humidity: u32| {
        format!(r#"{{"happened":"{on}","body":{{"kind":"air_reading","air":"20 °C","humidity":"{humidity} %"}}}}"#)
    };
    let owned = [
        JOB.to_owned(),
        POUR.to_owned(),
        CURING.to_owned(),
        CURED.to_owned(),
        SEALER.to_owned(),
        air("2026-03-10", 55),
        air("2026-03-10 09:00", 65),
        air("2026-04-10", 45),
        probe("2026-04-20", 90.0),
        probe("2026-05-20", 87.0),
    ];
    let entries = diary(&owned.iter().map(String::as_str).collect::<Vec<_>>());
    let forward: Diary = entries.entries().cloned().collect();
    let mut backward = Diary::new();
    for entry in entries.entries().collect::<Vec<_>>().into_iter().rev() {
        backward.add(entry.clone()).unwrap();
    }
    let (a, b) = (asked(&forward, LATER).unwrap(), asked(&backward, LATER).unwrap());
    assert_eq!(a, b);
    assert_eq!(a.forecast(50, 3).unwrap(), b.forecast(50, 3).unwrap());
}

#[test]
fn indoors_the_weather_of_a_station_is_not_the_room() {
    let series = |columns: &str, row: &str| {
        format!(
            r#"{{"happened":"2026-03-20","body":{{"kind":"air_series","source":"s.csv","series":{{"columns":[{columns}],"rows":[["2026-03-10T12:00:00Z",{row}],["2026-03-11T12:00:00Z",{row}]]}}}}}}"#
        )
    };
    let station = series(r#""at","air_c","rh_pct","wind_m_s""#, "20.0,40.0,3.0");
    let asked = ask(&[JOB, POUR, CURING, CURED, SEALER, &station], LATER);
    assert!(asked.assumptions.contains(&Assumption::WeatherNotRoom));
    assert_eq!(asked.air.first().humidity, percent(60.0));
    let logger = series(r#""at","air_c","rh_pct""#, "20.0,40.0");
    let asked = ask(&[JOB, POUR, CURING, CURED, SEALER, &logger], LATER);
    assert!(
        asked.assumptions.contains(&Assumption::HumidityOnFewDays { known: 2, of: 107 }),
        "{:?}",
        asked.assumptions
    );
    assert_eq!(asked.air.first().humidity, percent(40.0));
    // The same series at the station counts outdoors.
    let outdoors = JOB.replace(r#""drying_sides":1"#, r#""drying_sides":1,"exposure":"exterior""#);
    let asked = ask(&[&outdoors, POUR, CURING, CURED, SEALER, &station], LATER);
    assert_eq!(asked.air.first().humidity, percent(40.0));
    assert!(asked.assumptions.contains(&Assumption::RainNotCounted));
}

#[test]
fn drier_air_on_record_brings_the_date_forward() {
    let air = |humidity: u32| {
        format!(
            r#"{{"happened":"2026-03-10","body":{{"kind":"air_reading","air":"18 °C","humidity":"{humidity} %"}}}}"#
        )
    };
    let date = |humidity: u32| {
        p50(&ask(&[JOB, POUR, CURING, CURED, SEALER, &air(humidity)], LATER).forecast(MEMBERS, 1).unwrap())
    };
    assert!(date(40) < date(60) && date(60) < date(75));
}

#[test]
fn a_zone_poured_later_is_followed_and_readings_of_the_other_are_left_out() {
    let at_zone = |line: &str, zone: &str| line.replacen('{', &format!(r#"{{"place":{{"zone":"{zone}"}},"#), 1);
    let first = at_zone(&POUR.replace("2026-03-01", "2026-02-01"), "hall");
    let second = at_zone(POUR, "shop");
    let cured = at_zone(CURED, "shop");
    let in_hall = at_zone(&probe("2026-05-01", 80.0), "hall");
    let in_shop = at_zone(&probe("2026-05-01", 89.0), "shop");
    let asked = ask(&[JOB, &first, &second, &cured, SEALER, &in_hall, &in_shop], LATER);
    assert_eq!(asked.poured.to_string(), "2026-03-01T00:00:00Z");
    assert!(asked.assumptions.iter().any(|a| matches!(a, Assumption::SeveralPours { count: 2, .. })));
    assert_eq!(asked.left_out.len(), 1);
    assert_eq!(asked.left_out[0].why, WhyLeftOut::OtherPour);
    assert_eq!(asked.readings[0].zones, ["shop"]);
}

#[test]
fn a_slab_that_dries_two_ways_has_no_rule_of_thumb() {
    let job = JOB.replace(r#""drying_sides":1"#, r#""drying_sides":2"#);
    let two = ask(&[&job, POUR, CURING, CURED, SEALER], LATER).forecast(MEMBERS, 1).unwrap();
    assert!(two.rule_of_thumb.is_none() && two.limits[0].rule.is_none());
    let one = ask(&[JOB, POUR, CURING, CURED, SEALER], LATER).forecast(MEMBERS, 1).unwrap();
    assert_eq!(one.limits[0].rule, Some(RuleCheck::Agrees));
    assert!(p50(&two) < p50(&one));
}
