//! What the two weather years share: fields with missing codes, and hours stamped at their end.

use jiff::civil::{Date, Time};
use jiff::tz::Offset;
use jiff::{SignedDuration, Timestamp};
use units::Length;

use super::error::ImportError;
use super::finish::Draft;
use super::quantity::Quantity;
use super::report::Why;
use super::series::{NOMINAL_YEAR, Sample, YEARS};
use super::text::shown;
use super::unit::Unit;

/// When a row was measured, as its cells say.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct Hour {
    pub(super) year: i16,
    pub(super) month: i8,
    pub(super) day: i8,
    /// Minutes from midnight to the end of the interval, 0 to 1440.
    pub(super) minute_of_day: i64,
}

pub(super) const HOUR_ACCEPTED: &str = "a day of the calendar and an hour from 1 to 24 (hour ending)";

impl Hour {
    /// The moment, in the row's own year or in the nominal year.
    pub(super) fn moment(self, typical: bool, offset: Offset) -> Result<Timestamp, Why> {
        if typical && (self.month, self.day) == (2, 29) {
            return Err(Why::LeapDay);
        }
        if !YEARS.contains(&self.year) || !(0..=1440).contains(&self.minute_of_day) {
            return Err(Why::BadTime);
        }
        let year = if typical { NOMINAL_YEAR } else { self.year };
        let midnight = Date::new(year, self.month, self.day).map_err(|_| Why::BadTime)?;
        let end = midnight
            .to_datetime(Time::midnight())
            .checked_add(SignedDuration::from_mins(self.minute_of_day))
            .map_err(|_| Why::BadTime)?;
        offset.to_timestamp(end).map_err(|_| Why::BadTime)
    }
}

/// One field of a weather year.
pub(super) struct Field<'a> {
    pub(super) quantity: Quantity,
    pub(super) unit: Unit,
    pub(super) name: &'a str,
    pub(super) cell: &'a str,
}

/// Reads a field into the sample; blanks and the form's missing codes leave it empty.
pub(super) fn put(
    draft: &mut Draft,
    line: usize,
    sample: &mut Sample,
    field: &Field<'_>,
    is_missing: impl Fn(f64) -> bool,
) {
    if field.cell.is_empty() {
        return;
    }
    let put = match plain_number(field.cell) {
        None => Err(Why::NotANumber),
        Some(value) if is_missing(value) => Ok(()),
        Some(value) => field.quantity.put(sample, value, field.unit),
    };
    if let Err(why) = put {
        draft.skip_reading(line, (field.name, field.cell), why, field.quantity.accepted());
    }
}

/// Drops rain that was collected over another time than the row's hour.
pub(super) fn hourly_rain(draft: &mut Draft, line: usize, sample: &mut Sample, period: (&str, &str)) {
    let hours = plain_number(period.1).filter(|hours| *hours > 0.0 && *hours < 99.0);
    if sample.rain.is_some() && hours.is_some_and(|hours| (hours - 1.0).abs() > 1e-9) {
        sample.rain = None;
        draft.skip_reading(line, period, Why::OtherPeriod, "1 (hour)");
    }
}

/// A finite number with a decimal point.
pub(super) fn plain_number(cell: &str) -> Option<f64> {
    cell.trim().parse::<f64>().ok().filter(|number| number.is_finite())
}

/// A number of the site line within its range.
pub(super) struct SiteNumber {
    pub(super) line: usize,
    pub(super) field: &'static str,
    pub(super) low: f64,
    pub(super) high: f64,
    pub(super) accepted: &'static str,
}

impl SiteNumber {
    pub(super) fn read(&self, cells: &[String], index: usize) -> Result<f64, ImportError> {
        let found = cells.get(index).map_or("", String::as_str);
        plain_number(found).filter(|n| (self.low..=self.high).contains(n)).ok_or_else(|| ImportError::SiteField {
            line: self.line,
            field: self.field,
            found: shown(found),
            accepted: self.accepted,
        })
    }
}

/// Latitude and longitude in degrees, elevation and offset, from their places in the site line.
pub(super) fn place(
    line: usize,
    cells: &[String],
    places: [usize; 4],
) -> Result<(f64, f64, Length, Offset), ImportError> {
    let number = |field, low, high, accepted| SiteNumber { line, field, low, high, accepted };
    let latitude = number("latitude", -90.0, 90.0, "-90 to 90 degrees north").read(cells, places[0])?;
    let longitude = number("longitude", -180.0, 180.0, "-180 to 180 degrees east").read(cells, places[1])?;
    let elevation = number("elevation", -1000.0, 9999.9, "-1000 to 9999.9 m").read(cells, places[2])?;
    let zone = number("time zone", -12.0, 14.0, "-12 to 14 hours from UTC");
    let hours = zone.read(cells, places[3])?;
    // The range keeps it under 50 400 s, so the cast cannot cut.
    #[expect(clippy::cast_possible_truncation, reason = "at most 14 h in seconds")]
    let seconds = (hours * 3600.0).round() as i32;
    let offset = Offset::from_seconds(seconds).map_err(|_| ImportError::SiteField {
        line,
        field: zone.field,
        found: shown(&cells[places[3]]),
        accepted: zone.accepted,
    })?;
    Ok((latitude, longitude, Length::meters(elevation), offset))
}
