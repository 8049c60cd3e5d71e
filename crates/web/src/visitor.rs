//! Who is asking, and how they read.

use axum::http::HeaderMap;
use axum::http::header::{ACCEPT_LANGUAGE, COOKIE};
use cookie::Cookie;
use jiff::SignedDuration;
use localization::{Lang, Locale, UnitSystem};
use store::{Person, Role, TokenHash};

use crate::app::App;

/// As the device is set, unless its owner chose otherwise.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub(crate) enum Theme {
    #[default]
    Device,
    Light,
    Dark,
}

impl Theme {
    pub(crate) const ALL: [Self; 3] = [Self::Device, Self::Light, Self::Dark];

    pub(crate) const fn name(self) -> &'static str {
        match self {
            Self::Device => "device",
            Self::Light => "light",
            Self::Dark => "dark",
        }
    }

    /// What the browser is told about its own fields and bars.
    pub(crate) const fn scheme(self) -> &'static str {
        match self {
            Self::Device => "light dark",
            Self::Light => "light",
            Self::Dark => "dark",
        }
    }

    pub(crate) fn named(name: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|theme| theme.name() == name)
    }
}

/// What a visitor may do.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub(crate) enum Permission {
    /// Nothing but sign in.
    Nothing,
    /// Read every slab.
    Read,
    /// Read, and add entries.
    Write,
    /// All of it: people and links too.
    Own,
}

/// Who asks.
#[derive(Debug, Clone)]
pub(crate) struct Visitor {
    pub(crate) permission: Permission,
    /// Their name in the diary.
    pub(crate) name: String,
    /// The account, where there are accounts.
    pub(crate) person: Option<Person>,
    pub(crate) locale: Locale,
    pub(crate) theme: Theme,
}

/// The writer where nobody has to sign in.
const HERE: &str = "here";

/// A session ends this long after it began.
pub(crate) const SESSION: SignedDuration = SignedDuration::from_hours(24 * 14);

/// How often it is noted that a session is in use: noting waits for the disk.
const NOTED_EVERY: SignedDuration = SignedDuration::from_mins(5);

/// The name of the session's cookie. With the prefix, browsers take it only over an encrypted line,
/// for this host and every path, so that no neighbor can plant one.
pub(crate) fn session_cookie(app: &App) -> &'static str {
    if app.is_encrypted() { "__Host-session" } else { "session" }
}

/// A cookie of the request.
pub(crate) fn cookie(headers: &HeaderMap, name: &str) -> Option<String> {
    headers
        .get_all(COOKIE)
        .iter()
        .filter_map(|value| value.to_str().ok())
        .flat_map(Cookie::split_parse)
        .filter_map(Result::ok)
        .find(|cookie| cookie.name() == name)
        .map(|cookie| cookie.value().to_owned())
}

impl Visitor {
    /// Whose name stands under what is written: the id of the person; [`HERE`] where nobody has to sign in;
    /// nothing for a stranger. A phone keeps by it what belongs to whom.
    pub(crate) fn writer(&self) -> String {
        match &self.person {
            Some(person) => person.id.to_string(),
            None if self.permission > Permission::Nothing => HERE.to_owned(),
            None => String::new(),
        }
    }

    /// How the sender of a request reads: as chosen before, else as the browser is set.
    pub(crate) fn voice_of(headers: &HeaderMap) -> Locale {
        Locale::new(
            cookie(headers, "lang").and_then(|text| text.parse().ok()).unwrap_or_else(|| preferred(headers)),
            cookie(headers, "measure").and_then(|text| text.parse().ok()).unwrap_or(UnitSystem::Imperial),
        )
    }

    pub(crate) fn of(app: &App, headers: &HeaderMap) -> Result<Self, store::StoreError> {
        let mut locale = Self::voice_of(headers);
        let theme = cookie(headers, "theme").and_then(|name| Theme::named(&name)).unwrap_or_default();
        if !app.asks_for_people() {
            let name = app.settings.author.clone();
            return Ok(Self { permission: Permission::Own, name, person: None, locale, theme });
        }
        let token = cookie(headers, session_cookie(app));
        let (token, now) = (token.map(|token| TokenHash::of(token.as_bytes())), app.real_now());
        let found = match token {
            Some(token) => app.store().session(token, now)?,
            None => None,
        };
        if let (Some(token), Some(session)) = (token, &found)
            && now.duration_since(session.last_seen) > NOTED_EVERY
        {
            app.store().touch_session(token, now)?;
        }
        let Some(session) = found else {
            return Ok(Self { permission: Permission::Nothing, name: String::new(), person: None, locale, theme });
        };
        let person = session.person;
        if cookie(headers, "lang").is_none() {
            locale =
                Locale::new(person.lang.parse().unwrap_or_default(), person.unit_system.parse().unwrap_or_default());
        }
        let permission = match person.role {
            Role::Owner => Permission::Own,
            Role::Crew => Permission::Write,
            Role::Guest => Permission::Read,
        };
        Ok(Self { permission, name: person.name.clone(), person: Some(person), locale, theme })
    }
}

/// The first of the reader's languages that we speak.
fn preferred(headers: &HeaderMap) -> Lang {
    let wanted = headers.get(ACCEPT_LANGUAGE).and_then(|value| value.to_str().ok()).unwrap_or_default();
    let spoken = |tag: &str| {
        let tag = tag.split(';').next().unwrap_or_default().trim().to_lowercase();
        Lang::ALL.into_iter().find(|lang| tag == lang.name() || tag.starts_with(&format!("{}-", lang.name())))
    };
    wanted.split(',').find_map(spoken).unwrap_or_default()
}
