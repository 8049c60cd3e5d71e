//! A weather file or logger table for a calculation.

use std::path::Path;

use clap::Args;
use jiff::tz::TimeZone;
use slab::weather::{Assumption, Import, Series};
use units::Duration;

use super::read::unclear;
use crate::commands::series;
use crate::failure::Failure;

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
pub(super) struct LogFile {
    pub(super) name: String,
    pub(super) series: Series,
    /// The zone to print moments in.
    pub(super) zone: TimeZone,
    /// How long one sample speaks for.
    pub(super) step: Duration,
    /// How long before its stamp a sample begins to speak: weather years stamp the end of the hour.
    pub(super) lead: Duration,
    pub(super) wind_at_station: bool,
}

/// Reads the file and says on standard error what was assumed and skipped.
pub(super) fn read(path: &Path, args: &LogArgs) -> Result<LogFile, Failure> {
    let zone = match &args.time_zone {
        None => TimeZone::UTC,
        Some(name) => {
            TimeZone::get(name).map_err(|_| unclear("time_zone", name, "a zone's name such as America/Chicago"))?
        }
    };
    let bytes = std::fs::read(path).map_err(|e| Failure::file(path, &e))?;
    let name = path.file_name().map_or_else(|| path.display().to_string(), |n| n.to_string_lossy().into_owned());
    let (_, import) = series::from_bytes(&name, &bytes, &args.column, args.year, &zone)?;
    series::tell(&name, &import);
    let series = match args.year {
        Some(year) => import.typical_to_year(year).map_err(Failure::data)?,
        None => import.series.clone(),
    };
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
