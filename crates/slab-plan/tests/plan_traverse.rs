//! Closure and compass-rule adjustment against worked traverses from surveying teaching
//! (`reference/plan/traverse.toml`; each case carries its source and grade).

use serde::Deserialize;
use serde_json::{Value, json};
use slab_plan::{Plan, PlanError, PlanSpec, Walk, WalkState};

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct File {
    traverse: Vec<Traverse>,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct Traverse {
    id: String,
    source: String,
    grade: String,
    grade_adjusted: String,
    #[expect(dead_code, reason = "for the reader of the data")]
    note: String,
    perimeter: f64,
    misclosure: f64,
    misclosure_tolerance: f64,
    parts: f64,
    parts_tolerance: f64,
    tolerance: f64,
    courses: Vec<Course>,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct Course {
    azimuth: String,
    length: f64,
    departure: f64,
    latitude: f64,
    adjusted_departure: Option<f64>,
    adjusted_latitude: Option<f64>,
}

fn cases() -> Vec<Traverse> {
    let file: File = toml::from_str(include_str!("../../../reference/plan/traverse.toml")).expect("reads");
    file.traverse
}

/// Whole seconds of `126°55'17"`.
fn seconds(azimuth: &str) -> i64 {
    let parts: Vec<i64> =
        azimuth.split(['°', '\'', '"']).filter(|p| !p.is_empty()).map(|p| p.parse().expect("a number")).collect();
    parts[0] * 3600 + parts[1] * 60 + parts[2]
}

/// The turn from one azimuth to another as a person writes it: `right 51°23'41"`.
fn turn(from: i64, to: i64) -> String {
    let full = 360 * 3600;
    let right = (to - from).rem_euclid(full);
    let (side, size) = if right > full / 2 { ("left", full - right) } else { ("right", right) };
    format!("{side} {}°{:02}'{:02}\"", size / 3600, size / 60 % 60, size % 60)
}

/// The walk with a closing turn, and the same walk with any limit.
fn typed(case: &Traverse, limit: Option<&str>) -> String {
    let east = 90 * 3600;
    let azimuths: Vec<i64> = case.courses.iter().map(|c| seconds(&c.azimuth)).collect();
    let legs: Vec<Value> = (0..azimuths.len())
        .map(|i| {
            let before = if i == 0 { east } else { azimuths[i - 1] };
            json!({"turn": turn(before, azimuths[i]), "length": format!("{} ft", case.courses[i].length)})
        })
        .collect();
    let closing = turn(azimuths[azimuths.len() - 1], azimuths[0]);
    let mut walk = json!({"start": ["0 ft", "0 ft"], "legs": legs, "closing_turn": closing});
    if let Some(limit) = limit {
        walk["limit"] = json!(limit);
    }
    json!({"outline": {"walk": walk}}).to_string()
}

fn resolve(typed: &str) -> Result<Plan, PlanError> {
    Plan::resolve(&PlanSpec::from_json(typed).expect("reads"))
}

fn near(id: &str, what: &str, found: f64, said: f64, tolerance: f64) {
    assert!((found - said).abs() <= tolerance, "{id}: {what} {found} against {said}");
}

fn check(case: &Traverse, walk: &Walk) {
    let id = &case.id;
    assert_eq!(walk.state, WalkState::Adjusted, "{id}");
    near(id, "perimeter", walk.perimeter.as_feet(), case.perimeter, 1e-9);
    near(id, "misclosure", walk.misclosure.as_feet(), case.misclosure, case.misclosure_tolerance);
    near(id, "precision", walk.precision.expect("not exact").parts(), case.parts, case.parts_tolerance);
    let turned = walk.angular_misclosure.expect("the closing turn was given").as_right_degrees();
    near(id, "angular misclosure", turned, 0.0, 1e-9);
    for (i, (leg, course)) in walk.legs.iter().zip(&case.courses).enumerate() {
        let at = format!("{id} course {}", i + 1);
        near(&at, "departure", leg.departure.as_feet(), course.departure, case.tolerance);
        near(&at, "latitude", leg.latitude.as_feet(), course.latitude, case.tolerance);
        if let Some((departure, latitude)) = course.adjusted_departure.zip(course.adjusted_latitude) {
            near(&at, "adjusted departure", leg.adjusted_departure().as_feet(), departure, case.tolerance);
            near(&at, "adjusted latitude", leg.adjusted_latitude().as_feet(), latitude, case.tolerance);
        }
    }
}

#[test]
fn worked_traverses_close_and_adjust_as_their_sources_say() {
    let cases = cases();
    for case in &cases {
        assert!(["V", "V2", "M"].contains(&case.grade.as_str()), "{}", case.id);
        assert!(["V", "V2", "M"].contains(&case.grade_adjusted.as_str()) && !case.source.is_empty(), "{}", case.id);
        let plan = resolve(&typed(case, None)).expect(&case.id);
        let [(path, walk)] = plan.walks() else { panic!("{}: one walk", case.id) };
        assert_eq!(path, "outline.walk");
        check(case, walk);
    }
    assert_eq!(cases.len(), 5);
    let courses: Vec<&Course> = cases.iter().flat_map(|c| &c.courses).collect();
    let adjusted = courses.iter().filter(|c| c.adjusted_departure.is_some() && c.adjusted_latitude.is_some());
    assert_eq!((courses.len(), adjusted.count()), (24, 22));
}

#[test]
fn the_poor_closure_is_refused_under_a_tighter_limit() {
    let cases = cases();
    let poor = cases.iter().find(|c| c.id == "six_course_worksheet").expect("is there");
    let refused = resolve(&typed(poor, Some("1:250"))).expect_err("1:202.5 is not 1:250");
    let PlanError::WalkOpen { path, walk, .. } = refused else { panic!("{refused}") };
    assert_eq!((path.as_str(), walk.state), ("outline.walk", WalkState::Open));
    near(&poor.id, "misclosure", walk.misclosure.as_feet(), poor.misclosure, poor.misclosure_tolerance);
    // Its source gives no direction; that of (18.0737, 16.8171) east and north.
    let direction = walk.direction.expect("not exact").as_degrees();
    near(&poor.id, "direction", direction, 47.0624, 0.001);
    assert!(walk.legs.iter().all(|l| l.departure_correction.as_meters() == 0.0), "nothing is adjusted");
}
