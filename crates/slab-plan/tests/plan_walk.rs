//! Walks along the walls as they come off a site: what closes, what is adjusted, what is refused
//! and which leg is blamed.

use serde_json::{Value, json};
use slab_plan::{Plan, PlanError, PlanSpec, Precision, Remedy, Turn, Walk, WalkState};
use units::Length;

/// Legs as `(turn, length)`; no turn on the first when it is empty.
fn walk(legs: &[(&str, &str)]) -> Value {
    let leg = |(turn, length): &(&str, &str)| match *turn {
        "" => json!({"length": length}),
        turn => json!({"turn": turn, "length": length}),
    };
    json!({"start": ["0", "0"], "legs": legs.iter().map(leg).collect::<Vec<_>>()})
}

fn outline(walk: Value) -> Result<Plan, PlanError> {
    Plan::resolve(&PlanSpec::from_json(&json!({"outline": {"walk": walk}}).to_string())?)
}

fn only_walk(plan: &Plan) -> &Walk {
    let [(_, walk)] = plan.walks() else { panic!("one walk") };
    walk
}

#[test]
fn an_l_shaped_room_closes_exactly() {
    let plan = outline(walk(&[
        ("", "30 ft"),
        ("left", "20 ft"),
        ("left 90", "12' 6\""),
        ("left", "8 ft"),
        ("right", "17' 6\""),
        ("left", "12 ft"),
    ]))
    .expect("closes");
    let walk = only_walk(&plan);
    assert_eq!((walk.state, walk.misclosure, walk.precision), (WalkState::Exact, Length::ZERO, None));
    // By hand: 30 × 20 less 17.5 × 8.
    assert!((plan.area().as_square_feet() - 460.0).abs() < 1e-9);
    assert!((plan.perimeter().expect("drawn").as_feet() - 100.0).abs() < 1e-9);
}

#[test]
fn a_small_gap_is_distributed_by_length() {
    let plan =
        outline(walk(&[("", "40 ft"), ("right", "30 ft"), ("right", "40' 2\""), ("right", "30 ft")])).expect("1:840");
    let walk = only_walk(&plan);
    assert_eq!(walk.state, WalkState::Adjusted);
    assert!((walk.misclosure.as_inches() - 2.0).abs() < 1e-9);
    assert!((walk.direction.expect("a gap").as_degrees() - 270.0).abs() < 1e-9, "it ends west of its start");
    // 2 in west over 140 ft 2 in; each leg is moved east by its share (compass rule, by hand).
    let share = 2.0 / (140.0 * 12.0 + 2.0);
    for (leg, feet) in walk.legs.iter().zip([40.0, 30.0, 40.0 + 2.0 / 12.0, 30.0]) {
        assert!((leg.departure_correction.as_feet() - share * feet).abs() < 1e-12);
        assert!(leg.latitude_correction.as_feet().abs() < 1e-12);
    }
}

#[test]
fn a_dropped_foot_is_refused_and_the_legs_along_it_are_named() {
    let refused =
        outline(walk(&[("", "40 ft"), ("right", "30 ft"), ("right", "37 ft"), ("right", "30 ft")])).expect_err("3 ft");
    let text = refused.to_string();
    let PlanError::WalkOpen { walk, suspects, .. } = refused else { panic!("{text}") };
    assert!((walk.misclosure.as_feet() - 3.0).abs() < 1e-9);
    let found: Vec<(usize, &str, f64)> = suspects
        .iter()
        .map(|s| match s.remedy {
            Remedy::Length(length) => (s.leg, s.typed.as_str(), (length.as_feet() * 1e6).round() / 1e6),
            Remedy::Turn(_) | Remedy::Inside(_) => panic!("no turn explains it"),
        })
        .collect();
    assert_eq!(found, [(1, "40 ft", 37.0), (3, "37 ft", 40.0)]);
    for part in ["outline.walk", "3' 0\"", "plan east (90°)", "1:200", "leg 1", "leg 3", "accepted"] {
        assert!(text.contains(part), "\"{part}\" in: {text}");
    }
}

#[test]
fn a_turn_taken_the_wrong_way_is_named() {
    // The L above with leg 4's turn to the wrong side.
    let refused = outline(walk(&[
        ("", "30 ft"),
        ("left", "20 ft"),
        ("left", "12' 6\""),
        ("right", "8 ft"),
        ("right", "17' 6\""),
        ("left", "12 ft"),
    ]))
    .expect_err("far open");
    let PlanError::WalkOpen { suspects, .. } = refused else { panic!("{refused}") };
    assert!(
        suspects.iter().any(|s| s.leg == 4 && s.remedy == Remedy::Turn(Turn::right_degrees(-90.0))),
        "{suspects:?}"
    );
}

/// 40 by 30 ft with one corner cut off by 4 ft on either wall: 45° are turned twice, and 135° lie inside.
fn cut_corner(first: &str, second: &str, last: &str) -> Result<Plan, PlanError> {
    outline(walk(&[("", "36 ft"), (first, "5' 7 7/8\""), (second, "26 ft"), ("left", "40 ft"), ("left", last)]))
}

