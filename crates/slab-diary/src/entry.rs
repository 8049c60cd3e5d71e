//! One entry: its header and its body.

use serde::{Deserialize, Serialize};
use serde_json::value::RawValue;

use super::body::{Body, BodyError, EntryKind};
use super::ids::{EntryId, PhotoHash, SlabId};
use super::place::{Place, PlaceError};
use super::when::When;

/// The version of the entry form that this program writes.
pub const SCHEMA: u32 = 1;

/// A dated entry of a diary.
#[derive(Debug, Clone, PartialEq)]
pub struct Entry {
    /// Its id.
    pub id: EntryId,
    /// The slab it belongs to.
    pub slab: SlabId,
    /// When it happened on the slab.
    pub happened: When,
    /// When it was written down.
    pub noted: When,
    /// Who wrote it.
    pub author: String,
    /// On which device.
    pub device: String,
    /// Version of the entry form it was written in.
    pub schema: u32,
    /// The entry it corrects.
    pub replaces: Option<EntryId>,
    /// Photographs that belong to it.
    pub photographs: Vec<PhotoHash>,
    /// Where on the plan; none is the whole slab.
    pub place: Option<Place>,
    /// What happened.
    pub body: Body,
}

/// A line that is not an entry.
#[derive(Debug, thiserror::Error)]
pub enum EntryError {
    /// Not JSON, or a header field is wrong.
    #[error("{field}: {problem}")]
    Header {
        /// The field, with its path.
        field: String,
        /// What was wrong and what would be accepted.
        problem: String,
    },
    /// The place is empty or half given.
    #[error(transparent)]
    Place(#[from] PlaceError),
    /// The body is wrong.
    #[error("{}", told(.0))]
    Body(BodyError),
}

/// A body's error without the sentences, which are in crate `localization`.
fn told(error: &BodyError) -> String {
    match error {
        BodyError::UnknownKind(kind) => {
            let kinds: Vec<&str> = EntryKind::ALL.iter().map(|kind| kind.name()).collect();
            format!("body.kind \"{kind}\" is not known; accepted: {}", kinds.join(", "))
        }
        other => format!("body: {other:?}"),
    }
}

/// The written form of an entry. The body stays raw text until its kind is known.
#[derive(Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
struct Line {
    id: EntryId,
    slab: SlabId,
    happened: When,
    noted: When,
    author: String,
    device: String,
    schema: u32,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    replaces: Option<EntryId>,
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    photographs: Vec<PhotoHash>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    place: Option<Place>,
    body: Box<RawValue>,
}

impl Entry {
    /// Reads an entry from its full JSON form.
    ///
    /// # Errors
    /// [`EntryError`] naming the field, the value and what would be accepted. A body of a kind or
    /// form this program does not know, written by a newer one, is no error: it is kept as it is.
    pub fn from_json(text: &str) -> Result<Self, EntryError> {
        let mut reader = serde_json::Deserializer::from_str(text);
        let line: Line = serde_path_to_error::deserialize(&mut reader)
            .map_err(|e| EntryError::Header { field: e.path().to_string(), problem: e.inner().to_string() })?;
        reader.end().map_err(|e| EntryError::Header { field: "line".to_owned(), problem: e.to_string() })?;
        if let Some(place) = &line.place {
            place.check()?;
        }
        Ok(Self {
            body: Body::read(&line.body, line.schema).map_err(EntryError::Body)?,
            id: line.id,
            slab: line.slab,
            happened: line.happened,
            noted: line.noted,
            author: line.author,
            device: line.device,
            schema: line.schema,
            replaces: line.replaces,
            photographs: line.photographs,
            place: line.place,
        })
    }

    /// Its full JSON form on one line. The same entry always gives the same text.
    #[must_use]
    pub fn to_json(&self) -> String {
        let line = Line {
            id: self.id,
            slab: self.slab,
            happened: self.happened.clone(),
            noted: self.noted.clone(),
            author: self.author.clone(),
            device: self.device.clone(),
            schema: self.schema,
            replaces: self.replaces,
            photographs: self.photographs.clone(),
            place: self.place.clone(),
            body: self.body.to_raw(),
        };
        serde_json::to_string(&line).expect("an entry holds only text, numbers and lists")
    }

    /// The order in which entries are told: when they happened, then when they were noted, then id.
    #[must_use]
    pub fn order(&self) -> (jiff::Timestamp, jiff::Timestamp, EntryId) {
        (self.happened.instant(), self.noted.instant(), self.id)
    }
}
