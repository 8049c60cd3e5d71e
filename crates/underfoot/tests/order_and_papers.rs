//! What to buy, and the papers, from the command line.

#![allow(clippy::unwrap_used, reason = "a test may stop")]

mod common;

use common::Site;
use serde_json::Value;

fn figures(need: &Value) -> Vec<(String, f64)> {
    need.as_object().unwrap().iter().map(|(k, v)| (k.clone(), v.as_f64().unwrap())).collect()
}

#[test]
fn every_line_of_the_order_has_a_spread_a_unit_and_a_grade() {
    let site = Site::with_slab();
    site.run(&["log", "sealer-chosen", "sealer=acrylic-water", "--happened", "2026-03-01"]).ends(0);
    let order = site.run(&["order", "--json"]).ends(0).json();
    let zones: Vec<&str> =
        order["coverage"].as_array().unwrap().iter().map(|zone| zone["zone"].as_str().unwrap()).collect();
    assert_eq!(zones, ["shop", "office"]);
    let lines = order["lines"].as_array().unwrap();
    let items: Vec<&str> = lines.iter().map(|line| line["item"].as_str().unwrap()).collect();
    for item in ["stain", "mixing-water", "bicarbonate", "rinse-water", "waste-water", "drums", "sealer"] {
        assert!(items.contains(&item), "{item} is missing: {items:?}");
    }
    for line in lines {
        let need = figures(&line["need"]);
        assert_eq!(need.len(), 3, "{line}");
        for (name, _) in &need {
            let unit = name.rsplit('_').next().unwrap();
            assert!(["l", "kg", "m2", "pieces"].contains(&unit), "{name}");
        }
        assert!(need[0].1 <= need[1].1 && need[1].1 <= need[2].1, "{line}");
        assert!(!line["grade"].as_str().unwrap().is_empty(), "{line}");
        assert!(!line["name"].as_str().unwrap().is_empty(), "{line}");
    }
}

#[test]
fn text_and_spanish_name_the_same_items() {
    let site = Site::with_slab();
    for (lang, stain, drums) in [("en", "Reactive stain", "Waste drums"), ("es", "Tinte reactivo", "Tambos")] {
        let told = site.run(&["order", "--lang", lang]).ends(0).out;
        assert!(told.contains(stain) && told.contains(drums), "{told}");
    }
}

#[test]
fn an_order_of_a_past_moment_does_not_know_the_panel_yet() {
    let site = Site::with_slab();
    site.log_lines(
        r#"
{"happened":"2026-03-02 13:00","body":{"kind":"panel_made","panel":"P1","mix":"4021","finish":"light-steel-trowel","side":"18 in"}}
{"happened":"2026-03-20 09:00","body":{"kind":"panel_stained","panel":"P1","mix":[{"stain":"umber","parts":1}],"water_parts":1,"coats":2,"used":"2 fl oz"}}
{"happened":"2026-03-23 17:00","body":{"kind":"choice_approved","panel":"P1","by":"the owner"}}
"#,
    )
    .ends(0);
    let recipe = |at: &str| site.run(&["order", "--at", at, "--json"]).ends(0).json()["recipe"]["panel"].clone();
    assert_eq!(recipe("2026-03-22"), Value::Null);
    assert_eq!(recipe("2026-03-24"), "P1");
}

#[test]
fn without_a_plan_nothing_is_ordered() {
    let site = Site::empty();
    site.run(&["new", "bare"]).ends(0);
    let refused = site.run(&["order"]).ends(3);
    assert!(
        refused.err.contains("plan is missing") && refused.err.contains("accepted: a plan entry"),
        "{}",
        refused.err
    );
    assert_eq!(refused.out, "");
}

#[test]
fn papers_are_written_where_asked_in_both_languages_and_sizes() {
    let site = Site::with_slab();
    let mut seen = Vec::new();
    for (kind, lang, size) in [
        ("pour-sheet", "en", "letter"),
        ("pour-sheet", "es", "a4"),
        ("site-notice", "en", "a4"),
        ("site-notice", "en", "letter"),
    ] {
        let file = site.path(&format!("{kind}-{lang}-{size}.pdf"));
        let out = file.to_str().unwrap();
        let args = ["papers", "--kind", kind, "--lang", lang, "--size", size, "--out", out, "--at", "2026-03-03"];
        let told = site.run(&[&args[..], &["--json"]].concat()).ends(0).json();
        let bytes = std::fs::read(&file).unwrap();
        assert!(bytes.starts_with(b"%PDF-"), "{kind} {lang} {size}");
        assert_eq!(told["bytes"], bytes.len());
        assert_eq!(told["file"], out);
        seen.push(bytes);
    }
    assert_ne!(seen[2], seen[3], "the sheet size makes a difference");
}

