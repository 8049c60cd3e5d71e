//! An error as a log may hold it.

use std::io;

use crate::error::StoreError;

impl StoreError {
    /// What went wrong and its cause, without names, ids, typed text, paths or hashes: a log is read by more
    /// people than the diaries are. The error's own words, for whoever works on the store, have all of these.
    #[must_use]
    pub fn without_names(&self) -> String {
        let said = match self {
            Self::Disk { doing, source, .. } => return format!("{doing}: {}", of_the_system(source)),
            // The words of the database may quote what was being written, its number can't.
            Self::Database { doing, code: Some(code), .. } => {
                return format!("{doing}: database error {code}, {}", rusqlite::ffi::code_to_str(*code));
            }
            Self::Database { doing, code: None, .. } => {
                return format!("{doing}: the database answered what can't be used");
            }
            Self::Busy { doing } => return format!("{doing}: another program keeps the store busy"),
            Self::NewerDatabase { found, known, .. } => {
                return format!("the tables are version {found}, newer than version {known}");
            }
            Self::ForeignDatabase { .. } => "the file is not a database of this program",
            Self::SlabName { .. } => "a name that can't be a slab's",
            Self::SlabNameTaken { .. } => "the name of a slab is taken",
            Self::SlabKnownAs { .. } => "a slab is there under another name",
            Self::NoSuchSlab { .. } => "a slab is not there",
            Self::AmbiguousSlab { .. } => "more than one slab begins like this",
            Self::OtherSlab { .. } => "an entry belongs to another slab",
            Self::Clash(_) => "two different entries carry one id",
            Self::PhotographNotPut { .. } => "an entry names a photograph that is not in the store",
            Self::WouldNotReadBack { .. } => "an entry would not read back",
            Self::EntryDamaged { .. } => "a kept entry is damaged",
            Self::NoPhotograph(_) => "a photograph is not in the store",
            Self::PhotographDamaged { .. } => "a photograph is damaged",
            Self::PhotographSize { bytes } => return format!("a photograph of {bytes} bytes"),
            Self::Field { field, .. } => return format!("{field}: not what the field can hold"),
            Self::PasswordNotHashed => "the password is not a PHC string",
            Self::PersonNameTaken { .. } => "the name of a person is taken",
            Self::NoSuchPerson(_) => "a person is not there",
            Self::PersonClosed { .. } => "the sign-in of a person is closed",
            Self::LastOwner { .. } => "the only owner would be gone",
        };
        said.to_owned()
    }
}

/// What the system says has no path in it; what a library put into an error of this type may.
fn of_the_system(error: &io::Error) -> String {
    match error.raw_os_error() {
        Some(_) => error.to_string(),
        None => error.kind().to_string(),
    }
}

#[cfg(test)]
mod tests {
    use std::path::PathBuf;

    use super::*;

    #[test]
    fn a_path_and_a_name_stay_out_and_the_cause_stays_in() {
        let path = PathBuf::from("/home/olga/slabs/photographs");
        let doing = "writing a photograph";
        let of_the_system = io::Error::from_raw_os_error(13);
        let cause = of_the_system.to_string();
        let disk = StoreError::Disk { doing, path: path.clone(), source: of_the_system };
        assert_eq!(disk.without_names(), format!("writing a photograph: {cause}"));
        let made_up = io::Error::new(io::ErrorKind::InvalidData, "olga's floor");
        let said = StoreError::Disk { doing, path, source: made_up }.without_names();
        assert_eq!(said, "writing a photograph: invalid data");
        let taken = StoreError::PersonNameTaken { name: "Olga".to_owned() };
        assert!(!taken.without_names().contains("Olga"));
        let closed = StoreError::NoSuchSlab { asked: "Olga's".to_owned(), there: vec!["Olga's shop".to_owned()] };
        assert!(!closed.without_names().contains("Olga"));
    }

    #[test]
    fn the_database_is_told_by_its_number_and_not_in_its_words() {
        let says = "UNIQUE constraint failed near 'Olga'".to_owned();
        let refused = StoreError::Database { doing: "adding entries", says, code: Some(13) };
        assert_eq!(refused.without_names(), "adding entries: database error 13, database or disk is full");
        let odd = StoreError::Database { doing: "adding entries", says: "Olga".to_owned(), code: None };
        assert_eq!(odd.without_names(), "adding entries: the database answered what can't be used");
    }
}
