//! Laws of the plan, as properties.

use proptest::prelude::*;
use serde_json::{Value, json};
use slab_plan::{Offset, Patch, Plan, PlanError, PlanSpec, Point, WalkState};
use units::Length;

fn plan(spec: &Value) -> Result<Plan, PlanError> {
    Plan::resolve(&PlanSpec::from_json(&spec.to_string())?)
}

fn polygon(corners: &[(f64, f64)]) -> Value {
    json!({"polygon": corners.iter().map(|(x, y)| json!([format!("{x} m"), format!("{y} m")])).collect::<Vec<_>>()})
}

fn rectangle(x: f64, y: f64, width: f64, depth: f64) -> Value {
    json!({"rectangles": [{
        "corner": [format!("{x} m"), format!("{y} m")], "width": format!("{width} m"), "depth": format!("{depth} m")
    }]})
}

fn at(x: f64, y: f64) -> Point {
    Point::new(Offset::meters(x), Offset::meters(y))
}

fn relative(found: f64, said: f64) -> f64 {
    (found - said).abs() / said.abs().max(1e-300)
}

/// A star-shaped slab around the origin, 3 to 20 m in radius; corners in order, counter-clockwise. No
/// two neighbors stand more than a third of a turn apart, so the origin always lies inside.
fn slab() -> impl Strategy<Value = Vec<(f64, f64)>> {
    prop::collection::vec((0.5..1.0f64, 0.4..1.0f64), 5..12).prop_flat_map(|steps| {
        (Just(steps), 3.0..20.0f64).prop_map(|(steps, radius)| {
            let around: f64 = steps.iter().map(|(angle, _)| angle).sum();
            let mut angle = 0.0;
            steps
                .iter()
                .map(|(step, share)| {
                    angle += step / around * std::f64::consts::TAU;
                    (radius * share * angle.cos(), radius * share * angle.sin())
                })
                .collect()
        })
    })
}

/// The walk around a polygon, with turns in decimal degrees.
fn walk_around(corners: &[(f64, f64)]) -> Vec<(f64, f64)> {
    let n = corners.len();
    let mut before = 90.0;
    (0..n)
        .map(|i| {
            let ((x, y), (to_x, to_y)) = (corners[i], corners[(i + 1) % n]);
            let bearing = (to_x - x).atan2(to_y - y).to_degrees();
            let turn: f64 = (bearing - before + 540.0).rem_euclid(360.0) - 180.0;
            before = bearing;
            (turn, (to_x - x).hypot(to_y - y))
        })
        .collect()
}

