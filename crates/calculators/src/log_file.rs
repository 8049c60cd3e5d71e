//! A weather file or logger table for a calculation.

use clap::Args;
use jiff::tz::TimeZone;
use units::Duration;
use weather_series::{Assumption, Import, Series};

use crate::accepted::Accepted;
use crate::error::SumError;
use crate::files::NamedFile;
use crate::read::unclear;
use crate::weather_file;

/// How to read the file.
#[derive(Debug, Args)]
pub(crate) struct LogArgs {
    /// Column of a plain CSV, as quantity=column
    #[arg(long, value_name = "QUANTITY=COLUMN", requires = "file")]
    column: Vec<String>,
    /// Time zone of local times in the file [default: UTC]
    #[arg(long, value_name = "ZONE", requires = "file")]
    time_zone: Option<String>,
    /// Lay a typical weather year on this year
    #[arg(long, value_name = "YEAR", requires = "file")]
    year: Option<i16>,
}

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
    pub(crate) fn refused(&self, said: &str) -> SumError {
        SumError::content(&self.name, said, format!("file \"{}\": {said}", self.name))
    }
}

/// Reads the file and notes what was assumed and skipped.
pub(crate) fn read(file: NamedFile<'_>, args: &LogArgs) -> Result<LogFile, SumError> {
    let zone = match &args.time_zone {
        None => TimeZone::UTC,
        Some(name) => TimeZone::get(name)
            .map_err(|_| unclear("time_zone", name, Accepted::from("time-zone").with("example", "America/Chicago")))?,
    };
    let (name, bytes) = file.read()?;
    let import = weather_file::read(&name, &bytes, &args.column, &zone)?;
    let series = match args.year {
        Some(year) => import.typical_to_year(year).map_err(SumError::core)?,
        None => import.series.clone(),
    };
    file.note(weather_file::notes(&name, &import));
    let step = import.usual_step.map_or(Duration::hours(1.0), |step| Duration::seconds(step.as_secs_f64()));
    let stamped_at_end = import.assumed.iter().any(|a| matches!(a, Assumption::HourEnding { .. }));
    Ok(LogFile {
        zone: import.site.as_ref().map_or(zone, |site| site.standard_offset.to_time_zone()),
        lead: if stamped_at_end { step } else { Duration::ZERO },
        wind_at_station: wind_at_station(&import),
        name,
        series,
        step,
    })
}

fn wind_at_station(import: &Import) -> bool {
    import.assumed.iter().any(|a| matches!(a, Assumption::WindAtStation))
}
