//! Keeps diaries and photographs on disk.
//!
//! Why this crate exists: it keeps SQLite out of everything else. A [`Store`] is one folder:
//! `underfoot.sqlite` with the slabs and their entries, and `photographs/` with one file for each
//! photograph, named by the BLAKE3 hash of its bytes. What a call acknowledges is on the disk: the
//! database syncs at every commit, and a photograph is synced before an entry may name it.
//!
//! No entry is ever changed or dropped: the table of entries refuses it, whoever asks. The store
//! knows nothing of what entries mean, reads no clock and makes no randomness: moments, ids and
//! secrets are arguments.
//!
//! Beside the diaries it keeps who may sign in, who is signed in, share links and which slabs are
//! put away. Of a secret it is only ever given the hash.
//!
//! All writing goes through one connection, all reading through another, so that readers do not
//! wait while a writer waits for the disk. A read begins after the writes that have returned and
//! sees them.
//!
//! To change the tables: add the next numbered file to `migrations/` and its line to the list in
//! `database.rs`; never touch an older file.

mod check;
mod columns;
mod database;
mod diary_pages;
mod disk;
mod entries;
mod error;
mod fields;
mod first_owner;
mod ids;
mod links;
mod people;
mod photographs;
mod role;
mod sessions;
mod slab_list;
mod slabs;
mod tally;
mod without_names;

use std::path::{Path, PathBuf};
use std::sync::{Mutex, MutexGuard, PoisonError};

use rusqlite::{Connection, Params, Transaction, TransactionBehavior};

pub use check::{Problem, Report};
pub use entries::Appended;
pub use error::StoreError;
pub use ids::{LinkId, PersonId, TokenHash};
pub use links::{Link, LinkState, NewLink};
pub use people::{NewPerson, Person, SignIn};
pub use photographs::MAX_PHOTOGRAPH_BYTES;
pub use role::Role;
pub use sessions::Session;
pub use slab_list::SlabQuery;
pub use slabs::{MAX_NAME_LETTERS, SlabRecord};

/// A folder of diaries and photographs, open for reading and writing.
///
/// It may be shared between threads, and several programs may have the same folder open: writers
/// take turns, and wait up to ten seconds for theirs.
#[derive(Debug)]
pub struct Store {
    // Dropped first, so that the writer closes last and brings the log home.
    reader: Mutex<Connection>,
    writer: Mutex<Connection>,
    photographs: PathBuf,
}

impl Store {
    /// Opens the store in a folder, making both when they are not there yet and bringing the tables
    /// of an older program up to date.
    ///
    /// # Errors
    /// [`StoreError::Disk`] when the folder cannot be made, [`StoreError::NewerDatabase`] when a
    /// newer program wrote it (nothing is touched then), [`StoreError::ForeignDatabase`] when the
    /// file is something else, [`StoreError::Busy`] and [`StoreError::Database`] as they say.
    pub fn open(dir: &Path) -> Result<Self, StoreError> {
        disk::make_folder(dir)?;
        let photographs = dir.join("photographs");
        disk::make_folder(&photographs)?;
        let path = dir.join("underfoot.sqlite");
        let writer = Mutex::new(database::open(&path)?);
        let reader = Mutex::new(database::open_to_read(&path)?);
        Ok(Self { reader, writer, photographs })
    }

    /// Does all of some writing or none of it. When this returns it is on the disk.
    fn write<T>(
        &self,
        doing: &'static str,
        work: impl FnOnce(&Transaction<'_>) -> Result<T, StoreError>,
    ) -> Result<T, StoreError> {
        let failed = StoreError::database(doing);
        let mut writer = open_lock(&self.writer);
        let transaction = writer.transaction_with_behavior(TransactionBehavior::Immediate).map_err(&failed)?;
        let done = work(&transaction)?;
        transaction.commit().map_err(&failed)?;
        Ok(done)
    }

    /// Does one statement of writing; says how many rows it changed.
    fn change(&self, doing: &'static str, sql: &str, values: impl Params) -> Result<u64, StoreError> {
        let failed = StoreError::database(doing);
        open_lock(&self.writer).execute(sql, values).map(|rows| rows as u64).map_err(failed)
    }

    /// Reads, all of it from the same state of the store.
    fn view<T>(
        &self,
        doing: &'static str,
        work: impl FnOnce(&Connection) -> Result<T, StoreError>,
    ) -> Result<T, StoreError> {
        let mut reader = open_lock(&self.reader);
        // It changes nothing, so letting it go is as good as ending it.
        let transaction = reader.transaction().map_err(StoreError::database(doing))?;
        work(&transaction)
    }

    /// Reads what can only fail as the database does.
    fn read<T>(
        &self,
        doing: &'static str,
        work: impl FnOnce(&Connection) -> rusqlite::Result<T>,
    ) -> Result<T, StoreError> {
        self.view(doing, |connection| work(connection).map_err(StoreError::database(doing)))
    }
}

/// A connection. A thread that panicked while holding it left no half-done work behind: its
/// transaction was rolled back when it was dropped.
fn open_lock(connection: &Mutex<Connection>) -> MutexGuard<'_, Connection> {
    connection.lock().unwrap_or_else(PoisonError::into_inner)
}
