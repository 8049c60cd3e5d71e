//! Every code has its message in both languages, no message is idle, and both ask for the same.

use std::collections::BTreeSet;

use crate::messages::messages;
use localization::{FILES, Lang, Locale, UnitSystem};
use slab_answers::order::{Item, OrderNote};
use slab_answers::standing::{Action, Code, HoldPointId, State};
use slab_diary::Body;
use trade_facts::{Grade, Trade};

/// Messages that the code names one by one.
const SINGLE: &str = "
overall-released overall-unproven overall-cant-tell overall-held overall-next overall-next-untimed overall-open
time-work-wait time-wait reason-in-zone range list-comma list-and date
length-inches length-feet length-millimeters length-meters area-square-feet area-square-meters
volume-gallons volume-fluid-ounces volume-liters volume-milliliters concrete-cubic-yards concrete-cubic-meters
mass-pounds mass-ounces mass-kilograms mass-grams
coverage-square-feet-per-gallon coverage-square-meters-per-liter film-mils film-micrometers
emission-pounds emission-grams temperature-fahrenheit temperature-celsius humidity-percent
duration-seconds duration-minutes duration-hours duration-days
term-water term-eyewash term-waste-plan term-data-sheets
grade-verified grade-secondary-copy grade-from-memory grade-common-practice grade-expert-judgment
state-released state-unproven state-cant-tell state-held
overall-released-stained
order-head order-recipe-panel order-recipe-usual order-zone order-zone-panels order-zone-table order-zone-unknown
order-need order-need-exact order-buy order-pack order-pieces order-next
slab-opened no-slabs-yet entries-written standing-head standing-next-heading standing-why-heading standing-source
standing-if-ignored standing-evidence diary-corrected paper-written paper-pour-sheet paper-site-notice
demo-head demo-diary demo-as-of serve-at serve-not-encrypted serve-set-up serve-stop
";

/// Steps that can hurt someone: each must carry its caution.
const DANGEROUS: [Action; 12] = [
    Action::SolventWipe,
    Action::StripAndRetest,
    Action::ScreenAndRetest,
    Action::TryOnPanelOrScreen,
    Action::TreatAndRetest,
    Action::SetProbes,
    Action::MockUpOrGrind,
    Action::NeutralizeAndRinse,
    Action::RepairOrAccept,
    Action::TryStainOnPatch,
    Action::MakePanel,
    Action::StainPanels,
];

fn trade_terms() -> Vec<String> {
    let trade = Trade::built_in();
    let ids =
        trade.finishes().map(|r| &r.id).chain(trade.incidents().map(|r| &r.id)).chain(trade.sealers().map(|r| &r.id));
    ids.cloned().collect()
}

/// Names of sources that are more than the number of a standard or rule.
fn sources_with_words() -> Vec<String> {
    let plain = |name: &str| {
        let words = name.split(|c: char| !c.is_ascii_alphabetic()).filter(|w| w.len() > 1);
        words.into_iter().all(|w| w.chars().all(|c| c.is_ascii_uppercase()))
    };
    let names: BTreeSet<&str> = Trade::built_in().sources().map(|s| s.cite.as_str()).filter(|n| !plain(n)).collect();
    let slug = |name: &str| {
        let low = name.to_ascii_lowercase();
        low.split(|c: char| !c.is_ascii_alphanumeric()).filter(|w| !w.is_empty()).collect::<Vec<_>>().join("-")
    };
    names.into_iter().map(|n| format!("cite-{}", slug(n))).collect()
}

fn wanted(lang: Lang) -> BTreeSet<String> {
    let named = SINGLE.split_whitespace().chain(crate::sums::NAMED.split_whitespace());
    let mut keys: BTreeSet<String> = named.map(str::to_owned).collect();
    keys.extend(crate::pictures::NAMED.split_whitespace().map(str::to_owned));
    keys.extend(crate::drying::keys());
    keys.extend(crate::plan::NAMED.split_whitespace().map(str::to_owned));
    keys.extend(Code::ALL.iter().map(|c| format!("why-{}", c.name())));
    keys.extend(Action::ALL.iter().map(|a| format!("do-{}", a.name())));
    keys.extend(DANGEROUS.iter().map(|a| format!("do-{}.care", a.name())));
    for id in HoldPointId::ALL {
        let name = id.name().replace('_', "-");
        keys.extend(["hold", "ask", "ignored"].map(|prefix| format!("{prefix}-{name}")));
    }
    keys.extend(Body::KINDS.iter().map(|k| format!("kind-{}", k.replace('_', "-"))));
    keys.extend(Item::ALL.iter().map(|i| format!("item-{}", i.name())));
    keys.extend(OrderNote::ALL.iter().map(|n| format!("note-{}", n.name())));
    keys.extend((1..=12).map(|n| format!("month-{n}")));
    if lang == Lang::Es {
        keys.extend(sources_with_words());
        keys.extend(crate::sums::CITED_IN_SPANISH.split_whitespace().map(str::to_owned));
        keys.extend(trade_terms().iter().map(|id| format!("term-{id}")));
    }
    keys
}

