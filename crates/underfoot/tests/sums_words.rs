//! No message of the calculations is idle or mistyped: each stands under a name that the code says.
//! Together with the test in `words` that both languages have the same messages, and with the one
//! that no printed answer shows a bare key, this leaves no name without its sentence.

#![allow(clippy::unwrap_used, reason = "a test may stop")]

mod common;

use std::path::Path;

use common::repository;

fn sources(folder: &Path, into: &mut String) {
    for entry in std::fs::read_dir(folder).unwrap() {
        let path = entry.unwrap().path();
        if path.is_dir() {
            sources(&path, into);
        } else if path.extension().is_some_and(|e| e == "rs") {
            into.push_str(&std::fs::read_to_string(path).unwrap());
        }
    }
}

#[test]
fn every_message_of_the_calculations_is_said_by_the_code() {
    let (mut sums, mut science) = (String::new(), String::new());
    sources(&repository("crates/calculators/src"), &mut sums);
    sources(&repository("crates/science/src"), &mut science);
    let told = std::fs::read_to_string(repository("locales/en/sums.ftl")).unwrap();
    let keys = told.lines().filter_map(|line| line.split_once(" = ")).map(|(key, _)| key.trim());
    let mut seen = 0;
    for key in keys.filter(|key| !key.starts_with(['#', '[', '*'])) {
        let Some((kind, name)) = key.split_once('-') else { continue };
        let said = match kind {
            "value" | "found" | "given" => sums.contains(&format!("\"{}\"", name.replace('-', "_"))),
            "finding" | "caution" => sums.contains(&format!("\"{name}\"")),
            "formula" => [&sums, &science].iter().any(|code| {
                let plain = code.split_whitespace().collect::<Vec<_>>().join(" ");
                plain.contains(&format!("id: \"{name}\"")) || plain.contains(&format!("\"{name}\", \"ISO"))
            }),
            "sum" => sums.contains(&format!("\"{key}\"")) || sums.contains(&format!("Sum::new(\"{name}\"")),
            other => panic!("{other}: a kind of message that nobody reads"),
        };
        assert!(said, "{key} is said by no code");
        seen += 1;
    }
    assert!(seen > 250, "only {seen} messages");
}
