//! Passwords: hashed slowly, and only a few at a time.
//!
//! A hash takes 19 MiB and a good part of a second on purpose. Whoever sends a thousand sign-ins must
//! not make the server take 19 GB, nor all of its threads: two are hashed at once, a few wait, the rest
//! are asked to come again.

use std::sync::{Condvar, Mutex, PoisonError};

use argon2::Argon2;
use argon2::password_hash::phc::PasswordHash;
use argon2::password_hash::{PasswordHasher, PasswordVerifier};

use crate::app::App;
use crate::page_error::PageError;

/// Hashes made at once.
const AT_ONCE: u32 = 2;
/// Most that wait for their turn.
const MAX_WAITING: u32 = 16;
/// Least letters of a password. NIST SP 800-63B has 15 for a password that stands alone and 8 beside a
/// second factor (grade: from memory); between them, and with every wrong try slowed down.
pub(crate) const MIN_LETTERS: usize = 12;
/// Most letters of a password: enough for any sentence.
pub(crate) const MAX_LETTERS: usize = 256;

/// A hash that no password has: checking against it takes as long as checking a real one.
const NOBODY: &str = "$argon2id$v=19$m=19456,t=2,p=1$bm9ib2R5IGhhcyB0aGlz$nf0zEy5Mr4eR9LDOGhvN0mrWHhrEkRVBYAwyOSNe3mA";

#[derive(Debug, Default)]
struct Line {
    at_work: u32,
    waiting: u32,
}

/// Where passwords are hashed.
#[derive(Debug, Default)]
pub(crate) struct Passwords {
    line: Mutex<Line>,
    free: Condvar,
}

/// The right to hash, given back when it is dropped.
struct Turn<'a>(&'a Passwords);

impl Drop for Turn<'_> {
    fn drop(&mut self) {
        self.0.line.lock().unwrap_or_else(PoisonError::into_inner).at_work -= 1;
        self.0.free.notify_one();
    }
}

impl Passwords {
    /// Waits for a turn; nothing when too many wait already.
    fn turn(&self) -> Option<Turn<'_>> {
        let mut line = self.line.lock().unwrap_or_else(PoisonError::into_inner);
        if line.at_work >= AT_ONCE && line.waiting >= MAX_WAITING {
            return None;
        }
        line.waiting += 1;
        while line.at_work >= AT_ONCE {
            line = self.free.wait(line).unwrap_or_else(PoisonError::into_inner);
        }
        line.waiting -= 1;
        line.at_work += 1;
        Some(Turn(self))
    }

    /// Whether this is the password behind a hash. Without one the answer is no, and takes as long.
    pub(crate) fn check(&self, password: &str, phc: Option<&str>) -> Result<bool, PageError> {
        let _turn = self.turn().ok_or(PageError::Wait(2))?;
        let hash =
            PasswordHash::new(phc.unwrap_or(NOBODY)).map_err(|_| PageError::failed_without_words("a kept password"))?;
        let same = Argon2::default().verify_password(password.as_bytes(), &hash).is_ok();
        Ok(same && phc.is_some())
    }
}

impl App {
    /// The hash of a password as it is kept: Argon2id with the parameters and a fresh salt in it.
    pub(crate) fn hash_password(&self, password: &str) -> Result<String, PageError> {
        let _turn = self.passwords.turn().ok_or(PageError::Wait(2))?;
        let salt = &(self.settings.outside.secret)()[..16];
        let hash: PasswordHash = Argon2::default()
            .hash_password_with_salt(password.as_bytes(), salt)
            .map_err(|e| PageError::failed("hashing a password", &e))?;
        Ok(hash.to_string())
    }

    /// A password made here, to be read to somebody once: sixteen letters of thirty-two, 80 bits.
    pub(crate) fn starting_password(&self) -> String {
        // None that is taken for another when it is read from a screen.
        const LETTERS: &[u8; 32] = b"abcdefghijkmnpqrstuvwxyz23456789";
        let bytes = (self.settings.outside.secret)();
        let letters: Vec<char> = bytes[..16].iter().map(|byte| char::from(LETTERS[usize::from(byte % 32)])).collect();
        letters.chunks(4).map(|part| part.iter().collect::<String>()).collect::<Vec<_>>().join("-")
    }
}

/// Whether a password is long enough, and not longer than anybody types.
pub(crate) fn is_fit(password: &str) -> bool {
    (MIN_LETTERS..=MAX_LETTERS).contains(&password.chars().count())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn nobody_has_no_password_but_a_hash_of_the_usual_cost() {
        let hash = PasswordHash::new(NOBODY).expect("it reads");
        assert_eq!(hash.algorithm.as_str(), "argon2id");
        let usual = argon2::Params::try_from(&hash).expect("parameters");
        let default = argon2::Params::default();
        assert_eq!(
            (usual.m_cost(), usual.t_cost(), usual.p_cost()),
            (default.m_cost(), default.t_cost(), default.p_cost())
        );
        assert_eq!(hash.hash.expect("a hash").len(), argon2::Params::DEFAULT_OUTPUT_LEN);
        assert_eq!(Passwords::default().check("nobody has this", None), Ok(false));
    }

    #[test]
    fn a_known_hash_of_the_reference_implementation_is_checked() {
        // RFC 9106 has no PHC strings; this one is of the reference implementation's own test file
        // (password "password", salt "somesalt", t=2, m=2^16, p=1; grade: from memory, and it verifies).
        let phc = "$argon2id$v=19$m=65536,t=2,p=1$c29tZXNhbHQ$CTFhFdXPJO1aFaMaO6Mm5c8y7cJHAph8ArZWb2GRPPc";
        let passwords = Passwords::default();
        assert_eq!(passwords.check("password", Some(phc)), Ok(true));
        assert_eq!(passwords.check("Password", Some(phc)), Ok(false));
    }

    #[test]
    fn a_full_line_turns_others_away() {
        let passwords = Passwords::default();
        let turns: Vec<_> = (0..AT_ONCE).map(|_| passwords.turn().expect("free")).collect();
        passwords.line.lock().expect("a lock").waiting = MAX_WAITING;
        assert!(passwords.turn().is_none());
        drop(turns);
        assert!(passwords.turn().is_some(), "free again");
    }
}
