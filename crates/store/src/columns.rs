//! Columns of a row that are more than a number or a text.

use std::error::Error;
use std::str::FromStr;

use jiff::Timestamp;
use rusqlite::Row;
use rusqlite::types::Type;

/// A moment.
pub(crate) fn moment(row: &Row<'_>, index: usize) -> rusqlite::Result<Timestamp> {
    instant(row.get(index)?, index)
}

/// A moment, when there is one.
pub(crate) fn moment_if_any(row: &Row<'_>, index: usize) -> rusqlite::Result<Option<Timestamp>> {
    row.get::<_, Option<i64>>(index)?.map(|us| instant(us, index)).transpose()
}

fn instant(us: i64, index: usize) -> rusqlite::Result<Timestamp> {
    Timestamp::from_microsecond(us)
        .map_err(|error| rusqlite::Error::FromSqlConversionFailure(index, Type::Integer, Box::new(error)))
}

/// A text that stands for something.
pub(crate) fn parsed<T: FromStr>(row: &Row<'_>, index: usize) -> rusqlite::Result<T>
where
    T::Err: Error + Send + Sync + 'static,
{
    row.get::<_, String>(index)?
        .parse()
        .map_err(|error: T::Err| rusqlite::Error::FromSqlConversionFailure(index, Type::Text, Box::new(error)))
}

/// A text that stands for something, when there is one.
pub(crate) fn parsed_if_any<T: FromStr>(row: &Row<'_>, index: usize) -> rusqlite::Result<Option<T>>
where
    T::Err: Error + Send + Sync + 'static,
{
    if row.get_ref(index)?.data_type() == Type::Null { Ok(None) } else { parsed(row, index).map(Some) }
}
