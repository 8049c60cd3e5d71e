//! Opening the database and bringing its tables up to date.

use std::path::Path;
use std::thread;
use std::time::Duration;

use rusqlite::{Connection, ErrorCode, OpenFlags, TransactionBehavior};

use crate::error::StoreError;

/// Every change of the tables, oldest first. Only ever add to the end.
const MIGRATIONS: &[&str] =
    &[include_str!("../migrations/0001_diary.sql"), include_str!("../migrations/0002_people_and_lists.sql")];

/// More than the store has different statements, so that none is read anew.
const STATEMENTS: usize = 64;

/// How long a writer waits for its turn.
const PATIENCE: Duration = Duration::from_secs(10);

const OPENING: &str = "opening the store";

/// Opens the database and brings it up to date.
pub(crate) fn open(path: &Path) -> Result<Connection, StoreError> {
    let failed = StoreError::database(OPENING);
    let mut connection = Connection::open(path).map_err(&failed)?;
    connection.busy_timeout(PATIENCE).map_err(&failed)?;
    // Look before touching: even the journal mode would change a newer program's file.
    recognize(&connection, path)?;
    set_journal(&connection)?;
    set_up(&connection)?;
    migrate(&mut connection, path)?;
    Ok(connection)
}

/// Opens a second way into a database that [`open`] has brought up to date. It cannot change
/// anything, and what it reads does not wait for a writer: each transaction sees what was committed
/// before it began.
pub(crate) fn open_to_read(path: &Path) -> Result<Connection, StoreError> {
    let failed = StoreError::database(OPENING);
    let flags = OpenFlags::default().difference(OpenFlags::SQLITE_OPEN_CREATE);
    let connection = Connection::open_with_flags(path, flags).map_err(&failed)?;
    connection.busy_timeout(PATIENCE).map_err(&failed)?;
    // Should this connection be the last to close, it brings the log home, and must sync as any other.
    set_up(&connection)?;
    connection.pragma_update(None, "query_only", true).map_err(&failed)?;
    Ok(connection)
}

/// What every connection needs for itself.
fn set_up(connection: &Connection) -> Result<(), StoreError> {
    let failed = StoreError::database(OPENING);
    connection.set_prepared_statement_cache_capacity(STATEMENTS);
    connection.pragma_update(None, "synchronous", "FULL").map_err(&failed)?;
    // Apple's disks need their own kind of sync; elsewhere this does nothing.
    connection.pragma_update(None, "fullfsync", true).map_err(&failed)?;
    connection.pragma_update(None, "foreign_keys", true).map_err(&failed)
}

/// The version of the tables, when they are ours and not newer than this program.
fn recognize(connection: &Connection, path: &Path) -> Result<usize, StoreError> {
    // Tables first: they and their version appear together, so tables seen here had a version
    // before it is asked for, even when another program is making the store at this moment.
    let look = || -> rusqlite::Result<(i64, i64)> {
        let tables = connection.query_row("SELECT count(*) FROM sqlite_schema", [], |row| row.get(0))?;
        let version = connection.query_row("PRAGMA user_version", [], |row| row.get(0))?;
        Ok((version, tables))
    };
    let (version, tables) = look().map_err(|error| match error.sqlite_error_code() {
        Some(ErrorCode::NotADatabase) => foreign(path, "is not a database"),
        _ => StoreError::database(OPENING)(error),
    })?;
    match usize::try_from(version) {
        Ok(0) if tables > 0 => Err(foreign(path, "holds tables of another program")),
        Ok(known) if known <= MIGRATIONS.len() => Ok(known),
        Ok(_) => {
            Err(StoreError::NewerDatabase { path: path.to_owned(), found: version, known: MIGRATIONS.len() as i64 })
        }
        Err(_) => Err(foreign(path, "has a table version below zero")),
    }
}

fn foreign(path: &Path, problem: &str) -> StoreError {
    StoreError::ForeignDatabase { path: path.to_owned(), problem: problem.to_owned() }
}

