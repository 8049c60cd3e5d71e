//! What would be accepted, as a message of both languages. It may name other fields: the command line
//! says them as options, a page by their labels.

use localization::{Arg, Locale};

/// A message `sum-accepts-…` with what is filled in.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct Accepted {
    key: &'static str,
    others: &'static [&'static str],
    with: Vec<(&'static str, String)>,
}

impl From<&'static str> for Accepted {
    fn from(key: &'static str) -> Self {
        Self { key, others: &[], with: Vec::new() }
    }
}

impl Accepted {
    /// A message that names other fields.
    pub(crate) fn naming(key: &'static str, others: &'static [&'static str]) -> Self {
        Self { key, others, with: Vec::new() }
    }

    /// With something filled in.
    pub(crate) fn with(mut self, name: &'static str, text: impl Into<String>) -> Self {
        self.with.push((name, text.into()));
        self
    }

    /// In a person's words; `named` says the other fields.
    pub(crate) fn message(&self, locale: Locale, named: impl Fn(&str) -> String) -> String {
        let others = self.others.iter().map(|field| (*field, named(field).into()));
        let with = self.with.iter().map(|(name, text)| (*name, Arg::from(text.as_str())));
        locale.message(&format!("sum-accepts-{}", self.key), &others.chain(with).collect::<Vec<_>>())
    }

    /// For the command line.
    pub(crate) fn as_option(&self) -> String {
        self.message(Locale::default(), flag)
    }
}

/// `--water-cement` from `water_cement`.
pub(crate) fn flag(name: &str) -> String {
    format!("--{}", name.replace('_', "-"))
}
