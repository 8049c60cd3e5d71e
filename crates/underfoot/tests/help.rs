//! Help, completions and the ends of a pipe.

#![allow(clippy::unwrap_used, reason = "a test may stop")]

mod common;

use common::Site;

/// The commands that a help lists, without `help` itself.
fn listed(help: &str) -> Vec<String> {
    let Some(list) = help.split("Commands:").nth(1) else { return Vec::new() };
    let list = list.split("\n\n").next().unwrap_or_default();
    let names = list.lines().filter_map(|line| line.split_whitespace().next());
    names.filter(|name| *name != "help").map(str::to_owned).collect()
}

/// The help of a command and of the commands under it has an example that begins as it is typed.
fn assert_examples(site: &Site, path: &[&str]) {
    let help = site.run(&[path, &["--help"]].concat()).ends(0).out;
    let typed = format!("underfoot {}", path.join(" "));
    let example = help.split("Example").nth(1).unwrap_or_else(|| panic!("{typed} has no example"));
    assert!(example.contains(&typed), "{typed}: {example}");
    for command in listed(&help) {
        assert_examples(site, &[path, &[command.as_str()]].concat());
    }
}

#[test]
fn every_command_has_an_example_in_its_help() {
    let site = Site::empty();
    let commands = listed(&site.run(&["--help"]).ends(0).out);
    for known in ["demo", "new", "list", "log", "fix", "diary", "ready", "order", "papers", "completions"] {
        assert!(commands.iter().any(|c| c == known), "{known}: {commands:?}");
    }
    for command in &commands {
        assert_examples(&site, &[command]);
    }
}

#[test]
fn the_help_tells_the_exit_codes() {
    let help = Site::empty().run(&["--help"]).ends(0).out;
    for code in ["0 fine", "1 answered", "2 bad use", "3 bad data"] {
        assert!(help.contains(code), "{code}");
    }
}

#[test]
fn every_shell_gets_completions() {
    let site = Site::empty();
    for shell in ["bash", "elvish", "fish", "powershell", "zsh"] {
        let script = site.run(&["completions", shell]).ends(0).out;
        assert!(script.contains("ready") && script.contains("happened"), "{shell}");
    }
    assert!(site.run(&["completions", "klingon"]).ends(2).err.contains("bash"));
}

#[test]
fn nothing_typed_is_bad_use_and_shows_the_help() {
    let ran = Site::empty().run(&[]).ends(2);
    assert!(ran.err.contains("ready"), "{}", ran.err);
}

/// `underfoot ready | head` is no fault of anyone.
#[test]
fn a_reader_that_stops_early_is_no_panic() {
    let site = Site::with_slab();
    for args in [&["ready", "--json"][..], &["order", "--json"], &["ready"], &["diary"], &["list"]] {
        let err = site.run_and_stop_reading(args);
        assert!(!err.contains("panicked"), "{args:?}: {err}");
    }
}
