//! What is written is read again, once, and stays readable when it was corrected.

#![allow(clippy::unwrap_used, reason = "a test may stop")]

mod common;

use common::{BASE, Site};

const DROPS: &str = r#"
{"happened":"2026-03-12 11:00","place":{"zone":"shop"},"body":{"kind":"water_drop","soaked_in":"45 s"}}
{"happened":"2026-03-13 11:00","place":{"zone":"shop"},"body":{"kind":"water_drop","soaked_in":"50 s"}}
"#;

#[test]
fn a_new_slab_is_listed_under_its_name() {
    let site = Site::empty();
    let opened = site.run(&["new", "  Creek Road shop ", "--site", "12 Creek Road", "--json"]).ends(0).json();
    assert_eq!(opened["name"], "Creek Road shop");
    let listed = site.run(&["list", "--json"]).ends(0).json();
    assert_eq!(listed[0]["id"], opened["id"]);
    assert_eq!(listed[0]["entries"], 1);
    assert!(site.run(&["list"]).ends(0).out.contains("Creek Road shop"));
    let job = &site.run(&["diary", "--json"]).ends(0).json_lines()[0];
    assert_eq!(job["body"]["kind"], "job_opened");
    assert_eq!(job["body"]["site"], "12 Creek Road");
    assert_eq!(job["author"], "the crew");
}

#[test]
fn the_options_of_new_are_in_the_job() {
    let site = Site::empty();
    site.run(&["new", "yard", "--exterior", "--existing", "--time-zone", "America/Denver", "--author", "Sam"]).ends(0);
    let job = &site.run(&["diary", "--json"]).json_lines()[0];
    let body = &job["body"];
    assert_eq!((&body["exposure"], &body["age"]), (&"exterior".into(), &"existing".into()));
    assert_eq!((&body["time_zone"], &job["author"]), (&"America/Denver".into(), &"Sam".into()));
}

#[test]
fn one_entry_is_logged_by_its_kind_and_fields() {
    let site = Site::with_slab();
    let before = site.entries();
    let args = ["log", "water-drop", "soaked_in=45 s", "--happened", "2026-03-12 11:00", "--point", "5 ft,6 ft"];
    let written = site.run(&[&args[..], &["--json"]].concat()).ends(0).json();
    assert_eq!((&written["added"], &written["already"]), (&1.into(), &0.into()));
    assert_eq!(site.entries(), before + 1);
    let drop = &site.run(&["diary", "--kind", "water-drop", "--json"]).ends(0).json_lines()[0];
    assert_eq!(drop["id"], written["ids"][0]);
    assert_eq!(drop["body"]["soaked_in"], "45 s");
    assert_eq!(drop["place"]["point"], serde_json::json!(["5 ft", "6 ft"]));
    // Central daylight saving time began on 8 March 2026.
    assert!(drop["happened"].as_str().unwrap().starts_with("2026-03-12T11:00:00-05:00"), "{drop}");
    let told = site.run(&["diary", "--kind", "water_drop"]).ends(0).out;
    assert!(told.contains("45 s") && told.contains(drop["id"].as_str().unwrap()), "{told}");
}

