//! The map of the slab: bays, cells, spots, shares and the next places, on a slab of 20 by 10 ft in two
//! zones. Areas are worked out beside each check.

#![allow(clippy::unwrap_used, reason = "a test may stop")]

use jiff::tz::TimeZone;
use proptest::prelude::*;
use slab_answers::map::{BayField, Fineness, Ground, NoMap, SlabMap, Teaches};
use slab_answers::standing::State;
use slab_diary::fold;
use slab_diary::{Context, Diary, Knowledge, SlabId, read_lines};
use slab_plan::{Offset, Point};
use trade_facts::Trade;
use units::Length;

fn map_of(lines: &[String]) -> Result<SlabMap, NoMap> {
    let context = Context {
        slab: SlabId::of_name("map"),
        zone: TimeZone::UTC,
        author: "test".to_owned(),
        device: "test".to_owned(),
        noted: None,
    };
    let mut diary = Diary::new();
    for entry in read_lines(&lines.join("\n"), &context).unwrap() {
        diary.add(entry).unwrap();
    }
    let slab = fold(&diary, Knowledge::noted_by("2026-06-01T00:00:00Z".parse().unwrap()));
    SlabMap::of(&slab, Trade::built_in(), Fineness::SCREEN)
}

fn plan(joints: &str) -> String {
    format!(
        r#"{{"happened":"2026-03-01 06:00","body":{{"kind":"plan","outline":{{"rectangles":[{{"corner":["0 ft","0 ft"],"width":"20 ft","depth":"10 ft"}}]}},"zones":[{{"name":"west","shape":{{"rectangles":[{{"corner":["0 ft","0 ft"],"width":"10 ft","depth":"10 ft"}}]}}}},{{"name":"east"}}]{joints}}}}}"#
    )
}

fn finish(zone: &str, finish: &str) -> String {
    format!(
        r#"{{"happened":"2026-03-02 12:00","place":{{"zone":"{zone}"}},"body":{{"kind":"finish","finish":"{finish}"}}}}"#
    )
}

fn drop_at(x: f64, y: f64, seconds: f64) -> String {
    format!(
        r#"{{"happened":"2026-03-25 08:00","place":{{"point":["{x} ft","{y} ft"]}},"body":{{"kind":"water_drop","soaked_in":"{seconds} s"}}}}"#
    )
}

fn oil(x: f64, y: f64, radius: &str) -> String {
    format!(
        r##"{{"id":"#oil","happened":"2026-03-20 08:00","place":{{"point":["{x} ft","{y} ft"]{radius}}},"body":{{"kind":"incident","what":"cutting-oil"}}}}"##
    )
}

/// Both zones of one finish.
fn one_finish() -> Vec<String> {
    vec![plan(""), finish("west", "light-steel-trowel"), finish("east", "light-steel-trowel")]
}

/// Eight drops over the whole slab, quick in the west and slow in the east.
fn drops() -> Vec<String> {
    [
        (2.0, 2.0, 50.0),
        (2.0, 8.0, 60.0),
        (6.0, 5.0, 70.0),
        (9.0, 2.0, 90.0),
        (12.0, 7.0, 200.0),
        (15.0, 3.0, 300.0),
        (18.0, 8.0, 380.0),
        (18.0, 2.0, 340.0),
    ]
    .map(|(x, y, s)| drop_at(x, y, s))
    .to_vec()
}

fn at(x: f64, y: f64) -> Point {
    Point::new(Offset::meters(Length::feet(x).as_meters()), Offset::meters(Length::feet(y).as_meters()))
}

#[test]
fn without_a_drawn_plan_there_is_no_map() {
    assert_eq!(map_of(&[]).unwrap_err(), NoMap::NotDrawn);
    let area = r#"{"happened":"2026-03-01 06:00","body":{"kind":"plan","outline":{"area":"200 ft2"}}}"#.to_owned();
    assert_eq!(map_of(&[area]).unwrap_err(), NoMap::NotDrawn);
}

