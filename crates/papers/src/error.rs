//! Why a paper could not be made.

/// Why a paper could not be made.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum PaperError {
    /// A value that no paper can be made of.
    #[error("{field}: {value}; accepted: {accepted}")]
    Field {
        /// Which field, with its place in a list: `zones[1].area`.
        field: Box<str>,
        /// What was given.
        value: Box<str>,
        /// What would be accepted.
        accepted: Box<str>,
    },
    /// A character that the typeface cannot draw.
    #[error(
        "{field}: the character {character:?} in {text:?} is not in the typeface; accepted: Latin, Greek and Cyrillic letters, figures and common signs, without emoji"
    )]
    Glyph {
        /// Which text.
        field: Box<str>,
        /// The whole text.
        text: Box<str>,
        /// The character.
        character: char,
    },
    /// More than fits on the sheets a paper may have at the smallest readable type.
    #[error("{field}: {count} do not fit on {sheets} sheet(s) in readable type; accepted: fewer, or shorter texts")]
    TooMuch {
        /// Which list.
        field: Box<str>,
        /// How many it holds.
        count: usize,
        /// How many sheets the paper may have.
        sheets: usize,
    },
    /// The typesetter refused a template: a fault of this build, kept out by its tests.
    #[error("typesetter: {0}")]
    Typesetter(Box<str>),
}

impl PaperError {
    pub(crate) fn field(field: impl Into<String>, value: impl std::fmt::Display, accepted: impl Into<String>) -> Self {
        Self::Field { field: field.into().into(), value: value.to_string().into(), accepted: accepted.into().into() }
    }
}
