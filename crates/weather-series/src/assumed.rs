//! What an import took for granted, as codes with values.

use std::fmt;

use jiff::tz::Offset;

use super::quantity::Quantity;
use super::unit::Unit;

/// How the bytes were read as text.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Encoding {
    /// UTF-8, or plain ASCII.
    Utf8,
    /// UTF-16, told by its first two bytes.
    Utf16,
    /// Latin-1, because it is not UTF-8.
    Latin1,
}

/// Which number of `3/2/2026` is the month.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum DateOrder {
    /// 2 March, as in the United States.
    MonthFirst,
    /// 3 February.
    DayFirst,
}

/// What decided the order of day and month.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Because {
    /// A number above 12 in the file can only be a day.
    NumberAboveTwelve,
    /// Some dates fit only one order and some only the other; most decided, the others are skipped.
    Majority,
    /// Read this way the log covers far less time.
    ShorterLog,
    /// Nothing in the file decides: month first, or day first when written with points.
    Habit,
}

/// Something taken for granted that a person may want to correct.
#[derive(Debug, Clone, PartialEq)]
pub enum Assumption {
    /// The bytes were read in this encoding.
    Encoding(Encoding),
    /// The header was found after lines that are not part of the table.
    HeaderLine {
        /// Its line, counted from 1.
        line: usize,
    },
    /// Cells are parted by this character.
    Separator(char),
    /// Some numbers have a decimal comma.
    DecimalComma,
    /// The time was taken from these columns.
    TimeColumns {
        /// One column, or the date and then the time of day.
        columns: Vec<String>,
    },
    /// A column was taken for a quantity.
    Column {
        /// The quantity.
        quantity: Quantity,
        /// The column's name in the file.
        column: String,
        /// Its unit, from header, mapping or cells.
        unit: Unit,
    },
    /// Columns that were not used.
    Unused {
        /// Their names.
        columns: Vec<String>,
    },
    /// The order of day and month.
    DateOrder {
        /// The order used.
        order: DateOrder,
        /// What decided it.
        because: Because,
    },
    /// Years written with two digits were put in the 2000s.
    TwoDigitYears,
    /// Times without an offset were read as local time.
    LocalTimes {
        /// The zone's name, or `UTC` with an offset.
        zone: String,
    },
    /// The header of the time column states the offset.
    StatedOffset {
        /// The offset.
        offset: Offset,
    },
    /// Local times fell in the hour that clocks repeat; the first pass was taken as the earlier
    /// hour and times seen again as the later one.
    RepeatedHour {
        /// The first such line.
        first_line: usize,
        /// How many rows.
        rows: usize,
    },
    /// Each row is stamped at the end of its hour, in standard time.
    HourEnding {
        /// Standard time against UTC.
        offset: Offset,
    },
    /// Wind is as the weather station measures it, usually 10 m above open ground: more than at a
    /// slab between walls, and not what evaporation formulas for 0.5 m ask for.
    WindAtStation,
    /// The file itself marks its rain as of unknown uncertainty. It was kept as it stands.
    DoubtfulRain {
        /// How many hours of rain are marked so.
        rows: usize,
    },
    /// A typical year: months from different years, stamped in the nominal year.
    TypicalYear {
        /// The earliest year a month was taken from.
        first: i16,
        /// The latest.
        last: i16,
    },
    /// Rows were not in order of time and were sorted.
    Sorted {
        /// How many rows came before a row above them.
        rows: usize,
    },
}

impl Assumption {
    /// The short code that translations and JSON use.
    #[must_use]
    pub const fn code(&self) -> &'static str {
        match self {
            Self::Encoding(_) => "encoding",
            Self::HeaderLine { .. } => "header_line",
            Self::Separator(_) => "separator",
            Self::DecimalComma => "decimal_comma",
            Self::TimeColumns { .. } => "time_columns",
            Self::Column { .. } => "column",
            Self::Unused { .. } => "unused",
            Self::DateOrder { .. } => "date_order",
            Self::TwoDigitYears => "two_digit_years",
            Self::LocalTimes { .. } => "local_times",
            Self::StatedOffset { .. } => "stated_offset",
            Self::RepeatedHour { .. } => "repeated_hour",
            Self::HourEnding { .. } => "hour_ending",
            Self::WindAtStation => "wind_at_station",
            Self::DoubtfulRain { .. } => "doubtful_rain",
            Self::TypicalYear { .. } => "typical_year",
            Self::Sorted { .. } => "sorted",
        }
    }
}

impl fmt::Display for Encoding {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Self::Utf8 => "UTF-8",
            Self::Utf16 => "UTF-16",
            Self::Latin1 => "Latin-1",
        })
    }
}

impl fmt::Display for DateOrder {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Self::MonthFirst => "month first",
            Self::DayFirst => "day first",
        })
    }
}

impl fmt::Display for Because {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Self::NumberAboveTwelve => "a number above 12 can only be a day",
            Self::Majority => "most dates fit this order only; the others are skipped",
            Self::ShorterLog => "the other order would spread the log over far more time",
            Self::Habit => "nothing in the file decides; check it",
        })
    }
}

impl fmt::Display for Assumption {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Encoding(encoding) => write!(f, "text read as {encoding}"),
            Self::HeaderLine { line } => write!(f, "header found on line {line}; the lines above it are not used"),
            Self::Separator('\t') => f.write_str("cells parted by tab"),
            Self::Separator(separator) => write!(f, "cells parted by \"{separator}\""),
            Self::DecimalComma => f.write_str("decimal comma"),
            Self::TimeColumns { columns } => write!(f, "time from {}", columns.join(" and ")),
            Self::Column { quantity, column, unit } => {
                write!(f, "{} from column \"{column}\", in {}", quantity.code(), unit.symbol())
            }
            Self::Unused { columns } => write!(f, "columns not used: {}", columns.join(", ")),
            Self::DateOrder { order, because } => write!(f, "dates read {order}: {because}"),
            Self::TwoDigitYears => f.write_str("years of two digits put in the 2000s"),
            Self::LocalTimes { zone } => write!(f, "times without offset read as local time of {zone}"),
            Self::StatedOffset { offset } => write!(f, "times read at UTC offset {offset}, as the header says"),
            Self::RepeatedHour { first_line, rows } => write!(
                f,
                "{rows} rows from line {first_line} lie in the hour that clocks repeat; \
                 the first pass was taken as the earlier hour"
            ),
            Self::HourEnding { offset } => {
                write!(f, "each row stamped at the end of its hour, standard time, UTC offset {offset}")
            }
            Self::WindAtStation => f.write_str(
                "wind as the weather station measures it, usually 10 m above open ground; at the slab it is less",
            ),
            Self::DoubtfulRain { rows } => write!(
                f,
                "{rows} hours of rain are marked by the file itself as of unknown uncertainty; do not plan by them"
            ),
            Self::TypicalYear { first, last } => {
                write!(f, "a typical year, months taken from years {first} to {last}: such days, not those dates")
            }
            Self::Sorted { rows } => write!(f, "{rows} rows were out of order and were sorted by time"),
        }
    }
}
