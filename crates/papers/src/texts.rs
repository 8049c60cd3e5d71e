//! The words of the papers: two tables with the same keys.
//!
//! To add a text: one line in `texts/en.toml`, one in `texts/es.toml`, and its use. Tests fail when
//! a key is missing in one language, when its `{names}` differ, and when nothing uses it.

use std::sync::LazyLock;

use localization::{Lang, Locale, UnitSystem};
use serde_json::{Map, Value};

use crate::error::PaperError;

pub(crate) const EN: &str = include_str!("../texts/en.toml");
pub(crate) const ES: &str = include_str!("../texts/es.toml");

static TABLES: LazyLock<[Value; 2]> = LazyLock::new(|| [EN, ES].map(read));

fn read(text: &str) -> Value {
    toml::from_str(text).expect("a test of this module reads both files")
}

/// The words of one language.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Words {
    lang: Lang,
}

impl Words {
    pub(crate) const fn of(lang: Lang) -> Self {
        Self { lang }
    }

    pub(crate) const fn lang(self) -> Lang {
        self.lang
    }

    pub(crate) const fn locale(self) -> Locale {
        Locale::new(self.lang, UnitSystem::Imperial)
    }

    fn table(self) -> &'static Value {
        match self.lang {
            Lang::En => &TABLES[0],
            Lang::Es => &TABLES[1],
        }
    }

    fn lacking(self, key: &str) -> PaperError {
        PaperError::Text { key: key.into(), lang: self.lang.name() }
    }

    /// The part of the table under a dotted key, as the template reads it.
    pub(crate) fn part(self, key: &str) -> Result<Value, PaperError> {
        look_up(self.table(), key).cloned().ok_or_else(|| self.lacking(key))
    }

    /// The text of a dotted key.
    pub(crate) fn message(self, key: &str) -> Result<&'static str, PaperError> {
        look_up(self.table(), key).and_then(Value::as_str).ok_or_else(|| self.lacking(key))
    }

    /// The texts of a list.
    pub(crate) fn list(self, key: &str) -> Result<Vec<&'static str>, PaperError> {
        let list = look_up(self.table(), key).and_then(Value::as_array).ok_or_else(|| self.lacking(key))?;
        list.iter().map(|text| text.as_str().ok_or_else(|| self.lacking(key))).collect()
    }

    /// The text of a key with its `{names}` filled in.
    pub(crate) fn fill(self, key: &str, with: &[(&str, &str)]) -> Result<String, PaperError> {
        self.message(key).map(|text| filled(text, with))
    }
}

fn look_up<'a>(table: &'a Value, key: &str) -> Option<&'a Value> {
    key.split('.').try_fold(table, |at, step| at.as_object().and_then(|map: &Map<_, _>| map.get(step)))
}

/// A text with its `{names}` filled in.
pub(crate) fn filled(text: &str, with: &[(&str, &str)]) -> String {
    with.iter().fold(text.to_owned(), |out, (name, value)| out.replace(&format!("{{{name}}}"), value))
}
