//! The one way an entry gets into a diary, whoever writes it: a page, the command line, a file of lines.
//!
//! Why this crate exists: the same input must give the same entry. So what lies between what was read and the
//! store is done here once: a photograph is inspected and loses its location, what it measures is filled in
//! where the person left it open, labels and moments are settled, the entry is checked against its diary, and
//! photographs are on disk before the entry that names them. The shells above only read and tell; nothing here
//! reads a clock or speaks.
//!
//! To add another writer (an exchange file, a second device): build [`NewEntry`]s or lines and hand them over.

mod lines;
mod measure;

use jiff::Timestamp;
use jiff::tz::TimeZone;
use photo::PhotoError;
use serde_json::{Map, Value, json};
use slab_diary::{
    Context, DateOrder, Diary, Draft, Entry, EntryError, EntryId, EntryKind, PhotoHash, Problem, SlabId,
    TypedWhenError, When, problems,
};
use store::{Store, StoreError};
use trade_facts::Trade;

pub use lines::{Doubt, LineError, LinesError, LinesWritten};

/// Who writes into which diary, when.
#[derive(Debug, Clone, Copy)]
pub struct Writer<'a> {
    /// Where diaries are kept.
    pub store: &'a Store,
    /// The slab.
    pub slab: SlabId,
    /// Its diary as it is.
    pub diary: &'a Diary,
    /// Zone of local times.
    pub zone: &'a TimeZone,
    /// Who writes.
    pub author: &'a str,
    /// On what.
    pub device: &'a str,
    /// How they order the numbers of a date.
    pub dates: DateOrder,
    /// The moment of writing.
    pub now: Timestamp,
}

/// What is to be written as one entry.
#[derive(Debug, Clone)]
pub struct NewEntry<'a> {
    /// Its id.
    pub id: EntryId,
    /// When it happened, as typed; when it is noted if nothing is said.
    pub happened: Option<&'a str>,
    /// When it is noted.
    pub noted: When,
    /// The entry that it corrects. Its photographs stay.
    pub replaces: Option<&'a Entry>,
    /// Its kind.
    pub kind: EntryKind,
    /// Its fields.
    pub fields: Map<String, Value>,
    /// Where, as the diary writes a place; none is the whole slab.
    pub place: Option<Value>,
    /// Photographs as they came, each with the name it had.
    pub photographs: Vec<(String, Vec<u8>)>,
}

/// What came of writing.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Appended {
    /// How many entries were new.
    pub added: u64,
    /// How many the diary had already.
    pub already: u64,
    /// All their ids.
    pub ids: Vec<EntryId>,
}

/// Why an entry was not written. Nothing was.
#[derive(Debug, thiserror::Error)]
pub enum WriteError {
    /// A photograph that cannot be taken, by the name it came with.
    #[error("photograph \"{0}\": {1}")]
    Photograph(String, PhotoError),
    /// When it happened cannot be read.
    #[error(transparent)]
    Happened(#[from] TypedWhenError),
    /// Its fields, moments or place cannot be read.
    #[error(transparent)]
    Entry(#[from] EntryError),
    /// It does not fit its diary.
    #[error("{} problems", .0.len())]
    Problems(Vec<Problem>),
    /// Another entry has its id.
    #[error("the entry {0} is written already, with other content")]
    AlreadyWritten(EntryId),
    /// The store.
    #[error(transparent)]
    Store(#[from] StoreError),
}

impl Writer<'_> {
    /// Makes the entry, checks it against the diary, and writes it after its photographs. Writing it again
    /// changes nothing.
    ///
    /// # Errors
    /// [`WriteError`]; nothing is written then.
    pub fn write(&self, new: NewEntry<'_>) -> Result<Appended, WriteError> {
        let (entry, photographs) = self.draft(new)?;
        if let Some(there) = self.store.entry(self.slab, entry.id)? {
            return if there.body == entry.body && there.place == entry.place {
                Ok(Appended { added: 0, already: 1, ids: vec![there.id] })
            } else {
                Err(WriteError::AlreadyWritten(there.id))
            };
        }
        let wrong = problems(self.diary, std::slice::from_ref(&entry), Trade::built_in(), self.now);
        if !wrong.is_empty() {
            return Err(WriteError::Problems(wrong));
        }
        for bytes in &photographs {
            self.store.put_photograph(bytes)?;
        }
        self.append(&[entry])
    }

    /// The entry as it would be written, with its photographs as they are kept.
    fn draft(&self, new: NewEntry<'_>) -> Result<(Entry, Vec<Vec<u8>>), WriteError> {
        let NewEntry { id, happened, noted, replaces, kind, mut fields, place, photographs } = new;
        // They say when they were taken and which way is up, never where.
        let kept = |(name, bytes): (String, Vec<u8>)| {
            let inspected = photo::inspect(&bytes).and_then(|_| photo::without_location(bytes));
            inspected.map_err(|error| WriteError::Photograph(name, error))
        };
        let photographs: Vec<Vec<u8>> = photographs.into_iter().map(kept).collect::<Result<_, _>>()?;
        // What never happened has no photographs: the struck entry keeps them.
        let kept = replaces.filter(|_| !kind.schema().only_corrects);
        let mut hashes: Vec<PhotoHash> = kept.map(|old| old.photographs.clone()).unwrap_or_default();
        let mut pictures = hashes.iter().map(|hash| self.store.photograph(hash)).collect::<Result<Vec<_>, _>>()?;
        hashes.extend(photographs.iter().map(|bytes| PhotoHash::of(bytes)));
        pictures.extend(photographs.iter().cloned());
        if let Some(old) = kept {
            measure::forget(kind, &mut fields, &old.body, !photographs.is_empty());
        }
        measure::fill_in(kind, &mut fields, &pictures);

        let mut body = Map::from_iter([("kind".to_owned(), json!(kind.name()))]);
        body.append(&mut fields);
        let mut line = Map::new();
        line.insert("id".to_owned(), json!(id.to_string()));
        let happened = match happened {
            // A time without an offset is the slab's own, wherever the phone that noted it believes to be.
            Some(typed) => When::read_typed(typed, &When::new(noted.instant(), self.zone), self.dates)?,
            None => noted.clone(),
        };
        line.insert("happened".to_owned(), json!(happened.to_string()));
        line.insert("noted".to_owned(), json!(noted.to_string()));
        if let Some(old) = replaces {
            line.insert("replaces".to_owned(), json!(old.id.to_string()));
        }
        if let Some(place) = place {
            line.insert("place".to_owned(), place);
        }
        if !hashes.is_empty() {
            line.insert("photographs".to_owned(), json!(hashes));
        }
        line.insert("body".to_owned(), Value::Object(body));
        let entry = Draft::parse(&Value::Object(line).to_string())?.settle(&self.context(None))?;
        Ok((entry, photographs))
    }

    fn context(&self, noted: Option<When>) -> Context {
        Context {
            slab: self.slab,
            zone: self.zone.clone(),
            author: self.author.to_owned(),
            device: self.device.to_owned(),
            noted,
        }
    }

    fn append(&self, entries: &[Entry]) -> Result<Appended, WriteError> {
        let ids = entries.iter().map(|entry| entry.id).collect();
        let appended = self.store.append(self.slab, entries)?;
        Ok(Appended { added: appended.added, already: appended.already, ids })
    }
}
