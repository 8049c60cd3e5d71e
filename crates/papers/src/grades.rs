//! How sure each printed statement is, and the lines at the foot of a paper that say so.

use std::collections::BTreeMap;

use localization::Locale;
use serde_json::{Value, json};
use trade_facts::{Citation, Grade, Source, Trade};

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

    /// The foot of a paper: what comes before it, what the letters mean, and one line for each source.
    pub(crate) fn say(&self, locale: Locale) -> Value {
        json!({
            "heading": locale.message("paper-sources-heading", &[]),
            "defer": locale.message("paper-sources-defer", &[]),
            "key": key(locale),
            "lines": self.lines(locale),
        })
    }

    /// One line for each source: name, letter, labels.
    fn lines(&self, locale: Locale) -> Vec<String> {
        let line = |((grade, cite), labels): (&(Grade, String), &Vec<String>)| {
            let mut labels = labels.clone();
            labels.sort_unstable();
            let source = Trade::built_in().sources().find(|source| source.cite == *cite);
            let name = match (source, grade) {
                (Some(source), _) => locale.source(source),
                (None, Grade::CommonPractice | Grade::ExpertJudgment) => name(locale, *grade),
                (None, _) => locale.message("paper-sources-none", &[]),
            };
            format!("{name} ({}): {}", letter(*grade), labels.join(", "))
        };
        self.rows.iter().map(line).collect()
    }
}

/// What the letters mean, in one line.
fn key(locale: Locale) -> String {
    let parts = Grade::ALL.map(|grade| format!("{} {}", letter(grade), name(locale, grade)));
    format!("{} {}.", locale.message("paper-sources-grades", &[]), parts.join("; "))
}

fn name(locale: Locale, grade: Grade) -> String {
    let key = match grade {
        Grade::Verified => "paper-grade-verified",
        Grade::SecondaryCopy => "paper-grade-secondary-copy",
        Grade::FromMemory => "paper-grade-from-memory",
        Grade::CommonPractice => "paper-grade-common-practice",
        Grade::ExpertJudgment => "paper-grade-expert-judgment",
    };
    locale.message(key, &[])
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
