//! The photographs: one file each, named by the hash of its bytes.

use std::fs;
use std::io::ErrorKind;
use std::path::PathBuf;

use slab_diary::{PhotoHash, SlabId};

use crate::error::StoreError;
use crate::{Store, disk, tally};

/// Largest photograph, in bytes (40 MB). A 48-megapixel JPEG is about half of it.
pub const MAX_PHOTOGRAPH_BYTES: usize = 40_000_000;

impl Store {
    /// Keeps a photograph and gives its name. When this returns it is on the disk. Putting the same
    /// bytes again changes nothing, unless the kept file is damaged: then it is mended.
    ///
    /// The bytes are kept as they come; whether they are a picture is not looked at.
    ///
    /// # Errors
    /// [`StoreError::PhotographSize`] when it is empty or over [`MAX_PHOTOGRAPH_BYTES`];
    /// [`StoreError::Disk`].
    pub fn put_photograph(&self, bytes: &[u8]) -> Result<PhotoHash, StoreError> {
        if bytes.is_empty() || bytes.len() > MAX_PHOTOGRAPH_BYTES {
            return Err(StoreError::PhotographSize { bytes: bytes.len() });
        }
        let hash = PhotoHash::of(bytes);
        let path = self.photograph_path(&hash);
        let length = u64::try_from(bytes.len()).ok();
        let length_agrees = fs::metadata(&path).is_ok_and(|file| Some(file.len()) == length);
        if length_agrees && fs::read(&path).is_ok_and(|kept| kept == bytes) {
            // Whoever put it may not have come to sync the folder yet.
            disk::sync_folder(&self.photographs)?;
        } else {
            disk::write_file(&self.photographs, hash.as_str(), bytes)?;
        }
        Ok(hash)
    }

    /// A photograph's bytes, checked against its name.
    ///
    /// # Errors
    /// [`StoreError::NoPhotograph`]; [`StoreError::PhotographDamaged`] when the bytes are no longer
    /// what was put; [`StoreError::Disk`].
    pub fn photograph(&self, hash: &PhotoHash) -> Result<Vec<u8>, StoreError> {
        let path = self.photograph_path(hash);
        let failed = |error: std::io::Error| match error.kind() {
            ErrorKind::NotFound => StoreError::NoPhotograph(hash.clone()),
            _ => StoreError::disk("reading the photograph", &path)(error),
        };
        // A file that grew is damaged; how far it grew must not decide how much memory is taken.
        let length = fs::metadata(&path).map_err(&failed)?.len();
        let most = u64::try_from(MAX_PHOTOGRAPH_BYTES).unwrap_or(u64::MAX);
        if length <= most {
            let bytes = fs::read(&path).map_err(&failed)?;
            if PhotoHash::of(&bytes) == *hash {
                return Ok(bytes);
            }
        }
        Err(StoreError::PhotographDamaged { hash: hash.clone(), bytes: length })
    }

    /// The bytes of a photograph that some entry of a slab names; none when no entry of it does, even
    /// when the store has the photograph. So whoever may see one slab cannot see another's.
    ///
    /// # Errors
    /// As [`Store::photograph`] when an entry names it.
    pub fn photograph_of(&self, slab: SlabId, hash: &PhotoHash) -> Result<Option<Vec<u8>>, StoreError> {
        let named = self.read("looking for a photograph", |connection| tally::names(connection, slab, hash))?;
        if named { self.photograph(hash).map(Some) } else { Ok(None) }
    }

    pub(crate) fn has_photograph(&self, hash: &PhotoHash) -> bool {
        self.photograph_path(hash).is_file()
    }

    /// Safe to join: a [`PhotoHash`] is 64 hexadecimal digits and nothing else.
    fn photograph_path(&self, hash: &PhotoHash) -> PathBuf {
        self.photographs.join(hash.as_str())
    }
}
