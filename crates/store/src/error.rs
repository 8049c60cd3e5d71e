//! What can go wrong, said so that a person can act on it.

use std::path::PathBuf;

use jiff::Timestamp;
use slab_diary::{Clash, EntryId, PhotoHash, SlabId};

use crate::ids::PersonId;
use crate::photographs::MAX_PHOTOGRAPH_BYTES;
use crate::slabs::MAX_NAME_LETTERS;

/// Why the store did not do what was asked. Nothing was written, unless the variant says otherwise.
#[derive(Debug, thiserror::Error)]
pub enum StoreError {
    /// A file or folder could not be read or written.
    #[error("{}: {doing}: {source}", path.display())]
    Disk {
        /// What the store was doing.
        doing: &'static str,
        /// The file or folder.
        path: PathBuf,
        /// What the system said.
        source: std::io::Error,
    },
    /// The database refused.
    #[error("{doing}: the database says: {says}")]
    Database {
        /// What the store was doing.
        doing: &'static str,
        /// What the database said.
        says: String,
        /// Its own number for that, where it gave one.
        code: Option<i32>,
    },
    /// Another program kept the database to itself for too long.
    #[error("{doing}: another program keeps the store busy; accepted: trying again when it is done")]
    Busy {
        /// What the store was doing.
        doing: &'static str,
    },
    /// A newer program wrote the database. Nothing was touched.
    #[error(
        "{}: the tables are version {found}; accepted: version {known} or older. A newer program wrote them: use that one",
        path.display()
    )]
    NewerDatabase {
        /// The database file.
        path: PathBuf,
        /// Version of its tables.
        found: i64,
        /// Newest version this program knows.
        known: i64,
    },
    /// The file is not a database of this program. Nothing was touched.
    #[error("{}: {problem}; accepted: a database made by this program, or no file", path.display())]
    ForeignDatabase {
        /// The database file.
        path: PathBuf,
        /// What it is instead.
        problem: String,
    },
    /// A name that cannot be a slab's.
    #[error("slab name \"{name}\" {problem}; accepted: 1 to {MAX_NAME_LETTERS} letters on one line that are not an id")]
    SlabName {
        /// What was given.
        name: String,
        /// What is wrong with it.
        problem: &'static str,
    },
    /// Another slab has this name, in capitals or not.
    #[error("slab name \"{name}\" is taken by slab {by}; accepted: another name")]
    SlabNameTaken {
        /// The name asked for.
        name: String,
        /// The slab that has it.
        by: SlabId,
    },
    /// The slab is there under another name.
    #[error("slab {id} is already there as \"{name}\", not as \"{asked}\"; accepted: the same name again")]
    SlabKnownAs {
        /// The slab.
        id: SlabId,
        /// Its name.
        name: String,
        /// The name asked for.
        asked: String,
    },
    /// No slab answers to this.
    #[error("slab \"{asked}\" is not there; accepted: {}", listed(there))]
    NoSuchSlab {
        /// What was asked for.
        asked: String,
        /// The slabs that are there, each as name and id.
        there: Vec<String>,
    },
    /// More than one slab begins like this.
    #[error("slab \"{asked}\" could be several; accepted: {}", listed(matches))]
    AmbiguousSlab {
        /// What was asked for.
        asked: String,
        /// The slabs it could be, each as name and id.
        matches: Vec<String>,
    },
    /// The entry belongs to another slab.
    #[error("entry {entry}: slab {says}; accepted: slab {wanted}, whose diary it was added to")]
    OtherSlab {
        /// The entry.
        entry: EntryId,
        /// The slab it names.
        says: SlabId,
        /// The slab it was added to.
        wanted: SlabId,
    },
    /// Two different entries carry one id.
    #[error(transparent)]
    Clash(#[from] Clash),
    /// The entry names a photograph that is not in the store.
    #[error(
        "entry {entry}: photograph {} is not in the store; accepted: a photograph that was put there before",
        hash.as_str()
    )]
    PhotographNotPut {
        /// The entry.
        entry: EntryId,
        /// The photograph.
        hash: PhotoHash,
    },
    /// The entry's own text could not be read again; it would lock the whole diary.
    #[error("entry {entry} would not read back: {problem}; accepted: an entry whose text reads back the same")]
    WouldNotReadBack {
        /// The entry.
        entry: EntryId,
        /// What goes wrong.
        problem: String,
    },
    /// A kept entry is damaged or cannot be read by this program.
    #[error("kept entry {entry}: {problem}; accepted: an undamaged store, or the newer program that wrote it")]
    EntryDamaged {
        /// The id it is kept under.
        entry: String,
        /// What is wrong.
        problem: String,
    },
    /// The photograph is not in the store.
    #[error("photograph {} is not in the store", .0.as_str())]
    NoPhotograph(PhotoHash),
    /// The photograph's bytes are no longer what was put.
    #[error("photograph {} is damaged: its {bytes} bytes have another hash; accepted: putting the original again", hash.as_str())]
    PhotographDamaged {
        /// The photograph.
        hash: PhotoHash,
        /// How many bytes its file has.
        bytes: u64,
    },
    /// The photograph has no bytes or too many.
    #[error("photograph of {bytes} bytes; accepted: 1 to {MAX_PHOTOGRAPH_BYTES} bytes")]
    PhotographSize {
        /// How many bytes it has.
        bytes: usize,
    },
    /// A value that a field cannot hold.
    #[error("{field} \"{value}\"; accepted: {accepted}")]
    Field {
        /// The field.
        field: &'static str,
        /// What was given, its first 200 letters.
        value: String,
        /// What would be accepted.
        accepted: &'static str,
    },
    /// A password came as something else than a PHC string, perhaps as itself: it is not repeated.
    #[error("the password is not a PHC string; accepted: the hashed password as $id$…$salt$hash, up to 512 bytes")]
    PasswordNotHashed,
    /// Another person has this name, in capitals or not.
    #[error("person name \"{name}\" is taken; accepted: a name that nobody has or had")]
    PersonNameTaken {
        /// The name asked for.
        name: String,
    },
    /// Nobody has this id.
    #[error("person {0} is not there")]
    NoSuchPerson(PersonId),
    /// The person's sign-in is closed.
    #[error("the sign-in of \"{name}\" is closed since {since}; accepted: a person who may sign in")]
    PersonClosed {
        /// The person's name.
        name: String,
        /// Since when.
        since: Timestamp,
    },
    /// Nobody else is an owner who may sign in.
    #[error("\"{name}\" is the only owner; accepted: making another person an owner first")]
    LastOwner {
        /// The owner's name.
        name: String,
    },
}

impl StoreError {
    /// Turns what the database said into an error, with what the store was doing.
    pub(crate) fn database(doing: &'static str) -> impl Fn(rusqlite::Error) -> Self {
        move |error| match error.sqlite_error_code() {
            Some(rusqlite::ErrorCode::DatabaseBusy | rusqlite::ErrorCode::DatabaseLocked) => Self::Busy { doing },
            _ => Self::Database { doing, says: error.to_string(), code: error.sqlite_extended_error_code() },
        }
    }

    /// Turns what the system said into an error, with what the store was doing to which file.
    pub(crate) fn disk(doing: &'static str, path: &std::path::Path) -> impl FnOnce(std::io::Error) -> Self {
        let path = path.to_owned();
        move |source| Self::Disk { doing, path, source }
    }
}

/// A firm may have hundreds of slabs; a line that long helps nobody.
const LISTED: usize = 12;

fn listed(slabs: &[String]) -> String {
    if slabs.is_empty() {
        return "none, no slab was made yet".to_owned();
    }
    let mut line = slabs.iter().take(LISTED).cloned().collect::<Vec<_>>().join(", ");
    if slabs.len() > LISTED {
        line.push_str(&format!(" and {} more", slabs.len() - LISTED));
    }
    line
}
