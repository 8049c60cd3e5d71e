//! Where a calculation's file comes from: the shell decides, this crate opens none.

use std::io;
use std::path::Path;

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
