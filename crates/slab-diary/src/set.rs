//! The diary as a set of entries: adding and merging.

use std::collections::BTreeMap;

use super::entry::Entry;
use super::ids::EntryId;

/// All entries of one slab, by id. Entries are added, never changed or removed.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Diary {
    entries: BTreeMap<EntryId, Entry>,
}

/// Two different entries carry the same id: one of them was tampered with.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
#[error(
    "entry {0} is already in the diary with other content; accepted: the same entry again, or a correction that replaces it"
)]
pub struct Clash(pub EntryId);

impl Diary {
    /// An empty diary.
    #[must_use]
    pub fn new() -> Self {
        Self::default()
    }

    /// Adds an entry; adding it again changes nothing. Says whether it was new.
    ///
    /// # Errors
    /// [`Clash`] when another entry has its id; the diary is unchanged then.
    pub fn add(&mut self, entry: Entry) -> Result<bool, Clash> {
        match self.entries.get(&entry.id) {
            Some(known) if *known == entry => Ok(false),
            Some(_) => Err(Clash(entry.id)),
            None => {
                self.entries.insert(entry.id, entry);
                Ok(true)
            }
        }
    }

    /// Adds all entries of another diary: set union.
    ///
    /// # Errors
    /// [`Clash`] naming the first id with two contents; the diary is unchanged then.
    pub fn merge(&mut self, other: &Self) -> Result<(), Clash> {
        if let Some(clash) = other.entries.values().find(|e| self.entries.get(&e.id).is_some_and(|known| known != *e)) {
            return Err(Clash(clash.id));
        }
        for entry in other.entries.values() {
            self.entries.entry(entry.id).or_insert_with(|| entry.clone());
        }
        Ok(())
    }

    /// An entry by its id.
    #[must_use]
    pub fn get(&self, id: EntryId) -> Option<&Entry> {
        self.entries.get(&id)
    }

    /// All entries, by id.
    pub fn entries(&self) -> impl Iterator<Item = &Entry> {
        self.entries.values()
    }

    /// How many entries there are.
    #[must_use]
    pub fn len(&self) -> usize {
        self.entries.len()
    }

    /// Whether nothing was written yet.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        self.entries.is_empty()
    }
}

impl FromIterator<Entry> for Diary {
    /// Collects entries; of two with one id the first is kept.
    fn from_iter<I: IntoIterator<Item = Entry>>(entries: I) -> Self {
        let mut diary = Self::new();
        for entry in entries {
            diary.entries.entry(entry.id).or_insert(entry);
        }
        diary
    }
}