#[test]
fn numbers_yes_and_no_and_lists_can_be_typed_as_fields() {
    let site = Site::with_slab();
    for args in [
        &["water-drop", "beads=true", "--zone", "shop"][..],
        &["coat-laid", "coat=1", "used=3.5 gal", "dwell=6 h"],
        &["plan", r#"outline={"area":"1200 ft2"}"#],
        &["slab-humidity", "humidity=82 %", "depth=1.6 in", "equilibrated=24 h"],
    ] {
        site.run(&[&["log"], args].concat()).ends(0);
    }
    assert_eq!(site.run(&["diary", "--kind", "coat-laid", "--json"]).json_lines()[0]["body"]["coat"], 1);
}

#[test]
fn a_file_read_twice_adds_nothing() {
    let site = Site::with_slab();
    let before = site.entries();
    let file = site.file("drops.jsonl", DROPS);
    let first = site.run(&["log", "--from", &file, "--json"]).ends(0).json();
    assert_eq!((&first["added"], &first["already"]), (&2.into(), &0.into()));
    let second = site.run(&["log", "--from", &file, "--json"]).ends(0).json();
    assert_eq!((&second["added"], &second["already"]), (&0.into(), &2.into()));
    assert_eq!(second["ids"], first["ids"]);
    assert_eq!(site.entries(), before + 2);
}

#[test]
fn standard_input_is_read_as_a_file_is() {
    let site = Site::with_slab();
    let before = site.entries();
    let typed = site.run_with_input(&["log", "--slab", "creek", "--from", "-", "--json"], DROPS).ends(0).json();
    assert_eq!(typed["added"], 2);
    let file = site.file("drops.jsonl", DROPS);
    assert_eq!(site.run(&["log", "--from", &file, "--json"]).ends(0).json()["already"], 2);
    assert_eq!(site.entries(), before + 2);
}

#[test]
fn windows_line_ends_and_a_byte_order_mark_change_nothing() {
    let site = Site::with_slab();
    site.log_lines(DROPS).ends(0);
    let before = site.entries();
    let other = format!("\u{feff}{}", DROPS.trim_start().replace('\n', "\r\n"));
    let again = site.run(&["log", "--from", &site.file("w.jsonl", other), "--json"]).ends(0).json();
    assert_eq!((&again["added"], site.entries()), (&0.into(), before));
}

#[test]
fn a_corrected_entry_stays_readable() {
    let site = Site::with_slab();
    site.log_lines(DROPS).ends(0);
    let old = site.ids("water-drop")[0].clone();
    let fixed = site.run(&["fix", &old, "soaked_in=90 s", "--json"]).ends(0).json();
    let new = fixed["ids"][0].as_str().unwrap();
    let stands = site.run(&["diary", "--kind", "water-drop", "--json"]).ends(0).json_lines();
    assert_eq!(stands.len(), 2);
    assert!(stands.iter().all(|entry| entry["id"] != old.as_str()));
    let all = site.run(&["diary", "--kind", "water-drop", "--all", "--json"]).ends(0).json_lines();
    assert_eq!(all.len(), 3);
    let by_id = |id: &str| all.iter().find(|entry| entry["id"] == id).unwrap();
    assert_eq!(by_id(&old)["body"]["soaked_in"], "45 s");
    assert_eq!(by_id(&old)["corrected_by"], new);
    assert_eq!(by_id(new)["body"]["soaked_in"], "90 s");
    assert_eq!(by_id(new)["replaces"], old.as_str());
    assert_eq!(by_id(new)["happened"], by_id(&old)["happened"], "only what was named changed");
    assert_eq!(by_id(new)["place"], by_id(&old)["place"]);
    let told = site.run(&["diary", "--kind", "water-drop", "--all"]).ends(0).out;
    assert_eq!(told.matches("(corrected)").count(), 1, "{told}");
}

#[test]
fn the_end_of_an_id_is_enough_to_fix_it() {
    let site = Site::with_slab();
    site.log_lines(DROPS).ends(0);
    let old = site.ids("water-drop")[1].clone();
    site.run(&["fix", &old[old.len() - 8..], "--happened", "2026-03-14 09:00", "--zone", "office"]).ends(0);
    let stands = site.run(&["diary", "--kind", "water-drop", "--json"]).json_lines();
    let moved = stands.iter().find(|entry| entry["replaces"] == old.as_str()).unwrap();
    assert_eq!(moved["place"]["zone"], "office");
    assert!(moved["happened"].as_str().unwrap().starts_with("2026-03-14T09:00"));
}

/// Lines may name each other by labels; on the command line too.
#[test]
fn a_label_of_a_file_can_be_named_when_logging_one_entry() {
    let site = Site::with_slab();
    site.log_lines(
        r##"{"id":"#oil","happened":"2026-03-12 12:10","place":{"zone":"shop"},"body":{"kind":"incident","what":"cutting-oil"}}"##,
    )
    .ends(0);
    let incident = site.ids("incident")[0].clone();
    site.run(&["log", "retest", &format!("of={incident}"), "result=clear", "--happened", "2026-03-13"]).ends(0);
    site.run(&["log", "retest", "of=#oil", "result=clear", "--happened", "2026-03-14"]).ends(0);
    let retests = site.run(&["diary", "--kind", "retest", "--json"]).json_lines();
    assert!(retests.iter().all(|entry| entry["body"]["of"] == incident.as_str()), "{retests:?}");
}

/// A slab that was read from lines is the same slab elsewhere, entry for entry.
#[test]
fn a_whole_diary_can_be_carried_to_another_folder() {
    let site = Site::with_slab();
    site.log_lines(DROPS).ends(0);
    let lines: Vec<String> = BASE.lines().chain(DROPS.lines()).map(str::to_owned).collect();
    let other = Site::empty();
    other.run(&["new", "Creek Road shop", "--time-zone", "America/Chicago"]).ends(0);
    // Another order of the lines, since the fold ignores it.
    let turned: Vec<String> = lines.into_iter().rev().collect();
    other.log_lines(&turned.join("\n")).ends(0);
    let bodies = |site: &Site| -> Vec<serde_json::Value> {
        let told = site.run(&["diary", "--json"]).json_lines();
        told.iter().filter(|e| e["body"]["kind"] != "job_opened").map(|e| e["body"].clone()).collect()
    };
    assert_eq!(bodies(&site), bodies(&other));
}

const WHOLE: &str = r##"
{"happened":"2026-03-02 06:00","body":{"kind":"job_opened","name":"Mill Lane","time_zone":"America/Chicago"}}
{"happened":"2026-03-02 07:00","body":{"kind":"pour","thickness":"4 in"}}
{"id":"#oil","happened":"2026-03-12 12:10","body":{"kind":"incident","what":"cutting-oil"}}
{"happened":"2026-03-13 09:00","body":{"kind":"cleaning","method":"degreaser","of":"#oil"}}
"##;

#[test]
fn a_whole_diary_opens_its_own_slab() {
    let site = Site::empty();
    let read = |site: &Site| {
        let file = site.file("whole.jsonl", WHOLE);
        site.run(&["log", "--slab", "Mill Lane", "--from", &file, "--json"]).ends(0).json()
    };
    assert_eq!(read(&site)["added"], 4);
    assert_eq!(read(&site)["added"], 0, "the second time it is found");
    assert_eq!(site.run(&["list", "--json"]).json()[0]["name"], "Mill Lane");
    let pour = &site.run(&["diary", "--kind", "pour", "--json"]).json_lines()[0];
    assert!(pour["happened"].as_str().unwrap().starts_with("2026-03-02T07:00:00-06:00"), "{pour}");
    // Read elsewhere it is the same diary, so that the two can be merged.
    let other = Site::empty();
    read(&other);
    let told = |site: &Site| site.run(&["diary", "--json"]).ends(0).out;
    assert_eq!(told(&site), told(&other));
}

#[test]
fn a_whole_diary_that_cannot_be_read_opens_nothing() {
    let site = Site::with_slab();
    let before = site.entries();
    for (word, spoiled) in [("4 in", "4 furlongs"), ("cutting-oil", "glitter"), ("2026-03-12", "2026-02-12")] {
        let file = site.file("whole.jsonl", WHOLE.replace(word, spoiled));
        let refused = site.run(&["log", "--slab", "Mill Lane", "--from", &file]).ends(3);
        assert!(refused.err.contains("nothing was written") && refused.err.contains(spoiled), "{}", refused.err);
        assert_eq!(site.run(&["list", "--json"]).json().as_array().unwrap().len(), 1);
        assert_eq!(site.entries(), before);
    }
}

/// A name that fits two slabs is not a third one, and a blank name is none.
#[test]
fn a_whole_diary_opens_no_slab_under_a_doubtful_name() {
    let site = Site::with_slab();
    site.run(&["new", "Creek Road barn"]).ends(0);
    let before = site.entries();
    let file = site.file("whole.jsonl", WHOLE);
    let open = |name: &str| {
        let ran = site.run(&["log", "--slab", name, "--from", &file]);
        assert_eq!(site.entries(), before, "\"{name}\": {}", ran.out);
        ran
    };
    for blank in ["", "   "] {
        let ran = open(blank).ends(3);
        assert!(ran.err.contains("empty") && ran.err.contains("accepted"), "{}", ran.err);
    }
    let ran = open("creek").ends(2);
    assert!(ran.err.contains("Creek Road shop") && ran.err.contains("Creek Road barn"), "{}", ran.err);
}
