//! The people who may sign in.

use std::fmt;

use jiff::Timestamp;
use rusqlite::{Connection, OptionalExtension, Row};

use crate::columns::{moment, moment_if_any, parsed};
use crate::error::StoreError;
use crate::fields::{code, password, refused};
use crate::ids::PersonId;
use crate::role::Role;
use crate::{Store, slabs};

/// A person who may sign in, or once could.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Person {
    /// Their id.
    pub id: PersonId,
    /// Their name; no other person of the store has it, in capitals or not.
    pub name: String,
    /// What they may do.
    pub role: Role,
    /// The language they read, as the code they were given.
    pub lang: String,
    /// The system of units they read, as the code they were given.
    pub unit_system: String,
    /// When they were added.
    pub made: Timestamp,
    /// Since when they can no longer sign in.
    pub closed: Option<Timestamp>,
}

/// A person with what a password is checked against.
#[derive(Clone, PartialEq, Eq)]
pub struct SignIn {
    /// The person.
    pub person: Person,
    /// Their hashed password, a PHC string.
    pub password_phc: String,
}

impl fmt::Debug for SignIn {
    /// Leaves the hash out: it must not reach a log.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.debug_struct("SignIn").field("person", &self.person).finish_non_exhaustive()
    }
}

/// What is needed to add a person.
#[derive(Clone, Copy)]
pub struct NewPerson<'a> {
    /// A fresh id.
    pub id: PersonId,
    /// Their name, 1 to 80 letters on one line. Space around it is dropped.
    pub name: &'a str,
    /// Their password, hashed: a PHC string.
    pub password_phc: &'a str,
    /// The language they read, a code of up to 40 letters.
    pub lang: &'a str,
    /// The system of units they read, a code of up to 40 letters.
    pub unit_system: &'a str,
}

const CHANGING: &str = "changing a person";

impl Store {
    /// Adds a person.
    ///
    /// # Errors
    /// [`StoreError::PersonNameTaken`] when another has the name, in capitals or not, even one whose
    /// sign-in is closed; [`StoreError::Field`] for a name or code that cannot be;
    /// [`StoreError::PasswordNotHashed`].
    pub fn add_person(&self, person: &NewPerson<'_>, role: Role, now: Timestamp) -> Result<Person, StoreError> {
        self.write("adding a person", |connection| insert(connection, person, role, now))
    }

    /// Everybody, by name, those whose sign-in is closed too.
    ///
    /// # Errors
    /// [`StoreError::Database`] or [`StoreError::Busy`].
    pub fn people(&self) -> Result<Vec<Person>, StoreError> {
        self.read("listing the people", |connection| {
            connection
                .prepare_cached(&format!("SELECT {COLUMNS} FROM person ORDER BY name_key"))?
                .query_map([], |row| from_row(row, 0))?
                .collect()
        })
    }

    /// A person, also one whose sign-in is closed.
    ///
    /// # Errors
    /// [`StoreError::Database`] or [`StoreError::Busy`].
    pub fn person(&self, id: PersonId) -> Result<Option<Person>, StoreError> {
        self.read("looking for a person", |connection| find(connection, id))
    }

    /// The person who signs in under a name, in capitals or not; none when their sign-in is closed.
    ///
    /// # Errors
    /// [`StoreError::Database`] or [`StoreError::Busy`].
    pub fn person_by_name(&self, name: &str) -> Result<Option<SignIn>, StoreError> {
        self.read("looking for a person", |connection| {
            connection
                .prepare_cached(&format!(
                    "SELECT {COLUMNS}, password_phc FROM person WHERE name_key = ?1 AND closed_us IS NULL"
                ))?
                .query_row([slabs::key(name.trim())], |row| {
                    Ok(SignIn { person: from_row(row, 0)?, password_phc: row.get(COLUMN_COUNT)? })
                })
                .optional()
        })
    }

    /// Gives a person another password. Their sessions go on: [`Store::end_sessions_of`] ends them.
    ///
    /// # Errors
    /// [`StoreError::PasswordNotHashed`], [`StoreError::NoSuchPerson`], [`StoreError::PersonClosed`].
    pub fn set_password(&self, id: PersonId, password_phc: &str) -> Result<(), StoreError> {
        let phc = password(password_phc)?;
        self.write(CHANGING, |connection| {
            demand_open(connection, id)?;
            set(connection, "UPDATE person SET password_phc = ?2 WHERE id = ?1", (id.to_string(), phc))
        })
    }

    /// Gives a person another role.
    ///
    /// # Errors
    /// [`StoreError::LastOwner`], [`StoreError::NoSuchPerson`], [`StoreError::PersonClosed`].
    pub fn set_role(&self, id: PersonId, role: Role) -> Result<(), StoreError> {
        self.write(CHANGING, |connection| {
            let person = demand_open(connection, id)?;
            if role != Role::Owner {
                demand_another_owner(connection, &person)?;
            }
            set(connection, "UPDATE person SET role = ?2 WHERE id = ?1", (id.to_string(), role.name()))
        })
    }

    /// Sets what a person reads: language and system of units, each a code of up to 40 letters.
    ///
    /// # Errors
    /// [`StoreError::Field`], [`StoreError::NoSuchPerson`], [`StoreError::PersonClosed`].
    pub fn set_reading(&self, id: PersonId, lang: &str, unit_system: &str) -> Result<(), StoreError> {
        let reading = (id.to_string(), code("lang", lang)?, code("unit_system", unit_system)?);
        self.write(CHANGING, |connection| {
            demand_open(connection, id)?;
            set(connection, "UPDATE person SET lang = ?2, unit_system = ?3 WHERE id = ?1", reading)
        })
    }

