//! House rules that speak through the papers: R03 on the pour sheet, R13 to R16 on the site notice
//! (common practice, no source). The rest of the rules are in `crates/slab-answers/tests/practice.rs`.

#![allow(clippy::unwrap_used, reason = "a test may stop")]

use std::collections::{BTreeMap, BTreeSet};

use jiff::civil::{Date, date};
use localization::{Lang, Locale, UnitSystem};
use papers::{PourSheet, PourWishes, SiteNotice};
use slab_diary::{Context, Diary, Knowledge, SlabId, read_lines};
use slab_diary::{Slab, fold};
use trade_facts::Trade;
use units::{Fraction, Length};

const PLAN: &str = r#"{"happened":"2026-03-02 06:10","body":{"kind":"plan","outline":{"rectangles":[{"corner":["0 ft","0 ft"],"width":"40 ft","depth":"30 ft"}]},"zones":[{"name":"shop","shape":{"rectangles":[{"corner":["0 ft","0 ft"],"width":"25 ft","depth":"30 ft"}]}},{"name":"office"}]}}"#;
const TODAY: Date = date(2026, 3, 2);

fn diary(lines: &[&str]) -> Diary {
    let context = Context {
        slab: SlabId::of_name("papers"),
        zone: jiff::tz::TimeZone::UTC,
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

fn folded(diary: &Diary) -> Slab<'_> {
    fold(diary, Knowledge::noted_by("2026-06-01T00:00:00Z".parse().unwrap()))
}

fn sheet(panels_each: u32) -> PourSheet {
    let diary = diary(&[PLAN]);
    let finishes = BTreeMap::from([
        ("shop".to_owned(), "light-steel-trowel".to_owned()),
        ("office".to_owned(), "broom".to_owned()),
    ]);
    let wishes = PourWishes {
        prepared: TODAY,
        pour_day: None,
        thickness: Some(Length::inches(4.0)),
        finishes,
        panels_each,
        waste: Fraction::share(0.05).unwrap(),
    };
    PourSheet::of(&folded(&diary), Trade::built_in(), &wishes).unwrap()
}

#[test]
fn r03_the_pour_sheet_asks_for_panels_of_12_to_18_inches_of_every_finish() {
    let sheet = sheet(3);
    let finishes: BTreeSet<&str> = sheet.panels.iter().map(|panels| panels.finish.as_str()).collect();
    assert_eq!(finishes, BTreeSet::from(["light-steel-trowel", "broom"]));
    for panels in &sheet.panels {
        let edge = panels.edge.as_inches();
        assert!((12.0..=18.0).contains(&edge), "{edge} in");
        assert_eq!(panels.count, 3);
        assert!(panels.thickness > Length::inches(0.0) && panels.thickness <= Length::inches(4.0));
    }
}

fn notice(more: &[&str]) -> SiteNotice {
    let diary = diary(&[&[PLAN], more].concat());
    SiteNotice::of(&folded(&diary), Trade::built_in(), TODAY)
}

/// The notice prints the text of each kind in both languages; a test of crate `papers` reads the sheet.
#[track_caller]
fn assert_warns_of(kind: &str, english: &[&str], spanish: &[&str]) {
    assert!(notice(&[]).kinds.iter().any(|k| k == kind), "{kind} is not on the usual notice");
    assert_asks(kind, english, spanish);
}

/// What the notice asks about a kind, in both languages.
#[track_caller]
fn assert_asks(kind: &str, english: &[&str], spanish: &[&str]) {
    let incident = Trade::built_in().incident(kind).unwrap();
    for (lang, words) in [(Lang::En, english), (Lang::Es, spanish)] {
        let text = Locale::new(lang, UnitSystem::Imperial).text_of(incident, "notice").to_lowercase();
        for word in words {
            assert!(text.contains(word), "{kind}: {word}: {text}");
        }
    }
}

#[test]
fn r13_the_notice_keeps_nails_and_braces_out_of_the_floor() {
    assert_warns_of("nailed-into-field", &["do not nail", "this floor"], &["no clave", "este piso"]);
    let braces = |lang| Locale::new(lang, UnitSystem::Imperial).message("paper-notice-braces", &[]);
    assert_eq!(braces(Lang::En), "Anchor braces outside the slab.");
    assert_eq!(braces(Lang::Es), "Ancle los puntales fuera de la losa.");
}

#[test]
fn r14_the_notice_asks_for_blue_chalk_and_no_marker() {
    assert_warns_of("red-chalk", &["blue", "no red"], &["azul", "no use gis rojo"]);
    assert_asks("marker", &["not on the floor"], &["no en el piso"]);
}

#[test]
fn r15_the_notice_sends_pipe_work_off_the_slab() {
    assert_warns_of(
        "cutting-oil",
        &["cut and thread pipe", "off this slab"],
        &["corte y rosque", "lejos de esta losa"],
    );
}

#[test]
fn r16_the_notice_wants_printed_covers_ink_up() {
    assert_warns_of("printed-cover", &["printed side up"], &["lado impreso hacia arriba"]);
}

#[test]
fn what_was_found_is_on_the_notice_until_it_is_settled() {
    let oil = r##"{"id":"#oil","happened":"2026-03-12 12:10","place":{"point":["10 ft","10 ft"],"radius":"2 ft"},"body":{"kind":"incident","what":"cutting-oil"}}"##;
    let treated = r##"{"happened":"2026-03-13 09:00","body":{"kind":"cleaning","method":"degreaser","of":"#oil"}}"##;
    let soaked = r##"{"happened":"2026-03-14 09:00","place":{"point":["10 ft","10 ft"]},"body":{"kind":"water_drop","soaked_in":"60 s","of":"#oil"}}"##;
    let found = notice(&[oil]).found;
    assert_eq!(found.len(), 1);
    assert_eq!((found[0].kind.as_str(), found[0].place.as_str()), ("cutting-oil", "shop"));
    assert_eq!(notice(&[oil, treated]).found.len(), 1, "treated is not tested");
    assert!(notice(&[oil, treated, soaked]).found.is_empty());
}
