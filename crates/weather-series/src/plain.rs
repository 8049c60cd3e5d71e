//! A plain table: the export of a logger or a sheet kept by hand.

use jiff::Timestamp;
use jiff::tz::TimeZone;

use super::Form;
use super::assumed::Assumption;
use super::columns::{Layout, When, find};
use super::error::ImportError;
use super::finish::Draft;
use super::map::ColumnMap;
use super::quantity::Quantity;
use super::report::Why;
use super::resolve::resolve;
use super::series::Sample;
use super::text::{Line, is_missing, number_and_rest, shown, split};
use super::times::{ACCEPTED, Stamp, read as read_stamp, read_two};
use super::unit::Unit;

struct Raw {
    line: usize,
    cells: Vec<String>,
}

pub(super) fn read(lines: &[Line<'_>], mapping: Option<&ColumnMap>, zone: &TimeZone) -> Result<Draft, ImportError> {
    let unmapped = ColumnMap::default();
    let layout = find(lines, mapping.unwrap_or(&unmapped))?;
    let header_line = lines[layout.header].number;
    let mut draft = Draft::new(Form::PlainCsv, None, header_line);
    let rows = rows(&mut draft, &layout, &lines[layout.header + 1..]);
    let fields = settle_units(&layout, &rows)?;
    say_columns(&mut draft, &layout, &fields);

    let stamps: Vec<Option<Stamp>> = rows.iter().map(|row| stamp(layout.when, &row.cells)).collect();
    let numbers: Vec<usize> = rows.iter().map(|row| row.line).collect();
    let resolved = resolve(&stamps, &numbers, layout.stated, zone);
    draft.assumed.extend(resolved.assumed);

    let mut decimal_comma = false;
    for (row, moment) in rows.iter().zip(resolved.moments) {
        match moment {
            Ok(at) => decimal_comma |= take(&mut draft, &layout, &fields, row, at),
            Err(why) => {
                let (name, value) = written_time(&layout, &row.cells);
                let accepted = match why {
                    Why::NoSuchLocalTime => "a local time that exists, or times with an offset: 2026-03-08T02:30-05:00",
                    _ => ACCEPTED,
                };
                draft.skip_row_at(row.line, (&name, &value), why, accepted);
            }
        }
    }
    if decimal_comma {
        draft.assumed.push(Assumption::DecimalComma);
    }
    Ok(draft)
}

/// The rows with enough cells. Blank lines and lines of separators alone hold nothing to report.
fn rows(draft: &mut Draft, layout: &Layout, lines: &[Line<'_>]) -> Vec<Raw> {
    let last_used = layout.when.indexes().into_iter().chain(layout.fields.iter().map(|f| f.index)).max();
    let mut rows: Vec<Raw> = Vec::new();
    for line in lines {
        let cells = split(line.text, layout.separator);
        if cells.iter().all(String::is_empty) {
            continue;
        }
        // A row shorter than the first good one was cut, and its last number may be cut too.
        let needed = rows.first().map_or(last_used.unwrap_or(0) + 1, |first| first.cells.len().min(layout.names.len()));
        if cells.len() < needed {
            draft.skip_row(line.number, shown(line.text), Why::CutShort, "as many cells as the rows before it");
        } else if cells.iter().skip(layout.names.len()).any(|cell| !cell.is_empty()) {
            let accepted = "as many cells as the header; quote numbers with a decimal comma";
            draft.skip_row(line.number, shown(line.text), Why::TooManyCells, accepted);
        } else {
            rows.push(Raw { line: line.number, cells });
        }
    }
    rows
}

/// A column with readings whose unit is known.
struct Known {
    index: usize,
    quantity: Quantity,
    unit: Unit,
}

/// Takes a unit that the header lacks from the first cell that has one. A guess is never made: 30
/// degrees may be a frost or a hot day.
fn settle_units(layout: &Layout, rows: &[Raw]) -> Result<Vec<Known>, ImportError> {
    let mut known = Vec::with_capacity(layout.fields.len());
    for field in &layout.fields {
        let in_cells = || {
            rows.iter().find_map(|row| {
                let (_, _, rest) = number_and_rest(&row.cells[field.index])?;
                Unit::read(field.quantity, rest)
            })
        };
        let unit = field.unit.or_else(in_cells).ok_or_else(|| ImportError::UnitMissing {
            column: shown(&layout.names[field.index]),
            key: field.quantity.code(),
            accepted: Unit::accepted(field.quantity),
        })?;
        known.push(Known { index: field.index, quantity: field.quantity, unit });
    }
    Ok(known)
}

fn say_columns(draft: &mut Draft, layout: &Layout, fields: &[Known]) {
    if layout.header > 0 {
        draft.assumed.push(Assumption::HeaderLine { line: draft.header_line });
    }
    if layout.separator != ',' {
        draft.assumed.push(Assumption::Separator(layout.separator));
    }
    let columns = layout.when.indexes().iter().map(|index| shown(&layout.names[*index])).collect();
    draft.assumed.push(Assumption::TimeColumns { columns });
    for field in fields {
        let column = shown(&layout.names[field.index]);
        draft.assumed.push(Assumption::Column { quantity: field.quantity, column, unit: field.unit });
    }
    let columns = layout.unused();
    if !columns.is_empty() {
        draft.assumed.push(Assumption::Unused { columns });
    }
}

fn stamp(when: When, cells: &[String]) -> Option<Stamp> {
    match when {
        When::One(index) => read_stamp(&cells[index]),
        When::Two { date, clock } => read_two(&cells[date], &cells[clock]),
    }
}

/// The names and cells of the time, for a message.
fn written_time(layout: &Layout, cells: &[String]) -> (String, String) {
    let indexes = layout.when.indexes();
    let join = |texts: &[String]| indexes.iter().map(|i| texts[*i].as_str()).collect::<Vec<_>>().join(" ");
    (join(&layout.names), join(cells))
}

/// Reads one row; tells whether a decimal comma was met.
fn take(draft: &mut Draft, layout: &Layout, fields: &[Known], row: &Raw, at: Timestamp) -> bool {
    let mut sample = Sample::empty(at);
    let mut decimal_comma = false;
    for field in fields {
        let cell = &row.cells[field.index];
        if is_missing(cell) {
            continue;
        }
        let put = match number_and_rest(cell) {
            None => Err(Why::NotANumber),
            Some((value, comma, rest)) => {
                decimal_comma |= comma;
                let unit = if rest.is_empty() { Some(field.unit) } else { Unit::read(field.quantity, rest) };
                unit.ok_or(Why::UnknownUnit).and_then(|unit| field.quantity.put(&mut sample, value, unit))
            }
        };
        if let Err(why) = put {
            let accepted = match why {
                Why::UnknownUnit => Unit::accepted(field.quantity),
                _ => field.quantity.accepted(),
            };
            draft.skip_reading(row.line, (&layout.names[field.index], cell), why, accepted);
        }
    }
    draft.take(row.line, sample);
    decimal_comma
}
