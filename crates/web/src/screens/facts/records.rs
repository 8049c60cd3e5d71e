//! The records of every file as statements of one shape.

use localization::Locale;
use trade_facts::{Citation, Fact, Record, Trade};

use crate::figures::{fact_figure, three_figures};

/// How sure a record is and what it rests on, in words.
pub(super) struct Known {
    pub(super) grade: String,
    /// Key and short name of each source.
    pub(super) sources: Vec<(String, String)>,
}

impl Known {
    pub(super) fn of(trade: &Trade, locale: Locale, record: &impl Record) -> Self {
        let citation = record.citation();
        let weakest = trade.grade_to_show(&citation);
        let idea = trade.grade_to_show(&Citation { weakest: citation.grade, ..citation.clone() });
        let grade = if idea == weakest {
            locale.grade(weakest)
        } else {
            let said = [("idea", locale.grade(idea).into()), ("rest", locale.grade(weakest).into())];
            locale.message("facts-two-grades", &said)
        };
        let source = |key: &String| {
            let one = Citation { sources: vec![key.clone()], ..citation.clone() };
            trade.source(key).map(|source| (source.key.clone(), locale.cite(trade, &one)))
        };
        Self { grade, sources: citation.sources.iter().filter_map(source).collect() }
    }
}

/// One record.
pub(super) struct Statement {
    pub(super) anchor: String,
    pub(super) code: String,
    /// In the words of the record, which are English.
    pub(super) text: String,
    /// Its number in the reader's units and language.
    pub(super) figure: Option<String>,
    pub(super) further: Vec<String>,
    pub(super) known: Known,
    pub(super) topics: Vec<String>,
}

impl Statement {
    pub(super) fn searched(&self) -> Vec<&str> {
        let short = [self.anchor.as_str(), &self.code, &self.text, self.figure.as_deref().unwrap_or_default()];
        short.into_iter().chain(self.further.iter().map(String::as_str)).collect()
    }
}

/// Rules of the trade name where they are used in a word or two; these are topics of the page.
const USED: [(&str, &str); 8] = [
    ("membrane", "membrane"),
    ("panels", "panel"),
    ("finishes", "finishes"),
    ("order", "order"),
    ("pour sheet", "pour"),
    ("rinse", "residue"),
    ("before sealing", "residue"),
    ("site notice", "contamination"),
];

/// The heading of a group.
pub(super) fn head(locale: Locale, group: &str) -> String {
    let key = match group {
        "rules" => "facts-rules",
        "limits" => "facts-limits",
        "safety" => "facts-safety",
        "figures" => "facts-figures",
        "finishes" => "facts-finishes",
        "sealers" => "facts-sealers",
        "incidents" => "facts-incidents",
        "pour" => "facts-pour",
        _ => "facts-conflicts",
    };
    locale.message(key, &[])
}

struct Writer<'t> {
    trade: &'t Trade,
    locale: Locale,
}

/// Every record, in groups, in the order of the files.
pub(super) fn all(trade: &Trade, locale: Locale) -> Vec<(&'static str, Vec<Statement>)> {
    let writer = Writer { trade, locale };
    vec![
        ("rules", trade.facts().map(|fact| writer.fact(fact)).collect()),
        ("limits", trade.limits().map(|fact| writer.fact(fact)).collect()),
        ("safety", writer.safety()),
        ("figures", writer.figures()),
        ("finishes", writer.finishes()),
        ("sealers", writer.sealers()),
        ("incidents", writer.incidents()),
        ("pour", writer.pour()),
        ("conflicts", writer.conflicts()),
    ]
}

fn texts<const N: usize>(all: [Option<&String>; N]) -> Vec<String> {
    all.into_iter().flatten().filter(|text| !text.is_empty()).cloned().collect()
}

