//! Every key that a page says is there in both languages, and none is there for nothing.

use std::collections::BTreeSet;
use std::path::Path;

use localization::{FILES, Lang, Locale, UnitSystem};

/// Files of messages that only pages use.
const OURS: &[&str] = &[
    "/pages.ftl",
    "/script.ftl",
    "/plan_pages.ftl",
    "/answer_pages.ftl",
    "/drying_pages.ftl",
    "/people_pages.ftl",
    "/panel_pages.ftl",
    "/line_pages.ftl",
];

/// Keys that are put together: `said-` and the name of what was done, and so on.
const BUILT: &[&str] = &["said-", "trouble-", "script-", "facts-topic-"];

fn read(folder: &Path, all: &mut Vec<(String, String)>) {
    for file in std::fs::read_dir(folder).expect("the folder is there") {
        let path = file.expect("a file").path();
        if path.is_dir() {
            read(&path, all);
        } else if path.extension().is_some_and(|end| end == "rs" || end == "html") {
            all.push((path.display().to_string(), std::fs::read_to_string(&path).expect("it reads")));
        }
    }
}

fn sources() -> Vec<(String, String)> {
    let mut all = Vec::new();
    for folder in ["src", "templates"] {
        read(&Path::new(env!("CARGO_MANIFEST_DIR")).join(folder), &mut all);
    }
    assert!(all.len() > 20, "sources and templates are found");
    all
}

fn keys(lang: Lang, name: &str) -> BTreeSet<String> {
    let files = FILES.iter().filter(|(l, file, _)| *l == lang && file.ends_with(name));
    let lines = files.flat_map(|(.., text)| text.lines());
    lines
        .filter(|line| line.starts_with(|c: char| c.is_ascii_lowercase()))
        .filter_map(|line| line.split_once(" ="))
        .map(|(key, _)| key.trim().to_owned())
        .collect()
}

/// Every literal that is asked of a locale: `say("key"`, `say1("key"`, `count("key"`.
fn said(text: &str) -> Vec<String> {
    let mut found = Vec::new();
    for call in ["say(\"", "say1(\"", "frame.count(\""] {
        for part in text.split(call).skip(1) {
            if let Some((key, _)) = part.split_once('"') {
                found.push(key.to_owned());
            }
        }
    }
    found
}

#[test]
fn every_key_that_a_page_says_is_there_in_both_languages() {
    let mut checked = 0;
    for (file, text) in sources() {
        for key in said(&text) {
            for lang in Lang::ALL {
                assert!(Locale::new(lang, UnitSystem::Imperial).knows(&key), "{file}: {key} in {}", lang.name());
            }
            checked += 1;
        }
    }
    assert!(checked > 100, "only {checked} keys found");
}

#[test]
fn both_languages_have_the_same_keys_and_none_is_idle() {
    let sources = sources();
    for name in OURS {
        let (english, spanish) = (keys(Lang::En, name), keys(Lang::Es, name));
        assert_eq!(english, spanish, "{name}");
        for key in english {
            let quoted = format!("\"{key}\"");
            let used = BUILT.iter().any(|prefix| key.starts_with(prefix))
                || sources.iter().any(|(_, text)| text.contains(&quoted));
            assert!(used, "{name}: nothing says {key}");
        }
    }
}

#[test]
fn every_word_of_the_script_is_one_plain_line_and_is_asked_for() {
    let script: String = std::fs::read_dir(Path::new(env!("CARGO_MANIFEST_DIR")).join("assets"))
        .expect("the assets are there")
        .map(|file| file.expect("a file").path())
        .filter(|path| path.extension().is_some_and(|end| end == "js"))
        .map(|path| std::fs::read_to_string(path).expect("it reads"))
        .collect();
    let all = keys(Lang::En, "/script.ftl");
    assert!(all.len() > 10);
    for key in all {
        let short = key.trim_start_matches("script-");
        assert!(script.contains(&format!("\"{short}\"")), "no script asks for {short}");
    }
    for part in script.split("word(\"").skip(1) {
        let key = part.split('"').next().unwrap_or_default();
        assert!(Locale::default().knows(&format!("script-{key}")), "the script asks for {key}");
    }
}
