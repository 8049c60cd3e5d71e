//! The slabs that have a diary here.

use jiff::Timestamp;
use rusqlite::{Connection, OptionalExtension};
use slab_diary::SlabId;

use crate::error::StoreError;
use crate::{Store, slab_list};

/// Longest name of a slab, in letters.
pub const MAX_NAME_LETTERS: usize = 200;

/// A slab in the store.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct SlabRecord {
    /// Its id.
    pub id: SlabId,
    /// What it is called here; no other slab of the store has this name.
    pub name: String,
    /// How many entries its diary has.
    pub entries: u64,
    /// The latest moment at which an entry was noted, to the microsecond; none while the diary is
    /// empty.
    pub last_noted: Option<Timestamp>,
    /// Whether it is put away: hidden from the list until it is brought back.
    pub put_away: bool,
    /// Grows with every entry that arrives in its diary, and with nothing else; 0 while the diary is
    /// empty. Two records of a slab in one store with the same version have the same diary.
    pub version: i64,
}

impl SlabRecord {
    fn told(&self) -> String {
        format!("{} ({})", self.name, self.id)
    }
}

impl Store {
    /// Makes a slab with an empty diary. Making it again under the same name changes nothing. Says
    /// whether it was new. Space around the name is dropped.
    ///
    /// # Errors
    /// [`StoreError::SlabName`] for a name that is empty, too long, more than one line or an id;
    /// [`StoreError::SlabNameTaken`] when another slab has it, in capitals or not;
    /// [`StoreError::SlabKnownAs`] when the slab is there under another name.
    pub fn create_slab(&self, id: SlabId, name: &str) -> Result<bool, StoreError> {
        let name = checked_name(name)?;
        const MAKING: &str = "making the slab";
        self.write(MAKING, |connection| {
            let there = all(connection)?;
            if let Some(known) = there.iter().find(|slab| slab.id == id) {
                if known.name == name {
                    return Ok(false);
                }
                return Err(StoreError::SlabKnownAs { id, name: known.name.clone(), asked: name.to_owned() });
            }
            if let Some(other) = there.iter().find(|slab| key(&slab.name) == key(name)) {
                return Err(StoreError::SlabNameTaken { name: name.to_owned(), by: other.id });
            }
            connection
                .execute("INSERT INTO slab (id, name, name_key) VALUES (?1, ?2, ?3)", (id.to_string(), name, key(name)))
                .map_err(StoreError::database(MAKING))?;
            Ok(true)
        })
    }

    /// All slabs, by name, those put away too.
    ///
    /// # Errors
    /// [`StoreError::Database`] or [`StoreError::Busy`].
    pub fn slabs(&self) -> Result<Vec<SlabRecord>, StoreError> {
        self.view(LISTING, all)
    }

    /// The slab that a person means: by its whole name (capitals or not), its id, or the beginning
    /// of either when only one slab begins so.
    ///
    /// # Errors
    /// [`StoreError::NoSuchSlab`] and [`StoreError::AmbiguousSlab`] list what is there.
    pub fn find_slab(&self, name_or_id: &str) -> Result<SlabRecord, StoreError> {
        let there = self.slabs()?;
        let asked = key(name_or_id.trim());
        let id = asked.parse::<SlabId>().ok();
        if let Some(found) = there.iter().find(|slab| key(&slab.name) == asked || Some(slab.id) == id) {
            return Ok(found.clone());
        }
        let begins = |slab: &&SlabRecord| {
            !asked.is_empty() && (key(&slab.name).starts_with(&asked) || slab.id.to_string().starts_with(&asked))
        };
        let matches: Vec<&SlabRecord> = there.iter().filter(begins).collect();
        match matches.as_slice() {
            [one] => Ok((*one).clone()),
            [] => Err(no_such_slab(name_or_id, &there)),
            _ => Err(StoreError::AmbiguousSlab {
                asked: name_or_id.to_owned(),
                matches: matches.iter().map(|slab| slab.told()).collect(),
            }),
        }
    }
}

/// Names are compared without regard to capitals, in any alphabet.
pub(crate) fn key(name: &str) -> String {
    name.to_lowercase()
}

fn checked_name(name: &str) -> Result<&str, StoreError> {
    let trimmed = name.trim();
    let problem = if trimmed.is_empty() {
        "is empty"
    } else if trimmed.chars().count() > MAX_NAME_LETTERS {
        "is too long"
    } else if trimmed.chars().any(char::is_control) {
        "holds a line break or another control character"
    } else if trimmed.parse::<SlabId>().is_ok() {
        "is an id"
    } else {
        return Ok(trimmed);
    };
    Err(StoreError::SlabName { name: trimmed.chars().take(MAX_NAME_LETTERS).collect(), problem })
}

fn no_such_slab(asked: &str, there: &[SlabRecord]) -> StoreError {
    StoreError::NoSuchSlab { asked: asked.to_owned(), there: there.iter().map(SlabRecord::told).collect() }
}

/// Fails, with a list of those that are there, when the store does not have the slab.
pub(crate) fn demand(connection: &Connection, slab: SlabId) -> Result<(), StoreError> {
    let found = connection
        .query_row("SELECT 1 FROM slab WHERE id = ?1", [slab.to_string()], |_| Ok(()))
        .optional()
        .map_err(StoreError::database("looking for the slab"))?;
    match found {
        Some(()) => Ok(()),
        None => Err(no_such_slab(&slab.to_string(), &all(connection)?)),
    }
}

const LISTING: &str = "listing the slabs";

fn all(connection: &Connection) -> Result<Vec<SlabRecord>, StoreError> {
    slab_list::select(connection, "ORDER BY slab.name_key", []).map_err(StoreError::database(LISTING))
}
