//! Lengths, tiles and sections of small slabs, each worked out by hand.

use serde_json::{Value, json};
use slab_plan::layout::{Cuts, LayoutError, Sections, joint_lines, pattern_lines, score_lines, tiles};
use slab_plan::{Offset, Patch, Plan, PlanSpec, Point};
use units::{Area, Fraction, Length};

const ALL: Cuts = Cuts { joints: true, score_lines: true };

fn plan(spec: &Value) -> Plan {
    Plan::resolve(&PlanSpec::from_json(&spec.to_string()).expect("reads")).expect("resolves")
}

fn rectangle(x: f64, y: f64, width: f64, depth: f64) -> Value {
    json!({"rectangles": [{
        "corner": [format!("{x} ft"), format!("{y} ft")], "width": format!("{width} ft"), "depth": format!("{depth} ft")
    }]})
}

/// 40 ft by 30 ft with these fields beside the outline.
fn hall(more: Value) -> Plan {
    let mut spec = more;
    spec["outline"] = rectangle(0.0, 0.0, 40.0, 30.0);
    plan(&spec)
}

fn line(points: &[(f64, f64)]) -> Value {
    json!(points.iter().map(|(x, y)| json!([format!("{x} ft"), format!("{y} ft")])).collect::<Vec<_>>())
}

fn joints(lines: &[&[(f64, f64)]]) -> Value {
    json!(lines.iter().map(|l| json!({"line": line(l)})).collect::<Vec<_>>())
}

fn at(x: f64, y: f64) -> Point {
    Point::new(Offset::feet(x), Offset::feet(y))
}

fn feet(length: Length, said: f64) {
    assert!((length.as_feet() - said).abs() < 1e-9 * said.max(1.0), "{} ft, by hand {said} ft", length.as_feet());
}

fn square_feet(area: Area, said: f64) {
    assert!(
        (area.as_square_feet() - said).abs() < 1e-9 * said.max(1.0),
        "{} ft2, by hand {said}",
        area.as_square_feet()
    );
}

fn grid(x: f64, y: f64) -> Value {
    json!({"grid": {"spacing_x": format!("{x} ft"), "spacing_y": format!("{y} ft")}})
}

#[test]
fn lengths_of_patterns() {
    let column = json!([rectangle(9.0, 9.0, 2.0, 2.0)]);
    let center = json!([rectangle(19.0, 14.0, 2.0, 2.0)]);
    let turned = json!({"grid": {"spacing_x": "10 ft", "spacing_y": "10 ft", "turn": "right 90"}});
    let zoned = json!({"grid": {"spacing_x": "10 ft", "spacing_y": "10 ft", "zone": "west"}});
    let cross = json!({"diagonal": {"spacing": "100 ft", "origin": ["20 ft", "15 ft"]}});
    let zones = json!([{"name": "West", "shape": rectangle(0.0, 0.0, 20.0, 30.0)}, {"name": "East"}]);
    let border = json!({"border": {"inset": "2 ft"}});
    let twice = json!({"lines": {"lines": [line(&[(5.0, 5.0), (25.0, 5.0)]), line(&[(15.0, 5.0), (50.0, 5.0)])]}});
    let cases = [
        // 3 lines of 30 ft and 2 of 40 ft; those on the walls are none.
        (json!({"score_lines": [grid(10.0, 10.0)]}), 170.0),
        (json!({"score_lines": [turned]}), 170.0),
        // The column takes 2 ft of one line each way.
        (json!({"score_lines": [grid(10.0, 10.0)], "cut_outs": column}), 166.0),
        // 1 line of 30 ft and 2 of 20 ft.
        (json!({"score_lines": [zoned], "zones": zones}), 70.0),
        // Through the middle at 45 degrees a line has room for 30 ft upward: 30 √2, both ways.
        (json!({"score_lines": [cross]}), 60.0 * 2.0_f64.sqrt()),
        // 36 ft and 26 ft, twice.
        (json!({"score_lines": [border]}), 124.0),
        // And around the column 2 + 2 × 2 = 6 ft on each side.
        (json!({"score_lines": [border], "cut_outs": center}), 148.0),
        // From 5 to 40 ft, the shared part once, the part off the slab not at all.
        (json!({"score_lines": [twice]}), 35.0),
        // The same grid twice counts once over the slab.
        (json!({"score_lines": [grid(10.0, 10.0), grid(20.0, 10.0)]}), 170.0),
    ];
    assert_eq!(cases.len(), 9);
    for (more, said) in cases {
        feet(score_lines(&hall(more)).expect("drawn").length, said);
    }
}

