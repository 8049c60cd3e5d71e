//! Laws of the weather import, as properties.

#![allow(clippy::unwrap_used, reason = "a test may stop")]

use std::fmt::Write as _;

use jiff::Timestamp;
use jiff::tz::{Offset, TimeZone};
use proptest::prelude::*;
use units::{Length, Pressure, RelativeHumidity, Speed, Temperature};
use weather_series::{Form, Sample, Series, import};

fn new_york() -> TimeZone {
    TimeZone::get("America/New_York").unwrap()
}

/// A reading with up to six decimals, as sensors and files have, or none.
fn reading(low: i32, high: i32) -> impl Strategy<Value = Option<f64>> {
    let scaled = (low..high, 0..1_000_000_i32, 0..7_i32).prop_map(|(whole, millionths, decimals)| {
        let scale = 10_f64.powi(decimals);
        ((f64::from(whole) + f64::from(millionths) / 1e6) * scale).round() / scale
    });
    proptest::option::of(scaled)
}

fn sample() -> impl Strategy<Value = Sample> {
    let readings = (
        reading(-60, 60),
        reading(0, 100),
        reading(-80, 60),
        reading(0, 60),
        reading(-40, 80),
        reading(300, 1100),
        reading(0, 500),
    );
    readings.prop_map(|(air, humidity, dew_point, wind, slab, pressure, rain)| Sample {
        at: Timestamp::UNIX_EPOCH,
        air: air.map(Temperature::celsius),
        humidity: humidity.map(|h| RelativeHumidity::percent(h).unwrap()),
        dew_point: dew_point.map(Temperature::celsius),
        wind: wind.map(Speed::meters_per_second),
        slab: slab.map(Temperature::celsius),
        pressure: pressure.map(Pressure::hectopascals),
        rain: rain.map(Length::millimeters),
    })
}

fn series() -> impl Strategy<Value = Series> {
    let steps = proptest::collection::vec((1_i64..4_000_000_000_000, sample()), 0..30);
    (steps, any::<bool>()).prop_map(|(steps, typical_year)| {
        let mut at = 1_772_478_000_000_000_000_i128;
        let samples = steps
            .into_iter()
            .map(|(step, sample)| {
                at += i128::from(step);
                Sample { at: Timestamp::from_nanosecond(at).unwrap(), ..sample }
            })
            .collect();
        Series { samples, typical_year }
    })
}

/// Text made of what such files are made of: far likelier to get deep into a reader than noise.
fn scraps() -> impl Strategy<Value = String> {
    const SCRAPS: [&str; 40] = [
        "LOCATION,",
        "DATA PERIODS,1,1,Data,Sunday,1/1,12/31",
        "Date (MM/DD/YYYY),Time (HH:MM)",
        ",Dry-bulb (C)",
        "723170,\"A\",NC,-5.0,36.1,-79.9,273",
        "time",
        "fecha",
        "hora",
        "date",
        "air °F",
        "RH %",
        "wind km/h",
        "losa °C",
        "temp",
        "timestamp UTC+25:00",
        "\n",
        "\n",
        "\n",
        "\r\n",
        ",",
        ",",
        ",",
        ";",
        "\t",
        "\"",
        "2026-03-02 14:00",
        "3/2/2026 2:00 PM",
        "31.12.99 24:00",
        "T",
        "24:00",
        "02/29/1996",
        "2026-11-01 01:30",
        "54",
        "-1,5",
        "99999999999999999999",
        "1e400",
        "°",
        "π",
        "é m",
        "\0",
    ];
    proptest::collection::vec(proptest::sample::select(SCRAPS.to_vec()), 0..60).prop_map(|parts| parts.concat())
}

fn forms() -> [Option<Form>; 4] {
    [None, Some(Form::Epw), Some(Form::Tmy3), Some(Form::PlainCsv)]
}

/// Reads in every form; what is read must keep the promises of the series.
fn read_in_every_form(bytes: &[u8]) {
    for form in forms() {
        if let Ok(read) = import(bytes, form, None, &new_york()) {
            assert!(!read.series.samples.is_empty());
            assert!(read.series.samples.windows(2).all(|pair| pair[0].at < pair[1].at));
            assert!(read.series.samples.iter().all(|sample| !sample.is_empty()));
        }
    }
}

const EPW_HEAD: &str = "LOCATION,a,b,c,d,e,45,8,1,250\nDESIGN CONDITIONS\nTYPICAL/EXTREME PERIODS\n\
    GROUND TEMPERATURES\nHOLIDAYS/DAYLIGHT SAVINGS\nCOMMENTS 1\nCOMMENTS 2\nDATA PERIODS\n";
const TMY3_HEAD: &str =
    "1,\"A\",NC,-5,36,-80,273\nDate (MM/DD/YYYY),Time (HH:MM),Dry-bulb (C),Lprecip depth (mm),Lprecip quantity (hr)\n";
const PLAIN_HEAD: &str = "fecha,hora,air F,RH %\n";

