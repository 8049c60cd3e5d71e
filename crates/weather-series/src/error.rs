//! Why a file could not be read at all.

use super::report::Skipped;

/// What a table lacks.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Missing {
    /// A time column.
    Time,
    /// Any of air, humidity, slab.
    Reading,
    /// Both.
    TimeAndReading,
}

impl Missing {
    const fn words(self) -> &'static str {
        match self {
            Self::Time => "no time column",
            Self::Reading => "no column of air, humidity or slab",
            Self::TimeAndReading => "no time column and no column of air, humidity or slab",
        }
    }
}

/// A file from which nothing can be taken.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
pub enum ImportError {
    /// Nothing but blanks.
    #[error("file \"\": it is empty; accepted: EPW, TMY3 CSV, or a table with a header line")]
    Empty,
    /// Not a text file.
    #[error(
        "file, byte {byte}: this is not text; accepted: EPW, TMY3 CSV, or a table saved as CSV \
         (from a spreadsheet: save as CSV)"
    )]
    Binary {
        /// The first byte that text does not hold, counted from 0.
        byte: usize,
    },
    /// A header line that is cut, missing or of another form.
    #[error("line {line} \"{found}\": not the header line of this form; accepted: {accepted}")]
    Header {
        /// The line, counted from 1.
        line: usize,
        /// What stood there.
        found: String,
        /// What would be accepted.
        accepted: &'static str,
    },
    /// A field of the site that cannot be read.
    #[error("line {line}, {field} \"{found}\": accepted: {accepted}")]
    SiteField {
        /// The line, counted from 1.
        line: usize,
        /// The field.
        field: &'static str,
        /// What stood there.
        found: String,
        /// What would be accepted.
        accepted: &'static str,
    },
    /// The columns needed were not found.
    #[error(
        "columns \"{}\": {}; accepted: a time column (time, date and time, fecha, hora) and at least one of \
         air °F, RH %, slab °F (aire, humedad, losa), or a column mapping", found.join(", "), missing.words()
    )]
    Columns {
        /// The columns that were there.
        found: Vec<String>,
        /// What is missing.
        missing: Missing,
    },
    /// A mapped column is not in the file.
    #[error("mapping {key}=\"{column}\": no such column; accepted: one of {}", found.join(", "))]
    NoSuchColumn {
        /// The mapping's key.
        key: &'static str,
        /// The column asked for.
        column: String,
        /// The columns that are there.
        found: Vec<String>,
    },
    /// A mapping names a key that does not exist.
    #[error("mapping \"{found}\": unknown key; accepted: {}", super::map::KEYS.join(", "))]
    UnknownKey {
        /// The key.
        found: String,
    },
    /// A mapping names a unit that its quantity does not have.
    #[error("mapping {key} \"{found}\": unknown unit; accepted: {accepted}")]
    UnknownUnit {
        /// The mapping's key.
        key: String,
        /// The unit asked for.
        found: String,
        /// What would be accepted.
        accepted: &'static str,
    },
    /// A unit is nowhere written, and a guess could be wrong.
    #[error(
        "column \"{column}\": the unit is missing; accepted: {accepted} in the header, or {key}_unit in the mapping"
    )]
    UnitMissing {
        /// The column.
        column: String,
        /// The quantity's key.
        key: &'static str,
        /// The units accepted.
        accepted: &'static str,
    },
    /// A mapping was given with a form whose columns are fixed.
    #[error("mapping: the columns of form \"{form}\" are fixed; accepted: a mapping with a plain table only")]
    MappingNotUsed {
        /// The form's code.
        form: &'static str,
    },
    /// The header is good and no row follows.
    #[error("line {line}: no rows after the header; accepted: one row for each time")]
    NoRows {
        /// The line of the header, counted from 1.
        line: usize,
    },
    /// There are rows and none is good.
    #[error("no good row in the file; {count} were skipped, the first: {first}")]
    NoGoodRow {
        /// How many rows and readings were skipped.
        count: usize,
        /// The first of them.
        first: Box<Skipped>,
    },
}
