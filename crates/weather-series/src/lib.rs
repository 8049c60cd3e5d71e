//! Weather years and sensor logs, read into one series of samples.
//!
//! Why this module exists: air windows, evaporation and drying all ask for air, humidity and wind
//! by the hour, and what a contractor has is a file from somewhere: a public weather year or the
//! export of a small logger. [`import`] reads the bytes (it opens no file), keeps every good row,
//! and says what it skipped, what it assumed and where nothing was recorded.
//!
//! **Stamps.** A row of a weather year is stamped at the *end* of its hour, in the station's
//! standard time: hour 1 is 01:00, hour 24 is the next midnight. Source: EnergyPlus Auxiliary
//! Programs, "Weather Data Format", field Hour ("hour 1 is 00:01 to 01:00"), and NREL/TP-581-43156
//! (TMY3 manual), field Time ("hour ending"). Grade M: from memory, not fetched. Some readers move
//! EPW rows to the start of the hour instead; compare with that in mind.
//!
//! **Typical years.** A typical year takes each month from another year. Its samples are stamped in
//! [`NOMINAL_YEAR`] and mean "such a day", never that date; [`Series::typical_to_year`] lays them
//! on a wanted year.
//!
//! To add a form: a module with one `read` function that fills a `Draft`, a line in [`Form`], one in
//! `recognize` and one in [`import`].

mod assumed;
mod columns;
mod compact;
mod epw;
mod error;
mod finish;
mod hours;
mod map;
mod names;
mod plain;
mod quantity;
mod report;
mod resolve;
mod series;
mod text;
mod times;
mod tmy3;
mod unit;

use jiff::tz::TimeZone;

pub use assumed::{Assumption, Because, DateOrder, Encoding};
pub use error::{ImportError, Missing};
pub use map::ColumnMap;
pub use quantity::Quantity;
pub use report::{Duplicate, Gap, Import, Lost, Site, Skipped, Why};
pub use series::{NOMINAL_YEAR, Sample, Series, TypicalYearError};
pub use unit::Unit;

/// The kinds of file that can be read.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Form {
    /// EnergyPlus weather format: eight header lines, then hours.
    Epw,
    /// Typical Meteorological Year 3: a site line, a header line, then hours.
    Tmy3,
    /// A table with a header line: time and at least one of air, humidity, slab.
    PlainCsv,
}

impl Form {
    /// The short code used in JSON and on the command line.
    #[must_use]
    pub const fn code(self) -> &'static str {
        match self {
            Self::Epw => "epw",
            Self::Tmy3 => "tmy3",
            Self::PlainCsv => "csv",
        }
    }
}

/// Reads a weather file or sensor log.
///
/// `as_form` forces the form; without it the first lines decide. `mapping` names the columns of a
/// plain table; without it they are recognized by name, in English and Spanish. `zone` is where
/// local times without an offset are read; weather years carry their own offset and do not use it.
///
/// ```
/// use weather_series::import;
/// let log = b"time;air \xb0F;RH %\n3/2/2026 2:00 PM;54,5;61\n3/2/2026 3:00 PM;oops;60\n";
/// let zone = jiff::tz::TimeZone::get("America/New_York")?;
/// let read = import(log, None, None, &zone)?;
/// assert_eq!(read.series.samples[0].at.to_string(), "2026-03-02T19:00:00Z");
/// assert_eq!(read.series.samples[0].air.map(|t| t.show_fahrenheit(1)).as_deref(), Some("54.5 °F"));
/// assert_eq!((read.skipped[0].line, read.skipped[0].value.as_str()), (3, "oops"));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
///
/// # Errors
/// [`ImportError`] when nothing can be read: empty or not text, header cut or unknown, a unit that
/// is nowhere written, or no good row at all. A bad row among good ones is no error: it is listed
/// in [`Import::skipped`].
pub fn import(
    text: &[u8],
    as_form: Option<Form>,
    mapping: Option<&ColumnMap>,
    zone: &TimeZone,
) -> Result<Import, ImportError> {
    let (text, encoding) = text::decode(text)?;
    let lines = text::lines(&text);
    let form = as_form.unwrap_or_else(|| recognize(&lines));
    if mapping.is_some() && form != Form::PlainCsv {
        return Err(ImportError::MappingNotUsed { form: form.code() });
    }
    let mut draft = match form {
        Form::Epw => epw::read(&lines)?,
        Form::Tmy3 => tmy3::read(&lines)?,
        Form::PlainCsv => plain::read(&lines, mapping, zone)?,
    };
    if encoding != Encoding::Utf8 {
        draft.assumed.insert(0, Assumption::Encoding(encoding));
    }
    finish::finish(draft)
}

fn recognize(lines: &[text::Line<'_>]) -> Form {
    let starts = |index: usize, with: &str| lines.get(index).is_some_and(|line| text::starts(line.text, with));
    if starts(0, "LOCATION,") {
        Form::Epw
    } else if starts(1, tmy3::HEADER_START) {
        Form::Tmy3
    } else {
        Form::PlainCsv
    }
}
