//! A weather file or sensor log as one entry of the diary.

use std::path::Path;

use calculators::weather_file;
use jiff::tz::TimeZone;
use serde_json::{Value, json};
use weather_series::Import;

use crate::cli::Log;
use crate::failure::Failure;

/// Reads the file and says on standard error what was assumed and skipped.
pub(crate) fn body(log: &Log, zone: &TimeZone) -> Result<Value, Failure> {
    let [file] = log.fields.as_slice() else {
        return Err(Failure::Use("air-series: accepted: one file, such as air-series logger.csv".to_owned()));
    };
    let path = Path::new(file);
    let bytes = std::fs::read(path).map_err(|e| Failure::file(path, &e))?;
    let name = path.file_name().map_or_else(|| file.clone(), |n| n.to_string_lossy().into_owned());
    let (body, import) = from_bytes(&name, &bytes, &log.column, log.year, zone)?;
    tell(&name, &import);
    Ok(body)
}

/// The body of an `air_series` entry from a file's bytes.
pub(crate) fn from_bytes(
    name: &str,
    bytes: &[u8],
    columns: &[String],
    year: Option<i16>,
    zone: &TimeZone,
) -> Result<(Value, Import), Failure> {
    let import = weather_file::read(name, bytes, columns, zone)?;
    let series = match year {
        Some(year) => import.typical_to_year(year).map_err(Failure::data)?,
        None => import.series.clone(),
    };
    let body = json!({ "kind": "air_series", "source": name, "series": series });
    Ok((body, import))
}

fn tell(name: &str, import: &Import) {
    for note in weather_file::notes(name, import) {
        anstream::eprintln!("{note}");
    }
}
