//! The standing as a person asks for it: exit code, moment, what counts as known.

#![allow(clippy::unwrap_used, reason = "a test may stop")]

mod common;

use common::{BASE, Site, repository, state};

/// A worked case of `reference/standing/`: its lines, and `key = "value"` of its head and of `[expect]`.
struct Case {
    name: String,
    text: String,
}

impl Case {
    fn all() -> Vec<Self> {
        let mut cases: Vec<Self> = std::fs::read_dir(repository("reference/standing"))
            .unwrap()
            .map(|entry| entry.unwrap().path())
            .filter(|path| path.extension().is_some_and(|e| e == "toml"))
            .map(|path| Self {
                name: path.file_stem().unwrap().to_str().unwrap().to_owned(),
                text: std::fs::read_to_string(&path).unwrap(),
            })
            .collect();
        cases.sort_by(|a, b| a.name.cmp(&b.name));
        cases
    }

    fn named(name: &str) -> Self {
        Self::all().into_iter().find(|case| case.name.contains(name)).unwrap()
    }

    fn value<'a>(lines: impl Iterator<Item = &'a str>, key: &str) -> Option<&'a str> {
        lines.filter_map(|l| l.split_once(" = \"")).find(|(k, _)| *k == key)?.1.strip_suffix('"')
    }

    fn head(&self, key: &str) -> &str {
        Self::value(self.text.lines(), key).unwrap_or_else(|| panic!("{}: {key}", self.name))
    }

    fn diary(&self) -> &str {
        self.text.split("'''").nth(1).unwrap()
    }

    /// Hold point and expected state, `overall` among them.
    fn expected(&self) -> Vec<(&str, &str)> {
        let section = self.text.split("[expect]").nth(1).unwrap().split("\n[").next().unwrap();
        section.lines().filter_map(|l| l.split_once(" = \"")).map(|(k, v)| (k, v.trim_end_matches('"'))).collect()
    }

    fn refused(&self) -> bool {
        self.text.lines().any(|line| line.trim() == "complaints = true")
    }

    fn site(&self) -> Site {
        let site = Site::empty();
        site.run(&["new", "a slab", "--time-zone", self.head("time_zone")]).ends(0);
        site
    }
}

/// The cases are replayed as anyone would replay theirs: a file, then the question.
#[test]
fn the_worked_cases_come_out_the_same_through_the_command_line() {
    let (mut asked, mut refused) = (0, 0);
    for case in Case::all() {
        let site = case.site();
        let file = site.file("case.jsonl", case.diary());
        let logged = site.run(&["log", "--from", &file]);
        if case.refused() {
            logged.ends(3);
            refused += 1;
            continue;
        }
        logged.ends(0);
        let told = site.run(&["ready", "--at", case.head("at"), "--json"]);
        let standing = told.json();
        for (id, expected) in case.expected() {
            let found =
                if id == "overall" { standing["overall"]["state"].as_str().unwrap() } else { state(&standing, id) };
            assert_eq!(found, expected, "{}: {id}", case.name);
        }
        let ready = standing["overall"]["state"] == "released";
        assert_eq!(told.code, i32::from(!ready), "{}", case.name);
        asked += 1;
    }
    assert_eq!(asked + refused, 429, "the number of cases changed: count them and pin the new number");
    assert!(asked > 150, "{asked}");
}

#[test]
fn a_ready_slab_ends_with_0_and_says_so() {
    let case = Case::named("everything-in-order");
    let site = case.site();
    site.log_lines(case.diary()).ends(0);
    let standing = site.run(&["ready", "--at", case.head("at"), "--json"]).ends(0).json();
    assert_eq!(standing["overall"]["state"], "released");
    assert!(standing["overall"]["next_action"].is_null());
    // The day before, the site was not set up yet.
    let earlier = site.run(&["ready", "--at", "2026-05-02", "--json"]).ends(1).json();
    assert_ne!(state(&earlier, "site"), "released");
}