/// Switches to the write-ahead log. SQLite does not wait its turn for this one change, so two
/// programs that make a store at the same moment must try again by hand.
fn set_journal(connection: &Connection) -> Result<(), StoreError> {
    let failed = StoreError::database(OPENING);
    let pause = Duration::from_millis(20);
    let mut waited = Duration::ZERO;
    loop {
        let mode = connection
            .pragma_update_and_check(None, "journal_mode", "WAL", |row| row.get::<_, String>(0))
            .map_err(&failed);
        match mode {
            Ok(mode) if mode == "wal" => return Ok(()),
            Ok(mode) => {
                let says =
                    format!("its journal is \"{mode}\" and cannot be \"wal\"; accepted: a folder on a local disk");
                return Err(StoreError::Database { doing: OPENING, says, code: None });
            }
            Err(StoreError::Busy { .. }) if waited < PATIENCE => {
                thread::sleep(pause);
                waited += pause;
            }
            Err(error) => return Err(error),
        }
    }
}

/// Applies what is missing, all or nothing. The version is read again inside the transaction, since
/// another program may have done it while this one waited.
fn migrate(connection: &mut Connection, path: &Path) -> Result<(), StoreError> {
    if recognize(connection, path)? == MIGRATIONS.len() {
        return Ok(());
    }
    let failed = StoreError::database("bringing the tables up to date");
    let transaction = connection.transaction_with_behavior(TransactionBehavior::Immediate).map_err(&failed)?;
    let done = recognize(&transaction, path)?;
    for sql in &MIGRATIONS[done..] {
        transaction.execute_batch(sql).map_err(&failed)?;
    }
    transaction.pragma_update(None, "user_version", MIGRATIONS.len() as i64).map_err(&failed)?;
    transaction.commit().map_err(&failed)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_migration_file_is_in_the_list_in_its_order() {
        let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("migrations");
        let mut files: Vec<_> =
            std::fs::read_dir(folder).expect("the folder is there").map(|f| f.expect("a file").path()).collect();
        files.sort();
        assert_eq!(files.len(), MIGRATIONS.len());
        for (index, file) in files.iter().enumerate() {
            let name = file.file_name().and_then(|n| n.to_str()).expect("a plain name");
            assert!(name.starts_with(&format!("{:04}_", index + 1)) && name.ends_with(".sql"), "{name}");
            assert_eq!(std::fs::read_to_string(file).expect("it reads"), MIGRATIONS[index], "{name}");
        }
    }

    #[test]
    fn every_connection_syncs_fully_and_keeps_to_its_keys() {
        let dir = tempfile::tempdir().expect("a folder");
        let path = dir.path().join("underfoot.sqlite");
        for open in [open, open, open_to_read] {
            let connection = open(&path).expect("it opens");
            let read = |name| connection.pragma_query_value(None, name, |row| row.get::<_, i64>(0)).expect("a number");
            // 2 is FULL: https://www.sqlite.org/pragma.html#pragma_synchronous
            assert_eq!((read("synchronous"), read("foreign_keys"), read("busy_timeout")), (2, 1, 10_000));
            let journal: String =
                connection.pragma_query_value(None, "journal_mode", |row| row.get(0)).expect("a mode");
            assert_eq!(journal, "wal");
        }
    }
    #[test]
    fn the_second_way_in_cannot_change_anything() {
        let dir = tempfile::tempdir().expect("a folder");
        let path = dir.path().join("underfoot.sqlite");
        open_to_read(&path).expect_err("it does not make the database");
        let _writer = open(&path).expect("it opens");
        let reader = open_to_read(&path).expect("it opens");
        for statement in ["DELETE FROM slab", "INSERT INTO slab VALUES ('a', 'b', 'c')", "CREATE TABLE t (x)"] {
            let error = reader.execute(statement, []).expect_err(statement);
            assert_eq!(error.sqlite_error_code(), Some(ErrorCode::ReadOnly), "{statement}");
        }
    }
}
