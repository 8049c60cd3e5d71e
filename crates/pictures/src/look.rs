//! What every drawing is given and gives back.

use localization::Locale;

/// How a drawing is named and read.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Look {
    /// Begins every id in the drawing, so that several can stand on one page. Letters, digits, `-`
    /// and `_` are kept; anything else is left out.
    pub prefix: String,
    /// Its title, in the reader's language.
    pub title: String,
    /// The reader.
    pub locale: Locale,
}

impl Look {
    /// A look with this prefix, title and reader.
    #[must_use]
    pub fn new(prefix: &str, title: &str, locale: Locale) -> Self {
        Self { prefix: prefix.to_owned(), title: title.to_owned(), locale }
    }
}

/// A drawing and the same in words.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Drawing {
    /// One `svg` element, to be put into a page or a file as it is.
    pub svg: String,
    /// What the drawing tells, in whole sentences.
    pub sentences: Vec<String>,
    /// Its figures.
    pub table: Table,
}

/// A small table: texts in the reader's language, not escaped.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Table {
    /// The heads of its columns.
    pub head: Vec<String>,
    /// Its rows, each as long as the head.
    pub rows: Vec<Vec<String>>,
}