#[test]
fn one_finish_over_two_zones_is_one_bay_and_the_slow_end_is_slow() {
    let map = map_of(&[one_finish(), drops()].concat()).unwrap();
    assert_eq!(map.bays.len(), 1);
    assert_eq!(map.bays[0].zones, ["west", "east"]);
    assert!(matches!(map.bays[0].field, BayField::Mapped { .. }));
    assert_eq!(map.cell_at(at(2.0, 5.0)).unwrap().ground, Ground::Drinks);
    assert_eq!(map.cell_at(at(17.0, 5.0)).unwrap().ground, Ground::Slow);
    // The cells are the slab: 200 ft².
    let area = map.each().as_square_feet() * map.cells.len() as f64;
    assert!((area - 200.0).abs() < 4.0, "{area}");
}

#[test]
fn a_boundary_of_finish_is_a_break() {
    let lines = [vec![plan(""), finish("west", "light-steel-trowel"), finish("east", "broom")], drops()].concat();
    let map = map_of(&lines).unwrap();
    assert_eq!(map.bays.len(), 2);
    // Four drops each: neither has the six places that a map takes.
    assert!(map.bays.iter().all(|bay| matches!(bay.field, BayField::None(_))));
    assert!(map.cells.iter().all(|cell| cell.ground == Ground::Untested && cell.estimate.is_none()));
    // Two more are missing in each bay, told as such, the last with one missing.
    assert_eq!(map.next.len(), 4);
    let missing: Vec<usize> = map
        .next
        .iter()
        .map(|next| match next.teaches {
            Teaches::FirstMap { missing } => missing,
            Teaches::Settles { .. } => 0,
        })
        .collect();
    assert_eq!(missing, [2, 1, 2, 1]);
}

