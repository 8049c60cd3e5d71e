//! Where a calculation's file comes from: the shell decides, this crate opens none.

use std::cell::RefCell;
use std::io;
use std::path::Path;

use crate::error::{ErrorKind, SumError, What};

/// A place that files are read from.
pub trait Files {
    /// The bytes of the file under a name as it was typed.
    ///
    /// # Errors
    /// There is no such file here, or it cannot be read.
    fn read(&self, name: &Path) -> io::Result<Vec<u8>>;
}

impl<F: Fn(&Path) -> io::Result<Vec<u8>>> Files for F {
    fn read(&self, name: &Path) -> io::Result<Vec<u8>> {
        self(name)
    }
}

/// No file at all.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct NoFiles;

fn not_given() -> io::Error {
    io::Error::new(io::ErrorKind::NotFound, "no such file was given")
}

impl Files for NoFiles {
    fn read(&self, _: &Path) -> io::Result<Vec<u8>> {
        Err(not_given())
    }
}

/// Files that came with the question: their names and bytes. A name that is none of them is refused.
#[derive(Debug, Clone, Copy)]
pub struct Uploads<'a>(pub &'a [(&'a str, &'a [u8])]);

impl Files for Uploads<'_> {
    fn read(&self, name: &Path) -> io::Result<Vec<u8>> {
        let found = self.0.iter().find(|(known, _)| Path::new(known).as_os_str() == name.as_os_str());
        found.map(|(_, bytes)| bytes.to_vec()).ok_or_else(not_given)
    }
}

/// The files of one calculation with what was noticed while reading them.
pub(crate) struct Reader<'a> {
    files: &'a dyn Files,
    notes: RefCell<Vec<String>>,
}

impl<'a> Reader<'a> {
    pub(crate) fn new(files: &'a dyn Files) -> Self {
        Self { files, notes: RefCell::default() }
    }

    pub(crate) fn named<'r>(&'r self, path: &'r Path) -> NamedFile<'r> {
        NamedFile { path, reader: self }
    }

    pub(crate) fn into_notes(self) -> Vec<String> {
        self.notes.into_inner()
    }
}

/// A file that was named in a question.
#[derive(Clone, Copy)]
pub(crate) struct NamedFile<'a> {
    path: &'a Path,
    reader: &'a Reader<'a>,
}

impl NamedFile<'_> {
    /// Its name without folders, and its bytes.
    pub(crate) fn read(self) -> Result<(String, Vec<u8>), SumError> {
        let path = self.path;
        let name = path.file_name().map_or_else(|| path.display().to_string(), |n| n.to_string_lossy().into_owned());
        match self.reader.files.read(path) {
            Ok(bytes) => Ok((name, bytes)),
            Err(error) => {
                let said =
                    format!("file \"{}\": {error}; accepted: a file that can be read or written there", path.display());
                Err(SumError::new(ErrorKind::Data, Some("file"), said, What::NoFile { name }))
            }
        }
    }

    /// Notes what was noticed in it.
    pub(crate) fn note(self, lines: Vec<String>) {
        self.reader.notes.borrow_mut().extend(lines);
    }
}
