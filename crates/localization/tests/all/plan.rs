//! Walks and wrong plans in sentences: every way a plan can be wrong is said, in both languages.

use localization::{Lang, Locale, UnitSystem};
use slab_plan::{Bearing, Plan, PlanError, PlanSpec, Turn};

fn voices() -> impl Iterator<Item = Locale> {
    Lang::ALL
        .into_iter()
        .flat_map(|lang| UnitSystem::ALL.into_iter().map(move |unit_system| Locale::new(lang, unit_system)))
}

fn resolved(json: &str) -> Result<Plan, PlanError> {
    PlanSpec::from_json(json).and_then(|spec| Plan::resolve(&spec))
}

fn rectangle(x: &str, y: &str, width: &str, depth: &str) -> String {
    format!(r#"{{"rectangles":[{{"corner":["{x}","{y}"],"width":"{width}","depth":"{depth}"}}]}}"#)
}

fn walk(legs: &str, more: &str) -> String {
    format!(r#"{{"outline":{{"walk":{{"start":["0","0"],"legs":[{legs}]{more}}}}}}}"#)
}

const SQUARE: &str = r#"{"length":"20 ft"},{"turn":"left","length":"10 ft"},{"turn":"left","length":"20 ft"},{"turn":"left","length":"10 ft"}"#;

/// One plan for each way of being wrong, with a word of the English sentence.
fn wrong() -> Vec<(String, &'static str)> {
    let slab = rectangle("0", "0", "20 ft", "10 ft");
    let with = |more: &str| format!(r#"{{"outline":{slab},{more}}}"#);
    let zone = |name: &str, shape: &str| format!(r#"{{"name":"{name}","shape":{shape}}}"#);
    let many = vec![r#"{"corner":["0","0"],"width":"1 ft","depth":"1 ft"}"#; 501].join(",");
    vec![
        (r#"{"outline":{"rectangles":7}}"#.to_owned(), "can't be read"),
        (format!(r#"{{"outline":{}}}"#, rectangle("0", "0", "0 ft", "10 ft")), "has no length"),
        (r#"{"outline":{"polygon":[["0","0"],["0","0"],["1 m","0"],["1 m","1 m"]]}}"#.to_owned(), "same place"),
        (format!(r#"{{"outline":{}}}"#, rectangle("0", "0", "11000 m", "10 ft")), "larger than any slab"),
        (walk(r#"{"length":"20 ft"}"#, ""), "There is 1 wall so far. A walk needs 3 or more."),
        (r#"{"outline":{"polygon":[["0","0"],["1 m","0"]]}}"#.to_owned(), "corners"),
        (r#"{"outline":{"rectangles":[]}}"#.to_owned(), "nothing to draw"),
        (format!(r#"{{"outline":{{"rectangles":[{many}]}}}}"#), "501 are too many"),
        (walk(r#"{"length":"20 ft"},{"length":"10 ft"},{"turn":"left","length":"20 ft"}"#, ""), "Wall 2 has no turn"),
        (r#"{"outline":{"polygon":[["0","0"],["1 m","1 m"],["1 m","0"],["0","1 m"]]}}"#.to_owned(), "cross"),
        (r#"{"outline":{"area":"0 ft2"}}"#.to_owned(), "is no area"),
        (with(&format!(r#""cut_outs":[{slab}]"#)), "Nothing is left"),
        (walk(&SQUARE.replacen("20 ft", "21 ft", 1), ""), "wall 1 (\"21 ft\"), where 20' 0\" would fit"),
        (walk(SQUARE, r#","closing_turn":"right""#), "make 180° to the left"),
        (with(r#""cut_outs":[{"area":"1 ft2"}]"#), "don't go together"),
        (with(&format!(r#""cut_outs":[{}]"#, rectangle("19 ft", "0", "2 ft", "2 ft"))), "lies outside"),
        (
            with(&format!(r#""zones":[{}]"#, zone("A", &rectangle("19 ft", "0", "2 ft", "2 ft")))),
            "2 ft² of the zone \"A\"",
        ),
        (
            with(&format!(r#""zones":[{},{}]"#, zone("A", &slab), zone("B", &rectangle("0", "0", "2 ft", "2 ft")))),
            "share 4 ft²",
        ),
        (r#"{"outline":{"area":"10 ft2"},"zones":[{"name":"A","shape":{"area":"11 ft2"}}]}"#.to_owned(), "more than"),
        (with(r#""zones":[{"name":"A"},{"name":"a"}]"#), "already"),
        (with(r#""zones":[{"name":" "}]"#), "name is empty"),
        (with(r#""zones":[{"name":"A"},{"name":"B"}]"#), "both have no shape"),
        (with(&format!(r#""zones":[{},{{"name":"B"}}]"#, zone("A", &slab))), "Nothing of the slab is left"),
    ]
}

#[test]
fn every_wrong_plan_is_told_in_both_languages() {
    let mut said = 0;
    for (json, word) in wrong() {
        let error = resolved(&json).expect_err(&json);
        let english = Locale::default().plan_error(&error);
        assert!(english.contains(word), "{json}\n{english}");
        for locale in voices() {
            let text = locale.plan_error(&error);
            assert!(text.ends_with('.') || matches!(error, PlanError::Unreadable { .. }), "{text}");
            assert!(!text.contains("plan-wrong") && !text.contains("walk-") && !text.contains(['{', '}']), "{text}");
            assert!(locale.lang == Lang::En || text != english, "{text}");
            said += 1;
        }
    }
    assert_eq!(said, 23 * 4);
}

#[test]
fn a_walk_tells_how_it_closed() {
    let exact = resolved(&walk(SQUARE, "")).expect("it closes");
    assert_eq!(Locale::default().walk(&exact.walks()[0].1), "The walk closes exactly after 60' 0\".");
    // Two walls of 20 ft, one an inch and a half long: 1.5 in over 721.5 in walked is 1:481.
    let near = resolved(&walk(&SQUARE.replacen("20 ft", "20' 1 1/2\\\"", 1), "")).expect("within 1:200");
    let said = Locale::default().walk(&near.walks()[0].1);
    for part in ["1 1/2\" from where it began", "toward plan east (90°)", "1:481 of the 60' 1 1/2\"", "limit is 1:200"]
    {
        assert!(said.contains(part), "{part}: {said}");
    }
    let said = Locale::new(Lang::Es, UnitSystem::Metric).walk(&near.walks()[0].1);
    assert!(said.contains("hacia el este del plano (90°)") && said.contains("1:481 de los 18.33 m"), "{said}");
}

#[test]
fn turns_and_bearings_are_named() {
    let (english, spanish) = (Locale::default(), Locale::new(Lang::Es, UnitSystem::Imperial));
    assert_eq!(english.turn(Turn::right_degrees(-22.5)), "22.5° to the left");
    assert_eq!(spanish.turn(Turn::right_degrees(90.0)), "90° a la derecha");
    assert_eq!(english.turn(Turn::STRAIGHT), "straight on");
    assert_eq!(english.bearing(Bearing::degrees(359.0)), "toward plan north (359°)");
    assert_eq!(spanish.bearing(Bearing::degrees(135.0)), "hacia el sureste del plano (135°)");
}
