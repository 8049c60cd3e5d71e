//! Bad input, one entry at a time: each with its exit code, one message that names the field, the value and
//! what would be accepted, and nothing written.

#![allow(clippy::unwrap_used, reason = "a test may stop")]

mod common;

use common::{Site, assert_refused};

/// Tries one command line after the other on a slab with a drawn plan and a pour.
fn all_refused(cases: &[(&[&str], i32, &[&str])]) {
    let site = Site::with_slab();
    let before = (site.entries(), site.photographs());
    for (args, code, says) in cases {
        assert_refused(&site, site.run(args), before, *code, says);
    }
}

#[test]
fn quantities() {
    all_refused(&[
        (&["log", "pour", "thickness=4 furlongs"], 3, &["pour.thickness", "4 furlongs", "accepted: 4 in"]),
        (&["log", "pour", "thickness=-4 in"], 3, &["pour.thickness", "-4 in", "below zero", "accepted"]),
        (&["log", "pour", "thickness=4"], 3, &["pour.thickness", "\"4\"", "no unit", "accepted"]),
        (&["log", "pour", "thickness=NaN in"], 3, &["pour.thickness", "NaN in", "accepted"]),
        (&["log", "pour", "water_cement=1.4"], 3, &["pour.water_cement", "1.4", "between 0 and 1", "accepted: 0.48"]),
        (&["log", "air-reading", "humidity=120 %"], 3, &["air_reading.humidity", "120 %", "accepted: 45 %"]),
        (&["log", "slab-humidity", "humidity=120 %"], 3, &["slab_humidity.humidity", "120 %", "accepted: 82 %"]),
        (&["log", "surface-ph", "ph=15"], 3, &["surface_ph.ph", "15", "accepted"]),
        (&["log", "temperature", "slab=-500 °F"], 3, &["temperature.slab", "-500 °F", "accepted"]),
        (&["log", "water-drop", "soaked_in=a while"], 3, &["water_drop.soaked_in", "a while", "accepted: 45 s"]),
        (&["log", "note", "text=x", "--point", "here"], 2, &["--point", "here", "accepted: X,Y"]),
    ]);
}

/// What a person cannot have meant, though each number can be read.
#[test]
fn numbers_that_cannot_be() {
    all_refused(&[
        (
            &["log", "slab-humidity", "humidity=80 %", "depth=5 in"],
            3,
            &["slab_humidity.depth", "5 in", "accepted: up to"],
        ),
        (&["log", "coat-laid", "coat=-1"], 3, &["coat_laid.coat", "-1"]),
    ]);
}

#[test]
fn a_sealer_of_no_coats_is_refused() {
    all_refused(&[(
        &["log", "sealer-chosen", "sealer=acrylic-water", "coats=0"],
        3,
        &["sealer_chosen.coats", "0", "accepted"],
    )]);
}

#[test]
fn a_dish_over_no_area_or_no_time_is_refused() {
    all_refused(&[
        (
            &["log", "emission-dish", "gain=2 g", "area=0 ft2", "exposed=60 h"],
            3,
            &["emission_dish.area", "0 ft2", "accepted"],
        ),
        (
            &["log", "emission-dish", "gain=2 g", "area=0.5 ft2", "exposed=0 h"],
            3,
            &["emission_dish.exposed", "0 h", "accepted"],
        ),
    ]);
}

/// A person may lay their own figure over the trade's, not one that turns the sums over.
#[test]
fn an_own_limit_that_cannot_be_is_refused() {
    all_refused(&[
        (
            &["log", "limit-set", "fact=drop-absorbed", "value=-5", "reason=x"],
            3,
            &["limit_set.value", "-5", "accepted"],
        ),
        (&["log", "limit-set", "fact=drum-fill", "value=0", "reason=x"], 3, &["limit_set.value", "0", "accepted"]),
        (
            &["log", "limit-set", "fact=panel-coverage-spread", "value=5", "reason=x"],
            3,
            &["limit_set.value", "5", "accepted"],
        ),
    ]);
}

#[test]
fn plans_that_do_not_hold_together() {
    let walk = r#"outline={"walk":{"start":["0 ft","0 ft"],"legs":[{"length":"40 ft"},{"turn":"left 90","length":"30 ft"},{"turn":"left 90","length":"36 ft"},{"turn":"left 90","length":"30 ft"}]}}"#;
    let negative = r#"outline={"rectangles":[{"corner":["0 ft","0 ft"],"width":"-40 ft","depth":"30 ft"}]}"#;
    let flat = r#"outline={"rectangles":[{"corner":["0 ft","0 ft"],"width":"0 ft","depth":"30 ft"}]}"#;
    all_refused(&[
        // 40 ft out and 36 ft back: open by 4 ft in 136 ft, 1 in 34.
        (&["log", "plan", walk], 3, &["outline.walk", "4' 0\"", "1:34", "accepted: legs that close within"]),
        (&["log", "plan", negative], 3, &["plan.outline.rectangles[0].width", "-40 ft", "accepted"]),
        (&["log", "plan", flat], 3, &["outline.rectangles[0].width", "0 ft", "accepted: a length above zero"]),
    ]);
}

#[test]
fn a_plan_that_does_not_hold_is_told_without_loose_ends() {
    let site = Site::with_slab();
    let refused = site.run(&[
        "log",
        "plan",
        r#"outline={"rectangles":[{"corner":["0 ft","0 ft"],"width":"0 ft","depth":"30 ft"}]}"#,
    ]);
    assert!(!refused.err.contains("plan.plan") && !refused.err.contains("see there"), "{}", refused.err);
}

