//! How sure each printed statement is, and the lines at the foot of a paper that say so.

use std::collections::BTreeMap;

use trade_facts::{Citation, Grade, Source, Trade};

use crate::error::PaperError;
use crate::texts::Words;

/// The letter printed beside a statement.
pub(crate) const fn letter(grade: Grade) -> &'static str {
    match grade {
        Grade::Verified => "V",
        Grade::SecondaryCopy => "V2",
        Grade::FromMemory => "M",
        Grade::CommonPractice => "P",
        Grade::ExpertJudgment => "J",
    }
}

/// The grade a statement may be printed under: never better than its weakest part, nor than what
/// its best source may be cited for.
pub(crate) fn shown(trade: &Trade, citation: &Citation) -> Grade {
    let best = citation.sources.iter().filter_map(|key| trade.source(key)).map(Source::carries).min();
    best.map_or(citation.weakest, |best| best.max(citation.weakest))
}

/// The sources of the statements on one paper, each with the labels of what rests on it.
#[derive(Debug, Default)]
pub(crate) struct Foot {
    rows: BTreeMap<(Grade, String), Vec<String>>,
}

impl Foot {
    /// Notes a statement, by the label printed beside it, and gives its letter.
    pub(crate) fn note(&mut self, trade: &Trade, citation: &Citation, label: &str) -> &'static str {
        let grade = shown(trade, citation);
        let named: Vec<&Source> = citation
            .sources
            .iter()
            .filter_map(|key| trade.source(key))
            .filter(|source| source.cite != Source::COMMON_PRACTICE)
            .collect();
        if named.is_empty() {
            self.add(grade, String::new(), label);
        }
        for source in named {
            self.add(source.grade, source.cite.clone(), label);
        }
        letter(grade)
    }

    /// Notes a statement of ours that no data file holds.
    pub(crate) fn own(&mut self, grade: Grade, label: &str) {
        self.add(grade, String::new(), label);
    }

    fn add(&mut self, grade: Grade, cite: String, label: &str) {
        let labels = self.rows.entry((grade, cite)).or_default();
        if !labels.iter().any(|known| known == label) {
            labels.push(label.to_owned());
        }
    }

    /// One line for each source: name, letter, labels.
    pub(crate) fn lines(&self, words: Words) -> Result<Vec<String>, PaperError> {
        self.rows
            .iter()
            .map(|((grade, cite), labels)| {
                let mut labels = labels.clone();
                labels.sort_unstable();
                let name = match (cite.as_str(), grade) {
                    ("", Grade::CommonPractice | Grade::ExpertJudgment) => name(words, *grade)?.to_owned(),
                    ("", _) => words.message("sources.none")?.to_owned(),
                    (cite, _) => Trade::built_in()
                        .sources()
                        .find(|source| source.cite == cite)
                        .map_or_else(|| cite.to_owned(), |source| words.locale().source(source)),
                };
                Ok(format!("{name} ({}): {}", letter(*grade), labels.join(", ")))
            })
            .collect()
    }
}

/// What the letters mean, in one line.
pub(crate) fn key(words: Words) -> Result<String, PaperError> {
    let parts: Result<Vec<String>, PaperError> =
        Grade::ALL.into_iter().map(|grade| Ok(format!("{} {}", letter(grade), name(words, grade)?))).collect();
    Ok(format!("{} {}.", words.message("sources.grades")?, parts?.join("; ")))
}

fn name(words: Words, grade: Grade) -> Result<&'static str, PaperError> {
    words.message(match grade {
        Grade::Verified => "grade.verified",
        Grade::SecondaryCopy => "grade.verified-secondary-copy",
        Grade::FromMemory => "grade.from-memory",
        Grade::CommonPractice => "grade.common-practice-no-source",
        Grade::ExpertJudgment => "grade.expert-judgment",
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use trade_facts::Record;

    fn of(clause: &str) -> Grade {
        let trade = Trade::built_in();
        shown(trade, &trade.pour_clause(clause).expect("a clause").citation())
    }

    #[test]
    fn never_surer_than_the_source() {
        // Read in pages that are cited as common practice only.
        assert_eq!(of("mix-strength-and-cement"), Grade::CommonPractice);
        // The idea was read, the number is remembered.
        assert_eq!(of("vapor-retarder"), Grade::FromMemory);
        // Read in the ready-mix association's sheet.
        assert_eq!(of("thickness-and-joints"), Grade::Verified);
        // Remembered, without a document.
        assert_eq!(of("aggregates"), Grade::FromMemory);
    }
}
