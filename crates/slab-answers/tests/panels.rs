//! Panels and recipe sets out of diaries: what belongs together, what is left out and why. The colors
//! are made by the two-flux law itself with strengths of our own, so the right answer is known.

#![allow(clippy::unwrap_used, reason = "a test may stop")]

use jiff::tz::TimeZone;
use science::chance::Seed;
use science::color::recipe::{NoInterval, PracticalGrid, RecipeRefusal, Wish};
use science::color::{LinearRgb, ciede2000};
use slab_answers::panels::{BareFrom, LeftOut, panels, recipe_books, stands_for};
use slab_diary::body::PanelState;
use slab_diary::{Context, Diary, Knowledge, SlabId, read_lines};
use slab_diary::{Slab, fold};

const BARE: [f64; 3] = [0.25, 0.23, 0.20];
const UMBER: [f64; 3] = [1.0, 2.5, 6.0];

fn diary(lines: &[String]) -> Diary {
    let context = Context {
        slab: SlabId::of_name("panels"),
        zone: TimeZone::UTC,
        author: "test".to_owned(),
        device: "test".to_owned(),
        noted: None,
    };
    let mut diary = Diary::new();
    for entry in read_lines(&lines.join("\n"), &context).unwrap() {
        diary.add(entry).unwrap();
    }
    diary
}

fn as_of(diary: &Diary) -> Slab<'_> {
    fold(diary, Knowledge::noted_by("2026-06-01T00:00:00Z".parse().unwrap()))
}

fn made(panel: &str, mix: &str, finish: &str) -> String {
    format!(
        r#"{{"happened":"2026-03-02 13:00","body":{{"kind":"panel_made","panel":"{panel}","mix":"{mix}","finish":"{finish}","side":"18 in"}}}}"#
    )
}

fn stained(panel: &str, water: f64, coats: u32, day: u32) -> String {
    format!(
        r#"{{"happened":"2026-03-{day:02} 09:00","body":{{"kind":"panel_stained","panel":"{panel}","mix":[{{"stain":"umber","parts":1}}],"water_parts":{water},"coats":{coats}}}}}"#
    )
}

fn seen(panel: &str, state: &str, light: [f64; 3], day: u32) -> String {
    let lab = LinearRgb::new(light).xyz().lab();
    let (l, a, b) = (lab.lightness(), lab.a(), lab.b());
    format!(
        r#"{{"happened":"2026-03-{day:02} 12:00","body":{{"kind":"panel_photographed","panel":"{panel}","state":"{state}","lab":[{l},{a},{b}]}}}}"#
    )
}

/// The light of a panel: K/S of the bare one plus the stain's.
fn light(water: f64, coats: u32) -> [f64; 3] {
    [0, 1, 2].map(|c| {
        let q = (1.0 - BARE[c]).powi(2) / (2.0 * BARE[c]);
        let q = q + UMBER[c] * f64::from(coats).powf(0.8) * (1.0 + water).powf(-0.8);
        1.0 + q - (q * q + 2.0 * q).sqrt()
    })
}

/// A bare panel and four stained ones, all sealed but the bare one.
fn four() -> Vec<String> {
    let mut lines = vec![made("B", "4021", "light-steel-trowel"), seen("B", "bare", BARE, 10)];
    for (panel, water, coats) in [("P1", 0.0, 2), ("P2", 1.0, 2), ("P3", 1.0, 1), ("P4", 4.0, 1)] {
        lines.push(made(panel, "4021", "light-steel-trowel"));
        lines.push(stained(panel, water, coats, 11));
        lines.push(seen(panel, "sealed", light(water, coats), 14));
    }
    lines
}

#[test]
fn four_panels_of_one_stain_beside_a_bare_one_answer_with_a_radius() {
    let diary = diary(&four());
    let books = recipe_books(&as_of(&diary), Seed(7));
    assert_eq!(books.len(), 1);
    let book = &books[0];
    assert_eq!((book.mix, book.finish, book.state), (Some("4021"), Some("light-steel-trowel"), PanelState::Sealed));
    assert_eq!(book.used.len(), 4);
    assert_eq!(book.stains, ["umber"]);
    assert!(book.left_out.is_empty());
    assert_eq!(book.bare_from, Some(BareFrom::WithoutSealer));
    let model = book.model.as_ref().unwrap();
    assert!(model.interval().is_ok());
    // The colors follow the law with no scatter, so a recipe that was not tried comes out.
    let wish = LinearRgb::new(light(2.0, 2)).xyz().lab();
    let search = model.search(Wish::Lab(wish), &PracticalGrid::usual()).unwrap();
    assert_eq!((search.best.recipe.water.per_stain(), search.best.recipe.coats.count()), (2.0, 2));
    assert!(ciede2000(search.best.prediction.lab, wish).as_units() < 0.6);
    assert_eq!(search.within_reach, Some(true));
}

#[test]
fn three_panels_answer_without_a_radius_and_say_how_many_are_needed() {
    let lines: Vec<String> = four().into_iter().filter(|line| !line.contains("\"P4\"")).collect();
    let diary = diary(&lines);
    let books = recipe_books(&as_of(&diary), Seed(7));
    let why = books[0].model.as_ref().unwrap().interval().unwrap_err();
    assert_eq!(why, NoInterval::TooFewPanels { stains: 1, panels: 3, needed: 4 });
    assert!(!books[0].has_interval());
}

#[test]
fn without_a_bare_panel_there_is_no_model() {
    let lines: Vec<String> = four().into_iter().filter(|line| !line.contains("\"bare\"")).collect();
    let diary = diary(&lines);
    let books = recipe_books(&as_of(&diary), Seed(7));
    assert_eq!(books[0].model.as_ref().unwrap_err(), &RecipeRefusal::NoBare);
}