#[test]
fn a_construction_joint_is_a_break_and_a_saw_cut_is_none() {
    let joint = |kind: &str| format!(r#","joints":[{{"line":[["10 ft","0 ft"],["10 ft","10 ft"]],"kind":"{kind}"}}]"#);
    let with = |kind: &str| {
        let mut lines = vec![plan(&joint(kind))];
        lines.extend(one_finish().into_iter().skip(1));
        lines.extend(drops());
        map_of(&lines).unwrap()
    };
    let (construction, saw) = (with("construction"), with("saw_cut"));
    assert_eq!(construction.bays.len(), 2);
    assert_eq!(saw.bays.len(), 1);
    assert_eq!(saw.sections.sections().len(), 2, "both are joints, and cut the slab into sections");
    assert_eq!(construction.sections.sections().len(), 2);
}

#[test]
fn an_untreated_spot_is_the_worst_of_its_place_and_has_its_exact_share() {
    let lines = [one_finish(), drops(), vec![oil(4.0, 5.0, r#","radius":"2 ft""#)]].concat();
    let map = map_of(&lines).unwrap();
    assert_eq!(map.spots.len(), 1);
    let spot = &map.spots[0];
    assert!(spot.is_open() && !spot.reach_assumed && spot.state == State::Held);
    // π · 2² ft² of the 100 ft² of the zone in the west.
    let exact = std::f64::consts::PI * 4.0;
    assert!((spot.area().as_square_feet() - exact).abs() < 1e-6);
    assert_eq!(map.cell_at(at(4.0, 5.0)).unwrap().ground, Ground::Spot(0));
    let west = map.zones.iter().find(|zone| zone.zone == "west").unwrap();
    let share = west.shares.iter().find(|share| share.ground == Ground::Spot(0)).unwrap();
    assert!((share.share.as_share() - exact / 100.0).abs() < 1e-9);
    assert_eq!(west.shares[0].ground, Ground::Spot(0), "the worst leads");
    assert!(
        map.next.iter().all(|next| {
            let (x, y) = (next.at.x - at(4.0, 5.0).x, next.at.y - at(4.0, 5.0).y);
            Length::from(x).as_meters().hypot(Length::from(y).as_meters()) > Length::feet(2.0).as_meters()
        }),
        "nobody tests on the oil"
    );
}

#[test]
fn a_spot_without_a_reach_is_taken_a_foot_around_and_says_so() {
    let mut lines = one_finish();
    lines.push(oil(4.0, 5.0, ""));
    let map = map_of(&lines).unwrap();
    assert!(map.spots[0].reach_assumed);
    assert!((map.spots[0].area().as_square_feet() - std::f64::consts::PI).abs() < 1e-6);
    // With the area noted it is a circle of that area.
    lines[3] = r#"{"happened":"2026-03-20 08:00","place":{"point":["4 ft","5 ft"]},"body":{"kind":"incident","what":"cutting-oil","area":"9 ft2"}}"#.to_owned();
    let map = map_of(&lines).unwrap();
    assert!(!map.spots[0].reach_assumed);
    assert!((map.spots[0].area().as_square_feet() - 9.0).abs() < 1e-6);
}

#[test]
fn what_was_treated_and_passed_its_test_no_longer_counts() {
    let mut lines = [one_finish(), drops(), vec![oil(4.0, 5.0, "")]].concat();
    lines.push(
        r##"{"happened":"2026-03-21 08:00","body":{"kind":"cleaning","method":"poultice","of":"#oil"}}"##.to_owned(),
    );
    lines.push(r##"{"happened":"2026-03-22 08:00","body":{"kind":"retest","of":"#oil","result":"clear"}}"##.to_owned());
    lines.push(r##"{"happened":"2026-03-22 08:05","place":{"point":["4 ft","5 ft"]},"body":{"kind":"water_drop","of":"#oil","soaked_in":"60 s"}}"##.to_owned());
    let map = map_of(&lines).unwrap();
    assert!(!map.spots[0].is_open());
    assert_eq!(map.cell_at(at(4.0, 5.0)).unwrap().ground, Ground::Drinks);
}

#[test]
fn a_film_on_the_blade_is_worse_than_any_time() {
    let mut lines = [one_finish(), drops()].concat();
    lines.push(r#"{"happened":"2026-03-25 09:00","place":{"point":["15 ft","5 ft"]},"body":{"kind":"scrape","result":"curl"}}"#.to_owned());
    let map = map_of(&lines).unwrap();
    assert!(map.cells.iter().all(|cell| cell.ground == Ground::Film), "one finish, one bay");
    assert!(map.next.is_empty(), "no drop tells anything through a film");
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(24))]

    /// The shares of a zone are the whole zone, whatever was tried and whatever happened.
    #[test]
    fn shares_add_up_to_the_zone(
        drops in prop::collection::vec((0.5_f64..19.5, 0.5_f64..9.5, 5.0_f64..900.0), 0..14),
        spots in prop::collection::vec((0.5_f64..19.5, 0.5_f64..9.5, 0.1_f64..1.5), 0..2),
    ) {
        let mut lines = one_finish();
        lines.extend(drops.iter().map(|(x, y, s)| drop_at((x * 4.0).round() / 4.0, (y * 4.0).round() / 4.0, s.round())));
        // Far enough apart not to overlap: each keeps its own area.
        for (at, (x, y, r)) in spots.iter().enumerate() {
            let x = if at == 0 { x.min(6.0) } else { x.max(14.0) };
            lines.push(format!(r#"{{"happened":"2026-03-20 08:00","place":{{"point":["{x} ft","{y} ft"],"radius":"{r} ft"}},"body":{{"kind":"incident","what":"cutting-oil"}}}}"#));
        }
        let map = map_of(&lines).unwrap();
        for zone in &map.zones {
            let sum: f64 = zone.shares.iter().map(|share| share.share.as_share()).sum();
            prop_assert!((sum - 1.0).abs() < 1e-9, "{} {sum}", zone.zone);
        }
        prop_assert!(map.next.len() <= 5);
        for next in &map.next {
            prop_assert!(map.cell_at(next.at).is_some(), "a next place lies on the slab");
        }
    }
}