#[test]
fn what_was_noted_later_counts_only_when_asked_by_what_happened() {
    let site = Site::with_slab();
    // Looked at on 20 March, written down now.
    site.run(&["log", "color-look", "evenness=even", "--happened", "2026-03-20 09:00"]).ends(0);
    let age = |more: &[&str]| {
        let args = [&["ready", "--at", "2026-03-21T12:00", "--json"], more].concat();
        let standing = site.run(&args).ends(1).json();
        (standing["known"].as_str().unwrap().to_owned(), state(&standing, "age").to_owned())
    };
    let word = |a: &str, b: &str| (a.to_owned(), b.to_owned());
    assert_eq!(age(&[]), word("noted", "held"));
    assert_eq!(age(&["--known", "noted"]), word("noted", "held"));
    assert_eq!(age(&["--known", "happened"]), word("happened", "released"));
    let listed = |known: &str| {
        let args = ["diary", "--at", "2026-03-21T12:00", "--known", known, "--kind", "color-look", "--json"];
        site.run(&args).ends(0).json_lines().len()
    };
    assert_eq!((listed("noted"), listed("happened")), (0, 1));
}

#[test]
fn a_past_moment_sees_only_what_had_happened() {
    let site = Site::with_slab();
    let age = |at: &str| {
        let standing = site.run(&["ready", "--at", at, "--json"]).json();
        state(&standing, "age").to_owned()
    };
    assert_eq!(age("2026-03-01"), "unproven", "not poured yet");
    assert_eq!(age("2026-03-02T06:59"), "unproven", "not poured yet");
    // Poured on 2 March: 28 days later is 30 March.
    assert_eq!(age("2026-03-29"), "held");
    assert_eq!(age("2026-03-30T00:01"), "released");
    // The end of that day by the slab's own clock, which is 04:59 UTC of the next day.
    let standing = site.run(&["ready", "--at", "2026-03-30", "--json"]).json();
    assert!(standing["at"].as_str().unwrap().starts_with("2026-03-31T04:59"), "{}", standing["at"]);
}

#[test]
fn a_correction_counts_from_when_it_was_noted() {
    let site = Site::with_slab();
    site.log_lines(
        r##"
{"id":"#look","happened":"2026-03-12 09:00","body":{"kind":"color_look","evenness":"even"}}
{"replaces":"#look","happened":"2026-03-12 09:00","noted":"2026-03-14 09:00","body":{"kind":"color_look","evenness":"patchy"}}
"##,
    )
    .ends(0);
    let age = |at: &str, known: &str| {
        let standing = site.run(&["ready", "--at", at, "--known", known, "--json"]).json();
        state(&standing, "age").to_owned()
    };
    assert_eq!(age("2026-03-13", "noted"), "released");
    assert_eq!(age("2026-03-15", "noted"), "held");
    assert_eq!(age("2026-03-13", "happened"), "held");
}

#[test]
fn the_slab_is_found_by_name_start_of_name_id_or_alone() {
    let site = Site::with_slab();
    let id = site.run(&["list", "--json"]).json()[0]["id"].as_str().unwrap().to_owned();
    let ask = |args: &[&str]| site.run(&[&["ready", "--at", "2026-04-02", "--json"], args].concat()).ends(1).out;
    let alone = ask(&[]);
    for args in [&["Creek Road shop"][..], &["creek"], &[&id], &["--slab", "CREEK ROAD"]] {
        assert_eq!(ask(args), alone, "{args:?}");
    }
}

#[test]
fn text_and_json_say_the_same_sentence_in_both_languages() {
    let site = Site::with_slab();
    for lang in ["en", "es"] {
        let ask = |more: &[&str]| {
            let args = [&["ready", "--at", "2026-04-02", "--lang", lang], more].concat();
            site.run(&args).ends(1)
        };
        let standing = ask(&["--json"]).json();
        let sentence = standing["overall"]["sentence"].as_str().unwrap().to_owned();
        // The text is wrapped.
        let text = ask(&[]).out.split_whitespace().collect::<Vec<_>>().join(" ");
        assert!(text.contains(&sentence), "{sentence}: {text}");
    }
}

#[test]
fn the_units_of_the_answer_are_chosen() {
    let site = Site::with_slab();
    let order = |units: &str| site.run(&["order", "--units", units]).ends(0).out;
    assert!(order("imperial").contains("ft²") && !order("imperial").contains("m²"));
    assert!(order("metric").contains("m²") && !order("metric").contains("ft²"));
    assert!(BASE.contains("ft"), "the diary itself keeps what was typed");
}
