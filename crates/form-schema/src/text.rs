//! A text that says something.

use std::fmt;
use std::ops::Deref;

use serde::{Deserialize, Serialize};

/// A text that is not blank, without blanks around it.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(try_from = "String", into = "String")]
pub struct Text(String);

/// A text of nothing but blanks.
#[derive(Debug, Clone, Copy, PartialEq, Eq, thiserror::Error)]
#[error("the text is empty; accepted: at least one letter or digit")]
pub struct EmptyText;

impl Text {
    /// The text, when it says something.
    ///
    /// # Errors
    /// [`EmptyText`] when it is blank.
    pub fn new(text: &str) -> Result<Self, EmptyText> {
        let text = text.trim();
        if text.is_empty() { Err(EmptyText) } else { Ok(Self(text.to_owned())) }
    }

    /// The text.
    #[must_use]
    pub fn as_str(&self) -> &str {
        &self.0
    }
}

impl TryFrom<String> for Text {
    type Error = EmptyText;
    fn try_from(text: String) -> Result<Self, EmptyText> {
        Self::new(&text)
    }
}

impl From<Text> for String {
    fn from(text: Text) -> Self {
        text.0
    }
}

impl Deref for Text {
    type Target = str;
    fn deref(&self) -> &str {
        &self.0
    }
}

impl AsRef<str> for Text {
    fn as_ref(&self) -> &str {
        &self.0
    }
}

impl PartialEq<str> for Text {
    fn eq(&self, other: &str) -> bool {
        self.0 == other
    }
}

impl PartialEq<&str> for Text {
    fn eq(&self, other: &&str) -> bool {
        self.0 == *other
    }
}

impl fmt::Display for Text {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.0)
    }
}
