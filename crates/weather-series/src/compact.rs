//! The compact JSON form of a series, as the diary keeps it.

use jiff::Timestamp;
use serde::ser::{SerializeSeq, SerializeStruct};
use serde::{Deserialize, Deserializer, Serialize, Serializer, de};

use super::quantity::Quantity;
use super::series::{Sample, Series};

const AT: &str = "at";
const COLUMNS: &str = "at, air_c, rh_pct, dew_point_c, wind_m_s, slab_c, pressure_hpa, rain_mm";

/// A compact series that cannot be taken as it stands.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
pub(super) enum CompactError {
    /// A column that this version does not know.
    #[error("columns \"{found}\": unknown column; accepted: {COLUMNS}")]
    UnknownColumn {
        /// The column's name.
        found: String,
    },
    /// A column named twice.
    #[error("columns \"{found}\": named twice; accepted: each column once")]
    ColumnTwice {
        /// The column's name.
        found: String,
    },
    /// The time column is missing.
    #[error("columns \"{found}\": no time; accepted: at first, then any of {COLUMNS}")]
    NoTime {
        /// The columns that were there.
        found: String,
    },
    /// A row with more or fewer cells than columns.
    #[error("rows[{row}] \"{found} cells\": accepted: {wanted} cells, one for each column")]
    RowLength {
        /// The row, counted from 0.
        row: usize,
        /// Its cells.
        found: usize,
        /// The columns.
        wanted: usize,
    },
    /// A time that cannot be read.
    #[error("rows[{row}].at \"{found}\": not a time; accepted: 2026-03-02T14:00:00Z")]
    Time {
        /// The row, counted from 0.
        row: usize,
        /// What stood there.
        found: String,
    },
    /// A time that is not after the one before.
    #[error("rows[{row}].at \"{found}\": not after the row before; accepted: ascending times, each once")]
    Order {
        /// The row, counted from 0.
        row: usize,
        /// The time.
        found: Timestamp,
    },
    /// A reading that is not a number in the believed range.
    #[error("rows[{row}].{column} \"{found}\": accepted: {accepted}, or null")]
    Reading {
        /// The row, counted from 0.
        row: usize,
        /// The column.
        column: &'static str,
        /// What stood there.
        found: String,
        /// The range.
        accepted: &'static str,
    },
}

struct Rows<'a> {
    columns: &'a [Quantity],
    samples: &'a [Sample],
}

struct Row<'a> {
    columns: &'a [Quantity],
    sample: &'a Sample,
}

impl Serialize for Series {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        let used: Vec<Quantity> =
            Quantity::ALL.into_iter().filter(|q| self.samples.iter().any(|s| q.kept(s).is_some())).collect();
        let names: Vec<&str> = std::iter::once(AT).chain(used.iter().map(|q| q.column())).collect();
        let mut form = serializer.serialize_struct("Series", 2 + usize::from(self.typical_year))?;
        if self.typical_year {
            form.serialize_field("typical_year", &true)?;
        }
        form.serialize_field("columns", &names)?;
        form.serialize_field("rows", &Rows { columns: &used, samples: &self.samples })?;
        form.end()
    }
}

impl Serialize for Rows<'_> {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.collect_seq(self.samples.iter().map(|sample| Row { columns: self.columns, sample }))
    }
}

impl Serialize for Row<'_> {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        let mut row = serializer.serialize_seq(Some(1 + self.columns.len()))?;
        row.serialize_element(&self.sample.at)?;
        for quantity in self.columns {
            row.serialize_element(&quantity.kept(self.sample))?;
        }
        row.end()
    }
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct Written {
    #[serde(default)]
    typical_year: bool,
    columns: Vec<String>,
    rows: Vec<Vec<Option<Cell>>>,
}

#[derive(Deserialize)]
#[serde(untagged)]
enum Cell {
    Number(f64),
    Text(String),
    Flag(bool),
}

impl Cell {
    fn shown(cell: Option<&Self>) -> String {
        match cell {
            Some(Self::Number(number)) => number.to_string(),
            Some(Self::Text(text)) => super::text::shown(text),
            Some(Self::Flag(flag)) => flag.to_string(),
            None => "null".to_owned(),
        }
    }
}

impl<'de> Deserialize<'de> for Series {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        read(Written::deserialize(deserializer)?).map_err(de::Error::custom)
    }
}

/// The columns in written order; `None` is the time.
fn columns(names: &[String]) -> Result<Vec<Option<Quantity>>, CompactError> {
    let mut columns = Vec::with_capacity(names.len());
    for name in names {
        let column = if name == AT {
            None
        } else {
            let known = Quantity::ALL.into_iter().find(|q| q.column() == name);
            Some(known.ok_or_else(|| CompactError::UnknownColumn { found: super::text::shown(name) })?)
        };
        if columns.contains(&column) {
            return Err(CompactError::ColumnTwice { found: name.clone() });
        }
        columns.push(column);
    }
    if columns.contains(&None) { Ok(columns) } else { Err(CompactError::NoTime { found: names.join(", ") }) }
}

fn read(written: Written) -> Result<Series, CompactError> {
    let columns = columns(&written.columns)?;
    let at_column = columns.iter().position(Option::is_none).unwrap_or(0);
    let mut samples: Vec<Sample> = Vec::with_capacity(written.rows.len());
    for (row, cells) in written.rows.iter().enumerate() {
        if cells.len() != columns.len() {
            return Err(CompactError::RowLength { row, found: cells.len(), wanted: columns.len() });
        }
        let at = match &cells[at_column] {
            Some(Cell::Text(text)) => text.parse::<Timestamp>().ok(),
            _ => None,
        };
        let at = at.ok_or_else(|| CompactError::Time { row, found: Cell::shown(cells[at_column].as_ref()) })?;
        if samples.last().is_some_and(|before| before.at >= at) {
            return Err(CompactError::Order { row, found: at });
        }
        samples.push(sample(row, at, &columns, cells)?);
    }
    Ok(Series { samples, typical_year: written.typical_year })
}

fn sample(
    row: usize,
    at: Timestamp,
    columns: &[Option<Quantity>],
    cells: &[Option<Cell>],
) -> Result<Sample, CompactError> {
    let mut sample = Sample::empty(at);
    for (quantity, cell) in columns.iter().zip(cells) {
        let (Some(quantity), Some(cell)) = (quantity, cell) else { continue };
        let put = match cell {
            Cell::Number(number) => quantity.put(&mut sample, *number, quantity.kept_unit()).is_ok(),
            _ => false,
        };
        if !put {
            return Err(CompactError::Reading {
                row,
                column: quantity.column(),
                found: Cell::shown(Some(cell)),
                accepted: quantity.accepted(),
            });
        }
    }
    Ok(sample)
}
