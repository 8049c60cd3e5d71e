//! Plain tables as loggers and people write them.

#![allow(clippy::unwrap_used, reason = "a test may stop")]

use jiff::SignedDuration;
use jiff::tz::{Offset, TimeZone};
use weather_series::{
    Assumption, Because, ColumnMap, DateOrder, Encoding, Form, Import, Lost, Quantity, Unit, Why, import,
};

fn new_york() -> TimeZone {
    TimeZone::get("America/New_York").unwrap()
}

fn read(text: &str) -> Import {
    import(text.as_bytes(), None, None, &new_york()).unwrap()
}

fn moments(read: &Import) -> Vec<String> {
    read.series.samples.iter().map(|s| s.at.to_string()).collect()
}

fn near(found: Option<f64>, wanted: f64) -> bool {
    found.is_some_and(|found| (found - wanted).abs() < 1e-6)
}

/// Header of each way to name the columns; the row is 54.5 °F, 61 %, 10 mph, 50 °F and so on.
#[test]
fn columns_are_recognized_in_two_languages_and_any_order() {
    let cases = [
        ("time,air °F,RH %,wind mph,slab F", "2026-03-02 14:00,54.5,61,10,50"),
        ("RH %,slab F,time,wind mph,air °F", "61,50,2026-03-02 14:00,10,54.5"),
        ("timestamp;temp_c;rh_pct;wind_m_s;slab_c", "2026-03-02T14:00;12,5;61;4,4704;10"),
        (
            "fecha\thora\ttemperatura del aire (°C)\thumedad\tviento km/h\tlosa °C",
            "2/3/2026\t14:00\t12,5\t61\t16,09344\t10",
        ),
        (
            "Date,Time,AirTempF,Humidity (%),Wind Speed (mph),Concrete surface temp (F)",
            "3/2/2026,2:00 PM,54.5,61,10,50",
        ),
        ("Fecha y hora;Temp. aire ºF;HR %;Velocidad del viento m/s;Piso ºF", "2026-03-02 14:00;54.5;61;4.4704;50"),
        ("when|ambient|humidity|wind|floor", "2026-03-02 14:00|54.5 °F|61 %|10 mph|50 °F"),
    ];
    for (header, row) in cases {
        let read = read(&format!("{header}\n{row}\n"));
        assert_eq!(read.form, Form::PlainCsv);
        assert_eq!(read.skipped, [], "{header}");
        let sample = &read.series.samples[0];
        let celsius = near(sample.air.map(|t| t.as_celsius()), 12.5);
        assert!(celsius || near(sample.air.map(|t| t.as_fahrenheit()), 54.5), "{header}: {sample:?}");
        assert!(near(sample.humidity.map(|h| h.as_percent()), 61.0), "{header}: {sample:?}");
        assert!(near(sample.wind.map(|w| w.as_meters_per_second()), 4.4704), "{header}: {sample:?}");
        assert!(near(sample.slab.map(|t| t.as_celsius()), 10.0), "{header}: {sample:?}");
        // 14:00 in New York in winter; 2/3/2026 alone is read month first, as said below.
        let at = if header.starts_with("fecha\t") { "2026-02-03T19:00:00Z" } else { "2026-03-02T19:00:00Z" };
        assert_eq!(moments(&read), [at], "{header}");
    }
}

#[test]
fn what_is_not_the_plain_reading_is_left_alone() {
    let read = read(
        "time,wind gust mph,wind direction deg,wind mph,slab RH %,soil temp F,max temp F,air F,heat index F\n\
         2026-03-02 14:00,25,180,10,88,48,70,54.5,50\n",
    );
    let sample = &read.series.samples[0];
    assert!(near(sample.wind.map(|w| w.as_miles_per_hour()), 10.0));
    assert!(near(sample.air.map(|t| t.as_fahrenheit()), 54.5));
    assert_eq!((sample.humidity, sample.slab), (None, None));
    let unused = ["wind gust mph", "wind direction deg", "slab RH %", "soil temp F", "max temp F", "heat index F"];
    assert!(read.assumed.contains(&Assumption::Unused { columns: unused.map(str::to_owned).to_vec() }));
}