#[test]
fn a_paper_without_a_name_is_named_after_the_slab() {
    let site = Site::with_slab();
    let told = site.run(&["papers", "creek", "--kind", "site-notice"]).ends(0).out;
    assert!(told.contains("creek-road-shop-site-notice.pdf"), "{told}");
    assert!(std::fs::read(site.path("creek-road-shop-site-notice.pdf")).unwrap().starts_with(b"%PDF-"));
    // Nothing of the writing is left beside it.
    let left: Vec<String> = std::fs::read_dir(site.path(""))
        .unwrap()
        .map(|entry| entry.unwrap().file_name().into_string().unwrap())
        .filter(|name| name.ends_with(".part"))
        .collect();
    assert!(left.is_empty(), "{left:?}");
}

/// The sheet is made before the pour, so it says what it still has to be told.
#[test]
fn a_pour_sheet_before_the_pour_asks_for_what_is_missing() {
    let site = Site::empty();
    site.run(&["new", "bid"]).ends(0);
    let sheet = |more: &[&str]| site.run(&[&["papers", "--kind", "pour-sheet", "--out", "sheet.pdf"], more].concat());
    let refused = sheet(&[]).ends(3).err;
    assert!(refused.contains("thickness") && refused.contains("accepted: a thickness such as 4 in"), "{refused}");
    let refused = sheet(&["--thickness", "4 in"]).ends(3).err;
    assert!(refused.contains("area") && refused.contains("accepted: a plan entry"), "{refused}");
    site.run(&["log", "plan", r#"outline={"area":"1200 ft2"}"#]).ends(0);
    let refused = sheet(&["--thickness", "4 in"]).ends(3).err;
    assert!(refused.contains("finish of zone whole") && refused.contains("light-steel-trowel"), "{refused}");
    assert!(!site.path("sheet.pdf").exists(), "a refused paper leaves no file");
    sheet(&["--thickness", "4 in", "--finish", "whole=light-steel-trowel", "--pour-day", "2026-06-02"]).ends(0);
    assert!(site.path("sheet.pdf").exists());
}

#[test]
fn a_wish_that_cannot_be_read_is_refused_by_name() {
    let site = Site::with_slab();
    for (args, code, parts) in [
        (["--thickness", "4 furlongs"], 2, ["--thickness", "4 furlongs", "accepted"]),
        (["--pour-day", "soon"], 2, ["--pour-day", "soon", "accepted"]),
        (["--finish", "broom"], 2, ["--finish", "broom", "accepted"]),
        (["--finish", "shop=glossy"], 3, ["finish of zone shop", "glossy", "accepted"]),
        (["--waste", "lots"], 2, ["--waste", "lots", "accepted"]),
    ] {
        let refused =
            site.run(&[&["papers", "--kind", "pour-sheet", "--out", "no.pdf"], &args[..]].concat()).ends(code);
        for part in parts {
            assert!(refused.err.contains(part), "{args:?}: {part}: {}", refused.err);
        }
        assert!(!site.path("no.pdf").exists());
    }
}

#[test]
fn a_paper_that_cannot_be_written_is_said() {
    let site = Site::with_slab();
    let refused = site.run(&["papers", "--kind", "site-notice", "--out", "no/such/folder/a.pdf"]).ends(3);
    assert!(refused.err.contains("no/such/folder/a.pdf") && refused.err.contains("accepted"), "{}", refused.err);
}

/// That the code is read back is a test of crate `papers`.
#[test]
fn a_site_notice_prints_a_link_and_nothing_else_does() {
    let site = Site::with_slab();
    let link = |address: &str| ["--link".to_owned(), address.to_owned()];
    let run = |kind: &str, address: &str, out: &str| {
        let link = link(address);
        site.run(&["papers", "--kind", kind, "--out", out, &link[0], &link[1], "--at", "2026-03-03"])
    };
    run("site-notice", "https://slabs.example.org/s/4f2a", "linked.pdf").ends(0);
    site.run(&["papers", "--kind", "site-notice", "--out", "plain.pdf", "--at", "2026-03-03"]).ends(0);
    let bytes = |name: &str| std::fs::read(site.path(name)).unwrap();
    assert_ne!(bytes("linked.pdf"), bytes("plain.pdf"));
    let odd = run("site-notice", "the office", "odd.pdf").ends(3).err;
    assert!(odd.contains("link: \"the office\"; accepted: a web address"), "{odd}");
    let sheet = run("pour-sheet", "https://slabs.example.org/s/4f2a", "sheet.pdf").ends(2).err;
    assert!(sheet.contains("--link") && sheet.contains("accepted: --kind site-notice"), "{sheet}");
}
