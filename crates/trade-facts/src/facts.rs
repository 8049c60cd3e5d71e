//! Facts, limits, sources and the hold point tests.

use serde::{Deserialize, Serialize};

use super::grade::Grade;
use super::record::{measured_optional, record, translated};
use super::unit::Unit;

/// A publication, rule or habit that facts rest on (`sources.toml`).
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Source {
    /// The key that records use.
    pub key: String,
    /// What it is.
    pub what: String,
    /// What kind of publication.
    pub kind: String,
    /// Where it was seen, without the names of firms.
    pub locator: String,
    /// What screens and papers print; [`Source::COMMON_PRACTICE`] for pages that are not named.
    pub cite: String,
    /// What it supports.
    pub supports: String,
    /// How it was seen.
    pub grade: Grade,
}
translated!(Source, "source" key: "cite" cite);

impl Source {
    /// The citation of trade pages that are deliberately not named.
    pub const COMMON_PRACTICE: &'static str = "common practice";

    /// The best grade a fact may be shown under when this is its best source: a page that is cited
    /// as common practice carries no more than that, however well it was read.
    #[must_use]
    pub fn carries(&self) -> Grade {
        if self.cite == Self::COMMON_PRACTICE { Grade::CommonPractice } else { self.grade }
    }
}

/// How a number is meant.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Bound {
    /// Fine at this or less.
    AtMost,
    /// Fine at this or more.
    AtLeast,
    /// Counts only above this.
    Above,
    /// Counts only below this.
    Below,
    /// Between low and high.
    Range,
    /// Roughly this.
    About,
    /// This.
    Exact,
}

/// A statement of the trade or a limit, with its number where it has one
/// (`practice.toml` and `limits.toml`).
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Fact {
    /// Word id, unique over both files.
    pub id: String,
    /// Short code of the house rules, such as `R01`.
    pub code: Option<String>,
    /// What the number is about; limits only.
    pub about: Option<String>,
    /// The statement.
    pub statement: String,
    /// The single value, in `unit`.
    pub value: Option<f64>,
    /// The low end, in `unit`.
    pub low: Option<f64>,
    /// The high end, in `unit`.
    pub high: Option<f64>,
    /// The unit of the numbers.
    pub unit: Option<Unit>,
    /// How the number is meant.
    pub bound: Option<Bound>,
    /// The amount the number is counted for, in `per_unit`: 2 readings per 500 ft².
    pub per: Option<f64>,
    /// The unit of `per`.
    pub per_unit: Option<Unit>,
    /// Where the fact is used.
    pub used_for: Option<String>,
    /// A remark.
    pub note: Option<String>,
    /// Grade of the statement.
    pub grade: Grade,
    /// Grade of the number, where it differs.
    pub grade_numbers: Option<Grade>,
    /// Source keys.
    pub source: Vec<String>,
    /// Sources that touch the matter without carrying it.
    #[serde(default)]
    pub see: Vec<String>,
}
record!(Fact, optional grade_numbers);
translated!(Fact, "fact" id: "statement" statement);
measured_optional!(Fact, self => self.unit);

/// A named number inside a record of another kind.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Number {
    /// What the number is.
    pub what: String,
    /// The single value, in `unit`.
    pub value: Option<f64>,
    /// The low end, in `unit`.
    pub low: Option<f64>,
    /// The high end, in `unit`.
    pub high: Option<f64>,
    /// The unit.
    pub unit: Unit,
    /// How the number is meant.
    pub bound: Bound,
}
measured_optional!(Number, self => Some(self.unit));

/// A test that releases or holds a slab (`hold_point_tests.toml`).
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct HoldPointTest {
    /// Word id.
    pub id: String,
    /// Short code, such as `G03`.
    pub code: String,
    /// Name.
    pub name: String,
    /// The hold point it belongs to.
    pub hold_point: String,
    /// How it is done.
    pub how: String,
    /// What passes.
    pub passes: String,
    /// What is uncertain.
    pub uncertain: Option<String>,
    /// What fails.
    pub fails: String,
    /// What a bad result means.
    pub meaning: String,
    /// What helps.
    pub remedy: String,
    /// What happens if it is skipped.
    pub if_ignored: String,
    /// Ids of the [`Fact`]s with the numbers it uses.
    pub limits: Vec<String>,
    /// Grade of the test or the cause.
    pub grade: Grade,
    /// Grade of the part of the wording that the sources do not carry.
    pub grade_rest: Option<Grade>,
    /// Grade of the pass and fail numbers.
    pub grade_numbers: Grade,
    /// Source keys.
    pub source: Vec<String>,
    /// Sources that touch the matter without carrying it.
    #[serde(default)]
    pub see: Vec<String>,
    /// What the sources say of it.
    pub source_note: Option<String>,
}
record!(HoldPointTest, optional grade_rest, plain grade_numbers);
translated!(
    HoldPointTest, "test" id: "name" name, "how" how, "passes" passes, "uncertain" uncertain, "fails" fails,
    "meaning" meaning, "remedy" remedy, "if-ignored" if_ignored
);
