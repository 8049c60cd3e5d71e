//! What goes on papers and walls: the pour specification, safety rules, signs, conflicts, words.

use serde::{Deserialize, Serialize};

use super::facts::Number;
use super::grade::Grade;
use super::record::record;

/// A clause of the pour sheet (`pour_spec.toml`).
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct PourSpec {
    /// Word id.
    pub id: String,
    /// Short code, such as `P10`.
    pub code: String,
    /// What it is about.
    pub item: String,
    /// What is asked.
    pub requirement: String,
    /// The value as printed.
    pub range: Option<String>,
    /// Why.
    pub why: Option<String>,
    /// The value in machine form.
    pub numbers: Vec<Number>,
    /// Where sources differ.
    pub conflict: Option<String>,
    /// Grade of the requirement.
    pub grade: Grade,
    /// Grade of the part of the wording that the sources do not carry.
    pub grade_rest: Option<Grade>,
    /// Grade of the numbers, where it differs.
    pub grade_numbers: Option<Grade>,
    /// Source keys.
    pub source: Vec<String>,
    /// Sources that touch the matter without carrying it.
    #[serde(default)]
    pub see: Vec<String>,
    /// What the sources say of it.
    pub source_note: Option<String>,
}
record!(PourSpec, optional grade_rest, optional grade_numbers);

/// A hazard and its usual cautions (`safety.toml`). The safety data sheet and local rules govern.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct SafetyRule {
    /// Word id.
    pub id: String,
    /// Short code, such as `F02`.
    pub code: String,
    /// The hazard.
    pub hazard: String,
    /// The kinds of work it goes with.
    pub when: Vec<String>,
    /// The rule or fact.
    pub rule: Option<String>,
    /// The usual controls.
    pub control: Option<String>,
    /// The sign to stop work.
    pub stop_work_if: Option<String>,
    /// Ids of the [`super::Fact`]s with its numbers.
    pub limits: Vec<String>,
    /// Grade of the rule.
    pub grade: Grade,
    /// Grade of the part of the wording that the sources do not carry.
    pub grade_rest: Option<Grade>,
    /// Source keys.
    pub source: Vec<String>,
    /// Sources that touch the matter without carrying it.
    #[serde(default)]
    pub see: Vec<String>,
    /// What the sources say of it.
    pub source_note: Option<String>,
}
record!(SafetyRule, optional grade_rest);

/// The signal word of a sign, by the definitions of ANSI Z535.4 as quoted in a secondary copy.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Signal {
    /// Will cause death or serious injury.
    Danger,
    /// Could cause death or serious injury.
    Warning,
    /// Could cause minor or moderate injury.
    Caution,
    /// No injury.
    Notice,
}

/// A sign for the site (`signs.toml`).
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Sign {
    /// Word id.
    pub id: String,
    /// Signal word.
    pub signal: Signal,
    /// Where it hangs.
    pub place: String,
    /// Text, English.
    pub en: String,
    /// Text, Spanish.
    pub es: String,
    /// Grade of the signal word; the wording is our own.
    pub grade: Grade,
    /// How the Spanish was checked.
    pub spanish_grade: String,
    /// Source keys.
    pub source: Vec<String>,
    /// What the sources say of it.
    pub source_note: Option<String>,
}
record!(Sign);

/// Which position our default follows.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Position {
    /// The first.
    A,
    /// The second.
    B,
    /// Both.
    Both,
    /// Neither.
    Neither,
}

/// A matter on which sources disagree (`conflicts.toml`).
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Conflict {
    /// Word id.
    pub id: String,
    /// What it is about.
    pub topic: String,
    /// First position.
    pub a: String,
    /// Who holds it; empty where the sources were too weak to cite.
    pub a_source: Vec<String>,
    /// Second position.
    pub b: String,
    /// Who holds it; empty where the sources were too weak to cite.
    pub b_source: Vec<String>,
    /// What we do.
    pub choice: String,
    /// Why.
    pub why: String,
    /// Which position our default follows.
    pub ours: Position,
    /// Grade of the disagreement.
    pub grade: Grade,
    /// Grade of our choice.
    pub grade_choice: Grade,
    /// Source keys of both sides.
    pub source: Vec<String>,
    /// What the sources say of it.
    pub source_note: Option<String>,
}
record!(Conflict, plain grade_choice);

/// A trade word in two languages (`glossary.toml`).
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct TermPair {
    /// Word id.
    pub id: String,
    /// English.
    pub en: String,
    /// United States trade Spanish.
    pub es: String,
    /// Remark.
    pub note: Option<String>,
    /// Grade.
    pub grade: Grade,
    /// Source keys.
    pub source: Vec<String>,
}
record!(TermPair);
