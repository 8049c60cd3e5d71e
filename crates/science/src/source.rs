//! Where a formula or a limit comes from, and how surely we know it.

/// How well a statement is known.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Grade {
    /// Read in a public copy of the named document, or computed with a named reference library.
    Verified,
    /// Read in a secondary copy that quotes the named document.
    VerifiedSecondary,
    /// Remembered from the named document; not read here.
    Memory,
    /// Trade habit without a source.
    CommonPractice,
}

impl Grade {
    /// The short mark used in the reference files and on paper: `V`, `V2`, `M`, `C`.
    #[must_use]
    pub const fn mark(self) -> &'static str {
        match self {
            Self::Verified => "V",
            Self::VerifiedSecondary => "V2",
            Self::Memory => "M",
            Self::CommonPractice => "C",
        }
    }
}

/// The document behind a formula or a limit.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub struct Source {
    /// Stable name of the formula or limit, such as `menzel-1954`.
    pub id: &'static str,
    /// The document.
    pub document: &'static str,
    /// Chapter, equation or table in it; empty when not known.
    pub locator: &'static str,
    /// How surely it is known.
    pub grade: Grade,
}
