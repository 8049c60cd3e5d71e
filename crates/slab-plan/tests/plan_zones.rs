//! Zones, cut-outs and patches on slabs small enough to work out by hand.

use serde_json::{Value, json};
use slab_plan::{Offset, Patch, Plan, PlanError, PlanSpec, Point, Zone};
use units::Length;

fn plan(spec: Value) -> Result<Plan, PlanError> {
    Plan::resolve(&PlanSpec::from_json(&spec.to_string())?)
}

/// A rectangle in feet.
fn rectangle(x: f64, y: f64, width: f64, depth: f64) -> Value {
    json!({"rectangles": [{
        "corner": [format!("{x} ft"), format!("{y} ft")], "width": format!("{width} ft"), "depth": format!("{depth} ft")
    }]})
}

fn at(x: f64, y: f64) -> Point {
    Point::new(Offset::feet(x), Offset::feet(y))
}

fn feet2(zone: Option<&Zone>) -> f64 {
    zone.expect("is there").area().as_square_feet()
}

fn near(found: f64, said: f64) {
    assert!((found - said).abs() < 1e-6, "{found} against {said}");
}

/// 40 by 30 ft, a 2 ft column straddling the line between hall and kitchen, a porch left over.
fn house() -> Plan {
    plan(json!({
        "outline": rectangle(0.0, 0.0, 40.0, 30.0),
        "cut_outs": [rectangle(19.0, 10.0, 2.0, 2.0)],
        "zones": [
            {"name": "Hall", "shape": rectangle(0.0, 0.0, 20.0, 30.0)},
            {"name": "porch"},
            {"name": "kitchen", "shape": rectangle(20.0, 0.0, 20.0, 20.0)},
        ],
        "north": "15 deg",
    }))
    .expect("sound")
}

#[test]
fn a_cut_out_is_taken_from_each_zone_it_lies_in() {
    let house = house();
    near(feet2(house.zone("hall")), 598.0);
    near(feet2(house.zone(" KITCHEN ")), 398.0);
    near(feet2(house.zone("porch")), 200.0);
    near(house.area().as_square_feet(), 1196.0);
    near(house.outline_area().as_square_feet(), 1200.0);
    near(house.cut_out_area().as_square_feet(), 4.0);
    near(house.unzoned_area().as_square_feet(), 0.0);
    near(house.perimeter().expect("drawn").as_feet(), 148.0);
    near(house.zone("porch").and_then(Zone::perimeter).expect("drawn").as_feet(), 60.0);
    near(house.zone("porch").and_then(Zone::centroid).expect("drawn").y.as_feet(), 25.0);
    assert_eq!(house.zones().iter().map(Zone::name).collect::<Vec<_>>(), ["Hall", "porch", "kitchen"]);
    assert!((house.north().expect("given").as_degrees() - 15.0).abs() < 1e-12);
    assert!(house.zone("cellar").is_none());
}

#[test]
fn every_point_of_the_slab_has_one_zone_and_shared_edges_go_to_the_first() {
    let house = house();
    let name = |x, y| house.zone_at(at(x, y)).map(Zone::name);
    assert_eq!(name(5.0, 5.0), Some("Hall"));
    assert_eq!(name(30.0, 25.0), Some("porch"));
    assert_eq!(name(30.0, 5.0), Some("kitchen"));
    assert_eq!(name(20.0, 5.0), Some("Hall"), "shared with the kitchen");
    assert_eq!(name(30.0, 20.0), Some("porch"), "shared with the kitchen, typed before it");
    assert_eq!(name(40.0, 30.0), Some("porch"), "a corner of the slab");
    assert_eq!(name(20.0, 11.0), None, "in the column");
    assert_eq!(name(19.0, 11.0), Some("Hall"), "on the column's edge");
    assert_eq!(name(40.1, 5.0), None);
    assert!(house.contains(at(0.0, 0.0)) && !house.contains(at(20.0, 11.0)) && !house.contains(at(-0.1, 5.0)));
}

#[test]
fn drawing_gets_rings_in_the_plans_own_axes() {
    let house = house();
    let pieces = house.pieces();
    let [piece] = pieces.as_slice() else { panic!("one piece") };
    assert_eq!((piece.outer.len(), piece.holes.len(), piece.holes[0].len()), (4, 1, 4));
    let (low, high) = house.bounds().expect("drawn");
    assert_eq!((low, high), (at(0.0, 0.0), at(40.0, 30.0)));
    assert_eq!(house.cut_out_pieces().len(), 1);
}

#[test]
fn without_zones_the_slab_is_one_zone() {
    let plain = plan(json!({"outline": rectangle(0.0, 0.0, 10.0, 10.0)})).expect("sound");
    assert_eq!(plain.zones().len(), 1);
    assert_eq!(plain.zone_at(at(3.0, 3.0)).map(Zone::name), Some("whole"));
    near(feet2(plain.zone("whole")), 100.0);
}

#[test]
fn what_no_zone_takes_is_told() {
    let part = plan(json!({
        "outline": rectangle(0.0, 0.0, 10.0, 10.0),
        "zones": [{"name": "A", "shape": rectangle(0.0, 0.0, 4.0, 10.0)}],
    }))
    .expect("sound");
    near(part.unzoned_area().as_square_feet(), 60.0);
    assert!(part.zone_at(at(8.0, 5.0)).is_none() && part.contains(at(8.0, 5.0)));
}

