//! What every drawing is given and gives back.

use localization::Locale;

/// Units across a phone: the narrowest that is common, less the page's edge.
pub(crate) const PHONE: f64 = 312.0;

/// How a drawing is named and read.
#[derive(Debug, Clone, PartialEq)]
pub struct Look {
    /// Begins every id in the drawing, so that several can stand on one page. Letters, digits, `-`
    /// and `_` are kept; anything else is left out.
    pub prefix: String,
    /// Its title, in the reader's language.
    pub title: String,
    /// The reader.
    pub locale: Locale,
    pub(crate) width: f64,
}

impl Look {
    /// A look with this prefix, title and reader, as wide as a phone.
    #[must_use]
    pub fn new(prefix: &str, title: &str, locale: Locale) -> Self {
        Self { prefix: prefix.to_owned(), title: title.to_owned(), locale, width: PHONE }
    }

    /// For a desk: a chart grows to these units, 312 to 1600, and its lettering keeps its size.
    #[must_use]
    pub fn wide(self, units: f64) -> Self {
        Self { width: if units.is_finite() { units.clamp(PHONE, 1600.0) } else { self.width }, ..self }
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
