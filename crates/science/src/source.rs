//! Where a formula or a fact comes from, and how surely we know it.
//!
//! Why the grade lives here: the formulas and the facts of the trade are shown side by side under one
//! set of words, and this is the lowest crate that both know.

use std::fmt;

use serde::{Deserialize, Serialize};

/// How well a statement is known, surest first. The order is meant: `max` gives the weaker of two.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
pub enum Grade {
    /// The statement was read in a stored public copy of its source, or computed with a named
    /// reference library.
    #[serde(rename = "verified")]
    Verified,
    /// Read in a copy, summary or quotation of the document it belongs to.
    #[serde(rename = "verified, secondary copy")]
    SecondaryCopy,
    /// Remembered from a document; not read for this work.
    #[serde(rename = "from memory")]
    FromMemory,
    /// Trade habit. No source carries it.
    #[serde(rename = "common practice, no source")]
    CommonPractice,
    /// Our own judgment.
    #[serde(rename = "expert judgment")]
    ExpertJudgment,
}

impl Grade {
    /// Every grade, surest first.
    pub const ALL: [Self; 5] =
        [Self::Verified, Self::SecondaryCopy, Self::FromMemory, Self::CommonPractice, Self::ExpertJudgment];

    /// The words used in the data files, on screens and on papers.
    #[must_use]
    pub const fn words(self) -> &'static str {
        match self {
            Self::Verified => "verified",
            Self::SecondaryCopy => "verified, secondary copy",
            Self::FromMemory => "from memory",
            Self::CommonPractice => "common practice, no source",
            Self::ExpertJudgment => "expert judgment",
        }
    }

    /// The grade written in those words, or nothing.
    #[must_use]
    pub fn from_words(words: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|grade| grade.words() == words)
    }
}

impl fmt::Display for Grade {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.words())
    }
}

/// The document behind a formula, or behind a limit that is shown with one.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub struct FormulaSource {
    /// Stable name of the formula or limit, such as `menzel-1954`.
    pub id: &'static str,
    /// The document.
    pub document: &'static str,
    /// Chapter, equation or table in it; empty when not known.
    pub locator: &'static str,
    /// How surely it is known.
    pub grade: Grade,
}