/// Files whose use a higher crate's tests check: `forms` and `sums` know their forms, `web` its pages.
const CHECKED_ELSEWHERE: [&str; 12] = [
    "/forms.ftl",
    "/sum_forms.ftl",
    "/pages.ftl",
    "/script.ftl",
    "/plan_pages.ftl",
    "/answer_pages.ftl",
    "/drying_pages.ftl",
    "/people_pages.ftl",
    "/photo.ftl",
    "/recipe.ftl",
    "/panel_pages.ftl",
    "/line_pages.ftl",
];

/// The keys of those files.
fn checked_elsewhere(lang: Lang) -> BTreeSet<String> {
    let files =
        FILES.iter().filter(|(l, name, _)| *l == lang && CHECKED_ELSEWHERE.iter().any(|end| name.ends_with(end)));
    let lines =
        files.flat_map(|(.., text)| text.lines()).filter(|line| line.starts_with(|c: char| c.is_ascii_lowercase()));
    lines.filter_map(|line| line.split_once(" = ")).map(|(key, _)| key.to_owned()).collect()
}

#[test]
fn each_language_has_exactly_the_messages_that_are_used() {
    for lang in Lang::ALL {
        let elsewhere = checked_elsewhere(lang);
        let has: BTreeSet<String> = messages(lang).into_keys().filter(|key| !elsewhere.contains(key)).collect();
        let wanted = wanted(lang);
        let missing: Vec<_> = wanted.difference(&has).collect();
        let idle: Vec<_> = has.difference(&wanted).collect();
        assert!(missing.is_empty() && idle.is_empty(), "{lang:?}: missing {missing:?}, idle {idle:?}");
    }
}

#[test]
fn both_languages_ask_for_the_same() {
    let (english, spanish) = (messages(Lang::En), messages(Lang::Es));
    let mut compared = 0;
    for (key, message) in &english {
        assert_eq!(message.asks, spanish[key].asks, "{key}");
        compared += 1;
    }
    assert!(compared > 250, "only {compared} messages compared");
}

#[test]
fn sentences_ask_only_for_what_their_code_always_carries() {
    for lang in Lang::ALL {
        let messages = messages(lang);
        for code in Code::ALL {
            let carried = crate::carried::carried(*code);
            let always = |name: &str| carried.iter().any(|c| c.always && c.name == name);
            for asked in &messages[&format!("why-{}", code.name())].asks {
                let there = match asked.as_str() {
                    "window" => always("low") && always("high"),
                    "read" => always("lowest") && always("highest"),
                    "side" => always("spread"),
                    name => always(name),
                };
                assert!(there, "{lang:?} why-{} asks for {asked}", code.name());
            }
        }
    }
}

#[test]
fn the_table_of_carried_values_names_only_codes() {
    let listed = crate::carried::listed();
    let unique: BTreeSet<_> = listed.iter().collect();
    assert_eq!(unique.len(), listed.len());
    for name in listed {
        assert!(Code::ALL.iter().any(|c| c.name() == name), "{name} is no code");
    }
}

#[test]
fn every_name_is_translated() {
    for unit_system in UnitSystem::ALL {
        let (english, spanish) = (Locale::new(Lang::En, unit_system), Locale::new(Lang::Es, unit_system));
        let same_word = ["plan", "temperature", "float"];
        let mut names: Vec<(String, String, String)> = Vec::new();
        names.extend(Body::KINDS.iter().map(|k| ((*k).to_owned(), english.kind(k), spanish.kind(k))));
        let site = ["water", "eyewash", "waste-plan", "data-sheets"].map(str::to_owned);
        let ids: Vec<String> = trade_terms().into_iter().chain(site).collect();
        let unique: BTreeSet<_> = ids.iter().collect();
        assert_eq!(unique.len(), ids.len(), "a term id stands for two things");
        names.extend(ids.into_iter().map(|id| (id.clone(), english.term(&id), spanish.term(&id))));
        names.extend(Grade::ALL.iter().map(|g| (g.words().to_owned(), english.grade(*g), spanish.grade(*g))));
        for state in [State::Released, State::Unproven, State::CantTell, State::Held] {
            names.push((state.name().to_owned(), english.state(state), spanish.state(state)));
        }
        assert!(names.len() >= 100, "only {} names", names.len());
        for (id, en, es) in names {
            assert!(es != id, "{id} has no Spanish name");
            assert!(en != es || same_word.contains(&id.as_str()), "{id}: {en} in both languages");
        }
    }
}

#[test]
fn the_english_grades_are_those_of_the_records_in_american_spelling() {
    for grade in Grade::ALL {
        let shown = Locale::default().grade(grade);
        assert_eq!(shown, grade.words());
    }
}

#[test]
fn what_is_no_term_comes_back_as_it_is() {
    for lang in Lang::ALL {
        let locale = Locale::new(lang, UnitSystem::Metric);
        assert_eq!(locale.term("4021"), "4021");
        assert_eq!(locale.term("Mix 7, plant B"), "Mix 7, plant B");
        assert_eq!(locale.kind("robot_walk"), "robot_walk");
        assert_eq!(locale.message("no-such-key", &[]), "no-such-key");
    }
}
