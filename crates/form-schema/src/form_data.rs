//! What came from a form: texts by the names of their inputs.

use std::collections::BTreeMap;

/// Texts by input name; an input that repeats has several.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct FormData(BTreeMap<String, Vec<String>>);

impl FormData {
    /// Nothing typed.
    #[must_use]
    pub fn new() -> Self {
        Self::default()
    }

    /// Adds a text under an input's name, after those already there.
    pub fn push(&mut self, name: impl Into<String>, text: impl Into<String>) {
        self.0.entry(name.into()).or_default().push(text.into());
    }

    /// Replaces what stands under an input's name.
    pub fn set(&mut self, name: impl Into<String>, text: impl Into<String>) {
        self.0.insert(name.into(), vec![text.into()]);
    }

    /// Every text under a name, in the order they came.
    #[must_use]
    pub fn get(&self, name: &str) -> &[String] {
        self.0.get(name).map_or(&[], Vec::as_slice)
    }

    /// The first text under a name, as typed.
    #[must_use]
    pub fn first(&self, name: &str) -> Option<&str> {
        self.get(name).first().map(String::as_str)
    }

    /// The first text under a name without blanks around it; nothing when it is empty.
    #[must_use]
    pub fn answer(&self, name: &str) -> Option<&str> {
        self.first(name).map(str::trim).filter(|text| !text.is_empty())
    }

    /// Every name with its texts, by name.
    pub fn iter(&self) -> impl Iterator<Item = (&str, &[String])> {
        self.0.iter().map(|(name, texts)| (name.as_str(), texts.as_slice()))
    }
}

impl<N: Into<String>, T: Into<String>> FromIterator<(N, T)> for FormData {
    fn from_iter<I: IntoIterator<Item = (N, T)>>(pairs: I) -> Self {
        let mut typed = Self::new();
        for (name, text) in pairs {
            typed.push(name, text);
        }
        typed
    }
}
