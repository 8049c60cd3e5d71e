//! Which choice of the client is in force: the standing and the order go by the same one.

#![allow(clippy::unwrap_used, reason = "a test may stop")]

use jiff::tz::TimeZone;
use slab_answers::order::{Item, OrderNote, order};
use slab_answers::panels::choice_in_force;
use slab_answers::standing::{Code, HoldPointId, judge};
use slab_diary::{Context, Diary, Knowledge, Slab, SlabId, fold, read_lines};
use trade_facts::Trade;

/// A shop in light trowel and an office in broom finish, one pour of mix 4021.
const FLOOR: &str = r#"
{"happened":"2026-03-02 06:10","body":{"kind":"plan","outline":{"rectangles":[{"corner":["0 ft","0 ft"],"width":"40 ft","depth":"30 ft"}]},"zones":[{"name":"shop","shape":{"rectangles":[{"corner":["0 ft","0 ft"],"width":"25 ft","depth":"30 ft"}]}},{"name":"office"}]}}
{"happened":"2026-03-02 07:00","body":{"kind":"pour","mix":"4021","thickness":"4 in"}}
{"happened":"2026-03-02 12:00","place":{"zone":"shop"},"body":{"kind":"finish","finish":"light-steel-trowel"}}
{"happened":"2026-03-02 12:10","place":{"zone":"office"},"body":{"kind":"finish","finish":"broom"}}
"#;

/// A panel of a mix and a finish, stained once with a stain on a day of March.
fn panel(name: &str, mix: &str, finish: &str, stain: &str, day: u32) -> String {
    format!(
        r#"{{"happened":"2026-03-02 13:00","body":{{"kind":"panel_made","panel":"{name}","mix":"{mix}","finish":"{finish}","side":"18 in"}}}}
{{"happened":"2026-03-{day:02} 09:00","body":{{"kind":"panel_stained","panel":"{name}","mix":[{{"stain":"{stain}","parts":1}}],"water_parts":1,"coats":2,"used":"2 fl oz"}}}}
"#
    )
}

fn approved(name: &str, day: u32) -> String {
    format!(
        "{{\"happened\":\"2026-03-{day:02} 17:00\",\"body\":{{\"kind\":\"choice_approved\",\"panel\":\"{name}\",\"by\":\"the owner\",\"state\":\"sealed\"}}}}\n"
    )
}

fn withdrawn(name: &str, day: u32) -> String {
    format!(
        "{{\"happened\":\"2026-03-{day:02} 18:00\",\"body\":{{\"kind\":\"choice_withdrawn\",\"panel\":\"{name}\",\"by\":\"the owner\",\"reason\":\"too dark\"}}}}\n"
    )
}

fn with<T>(lines: &str, of: impl FnOnce(&Slab<'_>) -> T) -> T {
    let context = Context {
        slab: SlabId::of_name("choice"),
        zone: TimeZone::UTC,
        author: "test".to_owned(),
        device: "test".to_owned(),
        noted: None,
    };
    let diary: Diary = read_lines(&format!("{FLOOR}{lines}"), &context).unwrap().into_iter().collect();
    of(&fold(&diary, Knowledge::noted_by("2026-05-01T00:00:00Z".parse().unwrap())))
}

/// The panel whose recipe is ordered for each zone.
fn ordered(lines: &str) -> Vec<(String, Option<String>)> {
    with(lines, |slab| {
        let order = order(slab, Trade::built_in()).unwrap();
        let recipes = order.recipes.iter();
        let mut zones: Vec<_> =
            recipes.flat_map(|r| r.zones.iter().map(|zone| (zone.clone(), r.panel.clone()))).collect();
        zones.sort();
        zones
    })
}

fn pair(office: Option<&str>, shop: Option<&str>) -> Vec<(String, Option<String>)> {
    vec![("office".to_owned(), office.map(str::to_owned)), ("shop".to_owned(), shop.map(str::to_owned))]
}

#[test]
fn each_finish_has_its_own_choice() {
    let lines = panel("P1", "4021", "light-steel-trowel", "umber", 20)
        + &panel("P2", "4021", "broom", "slate", 20)
        + &approved("P1", 23)
        + &approved("P2", 24);
    assert_eq!(ordered(&lines), pair(Some("P2"), Some("P1")));
    // Both stains are bought, each once.
    let stains = with(&lines, |slab| {
        let order = order(slab, Trade::built_in()).unwrap();
        let stains = order.lines.into_iter().filter(|line| line.item == Item::Stain);
        stains.map(|line| (line.which, line.notes[0])).collect::<Vec<_>>()
    });
    let chosen = |stain: &str| (Some(stain.to_owned()), OrderNote::RecipeFromChoice);
    assert_eq!(stains, [chosen("umber"), chosen("slate")], "the shop is larger");
}

#[test]
fn a_later_choice_of_other_concrete_or_finish_displaces_none() {
    let right = panel("P1", "4021", "light-steel-trowel", "umber", 20) + &approved("P1", 23);
    for (mix, finish) in [("777", "light-steel-trowel"), ("4021", "float")] {
        let lines = right.clone() + &panel("P9", mix, finish, "black", 20) + &approved("P9", 28);
        assert_eq!(ordered(&lines), pair(None, Some("P1")), "{mix} {finish}");
    }
    // Of two that fit the later one is in force.
    let lines = right + &panel("p2 ", "4021", "light-steel-trowel", "slate", 20) + &approved("P2", 25);
    assert_eq!(ordered(&lines)[1].1.as_deref(), Some("P2"));
}

#[test]
fn a_choice_that_was_taken_back_brings_no_older_one_to_life() {
    let both = panel("P1", "4021", "light-steel-trowel", "umber", 20)
        + &panel("P2", "4021", "light-steel-trowel", "slate", 20)
        + &approved("P1", 22)
        + &approved("P2", 24);
    let taken_back = both.clone() + &withdrawn("P2", 26);
    assert_eq!(ordered(&taken_back), pair(None, None));
    with(&taken_back, |slab| {
        let judged = judge(slab, Trade::built_in());
        let told = judged.hold_point(HoldPointId::Panel).why.iter().any(|reason| reason.code == Code::ChoiceWithdrawn);
        assert!(told);
    });
    // One that was displaced long ago may be taken back without harm, and a new approval counts.
    assert_eq!(ordered(&(both + &withdrawn("P1", 26))), pair(None, Some("P2")));
    assert_eq!(ordered(&(taken_back + &approved("P1", 28))), pair(None, Some("P1")));
}

#[test]
fn standing_and_order_name_the_same_panel() {
    let lines = panel("P1", "4021", "light-steel-trowel", "umber", 20) + &approved("P1", 23);
    with(&lines, |slab| {
        for zone in slab.zones() {
            let choice = choice_in_force(slab, zone).unwrap();
            assert_eq!(choice.stands, zone.name == "shop");
        }
    });
}
