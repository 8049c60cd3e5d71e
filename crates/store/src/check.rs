//! Looking over the whole store for damage.

use std::collections::{BTreeMap, BTreeSet};
use std::fs;

use rayon::prelude::*;
use rusqlite::Connection;
use slab_diary::{EntryId, PhotoHash};

use crate::entries::{Kept, kept};
use crate::error::StoreError;
use crate::tally::{self, Index};
use crate::{Store, disk};

/// What a look over the store found.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Report {
    /// How many entries are kept, damaged ones too.
    pub entries: u64,
    /// How many photographs are kept, damaged ones too.
    pub photographs: u64,
    /// How many of them no entry names. That is no damage: a photograph is put before its entry.
    pub unnamed_photographs: u64,
    /// Files among the photographs that were never finished. They may be removed while no program
    /// has the store open.
    pub unfinished_files: Vec<String>,
    /// Everything that is damaged or missing.
    pub problems: Vec<Problem>,
}

impl Report {
    /// Whether nothing is damaged or missing.
    #[must_use]
    pub fn is_sound(&self) -> bool {
        self.problems.is_empty()
    }
}

/// One thing that is damaged or missing.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum Problem {
    /// The database file does not hold together.
    #[error("the database file: {0}")]
    Database(String),
    /// An entry is not what was once added, or this program cannot read it.
    #[error("{0}")]
    Entry(String),
    /// An entry names a photograph that is not there.
    #[error("photograph {} is missing; entry {entry} names it", hash.as_str())]
    PhotographMissing {
        /// The photograph.
        hash: PhotoHash,
        /// The first entry, by id, that names it.
        entry: EntryId,
    },
    /// A table that repeats what the entries say does not agree with them.
    #[error("{0}")]
    Tally(String),
    /// A photograph is damaged or cannot be read.
    #[error("{says}")]
    Photograph {
        /// The photograph.
        hash: PhotoHash,
        /// What is wrong with it.
        says: String,
    },
}

impl Store {
    /// Looks over everything: the database file, every entry against its hash and its columns, what
    /// is tallied against the entries, every photograph against its name. Changes nothing. Reads every photograph, so it takes as long as
    /// the disk needs for that.
    ///
    /// # Errors
    /// Only when the looking itself is impossible, such as a photograph folder that cannot be listed
    /// ([`StoreError::Disk`]). Damage is in the report.
    pub fn check(&self) -> Result<Report, StoreError> {
        let mut report = Report::default();
        let (kept, indexed) = self.check_database(&mut report)?;
        let named = check_entries(&kept, &indexed, &mut report);
        self.check_photographs(&named, &mut report)?;
        Ok(report)
    }

    fn check_database(&self, report: &mut Report) -> Result<(Vec<Kept>, Index), StoreError> {
        self.view("checking the database", |connection| {
            let found = integrity(connection).unwrap_or_else(|error| vec![error.to_string()]);
            report.problems.extend(found.into_iter().map(Problem::Database));
            let mut damaged = |error: StoreError| report.problems.push(Problem::Database(error.to_string()));
            let kept = kept(connection, None).map_err(&mut damaged).unwrap_or_default();
            let failed = StoreError::database("reading what is tallied");
            let indexed = tally::indexed(connection).map_err(&failed).map_err(&mut damaged).unwrap_or_default();
            let wrong = tally::wrong(connection).map_err(&failed).map_err(&mut damaged).unwrap_or_default();
            report.problems.extend(wrong.into_iter().map(Problem::Tally));
            Ok((kept, indexed))
        })
    }

    fn check_photographs(&self, named: &BTreeMap<PhotoHash, EntryId>, report: &mut Report) -> Result<(), StoreError> {
        let failed = |error| StoreError::disk("listing the photographs", &self.photographs)(error);
        let mut there = BTreeSet::new();
        for file in fs::read_dir(&self.photographs).map_err(failed)? {
            let name = file.map_err(failed)?.file_name().to_string_lossy().into_owned();
            if name.ends_with(&format!(".{}", disk::UNFINISHED)) {
                report.unfinished_files.push(name);
            } else if let Ok(hash) = PhotoHash::try_from(name) {
                there.insert(hash);
            }
        }
        report.unfinished_files.sort();
        for hash in &there {
            report.photographs += 1;
            report.unnamed_photographs += u64::from(!named.contains_key(hash));
            if let Err(error) = self.photograph(hash) {
                report.problems.push(Problem::Photograph { hash: hash.clone(), says: error.to_string() });
            }
        }
        let missing = named.iter().filter(|(hash, _)| !there.contains(*hash));
        report
            .problems
            .extend(missing.map(|(hash, entry)| Problem::PhotographMissing { hash: hash.clone(), entry: *entry }));
        Ok(())
    }
}

/// What SQLite itself finds: broken pages, indexes that disagree, entries of no slab.
fn integrity(connection: &Connection) -> rusqlite::Result<Vec<String>> {
    let mut found: Vec<String> =
        connection.prepare("PRAGMA integrity_check")?.query_map([], |row| row.get(0))?.collect::<Result<_, _>>()?;
    found.retain(|line| line != "ok");
    let orphans: Vec<(String, Option<i64>)> = connection
        .prepare("PRAGMA foreign_key_check")?
        .query_map([], |row| Ok((row.get(0)?, row.get(1)?)))?
        .collect::<Result<_, _>>()?;
    found.extend(orphans.iter().map(|(table, row)| match row {
        Some(arrival) if table == "entry" => {
            format!("entry number {arrival} belongs to a slab that is not there")
        }
        _ => format!("a row of the table \"{table}\" belongs to a slab or person that is not there"),
    }));
    Ok(found)
}

/// Reads every entry, and compares the photographs they name with those indexed for their slabs;
/// gives the photographs that are named and by which entry first.
fn check_entries(kept: &[Kept], indexed: &Index, report: &mut Report) -> BTreeMap<PhotoHash, EntryId> {
    report.entries = kept.len() as u64;
    let entries: Vec<_> = kept.par_iter().map(Kept::read).collect();
    let mut named = BTreeMap::new();
    let mut by_slab = Index::new();
    let mut unreadable = BTreeSet::new();
    for (kept, entry) in kept.iter().zip(entries) {
        match entry {
            Ok(entry) => {
                for hash in entry.photographs {
                    by_slab.insert((kept.slab.clone(), hash.as_str().to_owned()));
                    named.entry(hash).or_insert(entry.id);
                }
            }
            Err(error) => {
                unreadable.insert(&kept.slab);
                report.problems.push(Problem::Entry(error.to_string()));
            }
        }
    }
    let missing = by_slab.difference(indexed).map(|(slab, hash)| {
        Problem::Tally(format!("slab {slab}: photograph {hash} is named by an entry but not in the slab's index"))
    });
    report.problems.extend(missing);
    // An entry that cannot be read may have named it.
    let extra = indexed.difference(&by_slab).filter(|(slab, _)| !unreadable.contains(slab)).map(|(slab, hash)| {
        Problem::Tally(format!("slab {slab}: photograph {hash} is in the slab's index but no entry names it"))
    });
    report.problems.extend(extra);
    named
}
