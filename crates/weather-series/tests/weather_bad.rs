//! Files and rows that are not as they should be: nothing is lost in silence, nothing panics.

#![allow(clippy::unwrap_used, reason = "a test may stop")]

use std::path::Path;

use jiff::tz::TimeZone;
use weather_series::{ColumnMap, Form, Import, ImportError, Lost, Missing, Series, Why, import};

fn try_read(text: &[u8]) -> Result<Import, ImportError> {
    import(text, None, None, &TimeZone::UTC)
}

fn refusal(text: &str) -> ImportError {
    try_read(text.as_bytes()).unwrap_err()
}

fn repository_file(file: &str) -> String {
    std::fs::read_to_string(Path::new(env!("CARGO_MANIFEST_DIR")).join("../..").join(file)).unwrap()
}

fn epw() -> String {
    repository_file("reference/weather/pvgis-45N-8E-jan-feb.epw")
}

/// One cell replaced in one line (both counted from 0) of a comma-parted text.
fn with_cell(text: &str, line: usize, cell: usize, value: &str) -> String {
    let mut lines: Vec<String> = text.lines().map(str::to_owned).collect();
    let mut cells: Vec<&str> = lines[line].split(',').collect();
    cells[cell] = value;
    lines[line] = cells.join(",");
    lines.join("\n") + "\n"
}

#[test]
fn empty_and_binary_files_are_refused() {
    for empty in ["", "\n\n", " \r\n\t\r\n", "\u{feff}"] {
        assert_eq!(refusal(empty), ImportError::Empty, "{empty:?}");
    }
    let picture = b"\x89PNG\r\n\x1a\n\0\0\0\rIHDR\0\0\x01\0\0\0\x01\0\x08\x02\0\0\0";
    assert_eq!(try_read(picture).unwrap_err(), ImportError::Binary { byte: 8 });
    assert!(try_read(picture).unwrap_err().to_string().contains("save as CSV"));
}

#[test]
fn a_few_zero_bytes_of_a_failing_logger_spoil_their_own_row_only() {
    let mut log = b"time,air F\n".to_vec();
    for hour in 0..24 {
        log.extend(format!("2026-03-02 {hour:02}:00,54\n").bytes());
    }
    log.extend(b"2026-\0\0\0,5\n2026-03-03 00:00,55\n");
    let read = try_read(&log).unwrap();
    assert_eq!((read.series.samples.len(), read.skipped.len()), (25, 1));
    assert_eq!((read.skipped[0].line, read.skipped[0].why), (26, Why::BadTime));
}

#[test]
fn an_epw_cut_in_its_header_names_the_line() {
    let whole = epw();
    for lines in 1..8 {
        let cut: String = whole.lines().take(lines).map(|line| format!("{line}\n")).collect();
        let ImportError::Header { line, found, .. } = refusal(&cut) else { panic!("{lines}") };
        assert_eq!((line, found.as_str()), (lines + 1, "end of file"));
    }
    let header: String = whole.lines().take(8).map(|line| format!("{line}\n")).collect();
    assert_eq!(refusal(&header), ImportError::NoRows { line: 8 });
    let swapped = whole.replacen("COMMENTS 1", "COMMENT 1", 1);
    let ImportError::Header { line: 6, found, accepted } = refusal(&swapped) else { panic!() };
    assert!(found.starts_with("COMMENT 1,") && accepted.starts_with("COMMENTS 1"));
}

#[test]
fn an_epw_cut_in_its_last_row_keeps_the_good_part() {
    let whole = epw();
    let last = whole.trim_end().rfind('\n').unwrap() + 1;
    // Anywhere in the row before its last comma.
    for end in last + 1..last + 60 {
        let read = try_read(&whole.as_bytes()[..end]).unwrap();
        assert_eq!(read.series.samples.len(), 1415, "cut at {end}");
        let skipped = &read.skipped[0];
        assert_eq!((skipped.line, skipped.why, skipped.lost), (1424, Why::CutShort, Lost::Row));
        assert_eq!(skipped.value, whole[last..end]);
    }
}