#[test]
fn a_border_keeps_its_corners_around_a_corner_that_points_in() {
    let corners = line(&[(0.0, 0.0), (40.0, 0.0), (40.0, 20.0), (30.0, 20.0), (30.0, 30.0), (0.0, 30.0)]);
    let plan = plan(&json!({"outline": {"polygon": corners}, "score_lines": [{"border": {"inset": "2 ft"}}]}));
    // 140 ft around; each of 5 corners takes 4 ft, the one that points in gives 4 ft.
    feet(pattern_lines(&plan, 0).expect("drawn").length, 124.0);
    let found = tiles(&plan, 0, Fraction::share(0.25).expect("a share")).expect("drawn");
    assert_eq!((found.whole, found.cut, found.full), (0, 2, None));
    // Inside: 36 by 26 ft less 10 by 10 ft.
    let inner = found.tiles.iter().map(|t| t.area).fold(Area::ZERO, Area::max);
    square_feet(inner, 36.0 * 26.0 - 100.0);
}

#[test]
fn tiles_whole_and_cut() {
    let quarter = Fraction::share(0.25).expect("a share");
    let count = |more: Value| {
        let found = tiles(&hall(more), 0, quarter).expect("drawn");
        (found.whole, found.cut, found.slivers)
    };
    assert_eq!(count(json!({"score_lines": [grid(10.0, 10.0)]})), (12, 0, 0));
    // 40 ft are 3 tiles of 12 ft and one of 4 ft, 30 ft are 2 and one of 6 ft; none below 3 ft.
    assert_eq!(count(json!({"score_lines": [grid(12.0, 12.0)]})), (6, 6, 0));
    // 3 tiles of 13 ft and one of 1 ft; 30 ft are 3 tiles: a column of 3 slivers.
    assert_eq!(count(json!({"score_lines": [grid(13.0, 10.0)]})), (9, 3, 3));
    // A column in the corner of four tiles.
    let column = json!([rectangle(9.0, 9.0, 2.0, 2.0)]);
    assert_eq!(count(json!({"score_lines": [grid(10.0, 10.0)], "cut_outs": column})), (8, 4, 0));
    // One within a tile.
    let column = json!([rectangle(4.0, 4.0, 2.0, 2.0)]);
    assert_eq!(count(json!({"score_lines": [grid(10.0, 10.0)], "cut_outs": column})), (11, 1, 0));
    let error = tiles(&hall(json!({})), 0, quarter).expect_err("no pattern");
    assert_eq!(error, LayoutError::NoPattern { index: 0, count: 0 });
}

#[test]
fn sections_between_joints() {
    let areas = |more: Value| {
        let sections = Sections::of(&hall(more), ALL).expect("drawn");
        let mut areas: Vec<f64> = sections.sections().iter().map(|s| s.area.as_square_feet().round()).collect();
        areas.sort_by(f64::total_cmp);
        areas
    };
    let up: &[(f64, f64)] = &[(10.0, 0.0), (10.0, 30.0)];
    let across: &[(f64, f64)] = &[(-5.0, 20.0), (45.0, 20.0)];
    assert_eq!(areas(json!({})), [1200.0]);
    assert_eq!(areas(json!({"joints": joints(&[up, across])})), [100.0, 200.0, 300.0, 600.0]);
    // A joint that ends on the slab cuts nothing, nor one from a wall to a column.
    assert_eq!(areas(json!({"joints": joints(&[&[(10.0, 0.0), (10.0, 29.0)]])})), [1200.0]);
    let column = json!([rectangle(9.0, 9.0, 2.0, 2.0)]);
    assert_eq!(areas(json!({"joints": joints(&[&[(10.0, 0.0), (10.0, 10.0)]]), "cut_outs": column})), [1196.0]);
    // One that ends on another joint does.
    assert_eq!(areas(json!({"joints": joints(&[across, &[(10.0, 0.0), (10.0, 20.0)]])})), [200.0, 400.0, 600.0]);
    // An eighth of an inch short is the tape's fault, an inch is not.
    let short = |inches: f64| json!({"joints": joints(&[across, &[(10.0, 0.0), (10.0, 20.0 - inches / 12.0)]])});
    assert_eq!(areas(short(0.125)), [200.0, 400.0, 600.0]);
    assert_eq!(areas(short(1.0)), [400.0, 800.0]);
    // A ring of joints on its own, and a score line: the score line cuts the outer part alone.
    let ring: &[(f64, f64)] = &[(5.0, 5.0), (8.0, 5.0), (8.0, 8.0), (5.0, 8.0), (5.0, 5.0)];
    assert_eq!(areas(json!({"joints": joints(&[ring])})), [9.0, 1191.0]);
    let score = json!([{"lines": {"lines": [line(&[(0.0, 20.0), (40.0, 20.0)])]}}]);
    assert_eq!(areas(json!({"joints": joints(&[ring]), "score_lines": score.clone()})), [9.0, 400.0, 791.0]);
    let only = Sections::of(
        &hall(json!({"joints": joints(&[ring]), "score_lines": score})),
        Cuts { joints: true, score_lines: false },
    );
    assert_eq!(only.expect("drawn").sections().len(), 2);
}

