//! The list of slabs, a page at a time, and which of them are put away.

use jiff::Timestamp;
use rusqlite::{Connection, OptionalExtension, Params, Row};
use slab_diary::SlabId;

use crate::Store;
use crate::columns::{moment_if_any, parsed};
use crate::error::StoreError;
use crate::slabs::{self, SlabRecord};

/// Which slabs to list.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct SlabQuery<'a> {
    /// Only those with this in their name, in capitals or not. Space around it is dropped.
    pub search: Option<&'a str>,
    /// Those that are put away instead of those that are not.
    pub put_away: bool,
    /// How many to leave out at the beginning.
    pub offset: u64,
    /// How many to list at most.
    pub limit: u64,
}

impl Store {
    /// A page of the list of slabs and how many the whole list has: the last noted first, empty
    /// diaries at the end, by name where neither decides.
    ///
    /// # Errors
    /// [`StoreError::Database`] or [`StoreError::Busy`].
    pub fn slab_page(&self, query: &SlabQuery<'_>) -> Result<(Vec<SlabRecord>, u64), StoreError> {
        const WHICH: &str = "WHERE (put_away.slab IS NOT NULL) = ?1 AND instr(slab.name_key, ?2) > 0";
        let search = slabs::key(query.search.unwrap_or_default().trim());
        let sqlite = |number: u64| i64::try_from(number).unwrap_or(i64::MAX);
        self.read("listing the slabs", |connection| {
            let total: i64 = connection
                .prepare_cached(&format!(
                    "SELECT count(*) FROM slab LEFT JOIN put_away ON put_away.slab = slab.id {WHICH}"
                ))?
                .query_row((query.put_away, &search), |row| row.get(0))?;
            let records = select(
                connection,
                &format!("{WHICH} ORDER BY tally.last_noted_us DESC, slab.name_key LIMIT ?3 OFFSET ?4"),
                (query.put_away, &search, sqlite(query.limit), sqlite(query.offset)),
            )?;
            Ok((records, total.unsigned_abs()))
        })
    }

    /// A slab.
    ///
    /// # Errors
    /// [`StoreError::Database`] or [`StoreError::Busy`].
    pub fn slab_record(&self, id: SlabId) -> Result<Option<SlabRecord>, StoreError> {
        self.read("looking for the slab", |connection| {
            connection
                .prepare_cached(&format!("{SELECT} WHERE slab.id = ?1"))?
                .query_row([id.to_string()], from_row)
                .optional()
        })
    }

    /// Puts a slab away: hides it from the list. Its diary stays as it is and may grow. Says whether
    /// it was on the list.
    ///
    /// # Errors
    /// [`StoreError::NoSuchSlab`].
    pub fn put_away(&self, slab: SlabId, now: Timestamp) -> Result<bool, StoreError> {
        self.put(slab, "INSERT OR IGNORE INTO put_away (slab, at_us) VALUES (?1, ?2)", Some(now))
    }

    /// Brings a slab back to the list. Says whether it was put away.
    ///
    /// # Errors
    /// [`StoreError::NoSuchSlab`].
    pub fn bring_back(&self, slab: SlabId) -> Result<bool, StoreError> {
        self.put(slab, "DELETE FROM put_away WHERE slab = ?1", None)
    }

    fn put(&self, slab: SlabId, sql: &str, at: Option<Timestamp>) -> Result<bool, StoreError> {
        const PUTTING: &str = "putting a slab away or bringing it back";
        self.write(PUTTING, |connection| {
            slabs::demand(connection, slab)?;
            let id = slab.to_string();
            let changed = match at {
                Some(at) => connection.execute(sql, (id, at.as_microsecond())),
                None => connection.execute(sql, [id]),
            };
            changed.map(|rows| rows > 0).map_err(StoreError::database(PUTTING))
        })
    }
}

// A slab without a tally has no entries.
const SELECT: &str = "SELECT slab.id, slab.name, coalesce(tally.entries, 0), tally.last_noted_us,
        coalesce(tally.last_arrival, 0), put_away.slab IS NOT NULL
     FROM slab LEFT JOIN tally ON tally.slab = slab.id LEFT JOIN put_away ON put_away.slab = slab.id";

/// The slabs that the rest of a statement chooses, in its order.
pub(crate) fn select(connection: &Connection, which: &str, values: impl Params) -> rusqlite::Result<Vec<SlabRecord>> {
    connection.prepare_cached(&format!("{SELECT} {which}"))?.query_map(values, from_row)?.collect()
}

fn from_row(row: &Row<'_>) -> rusqlite::Result<SlabRecord> {
    Ok(SlabRecord {
        id: parsed(row, 0)?,
        name: row.get(1)?,
        entries: row.get::<_, i64>(2)?.unsigned_abs(),
        last_noted: moment_if_any(row, 3)?,
        version: row.get(4)?,
        put_away: row.get(5)?,
    })
}