#[test]
fn a_bad_field_of_the_site_is_named() {
    let cases = [(6, "latitude", "95"), (7, "longitude", "W8"), (8, "time zone", ""), (9, "elevation", "NaN")];
    for (cell, name, value) in cases {
        let ImportError::SiteField { line: 1, field, found, .. } = refusal(&with_cell(&epw(), 0, cell, value)) else {
            panic!("{name}")
        };
        assert_eq!((field, found.as_str()), (name, value));
    }
}

#[test]
fn missing_codes_are_absent_and_wild_readings_are_said() {
    let whole = epw();
    for (cell, code) in [(6, "99.9"), (7, "99.9"), (8, "999"), (9, "999999"), (21, "999")] {
        let read = try_read(with_cell(&whole, 8, cell, code).as_bytes()).unwrap();
        assert_eq!(read.skipped, [], "field {cell} code {code}");
        let sample = &read.series.samples[0];
        let absent = [
            sample.air.is_none(),
            sample.dew_point.is_none(),
            sample.humidity.is_none(),
            sample.pressure.is_none(),
            sample.wind.is_none(),
        ];
        let wanted = [6, 7, 8, 9, 21].map(|field| field == cell);
        assert_eq!(absent, wanted, "field {cell}");
    }
    for (cell, value, why) in [
        (6, "75", Why::OutOfRange),
        (6, "warm", Why::NotANumber),
        (8, "104", Why::OutOfRange),
        (9, "20", Why::OutOfRange),
        (21, "-1", Why::OutOfRange),
        (21, "61", Why::OutOfRange),
    ] {
        let read = try_read(with_cell(&whole, 10, cell, value).as_bytes()).unwrap();
        let skipped = &read.skipped[0];
        assert_eq!((skipped.line, skipped.lost, skipped.why, skipped.value.as_str()), (11, Lost::Reading, why, value));
        assert_eq!(read.series.samples.len(), 1416);
    }
}

#[test]
fn a_bad_hour_is_a_skipped_row_and_a_gap() {
    for (cell, value) in [(3, "25"), (3, "0"), (2, "32"), (1, "13"), (0, "20l8"), (4, "75")] {
        let read = try_read(with_cell(&epw(), 20, cell, value).as_bytes()).unwrap();
        assert_eq!((read.skipped[0].line, read.skipped[0].why), (21, Why::BadTime), "{value}");
        assert_eq!((read.series.samples.len(), read.gaps[0].missing), (1415, 1), "{value}");
    }
}

#[test]
fn one_wrong_year_does_not_make_a_record_a_typical_year() {
    let head: String = epw().lines().take(8).map(|line| format!("{line}\n")).collect();
    let tail = ",0,flags,2,1,94,96945,0,0,0,0,0,0,0,0,0,0,257,0.7\n";
    let rows = |years: [i16; 4]| -> String {
        let days = [(12, 31), (1, 1), (1, 2), (2, 29)];
        days.iter()
            .zip(years)
            .map(|((m, d), y)| (1..=24).map(|h| format!("{y},{m},{d},{h}{tail}")).collect::<String>())
            .collect()
    };
    // December of one year and January of the next is a record; a leap day exists in it.
    let read = try_read((head.clone() + &rows([2019, 2020, 2020, 2020])).as_bytes()).unwrap();
    assert!(!read.series.typical_year);
    assert_eq!(read.series.samples[0].at.to_string(), "2019-12-31T00:00:00Z");
    assert_eq!((read.series.samples.len(), read.skipped.len()), (96, 0));
    // One row with a slipped digit does not decide.
    let slipped = (head.clone() + &rows([2019, 2020, 2020, 2020])).replacen("2020,1,2,5,", "2010,1,2,5,", 1);
    assert!(!try_read(slipped.as_bytes()).unwrap().series.typical_year);
    // Months from years in no order are a typical year, which has no leap day.
    let read = try_read((head + &rows([2019, 2007, 2007, 2016])).as_bytes()).unwrap();
    assert!(read.series.typical_year);
    assert_eq!(read.skipped.iter().filter(|s| s.why == Why::LeapDay).count(), 24);
}

