//! A weather file or logger table for a calculation.

use jiff::tz::TimeZone;
use units::Duration;
use weather_series::{Assumption, Import, Series};

use crate::error::CalculatorError;
use crate::given::Given;
use crate::weather_file;

/// A file as read.
pub(crate) struct LogFile {
    pub(crate) name: String,
    pub(crate) series: Series,
    /// The zone to print moments in.
    pub(crate) zone: TimeZone,
    /// How long one sample speaks for.
    pub(crate) step: Duration,
    /// How long before its stamp a sample begins to speak: weather years stamp the end of the hour.
    pub(crate) lead: Duration,
    pub(crate) wind_at_station: bool,
}

impl LogFile {
    /// A file without what the question needs.
    pub(crate) fn refused(&self, said: &str) -> CalculatorError {
        CalculatorError::content(&self.name, said)
    }
}

/// Reads the file, when one was given, and notes what was assumed and skipped.
pub(crate) fn read(given: &mut Given<'_>) -> Result<Option<LogFile>, CalculatorError> {
    let Some((name, bytes)) = given.file("file")? else { return Ok(None) };
    let zone = TimeZone::get(&given.text("time_zone")?).unwrap_or(TimeZone::UTC);
    let import = weather_file::read(&name, &bytes, &given.texts("column"), &zone)?;
    let year = given.typed("year").and_then(|year| year.parse::<i16>().ok());
    let series = match year {
        Some(year) => import.typical_to_year(year).map_err(CalculatorError::core)?,
        None => import.series.clone(),
    };
    given.noticed(weather_file::notes(&name, &import));
    let step = import.usual_step.map_or(Duration::hours(1.0), |step| Duration::seconds(step.as_secs_f64()));
    let stamped_at_end = import.assumed.iter().any(|a| matches!(a, Assumption::HourEnding { .. }));
    Ok(Some(LogFile {
        zone: import.site.as_ref().map_or(zone, |site| site.standard_offset.to_time_zone()),
        lead: if stamped_at_end { step } else { Duration::ZERO },
        wind_at_station: wind_at_station(&import),
        name,
        series,
        step,
    }))
}

fn wind_at_station(import: &Import) -> bool {
    import.assumed.iter().any(|a| matches!(a, Assumption::WindAtStation))
}
