//! No message of the calculators is missing or idle, and the two languages have the same ones.

use std::collections::BTreeSet;
use std::path::Path;

use calculators::calculators;
use localization::{FILES, Lang};
use trade_facts::Trade;

fn keys(lang: Lang, file: &str) -> BTreeSet<&'static str> {
    let text = FILES.iter().find(|(l, name, _)| *l == lang && name.ends_with(file)).unwrap().2;
    let keys = text.lines().filter_map(|line| line.split_once(" = ")).map(|(key, _)| key);
    keys.filter(|key| key.starts_with(|c: char| c.is_ascii_lowercase())).collect()
}

fn sources(folder: &Path) -> String {
    let mut text = String::new();
    for entry in std::fs::read_dir(folder).unwrap() {
        let path = entry.unwrap().path();
        text.push_str(&if path.is_dir() { sources(&path) } else { std::fs::read_to_string(&path).unwrap() });
    }
    text
}

/// Every text in quotes that has the shape of a key.
fn named(code: &str) -> BTreeSet<&str> {
    let kinds = ["sum-", "value-", "given-", "found-"];
    let whole = |text: &&str| text.bytes().all(|b| b.is_ascii_lowercase() || b.is_ascii_digit() || b == b'-');
    let texts =
        code.split('"').filter(|text| kinds.iter().any(|kind| text.starts_with(kind) && text.len() > kind.len()));
    texts.filter(whole).collect()
}

#[test]
fn every_message_is_said_and_every_key_has_its_message() {
    let here = Path::new(env!("CARGO_MANIFEST_DIR"));
    let (code, science) = (sources(&here.join("src")), sources(&here.join("../science/src")));
    let plain = format!("{code}{science}").split_whitespace().collect::<Vec<_>>().join(" ");
    let named = named(&code);
    let known: BTreeSet<&str> = ["/sums.ftl", "/sum_forms.ftl"].into_iter().flat_map(|f| keys(Lang::En, f)).collect();
    let missing: Vec<_> = named.difference(&known).collect();
    assert!(missing.is_empty(), "keys of the code without a message: {missing:?}");

    let choices: BTreeSet<String> = calculators()
        .iter()
        .flat_map(|of| of.form.fields)
        .flat_map(|field| {
            let choices = field.choices(Trade::built_in());
            choices.into_iter().map(|choice| format!("sum-choice-{}-{choice}", field.name)).collect::<Vec<_>>()
        })
        .collect();
    let said = |key: &&str| {
        let (kind, name) = key.split_once('-').unwrap();
        named.contains(key)
            || choices.contains(*key)
            || match kind {
                "value" | "found" => code.contains(&format!("\"{}\"", name.replace('-', "_"))),
                "finding" | "caution" => code.contains(&format!("\"{name}\"")),
                "formula" => {
                    // A figure of the trade is cited by the id of its record.
                    Trade::built_in().fact(name).is_some()
                        || plain.contains(&format!("id: \"{name}\""))
                        || plain.contains(&format!("\"{name}\", \"ISO"))
                }
                _ => false,
            }
    };
    let idle: Vec<_> = known.iter().filter(|key| !said(key)).collect();
    assert!(idle.is_empty(), "messages that no code says: {idle:?}");
    assert!(known.len() > 380, "only {} messages", known.len());
    assert_eq!(keys(Lang::En, "/sum_forms.ftl"), keys(Lang::Es, "/sum_forms.ftl"));
}
