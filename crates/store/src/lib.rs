//! Keeps diaries and photographs on disk.
//!
//! Why this crate exists: it keeps SQLite out of everything else. A [`Store`] is one folder:
//! `underfoot.sqlite` with the slabs and their entries, and `photographs/` with one file for each
//! photograph, named by the BLAKE3 hash of its bytes. What a call acknowledges is on the disk: the
//! database syncs at every commit, and a photograph is synced before an entry may name it.
//!
//! Nothing is ever changed or dropped: the table of entries refuses it, whoever asks. The store
//! knows nothing of what entries mean, reads no clock, and never mentions a page or a screen.
//!
//! To change the tables: add the next numbered file to `migrations/` and its line to the list in
//! `database.rs`; never touch an older file.

mod check;
mod database;
mod disk;
mod entries;
mod error;
mod photographs;
mod slabs;

use std::path::{Path, PathBuf};
use std::sync::{Mutex, MutexGuard, PoisonError};

use rusqlite::Connection;

pub use check::{Problem, Report};
pub use entries::Appended;
pub use error::StoreError;
pub use photographs::MAX_PHOTOGRAPH_BYTES;
pub use slabs::{MAX_NAME_LETTERS, SlabRecord};

/// A folder of diaries and photographs, open for reading and writing.
///
/// It may be shared between threads, and several programs may have the same folder open: writers
/// take turns, and wait up to ten seconds for theirs.
#[derive(Debug)]
pub struct Store {
    connection: Mutex<Connection>,
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
        let connection = database::open(&dir.join("underfoot.sqlite"))?;
        Ok(Self { connection: Mutex::new(connection), photographs })
    }

    /// The connection. A thread that panicked while holding it left no half-done work behind: its
    /// transaction was rolled back when it was dropped.
    fn connection(&self) -> MutexGuard<'_, Connection> {
        self.connection.lock().unwrap_or_else(PoisonError::into_inner)
    }
}