#[test]
fn all_quantities_and_units_convert() {
    // Factors: NIST SP 811 appendix B (knot 1852 m / 3600 s, inHg 3386.389 Pa, inch 25.4 mm).
    let read = read("time,air K,dew point F,wind kn,pressure inHg,rain in\n2026-03-02 14:00,300,41,10,29.92,0.25\n");
    let sample = &read.series.samples[0];
    assert!(near(sample.air.map(|t| t.as_celsius()), 26.85));
    assert!(near(sample.dew_point.map(|t| t.as_celsius()), 5.0));
    assert!(near(sample.wind.map(|w| w.as_meters_per_second()), 18_520.0 / 3600.0));
    assert!(near(sample.pressure.map(|p| p.as_pascals()), 29.92 * 3386.389));
    assert!(near(sample.rain.map(|r| r.as_millimeters()), 6.35));
}

#[test]
fn times_are_read_in_every_usual_form() {
    let cases = [
        ("2026-03-02T14:00:00-05:00", "2026-03-02T19:00:00Z"),
        ("2026-03-02T14:00Z", "2026-03-02T14:00:00Z"),
        ("2026-03-02 14:00:30.5", "2026-03-02T19:00:30.5Z"),
        ("2026/03/02 14:00", "2026-03-02T19:00:00Z"),
        ("20260302 14:00", "2026-03-02T19:00:00Z"),
        ("2026-03-02 14:00 UTC", "2026-03-02T14:00:00Z"),
        ("2026-03-02 14:00 -0800", "2026-03-02T22:00:00Z"),
        ("2026-03-02T14:00-05:00[America/New_York]", "2026-03-02T19:00:00Z"),
        ("3/2/2026 2:00 PM", "2026-03-02T19:00:00Z"),
        ("3/2/2026 2 pm", "2026-03-02T19:00:00Z"),
        ("03-02-2026 02:00 p. m.", "2026-03-02T19:00:00Z"),
        ("3/2/26 12:30 AM", "2026-03-02T05:30:00Z"),
        ("3/2/2026 24:00", "2026-03-03T05:00:00Z"),
        ("2 Mar 2026 14:00", "2026-03-02T19:00:00Z"),
        ("Mar 2, 2026 14:00", "2026-03-02T19:00:00Z"),
        ("2 de marzo de 2026 14:00", "2026-03-02T19:00:00Z"),
        ("15 ene 2026 14:00", "2026-01-15T19:00:00Z"),
        ("1772478000", "2026-03-02T19:00:00Z"),
        ("1772478000000", "2026-03-02T19:00:00Z"),
        ("2026-07-02 14:00", "2026-07-02T18:00:00Z"),
    ];
    for (written, wanted) in cases {
        let read = read(&format!("time;air F\n{written};54\n"));
        assert_eq!(moments(&read), [wanted], "{written}");
    }
}

#[test]
fn a_date_and_a_time_of_day_make_one_moment() {
    for (date, clock) in [
        ("3/2/2026", "14:00"),
        ("3/2/2026 0:00", "14:00"),
        ("2026-03-02", "1400"),
        ("3/2/2026", "1899-12-30 14:00:00"),
        ("3/2/2026", "14"),
    ] {
        let read = read(&format!("date,hour,air F\n{date},{clock},54\n"));
        assert_eq!(moments(&read), ["2026-03-02T19:00:00Z"], "{date} {clock}");
    }
}

#[test]
fn a_bad_time_is_skipped_and_the_rest_kept() {
    let bad = [
        "",
        "yesterday",
        "2026-03-02",
        "2026-13-02 14:00",
        "2026-02-30 14:00",
        "0026-03-02 14:00",
        "3/2/2026 13:00 PM",
        "14:00",
        "2026-03-02 25:00",
        "2026-03-02 14:61",
    ];
    for written in bad {
        let read = read(&format!("time;air F\n{written};54\n2026-03-02 14:00;55\n"));
        assert_eq!(read.series.samples.len(), 1, "{written}");
        let skipped = &read.skipped[0];
        assert_eq!((skipped.line, skipped.column.as_deref()), (2, Some("time")), "{written}");
        assert_eq!((skipped.why, skipped.lost, skipped.value.as_str()), (Why::BadTime, Lost::Row, written));
        assert!(skipped.accepted.contains("2026-03-02 14:00"));
    }
}

