//! What the answers rest on: every statement and figure of the trade records, how sure it is, and where
//! it comes from.

mod records;

use std::collections::BTreeSet;
use std::sync::Arc;

use askama::Template;
use axum::Router;
use localization::{Arg, Locale};
use slab_answers::standing::HoldPointId;
use trade_facts::{HoldPointTest, Trade};

use crate::app::App;
use crate::context::{Answer, RequestContext, page};
use crate::control::Choice;
use crate::frame::{Frame, show};
use crate::texts::{capital, holds};
use crate::visitor::Permission;

use records::{Known, Statement};

pub(super) fn routes() -> Router<Arc<App>> {
    Router::new().route("/facts", page(Permission::Read, shown))
}

/// A group of statements under its heading.
struct Group {
    id: &'static str,
    head: String,
    statements: Vec<Statement>,
}

/// A hold point test as the template draws it.
struct Test<'t> {
    test: &'t HoldPointTest,
    name: String,
    /// How it is done, what passes and so on, each under its heading.
    told: Vec<(String, String)>,
    known: Known,
    /// The figures it uses: anchor, statement and number.
    limits: Vec<(String, String, Option<String>)>,
}

/// A source in full.
struct FullSource {
    key: String,
    cite: String,
    what: String,
    kind: String,
    locator: String,
    supports: String,
    grade: String,
}

#[derive(Template)]
#[template(path = "facts.html")]
struct Page<'t> {
    frame: Frame,
    search: String,
    topics: Vec<Choice>,
    counted: String,
    filtered: bool,
    groups: Vec<Group>,
    tests: Vec<Test<'t>>,
    sources: Vec<FullSource>,
}

/// What topics are called. Those of a hold point go by its name.
pub(crate) fn topic_label(locale: Locale, topic: &str) -> String {
    match HoldPointId::ALL.into_iter().find(|id| id.name().replace('_', "-") == topic) {
        Some(id) => capital(&locale.hold_point(id)),
        None => match topic {
            "bond" => locale.message("facts-topic-bond", &[]),
            "care" => locale.message("facts-topic-care", &[]),
            "conflicts" => locale.message("facts-topic-conflicts", &[]),
            "film" => locale.message("facts-topic-film", &[]),
            "finishes" => locale.message("facts-topic-finishes", &[]),
            "health" => locale.message("facts-topic-health", &[]),
            "money" => locale.message("facts-topic-money", &[]),
            "order" => locale.message("facts-topic-order", &[]),
            "pour" => locale.message("facts-topic-pour", &[]),
            "practice" => locale.message("facts-topic-practice", &[]),
            "residue" => locale.message("facts-topic-residue", &[]),
            "sealers" => locale.message("facts-topic-sealers", &[]),
            "slip" => locale.message("facts-topic-slip", &[]),
            "substrate" => locale.message("facts-topic-substrate", &[]),
            "waste" => locale.message("facts-topic-waste", &[]),
            other => other.to_owned(),
        },
    }
}

/// Every topic that a record has: hold points first, in their order, then the rest.
fn topics_there(trade: &Trade) -> Vec<String> {
    let mut there: BTreeSet<String> = BTreeSet::new();
    for (_, statements) in records::all(trade, Locale::default()) {
        there.extend(statements.into_iter().flat_map(|statement| statement.topics));
    }
    there.extend(trade.hold_point_tests().map(|test| test.hold_point.clone()));
    let points = HoldPointId::ALL.map(|id| id.name().replace('_', "-"));
    let (first, rest): (Vec<String>, Vec<String>) = there.into_iter().partition(|topic| points.contains(topic));
    points.into_iter().filter(|point| first.contains(point)).chain(rest).collect()
}

