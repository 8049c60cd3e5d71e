//! Every house rule R01 to R17 of `trade/practice.toml` on the main job (common practice, no source).
//!
//! A test's name begins with the rule it tests. The papers' side of R03 and R13 to R16 is in
//! `crates/underfoot/tests/practice_papers.rs`.

#![allow(clippy::unwrap_used, reason = "a test may stop")]

use std::collections::BTreeSet;
use std::sync::LazyLock;

use jiff::tz::TimeZone;
use slab_answers::order::{Amount, Item, Order, OrderNote, order};
use slab_answers::standing::{Action, Code, HoldPointId, Standing, State, open_incidents, standing};
use slab_diary::{Context, Diary, Knowledge, SlabId, problems, read_lines};
use slab_diary::{Figures, fold};
use trade_facts::{Blocks, Clears, Marbling, Thirst, Traction, Trade};
use units::Length;

/// The rules this file tests, pinned against the facts below.
const RULES: [&str; 17] = [
    "R01", "R02", "R03", "R04", "R05", "R06", "R07", "R08", "R09", "R10", "R11", "R12", "R13", "R14", "R15", "R16",
    "R17",
];

/// A floor of 1,200 ft² on which every test was made and passed, a line each. Poured on 1 April.
static READY: LazyLock<Vec<&str>> = LazyLock::new(|| include_str!("data/ready.jsonl").lines().collect());

/// The morning on which [`READY`] is ready.
const MORNING: &str = "2026-05-03T09:00:00Z";

/// A diary of lines, all of which the checks take.
fn diary(lines: &[&str]) -> Diary {
    let context = Context {
        slab: SlabId::of_name("practice"),
        zone: TimeZone::UTC,
        author: "the crew".to_owned(),
        device: "phone".to_owned(),
        noted: None,
    };
    let entries = read_lines(&lines.join("\n"), &context).unwrap();
    let found = problems(&Diary::new(), &entries, Trade::built_in(), "2027-01-01T00:00:00Z".parse().unwrap());
    assert!(found.is_empty(), "{found:?}");
    let mut diary = Diary::new();
    for entry in entries {
        assert!(diary.add(entry).unwrap());
    }
    diary
}

fn stands(lines: &[&str], at: &str) -> Standing {
    standing(&diary(lines), Trade::built_in(), Knowledge::noted_by(at.parse().unwrap()))
}

/// [`READY`] without the lines that hold one of these words, and with more.
fn ready(without: &[&str], with: &[&str]) -> Standing {
    let kept = READY.iter().copied().filter(|line| !without.iter().any(|word| line.contains(word)));
    stands(&kept.chain(with.iter().copied()).collect::<Vec<_>>(), MORNING)
}

fn told(standing: &Standing, id: HoldPointId, code: Code) -> bool {
    standing.hold_point(id).why.iter().any(|reason| reason.code == code)
}

fn state(standing: &Standing, id: HoldPointId) -> State {
    standing.hold_point(id).state
}

/// The floor of [`READY`] up to its cure, asked about at some day.
fn young(more: &[&str], at: &str) -> Standing {
    stands(&READY[..8].iter().copied().chain(more.iter().copied()).collect::<Vec<_>>(), at)
}

/// [`READY`] with an incident on it, and more that points to it.
fn spoiled(what: &str, more: &[&str]) -> Standing {
    let incident = format!(
        r##"{{"id":"#spot","happened":"2026-05-02 15:00","place":{{"point":["12 ft","12 ft"],"radius":"1 ft"}},"body":{{"kind":"incident","what":"{what}"}}}}"##
    );
    ready(&[], &[&[incident.as_str()], more].concat())
}

