//! The two public weather years against an independent reader: `reference/weather/expected.csv`,
//! made by pvlib and pandas.

#![allow(clippy::unwrap_used, reason = "a test may stop")]

use std::path::{Path, PathBuf};

use jiff::tz::{Offset, TimeZone};
use jiff::{SignedDuration, Timestamp};
use units::{Length, Pressure, RelativeHumidity, Speed, Temperature};
use weather_series::{Assumption, Form, Import, Sample, TypicalYearError, import};

/// Fields of `expected.csv` in its order.
const FIELDS: usize = 6;

fn repository() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("../..")
}

fn read(file: &str, form: Form) -> Import {
    let bytes = std::fs::read(repository().join(file)).unwrap();
    let read = import(&bytes, None, None, &TimeZone::UTC).unwrap();
    assert_eq!(read.form, form, "recognized from the content");
    read
}

fn tmy3() -> Import {
    read("demo/weather/greensboro-nc-tmy3-feb-may.csv", Form::Tmy3)
}

fn epw() -> Import {
    read("reference/weather/pvgis-45N-8E-jan-feb.epw", Form::Epw)
}

fn fields(sample: &Sample) -> [Option<f64>; FIELDS] {
    [
        sample.air.map(Temperature::as_celsius),
        sample.humidity.map(RelativeHumidity::as_percent),
        sample.dew_point.map(Temperature::as_celsius),
        sample.wind.map(Speed::as_meters_per_second),
        sample.pressure.map(Pressure::as_hectopascals),
        sample.rain.map(Length::as_millimeters),
    ]
}

fn close(ours: f64, theirs: f64) -> bool {
    (ours - theirs).abs() <= 1e-9 * theirs.abs().max(1.0)
}

/// The month a row belongs to: that of the start of its hour.
fn month(sample: &Sample, offset: Offset) -> i8 {
    offset.to_datetime(sample.at - SignedDuration::from_hours(1)).month()
}

fn check_line(read: &Import, kind: &str, key: &str, expected: &[Option<f64>]) {
    let offset = read.site.as_ref().unwrap().standard_offset;
    let samples: Vec<&Sample> = match kind {
        "spot" => {
            let at: Timestamp = key.parse().unwrap();
            read.series.samples.iter().filter(|s| s.at == at).collect()
        }
        _ => read.series.samples.iter().filter(|s| month(s, offset) == key.parse::<i8>().unwrap()).collect(),
    };
    assert!(!samples.is_empty(), "{kind} {key}");
    for (field, theirs) in expected.iter().enumerate() {
        let values: Vec<f64> = samples.iter().filter_map(|s| fields(s)[field]).collect();
        #[allow(clippy::cast_precision_loss, reason = "a few thousand rows")]
        let count = values.len() as f64;
        let ours = match kind {
            "count" => Some(count),
            "mean" => (count > 0.0).then(|| values.iter().sum::<f64>() / count),
            _ => values.first().copied(),
        };
        match (ours, *theirs) {
            (Some(ours), Some(theirs)) => assert!(close(ours, theirs), "{kind} {key} {field}: {ours} {theirs}"),
            (ours, theirs) => assert_eq!(ours, theirs, "{kind} {key} field {field}"),
        }
    }
}

#[test]
fn agrees_with_the_independent_reader() {
    let (tmy3, epw) = (tmy3(), epw());
    let text = std::fs::read_to_string(repository().join("reference/weather/expected.csv")).unwrap();
    let mut table = csv::ReaderBuilder::new().comment(Some(b'#')).from_reader(text.as_bytes());
    let mut checked = 0;
    for record in table.records() {
        let record = record.unwrap();
        let expected: Vec<Option<f64>> = record.iter().skip(3).map(|cell| cell.parse().ok()).collect();
        assert_eq!(expected.len(), FIELDS);
        let read = if &record[0] == "tmy3" { &tmy3 } else { &epw };
        check_line(read, &record[1], &record[2], &expected);
        checked += 1;
    }
    // 4 and 2 months, each with counts and means, and 50 rows of each file.
    assert_eq!(checked, 2 * (4 + 2) + 100);
}