#[test]
fn the_order_of_day_and_month_is_found_in_the_whole_file() {
    let cases = [
        (&["3/2/2026", "3/14/2026"][..], DateOrder::MonthFirst, Because::NumberAboveTwelve),
        (&["3/2/2026", "14/2/2026"], DateOrder::DayFirst, Because::NumberAboveTwelve),
        (&["3/2/2026", "4/2/2026", "5/2/2026"], DateOrder::DayFirst, Because::ShorterLog),
        (&["3/2/2026", "3/3/2026", "3/4/2026"], DateOrder::MonthFirst, Because::ShorterLog),
        (&["3/2/2026"], DateOrder::MonthFirst, Because::Habit),
        (&["3.2.2026"], DateOrder::DayFirst, Because::Habit),
        (&["3/13/2026", "3/14/2026", "14/3/2026"], DateOrder::MonthFirst, Because::Majority),
    ];
    for (dates, order, because) in cases {
        let rows: String = dates.iter().map(|date| format!("{date} 14:00;54\n")).collect();
        let read = read(&format!("time;air F\n{rows}"));
        assert!(read.assumed.contains(&Assumption::DateOrder { order, because }), "{dates:?}: {:?}", read.assumed);
        let skipped = usize::from(because == Because::Majority);
        assert_eq!(read.skipped.len(), skipped, "{dates:?}");
        let first = if order == DateOrder::MonthFirst { "2026-03" } else { "2026-02" };
        assert!(moments(&read)[0].starts_with(first), "{dates:?}");
    }
}

#[test]
fn the_hour_that_clocks_skip_is_refused_and_the_hour_they_repeat_is_told_apart() {
    // New York: 2026-03-08 02:00 to 03:00 does not exist, 2026-11-01 01:00 to 02:00 comes twice.
    let spring = read("time,air F\n2026-03-08 01:30,50\n2026-03-08 02:30,51\n2026-03-08 03:30,52\n");
    assert_eq!(moments(&spring), ["2026-03-08T06:30:00Z", "2026-03-08T07:30:00Z"]);
    assert_eq!((spring.skipped[0].line, spring.skipped[0].why), (3, Why::NoSuchLocalTime));

    let rows = [
        "2026-11-01 00:30,50",
        "2026-11-01 01:00,51",
        "2026-11-01 01:30,52",
        "2026-11-01 01:00,53",
        "2026-11-01 01:30,54",
        "2026-11-01 02:00,55",
    ];
    let wanted = ["04:30", "05:00", "05:30", "06:00", "06:30", "07:00"].map(|t| format!("2026-11-01T{t}:00Z"));
    let autumn = read(&format!("time,air F\n{}\n", rows.join("\n")));
    assert_eq!(moments(&autumn), wanted);
    assert!(autumn.assumed.contains(&Assumption::RepeatedHour { first_line: 3, rows: 4 }));
    assert!(autumn.gaps.is_empty() && autumn.duplicates.is_empty());

    let newest_first: Vec<&str> = rows.iter().rev().copied().collect();
    let autumn = read(&format!("time,air F\n{}\n", newest_first.join("\n")));
    assert_eq!(moments(&autumn), wanted);
    assert!(near(autumn.series.samples[1].air.map(|t| t.as_fahrenheit()), 51.0));
    assert!(autumn.assumed.contains(&Assumption::Sorted { rows: 5 }));
}

#[test]
fn an_offset_in_the_header_beats_the_zone() {
    for (header, offset) in [("Time (UTC)", 0), ("Date Time, GMT-05:00", -5), ("timestamp_utc", 0)] {
        let read = read(&format!("{};air F\n2026-07-02 14:00;54\n", header.replace(',', "")));
        let offset = Offset::constant(offset);
        assert!(read.assumed.contains(&Assumption::StatedOffset { offset }), "{header}");
        let local = offset.to_datetime(read.series.samples[0].at);
        assert_eq!(local.to_string(), "2026-07-02T14:00:00", "{header}");
    }
}

#[test]
fn unsorted_doubled_and_missing_rows_are_said() {
    let read = read(
        "time,air F\n2026-03-02 16:00,56\n2026-03-02 14:00,54\n2026-03-02 15:00,55\n2026-03-02 15:00,99\n\
         2026-03-02 20:00,60\n2026-03-02 21:00,61\n",
    );
    let air: Vec<f64> = read.series.samples.iter().map(|s| s.air.unwrap().as_fahrenheit().round()).collect();
    assert_eq!(air, [54.0, 55.0, 56.0, 60.0, 61.0]);
    assert!(read.assumed.contains(&Assumption::Sorted { rows: 3 }));
    let duplicate = &read.duplicates[0];
    assert_eq!((duplicate.kept_line, duplicate.dropped_line, read.duplicates.len()), (4, 5, 1));
    assert_eq!(read.usual_step, Some(SignedDuration::from_hours(1)));
    let gap = &read.gaps[0];
    assert_eq!((gap.missing, read.gaps.len()), (3, 1));
    assert_eq!(
        (gap.from.to_string(), gap.to.to_string()),
        ("2026-03-02T21:00:00Z".into(), "2026-03-03T01:00:00Z".into())
    );
}

