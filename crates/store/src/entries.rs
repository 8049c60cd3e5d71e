//! The diaries: adding entries and reading them all.

use std::collections::BTreeSet;

use rayon::prelude::*;
use rusqlite::{Connection, OptionalExtension, Row};
use slab_diary::{Clash, Diary, Entry, PhotoHash, SlabId};

use crate::error::StoreError;
use crate::{Store, disk, slabs, tally};

const ADDING: &str = "adding entries";

pub(crate) const READING: &str = "reading the diary";

/// What became of the entries that were handed in.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct Appended {
    /// How many are new.
    pub added: u64,
    /// How many the diary had already, to the letter.
    pub already: u64,
}

impl Store {
    /// Adds entries to a slab's diary, all or none. When this returns they are on the disk. An
    /// entry that the diary already has changes nothing.
    ///
    /// Two entries are the same when their JSON text is: a moment in another time zone is another
    /// entry even at the same instant, since it may fall on another day of the calendar.
    ///
    /// # Errors
    /// Nothing is written when any of the entries is refused: [`StoreError::Clash`] when another
    /// entry has its id, [`StoreError::OtherSlab`], [`StoreError::PhotographNotPut`] when it names a
    /// photograph that the store has not got, [`StoreError::WouldNotReadBack`];
    /// [`StoreError::NoSuchSlab`] when the slab was not made.
    pub fn append(&self, slab: SlabId, entries: &[Entry]) -> Result<Appended, StoreError> {
        let texts: Vec<Result<String, StoreError>> = entries.par_iter().map(|entry| text_of(slab, entry)).collect();
        let texts = texts.into_iter().collect::<Result<Vec<_>, _>>()?;
        self.demand_photographs(entries)?;
        self.write(ADDING, |connection| {
            slabs::demand(connection, slab)?;
            let mut appended = Appended::default();
            for (entry, text) in entries.iter().zip(&texts) {
                if insert(connection, entry, text)? {
                    appended.added += 1;
                } else {
                    appended.already += 1;
                }
                tally::name_photographs(connection, entry).map_err(StoreError::database(ADDING))?;
            }
            Ok(appended)
        })
    }

    /// The whole diary of a slab.
    ///
    /// # Errors
    /// [`StoreError::NoSuchSlab`]; [`StoreError::EntryDamaged`] naming the first entry that is not
    /// what was once added: a diary with a hole in it is not handed out.
    pub fn diary(&self, slab: SlabId) -> Result<Diary, StoreError> {
        let kept = self.view(READING, |connection| {
            slabs::demand(connection, slab)?;
            kept(connection, Some(slab))
        })?;
        let entries: Vec<Result<Entry, StoreError>> = kept.par_iter().map(Kept::read).collect();
        entries.into_iter().collect()
    }

    /// Sees to it that every photograph named is in the store, and its name on the disk: another
    /// program may have put it there a moment ago and not be done.
    fn demand_photographs(&self, entries: &[Entry]) -> Result<(), StoreError> {
        let mut seen: BTreeSet<&PhotoHash> = BTreeSet::new();
        for entry in entries {
            for hash in &entry.photographs {
                if seen.insert(hash) && !self.has_photograph(hash) {
                    return Err(StoreError::PhotographNotPut { entry: entry.id, hash: hash.clone() });
                }
            }
        }
        if seen.is_empty() { Ok(()) } else { disk::sync_folder(&self.photographs) }
    }
}

/// The text to keep. An entry whose text cannot be read again would lock the diary for ever, so it
/// is read once before it is taken in.
fn text_of(slab: SlabId, entry: &Entry) -> Result<String, StoreError> {
    if entry.slab != slab {
        return Err(StoreError::OtherSlab { entry: entry.id, says: entry.slab, wanted: slab });
    }
    let text = entry.to_json();
    let problem = match Entry::from_json(&text) {
        Ok(again) if again.to_json() == text && again == *entry => return Ok(text),
        Ok(_) => "it comes back as another entry".to_owned(),
        Err(error) => error.to_string(),
    };
    Err(StoreError::WouldNotReadBack { entry: entry.id, problem })
}

