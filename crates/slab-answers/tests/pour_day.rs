//! Evaporation on the day of the pour: reference cases, and what it takes for granted.

#![allow(clippy::unwrap_used, reason = "a test may stop")]

use jiff::civil::date;
use jiff::tz::TimeZone;
use science::air::Level;
use slab_answers::pour_day::{
    Assumption, Basis, CannotTell, ConcreteFrom, DayFrom, FACTS, Lacks, PourDay, evaporation_at, month_levels, pour_day,
};
use slab_diary::body::AirSeries;
use slab_diary::fold;
use slab_diary::{Context, Diary, Knowledge, SlabId, read_lines};
use trade_facts::{Grade, Trade};
use units::{EvaporationRate, Temperature};
use weather_series::import;

const JOB: &str = r#"{"happened":"2026-01-01","body":{"kind":"job_opened","name":"pour","exposure":"exterior","time_zone":"America/New_York"}}"#;
const POUR: &str = r#"{"happened":"2026-04-14 07:00","body":{"kind":"pour","thickness":"4 in"}}"#;

fn zone() -> TimeZone {
    TimeZone::get("America/New_York").unwrap()
}

fn diary(lines: &[&str]) -> Diary {
    let context = Context {
        slab: SlabId::of_name("pour"),
        zone: zone(),
        author: "the crew".to_owned(),
        device: "phone".to_owned(),
        noted: None,
    };
    read_lines(&lines.join("\n"), &context).unwrap().into_iter().collect()
}

/// The demo's typical year as an entry.
fn weather() -> String {
    let file = include_bytes!("../../../demo/weather/greensboro-nc-tmy3-feb-may.csv");
    let read = import(file, None, None, &zone()).unwrap();
    let body = AirSeries { source: "greensboro".to_owned(), series: read.series };
    let mut body = serde_json::to_value(&body).unwrap();
    body["kind"] = "air_series".into();
    serde_json::json!({"happened": "2026-02-10 09:00", "body": body}).to_string()
}

fn day_of(lines: &[&str], day: Option<jiff::civil::Date>) -> Result<PourDay, CannotTell> {
    let diary = diary(lines);
    pour_day(&fold(&diary, Knowledge::noted_by("2026-06-01T00:00:00Z".parse().unwrap())), Trade::built_in(), day)
}

/// Computed with psychrolib's vapor pressure (V): a reading at the slab for each row, told in kg/m²/h.
#[test]
fn a_reading_evaporates_as_the_reference_cases() {
    let table = include_str!("../../../reference/physics/evaporation_checks.csv");
    let mut rows = 0;
    for row in table.lines().filter(|l| !l.starts_with('#')).skip(1) {
        let cells: Vec<&str> = row.split(',').collect();
        let line = format!(
            r#"{{"happened":"2026-04-14 12:00","body":{{"kind":"air_reading","slab":"{} °C","air":"{} °C","humidity":"{} %","wind":"{} km/h"}}}}"#,
            cells[0], cells[1], cells[2], cells[3]
        );
        let diary = diary(&[JOB, &line]);
        let slab = fold(&diary, Knowledge::noted_by("2026-06-01T00:00:00Z".parse().unwrap()));
        let moment = evaporation_at(&slab, Trade::built_in(), None).unwrap();
        let wanted: f64 = cells[4].parse().unwrap();
        let rate = moment.evaporation.estimate.rate.as_kilograms_per_square_meter_hour();
        assert!((rate - wanted).abs() < 2e-5 + 1e-4 * wanted.abs(), "{row}: {rate}");
        // 0.2 lb/ft²/h is 0.97649 kg/m²/h, 0.1 is half of it (NIST SP 811, V); the band is ± 40 %.
        let level = |alarm: f64| {
            let high = wanted + 0.4 * wanted.abs();
            if wanted > alarm {
                Level::Above
            } else if high > alarm {
                Level::Possible
            } else {
                Level::Below
            }
        };
        assert_eq!(moment.evaporation.usual, level(0.97649), "{row}");
        assert_eq!(moment.evaporation.silica_fume, level(0.97649 / 2.0), "{row}");
        assert!(matches!(moment.concrete.from, ConcreteFrom::Read(_)) && moment.assumptions.is_empty());
        rows += 1;
    }
    assert_eq!(rows, 12);
}