#[test]
fn a_mapping_names_columns_and_units() {
    let text = "Logger A\nserial 12\nStamp,T1,T2,Moist\n2026-03-02 14:00,54.5,12,61\n";
    let mut map = ColumnMap::default();
    for (key, value) in [
        ("time", "stamp"),
        ("air", "T1"),
        ("air_unit", "F"),
        ("slab", "T2"),
        ("slab_unit", "°C"),
        ("humidity", "Moist"),
    ] {
        map.set(key, value).unwrap();
    }
    let read = import(text.as_bytes(), None, Some(&map), &new_york()).unwrap();
    let sample = &read.series.samples[0];
    assert!(near(sample.air.map(|t| t.as_fahrenheit()), 54.5));
    assert!(near(sample.slab.map(|t| t.as_celsius()), 12.0));
    assert!(near(sample.humidity.map(|h| h.as_percent()), 61.0));
    assert!(read.assumed.contains(&Assumption::HeaderLine { line: 3 }));
    let column = Assumption::Column { quantity: Quantity::Slab, column: "T2".into(), unit: Unit::Celsius };
    assert!(read.assumed.contains(&column));
}

#[test]
fn mapped_date_and_clock_beat_a_column_that_looks_like_both() {
    let text = "timestamp,day of visit,o'clock,air F\n2026-01-01 00:00,2026-03-02,14:00,54\n";
    let mut map = ColumnMap::default();
    map.set("date", "Day of visit").unwrap();
    map.set("clock", "o'clock").unwrap();
    let read = import(text.as_bytes(), None, Some(&map), &new_york()).unwrap();
    assert_eq!(moments(&read), ["2026-03-02T19:00:00Z"]);
}

#[test]
fn quoted_cells_and_grouped_numbers_are_read() {
    let read = read(
        "time,\"air, \"\"shade\"\" F\",pressure hPa\n2026-03-02 14:00,\"54,5\",\"1,013.25\"\n\
         2026-03-02 15:00,\u{2212}4,\"1.013,25\"\n",
    );
    let samples = &read.series.samples;
    assert!(near(samples[0].air.map(|t| t.as_fahrenheit()), 54.5));
    assert!(near(samples[1].air.map(|t| t.as_fahrenheit()), -4.0));
    for sample in samples {
        assert!(near(sample.pressure.map(|p| p.as_hectopascals()), 1013.25), "{sample:?}");
    }
    let column =
        Assumption::Column { quantity: Quantity::Air, column: "air, \"shade\" F".into(), unit: Unit::Fahrenheit };
    assert!(read.assumed.contains(&column) && read.assumed.contains(&Assumption::DecimalComma));
}

#[test]
fn hr_is_humidity_except_beside_the_hour() {
    let read = read("fecha,hora (hr),HR\n2026-03-02,14:00,61\n");
    assert_eq!(moments(&read), ["2026-03-02T19:00:00Z"]);
    assert!(near(read.series.samples[0].humidity.map(|h| h.as_percent()), 61.0));
}

#[test]
fn other_encodings_are_read_and_said() {
    let text = "fecha y hora;aire °C;presión hPa\n2026-03-02 14:00;12,5;990\n";
    let latin: Vec<u8> = text.chars().map(|c| u8::try_from(u32::from(c)).unwrap()).collect();
    let utf16: Vec<u8> = [0xfeff].into_iter().chain(text.encode_utf16()).flat_map(u16::to_le_bytes).collect();
    let marked: Vec<u8> = [0xef, 0xbb, 0xbf].into_iter().chain(text.bytes()).collect();
    let plain = read(text);
    for (bytes, encoding) in [(latin, Some(Encoding::Latin1)), (utf16, Some(Encoding::Utf16)), (marked, None)] {
        let read = import(&bytes, None, None, &new_york()).unwrap();
        assert_eq!(read.series, plain.series);
        let said = read.assumed.iter().find_map(|a| if let Assumption::Encoding(e) = a { Some(*e) } else { None });
        assert_eq!(said, encoding);
    }
    assert!(near(plain.series.samples[0].pressure.map(|p| p.as_hectopascals()), 990.0));
    let old_mac = text.replace('\n', "\r");
    assert_eq!(read(&old_mac).series, plain.series);
}
