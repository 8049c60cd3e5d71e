//! How a person reads: language and system of units.

use std::str::FromStr;

use units::{UnitSystem, UnknownChoice};

/// A language of the sentences.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default)]
pub enum Lang {
    /// English as written in the United States.
    #[default]
    En,
    /// Spanish as spoken on sites in the United States, with Mexican trade words.
    Es,
}

impl Lang {
    /// Every language.
    pub const ALL: [Self; 2] = [Self::En, Self::Es];

    /// Its name in settings and addresses: `en` or `es`.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::En => "en",
            Self::Es => "es",
        }
    }

    /// Its tag for the `lang` attribute of a page.
    #[must_use]
    pub const fn tag(self) -> &'static str {
        match self {
            Self::En => "en-US",
            Self::Es => "es-US",
        }
    }
}

impl FromStr for Lang {
    type Err = UnknownChoice;
    fn from_str(text: &str) -> Result<Self, UnknownChoice> {
        Self::ALL.into_iter().find(|lang| lang.name() == text).ok_or_else(|| UnknownChoice {
            what: "language",
            given: text.to_owned(),
            accepted: "en, es",
        })
    }
}

/// How a person reads. Cheap to copy; every sentence and number is asked of it.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default)]
pub struct Locale {
    /// The language.
    pub lang: Lang,
    /// The units.
    pub unit_system: UnitSystem,
}

impl Locale {
    /// A reader of this language and these units.
    #[must_use]
    pub const fn new(lang: Lang, unit_system: UnitSystem) -> Self {
        Self { lang, unit_system }
    }
}
