//! What is kept a second time so that it need not be counted or looked for: how many entries each
//! slab has, and which photographs they name.

use std::collections::BTreeSet;

use rusqlite::Connection;
use slab_diary::{Entry, PhotoHash, SlabId};

/// Slabs and the photographs that their entries name.
pub(crate) type Index = BTreeSet<(String, String)>;

/// Puts the photographs of an entry in the index of its slab.
pub(crate) fn name_photographs(connection: &Connection, entry: &Entry) -> rusqlite::Result<()> {
    for hash in &entry.photographs {
        connection
            .prepare_cached("INSERT OR IGNORE INTO entry_photograph (slab, hash) VALUES (?1, ?2)")?
            .execute((entry.slab.to_string(), hash.as_str()))?;
    }
    Ok(())
}

/// Whether an entry of a slab names a photograph.
pub(crate) fn names(connection: &Connection, slab: SlabId, hash: &PhotoHash) -> rusqlite::Result<bool> {
    connection
        .prepare_cached("SELECT EXISTS (SELECT 1 FROM entry_photograph WHERE slab = ?1 AND hash = ?2)")?
        .query_row((slab.to_string(), hash.as_str()), |row| row.get(0))
}

/// The whole index.
pub(crate) fn indexed(connection: &Connection) -> rusqlite::Result<Index> {
    connection
        .prepare("SELECT slab, hash FROM entry_photograph")?
        .query_map([], |row| Ok((row.get(0)?, row.get(1)?)))?
        .collect()
}

/// The slabs whose tally does not agree with their entries, in words.
pub(crate) fn wrong(connection: &Connection) -> rusqlite::Result<Vec<String>> {
    // One list of both, so that a slab which only one of them has is found too.
    connection
        .prepare(
            "SELECT slab, sum(told), sum(counted) FROM (
                SELECT slab, entries AS told, 0 AS counted, last_arrival AS arrival, last_noted_us AS noted FROM tally
                UNION ALL
                SELECT slab, 0, count(*), max(arrival), max(noted_us) FROM entry GROUP BY slab
             )
             GROUP BY slab
             HAVING sum(told) <> sum(counted) OR min(arrival) <> max(arrival) OR min(noted) <> max(noted)",
        )?
        .query_map([], |row| {
            let (slab, told, counted): (String, i64, i64) = (row.get(0)?, row.get(1)?, row.get(2)?);
            let more = if told == counted { ", but their last is another" } else { "" };
            Ok(format!("slab {slab}: the tally says {told} entries, the diary has {counted}{more}"))
        })?
        .collect()
}
