//! The words of the papers: two tables with the same keys, and trade facts in Spanish.
//!
//! To add a text: one line in `texts/en.toml`, one in `texts/es.toml`, and its use. Tests fail when
//! a key is missing in one language, when its `{names}` differ, and when nothing uses it.

use std::sync::LazyLock;

use localization::Lang;
use serde_json::{Map, Value};

use crate::error::PaperError;

pub(crate) const EN: &str = include_str!("../texts/en.toml");
pub(crate) const ES: &str = include_str!("../texts/es.toml");
pub(crate) const ES_FACTS: &str = include_str!("../texts/es_facts.toml");

static TABLES: LazyLock<[Value; 3]> = LazyLock::new(|| [EN, ES, ES_FACTS].map(read));

fn read(text: &str) -> Value {
    toml::from_str(text).expect("a test of this module reads the three files")
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

    /// A trade fact's wording: Spanish from our table, English from the fact itself.
    pub(crate) fn fact(self, key: &str, english: &str) -> Result<String, PaperError> {
        match self.lang {
            Lang::En => Ok(english.to_owned()),
            Lang::Es => spanish_fact(key).map(str::to_owned).ok_or_else(|| self.lacking(key)),
        }
    }

    /// What a source is called. Standards keep their names in both languages.
    pub(crate) fn cite(self, english: &str) -> String {
        let spanish = || TABLES[2].get("cite")?.get(english)?.as_str();
        match self.lang {
            Lang::En => english.to_owned(),
            Lang::Es => spanish().unwrap_or(english).to_owned(),
        }
    }
}

/// The Spanish of a trade fact by dotted key, or nothing.
pub(crate) fn spanish_fact(key: &str) -> Option<&'static str> {
    look_up(&TABLES[2], key)?.as_str()
}

fn look_up<'a>(table: &'a Value, key: &str) -> Option<&'a Value> {
    key.split('.').try_fold(table, |at, step| at.as_object().and_then(|map: &Map<_, _>| map.get(step)))
}

/// A text with its `{names}` filled in.
pub(crate) fn filled(text: &str, with: &[(&str, &str)]) -> String {
    with.iter().fold(text.to_owned(), |out, (name, value)| out.replace(&format!("{{{name}}}"), value))
}