fn order_with_finish(finish: &str) -> Order {
    let plan = r#"{"happened":"2026-03-30 06:10","body":{"kind":"plan","outline":{"area":"1000 ft2"}}}"#;
    let finish = format!(r#"{{"happened":"2026-04-01 12:00","body":{{"kind":"finish","finish":"{finish}"}}}}"#);
    let pour = r#"{"happened":"2026-04-01 07:00","body":{"kind":"pour"}}"#;
    let diary = diary(&[plan, pour, &finish]);
    order(&fold(&diary, Knowledge::noted_by(MORNING.parse().unwrap())), Trade::built_in()).unwrap()
}

#[test]
fn every_house_rule_has_a_test_named_after_it() {
    let facts: BTreeSet<&str> = Trade::built_in().facts().filter_map(|fact| fact.code.as_deref()).collect();
    assert_eq!(facts, BTreeSet::from(RULES));
    let own = include_str!("practice.rs");
    for rule in RULES {
        let named = format!("#[test]\nfn {}_", rule.to_lowercase());
        assert!(own.contains(&named), "{rule} has no test");
        assert_eq!(Trade::built_in().house_rule(rule).unwrap().grade.words(), "common practice, no source", "{rule}");
    }
}

#[test]
fn the_floor_of_these_tests_is_ready() {
    let standing = ready(&[], &[]);
    assert_eq!(standing.overall.state, State::Released, "{:?}", standing.overall);
    assert!(standing.hold_points.iter().all(|point| point.state == State::Released));
}

#[test]
fn r01_a_new_slab_waits_28_days() {
    // 1 April and 28 days is 29 April.
    for (at, expected) in [
        ("2026-04-10T09:00:00Z", State::Held),
        ("2026-04-28T23:00:00Z", State::Held),
        ("2026-04-29T01:00:00Z", State::Released),
        ("2026-08-01T09:00:00Z", State::Released),
    ] {
        assert_eq!(state(&young(&[], at), HoldPointId::Age), expected, "{at}");
    }
    // After 28 days a patchy look does not hold it for its age: the earlier of the two counts.
    let patchy = r#"{"happened":"2026-04-29 09:00","body":{"kind":"color_look","evenness":"patchy"}}"#;
    assert_eq!(state(&young(&[patchy], "2026-04-29T10:00:00Z"), HoldPointId::Age), State::Released);
}

#[test]
fn r01_or_for_one_even_tone_whichever_is_first() {
    let look = |evenness: &str| {
        format!(r#"{{"happened":"2026-04-20 09:00","body":{{"kind":"color_look","evenness":"{evenness}"}}}}"#)
    };
    let at = "2026-04-20T10:00:00Z";
    let even = young(&[&look("even")], at);
    assert_eq!(state(&even, HoldPointId::Age), State::Released);
    assert!(told(&even, HoldPointId::Age, Code::OneColor));
    assert_eq!(state(&young(&[&look("patchy")], at), HoldPointId::Age), State::Held);
    // Even in one place is not all over.
    let in_part = r#"{"happened":"2026-03-30 06:15","body":{"kind":"plan","outline":{"rectangles":[{"corner":["0 ft","0 ft"],"width":"40 ft","depth":"30 ft"}]},"zones":[{"name":"front","shape":{"rectangles":[{"corner":["0 ft","0 ft"],"width":"20 ft","depth":"30 ft"}]}},{"name":"back"}]}}"#;
    let front = look("even").replace(r#","body""#, r#","place":{"zone":"front"},"body""#);
    assert_eq!(state(&young(&[in_part, &front], at), HoldPointId::Age), State::Held);
}

#[test]
fn r02_an_old_slab_is_never_held_for_its_age() {
    let old = READY[0].replace(r#""age":"new""#, r#""age":"existing""#);
    let patchy = r#"{"happened":"2026-04-02 09:00","body":{"kind":"color_look","evenness":"patchy"}}"#;
    for more in [&[][..], &[patchy], &[READY[3]]] {
        let standing = stands(&[&[old.as_str(), READY[1]], more].concat(), "2026-04-03T09:00:00Z");
        assert_eq!(state(&standing, HoldPointId::Age), State::Released);
        assert!(told(&standing, HoldPointId::Age, Code::OldSlab));
        assert_ne!(standing.overall.state, State::Released, "age is all that an old slab is let off");
    }
}

/// The sheet itself is tested in `practice_papers.rs`.
#[test]
fn r03_sample_panels_are_12_to_18_inches() {
    let diary = diary(&READY);
    let slab = fold(&diary, Knowledge::noted_by(MORNING.parse().unwrap()));
    let (low, high): (Length, Length) = Figures::new(Trade::built_in(), &slab).range("sample-panel-edge");
    assert!((low.as_inches() - 12.0).abs() < 1e-9 && (high.as_inches() - 18.0).abs() < 1e-9);
}

#[test]
fn r04_panels_settle_the_color_before_the_floor_is_touched() {
    // Everything else is ready, and the floor waits for the panel.
    for (without, code, next) in [
        (&["panel", "choice"][..], Code::NoPanel, Action::MakePanel),
        (&["panel_stained", "choice"], Code::PanelsBare, Action::StainPanels),
        (&["choice"], Code::NoChoiceYet, Action::GetApproval),
    ] {
        let standing = ready(without, &[]);
        assert_ne!(standing.overall.state, State::Released, "{code:?}");
        assert_eq!(standing.overall.hold_point, Some(HoldPointId::Panel));
        assert!(told(&standing, HoldPointId::Panel, code), "{code:?}");
        assert_eq!(standing.hold_point(HoldPointId::Panel).next.as_ref().unwrap().action, next);
    }
    // Of this concrete, with this finish.
    let other = READY[5].replace("light-steel-trowel", "broom");
    assert_eq!(state(&ready(&["panel_made"], &[&other]), HoldPointId::Panel), State::Held);
    let other = READY[5].replace("4000-A", "3500-B");
    assert_eq!(state(&ready(&["panel_made"], &[&other]), HoldPointId::Panel), State::Held);
}

const MEMBRANE: &str = r#"{"happened":"2026-04-01 15:00","body":{"kind":"curing","method":"membrane"}}"#;
const STRIPPED: &str = r#"{"happened":"2026-04-30 08:00","body":{"kind":"cleaning","method":"stripper"}}"#;
const GROUND: &str = r#"{"happened":"2026-05-01 08:00","body":{"kind":"cleaning","method":"grind"}}"#;

#[test]
fn r05_a_recorded_membrane_holds_until_it_came_off() {
    // Drops soak in and the blade powders, and still: what was sprayed on has not come off.
    let sprayed = ready(&["\"curing\"", "\"cured\""], &[MEMBRANE]);
    assert_eq!(state(&sprayed, HoldPointId::Membrane), State::Held);
    assert_eq!(sprayed.overall.state, State::Held);
    let next = sprayed.hold_point(HoldPointId::Membrane).next.clone().unwrap();
    assert_eq!(next.action, Action::StripAndRetest);
    // Chemically and by abrasion, then tested again: released.
    let off = ready(&["\"curing\"", "\"cured\""], &[MEMBRANE, STRIPPED, GROUND]);
    assert_eq!(state(&off, HoldPointId::Membrane), State::Released);
    // Taken off, but no test made since.
    let untested = ready(&["\"curing\"", "\"cured\"", "water_drop", "scrape"], &[MEMBRANE, STRIPPED, GROUND]);
    assert_eq!(state(&untested, HoldPointId::Membrane), State::Unproven);
    // What does not take a film off does not release it.
    for method in ["sweep", "water", "neutral_scrub", "alkaline_scrub", "degreaser", "acid", "screen"] {
        let washed = STRIPPED.replace("stripper", method);
        let standing = ready(&["\"curing\"", "\"cured\""], &[MEMBRANE, &washed]);
        assert_ne!(state(&standing, HoldPointId::Membrane), State::Released, "{method}");
    }
}

#[test]
fn r05_a_membrane_is_never_released_by_age() {
    for at in ["2026-05-03T09:00:00Z", "2026-11-02T09:00:00Z", "2036-04-01T09:00:00Z"] {
        let lines = [READY[0], READY[1], READY[3], READY[4], MEMBRANE];
        let standing = stands(&lines, at);
        assert_eq!(state(&standing, HoldPointId::Age), State::Released, "{at}");
        assert_eq!(state(&standing, HoldPointId::Membrane), State::Held, "{at}");
    }
    // Noted later as something that was found has the same weight.
    let found = r#"{"happened":"2026-05-02 15:00","body":{"kind":"incident","what":"membrane-compound"}}"#;
    assert_eq!(state(&ready(&[], &[found]), HoldPointId::Membrane), State::Held);
}

/// The drops of [`READY`], told differently.
fn drops(told: &str) -> Vec<String> {
    READY
        .iter()
        .filter(|line| line.contains("water_drop"))
        .map(|line| format!("{}{told}}}}}", &line[..line.find(r#","soaked_in""#).unwrap()]))
        .collect()
}

fn with_drops(told: &str, without: &[&str], with: &[&str]) -> Standing {
    let drops = drops(told);
    let more: Vec<&str> = drops.iter().map(String::as_str).chain(with.iter().copied()).collect();
    ready(&[&["water_drop"], without].concat(), &more)
}

#[test]
fn r06_quick_soaking_speaks_against_a_film_and_standing_or_beading_water_for_one() {
    let membrane = |told: &str, without: &[&str]| state(&with_drops(told, without, &[]), HoldPointId::Membrane);
    assert_eq!(membrane(r#","soaked_in":"40 s""#, &[]), State::Released);
    assert_eq!(membrane(r#","still_stood_after":"12 min""#, &["scrape"]), State::Held);
    assert_eq!(membrane(r#","beads":true"#, &["scrape"]), State::Held);
    // A blade that powders does not explain beads away.
    assert_ne!(membrane(r#","beads":true"#, &[]), State::Released);
    // It must come off first: the floor is not ready in any of these.
    for told in [r#","still_stood_after":"12 min""#, r#","beads":true"#] {
        for without in [&[][..], &["scrape"]] {
            assert_ne!(with_drops(told, without, &[]).overall.state, State::Released, "{told}");
        }
    }
    // Quick soaking alone is not proof: the blade must agree.
    assert_ne!(membrane(r#","soaked_in":"40 s""#, &["scrape"]), State::Released);
}

#[test]
fn r07_a_wax_like_shaving_proves_a_film() {
    for result in ["curl", "flake", "tacky"] {
        let scrape = format!(r#"{{"happened":"2026-05-02 10:05","body":{{"kind":"scrape","result":"{result}"}}}}"#);
        // Water stands too: both agree.
        let agreed = with_drops(r#","still_stood_after":"12 min""#, &["scrape"], &[&scrape]);
        assert_eq!(state(&agreed, HoldPointId::Membrane), State::Held, "{result}");
        // Blade alone.
        let alone = ready(&["water_drop", "scrape"], &[&scrape]);
        assert_eq!(state(&alone, HoldPointId::Membrane), State::Held, "{result}");
        // Against quick water: a film all the same.
        let conflict = ready(&["scrape"], &[&scrape]);
        assert_eq!(state(&conflict, HoldPointId::Membrane), State::Held, "{result}");
        assert!(told(&conflict, HoldPointId::Membrane, Code::FilmOnBlade));
    }
}

#[test]
fn r07_a_film_can_be_present_and_invisible() {
    // One even color and a clean look release age and contamination, and say nothing of a film.
    let even = r#"{"happened":"2026-05-02 08:00","body":{"kind":"color_look","evenness":"even"}}"#;
    let standing = ready(&["water_drop", "scrape"], &[even]);
    assert_eq!(state(&standing, HoldPointId::Age), State::Released);
    assert_eq!(state(&standing, HoldPointId::Contamination), State::Released);
    assert_eq!(state(&standing, HoldPointId::Membrane), State::Unproven);
}

#[test]
fn r08_color_that_leaves_with_the_rinse_points_to_a_film_or_a_closed_surface() {
    let trade = Trade::built_in();
    let mut ranked: Vec<(&str, f64)> = trade
        .causes()
        .map(|cause| {
            let given = &trade.likelihood(&cause.id).unwrap().given;
            (cause.id.as_str(), cause.prior * given["color-washed-off"])
        })
        .collect();
    ranked.sort_by(|a, b| b.1.total_cmp(&a.1));
    let first: BTreeSet<&str> = ranked[..2].iter().map(|(cause, _)| *cause).collect();
    assert_eq!(first, BTreeSet::from(["film-left-on", "burnished"]), "{ranked:?}");
    // Of the two, a rag that turns sticky tells the film from the closed surface.
    let sticky = |cause: &str| trade.likelihood(cause).unwrap().given["solvent-wipe-sticky"];
    assert!(sticky("film-left-on") > 10.0 * sticky("burnished"));
    // Late proof: before the stain the same floor shows it by drop, blade or rag.
    let film = &trade.likelihood("film-left-on").unwrap().given;
    assert!(film["drop-stands"] > film["color-washed-off"] && film["no-fizz"] > film["color-washed-off"]);
}

fn finish(id: &str) -> &'static trade_facts::Finish {
    Trade::built_in().finish(id).unwrap()
}

/// Marbling as a rank; a finish of no single word has none.
fn marbling(id: &str) -> Option<u8> {
    match finish(id).marbling {
        Marbling::Low => Some(0),
        Marbling::LowToMedium => Some(1),
        Marbling::Medium => Some(2),
        Marbling::High => Some(3),
        Marbling::Varies => None,
    }
}

#[test]
fn r09_broom_gives_grip_and_an_even_look() {
    let broom = finish("broom");
    assert_eq!((broom.traction_dry, broom.traction_wet), (Traction::Good, Traction::Good));
    assert_eq!((broom.marbling, broom.marbling_note.as_deref()), (Marbling::Low, Some("even")));
    // No finish grips better, none marbles less.
    for other in Trade::built_in().finishes() {
        assert!(other.traction_wet <= broom.traction_wet, "{}", other.id);
        assert!(marbling(&other.id).is_none_or(|m| m >= marbling("broom").unwrap()), "{}", other.id);
    }
}

#[test]
fn r10_rock_salt_lies_between_broom_and_trowel() {
    let (broom, salt, trowel) = (finish("broom"), finish("rock-salt"), finish("light-steel-trowel"));
    assert!(broom.traction_wet >= salt.traction_wet && salt.traction_wet > trowel.traction_wet);
    assert!(marbling("broom") < marbling("rock-salt") && marbling("rock-salt") < marbling("light-steel-trowel"));
}

#[test]
fn r11_smoother_gives_more_marbling_until_the_surface_is_closed() {
    // From rough to smooth.
    let rank = ["broom", "float", "light-steel-trowel", "hard-steel-trowel"].map(|id| marbling(id).unwrap());
    assert!(rank.is_sorted() && rank[0] < rank[3], "{rank:?}");
    // Smoother drinks less, and the burnished one is closed: its marbling is anyone's guess and it may refuse.
    let thirst = ["float", "light-steel-trowel", "hard-steel-trowel", "burnished"].map(|id| finish(id).absorbency);
    assert!(thirst.windows(2).all(|pair| pair[0] > pair[1]), "{thirst:?}");
    let burnished = finish("burnished");
    assert_eq!((burnished.absorbency, burnished.marbling), (Thirst::VeryLow, Marbling::Varies));
    assert!(burnished.may_not_take);
    assert!(Trade::built_in().finishes().all(|f| f.may_not_take == (f.id == "burnished")));
}

#[test]
fn r12_a_burnished_slab_is_ordered_a_further_coat() {
    let (light, burnished) = (order_with_finish("light-steel-trowel"), order_with_finish("burnished"));
    let extra = |order: &Order| order.coverage[0].extra_coats;
    assert_eq!((extra(&light), extra(&burnished)), ((0, 1), (1, 2)));
    // Coats that the order reckons with at most: the recipe's 3 and these.
    let most = |order: &Order| {
        let line = order.lines.iter().find(|line| line.item == Item::Stain).unwrap();
        let Amount::Volume(need) = line.need else { panic!("stain is a volume") };
        // Taken back: the gallon kept, 25 % waste and edges, no water, 1,000 ft² at the thirstiest.
        let coverage = order.coverage[0].coverage.low.as_square_feet_per_gallon();
        (need.high.as_us_gallons() - 1.0) / 1.25 * coverage / 1000.0
    };
    assert!((most(&light) - 4.0).abs() < 1e-6 && (most(&burnished) - 5.0).abs() < 1e-6);
    let stain = burnished.lines.iter().find(|line| line.item == Item::Stain).unwrap();
    assert!(stain.notes.contains(&OrderNote::FinishMayRefuse));
}

#[test]
fn r12_water_that_stands_on_powder_is_a_closed_surface_and_told_to_need_a_coat() {
    let standing = with_drops(r#","still_stood_after":"12 min""#, &[], &[]);
    // No film that a blade finds; what sank in, only rag and acid drop tell.
    assert_eq!(state(&standing, HoldPointId::Membrane), State::CantTell);
    assert_eq!(state(&standing, HoldPointId::Absorbency), State::Held);
    assert!(told(&standing, HoldPointId::Absorbency, Code::Burnished));
    assert!(told(&standing, HoldPointId::Absorbency, Code::DenseFinishNeedsCoat));
}

#[test]
fn r13_braces_nailed_into_the_floor_hold_it_until_settled() {
    let standing = spoiled("nailed-into-field", &[]);
    assert_eq!(state(&standing, HoldPointId::Repairs), State::Held);
    assert_eq!(standing.overall.state, State::Held);
    let patch = r##"{"happened":"2026-05-02 16:00","body":{"kind":"repair","of":"#spot","material":"cement","owner_told":true}}"##;
    assert_eq!(state(&spoiled("nailed-into-field", &[patch]), HoldPointId::Repairs), State::Released);
    // Nothing but a patch or the owner's word: the spall does not come out.
    let washed = r##"{"happened":"2026-05-02 16:00","body":{"kind":"cleaning","method":"poultice","of":"#spot"}}"##;
    assert_eq!(state(&spoiled("nailed-into-field", &[washed]), HoldPointId::Repairs), State::Held);
    let rule = &Trade::built_in().house_rule("R13").unwrap().statement;
    assert!(rule.contains("outside the slab") && rule.contains("spall"), "{rule}");
}

#[test]
fn r14_red_chalk_and_markers_hold_and_blue_chalk_is_what_the_notice_asks_for() {
    let trade = Trade::built_in();
    for what in ["red-chalk", "marker"] {
        let standing = spoiled(what, &[]);
        assert_eq!(state(&standing, HoldPointId::Contamination), State::Held, "{what}");
        assert!(told(&standing, HoldPointId::Contamination, Code::IncidentUntreated), "{what}");
        // They do not rinse off: water is no treatment, and a clear look after it no proof.
        let rinsed = r##"{"happened":"2026-05-02 16:00","body":{"kind":"cleaning","method":"water"}}"##;
        let looked = r##"{"happened":"2026-05-02 17:00","body":{"kind":"retest","of":"#spot","result":"clear"}}"##;
        assert_ne!(state(&spoiled(what, &[rinsed, looked]), HoldPointId::Contamination), State::Released, "{what}");
    }
    let chalk = trade.incident("red-chalk").unwrap();
    assert!(chalk.en.contains("blue") && chalk.en.contains("No red"), "{}", chalk.en);
    let marker = trade.incident("marker").unwrap();
    assert!(marker.en.contains("not on the floor"), "{}", marker.en);
    assert!(trade.incidents().all(|incident| !incident.id.contains("blue")), "blue chalk is no incident");
    let note = r#"{"happened":"2026-05-02 15:00","body":{"kind":"note","text":"blue chalk line snapped"}}"#;
    assert_eq!(ready(&[], &[note]).overall.state, State::Released);
}

#[test]
fn r15_cutting_oil_hides_and_is_cleared_by_water_not_by_looks() {
    let treated = r##"{"happened":"2026-05-02 16:00","body":{"kind":"cleaning","method":"poultice","of":"#spot"}}"##;
    let clear = r##"{"happened":"2026-05-02 17:00","body":{"kind":"retest","of":"#spot","result":"clear"}}"##;
    let soaked = r##"{"happened":"2026-05-02 17:05","place":{"point":["12 ft","12 ft"]},"body":{"kind":"water_drop","soaked_in":"50 s","of":"#spot"}}"##;
    let stands = soaked.replace("soaked_in\":\"50 s", "still_stood_after\":\"12 min");
    let contamination = |more: &[&str]| state(&spoiled("cutting-oil", more), HoldPointId::Contamination);
    assert_eq!(contamination(&[]), State::Held);
    assert_eq!(contamination(&[treated]), State::Unproven);
    assert_eq!(contamination(&[treated, clear]), State::Unproven, "it hides until staining");
    assert_ne!(contamination(&[treated, clear, &stands]), State::Released);
    assert_eq!(contamination(&[treated, clear, soaked]), State::Released);
    // It cannot be accepted away.
    let accepted = r##"{"happened":"2026-05-02 17:00","body":{"kind":"accepted","of":"#spot","by":"the owner","reason":"hurry"}}"##;
    assert_eq!(contamination(&[accepted]), State::Held);
    let oil = Trade::built_in().incident("cutting-oil").unwrap();
    assert!(oil.effect.contains("lighter"), "{}", oil.effect);
    assert!(oil.visible_when.contains("when stained"), "{}", oil.visible_when);
    assert!(oil.en.contains("off this slab"), "{}", oil.en);
}

#[test]
fn r16_printed_covers_lie_ink_up() {
    let laid = |printed: &str| {
        format!(
            r#"{{"happened":"2026-04-10 09:00","body":{{"kind":"cover","action":"laid","material":"cardboard","printed":"{printed}"}}}}"#
        )
    };
    let lifted = r#"{"happened":"2026-05-02 15:00","body":{"kind":"cover","action":"lifted","material":"cardboard"}}"#;
    // Looks that were made while it lay saw the cover; one made since sees the floor.
    let looked = r#"{"happened":"2026-05-02 16:00","body":{"kind":"survey","contamination":true,"cracks":true}}"#;
    assert!(told(&ready(&[], &[&laid("up"), lifted]), HoldPointId::Contamination, Code::SurveyUnderCover));
    let up = ready(&[], &[&laid("up"), lifted, looked]);
    assert_eq!(up.overall.state, State::Released);
    let down = ready(&[], &[&laid("down"), lifted]);
    assert_eq!(state(&down, HoldPointId::Contamination), State::Unproven);
    assert!(told(&down, HoldPointId::Contamination, Code::InkLayAgainstSlab));
    assert_eq!(state(&spoiled("printed-cover", &[]), HoldPointId::Contamination), State::Held);
    let cover = Trade::built_in().incident("printed-cover").unwrap();
    assert!(cover.en.contains("printed side up"), "{}", cover.en);
}

#[test]
fn r17_any_coating_or_residue_on_the_paste_stops_the_job() {
    let mut coats = 0;
    for incident in Trade::built_in().incidents() {
        let standing = spoiled(&incident.id, &[]);
        assert_ne!(standing.overall.state, State::Released, "{}: nothing in the catalog is ignored", incident.id);
        if matches!(incident.blocks, Blocks::Film | Blocks::Residue) {
            coats += 1;
            assert_eq!(standing.overall.state, State::Held, "{}", incident.id);
            // Time does not clear it, and neither does a look alone.
            assert_ne!(incident.clears, Clears::Never, "{}: a film or residue can be taken off", incident.id);
            let looked = r##"{"happened":"2026-05-02 17:00","body":{"kind":"retest","of":"#spot","result":"clear"}}"##;
            assert_ne!(spoiled(&incident.id, &[looked]).overall.state, State::Released, "{}", incident.id);
        }
    }
    assert!(coats >= 10, "{coats} films and residues in the catalog");
    // A sealer on an old floor is a film like another: the blade tells.
    let sealed = r#"{"happened":"2026-05-02 10:10","body":{"kind":"solvent_wipe","result":"sticky_or_yellow"}}"#;
    assert_ne!(state(&ready(&[], &[sealed]), HoldPointId::Membrane), State::Released);
}

#[test]
fn r17_what_was_found_is_told_to_the_other_trades_until_it_is_settled() {
    let oil = r##"{"id":"#oil","happened":"2026-05-02 15:00","place":{"point":["12 ft","12 ft"],"radius":"1 ft"},"body":{"kind":"incident","what":"cutting-oil"}}"##;
    let treated = r##"{"happened":"2026-05-02 16:00","body":{"kind":"cleaning","method":"poultice","of":"#oil"}}"##;
    let soaked = r##"{"happened":"2026-05-02 17:05","place":{"point":["12 ft","12 ft"]},"body":{"kind":"water_drop","soaked_in":"50 s","of":"#oil"}}"##;
    let open = |more: &[&str]| {
        let lines: Vec<&str> = READY.iter().copied().chain([oil]).chain(more.iter().copied()).collect();
        let diary = diary(&lines);
        open_incidents(&fold(&diary, Knowledge::noted_by(MORNING.parse().unwrap())), Trade::built_in()).len()
    };
    assert_eq!((open(&[]), open(&[treated]), open(&[treated, soaked])), (1, 1, 0));
}
