//! A weather file or sensor log as one entry of the diary.

use std::path::Path;

use calculators::weather_file;
use jiff::tz::TimeZone;
use serde_json::{Map, Value, json};
use weather_series::Import;

use crate::cli::Log;
use crate::failure::Failure;

/// Reads the file and says on standard error what was assumed and skipped.
pub(crate) fn fields(log: &Log, zone: &TimeZone) -> Result<Map<String, Value>, Failure> {
    let [file] = log.fields.as_slice() else {
        return Err(Failure::Use("air-series: accepted: one file, such as air-series logger.csv".to_owned()));
    };
    let path = Path::new(file);
    let bytes = std::fs::read(path).map_err(|e| Failure::file(path, &e))?;
    let name = path.file_name().map_or_else(|| file.clone(), |n| n.to_string_lossy().into_owned());
    let (fields, import) = from_bytes(&name, &bytes, &log.column, log.year, zone)?;
    tell(&name, &import);
    Ok(fields)
}

/// The fields of a series of readings from a file's bytes.
pub(crate) fn from_bytes(
    name: &str,
    bytes: &[u8],
    columns: &[String],
    year: Option<i16>,
    zone: &TimeZone,
) -> Result<(Map<String, Value>, Import), Failure> {
    let import = weather_file::read(name, bytes, columns, zone)?;
    let series = match year {
        Some(year) => import.typical_to_year(year).map_err(Failure::data)?,
        None => import.series.clone(),
    };
    let fields = Map::from_iter([("source".to_owned(), json!(name)), ("series".to_owned(), json!(series))]);
    Ok((fields, import))
}

fn tell(name: &str, import: &Import) {
    for note in weather_file::notes(name, import) {
        anstream::eprintln!("{note}");
    }
}
