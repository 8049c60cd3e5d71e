//! What a calculation rests on: a formula of the science, or a fact of the trade by its id.

use localization::Locale;
use science::{FormulaSource, Grade};
use serde_json::{Value, json};
use trade_facts::{Fact, InUnit, Measured, Record, Trade};

/// A formula or limit with where it comes from and how sure that is.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct RestsOn {
    /// The id of its source.
    pub id: &'static str,
    /// What it is, in words.
    pub formula: String,
    /// The document and the place in it.
    pub source: String,
    /// How sure.
    pub grade: Grade,
    /// How sure, in words.
    pub grade_said: String,
    /// Source and grade in one sentence.
    pub cited: String,
}

/// What a number or a formula of an answer comes from.
#[derive(Debug, Clone, Copy)]
pub(crate) enum Basis {
    Formula(FormulaSource),
    Fact(&'static Fact),
}

impl From<FormulaSource> for Basis {
    fn from(source: FormulaSource) -> Self {
        Self::Formula(source)
    }
}

impl From<&'static Fact> for Basis {
    fn from(fact: &'static Fact) -> Self {
        Self::Fact(fact)
    }
}

impl Basis {
    fn id(self) -> &'static str {
        match self {
            Self::Formula(source) => source.id,
            Self::Fact(fact) => &fact.id,
        }
    }

    pub(crate) fn grade(self) -> Grade {
        match self {
            Self::Formula(source) => source.grade,
            Self::Fact(fact) => Trade::built_in().grade_to_show(&fact.citation()),
        }
    }

    /// Languages other than that of the documents have their own words for what is not a title.
    fn source(self, locale: Locale) -> String {
        match self {
            Self::Formula(source) => {
                let key = format!("cite-sum-{}", source.id);
                match source.locator {
                    _ if locale.knows_built(&key) => locale.message_built(&key, &[]),
                    "" => source.document.to_owned(),
                    locator => format!("{}; {locator}", source.document),
                }
            }
            Self::Fact(fact) => locale.cite(Trade::built_in(), &fact.citation()),
        }
    }

    pub(crate) fn said(self, locale: Locale) -> RestsOn {
        let named = self.source(locale);
        let said = locale.grade(self.grade());
        let cited =
            locale.message("standing-source", &[("source", named.as_str().into()), ("grade", said.as_str().into())]);
        RestsOn {
            id: self.id(),
            formula: locale.message_built(&format!("formula-{}", self.id()), &[]),
            source: named,
            grade: self.grade(),
            grade_said: said,
            cited,
        }
    }

    /// For a program: documents as they are titled, whatever the language.
    pub(crate) fn json(self) -> Value {
        let (document, locator) = match self {
            Self::Formula(source) => (source.document.to_owned(), source.locator),
            Self::Fact(fact) => {
                let cited = Trade::built_in().cite(&fact.citation());
                (cited.iter().map(|source| source.cite.as_str()).collect::<Vec<_>>().join("; "), "")
            }
        };
        json!({ "id": self.id(), "document": document, "locator": locator })
    }
}

/// A fact of this build that a calculation takes as its usual figure.
pub(crate) fn fact(id: &str) -> &'static Fact {
    Trade::built_in().fact(id).expect("every calculation is run by a test, which finds its facts")
}

/// The single value of a fact.
pub(crate) fn figure<Q: InUnit>(id: &str) -> Q {
    fact(id).value_as().expect("every calculation is run by a test, which reads its figures")
}
