//! What an import gives back beside its samples.

use std::fmt;

use jiff::tz::Offset;
use jiff::{SignedDuration, Timestamp};
use units::Length;

use super::Form;
use super::assumed::Assumption;
use super::series::{Series, TypicalYearError};

/// A file that was read.
#[derive(Debug, Clone, PartialEq)]
pub struct Import {
    /// The good samples, ascending.
    pub series: Series,
    /// The form it was read as.
    pub form: Form,
    /// Where it was measured, if the file says so.
    pub site: Option<Site>,
    /// What was taken for granted, in the order met.
    pub assumed: Vec<Assumption>,
    /// Rows and readings left out, by line.
    pub skipped: Vec<Skipped>,
    /// Where more than the usual step lies between two samples.
    pub gaps: Vec<Gap>,
    /// Rows left out because an earlier row has the same moment.
    pub duplicates: Vec<Duplicate>,
    /// The most common step between samples; absent with fewer than two.
    pub usual_step: Option<SignedDuration>,
}

impl Import {
    /// Lays a typical year on a wanted year, in the station's own standard time.
    ///
    /// # Errors
    /// As [`Series::typical_to_year`].
    pub fn typical_to_year(&self, year: i16) -> Result<Series, TypicalYearError> {
        let offset = self.site.as_ref().map_or(Offset::UTC, |site| site.standard_offset);
        self.series.typical_to_year(year, offset)
    }
}

/// The place a weather year was made for.
#[derive(Debug, Clone, PartialEq)]
pub struct Site {
    /// Its name as the file has it.
    pub name: String,
    /// Degrees north, -90 to 90.
    pub latitude_degrees: f64,
    /// Degrees east, -180 to 180.
    pub longitude_degrees: f64,
    /// Above sea level, -1000 to 9999.9 m.
    pub elevation: Length,
    /// Standard time against UTC, all year.
    pub standard_offset: Offset,
}

/// Why a row or reading was left out.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Why {
    /// The cell is not a number.
    NotANumber,
    /// The cell carries a unit its quantity does not have.
    UnknownUnit,
    /// The reading lies outside the believed range.
    OutOfRange,
    /// The rain was collected over another time than one hour.
    OtherPeriod,
    /// The time is missing or cannot be read.
    BadTime,
    /// The local time does not exist: clocks were put forward over it.
    NoSuchLocalTime,
    /// 29 February in a typical year.
    LeapDay,
    /// The row has fewer cells than the rows before it.
    CutShort,
    /// The row has more cells than the header.
    TooManyCells,
    /// The row has a time and no reading.
    NothingMeasured,
}

impl Why {
    /// The short code that translations and JSON use.
    #[must_use]
    pub const fn code(self) -> &'static str {
        match self {
            Self::NotANumber => "not_a_number",
            Self::UnknownUnit => "unknown_unit",
            Self::OutOfRange => "out_of_range",
            Self::OtherPeriod => "other_period",
            Self::BadTime => "bad_time",
            Self::NoSuchLocalTime => "no_such_local_time",
            Self::LeapDay => "leap_day",
            Self::CutShort => "cut_short",
            Self::TooManyCells => "too_many_cells",
            Self::NothingMeasured => "nothing_measured",
        }
    }

    const fn words(self) -> &'static str {
        match self {
            Self::NotANumber => "not a number",
            Self::UnknownUnit => "unknown unit",
            Self::OutOfRange => "outside what can be measured outdoors",
            Self::OtherPeriod => "rain over another time than one hour",
            Self::BadTime => "not a date with a time of day",
            Self::NoSuchLocalTime => "no such local time: clocks were put forward over it",
            Self::LeapDay => "a typical year has no 29 February",
            Self::CutShort => "the row is cut short",
            Self::TooManyCells => "the row has more cells than the header",
            Self::NothingMeasured => "nothing was measured",
        }
    }
}

/// How much was lost.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Lost {
    /// One reading; the rest of the row is kept.
    Reading,
    /// The whole row.
    Row,
}

/// A row or reading that was left out.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Skipped {
    /// The line in the file, counted from 1.
    pub line: usize,
    /// The column's name, when one cell is at fault.
    pub column: Option<String>,
    /// What stood there.
    pub value: String,
    /// How much was lost.
    pub lost: Lost,
    /// Why.
    pub why: Why,
    /// What would be accepted.
    pub accepted: &'static str,
}

impl fmt::Display for Skipped {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "line {}", self.line)?;
        if let Some(column) = &self.column {
            write!(f, ", {column}")?;
        }
        write!(f, " \"{}\": {}; accepted: {}", self.value, self.why.words(), self.accepted)
    }
}

/// A stretch without samples.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Gap {
    /// The last sample before it.
    pub from: Timestamp,
    /// The first sample after it.
    pub to: Timestamp,
    /// How many samples would fill it at the usual step, at least one.
    pub missing: usize,
}

/// A row left out because its moment was already taken.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Duplicate {
    /// The moment.
    pub at: Timestamp,
    /// The line that was kept.
    pub kept_line: usize,
    /// The line that was left out.
    pub dropped_line: usize,
}

impl fmt::Display for Duplicate {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "line {}: same time as line {} ({}), which was kept", self.dropped_line, self.kept_line, self.at)
    }
}
