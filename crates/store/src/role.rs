//! What the people may do.

use std::str::FromStr;

use crate::error::StoreError;
use crate::fields::refused;

/// What a person may do. What each role is allowed is not the store's business, except that there is
/// always an owner.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Role {
    /// Answers for everything, and for who else may sign in.
    Owner,
    /// Works on the slabs.
    Crew,
    /// Looks on.
    Guest,
}

impl Role {
    /// Every role, the one that may do most first.
    pub const ALL: [Self; 3] = [Self::Owner, Self::Crew, Self::Guest];

    /// Its word in the database.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::Owner => "owner",
            Self::Crew => "crew",
            Self::Guest => "guest",
        }
    }
}

impl FromStr for Role {
    type Err = StoreError;
    fn from_str(text: &str) -> Result<Self, StoreError> {
        let known = Self::ALL.into_iter().find(|role| role.name() == text);
        known.ok_or_else(|| refused("role", text, "owner, crew or guest"))
    }
}