#[test]
fn a_tmy3_without_header_or_site_is_refused() {
    let whole = repository_file("demo/weather/greensboro-nc-tmy3-feb-may.csv");
    let forced = |text: &str| import(text.as_bytes(), Some(Form::Tmy3), None, &TimeZone::UTC).unwrap_err();
    let line = whole.lines().next().unwrap();
    let ImportError::Header { line: 2, found, .. } = forced(line) else { panic!() };
    assert_eq!(found, "end of file");
    let ImportError::Header { line: 1, .. } = forced("a,b\n") else { panic!() };
    // Cut in the middle of the last row.
    let read = try_read(&whole.as_bytes()[..whole.len() - 40]).unwrap();
    assert_eq!((read.series.samples.len(), read.skipped.len()), (2879, 1));
    assert_eq!((read.skipped[0].line, read.skipped[0].why), (2882, Why::CutShort));
}

#[test]
fn a_tmy3_leaves_out_missing_codes_and_rain_over_other_hours() {
    let whole = repository_file("demo/weather/greensboro-nc-tmy3-feb-may.csv");
    // Places of dry bulb and rain counted from 0 in the header line.
    let read = try_read(with_cell(&whole, 2, 31, "-9900").as_bytes()).unwrap();
    assert_eq!((read.skipped.len(), read.series.samples[0].air), (0, None));
    let read = try_read(with_cell(&whole, 2, 31, "-990").as_bytes()).unwrap();
    assert_eq!((read.skipped[0].why, read.skipped[0].column.as_deref()), (Why::OutOfRange, Some("Dry-bulb (C)")));
    let read = try_read(with_cell(&whole, 2, 65, "6").as_bytes()).unwrap();
    assert_eq!((read.skipped[0].why, read.series.samples[0].rain), (Why::OtherPeriod, None));
    assert!(read.series.samples[0].air.is_some() && read.series.samples[1].rain.is_some());
}

#[test]
fn wrong_columns_say_what_was_found_and_what_is_needed() {
    let cases = [
        ("time,volts\n2026-03-02 14:00,3\n", Missing::Reading),
        ("air F,RH %\n54,61\n", Missing::Time),
        ("a,b,c\n1,2,3\n", Missing::TimeAndReading),
    ];
    for (text, wanted) in cases {
        let error = refusal(text);
        let ImportError::Columns { found, missing } = &error else { panic!("{error}") };
        assert_eq!(*missing, wanted);
        assert_eq!(found.join(","), text.lines().next().unwrap());
        assert!(error.to_string().contains("at least one of"), "{error}");
    }
}

#[test]
fn a_unit_is_never_guessed() {
    let error = refusal("time,temp,RH\n2026-03-02 14:00,54,61\n");
    let ImportError::UnitMissing { column, key: "air", .. } = &error else { panic!("{error}") };
    assert_eq!(column, "temp");
    assert!(error.to_string().contains("air_unit"), "{error}");
}

#[test]
fn a_wrong_mapping_is_named() {
    let text = b"time,air F\n2026-03-02 14:00,54\n";
    let with = |key: &str, value: &str| {
        let mut map = ColumnMap::default();
        map.set(key, value).unwrap();
        import(text, None, Some(&map), &TimeZone::UTC).unwrap_err()
    };
    let ImportError::NoSuchColumn { key: "slab", column, found } = with("slab", "Probe 2") else { panic!() };
    assert_eq!((column.as_str(), found.join(",").as_str()), ("Probe 2", "time,air F"));
    let ImportError::UnknownUnit { key, found, .. } = with("air_unit", "R") else { panic!() };
    assert_eq!((key.as_str(), found.as_str()), ("air_unit", "R"));
    let unknown = ColumnMap::default().set("humid", "x").unwrap_err();
    assert_eq!(unknown, ImportError::UnknownKey { found: "humid".into() });
    let fixed = import(epw().as_bytes(), None, Some(&ColumnMap::default()), &TimeZone::UTC).unwrap_err();
    assert_eq!(fixed, ImportError::MappingNotUsed { form: "epw" });
}