#[test]
fn an_angle_typed_from_inside_the_corner_is_recognized() {
    cut_corner("left 45", "left 45", "30 ft").expect("as it is turned");
    for (first, second, legs) in
        [("left 135", "left 135", &[2, 3][..]), ("left 135", "left 45", &[2]), ("left 45", "left 135", &[3])]
    {
        let refused = cut_corner(first, second, "30 ft").expect_err("inside angles");
        let text = refused.to_string();
        let PlanError::WalkOpen { suspects, .. } = refused else { panic!("{text}") };
        let inside: Vec<usize> =
            suspects.iter().filter(|s| s.remedy == Remedy::Inside(Turn::right_degrees(-45.0))).map(|s| s.leg).collect();
        assert_eq!(inside, legs, "{first}, {second}: {text}");
        assert!(text.contains("is the angle inside the corner?"), "{text}");
    }
}

/// A wall typed wrong beside a slanted corner is not blamed on the corner.
#[test]
fn an_angle_that_was_turned_is_not_taken_for_one_inside() {
    let refused = cut_corner("left 45", "left 45", "27 ft").expect_err("3 ft short");
    let PlanError::WalkOpen { suspects, .. } = refused else { panic!("{refused}") };
    assert!(suspects.iter().any(|s| s.leg == 5 && matches!(s.remedy, Remedy::Length(_))), "{suspects:?}");
    assert!(!suspects.iter().any(|s| matches!(s.remedy, Remedy::Inside(_))), "{suspects:?}");
}

#[test]
fn with_the_closing_turn_the_turns_alone_show_it() {
    let mut typed =
        walk(&[("", "36 ft"), ("left 135", "5' 7 7/8\""), ("left 135", "26 ft"), ("left", "40 ft"), ("left", "30 ft")]);
    typed["closing_turn"] = json!("left");
    let refused = outline(typed).expect_err("540 degrees");
    let PlanError::TurnsOpen { suspects, .. } = refused else { panic!("{refused}") };
    let inside = suspects.iter().filter(|s| matches!(s.remedy, Remedy::Inside(_))).map(|s| s.leg);
    assert_eq!(inside.collect::<Vec<_>>(), [2, 3]);
}

#[test]
fn when_no_single_leg_explains_the_gap_none_is_blamed() {
    let refused = outline(walk(&[("", "40 ft"), ("right", "35 ft"), ("right", "35 ft"), ("right", "30 ft")]))
        .expect_err("5 ft both ways");
    let text = refused.to_string();
    let PlanError::WalkOpen { suspects, .. } = refused else { panic!("{text}") };
    assert_eq!(suspects, []);
    assert!(text.contains("no single leg explains it"), "{text}");
}

#[test]
fn a_stated_limit_moves_the_line() {
    let legs = [("", "40 ft"), ("right", "30 ft"), ("right", "40' 5\""), ("right", "30 ft")];
    assert!(outline(walk(&legs)).is_ok(), "5 in of 140 ft is 1:337");
    let mut tight = walk(&legs);
    tight["limit"] = json!("1:1000");
    let refused = outline(tight).expect_err("1:337 is not 1:1000");
    let PlanError::WalkOpen { walk, .. } = refused else { panic!("{refused}") };
    assert_eq!(walk.limit, Precision::one_in(1000.0));
}

#[test]
fn a_measured_closing_turn_shows_and_spreads_the_angular_misclosure() {
    let mut room = walk(&[("", "40 ft"), ("right 90.2", "30 ft"), ("right 90.1", "40 ft"), ("right 90", "30 ft")]);
    room["closing_turn"] = json!("right 90.1");
    let plan = outline(room).expect("0.4 degrees in four corners");
    let walk = only_walk(&plan);
    assert_eq!(walk.state, WalkState::Adjusted);
    assert!((walk.angular_misclosure.expect("measured").as_right_degrees() - 0.4).abs() < 1e-9);
    // Each corner gives up 0.1 degree; bearings by hand.
    for (leg, degrees) in walk.legs.iter().zip([90.0, 180.1, 270.1, 0.0]) {
        assert!((leg.bearing.as_degrees() - degrees).abs() < 1e-9, "{:?}", leg.bearing);
    }
}

#[test]
fn turns_that_do_not_go_around_are_refused_and_the_flipped_one_is_named() {
    let mut room = walk(&[("", "40 ft"), ("right", "30 ft"), ("left", "40 ft"), ("right", "30 ft")]);
    room["closing_turn"] = json!("right");
    let refused = outline(room).expect_err("adds up to 180");
    let text = refused.to_string();
    let PlanError::TurnsOpen { sum, suspects, .. } = refused else { panic!("{text}") };
    assert!((sum.as_right_degrees() - 180.0).abs() < 1e-9);
    assert_eq!(suspects.iter().map(|s| s.leg).collect::<Vec<_>>(), [3]);
    assert!(text.contains("right 180°") && text.contains("leg 3 (\"left\")"), "{text}");
}
