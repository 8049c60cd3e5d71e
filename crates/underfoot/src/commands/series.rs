//! A weather file or sensor log as one entry of the diary.

use std::path::Path;

use jiff::tz::TimeZone;
use serde_json::{Value, json};
use slab::weather::{ColumnMap, Import, import};

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
    let mut map = ColumnMap::default();
    for column in columns {
        let Some((quantity, header)) = column.split_once('=') else {
            return Err(Failure::Use(format!("--column \"{column}\": accepted: quantity=column, such as air=T1")));
        };
        map.set(quantity.trim(), header.trim()).map_err(|e| Failure::Use(e.to_string()))?;
    }
    let mapping = (!columns.is_empty()).then_some(&map);
    let import = import(bytes, None, mapping, zone).map_err(|e| Failure::Data(format!("{name}: {e}")))?;
    let series = match year {
        Some(year) => import.typical_to_year(year).map_err(Failure::data)?,
        None => import.series.clone(),
    };
    let body = json!({ "kind": "air_series", "source": name, "series": series });
    Ok((body, import))
}

pub(super) fn tell(name: &str, import: &Import) {
    const SHOWN: usize = 12;
    for assumption in &import.assumed {
        anstream::eprintln!("{name}: {assumption}");
    }
    for skipped in import.skipped.iter().take(SHOWN) {
        anstream::eprintln!("{name}: {skipped}");
    }
    if import.skipped.len() > SHOWN {
        anstream::eprintln!("{name}: and {} more left out", import.skipped.len() - SHOWN);
    }
    for gap in import.gaps.iter().take(SHOWN) {
        anstream::eprintln!("{name}: nothing from {} to {}", gap.from, gap.to);
    }
    for duplicate in import.duplicates.iter().take(SHOWN) {
        anstream::eprintln!("{name}: {duplicate}");
    }
}