impl Writer<'_> {
    fn of(&self, record: &impl Record, text: String, topic: &str) -> Statement {
        Statement {
            anchor: record.id().to_owned(),
            code: String::new(),
            text,
            figure: None,
            further: Vec::new(),
            known: Known::of(self.trade, self.locale, record),
            topics: vec![topic.to_owned()],
        }
    }

    fn fact(&self, fact: &Fact) -> Statement {
        let tests = self.trade.hold_point_tests().filter(|test| test.limits.contains(&fact.id));
        let mut topics: Vec<String> = fact.about.iter().cloned().chain(tests.map(|t| t.hold_point.clone())).collect();
        if fact.about.is_none() {
            topics.push("practice".to_owned());
            let used = fact.used_for.as_deref().unwrap_or_default();
            let there = USED.iter().filter(|(word, _)| used.contains(word));
            topics.extend(there.map(|(_, topic)| (*topic).to_owned()));
        }
        Statement {
            code: fact.code.clone().unwrap_or_default(),
            figure: fact_figure(self.locale, fact),
            further: texts([fact.note.as_ref()]),
            topics,
            ..self.of(fact, fact.statement.clone(), "")
        }
    }

    fn safety(&self) -> Vec<Statement> {
        let one = |rule: &trade_facts::SafetyRule| Statement {
            // Other lists use the same words for their records.
            anchor: format!("safety-{}", rule.id),
            code: rule.code.clone(),
            further: texts([rule.rule.as_ref(), rule.control.as_ref(), rule.stop_work_if.as_ref()]),
            figure: None,
            ..self.of(rule, rule.hazard.clone(), "health")
        };
        self.trade.safety().map(one).collect()
    }

    fn figures(&self) -> Vec<Statement> {
        let materials = self.trade.materials().map(|material| Statement {
            figure: three_figures(self.locale, material),
            further: texts([material.how_used.as_ref()]),
            ..self.of(material, material.item.clone(), "order")
        });
        let allowances = self.trade.allowances().map(|allowance| Statement {
            figure: three_figures(self.locale, allowance),
            ..self.of(allowance, allowance.meaning.clone(), "order")
        });
        materials.chain(allowances).collect()
    }

    fn coverage(&self, (low, high): (units::Coverage, units::Coverage)) -> String {
        let range = self.locale.range(&self.locale.coverage(low), &self.locale.coverage(high));
        self.locale.message("facts-a-coat", &[("amount", range.into())])
    }

    fn finishes(&self) -> Vec<Statement> {
        let one = |finish: &trade_facts::Finish| Statement {
            figure: Some(self.coverage(finish.coverage())),
            further: texts([Some(&finish.note)]),
            ..self.of(finish, finish.name.clone(), "finishes")
        };
        self.trade.finishes().map(one).collect()
    }

    fn sealers(&self) -> Vec<Statement> {
        let one = |sealer: &trade_facts::Sealer| Statement {
            figure: Some(self.coverage(sealer.coverage())),
            further: texts([Some(&sealer.look), Some(&sealer.good_for), Some(&sealer.watch_out)]),
            ..self.of(sealer, sealer.name.clone(), "sealers")
        };
        self.trade.sealers().map(one).collect()
    }

    fn incidents(&self) -> Vec<Statement> {
        let one = |incident: &trade_facts::Incident| Statement {
            code: incident.code.clone(),
            further: texts([Some(&incident.effect), Some(&incident.remedy)]),
            ..self.of(incident, incident.name.clone(), "contamination")
        };
        self.trade.incidents().map(one).collect()
    }

    fn pour(&self) -> Vec<Statement> {
        let one = |clause: &trade_facts::PourSpec| Statement {
            anchor: format!("pour-{}", clause.id),
            code: clause.code.clone(),
            further: texts([Some(&clause.requirement), clause.range.as_ref(), clause.why.as_ref()]),
            ..self.of(clause, clause.item.clone(), "pour")
        };
        self.trade.pour_spec().map(one).collect()
    }

    fn conflicts(&self) -> Vec<Statement> {
        let one = |conflict: &trade_facts::Conflict| Statement {
            anchor: format!("conflict-{}", conflict.id),
            further: vec![
                format!("One side: {}", conflict.a),
                format!("Other side: {}", conflict.b),
                format!("Here: {} ({})", conflict.choice, conflict.why),
            ],
            ..self.of(conflict, conflict.topic.clone(), "conflicts")
        };
        self.trade.conflicts().map(one).collect()
    }
}
