//! Who is signed in.

use jiff::Timestamp;
use rusqlite::OptionalExtension;

use crate::Store;
use crate::columns::moment;
use crate::error::StoreError;
use crate::fields::refused;
use crate::ids::{PersonId, TokenHash};
use crate::people::{self, COLUMN_COUNT, COLUMNS, Person};

/// A person's stay, from sign-in to its end.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Session {
    /// Whose it is.
    pub person: Person,
    /// When they signed in.
    pub made: Timestamp,
    /// When they were last noticed.
    pub last_seen: Timestamp,
    /// From when on it is no longer good.
    pub expires: Timestamp,
}

impl Store {
    /// Starts a session under the hash of a fresh token.
    ///
    /// # Errors
    /// [`StoreError::NoSuchPerson`], [`StoreError::PersonClosed`]; [`StoreError::Field`] when it
    /// would end before it begins.
    pub fn start_session(
        &self,
        token: TokenHash,
        person: PersonId,
        now: Timestamp,
        expires: Timestamp,
    ) -> Result<(), StoreError> {
        const STARTING: &str = "starting a session";
        let (now, expires) = (now.as_microsecond(), demand_later("session end", expires, now)?);
        self.write(STARTING, |connection| {
            people::demand_open(connection, person)?;
            connection
                .execute(
                    "INSERT INTO session (token_hash, person, made_us, last_seen_us, expires_us)
                     VALUES (?1, ?2, ?3, ?3, ?4)",
                    (token.bytes(), person.to_string(), now, expires),
                )
                .map(drop)
                .map_err(StoreError::database(STARTING))
        })
    }

    /// The session that a token opens; none when there is none, when it is over, or when the
    /// person's sign-in is closed.
    ///
    /// # Errors
    /// [`StoreError::Database`] or [`StoreError::Busy`].
    pub fn session(&self, token: TokenHash, now: Timestamp) -> Result<Option<Session>, StoreError> {
        self.read("looking for a session", |connection| {
            connection
                .prepare_cached(&format!(
                    "SELECT {COLUMNS}, session.made_us, session.last_seen_us, session.expires_us
                     FROM session JOIN person ON person.id = session.person
                     WHERE token_hash = ?1 AND expires_us > ?2 AND closed_us IS NULL"
                ))?
                .query_row((token.bytes(), now.as_microsecond()), |row| {
                    Ok(Session {
                        person: people::from_row(row, 0)?,
                        made: moment(row, COLUMN_COUNT)?,
                        last_seen: moment(row, COLUMN_COUNT + 1)?,
                        expires: moment(row, COLUMN_COUNT + 2)?,
                    })
                })
                .optional()
        })
    }

    /// Notes that a session was in use. This waits for the disk, so once in five minutes is plenty.
    /// Says whether there is such a session and it is not over.
    ///
    /// # Errors
    /// [`StoreError::Database`] or [`StoreError::Busy`].
    pub fn touch_session(&self, token: TokenHash, now: Timestamp) -> Result<bool, StoreError> {
        let touched = self.change(
            "noting that a session was in use",
            "UPDATE session SET last_seen_us = max(last_seen_us, ?2) WHERE token_hash = ?1 AND expires_us > ?2",
            (token.bytes(), now.as_microsecond()),
        )?;
        Ok(touched > 0)
    }

    /// Ends a session. Says whether there was one.
    ///
    /// # Errors
    /// [`StoreError::Database`] or [`StoreError::Busy`].
    pub fn end_session(&self, token: TokenHash) -> Result<bool, StoreError> {
        let ended = self.change("ending a session", "DELETE FROM session WHERE token_hash = ?1", [token.bytes()])?;
        Ok(ended > 0)
    }

    /// Ends every session of a person. Says how many there were.
    ///
    /// # Errors
    /// [`StoreError::Database`] or [`StoreError::Busy`].
    pub fn end_sessions_of(&self, person: PersonId) -> Result<u64, StoreError> {
        self.change("ending a person's sessions", "DELETE FROM session WHERE person = ?1", [person.to_string()])
    }

    /// Drops the sessions that are over. Says how many there were.
    ///
    /// # Errors
    /// [`StoreError::Database`] or [`StoreError::Busy`].
    pub fn drop_expired_sessions(&self, now: Timestamp) -> Result<u64, StoreError> {
        self.change(
            "dropping the sessions that are over",
            "DELETE FROM session WHERE expires_us <= ?1",
            [now.as_microsecond()],
        )
    }
}

/// The microsecond of an end that must come after now.
pub(crate) fn demand_later(field: &'static str, end: Timestamp, now: Timestamp) -> Result<i64, StoreError> {
    let us = end.as_microsecond();
    if us > now.as_microsecond() { Ok(us) } else { Err(refused(field, &end.to_string(), "a moment after now")) }
}
