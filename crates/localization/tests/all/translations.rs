//! Both languages ask for the same, and for no more than a code carries; every name is translated.

use std::collections::BTreeSet;

use crate::messages::messages;
use localization::{Lang, Locale, UnitSystem};
use slab_answers::standing::{Action, Code, State};
use slab_diary::EntryKind;
use trade_facts::{Grade, Trade, Translated};

/// Steps that can hurt someone: each must carry its caution.
const DANGEROUS: [Action; 20] = [
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
    Action::AcidDrop,
    Action::TryThisConcrete,
    Action::ScreenPlace,
    Action::MixByZone,
    Action::MockUpBothEnds,
    Action::LayCoat,
    Action::LaySealerCoat,
    Action::SealPanelAndShow,
];

fn trade_terms() -> Vec<String> {
    let trade = Trade::built_in();
    let ids =
        trade.finishes().map(|r| &r.id).chain(trade.incidents().map(|r| &r.id)).chain(trade.sealers().map(|r| &r.id));
    ids.cloned().collect()
}

#[test]
fn dangerous_steps_carry_their_caution() {
    for lang in Lang::ALL {
        let cautions: BTreeSet<String> = messages(lang).into_keys().filter(|key| key.ends_with(".care")).collect();
        assert_eq!(cautions, DANGEROUS.iter().map(|action| format!("{}.care", action.key())).collect(), "{lang:?}");
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
            for asked in &messages[code.key()].asks {
                let there = match asked.as_str() {
                    "window" => always("low") && always("high"),
                    "read" => always("lowest") && always("highest"),
                    "side" => always("spread"),
                    name => always(name),
                };
                assert!(there, "{lang:?} {} asks for {asked}", code.key());
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
        names.extend(EntryKind::ALL.iter().map(|k| (k.name().to_owned(), english.kind(*k), spanish.kind(*k))));
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
        assert_eq!(locale.message("no-such-key", &[]), "no-such-key");
    }
}

/// The figures of a text, so that a translation cannot change one.
fn figures(text: &str) -> Vec<String> {
    let mut found: Vec<String> = text
        .split(|c: char| !(c.is_ascii_digit() || c == '.' || c == ',' || c == '/'))
        .map(|word| word.trim_matches(['.', ',', '/']).to_owned())
        .filter(|word| word.chars().any(|c| c.is_ascii_digit()))
        .collect();
    found.sort();
    found
}

fn same_figures<'r>(records: impl Iterator<Item = &'r (impl Translated + 'r)>, at_least: usize) {
    let spanish = Locale::new(Lang::Es, UnitSystem::Imperial);
    let mut compared = 0;
    for record in records {
        for (name, english) in record.texts() {
            let text = spanish.text_of(record, name);
            assert_eq!(figures(english), figures(&text), "{} {name}", record.key());
            compared += 1;
        }
    }
    assert!(compared >= at_least, "only {compared} texts");
}

#[test]
fn clauses_tests_and_materials_have_the_same_figures_in_spanish() {
    let trade = Trade::built_in();
    same_figures(trade.pour_spec(), 80);
    same_figures(trade.hold_point_tests(), 195);
    same_figures(trade.materials(), 20);
    same_figures(trade.allowances(), 7);
}
