//! What the server holds while it runs.

use std::collections::HashMap;
use std::sync::Mutex;
use std::time::Instant;

use jiff::Timestamp;
use store::{Store, TokenHash};
use uuid::Uuid;

use crate::jobs::Works;
use crate::password::Passwords;
use crate::standing_cache::Judged;
use crate::throttle::Throttle;
use crate::uploads::Uploads;

/// Who may ask, and over what.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Access {
    /// Only this machine: no sign-in, whoever sits here owns everything.
    ThisMachine,
    /// Anyone who can reach the address, with a name and a password.
    People {
        /// The address people type, such as `https://slabs.example.org`, when it is encrypted on the
        /// way; nothing when it is plain HTTP.
        public: Option<String>,
    },
}

/// What comes from outside the program: the clock, fresh ids, secrets. The pages read none of these
/// by themselves.
#[derive(Debug, Clone, Copy)]
pub struct Outside {
    /// What time it is.
    pub now: fn() -> Timestamp,
    /// A clock that only goes forward, for how long a request takes.
    pub monotonic: fn() -> Instant,
    /// A fresh id, ordered by time.
    pub fresh_id: fn() -> Uuid,
    /// Thirty-two bytes that nobody can guess.
    pub secret: fn() -> [u8; 32],
}

/// How to serve.
#[derive(Debug)]
pub struct Settings {
    /// Where diaries and photographs are kept.
    pub store: Store,
    /// Who may ask.
    pub access: Access,
    /// Clock, ids and secrets.
    pub outside: Outside,
    /// The moment at which the clock stands still, for a demo or a test.
    pub stands_at: Option<Timestamp>,
    /// Who writes when nobody has to sign in.
    pub author: String,
    /// The demo's entries, for the button that adds it; see [`Demo`].
    pub demo: Option<Demo>,
}

/// The demo slab, as the button on the first screen adds it.
#[derive(Debug, Clone, Copy)]
pub struct Demo {
    /// Fills the store and says which slab it is.
    pub fill: fn(&Store) -> Result<slab_diary::SlabId, String>,
    /// The moment its diary ends: it is asked as of then, on any day.
    pub as_of: fn() -> Timestamp,
    /// Its slab.
    pub id: fn() -> slab_diary::SlabId,
}

/// The running server's state. Everything that matters is in the store; the rest may be lost at any
/// moment.
#[derive(Debug)]
pub struct App {
    pub(crate) settings: Settings,
    pub(crate) judged: Mutex<HashMap<slab_diary::SlabId, Judged>>,
    pub(crate) throttle: Throttle,
    /// Tries by share link.
    pub(crate) by_link: Throttle,
    pub(crate) passwords: Passwords,
    pub(crate) works: Works,
    /// Files looked at and not yet written.
    pub(crate) uploads: Uploads,
}

impl App {
    /// The state of a server that has just begun.
    #[must_use]
    pub fn new(settings: Settings) -> Self {
        Self {
            settings,
            judged: Mutex::default(),
            throttle: Throttle::default(),
            by_link: Throttle::default(),
            passwords: Passwords::default(),
            works: Works::default(),
            uploads: Uploads::default(),
        }
    }

    /// Offers the ownership of everything kept here to whoever types this code first. Says whether it
    /// is still to be had.
    ///
    /// # Errors
    /// When the store can't be written.
    pub fn offer_set_up(&self, code: &str) -> Result<bool, store::StoreError> {
        self.store().put_owner_code(code_hash(code), self.real_now())
    }

    pub(crate) fn store(&self) -> &Store {
        &self.settings.store
    }

    /// Now, or the moment at which the clock stands.
    pub(crate) fn now(&self) -> Timestamp {
        self.settings.stands_at.unwrap_or_else(self.settings.outside.now)
    }

    /// The real time, for sessions and throttling: it goes on even when the clock of the pages stands.
    pub(crate) fn real_now(&self) -> Timestamp {
        (self.settings.outside.now)()
    }

    /// The moment at which a slab is asked: now, and for the demo the end of its diary.
    pub(crate) fn asked_at(&self, slab: slab_diary::SlabId) -> Timestamp {
        match &self.settings.demo {
            Some(demo) if self.settings.stands_at.is_none() && (demo.id)() == slab => (demo.as_of)(),
            _ => self.now(),
        }
    }

    pub(crate) fn is_demo(&self, slab: slab_diary::SlabId) -> bool {
        self.settings.demo.is_some_and(|demo| (demo.id)() == slab)
    }

    pub(crate) fn fresh_id(&self) -> Uuid {
        (self.settings.outside.fresh_id)()
    }

    /// A secret as the text that a cookie or a link carries.
    pub(crate) fn secret(&self) -> String {
        (self.settings.outside.secret)().iter().map(|byte| format!("{byte:02x}")).collect()
    }

    /// Whether what travels is encrypted on the way.
    pub(crate) fn is_encrypted(&self) -> bool {
        matches!(&self.settings.access, Access::People { public: Some(address) } if address.starts_with("https://"))
    }

    pub(crate) fn asks_for_people(&self) -> bool {
        matches!(self.settings.access, Access::People { .. })
    }
}

/// The hash of a one-time code: small letters, spaces and dashes make no difference.
pub(crate) fn code_hash(code: &str) -> TokenHash {
    let plain: String = code.chars().filter(char::is_ascii_alphanumeric).collect();
    TokenHash::of(plain.to_ascii_uppercase().as_bytes())
}
