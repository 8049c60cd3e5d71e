//! Every message is said by a literal of the source, every literal that says one has it, and both
//! languages have the same.

use std::collections::{BTreeMap, BTreeSet};
use std::path::Path;

use localization::{FILES, Lang, TRADE_FILES};
use trade_facts::Trade;

use crate::messages::{messages, read};

/// Files whose keys follow from schemas: those of the entries are put together in `entry_text.rs` alone and held
/// by the tests in `tests/forms`, those of the calculations by the tests of `calculators`.
const BUILT: [&str; 3] = ["/forms.ftl", "/sums.ftl", "/sum_forms.ftl"];
/// Names of the kinds of entries, looked up by the kind.
const KIND: &str = "kind-";
/// Who may say a key that was put together.
const BUILDERS: [&str; 4] = [
    "crates/calculators/",
    "crates/localization/src/entry_text.rs",
    "crates/localization/src/names.rs",
    "crates/localization/src/messages.rs",
];
/// Crates whose calls of those names take the keys of tables of their own.
const OTHER_KEYS: [&str; 2] = ["crates/calculators/", "crates/papers/"];
/// What takes a key as its first argument, in the pages' script too.
const CALLS: [&str; 6] = ["message(", "knows(", "say(", "say1(", "count(", "word("];

fn is_key(text: &str) -> bool {
    text.starts_with(|c: char| c.is_ascii_lowercase())
        && !text.ends_with('-')
        && text.chars().all(|c| c.is_ascii_lowercase() || c.is_ascii_digit() || c == '-' || c == '_')
}

fn read_folder(folder: &Path, all: &mut Vec<(String, String)>) {
    for file in std::fs::read_dir(folder).expect("the folder is there") {
        let path = file.expect("a file").path();
        if path.is_dir() {
            read_folder(&path, all);
        } else if path.extension().is_some_and(|end| end == "rs" || end == "html" || end == "js") {
            all.push((path.display().to_string(), std::fs::read_to_string(&path).expect("it reads")));
        }
    }
}

/// The sources, templates and scripts of all crates, without their tests.
fn sources() -> Vec<(String, String)> {
    let crates = Path::new(env!("CARGO_MANIFEST_DIR")).parent().expect("the folder of all crates");
    let mut all = Vec::new();
    for one in std::fs::read_dir(crates).expect("the folder is there") {
        for part in ["src", "templates", "assets"].map(|part| one.as_ref().expect("a crate").path().join(part)) {
            if part.is_dir() {
                read_folder(&part, &mut all);
            }
        }
    }
    assert!(all.len() > 300, "only {} sources", all.len());
    all
}

/// What stands between quotes and could be a key.
fn literals(text: &str) -> impl Iterator<Item = &str> {
    text.split('"').filter(|part| is_key(part))
}

/// The literals that stand where a key is asked for.
fn said(text: &str) -> impl Iterator<Item = &str> {
    let asked = |call: &'static str| text.split(call).skip(1);
    CALLS.into_iter().flat_map(asked).filter_map(|rest| {
        let (key, _) = rest.trim_start().strip_prefix('"')?.split_once('"')?;
        is_key(key).then_some(key)
    })
}

/// Keys of a language with the file of each, without attributes.
fn keys(lang: Lang) -> BTreeMap<String, &'static str> {
    let of = |(_, file, text): &(Lang, &'static str, &'static str)| {
        let file: &'static str = file;
        read(file, text).into_keys().filter(|key| !key.contains('.')).map(move |key| (key, file)).collect::<Vec<_>>()
    };
    FILES.iter().filter(|(l, ..)| *l == lang).flat_map(of).collect()
}

fn is_built(key: &str, file: &str) -> bool {
    key.starts_with(KIND) || BUILT.iter().any(|end| file.ends_with(end))
}

/// The first two words of a longer key: what its kin share.
fn kin(key: &str) -> Option<&str> {
    let (at, _) = key.match_indices('-').nth(1)?;
    Some(&key[..at])
}

#[test]
fn no_message_is_idle() {
    let sources = sources();
    let literals: BTreeSet<&str> = sources.iter().flat_map(|(_, text)| literals(text)).collect();
    let keys = keys(Lang::En);
    let idle: Vec<_> =
        keys.iter().filter(|(key, file)| !is_built(key, file) && !literals.contains(key.as_str())).collect();
    assert!(idle.is_empty(), "said by nothing: {idle:?}");
    let checked = keys.iter().filter(|(key, file)| !is_built(key, file)).count();
    assert!(checked > 1300, "only {checked} keys");
}

#[test]
fn every_key_that_is_said_has_its_message() {
    let keys = keys(Lang::En);
    let families: BTreeSet<&str> = keys.keys().filter_map(|key| kin(key)).collect();
    let mut checked = 0;
    for (file, text) in sources() {
        let others = OTHER_KEYS.iter().any(|one| file.contains(one));
        for key in said(&text).filter(|_| !others) {
            assert!(keys.contains_key(key), "{file} says {key}");
            checked += 1;
        }
        for key in literals(&text).filter(|key| kin(key).is_some_and(|kin| families.contains(kin))) {
            assert!(keys.contains_key(key), "{file} holds {key}, which looks like a key");
        }
        let built = text.contains("message_built(") || text.contains("knows_built(");
        assert!(!built || BUILDERS.iter().any(|builder| file.contains(builder)), "{file} puts keys together");
    }
    assert!(checked > 900, "only {checked} keys are said");
}

#[test]
fn both_languages_have_the_same_messages() {
    let [english, spanish] = [Lang::En, Lang::Es].map(|lang| messages(lang).into_keys().collect::<BTreeSet<_>>());
    // Facts and sources of the calculations have no English beside their records: by name for now.
    let own = |key: &&String| {
        !["fact-", "cite-sum-", "remedy-"].iter().any(|kin| key.starts_with(kin)) || english.contains(*key)
    };
    let apart: Vec<_> = english.symmetric_difference(&spanish).filter(own).collect();
    assert!(apart.is_empty(), "in one language only: {apart:?}");
}

#[test]
fn the_spanish_of_the_records_is_of_records_and_complete() {
    let trade = Trade::built_in();
    let names =
        trade.finishes().map(|r| &r.id).chain(trade.incidents().map(|r| &r.id)).chain(trade.sealers().map(|r| &r.id));
    // The number of a standard or rule is the same in both languages.
    let plain = |name: &str| {
        name.split(|c: char| !c.is_ascii_alphabetic()).all(|w| w.len() < 2 || w.chars().all(|c| c.is_ascii_uppercase()))
    };
    let sources = trade.sources().filter(|s| !plain(&s.cite) && s.cite != trade_facts::Source::COMMON_PRACTICE);
    let wanted: BTreeSet<String> = names.cloned().chain(sources.map(|source| source.key.replace('.', "-"))).collect();
    let told: BTreeSet<String> = TRADE_FILES.iter().flat_map(|(_, file, text)| read(file, text).into_keys()).collect();
    assert_eq!(told, wanted);
}
