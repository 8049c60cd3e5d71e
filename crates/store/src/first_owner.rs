//! The first owner: let in by a code that is good once, while nobody is there yet.

use jiff::Timestamp;
use rusqlite::OptionalExtension;

use crate::Store;
use crate::error::StoreError;
use crate::ids::TokenHash;
use crate::people::{self, NewPerson};
use crate::role::Role;

const KEEPING: &str = "keeping the set-up code";
const SETTING_UP: &str = "setting up the first owner";

impl Store {
    /// Keeps the set-up code in place of an older one. Keeps nothing and says `false` when somebody
    /// was added already.
    ///
    /// # Errors
    /// [`StoreError::Database`] or [`StoreError::Busy`].
    pub fn put_owner_code(&self, code: TokenHash, now: Timestamp) -> Result<bool, StoreError> {
        self.write(KEEPING, |connection| {
            if people::anybody(connection)? {
                return Ok(false);
            }
            connection
                .execute(
                    "INSERT OR REPLACE INTO owner_code (only, hash, made_us) VALUES (1, ?1, ?2)",
                    (code.bytes(), now.as_microsecond()),
                )
                .map_err(StoreError::database(KEEPING))?;
            Ok(true)
        })
    }

    /// Adds the first owner and uses the code up, both or neither. Says `false` and changes nothing
    /// when the code is not the kept one or somebody was added already. The code has no end of its
    /// own: it is good until it is used or replaced.
    ///
    /// # Errors
    /// As [`Store::add_person`]; the code stays good then.
    pub fn set_up_owner(&self, code: TokenHash, now: Timestamp, person: &NewPerson<'_>) -> Result<bool, StoreError> {
        self.write(SETTING_UP, |connection| {
            let failed = StoreError::database(SETTING_UP);
            if people::anybody(connection)? {
                return Ok(false);
            }
            let kept: Option<Vec<u8>> = connection
                .query_row("SELECT hash FROM owner_code", [], |row| row.get(0))
                .optional()
                .map_err(&failed)?;
            if kept.as_deref() != Some(code.bytes()) {
                return Ok(false);
            }
            people::insert(connection, person, Role::Owner, now)?;
            connection.execute("DELETE FROM owner_code", []).map_err(&failed)?;
            Ok(true)
        })
    }
}