#[test]
fn says_site_hours_and_typical_year() {
    let read = tmy3();
    let site = read.site.unwrap();
    assert_eq!(site.name, "GREENSBORO PIEDMONT TRIAD INT, NC");
    assert!(close(site.latitude_degrees, 36.1) && close(site.longitude_degrees, -79.95));
    assert!(close(site.elevation.as_meters(), 273.0));
    assert_eq!(site.standard_offset, Offset::constant(-5));
    assert!(read.series.typical_year);
    assert!(read.assumed.contains(&Assumption::TypicalYear { first: 1980, last: 1996 }));
    assert!(read.assumed.contains(&Assumption::HourEnding { offset: Offset::constant(-5) }));
    // Counted with awk: rain above zero with uncertainty code 9, 0 + 54 + 38 + 16 hours.
    assert!(read.assumed.contains(&Assumption::DoubtfulRain { rows: 108 }));
    assert_eq!(read.usual_step, Some(SignedDuration::from_hours(1)));
    assert_eq!((read.skipped.len(), read.gaps.len(), read.duplicates.len()), (0, 0, 0));

    let read = epw();
    let site = read.site.unwrap();
    assert!(close(site.latitude_degrees, 45.0) && close(site.longitude_degrees, 8.0));
    assert_eq!(site.standard_offset, Offset::constant(1));
    assert!(read.series.typical_year);
    assert!(read.assumed.contains(&Assumption::TypicalYear { first: 2007, last: 2018 }));
    assert_eq!((read.skipped.len(), read.gaps.len(), read.duplicates.len()), (0, 0, 0));
}

#[test]
fn hour_one_ends_at_one_and_hour_24_at_midnight() {
    let samples = tmy3().series.samples;
    // 02/01/1996,01:00 and 02/01/1996,24:00 at UTC-5.
    assert_eq!(samples[0].at.to_string(), "2001-02-01T06:00:00Z");
    assert_eq!(samples[23].at.to_string(), "2001-02-02T05:00:00Z");
    assert!(close(samples[0].air.unwrap().as_celsius(), 5.2));
    let samples = epw().series.samples;
    assert_eq!(samples[0].at.to_string(), "2001-01-01T00:00:00Z");
}

#[test]
fn the_second_week_of_may_can_be_asked_in_any_year() {
    let read = tmy3();
    for year in [2026, 2028] {
        let laid = read.typical_to_year(year).unwrap();
        assert!(!laid.typical_year);
        assert_eq!(laid.samples.len(), read.series.samples.len());
        assert!(laid.samples.windows(2).all(|pair| pair[0].at < pair[1].at));
        let from: Timestamp = format!("{year}-05-08T00:00:00-05:00").parse().unwrap();
        let week = laid.samples.iter().filter(|s| s.at > from && s.at <= from + SignedDuration::from_hours(168));
        assert_eq!(week.count(), 168, "{year}");
        // 05/08/1986,01:00: the first row of that week, read from the file by hand.
        let first = laid.samples.iter().find(|s| s.at > from).unwrap();
        assert!(close(first.air.unwrap().as_celsius(), MAY_8_01), "{first:?}");
    }
    // A leap year has a day of which nothing typical is known.
    let leap = read.typical_to_year(2028).unwrap();
    let step = |pair: &[Sample]| pair[1].at.duration_since(pair[0].at);
    let longest = leap.samples.windows(2).map(step).max().unwrap();
    assert_eq!(longest, SignedDuration::from_hours(25));
}

/// Dry bulb of the row `05/08/1986,01:00`.
const MAY_8_01: f64 = 20.6;

#[test]
fn the_last_hour_of_a_typical_year_ends_in_the_next() {
    let file = "1,\"A\",NC,-5,36,-80,273\nDate (MM/DD/YYYY),Time (HH:MM),Dry-bulb (C)\n\
                12/31/1980,23:00,4\n12/31/1980,24:00,5\n";
    let read = import(file.as_bytes(), None, None, &TimeZone::UTC).unwrap();
    let laid = read.typical_to_year(2026).unwrap();
    assert_eq!(laid.samples[1].at.to_string(), "2027-01-01T05:00:00Z");
}

#[test]
fn a_record_of_dates_and_a_wild_year_are_refused() {
    let read = tmy3();
    assert_eq!(read.typical_to_year(0), Err(TypicalYearError::Year { found: 0 }));
    let laid = read.typical_to_year(2026).unwrap();
    assert_eq!(laid.typical_to_year(2027, Offset::UTC), Err(TypicalYearError::NotTypical));
}
