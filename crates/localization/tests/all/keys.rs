//! Every message is said by a literal of the source, every literal that says one has it, and both
//! languages have the same. Every text of a record that is shown has its Spanish, and every Spanish its record.

use std::collections::{BTreeMap, BTreeSet};
use std::path::Path;

use localization::{FILES, Lang, TRADE_FILES};
use trade_facts::{SETTABLE, Source, Trade, Translated};

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
const OTHER_KEYS: [&str; 1] = ["crates/calculators/"];
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
        } else if path.extension().is_some_and(|end| ["rs", "html", "js", "typ"].iter().any(|kind| end == *kind)) {
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
    assert!(checked > 1400, "only {checked} keys");
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
    // Sources of the calculations have no English beside their formulas: by name for now.
    let own = |key: &&String| !key.starts_with("cite-sum-");
    let apart: Vec<_> = english.symmetric_difference(&spanish).filter(own).collect();
    assert!(apart.is_empty(), "in one language only: {apart:?}");
}

/// Whether a source goes by the same name in both languages, as standards and rules do.
fn is_standard(cite: &str) -> bool {
    cite.split(|c: char| !c.is_ascii_alphabetic()).all(|w| w.len() < 2 || w.chars().all(|c| c.is_ascii_uppercase()))
}

/// The records whose texts are shown in the reader's language. Of the facts, those that a form asks for.
fn translated(trade: &Trade) -> Vec<&dyn Translated> {
    let mut all: Vec<&dyn Translated> = Vec::new();
    all.extend(trade.finishes().map(|r| r as &dyn Translated));
    all.extend(trade.sealers().map(|r| r as &dyn Translated));
    all.extend(trade.incidents().map(|r| r as &dyn Translated));
    all.extend(trade.pour_spec().map(|r| r as &dyn Translated));
    all.extend(trade.signs().map(|r| r as &dyn Translated));
    all.extend(trade.glossary().map(|r| r as &dyn Translated));
    all.extend(trade.hold_point_tests().map(|r| r as &dyn Translated));
    all.extend(trade.materials().map(|r| r as &dyn Translated));
    all.extend(trade.allowances().map(|r| r as &dyn Translated));
    all.extend(SETTABLE.iter().filter_map(|id| trade.fact(id)).map(|r| r as &dyn Translated));
    let sources = trade.sources().filter(|s| !is_standard(&s.cite) && s.cite != Source::COMMON_PRACTICE);
    all.extend(sources.map(|r| r as &dyn Translated));
    all
}

#[test]
fn the_spanish_of_the_records_is_of_records_and_complete() {
    let wanted: Vec<String> = translated(Trade::built_in())
        .into_iter()
        .flat_map(|record| {
            let texts = record.texts().into_iter().enumerate();
            let key = record.key();
            texts.map(move |(at, (name, _))| if at == 0 { key.clone() } else { format!("{key}.{name}") })
        })
        .collect();
    let there: Vec<String> = TRADE_FILES.iter().flat_map(|(_, file, text)| read(file, text).into_keys()).collect();
    let (wanted_once, there_once) = (BTreeSet::from_iter(&wanted), BTreeSet::from_iter(&there));
    assert_eq!((wanted_once.len(), there_once.len()), (wanted.len(), there.len()), "a key stands for two texts");
    let apart: Vec<_> = there_once.symmetric_difference(&wanted_once).collect();
    assert!(apart.is_empty(), "a text without its Spanish, or Spanish without its text: {apart:?}");
    assert!(there.len() > 400, "only {} texts", there.len());
}

/// A text of a record is asked for by a name that some record has: another would come back empty.
#[test]
fn every_text_of_a_record_that_is_said_is_there() {
    let names: BTreeSet<&str> =
        translated(Trade::built_in()).iter().flat_map(|record| record.texts()).map(|(name, _)| name).collect();
    let mut said = BTreeSet::new();
    let sources = sources();
    for (file, text) in &sources {
        for asked in text.split(".text_of(").skip(1).filter_map(|rest| rest.split_once(')')) {
            let Some(name) = asked.0.split('"').nth(1) else { continue };
            assert!(names.contains(name), "{file} asks for {name}");
            said.insert(name);
        }
    }
    assert!(said.len() > 5, "only {said:?}");
}