#[test]
fn dates() {
    all_refused(&[
        (
            &["log", "water-drop", "soaked_in=45 s", "--happened", "2026-02-01"],
            3,
            &["water_drop.happened", "2026-02-01", "before the pour on 2026-03-02", "accepted: 2026-03-02 or later"],
        ),
        (
            &["log", "note", "text=x", "--happened", "2999-01-01 10:00"],
            3,
            &["note.happened", "2999-01-01", "future", "accepted: a moment up to now"],
        ),
        (&["log", "note", "text=x", "--happened", "2026-02-30"], 3, &["happened", "2026-02-30", "accepted"]),
        (&["log", "note", "text=x", "--happened", "some day"], 3, &["happened", "some day", "accepted: 2026-03-02"]),
        (&["ready", "--at", "yesterday"], 2, &["--at", "yesterday", "accepted: 2026-03-02"]),
    ]);
}

#[test]
fn the_last_day_of_the_calendar_is_refused_by_name() {
    all_refused(&[(&["ready", "--at", "9999-12-31"], 2, &["--at", "9999-12-31", "accepted"])]);
}

#[test]
fn names_that_are_not_there() {
    all_refused(&[
        (
            &["log", "water-drop", "soaked_in=45 s", "--zone", "shed"],
            3,
            &["water_drop.place.zone", "\"shed\"", "accepted: shop, office"],
        ),
        (
            &["log", "water-drop", "soaked_in=45 s", "--point", "60 ft,5 ft"],
            3,
            &["water_drop.place.point", "60 ft", "accepted: a point on the slab"],
        ),
        (&["log", "finish", "finish=glossy"], 3, &["finish.finish", "\"glossy\"", "accepted: broom, rock-salt"]),
        (&["log", "incident", "what=glitter"], 3, &["incident.what", "\"glitter\"", "accepted: red-chalk"]),
        (
            &["log", "sealer-chosen", "sealer=gloop"],
            3,
            &["sealer_chosen.sealer", "\"gloop\"", "accepted: acrylic-solvent"],
        ),
        (&["log", "limit-set", "fact=luck", "value=1", "reason=x"], 3, &["limit_set.fact", "\"luck\"", "accepted"]),
        (
            &["log", "panel-stained", "panel=P9", r#"mix=[{"stain":"umber","parts":1}]"#, "coats=2"],
            3,
            &["panel_stained.panel", "\"P9\"", "never made", "accepted"],
        ),
        (&["log", "choice-approved", "panel=P9", "by=me"], 3, &["choice_approved.panel", "\"P9\"", "accepted"]),
        (&["log", "scrape", "result=dust"], 3, &["scrape.result", "dust", "powder", "curl"]),
        (&["log", "frobnicate", "a=b"], 2, &["kind", "frobnicate", "accepted: job-opened, plan, pour"]),
        (&["diary", "--kind", "frobnicate"], 2, &["kind", "frobnicate", "accepted: job-opened, plan, pour"]),
    ]);
}

#[test]
fn entries_that_point_nowhere() {
    let nowhere = "of=0190a8f0-7c1e-7b3a-9c51-0d6e3b9a7f10";
    let site = Site::with_slab();
    let pour = format!("of={}", site.ids("pour")[0]);
    let before = (site.entries(), 0);
    for (of, says) in [(nowhere, "is not in this diary"), (pour.as_str(), "of the kind")] {
        let ran = site.run(&["log", "retest", of, "result=clear"]);
        assert_refused(&site, ran, before, 3, &["retest.of", says, "accepted"]);
    }
    let ran = site.run(&["fix", "0190a8f0", "text=x"]);
    assert_refused(&site, ran, before, 2, &["entry \"0190a8f0\"", "accepted: an id that `underfoot diary` lists"]);
}

#[test]
fn an_id_that_is_no_id_is_refused_with_what_would_be_one() {
    all_refused(&[(&["log", "retest", "of=the oil", "result=clear"], 3, &["retest.of", "the oil", "accepted"])]);
}

#[test]
fn entries_that_say_too_little_or_too_much() {
    all_refused(&[
        (&["log", "water-drop"], 3, &["water_drop.soaked_in", "missing", "accepted: at least one of"]),
        (
            &["log", "water-drop", "soaked_in=45 s", "still_stood_after=3 min"],
            3,
            &["water_drop.soaked_in", "both given", "accepted: one of them"],
        ),
        (&["log", "air-reading"], 3, &["air_reading.air", "missing", "accepted: at least one of"]),
        (&["log", "temperature"], 3, &["temperature.slab", "missing", "accepted: at least one of"]),
        (&["log", "note", "texty=x"], 3, &["note.texty", "no such field", "text"]),
        (&["log", "note", "text"], 2, &["\"text\"", "accepted: field=value"]),
        (&["log", "water-drop", "beads=maybe"], 3, &["water_drop.beads", "maybe", "accepted: yes, no"]),
    ]);
}

#[test]
fn a_missing_field_is_named_with_what_would_be_accepted() {
    all_refused(&[(&["log", "note"], 3, &["note.text", "missing", "accepted"])]);
}

#[test]
fn a_correction_is_checked_as_an_entry_is() {
    let site = Site::with_slab();
    let pour = site.ids("pour")[0].clone();
    let before = (site.entries(), 0);
    for (change, says) in [
        (&["thickness=4 furlongs"][..], &["pour.thickness", "4 furlongs", "accepted"][..]),
        (&["depth=4 in"], &["pour.depth", "no such field"]),
        (&["--happened", "2999-01-01"], &["pour.happened", "future", "accepted"]),
        (&["--zone", "shed"], &["pour.place.zone", "shed", "accepted: shop, office"]),
    ] {
        let ran = site.run(&[&["fix", &pour], change].concat());
        assert_refused(&site, ran, before, 3, says);
    }
    assert_refused(&site, site.run(&["fix", &pour]), before, 2, &["nothing to change", "accepted: field=value"]);
}