#[test]
fn overlapping_rectangles_count_once() {
    let l = plan(json!({"outline": {"rectangles": [
        {"corner": ["-10 ft", "0"], "width": "30 ft", "depth": "10 ft"},
        {"corner": ["-10 ft", "0"], "width": "10 ft", "depth": "25 ft"},
    ]}}))
    .expect("sound");
    assert!((l.area().as_square_feet() - 450.0).abs() < 1e-9, "300 + 250 - 100");
    assert_eq!(l.pieces()[0].outer.len(), 6);
    assert!(l.contains(at(-10.0, 25.0)) && !l.contains(at(5.0, 15.0)));
}

#[test]
fn a_zone_a_hair_over_the_edge_is_trimmed_and_nothing_is_counted_twice() {
    let trimmed = plan(json!({
        "outline": rectangle(0.0, 0.0, 20.0, 10.0),
        "zones": [
            {"name": "A", "shape": {"rectangles": [{"corner": ["0", "0"], "width": "10 ft 1/8 in", "depth": "10 ft 1/8 in"}]}},
            {"name": "B", "shape": rectangle(10.0, 0.0, 10.0, 10.0)},
        ],
    }))
    .expect("an eighth of an inch is within the tape's honesty");
    near(feet2(trimmed.zone("A")), 10.0 * (10.0 + 1.0 / 96.0));
    near(feet2(trimmed.zone("B")), 10.0 * (10.0 - 1.0 / 96.0));
}

#[test]
fn zones_drawn_square_fit_an_outline_that_was_adjusted() {
    let walked = json!({"walk": {"start": ["0", "0"], "legs": [
        {"length": "40 ft"}, {"turn": "left", "length": "30 ft"},
        {"turn": "left", "length": "40' 1\""}, {"turn": "left", "length": "30 ft"},
    ]}});
    let plan = plan(json!({"outline": walked, "zones": [
        {"name": "A", "shape": rectangle(0.0, 0.0, 20.0, 30.0)}, {"name": "B"},
    ]}))
    .expect("the outline is only known to its inch");
    let sum: f64 = plan.zones().iter().map(|z| z.area().as_square_feet()).sum();
    near(sum, plan.area().as_square_feet());
}

#[test]
fn an_area_alone_is_divided_but_has_no_places() {
    let bid = plan(json!({
        "outline": {"area": "1200 ft2"},
        "cut_outs": [{"area": "20 ft2"}],
        "zones": [{"name": "shop", "shape": {"area": "700 ft2"}}, {"name": "office"}],
    }))
    .expect("sound");
    near(feet2(bid.zone("shop")), 700.0);
    near(feet2(bid.zone("office")), 480.0);
    near(bid.area().as_square_feet(), 1180.0);
    assert!(!bid.is_drawn() && bid.perimeter().is_none() && bid.centroid().is_none() && bid.bounds().is_none());
    assert!(bid.zone_at(at(1.0, 1.0)).is_none() && bid.pieces().is_empty());
    let spill = Patch::circle(at(1.0, 1.0), Length::feet(2.0)).expect("a radius");
    assert!(bid.shares(&spill).is_empty());
}

#[test]
fn a_spill_is_shared_between_the_zones_it_touches() {
    let house = house();
    let spill = Patch::circle(at(20.0, 3.0), Length::feet(2.0)).expect("a radius");
    let shares: Vec<(&str, f64)> =
        house.shares(&spill).iter().map(|s| (s.zone.name(), s.area.as_square_feet())).collect();
    // Half of π 2² in each.
    let half = std::f64::consts::TAU;
    assert_eq!(shares.iter().map(|(name, _)| *name).collect::<Vec<_>>(), ["Hall", "kitchen"]);
    shares.iter().for_each(|(_, area)| near(*area, half));

    // Over the corner of the slab a quarter of it lies on the slab.
    let corner = Patch::circle(at(0.0, 0.0), Length::feet(3.0)).expect("a radius");
    let [share] = house.shares(&corner).try_into().expect("one zone");
    near(share.area.as_square_feet(), std::f64::consts::PI * 9.0 / 4.0);

    // A circle around everything covers the zones, not the column.
    let all = Patch::circle(at(20.0, 15.0), Length::feet(60.0)).expect("a radius");
    near(house.shares(&all).iter().map(|s| s.area.as_square_feet()).sum(), 1196.0);

    let square = Patch::polygon(&[at(18.0, 9.0), at(22.0, 9.0), at(22.0, 13.0), at(18.0, 13.0)]).expect("a polygon");
    let sum: f64 = house.shares(&square).iter().map(|s| s.area.as_square_feet()).sum();
    near(sum, 16.0 - 4.0);

    let away = Patch::circle(at(100.0, 100.0), Length::feet(5.0)).expect("a radius");
    assert!(house.shares(&away).is_empty());
    assert!(Patch::circle(at(0.0, 0.0), Length::ZERO).is_err());
    assert!(Patch::polygon(&[at(0.0, 0.0), at(1.0, 1.0)]).is_err());
}