/// Adds one entry; says whether it was new.
fn insert(connection: &Connection, entry: &Entry, text: &str) -> Result<bool, StoreError> {
    let failed = StoreError::database(ADDING);
    let id = entry.id.to_string();
    let known: Option<String> = connection
        .prepare_cached("SELECT text FROM entry WHERE id = ?1")
        .and_then(|mut select| select.query_row([&id], |row| row.get(0)).optional())
        .map_err(&failed)?;
    if let Some(known) = known {
        return if same(&known, text) { Ok(false) } else { Err(Clash(entry.id).into()) };
    }
    connection
        .prepare_cached(
            "INSERT INTO entry (id, slab, happened_us, noted_us, kind, replaces, text, digest)
             VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8)",
        )
        .and_then(|mut insert| {
            insert.execute((
                &id,
                entry.slab.to_string(),
                entry.happened.instant().as_microsecond(),
                entry.noted.instant().as_microsecond(),
                entry.body.kind_name(),
                entry.replaces.map(|replaced| replaced.to_string()),
                text,
                blake3::hash(text.as_bytes()).as_bytes(),
            ))
        })
        .map_err(&failed)?;
    Ok(true)
}

/// An older program may have kept as unknown what this one writes in its own form, so the kept text
/// gets a second chance in that form.
fn same(kept: &str, new: &str) -> bool {
    kept == new || Entry::from_json(kept).is_ok_and(|entry| entry.to_json() == new)
}

/// The columns that [`Kept::from_row`] reads.
pub(crate) const SELECT: &str = "SELECT id, slab, happened_us, noted_us, kind, replaces, text, digest FROM entry";

/// A row of the table of entries.
pub(crate) struct Kept {
    pub(crate) id: String,
    pub(crate) slab: String,
    happened_us: i64,
    noted_us: i64,
    kind: String,
    replaces: Option<String>,
    text: String,
    digest: Vec<u8>,
}

impl Kept {
    pub(crate) fn from_row(row: &Row<'_>) -> rusqlite::Result<Self> {
        Ok(Self {
            id: row.get(0)?,
            slab: row.get(1)?,
            happened_us: row.get(2)?,
            noted_us: row.get(3)?,
            kind: row.get(4)?,
            replaces: row.get(5)?,
            text: row.get(6)?,
            digest: row.get(7)?,
        })
    }

    /// The entry, when it is what was once added and agrees with the columns beside it.
    pub(crate) fn read(&self) -> Result<Entry, StoreError> {
        let damaged = |problem: String| StoreError::EntryDamaged { entry: self.id.clone(), problem };
        if blake3::hash(self.text.as_bytes()).as_bytes().as_slice() != self.digest {
            return Err(damaged("its text does not match its hash".to_owned()));
        }
        let entry = Entry::from_json(&self.text).map_err(|error| damaged(error.to_string()))?;
        let columns = [
            ("id", entry.id.to_string() == self.id),
            ("slab", entry.slab.to_string() == self.slab),
            ("happened", entry.happened.instant().as_microsecond() == self.happened_us),
            ("noted", entry.noted.instant().as_microsecond() == self.noted_us),
            ("kind", entry.body.kind_name() == self.kind),
            ("replaces", entry.replaces.map(|replaced| replaced.to_string()) == self.replaces),
        ];
        match columns.iter().find(|(_, agrees)| !agrees) {
            Some((column, _)) => Err(damaged(format!("its text does not match the column \"{column}\""))),
            None => Ok(entry),
        }
    }
}

/// The kept entries of one slab or of all, by id.
pub(crate) fn kept(connection: &Connection, slab: Option<SlabId>) -> Result<Vec<Kept>, StoreError> {
    let failed = StoreError::database(READING);
    let read = || -> rusqlite::Result<Vec<Kept>> {
        match slab {
            Some(slab) => connection
                .prepare_cached(&format!("{SELECT} WHERE slab = ?1"))?
                .query_map([slab.to_string()], Kept::from_row)?
                .collect(),
            None => connection.prepare_cached(SELECT)?.query_map([], Kept::from_row)?.collect(),
        }
    };
    let mut kept = read().map_err(failed)?;
    // Sorting here moves only pointers; SQLite would carry the whole texts through its sorter.
    kept.sort_unstable_by(|a, b| a.id.cmp(&b.id));
    Ok(kept)
}
