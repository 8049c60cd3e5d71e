//! Areas, perimeters and centroids against Shapely, a general geometry library, on 500 random slabs
//! (`reference/plan/make_polygons.py make --seed 20 --count 500`, Shapely 2.1.1; grade V).

use serde::Deserialize;
use serde_json::{Value, json};
use slab_plan::{Plan, PlanSpec};

const SLABS: &str = include_str!("../../../reference/plan/polygons_500.jsonl");

/// Relative; for the centroid against the root of the area.
const TOLERANCE: f64 = 1e-9;

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct Case {
    outline: Vec<[f64; 2]>,
    cut_outs: Vec<Vec<[f64; 2]>>,
    area_m2: f64,
    perimeter_m: f64,
    centroid_m: [f64; 2],
}

fn polygon(corners: &[[f64; 2]]) -> Value {
    let point = |[x, y]: &[f64; 2]| json!([format!("{x} m"), format!("{y} m")]);
    json!({"polygon": corners.iter().map(point).collect::<Vec<_>>()})
}

#[test]
fn five_hundred_random_slabs_measure_as_shapely_says() {
    let mut with_cut_outs = 0;
    let mut count = 0;
    for (i, line) in SLABS.lines().enumerate() {
        let case: Case = serde_json::from_str(line).expect("a case");
        let cut_outs: Vec<Value> = case.cut_outs.iter().map(|c| polygon(c)).collect();
        let typed = json!({"outline": polygon(&case.outline), "cut_outs": cut_outs}).to_string();
        let plan = Plan::resolve(&PlanSpec::from_json(&typed).expect("reads")).expect("a sound slab");
        let near = |what: &str, found: f64, said: f64, scale: f64| {
            let off = (found - said).abs() / scale;
            assert!(off <= TOLERANCE, "slab {}: {what} {found} against {said}, off by {off:e}", i + 1);
        };
        let centroid = plan.centroid().expect("drawn");
        near("area", plan.area().as_square_meters(), case.area_m2, case.area_m2);
        near("perimeter", plan.perimeter().expect("drawn").as_meters(), case.perimeter_m, case.perimeter_m);
        near("centroid x", centroid.x.as_meters(), case.centroid_m[0], case.area_m2.sqrt());
        near("centroid y", centroid.y.as_meters(), case.centroid_m[1], case.area_m2.sqrt());
        with_cut_outs += usize::from(!case.cut_outs.is_empty());
        count += 1;
    }
    assert_eq!((count, with_cut_outs), (500, 200));
}