fn walk(start: (f64, f64), legs: &[(f64, f64)], limit: &str) -> Value {
    let turn = |t: f64| if t < 0.0 { format!("left {}", -t) } else { format!("right {t}") };
    let legs: Vec<Value> = legs.iter().map(|(t, l)| json!({"turn": turn(*t), "length": format!("{l} m")})).collect();
    json!({"walk": {"start": [format!("{} m", start.0), format!("{} m", start.1)], "legs": legs, "limit": limit}})
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(256))]

    #[test]
    fn area_and_perimeter_do_not_depend_on_where_how_turned_or_where_begun(
        corners in slab(), turn in 0.0..360.0f64, x in -500.0..500.0f64, y in -500.0..500.0f64, first in 0usize..12,
    ) {
        let first = first % corners.len();
        let (sin, cos) = turn.to_radians().sin_cos();
        let mut moved: Vec<(f64, f64)> =
            corners.iter().map(|(a, b)| (x + a * cos - b * sin, y + a * sin + b * cos)).collect();
        moved.rotate_left(first);
        let mut backward = corners.clone();
        backward.reverse();
        let here = plan(&json!({"outline": polygon(&corners)})).expect("sound");
        for other in [moved, backward] {
            let there = plan(&json!({"outline": polygon(&other)})).expect("sound");
            prop_assert!(relative(there.area().as_square_meters(), here.area().as_square_meters()) < 1e-10);
            let (a, b) = (there.perimeter().expect("drawn"), here.perimeter().expect("drawn"));
            prop_assert!(relative(a.as_meters(), b.as_meters()) < 1e-11);
        }
    }

    #[test]
    fn the_centroid_moves_with_the_slab(corners in slab(), x in -500.0..500.0f64, y in -500.0..500.0f64) {
        let moved: Vec<(f64, f64)> = corners.iter().map(|(a, b)| (a + x, b + y)).collect();
        let here = plan(&json!({"outline": polygon(&corners)})).expect("sound").centroid().expect("drawn");
        let there = plan(&json!({"outline": polygon(&moved)})).expect("sound").centroid().expect("drawn");
        prop_assert!(there.distance(at(here.x.as_meters() + x, here.y.as_meters() + y)) < Length::meters(1e-9));
    }

    #[test]
    fn the_walk_around_a_closed_polygon_has_no_misclosure(corners in slab()) {
        let spec = json!({"outline": walk(corners[0], &walk_around(&corners), "1:200")});
        let walked = plan(&spec).expect("closes");
        prop_assert_eq!(walked.walks()[0].1.state, WalkState::Exact);
        let drawn = plan(&json!({"outline": polygon(&corners)})).expect("sound");
        prop_assert!(relative(walked.area().as_square_meters(), drawn.area().as_square_meters()) < 1e-10);
    }

    #[test]
    fn after_adjustment_the_walk_closes_and_each_leg_bears_its_share(
        corners in slab(), off in prop::collection::vec(-0.004..0.004f64, 12),
    ) {
        let mut legs = walk_around(&corners);
        for (leg, off) in legs.iter_mut().zip(&off) {
            leg.1 *= 1.0 + off;
        }
        let walked = plan(&json!({"outline": walk(corners[0], &legs, "1:20")})).expect("within the limit");
        let walk = &walked.walks()[0].1;
        let sum = |part: fn(&slab_plan::WalkLeg) -> Offset| walk.legs.iter().map(|l| part(l).as_meters()).sum::<f64>();
        prop_assert!(sum(|l| l.adjusted_departure()).abs() < 1e-12 * walk.perimeter.as_meters());
        prop_assert!(sum(|l| l.adjusted_latitude()).abs() < 1e-12 * walk.perimeter.as_meters());
        // No corner moves further than the walk was open.
        for (moved, walked) in walk.points.iter().zip(unadjusted(corners[0], walk)) {
            prop_assert!(moved.distance(walked) <= walk.misclosure + Length::meters(1e-9));
        }
    }

    #[test]
    fn zones_and_cut_outs_add_up_to_the_outline(
        split in 1.0..11.0f64, low in 0.5..4.0f64, column in (0.5..10.0f64, 0.5..6.0f64), size in 0.2..1.5f64,
    ) {
        // A 12 m by 8 m slab: a zone on the left, a zone in a corner of the right, the rest.
        let spec = json!({
            "outline": rectangle(0.0, 0.0, 12.0, 8.0),
            "cut_outs": [rectangle(column.0, column.1, size, size)],
            "zones": [
                {"name": "left", "shape": rectangle(0.0, 0.0, split, 8.0)},
                {"name": "corner", "shape": rectangle(split, 0.0, 12.0 - split, low)},
                {"name": "rest"},
            ],
        });
        let plan = plan(&spec).expect("sound");
        let zones: f64 = plan.zones().iter().map(|z| z.area().as_square_meters()).sum();
        prop_assert!((zones + plan.cut_out_area().as_square_meters() - 96.0).abs() < 1e-6);
        prop_assert!((plan.cut_out_area().as_square_meters() - size * size).abs() < 1e-6);
        prop_assert!((plan.outline_area().as_square_meters() - 96.0).abs() < 1e-9);
        prop_assert!(plan.unzoned_area().as_square_meters() < 1e-6);
    }

    #[test]
    fn a_point_lies_in_the_zone_that_geometry_says(
        corners in slab(), x in -20.0..20.0f64, y in -20.0..20.0f64, split in 0.05..0.45f64,
    ) {
        // The zone is a triangle fan of the slab: origin, and the corners up to a share of them.
        let take = 2 + ((corners.len() - 2) as f64 * split) as usize;
        let mut fan = vec![(0.0, 0.0)];
        fan.extend(&corners[..take]);
        let spec = json!({"outline": polygon(&corners), "zones": [
            {"name": "fan", "shape": polygon(&fan)}, {"name": "rest"},
        ]});
        let plan = plan(&spec).expect("the origin lies inside the slab, so the fan does too");
        let inside = |ring: &[(f64, f64)]| {
            use geo::Contains;
            geo::Polygon::new(geo::LineString::from(ring.to_vec()), vec![]).contains(&geo::Point::new(x, y))
        };
        let expected = match (inside(&corners), inside(&fan)) {
            (_, true) => Some("fan"),
            (true, false) => Some("rest"),
            (false, false) => None,
        };
        prop_assert_eq!(plan.zone_at(at(x, y)).map(slab_plan::Zone::name), expected);
        prop_assert_eq!(plan.contains(at(x, y)), expected.is_some());
    }

    #[test]
    fn every_point_of_the_edge_lies_in_some_zone(corners in slab(), along in 0.0..1.0f64, left in 0.2..0.8f64) {
        let across = 40.0 * left;
        let half = json!({"polygon": [["-20 m", "-20 m"], [format!("{} m", across - 20.0), "-20 m"],
            [format!("{} m", 20.0 - across), "20 m"], ["-20 m", "20 m"]]});
        let spec = json!({"outline": rectangle(-20.0, -20.0, 40.0, 40.0), "cut_outs": [polygon(&corners)], "zones": [
            {"name": "half", "shape": half}, {"name": "rest"},
        ]});
        let plan = plan(&spec).expect("sound");
        for i in 0..corners.len() {
            let ((x, y), (to_x, to_y)) = (corners[i], corners[(i + 1) % corners.len()]);
            let point = at(x + along * (to_x - x), y + along * (to_y - y));
            prop_assert!(plan.contains(point) && plan.zone_at(point).is_some(), "{point:?}");
        }
    }

    #[test]
    fn the_shares_of_a_circle_and_of_its_polygon_agree(
        corners in slab(), x in -15.0..15.0f64, y in -15.0..15.0f64, radius in 0.2..8.0f64,
    ) {
        let plan = plan(&json!({"outline": polygon(&corners)})).expect("sound");
        let sum = |patch: &Patch| plan.shares(patch).iter().map(|s| s.area.as_square_meters()).sum::<f64>();
        let circle = sum(&Patch::circle(at(x, y), Length::meters(radius)).expect("a radius"));
        let gon = |radius: f64| {
            let corner = |i: i32| {
                let angle = std::f64::consts::TAU * f64::from(i) / 180.0;
                at(x + radius * angle.cos(), y + radius * angle.sin())
            };
            sum(&Patch::polygon(&(0..180).map(corner).collect::<Vec<_>>()).expect("a polygon"))
        };
        // The circle lies between the polygon drawn in it and the one drawn around it.
        let around = radius / (std::f64::consts::PI / 180.0).cos();
        prop_assert!(gon(radius) <= circle + 1e-6 && circle <= gon(around) + 1e-6, "{} {circle} {}", gon(radius), gon(around));
    }

    #[test]
    fn what_is_typed_comes_back_as_typed(corners in slab()) {
        let typed = json!({"outline": polygon(&corners), "north": "15 deg"}).to_string();
        let spec = PlanSpec::from_json(&typed).expect("reads");
        prop_assert_eq!(serde_json::to_string(&spec).expect("writes"), typed);
    }
}

/// The corners as walked, before adjustment.
fn unadjusted(start: (f64, f64), walk: &slab_plan::Walk) -> Vec<Point> {
    let mut point = at(start.0, start.1);
    walk.legs
        .iter()
        .map(|leg| {
            let here = point;
            point = Point::new(point.x + leg.departure, point.y + leg.latitude);
            here
        })
        .collect()
}
