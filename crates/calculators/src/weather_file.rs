//! A weather file or logger table from its bytes, and what a person is told about it.

use jiff::tz::TimeZone;
use weather_series::{ColumnMap, Import, import};

use crate::error::CalculatorError;

/// Reads a file's bytes; `columns` are texts such as `air=T1` for a plain table.
///
/// # Errors
/// A column that is not `quantity=column`; a file that cannot be read as weather or as a log.
pub fn read(name: &str, bytes: &[u8], columns: &[String], zone: &TimeZone) -> Result<Import, CalculatorError> {
    let mut map = ColumnMap::default();
    for column in columns {
        let (quantity, header) =
            column.split_once('=').ok_or_else(|| CalculatorError::unclear("column", column, "sum-accepts-column"))?;
        map.set(quantity.trim(), header.trim()).map_err(|error| CalculatorError::said("column", &error))?;
    }
    let mapping = (!columns.is_empty()).then_some(&map);
    import(bytes, None, mapping, zone).map_err(|e| CalculatorError::content(name, &e.to_string()))
}

/// What was assumed, left out, missing or doubled, one line each; long lists are cut.
#[must_use]
pub fn notes(name: &str, import: &Import) -> Vec<String> {
    const SHOWN: usize = 12;
    let mut lines: Vec<String> = import.assumed.iter().map(|assumption| format!("{name}: {assumption}")).collect();
    lines.extend(import.skipped.iter().take(SHOWN).map(|skipped| format!("{name}: {skipped}")));
    if import.skipped.len() > SHOWN {
        lines.push(format!("{name}: and {} more left out", import.skipped.len() - SHOWN));
    }
    lines.extend(import.gaps.iter().take(SHOWN).map(|gap| format!("{name}: nothing from {} to {}", gap.from, gap.to)));
    lines.extend(import.duplicates.iter().take(SHOWN).map(|duplicate| format!("{name}: {duplicate}")));
    lines
}