    /// Closes a person's sign-in and ends their sessions. Their entries and links stay, and so does
    /// their name. Says whether it was open.
    ///
    /// # Errors
    /// [`StoreError::LastOwner`], [`StoreError::NoSuchPerson`].
    pub fn close_person(&self, id: PersonId, now: Timestamp) -> Result<bool, StoreError> {
        self.write("closing a person's sign-in", |connection| {
            let person = demand(connection, id)?;
            if person.closed.is_some() {
                return Ok(false);
            }
            demand_another_owner(connection, &person)?;
            let id = id.to_string();
            set(connection, "UPDATE person SET closed_us = ?2 WHERE id = ?1", (&id, now.as_microsecond()))?;
            set(connection, "DELETE FROM session WHERE person = ?1", [&id])?;
            Ok(true)
        })
    }
}

/// The columns that [`from_row`] reads.
pub(crate) const COLUMNS: &str =
    "person.id, person.name, person.role, person.lang, person.unit_system, person.made_us, person.closed_us";

/// How many they are.
pub(crate) const COLUMN_COUNT: usize = 7;

/// Reads a person from the columns that begin at an index.
pub(crate) fn from_row(row: &Row<'_>, at: usize) -> rusqlite::Result<Person> {
    Ok(Person {
        id: parsed(row, at)?,
        name: row.get(at + 1)?,
        role: parsed(row, at + 2)?,
        lang: row.get(at + 3)?,
        unit_system: row.get(at + 4)?,
        made: moment(row, at + 5)?,
        closed: moment_if_any(row, at + 6)?,
    })
}

fn find(connection: &Connection, id: PersonId) -> rusqlite::Result<Option<Person>> {
    connection
        .prepare_cached(&format!("SELECT {COLUMNS} FROM person WHERE id = ?1"))?
        .query_row([id.to_string()], |row| from_row(row, 0))
        .optional()
}

fn demand(connection: &Connection, id: PersonId) -> Result<Person, StoreError> {
    let found = find(connection, id).map_err(StoreError::database("looking for a person"))?;
    found.ok_or(StoreError::NoSuchPerson(id))
}

/// The person, when they may sign in.
pub(crate) fn demand_open(connection: &Connection, id: PersonId) -> Result<Person, StoreError> {
    let person = demand(connection, id)?;
    match person.closed {
        Some(since) => Err(StoreError::PersonClosed { name: person.name, since }),
        None => Ok(person),
    }
}

/// Whether anybody was ever added.
pub(crate) fn anybody(connection: &Connection) -> Result<bool, StoreError> {
    connection
        .query_row("SELECT EXISTS (SELECT 1 FROM person)", [], |row| row.get(0))
        .map_err(StoreError::database("looking for people"))
}

/// Fails when the person is the only owner who may sign in.
fn demand_another_owner(connection: &Connection, person: &Person) -> Result<(), StoreError> {
    if person.role != Role::Owner {
        return Ok(());
    }
    let another: bool = connection
        .query_row(
            "SELECT EXISTS (SELECT 1 FROM person WHERE role = ?1 AND closed_us IS NULL AND id <> ?2)",
            (Role::Owner.name(), person.id.to_string()),
            |row| row.get(0),
        )
        .map_err(StoreError::database("looking for another owner"))?;
    if another { Ok(()) } else { Err(StoreError::LastOwner { name: person.name.clone() }) }
}

fn set(connection: &Connection, sql: &str, values: impl rusqlite::Params) -> Result<(), StoreError> {
    connection.execute(sql, values).map(drop).map_err(StoreError::database(CHANGING))
}

/// Longest name of a person, in letters.
const PERSON_LETTERS: usize = 80;

fn checked_name(name: &str) -> Result<&str, StoreError> {
    let trimmed = name.trim();
    if (1..=PERSON_LETTERS).contains(&trimmed.chars().count()) && !trimmed.chars().any(char::is_control) {
        return Ok(trimmed);
    }
    Err(refused("person name", trimmed, "1 to 80 letters on one line"))
}

/// Adds a person within a transaction.
pub(crate) fn insert(
    connection: &Connection,
    new: &NewPerson<'_>,
    role: Role,
    now: Timestamp,
) -> Result<Person, StoreError> {
    let failed = StoreError::database("adding a person");
    let name = checked_name(new.name)?;
    let phc = password(new.password_phc)?;
    let (lang, unit_system) = (code("lang", new.lang)?, code("unit_system", new.unit_system)?);
    let name_key = slabs::key(name);
    let taken = connection
        .query_row("SELECT EXISTS (SELECT 1 FROM person WHERE name_key = ?1)", [&name_key], |row| row.get(0))
        .map_err(&failed)?;
    if taken {
        return Err(StoreError::PersonNameTaken { name: name.to_owned() });
    }
    connection
        .execute(
            "INSERT INTO person (id, name, name_key, role, password_phc, lang, unit_system, made_us)
             VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8)",
            (new.id.to_string(), name, name_key, role.name(), phc, lang, unit_system, now.as_microsecond()),
        )
        .map_err(&failed)?;
    demand(connection, new.id)
}
