//! Files and folders that are on the disk when the call returns.

use std::fs::{self, File, OpenOptions};
use std::io::{ErrorKind, Write};
use std::path::{Path, PathBuf};

use crate::error::StoreError;

/// Ending of a file that is still being written, or was when the power went.
pub(crate) const UNFINISHED: &str = "part";

/// Makes a folder and those above it, each synced into the one that holds it.
pub(crate) fn make_folder(path: &Path) -> Result<(), StoreError> {
    if path.is_dir() {
        return Ok(());
    }
    let above = match path.parent() {
        Some(above) if !above.as_os_str().is_empty() => {
            make_folder(above)?;
            above
        }
        _ => Path::new("."),
    };
    match fs::create_dir(path) {
        Err(error) if error.kind() != ErrorKind::AlreadyExists || !path.is_dir() => {
            Err(StoreError::disk("making the folder", path)(error))
        }
        // Made by another program just now counts as made.
        _ => sync_folder(above),
    }
}

/// Puts a folder's list of names on the disk. Only Unix lets a program ask for it.
pub(crate) fn sync_folder(path: &Path) -> Result<(), StoreError> {
    if cfg!(unix) {
        File::open(path).and_then(|folder| folder.sync_all()).map_err(StoreError::disk("syncing the folder", path))?;
    }
    Ok(())
}

/// Writes a whole file: nobody ever sees half of it, and it is on the disk when this returns.
pub(crate) fn write_file(folder: &Path, name: &str, bytes: &[u8]) -> Result<(), StoreError> {
    let (mut file, unfinished) = new_unfinished(folder, name)?;
    let path = folder.join(name);
    let written = file.write_all(bytes).and_then(|()| file.sync_all()).and_then(|()| fs::rename(&unfinished, &path));
    if let Err(error) = written {
        // The first error is the one to report; a leftover is harmless and listed by the check.
        let _ = fs::remove_file(&unfinished);
        return Err(StoreError::disk("writing the file", &path)(error));
    }
    sync_folder(folder)
}

/// More leftovers of one file than this means something else is wrong.
const MAX_UNFINISHED: u32 = 1000;

/// A file under a name that nobody else writes to. Counting up needs neither clock nor chance.
fn new_unfinished(folder: &Path, name: &str) -> Result<(File, PathBuf), StoreError> {
    let mut number = 0;
    loop {
        let path = folder.join(format!("{name}.{number}.{UNFINISHED}"));
        match OpenOptions::new().write(true).create_new(true).open(&path) {
            Ok(file) => return Ok((file, path)),
            Err(error) if error.kind() == ErrorKind::AlreadyExists && number < MAX_UNFINISHED => number += 1,
            Err(error) => return Err(StoreError::disk("making the file", &path)(error)),
        }
    }
}