#[test]
fn sections_know_their_place() {
    let zones = json!([{"name": "West", "shape": rectangle(0.0, 0.0, 15.0, 30.0)}, {"name": "East"}]);
    let plan =
        hall(json!({"joints": joints(&[&[(10.0, 0.0), (10.0, 30.0)], &[(0.0, 20.0), (40.0, 20.0)]]), "zones": zones}));
    let sections = Sections::of(&plan, ALL).expect("drawn");
    let ids: Vec<(usize, f64)> = sections.sections().iter().map(|s| (s.id, s.area.as_square_feet().round())).collect();
    assert_eq!(ids, [(1, 200.0), (2, 600.0), (3, 100.0), (4, 300.0)]);
    let zones: Vec<(String, f64)> = sections.sections()[1]
        .zones(&plan)
        .iter()
        .map(|s| (s.zone.name().to_owned(), s.area.as_square_feet().round()))
        .collect();
    assert_eq!(zones, [("West".to_owned(), 100.0), ("East".to_owned(), 500.0)]);
    feet(sections.sections()[1].long, 30.0);
    feet(sections.sections()[1].short, 20.0);
    feet(sections.sections()[1].perimeter, 100.0);
    let met: Vec<((usize, usize), f64)> =
        sections.meetings().iter().map(|m| (m.sections, m.length.as_feet().round())).collect();
    assert_eq!(met, [((1, 2), 20.0), ((1, 3), 10.0), ((2, 4), 30.0), ((3, 4), 10.0)]);
    assert!(sections.meetings().iter().all(|m| m.at_joints == m.length));
    assert_eq!(sections.at(at(5.0, 25.0)).map(|s| s.id), Some(3));
    assert_eq!(sections.at(at(-5.0, 25.0)).map(|s| s.id), None);
    // A patch of 2 ft by 2 ft around the crossing lies in all four.
    let patch = Patch::polygon(&[at(9.0, 19.0), at(11.0, 19.0), at(11.0, 21.0), at(9.0, 21.0)]).expect("a patch");
    let shares = sections.shares(&patch);
    assert_eq!(shares.iter().map(|(id, _)| *id).collect::<Vec<_>>(), [1, 2, 3, 4]);
    shares.iter().for_each(|(_, area)| square_feet(*area, 1.0));
}

#[test]
fn sections_joined_to_what_a_crew_can_keep_wet() {
    let plan = hall(json!({"score_lines": [grid(10.0, 10.0)]}));
    let sections = Sections::of(&plan, ALL).expect("drawn");
    let joined = |square_feet: f64| {
        let joined = sections.merged(Area::square_feet(square_feet)).expect("a wish");
        joined.sections().iter().map(|s| s.area.as_square_feet().round()).collect::<Vec<_>>()
    };
    assert_eq!(joined(50.0), [100.0; 12]);
    assert_eq!(joined(1200.0), [1200.0]);
    assert_eq!(joined(200.0).len(), 6);
    let some = joined(350.0);
    assert!(some.iter().all(|a| *a <= 350.0) && some.len() <= 6, "{some:?}");
    let sum: f64 = some.iter().sum();
    assert!((sum - 1200.0).abs() < 1e-6);
    // No section can join a neighbor any more.
    let last = sections.merged(Area::square_feet(350.0)).expect("a wish");
    let area = |id: usize| last.sections()[id - 1].area.as_square_feet();
    assert!(last.meetings().iter().all(|m| area(m.sections.0) + area(m.sections.1) > 350.0));
    let error = sections.merged(Area::ZERO).expect_err("no wish");
    assert!(error.to_string().contains("above zero"), "{error}");
}

#[test]
fn a_joint_typed_twice_counts_once() {
    let plan = hall(
        json!({"joints": joints(&[&[(10.0, 0.0), (10.0, 30.0)], &[(10.0, 10.0), (10.0, 40.0)], &[(0.0, 20.0), (9.0, 20.0)]])}),
    );
    feet(joint_lines(&plan).expect("drawn").length, 39.0);
}

#[test]
fn areas_alone_have_no_lines() {
    let plan = plan(&json!({"outline": {"area": "850 ft2"}}));
    assert_eq!(joint_lines(&plan), Err(LayoutError::NotDrawn));
    assert_eq!(score_lines(&plan), Err(LayoutError::NotDrawn));
    assert!(matches!(Sections::of(&plan, ALL), Err(LayoutError::NotDrawn)));
}
