//! The series of samples, and laying a typical year on a wanted one.

use jiff::Timestamp;
use jiff::civil::Date;
use jiff::tz::{Offset, TimeZone};
use units::{Length, Pressure, RelativeHumidity, Speed, Temperature};

/// The year in which the samples of a typical year are stamped. It is not a leap year, as no
/// typical year has a 29 February.
pub const NOMINAL_YEAR: i16 = 2001;

/// The years for which a time is believed: outside them a clock was never set.
pub(super) const YEARS: std::ops::RangeInclusive<i16> = 1900..=2199;

/// What was measured at one moment. An absent reading is `None`, never a stand-in value.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Sample {
    /// The moment; for a weather year the end of the hour.
    pub at: Timestamp,
    /// Air temperature, -60 to 60 °C.
    pub air: Option<Temperature>,
    /// Relative humidity of the air, 0 to 100 %.
    pub humidity: Option<RelativeHumidity>,
    /// Dew point, -80 to 60 °C.
    pub dew_point: Option<Temperature>,
    /// Wind speed, 0 to 60 m/s, at the height where it was measured (see
    /// [`Assumption::WindAtStation`](super::Assumption::WindAtStation)).
    pub wind: Option<Speed>,
    /// Temperature of the slab's surface, -40 to 80 °C.
    pub slab: Option<Temperature>,
    /// Station pressure, 300 to 1100 hPa.
    pub pressure: Option<Pressure>,
    /// Rain since the sample before, 0 to 500 mm.
    pub rain: Option<Length>,
}

impl Sample {
    /// A sample with nothing measured yet.
    #[must_use]
    pub const fn empty(at: Timestamp) -> Self {
        Self { at, air: None, humidity: None, dew_point: None, wind: None, slab: None, pressure: None, rain: None }
    }

    /// Whether nothing was measured.
    #[must_use]
    pub const fn is_empty(&self) -> bool {
        self.air.is_none()
            && self.humidity.is_none()
            && self.dew_point.is_none()
            && self.wind.is_none()
            && self.slab.is_none()
            && self.pressure.is_none()
            && self.rain.is_none()
    }
}

/// Samples in ascending time, no two at one moment.
///
/// In JSON it is compact, one row for each sample and only the columns in use:
/// `{"columns":["at","air_c","rh_pct"],"rows":[["2026-03-02T14:00:00Z",12.3,55.0]]}`, with
/// `"typical_year":true` in front when it is one. Every reading comes back as it was (to a
/// billionth of °C, %, m/s, hPa or mm); unknown columns and readings out of range are refused.
#[derive(Debug, Clone, PartialEq)]
pub struct Series {
    /// The samples, ascending.
    pub samples: Vec<Sample>,
    /// Whether this is a typical year, stamped in [`NOMINAL_YEAR`], and not a record of dates.
    pub typical_year: bool,
}

/// A series that cannot be laid on a year.
#[derive(Debug, Clone, Copy, PartialEq, Eq, thiserror::Error)]
pub enum TypicalYearError {
    /// The series records real dates.
    #[error("typical_year \"false\": this series records real dates; accepted: a typical year")]
    NotTypical,
    /// The year is outside what is believed.
    #[error("year \"{found}\": it must lie between 1900 and 2199; accepted: the year of the job, such as 2026")]
    Year {
        /// The year asked for.
        found: i16,
    },
}

impl Series {
    /// Lays a typical year on a wanted year, so that "the second week of May" can be asked.
    ///
    /// Month, day and hour stay the same in the station's standard time, which is `offset`. A leap
    /// year keeps a day without samples, from 00:00 on 29 February: nothing typical is known of it.
    ///
    /// # Errors
    /// [`TypicalYearError`] when the series is not a typical year, or the year not in 1900 to 2199.
    pub fn typical_to_year(&self, year: i16, offset: Offset) -> Result<Self, TypicalYearError> {
        if !self.typical_year {
            return Err(TypicalYearError::NotTypical);
        }
        let refuse = TypicalYearError::Year { found: year };
        if !YEARS.contains(&year) {
            return Err(refuse);
        }
        let mut samples = Vec::with_capacity(self.samples.len());
        for sample in &self.samples {
            let local = offset.to_datetime(sample.at);
            // The last hour of the year ends in the year after.
            let wanted = year.saturating_add(local.year().saturating_sub(NOMINAL_YEAR));
            let date = Date::new(wanted, local.month(), local.day()).map_err(|_| refuse)?;
            let at = offset.to_timestamp(date.to_datetime(local.time())).map_err(|_| refuse)?;
            samples.push(Sample { at, ..*sample });
        }
        Ok(Self { samples, typical_year: false })
    }

    /// The same where only the slab's time zone is known, as of a series kept in the diary: in that
    /// zone's standard time.
    ///
    /// # Errors
    /// As [`Series::typical_to_year`].
    pub fn typical_to_year_in(&self, year: i16, zone: &TimeZone) -> Result<Self, TypicalYearError> {
        // Standard time is what winter keeps, on either side of the equator.
        let offset = |month: i8| {
            let day = Date::new(year, month, 1).ok()?;
            Some(zone.to_offset(day.at(12, 0, 0, 0).to_zoned_datetime(zone.clone()).ok()?.timestamp()))
        };
        let standard = [offset(1), offset(7)].into_iter().flatten().min().unwrap_or(Offset::UTC);
        self.typical_to_year(year, standard)
    }
}
