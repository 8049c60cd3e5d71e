//! Names of people and links, and the only form in which a secret reaches the store.

use std::fmt;
use std::str::FromStr;

use slab_diary::{IdError, SlabId};

/// A UUID that the store is given. It is made elsewhere: the store makes no randomness.
macro_rules! id {
    ($(#[$doc:meta])* $name:ident, $what:literal) => {
        $(#[$doc])*
        #[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
        pub struct $name(u128);

        impl $name {
            /// The id with these 128 bits.
            #[must_use]
            pub const fn from_u128(bits: u128) -> Self {
                Self(bits)
            }

            /// Its 128 bits.
            #[must_use]
            pub const fn as_u128(self) -> u128 {
                self.0
            }
        }

        impl fmt::Display for $name {
            fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
                write_uuid(self.0, f)
            }
        }

        impl FromStr for $name {
            type Err = IdError;
            fn from_str(text: &str) -> Result<Self, IdError> {
                // A slab's id has the same form.
                text.parse::<SlabId>()
                    .map(|id| Self(id.0.as_u128()))
                    .map_err(|error| IdError { what: $what, ..error })
            }
        }
    };
}

id!(
    /// A person's id, a UUID.
    PersonId,
    "person"
);
id!(
    /// A share link's id, a UUID. It is no secret: the token that opens the link is another thing.
    LinkId,
    "link"
);

/// The text form of RFC 9562, section 4: 8-4-4-4-12 lower-case hexadecimal digits.
fn write_uuid(bits: u128, f: &mut fmt::Formatter<'_>) -> fmt::Result {
    let part = |shift: u32, digits: u32| (bits >> shift) & ((1 << (4 * digits)) - 1);
    write!(f, "{:08x}-{:04x}-{:04x}-{:04x}-{:012x}", part(96, 8), part(80, 4), part(64, 4), part(48, 4), part(0, 12))
}

/// The BLAKE3 hash of a secret: a session's or a link's token, or the set-up code. The secret itself
/// never reaches the store, so whoever reads the database cannot use it.
///
/// That holds only for secrets too many to try one by one: 128 random bits or more.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub struct TokenHash([u8; 32]);

impl TokenHash {
    /// The hash of a secret.
    #[must_use]
    pub fn of(secret: &[u8]) -> Self {
        Self(*blake3::hash(secret).as_bytes())
    }

    pub(crate) fn bytes(&self) -> &[u8] {
        &self.0
    }
}