#[test]
fn a_bare_panel_under_the_same_sealer_is_taken_before_one_without() {
    let mut lines = four();
    lines.push(seen("B", "sealed", [0.2, 0.18, 0.16], 14));
    let diary = diary(&lines);
    let books = recipe_books(&as_of(&diary), Seed(7));
    assert_eq!(books[0].bare_from, Some(BareFrom::SameState));
    assert!((books[0].bare[0].1.lightness() - LinearRgb::new([0.2, 0.18, 0.16]).xyz().lab().lightness()).abs() < 1e-9);
}

#[test]
fn states_are_kept_apart() {
    let mut lines = four();
    lines.push(seen("P1", "stained", light(0.0, 2).map(|l| l * 1.3), 12));
    let diary = diary(&lines);
    let books = recipe_books(&as_of(&diary), Seed(7));
    let states: Vec<(PanelState, usize)> = books.iter().map(|book| (book.state, book.used.len())).collect();
    assert_eq!(states, [(PanelState::Sealed, 4), (PanelState::Stained, 1)]);
    let out: Vec<(&str, LeftOut)> = books[1].left_out.clone();
    assert_eq!(out, ["P2", "P3", "P4"].map(|panel| (panel, LeftOut::NotPhotographed)));
}

#[test]
fn another_mix_or_finish_is_another_set() {
    let mut lines = four();
    for (panel, mix, finish) in [("Q1", "4022", "light-steel-trowel"), ("Q2", "4021", "broom")] {
        lines.push(made(panel, mix, finish));
        lines.push(stained(panel, 1.0, 1, 11));
        lines.push(seen(panel, "sealed", light(1.0, 1), 14));
    }
    let diary = diary(&lines);
    let books = recipe_books(&as_of(&diary), Seed(7));
    assert_eq!(books.len(), 3);
    assert_eq!(books[0].used.len(), 4, "the set with a radius stands first");
    assert!(books[1..].iter().all(|book| book.used.len() == 1 && book.bare.is_empty()));
}

#[test]
fn a_panel_stained_again_after_its_photograph_no_longer_shows_it() {
    let mut lines = four();
    lines.push(stained("P4", 4.0, 2, 20));
    let first = diary(&lines);
    let books = recipe_books(&as_of(&first), Seed(7));
    assert_eq!(books[0].left_out, [("P4", LeftOut::StainedSince)]);
    lines.push(seen("P4", "sealed", light(4.0, 2), 21));
    let second = diary(&lines);
    let books = recipe_books(&as_of(&second), Seed(7));
    assert_eq!(books[0].used.len(), 4);
    let coats = books[0].used.iter().find(|used| used.panel == "P4").unwrap().recipe.coats.count();
    assert_eq!(coats, 2, "the last staining tells how the panel is");
}

#[test]
fn what_is_not_measured_or_not_noted_is_told() {
    let mut lines = four();
    lines.push(made("R1", "4021", "light-steel-trowel"));
    lines.push(stained("R1", 1.0, 1, 11));
    lines.push(
        r#"{"happened":"2026-03-14 12:00","body":{"kind":"panel_photographed","panel":"R1","state":"sealed"}}"#
            .to_owned(),
    );
    lines.push(made("R2", "4021", "light-steel-trowel"));
    lines.push(seen("R2", "stained", light(1.0, 1), 14));
    let diary = diary(&lines);
    let books = recipe_books(&as_of(&diary), Seed(7));
    assert_eq!(books[0].left_out, [("R1", LeftOut::NotMeasured), ("R2", LeftOut::RecipeUnknown)]);
}

#[test]
fn names_are_the_same_in_any_capitals_and_spaces() {
    let lines = [made("P 1", "4021", "broom"), stained("p 1", 1.0, 1, 11), seen(" P 1 ", "sealed", light(1.0, 1), 14)];
    let diary = diary(&lines);
    let slab = as_of(&diary);
    let all = panels(&slab);
    assert_eq!(all.len(), 1);
    assert_eq!(all[0].name, "P 1");
    assert!(all[0].stained.is_some() && all[0].color(PanelState::Sealed).is_some());
}

#[test]
fn a_panel_stands_for_zones_of_its_finish_and_concrete() {
    let plan = r#"{"happened":"2026-03-02 06:10","body":{"kind":"plan","outline":{"rectangles":[{"corner":["0 ft","0 ft"],"width":"20 ft","depth":"10 ft"}]},"zones":[{"name":"hall","shape":{"rectangles":[{"corner":["0 ft","0 ft"],"width":"10 ft","depth":"10 ft"}]}},{"name":"shop"}]}}"#;
    let pour = r#"{"happened":"2026-03-02 07:00","body":{"kind":"pour","mix":"4021"}}"#;
    let finish = |zone: &str, finish: &str| {
        format!(
            r#"{{"happened":"2026-03-02 12:00","place":{{"zone":"{zone}"}},"body":{{"kind":"finish","finish":"{finish}"}}}}"#
        )
    };
    let lines = [
        plan.to_owned(),
        pour.to_owned(),
        finish("hall", "broom"),
        finish("shop", "light-steel-trowel"),
        made("P1", "4021", "broom"),
        made("P2", "4022", "broom"),
    ];
    let diary = diary(&lines);
    let slab = as_of(&diary);
    let all = panels(&slab);
    assert_eq!(stands_for(&slab, &all[0]), ["hall"]);
    assert!(stands_for(&slab, &all[1]).is_empty(), "another concrete");
}