#[test]
fn bad_readings_drop_themselves_and_bad_rows_drop_alone() {
    let read = try_read(
        b"time,air F,RH %,wind mph,slab F\n\
          2026-03-02 14:00,54,101,10,50\n\
          2026-03-02 15:00,hot,-1,500,999\n\
          2026-03-02 16:00,54,,NA,--\n\
          2026-03-02 17:00,,,,\n\
          2026-03-02 18:00,54 V,61,10,50\n\
          2026-03-02 19:00,54,61\n\
          2026-03-02 20:00,54,61,10,50,7\n\
          2026-03-02 21:00,\"54,61,10,50\n\
          2026-03-02 22:00,54,61,10,50\n",
    )
    .unwrap();
    let found: Vec<(usize, Option<&str>, &str, &str)> =
        read.skipped.iter().map(|s| (s.line, s.column.as_deref(), s.why.code(), s.value.as_str())).collect();
    let wanted = [
        (2, Some("RH %"), "out_of_range", "101"),
        (3, Some("air F"), "not_a_number", "hot"),
        (3, Some("RH %"), "out_of_range", "-1"),
        (3, Some("wind mph"), "out_of_range", "500"),
        (3, Some("slab F"), "out_of_range", "999"),
        (5, None, "nothing_measured", "2026-03-02T17:00:00Z"),
        (6, Some("air F"), "unknown_unit", "54 V"),
        (7, None, "cut_short", "2026-03-02 19:00,54,61"),
        (8, None, "too_many_cells", "2026-03-02 20:00,54,61,10,50,7"),
        (9, None, "cut_short", "2026-03-02 21:00,\"54,61,10,50"),
    ];
    assert_eq!(found.len(), wanted.len(), "{found:#?}");
    for quantity in wanted {
        assert!(found.contains(&quantity), "{quantity:?} not in {found:#?}");
    }
    // 14:00, 16:00, 18:00 and 22:00 are left; at 15:00 no reading was good.
    assert_eq!(read.series.samples.len(), 4);
    assert_eq!(
        read.skipped[0].to_string(),
        "line 2, RH % \"101\": outside what can be measured outdoors; accepted: a number from 0 to 100 %"
    );
}

#[test]
fn a_file_with_no_good_row_says_the_first_reason() {
    let error = refusal("time,air F\nsoon,54\nlater,55\n");
    let ImportError::NoGoodRow { count: 2, first } = &error else { panic!("{error}") };
    assert_eq!((first.line, first.value.as_str()), (2, "soon"));
    assert_eq!(refusal("time,air F\n"), ImportError::NoRows { line: 1 });
}

#[test]
fn a_compact_series_refuses_what_it_does_not_know() {
    let cases = [
        (r#"{"columns":["at","air_f"],"rows":[]}"#, "unknown column"),
        (r#"{"columns":["at","air_c","air_c"],"rows":[]}"#, "named twice"),
        (r#"{"columns":["air_c"],"rows":[]}"#, "no time"),
        (r#"{"columns":["at"],"rows":[],"zone":1}"#, "unknown field"),
        (r#"{"columns":["at","air_c"],"rows":[["2026-03-02T14:00:00Z"]]}"#, "2 cells"),
        (r#"{"columns":["at"],"rows":[["2026-03-02 14:00"]]}"#, "not a time"),
        (r#"{"columns":["at","rh_pct"],"rows":[["2026-03-02T14:00:00Z",120]]}"#, "0 to 100"),
        (r#"{"columns":["at","air_c"],"rows":[["2026-03-02T14:00:00Z","12"]]}"#, "rows[0].air_c"),
        (r#"{"columns":["at"],"rows":[["2026-03-02T14:00:00Z"],["2026-03-02T14:00:00Z"]]}"#, "ascending"),
    ];
    for (json, wanted) in cases {
        let error = serde_json::from_str::<Series>(json).unwrap_err().to_string();
        assert!(error.contains(wanted), "{json}: {error}");
    }
    let nulls = r#"{"columns":["air_c","at"],"rows":[[null,"2026-03-02T14:00:00Z"],[12,"2026-03-02T15:00:00Z"]]}"#;
    let series: Series = serde_json::from_str(nulls).unwrap();
    assert!(series.samples[0].air.is_none() && series.samples[1].air.is_some());
}