fn shown(context: &RequestContext) -> Answer {
    let (locale, trade) = (context.locale(), Trade::built_in());
    let search = context.query.answer("q").unwrap_or_default().to_owned();
    let there = topics_there(trade);
    let about =
        context.query.answer("about").filter(|about| there.iter().any(|topic| topic == about)).unwrap_or_default();
    let of_topic = |topics: &[String]| about.is_empty() || topics.iter().any(|topic| topic == about);
    let mut groups = Vec::new();
    for (id, mut statements) in records::all(trade, locale) {
        statements.retain(|s| of_topic(&s.topics) && holds(&search, &s.searched()));
        if !statements.is_empty() {
            groups.push(Group { id, head: records::head(locale, id), statements });
        }
    }
    let tests: Vec<Test<'_>> = trade
        .hold_point_tests()
        .filter(|test| about.is_empty() || test.hold_point == about)
        .map(|test| told(test, trade, locale))
        .filter(|told| told.found_by(&search))
        .collect();
    let used = groups.iter().flat_map(|g| &g.statements).map(|s| &s.known).chain(tests.iter().map(|t| &t.known));
    let used: BTreeSet<&str> = used.flat_map(|known| &known.sources).map(|(key, _)| key.as_str()).collect();
    let sources = trade.sources().filter(|source| used.contains(source.key.as_str())).map(|source| FullSource {
        key: source.key.clone(),
        cite: source.cite.clone(),
        what: source.what.clone(),
        kind: source.kind.clone(),
        locator: source.locator.clone(),
        supports: source.supports.clone(),
        grade: locale.grade(source.grade),
    });
    let count = groups.iter().map(|group| group.statements.len()).sum::<usize>() + tests.len();
    let mut topics: Vec<Choice> = vec![Choice {
        value: String::new(),
        label: locale.message("facts-every-topic", &[]),
        chosen: about.is_empty(),
    }];
    topics.extend(there.iter().map(|topic| Choice {
        label: topic_label(locale, topic),
        chosen: topic == about,
        value: topic.clone(),
    }));
    let frame = context.frame(locale.message("facts-title", &[]));
    Ok(show(&Page {
        frame,
        filtered: !about.is_empty() || !search.is_empty(),
        counted: locale.message("facts-count", &[("count", Arg::Number(count as f64))]),
        sources: sources.collect(),
        search,
        topics,
        groups,
        tests,
    }))
}

fn told<'t>(test: &'t HoldPointTest, trade: &Trade, locale: Locale) -> Test<'t> {
    let limit = |id: &String| {
        let fact = trade.fact(id)?;
        Some((id.clone(), fact.statement.clone(), crate::figures::fact_figure(locale, fact)))
    };
    let heads = [
        ("facts-how", locale.text_of(test, "how")),
        ("facts-passes", locale.text_of(test, "passes")),
        ("facts-uncertain", locale.text_of(test, "uncertain")),
        ("facts-fails", locale.text_of(test, "fails")),
        ("facts-remedy", locale.text_of(test, "remedy")),
        ("facts-if-ignored", locale.text_of(test, "if-ignored")),
    ];
    let there = heads.into_iter().filter(|(_, text)| !text.is_empty());
    Test {
        name: locale.text_of(test, "name"),
        told: there.map(|(head, text)| (locale.message(head, &[]), text)).collect(),
        known: Known::of(trade, locale, test),
        limits: test.limits.iter().filter_map(limit).collect(),
        test,
    }
}

impl Test<'_> {
    /// A test is found by its own English too: it is what its papers and standards say.
    fn found_by(&self, search: &str) -> bool {
        let test = self.test;
        let english = [&test.name, &test.id, &test.code, &test.how, &test.passes, &test.fails, &test.meaning];
        let shown = self.told.iter().map(|(_, text)| text);
        let all: Vec<&str> =
            english.into_iter().chain([&test.remedy, &self.name]).chain(shown).map(String::as_str).collect();
        holds(search, &all)
    }
}

#[cfg(test)]
mod tests {
    use std::collections::BTreeSet;

    use localization::{Lang, Locale, UnitSystem};
    use trade_facts::{Record, Trade};

    use super::{records, topic_label, topics_there};

    #[test]
    fn every_topic_has_a_name_in_both_languages() {
        let topics = topics_there(Trade::built_in());
        assert!(topics.len() > 15, "{topics:?}");
        for lang in Lang::ALL {
            for topic in &topics {
                let label = topic_label(Locale::new(lang, UnitSystem::Imperial), topic);
                assert!(!label.contains("facts-topic"), "{label}");
            }
        }
    }

    /// An order, a sum or a test names records by id: each has one place on the page.
    #[test]
    fn every_record_has_its_own_anchor() {
        let trade = Trade::built_in();
        let all: Vec<String> =
            records::all(trade, Locale::default()).into_iter().flat_map(|(_, s)| s).map(|s| s.anchor).collect();
        let tests = trade.hold_point_tests().map(|test| format!("test-{}", test.id()));
        let anchors: Vec<String> = all.iter().cloned().chain(tests).collect();
        assert_eq!(anchors.iter().collect::<BTreeSet<_>>().len(), anchors.len(), "an anchor twice");
        let wanted = trade.facts().map(|f| &f.id).chain(trade.limits().map(|f| &f.id));
        let wanted = wanted.chain(trade.materials().map(|f| &f.id)).chain(trade.allowances().map(|f| &f.id));
        let wanted = wanted.chain(trade.finishes().map(|f| &f.id)).chain(trade.sealers().map(|f| &f.id));
        let mut counted = 0;
        for id in wanted {
            assert!(all.contains(id), "{id}");
            counted += 1;
        }
        assert_eq!(counted, 29 + 131 + 21 + 7 + 10 + 10);
    }
}
