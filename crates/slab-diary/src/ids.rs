//! Names of things in the diary: entries and slabs by UUID, photographs by their content.

use std::borrow::Cow;
use std::fmt;
use std::str::FromStr;

use serde::{Deserialize, Serialize};
use uuid::Uuid;

/// An entry's id: a version 7 UUID when made on a device, a version 8 one (hash of its content or
/// label) when read from a file, so that reading the same file twice adds nothing.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(try_from = "Cow<'_, str>", into = "Uuid")]
pub struct EntryId(pub Uuid);

impl TryFrom<Cow<'_, str>> for EntryId {
    type Error = IdError;
    fn try_from(text: Cow<'_, str>) -> Result<Self, IdError> {
        text.parse()
    }
}

impl form_schema::Answer for EntryId {
    const REQUIRED: bool = true;
}

impl From<EntryId> for Uuid {
    fn from(id: EntryId) -> Self {
        id.0
    }
}

/// A slab's id.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(transparent)]
pub struct SlabId(pub Uuid);

/// A text that is not an id of the kind asked for.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
#[error("{what} \"{text}\" is not an id; accepted: {accepted}")]
pub struct IdError {
    /// Which id was asked for.
    pub what: &'static str,
    /// What was given.
    pub text: String,
    /// What would be accepted.
    pub accepted: &'static str,
}

/// A version 8 UUID from the first 16 bytes of a BLAKE3 hash (RFC 9562, section 5.8).
fn hashed(parts: &[&[u8]]) -> Uuid {
    let mut hasher = blake3::Hasher::new();
    for part in parts {
        hasher.update(&(part.len() as u64).to_le_bytes());
        hasher.update(part);
    }
    let mut bytes = [0; 16];
    bytes.copy_from_slice(&hasher.finalize().as_bytes()[..16]);
    Uuid::new_v8(bytes)
}

impl EntryId {
    /// The id that a `#label` of a slab stands for, the same on every machine.
    #[must_use]
    pub fn of_label(slab: SlabId, label: &str) -> Self {
        Self(hashed(&[b"label", slab.0.as_bytes(), label.as_bytes()]))
    }

    /// The id of an entry read from a file without one: made from its text.
    #[must_use]
    pub fn of_text(slab: SlabId, text: &str) -> Self {
        Self(hashed(&[b"text", slab.0.as_bytes(), text.as_bytes(), &0_u32.to_le_bytes()]))
    }
}

impl SlabId {
    /// The id of a slab that is read from files under a name, the same on every machine.
    #[must_use]
    pub fn of_name(name: &str) -> Self {
        Self(hashed(&[b"slab", name.as_bytes()]))
    }
}

impl fmt::Display for EntryId {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.0.fmt(f)
    }
}

impl fmt::Display for SlabId {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.0.fmt(f)
    }
}

const UUID_FORM: &str = "a UUID such as 0190a8f0-7c1e-7b3a-9c51-0d6e3b9a7f10";

impl FromStr for EntryId {
    type Err = IdError;
    fn from_str(text: &str) -> Result<Self, IdError> {
        Uuid::parse_str(text).map(Self).map_err(|_| IdError {
            what: "entry",
            text: text.to_owned(),
            accepted: "the id of an entry, a UUID, or its #label",
        })
    }
}

impl FromStr for SlabId {
    type Err = IdError;
    fn from_str(text: &str) -> Result<Self, IdError> {
        Uuid::parse_str(text).map(Self).map_err(|_| IdError {
            what: "slab",
            text: text.to_owned(),
            accepted: UUID_FORM,
        })
    }
}

/// A photograph's name: the BLAKE3 hash of its bytes, 64 lower-case hexadecimal digits.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(try_from = "String", into = "String")]
pub struct PhotoHash(String);

impl PhotoHash {
    /// The hash of a photograph's bytes.
    #[must_use]
    pub fn of(bytes: &[u8]) -> Self {
        Self(blake3::hash(bytes).to_hex().to_string())
    }

    /// The hexadecimal digits. Only `0-9a-f`, so it is safe as a file name.
    #[must_use]
    pub fn as_str(&self) -> &str {
        &self.0
    }
}

impl TryFrom<String> for PhotoHash {
    type Error = IdError;
    fn try_from(text: String) -> Result<Self, IdError> {
        if text.len() == 64 && text.bytes().all(|b| b.is_ascii_digit() || (b'a'..=b'f').contains(&b)) {
            Ok(Self(text))
        } else {
            Err(IdError { what: "photograph", text, accepted: "the 64 lower-case hexadecimal digits of a BLAKE3 hash" })
        }
    }
}

impl From<PhotoHash> for String {
    fn from(hash: PhotoHash) -> Self {
        hash.0
    }
}
