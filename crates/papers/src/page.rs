//! The sheet a paper is printed on.

/// A paper size of the trade.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum PageSize {
    /// US letter, 8 1/2 by 11 in (ANSI/ASME Y14.1 size A).
    Letter,
    /// A4, 210 by 297 mm (ISO 216).
    A4,
}

impl PageSize {
    /// Every size.
    pub const ALL: [Self; 2] = [Self::Letter, Self::A4];

    /// The word on the command line.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Self::Letter => "letter",
            Self::A4 => "a4",
        }
    }

    /// The size of that word, or nothing.
    #[must_use]
    pub fn from_word(word: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|size| size.word() == word)
    }

    /// The name the typesetter knows it by.
    pub(crate) const fn typesetter_name(self) -> &'static str {
        match self {
            Self::Letter => "us-letter",
            Self::A4 => "a4",
        }
    }
}
