//! No message of the forms is idle, and the two languages have the same ones.

use std::collections::BTreeSet;

use calculators::forms;
use localization::{FILES, Lang};

fn keys(lang: Lang) -> BTreeSet<&'static str> {
    let file = FILES.iter().find(|(l, name, _)| *l == lang && name.ends_with("/sum_forms.ftl")).unwrap();
    file.2
        .lines()
        .filter_map(|line| line.split_once(" = "))
        .map(|(key, _)| key)
        .filter(|k| !k.starts_with('#'))
        .collect()
}

fn sources(folder: &std::path::Path) -> String {
    let mut text = String::new();
    for entry in std::fs::read_dir(folder).unwrap() {
        let path = entry.unwrap().path();
        text.push_str(&if path.is_dir() { sources(&path) } else { std::fs::read_to_string(&path).unwrap() });
    }
    text
}

#[test]
fn every_message_of_the_forms_is_said() {
    let code = sources(&std::path::Path::new(env!("CARGO_MANIFEST_DIR")).join("src"));
    let mut fields = BTreeSet::new();
    for form in forms() {
        fields.insert(format!("sum-about-{}", form.id));
        for field in &form.fields {
            let id = field.id.replace('_', "-");
            fields.insert(format!("sum-field-{id}"));
            fields.insert(format!("sum-field-{}-{id}", form.id));
            fields.insert(format!("sum-usual-{}-{id}", form.id));
            fields.extend(field.choices.iter().map(|choice| format!("sum-choice-{}-{choice}", field.id)));
        }
    }
    for key in keys(Lang::En) {
        let said = match key.strip_prefix("sum-refused-").or_else(|| key.strip_prefix("sum-accepts-")) {
            Some(name) => code.contains(&format!("\"{name}\"")),
            None => fields.contains(key),
        };
        assert!(said, "{key} is said by no code");
    }
    assert_eq!(keys(Lang::En), keys(Lang::Es));
    assert!(keys(Lang::En).len() > 170);
}

/// Every key that the code gives for what would be accepted has its message.
#[test]
fn every_key_of_the_code_has_its_message() {
    let code = sources(&std::path::Path::new(env!("CARGO_MANIFEST_DIR")).join("src"));
    let (known, mut seen) = (keys(Lang::En), 0);
    let calls = ["beyond(&[", "naming(\"", "Accepted::from(\"", "unclear(", "impossible(", "missing(", "number("];
    for call in calls {
        for place in code.split(call).skip(1) {
            let inside = place.split([';', '\n']).next().unwrap_or_default();
            let last = match call {
                // Its key stands behind one of the first two.
                _ if !call.ends_with('"') && inside.contains("Accepted::") => None,
                "naming(\"" | "Accepted::from(\"" => inside.split('"').next(),
                _ if inside.trim_end_matches([')', ',', '}', '?']).ends_with('"') => inside.rsplit('"').nth(1),
                _ => None,
            };
            if let Some(key) = last {
                assert!(known.contains(format!("sum-accepts-{key}").as_str()), "{call} {inside}: {key}");
                seen += 1;
            }
        }
    }
    assert!(seen > 80, "only {seen} keys seen");
}