proptest! {
    #![proptest_config(ProptestConfig::with_cases(256))]

    #[test]
    fn no_bytes_make_it_panic(bytes in proptest::collection::vec(any::<u8>(), 0..400)) {
        read_in_every_form(&bytes);
    }

    #[test]
    fn no_text_makes_it_panic(text in "\\PC{0,200}", scraps in scraps()) {
        read_in_every_form(text.as_bytes());
        read_in_every_form(scraps.as_bytes());
    }

    #[test]
    fn no_rows_under_a_good_header_make_it_panic(
        rows in proptest::collection::vec(proptest::collection::vec("[0-9]{0,4}|[0-9]{1,2}/[0-9]{1,2}/[0-9]{2,4}|[0-9]{1,2}:[0-9]{2}|-?[0-9]{1,3}\\.[0-9]|\\PC{0,6}", 2..36), 0..12),
    ) {
        let body: String = rows.iter().map(|cells| cells.join(",") + "\n").collect();
        for head in [EPW_HEAD, TMY3_HEAD, PLAIN_HEAD] {
            read_in_every_form(format!("{head}{body}").as_bytes());
        }
    }

    #[test]
    fn the_compact_form_loses_nothing(series in series()) {
        let json = serde_json::to_string(&series).unwrap();
        let back: Series = serde_json::from_str(&json).unwrap();
        prop_assert_eq!(&back, &series);
        prop_assert_eq!(serde_json::to_string(&back).unwrap(), json);
    }

    /// Every row of a log is kept, skipped or a duplicate, and bad rows take no good one with them.
    #[test]
    fn good_rows_survive_bad_ones(rows in proptest::collection::vec((0_u32..48, -40_i32..120, any::<bool>()), 1..60)) {
        let mut text = String::from("time,air F\n");
        for (quarter, air, good) in &rows {
            let (hour, minute) = (quarter / 4, quarter % 4 * 15);
            let air = if *good { air.to_string() } else { "x".to_owned() };
            writeln!(text, "2026-06-02 {hour:02}:{minute:02},{air}").unwrap();
        }
        let mut good: Vec<u32> = rows.iter().filter(|row| row.2).map(|row| row.0).collect();
        let count = good.len();
        good.sort_unstable();
        good.dedup();
        match import(text.as_bytes(), None, None, &new_york()) {
            Ok(read) => {
                prop_assert_eq!(read.series.samples.len(), good.len());
                prop_assert_eq!(read.duplicates.len(), count - good.len());
                prop_assert_eq!(read.skipped.len(), rows.len() - count);
            }
            Err(error) => prop_assert!(good.is_empty(), "{}", error),
        }
    }

    /// What is written in local time of any zone comes back as the same moment.
    #[test]
    fn a_written_moment_is_read_back(second in 946_684_800_i64..4_102_444_800, zone in proptest::sample::select(vec!["America/New_York", "America/Mexico_City", "Europe/Madrid", "Australia/Lord_Howe", "Asia/Kathmandu"])) {
        let zone = TimeZone::get(zone).unwrap();
        let at = Timestamp::from_second(second).unwrap();
        let offset = zone.to_offset(at);
        let written = offset.to_datetime(at);
        let text = format!("time,air F\n{written},54\n");
        let read = import(text.as_bytes(), None, None, &zone).unwrap();
        let found = read.series.samples[0].at;
        // In the repeated hour a single reading is taken as the first pass.
        let earlier = zone.to_ambiguous_timestamp(written).earlier().unwrap();
        prop_assert_eq!(found, earlier);
        let american = written.strftime("%m/%d/%Y %I:%M:%S %p");
        let text = format!("time,air F\n{american},54\n12/31/1999 12:00,50\n");
        let read = import(text.as_bytes(), None, None, &zone).unwrap();
        prop_assert_eq!(read.series.samples[1].at, earlier);
    }

    /// Laying a typical year on a year keeps every reading, its hour and its order.
    #[test]
    fn a_typical_year_keeps_its_readings(year in 1900_i16..2200, hours in -12_i8..14, steps in proptest::collection::vec(1_i64..600, 1..40)) {
        let offset = Offset::constant(hours);
        let mut at = offset.to_timestamp(jiff::civil::date(2001, 1, 1).at(0, 0, 0, 0)).unwrap();
        let mut samples = Vec::new();
        for step in steps {
            at += jiff::SignedDuration::from_hours(step);
            samples.push(Sample { air: Some(Temperature::celsius(9.0)), ..Sample::empty(at) });
        }
        let typical = Series { samples, typical_year: true };
        let laid = typical.typical_to_year(year, offset).unwrap();
        prop_assert_eq!(laid.samples.len(), typical.samples.len());
        prop_assert!(laid.samples.windows(2).all(|pair| pair[0].at < pair[1].at));
        for (before, after) in typical.samples.iter().zip(&laid.samples) {
            let (before, after) = (offset.to_datetime(before.at), offset.to_datetime(after.at));
            prop_assert_eq!((before.month(), before.day(), before.time()), (after.month(), after.day(), after.time()));
            prop_assert_eq!(i32::from(after.year()) - i32::from(year), i32::from(before.year()) - 2001);
        }
    }
}
