//! Slabs that cannot be found or opened, and folders that cannot be used.

#![allow(clippy::unwrap_used, reason = "a test may stop")]

mod common;

use common::{Site, assert_refused};

#[test]
fn without_a_slab_every_command_says_how_to_get_one() {
    let site = Site::empty();
    for args in [
        &["ready"][..],
        &["order"],
        &["diary"],
        &["papers", "--kind", "site-notice"],
        &["log", "note", "text=x"],
        &["fix", "0190a8f0", "text=x"],
    ] {
        assert_refused(&site, site.run(args), (0, 0), 2, &["no slab yet", "accepted", "underfoot new"]);
    }
    assert!(site.run(&["list"]).ends(0).out.contains("underfoot new"));
    assert_eq!(site.run(&["list", "--json"]).ends(0).json(), serde_json::json!([]));
}

#[test]
fn a_name_that_is_not_there_is_said_with_those_that_are() {
    let site = Site::with_slab();
    let before = (site.entries(), 0);
    for args in [&["ready", "barn"][..], &["log", "--slab", "barn", "note", "text=x"], &["order", "--slab", "barn"]] {
        assert_refused(&site, site.run(args), before, 2, &["slab \"barn\"", "accepted: Creek Road shop"]);
    }
}

#[test]
fn a_name_that_could_be_several_is_not_guessed() {
    let site = Site::with_slab();
    site.run(&["new", "Creek Road barn"]).ends(0);
    let before = (site.entries(), 0);
    for args in [&["ready", "creek"][..], &["log", "--slab", "creek", "note", "text=x"]] {
        assert_refused(&site, site.run(args), before, 2, &["\"creek\"", "Creek Road shop", "Creek Road barn"]);
    }
    // None named at all.
    for args in [&["ready"][..], &["log", "note", "text=x"]] {
        assert_refused(&site, site.run(args), before, 2, &["slab is missing", "Creek Road shop", "Creek Road barn"]);
    }
    site.run(&["log", "--slab", "creek road b", "note", "text=x"]).ends(0);
    assert_eq!(site.entries(), before.0 + 1);
}

#[test]
fn names_and_zones_of_a_new_slab_are_checked() {
    let site = Site::with_slab();
    let before = (site.entries(), 0);
    for (args, code, says) in [
        (&["new", ""][..], 2, &["name", "empty", "accepted"][..]),
        (&["new", "   "], 2, &["name", "empty", "accepted"]),
        (&["new", "\t\n"], 2, &["name", "empty", "accepted"]),
        (
            &["new", "barn", "--time-zone", "Mars/Olympus"],
            2,
            &["time zone", "Mars/Olympus", "accepted: a name such as"],
        ),
        (&["new", "Creek Road shop"], 3, &["Creek Road shop", "taken", "accepted: another name"]),
        (&["new", "creek road SHOP"], 3, &["taken", "accepted: another name"]),
    ] {
        assert_refused(&site, site.run(args), before, code, says);
    }
    assert_eq!(site.run(&["list", "--json"]).json().as_array().unwrap().len(), 1);
}

#[test]
fn a_folder_that_cannot_be_made_is_named() {
    let site = Site::empty();
    let file = site.file("taken", "a file where a folder should be");
    for folder in [file.clone(), format!("{file}/data")] {
        let ran = site.run_on(&folder, &["new", "barn"]).ends(3);
        assert_eq!(ran.out, "");
        for part in [folder.as_str(), "accepted"] {
            assert!(ran.err.contains(part), "{part}: {}", ran.err);
        }
    }
    assert_eq!(std::fs::read_to_string(&file).unwrap(), "a file where a folder should be");
}

#[test]
fn a_database_that_is_none_is_refused_and_left_alone() {
    let site = Site::empty();
    std::fs::create_dir(site.path("data")).unwrap();
    let text = "this was never a database ".repeat(200);
    site.file("data/underfoot.sqlite", &text);
    for args in [&["list"][..], &["new", "barn"], &["demo", "--dir", "data"]] {
        let ran = site.run(args).ends(3);
        assert!(ran.err.contains("underfoot.sqlite") || ran.err.contains("data"), "{}", ran.err);
        assert!(ran.err.contains("accepted"), "{}", ran.err);
    }
    assert_eq!(std::fs::read_to_string(site.path("data/underfoot.sqlite")).unwrap(), text);
}
