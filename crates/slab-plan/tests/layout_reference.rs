//! 40 random layouts measured by Shapely (`reference/plan/make_layouts.py make --seed 20 --count 40`):
//! lengths of joints and score lines, areas between them, whole and cut tiles.

use serde_json::Value;
use slab_plan::layout::{Cuts, Sections, joint_lines, pattern_lines, score_lines, tiles};
use slab_plan::{Plan, PlanSpec};
use units::Fraction;

const TOLERANCE: f64 = 1e-9;

fn numbers(value: &Value) -> Vec<f64> {
    value.as_array().expect("a list").iter().map(|v| v.as_f64().expect("a number")).collect()
}

fn areas(plan: &Plan, score_lines: bool) -> Vec<f64> {
    let sections = Sections::of(plan, Cuts { joints: true, score_lines }).expect("drawn");
    let mut areas: Vec<f64> = sections.sections().iter().map(|s| s.area.as_square_meters()).collect();
    areas.sort_by(f64::total_cmp);
    areas
}

#[test]
fn layouts_agree_with_shapely() {
    let path = concat!(env!("CARGO_MANIFEST_DIR"), "/../../reference/plan/layouts_40.jsonl");
    let text = std::fs::read_to_string(path).expect("the reference");
    let (mut layouts, mut lengths, mut faces, mut patterns) = (0, 0, 0, 0);
    for line in text.lines() {
        let said: Value = serde_json::from_str(line).expect("JSON");
        let spec = PlanSpec::from_json(&said["plan"].to_string()).expect("a plan");
        let plan = Plan::resolve(&spec).expect("a sound slab");
        let joints = joint_lines(&plan).expect("drawn").length.as_meters();
        let scores = score_lines(&plan).expect("drawn").length.as_meters();
        let mut pairs = vec![(joints, said["joints_m"].clone()), (scores, said["scores_m"].clone())];
        for (i, (length, counts)) in
            numbers(&said["patterns_m"]).iter().zip(said["tiles"].as_array().expect("a list")).enumerate()
        {
            pairs.push((pattern_lines(&plan, i).expect("drawn").length.as_meters(), Value::from(*length)));
            let found = tiles(&plan, i, Fraction::share(0.25).expect("a share")).expect("drawn");
            assert_eq!(serde_json::json!([found.whole, found.cut]), *counts, "layout {}", layouts + 1);
            patterns += 1;
        }
        for (ours, theirs) in pairs {
            let theirs = theirs.as_f64().expect("a number");
            assert!((ours - theirs).abs() <= TOLERANCE * theirs.max(1e-3), "layout {}: {ours}, {theirs}", layouts + 1);
            lengths += 1;
        }
        let whole = plan.area().as_square_meters();
        for (key, score_lines) in [("panels_m2", false), ("sections_m2", true)] {
            let (ours, theirs) = (areas(&plan, score_lines), numbers(&said[key]));
            assert_eq!(ours.len(), theirs.len(), "layout {} {key}", layouts + 1);
            let off = ours.iter().zip(&theirs).map(|(a, b)| (a - b).abs()).fold(0.0, f64::max);
            assert!(off <= TOLERANCE * whole, "layout {} {key}: off by {off} m2", layouts + 1);
            faces += ours.len();
        }
        layouts += 1;
    }
    assert_eq!((layouts, lengths, faces, patterns), (40, 123, 2491, 43));
}
