//! Share links: each shows chosen pages of one slab to whoever has it.

use jiff::Timestamp;
use rusqlite::{Connection, OptionalExtension, Row};
use slab_diary::SlabId;

use crate::columns::{moment, moment_if_any, parsed, parsed_if_any};
use crate::error::StoreError;
use crate::fields::{code, refused};
use crate::ids::{LinkId, PersonId, TokenHash};
use crate::sessions::demand_later;
use crate::{Store, people, slabs};

/// What is needed to make a link.
#[derive(Debug, Clone, Copy)]
pub struct NewLink<'a> {
    /// A fresh id.
    pub id: LinkId,
    /// The hash of the token that opens it.
    pub token: TokenHash,
    /// The slab it shows.
    pub slab: SlabId,
    /// The codes of the pages it shows, one at least, each of up to 40 letters.
    pub pages: &'a [&'a str],
    /// What it is for, up to 500 letters; may be empty.
    pub note: &'a str,
    /// Who makes it; none for someone at the machine itself who need not sign in.
    pub made_by: Option<PersonId>,
    /// From when on it no longer opens anything.
    pub expires: Timestamp,
}

/// A share link.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Link {
    /// Its id.
    pub id: LinkId,
    /// The slab it shows.
    pub slab: SlabId,
    /// The codes of the pages it shows.
    pub pages: Vec<String>,
    /// What it is for.
    pub note: String,
    /// Who made it; none when it was made at the machine itself without sign-in.
    pub made_by: Option<PersonId>,
    /// When it was made.
    pub made: Timestamp,
    /// From when on it no longer opens anything.
    pub expires: Timestamp,
    /// When it was withdrawn.
    pub withdrawn: Option<Timestamp>,
}

/// What a link's token opens.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum LinkState {
    /// No link has this token.
    Unknown,
    /// The link's pages.
    Open(Link),
    /// Nothing any more, since this moment.
    Expired(Timestamp),
    /// Nothing any more: it was withdrawn at this moment.
    Withdrawn(Timestamp),
}

impl LinkState {
    /// The link, when it opens its pages.
    #[must_use]
    pub fn open(self) -> Option<Link> {
        match self {
            Self::Open(link) => Some(link),
            Self::Unknown | Self::Expired(_) | Self::Withdrawn(_) => None,
        }
    }
}

impl Link {
    /// Whether it opens its pages at a moment: neither over nor withdrawn.
    #[must_use]
    pub fn is_open(&self, now: Timestamp) -> bool {
        self.withdrawn.is_none() && now < self.expires
    }
}

/// Longest note of a link, in letters.
const NOTE_LETTERS: usize = 500;

const MAKING: &str = "making a link";

impl Store {
    /// Makes a link.
    ///
    /// # Errors
    /// [`StoreError::NoSuchSlab`], [`StoreError::NoSuchPerson`], [`StoreError::PersonClosed`];
    /// [`StoreError::Field`] for pages or a note that cannot be, or an end that is not after now.
    pub fn add_link(&self, link: &NewLink<'_>, now: Timestamp) -> Result<Link, StoreError> {
        let pages = pages_text(link.pages)?;
        let expires = demand_later("link end", link.expires, now)?;
        if link.note.chars().count() > NOTE_LETTERS {
            return Err(refused("link note", link.note, "up to 500 letters"));
        }
        self.write(MAKING, |connection| {
            slabs::demand(connection, link.slab)?;
            if let Some(person) = link.made_by {
                people::demand_open(connection, person)?;
            }
            connection
                .execute(
                    "INSERT INTO link (id, token_hash, slab, pages, note, made_by, made_us, expires_us)
                     VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8)",
                    (
                        link.id.to_string(),
                        link.token.bytes(),
                        link.slab.to_string(),
                        pages,
                        link.note,
                        link.made_by.map(|person| person.to_string()),
                        now.as_microsecond(),
                        expires,
                    ),
                )
                .and_then(|_| by_token(connection, link.token))
                .map_err(StoreError::database(MAKING))
        })
    }

    /// Every link of a slab, the newest first, also those that open nothing any more.
    ///
    /// # Errors
    /// [`StoreError::Database`] or [`StoreError::Busy`].
    pub fn links_of(&self, slab: SlabId) -> Result<Vec<Link>, StoreError> {
        self.read("listing the links", |connection| {
            connection
                .prepare_cached(&format!("{SELECT} WHERE slab = ?1 ORDER BY made_us DESC, id DESC"))?
                .query_map([slab.to_string()], from_row)?
                .collect()
        })
    }

    /// What the link with a token opens now.
    ///
    /// # Errors
    /// [`StoreError::Database`] or [`StoreError::Busy`].
    pub fn link_state(&self, token: TokenHash, now: Timestamp) -> Result<LinkState, StoreError> {
        let found = self.read("looking for a link", |connection| by_token(connection, token).optional())?;
        Ok(match found {
            None => LinkState::Unknown,
            Some(Link { withdrawn: Some(at), .. }) => LinkState::Withdrawn(at),
            Some(link) if link.is_open(now) => LinkState::Open(link),
            Some(link) => LinkState::Expired(link.expires),
        })
    }

    /// The link with a token, when it opens its pages now.
    ///
    /// # Errors
    /// [`StoreError::Database`] or [`StoreError::Busy`].
    pub fn link_by_token(&self, token: TokenHash, now: Timestamp) -> Result<Option<Link>, StoreError> {
        Ok(self.link_state(token, now)?.open())
    }

    /// Withdraws a link for good. Says whether it was there and not withdrawn yet.
    ///
    /// # Errors
    /// [`StoreError::Database`] or [`StoreError::Busy`].
    pub fn withdraw_link(&self, id: LinkId, now: Timestamp) -> Result<bool, StoreError> {
        let withdrawn = self.change(
            "withdrawing a link",
            "UPDATE link SET withdrawn_us = ?2 WHERE id = ?1 AND withdrawn_us IS NULL",
            (id.to_string(), now.as_microsecond()),
        )?;
        Ok(withdrawn > 0)
    }
}

/// The JSON list of page codes. A code holds no letter that JSON would have to escape.
fn pages_text(pages: &[&str]) -> Result<String, StoreError> {
    if pages.is_empty() {
        return Err(refused("link pages", "", "one page at least"));
    }
    let quoted = pages.iter().map(|page| code("link pages", page).map(|page| format!("\"{page}\"")));
    Ok(format!("[{}]", quoted.collect::<Result<Vec<_>, _>>()?.join(",")))
}

const SELECT: &str = "SELECT id, slab, made_by, note, made_us, expires_us, withdrawn_us,
        (SELECT group_concat(value, ' ' ORDER BY key) FROM json_each(link.pages))
     FROM link";

fn by_token(connection: &Connection, token: TokenHash) -> rusqlite::Result<Link> {
    connection.prepare_cached(&format!("{SELECT} WHERE token_hash = ?1"))?.query_row([token.bytes()], from_row)
}

fn from_row(row: &Row<'_>) -> rusqlite::Result<Link> {
    Ok(Link {
        id: parsed(row, 0)?,
        slab: parsed(row, 1)?,
        made_by: parsed_if_any(row, 2)?,
        note: row.get(3)?,
        made: moment(row, 4)?,
        expires: moment(row, 5)?,
        withdrawn: moment_if_any(row, 6)?,
        pages: row.get::<_, String>(7)?.split(' ').map(str::to_owned).collect(),
    })
}