/// The same rows as a series at a station, with the share of its wind set to 1 and the concrete read.
#[test]
fn a_series_evaporates_as_the_reference_cases() {
    let table = include_str!("../../../reference/physics/evaporation_checks.csv");
    let own = r#"{"happened":"2026-01-02","body":{"kind":"limit_set","fact":"wind-at-slab","value":1.0,"reason":"the station stands on the slab"}}"#;
    let mut rows = 0;
    for row in table.lines().filter(|l| !l.starts_with('#')).skip(1) {
        let cells: Vec<f64> = row.split(',').map(|cell| cell.parse().unwrap()).collect();
        let wind = cells[3] / 3.6;
        let series = format!(
            r#"{{"happened":"2026-04-20","body":{{"kind":"air_series","source":"s","series":{{"columns":["at","air_c","rh_pct","wind_m_s"],"rows":[["2026-04-14T17:00:00Z",{},{},{wind:.9}],["2026-04-14T18:00:00Z",null,null,2.0]]}}}}}}"#,
            cells[1], cells[2]
        );
        let read =
            format!(r#"{{"happened":"2026-04-14 08:00","body":{{"kind":"temperature","slab":"{} °C"}}}}"#, cells[0]);
        let day = day_of(&[JOB, POUR, own, &series, &read], None).unwrap();
        assert_eq!((day.hours.len(), day.basis), (2, Basis::Recorded));
        // The row is stamped 17:00Z, the end of its hour: it begins at noon in New York.
        assert_eq!((day.hours[0].hour, day.hours[1].hour), (12, 13));
        let rate = day.hours[0].evaporation.unwrap().estimate.rate.as_kilograms_per_square_meter_hour();
        assert!((rate - cells[4]).abs() < 2e-5 + 1e-4 * cells[4].abs(), "{row}: {rate}");
        assert!(day.hours[1].evaporation.is_none());
        rows += 1;
    }
    assert_eq!(rows, 12);
}

#[test]
fn a_typical_year_is_laid_on_the_year_of_the_pour() {
    let weather = weather();
    let day = day_of(&[JOB, &weather, POUR], None).unwrap();
    assert_eq!((day.day, day.basis), (date(2026, 4, 14), Basis::TypicalYear));
    assert!(matches!(day.day_from, DayFrom::Pour(_)));
    // A whole day by the slab's clock, summer time or not, each hour once.
    let clock: Vec<i8> = day.hours.iter().map(|h| h.hour).collect();
    assert_eq!(clock, (0..24).collect::<Vec<i8>>());
    assert!(day.hours.iter().all(|h| h.begins < h.ends));
    // Midway between 50 and 90 °F; wind at the slab two thirds of the station's.
    assert_eq!(day.concrete.temperature.show_fahrenheit(6), "70.000000 °F");
    let hour = &day.hours[12];
    let share =
        hour.wind_at_slab.unwrap().as_meters_per_second() / hour.wind_at_station.unwrap().as_meters_per_second();
    assert!((share - 0.67).abs() < 1e-12);
    let codes: Vec<&str> = day.assumptions.iter().map(Assumption::code).collect();
    assert_eq!(codes, ["concrete-temperature", "wind-from-station", "typical-year", "stamped-at-the-end"]);
    // Noon in summer time is the file's row of 12:00 (11:00 to 12:00 standard time) on 14 April.
    let file = include_str!("../../../demo/weather/greensboro-nc-tmy3-feb-may.csv");
    let mut lines = file.lines().skip(1);
    let names: Vec<&str> = lines.next().unwrap().split(',').collect();
    let row: Vec<&str> = lines.find(|l| l.starts_with("04/14/") && l.contains(",12:00,")).unwrap().split(',').collect();
    let cell = |name: &str| row[names.iter().position(|n| n.starts_with(name)).unwrap()].parse::<f64>().unwrap();
    assert_eq!(hour.air.unwrap().show_celsius(1), format!("{:.1} °C", cell("Dry-bulb (C)")));
    assert_eq!(hour.humidity.unwrap().as_percent(), cell("RHum (%)"));
    assert!((hour.wind_at_station.unwrap().as_meters_per_second() - cell("Wspd (m/s)")).abs() < 1e-9);
    let worst = day.worst().unwrap().evaporation.unwrap().estimate.rate;
    assert!(day.hours.iter().all(|h| h.evaporation.is_none_or(|e| e.estimate.rate <= worst)));
}

#[test]
fn a_recorded_day_goes_before_a_typical_one() {
    let recorded = r#"{"happened":"2026-02-01","body":{"kind":"air_series","source":"forecast","series":{"columns":["at","air_c","rh_pct","wind_m_s"],"rows":[["2026-04-14T17:00:00Z",20.0,50.0,3.0]]}}}"#;
    let weather = weather();
    let day = day_of(&[JOB, recorded, &weather, POUR], None).unwrap();
    assert_eq!((day.basis, day.source.as_str(), day.hours.len()), (Basis::Recorded, "forecast", 1));
    let other = day_of(&[JOB, recorded, &weather, POUR], Some(date(2026, 4, 15))).unwrap();
    assert_eq!((other.basis, other.day_from), (Basis::TypicalYear, DayFrom::Asked));
}

#[test]
fn what_is_missing_is_named() {
    let weather = weather();
    assert_eq!(day_of(&[JOB], None).unwrap_err(), CannotTell::NoDay);
    assert_eq!(day_of(&[JOB, POUR], None).unwrap_err(), CannotTell::NoSeries);
    // The demo's file ends in May.
    let august = date(2026, 8, 1);
    assert_eq!(day_of(&[JOB, &weather], Some(august)).unwrap_err(), CannotTell::DayNotCovered { day: august });
    let at = |line: &str| {
        let diary = diary(&[JOB, line]);
        let slab = fold(&diary, Knowledge::noted_by("2026-06-01T00:00:00Z".parse().unwrap()));
        evaporation_at(&slab, Trade::built_in(), None).unwrap_err()
    };
    assert_eq!(at(POUR), CannotTell::NoAirReading);
    let still = r#"{"happened":"2026-04-14","body":{"kind":"air_reading","air":"20 °C","humidity":"50 %"}}"#;
    assert!(matches!(at(still), CannotTell::ReadingLacks { lacks, .. } if lacks == [Lacks::Wind]));
}

#[test]
fn stretches_join_hours_and_the_month_counts_the_same_levels() {
    let weather = weather();
    // An alarm of the slab's own, low enough that May reaches it.
    let own = r#"{"happened":"2026-01-02","body":{"kind":"limit_set","fact":"evaporation-alarm","value":0.05,"reason":"the engineer's"}}"#;
    let diary = diary(&[JOB, own, weather.as_str(), POUR]);
    let slab = fold(&diary, Knowledge::noted_by("2026-06-01T00:00:00Z".parse().unwrap()));
    let trade = Trade::built_in();
    // In May clocks run on summer time in the nominal year as in 2026.
    let month = month_levels(&slab, trade, 5).unwrap();
    assert_eq!(month.levels.len(), 31 * 24);
    assert_eq!(month.alarm, EvaporationRate::pounds_per_square_foot_hour(0.05));
    assert!((month.concrete - Temperature::fahrenheit(70.0)).as_celsius_degrees().abs() < 1e-9);
    let mut counted = 0;
    for n in 1..=31 {
        let day = pour_day(&slab, trade, Some(date(2026, 5, n))).unwrap();
        let above = |h: &slab_answers::pour_day::PourHour| h.evaporation.is_some_and(|e| e.usual == Level::Above);
        let hours: i64 = day.stretches(above).iter().map(|(from, to)| to.duration_since(*from).as_hours()).sum();
        assert_eq!(hours as usize, day.hours.iter().filter(|h| above(h)).count());
        counted += hours as usize;
    }
    let in_month = month.levels.iter().filter(|(_, level)| *level == Some(Level::Above)).count();
    assert_eq!(counted, in_month);
    assert!(in_month > 20, "{in_month}");
}

#[test]
fn the_facts_named_have_their_sources() {
    for id in FACTS {
        assert!(Trade::built_in().fact(id).is_some(), "{id}");
    }
    assert_eq!(Trade::built_in().fact("wind-at-slab").unwrap().grade, Grade::FromMemory);
}
