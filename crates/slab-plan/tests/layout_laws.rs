//! Laws of layouts, as properties.

use proptest::prelude::*;
use serde_json::{Value, json};
use slab_plan::layout::{Cuts, Sections, joint_lines};
use slab_plan::{Patch, Plan, PlanSpec};

type Xy = (f64, f64);

fn typed(points: &[Xy]) -> Value {
    json!(points.iter().map(|(x, y)| json!([format!("{x} m"), format!("{y} m")])).collect::<Vec<_>>())
}

fn plan(outline: &[Xy], joints: &[Vec<Xy>]) -> Option<Plan> {
    let joints: Vec<Value> = joints.iter().map(|j| json!({"line": typed(j)})).collect();
    let spec = json!({"outline": {"polygon": typed(outline)}, "joints": joints});
    Plan::resolve(&PlanSpec::from_json(&spec.to_string()).expect("reads")).ok()
}

fn sections(plan: &Plan) -> Sections {
    Sections::of(plan, Cuts { joints: true, score_lines: true }).expect("drawn")
}

fn areas(sections: &Sections) -> Vec<f64> {
    let mut areas: Vec<f64> = sections.sections().iter().map(|s| s.area.as_square_meters()).collect();
    areas.sort_by(f64::total_cmp);
    areas
}

fn same(a: &[f64], b: &[f64], whole: f64) -> bool {
    a.len() == b.len() && a.iter().zip(b).all(|(a, b)| (a - b).abs() <= 1e-8 * whole)
}

/// A star-shaped slab around the origin, and joints that run from side to side of it.
fn slab_and_joints() -> impl Strategy<Value = (Vec<Xy>, Vec<Vec<Xy>>)> {
    let radii = prop::collection::vec(5.0..15.0f64, 5..10);
    let ends = prop::collection::vec((0.0..6.2f64, 0.5..2.6f64, 4.0..30.0f64), 1..6);
    (radii, ends).prop_map(|(radii, ends)| {
        let step = std::f64::consts::TAU / radii.len() as f64;
        let at = |angle: f64, r: f64| (r * angle.cos(), r * angle.sin());
        let outline = radii.iter().enumerate().map(|(i, r)| at(i as f64 * step, *r)).collect();
        let joints = ends.iter().map(|(from, on, r)| vec![at(*from, 30.0), at(from + on, *r)]).collect();
        (outline, joints)
    })
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(96))]

    #[test]
    fn sections_add_up_to_the_slab_and_lie_apart((outline, joints) in slab_and_joints()) {
        let Some(plan) = plan(&outline, &joints) else { return Err(TestCaseError::reject("a joint off the slab")) };
        let found = sections(&plan);
        let whole = plan.area().as_square_meters();
        prop_assert!((areas(&found).iter().sum::<f64>() - whole).abs() <= 1e-9 * whole);
        for section in found.sections().iter().filter(|s| s.piece.holes.is_empty()) {
            let Ok(patch) = Patch::polygon(&section.piece.outer) else { continue };
            for (id, shared) in found.shares(&patch) {
                let said = if id == section.id { section.area.as_square_meters() } else { 0.0 };
                prop_assert!((shared.as_square_meters() - said).abs() <= 1e-7 * whole, "{} in {}", section.id, id);
            }
        }
    }

    #[test]
    fn the_order_of_lines_does_not_matter((outline, mut joints) in slab_and_joints()) {
        let Some(before) = plan(&outline, &joints) else { return Err(TestCaseError::reject("a joint off the slab")) };
        joints.reverse();
        joints.iter_mut().for_each(|j| j.reverse());
        let after = plan(&outline, &joints).expect("the same lines");
        let whole = before.area().as_square_meters();
        prop_assert!(same(&areas(&sections(&before)), &areas(&sections(&after)), whole));
        let ids = |p: &Plan| sections(p).sections().iter().map(|s| s.area.as_square_meters()).collect::<Vec<_>>();
        prop_assert!(same(&ids(&before), &ids(&after), whole));
    }

    #[test]
    fn splitting_a_line_changes_no_length((outline, joints) in slab_and_joints(), share in 0.2..0.8f64) {
        let Some(before) = plan(&outline, &joints) else { return Err(TestCaseError::reject("a joint off the slab")) };
        let split = |j: &Vec<Xy>| {
            let middle = (j[0].0 + share * (j[1].0 - j[0].0), j[0].1 + share * (j[1].1 - j[0].1));
            vec![j[0], middle, j[1]]
        };
        let after = plan(&outline, &joints.iter().map(split).collect::<Vec<_>>()).expect("the same lines");
        let length = |p: &Plan| joint_lines(p).expect("drawn").length.as_meters();
        prop_assert!((length(&before) - length(&after)).abs() <= 1e-8 * length(&before).max(1.0));
        prop_assert!(same(&areas(&sections(&before)), &areas(&sections(&after)), before.area().as_square_meters()));
    }

    #[test]
    fn moving_and_turning_the_slab_changes_nothing(
        (outline, joints) in slab_and_joints(), angle in 0.0..6.2f64, x in -500.0..500.0f64, y in -500.0..500.0f64,
    ) {
        let Some(before) = plan(&outline, &joints) else { return Err(TestCaseError::reject("a joint off the slab")) };
        let (sin, cos) = (angle.sin(), angle.cos());
        let put = |(px, py): &Xy| (x + px * cos - py * sin, y + px * sin + py * cos);
        let put_all = |points: &Vec<Xy>| points.iter().map(put).collect::<Vec<_>>();
        let after = plan(&put_all(&outline), &joints.iter().map(put_all).collect::<Vec<_>>()).expect("the same slab");
        let whole = before.area().as_square_meters();
        prop_assert!(same(&areas(&sections(&before)), &areas(&sections(&after)), whole));
        let length = |p: &Plan| joint_lines(p).expect("drawn").length.as_meters();
        prop_assert!((length(&before) - length(&after)).abs() <= 1e-8 * length(&before).max(1.0));
    }

    #[test]
    fn joined_sections_keep_the_area_and_the_wish((outline, joints) in slab_and_joints(), share in 0.1..0.9f64) {
        let Some(plan) = plan(&outline, &joints) else { return Err(TestCaseError::reject("a joint off the slab")) };
        let found = sections(&plan);
        let wish = plan.area() * share;
        let joined = found.merged(wish).expect("a wish");
        let whole = plan.area().as_square_meters();
        prop_assert!((areas(&joined).iter().sum::<f64>() - whole).abs() <= 1e-9 * whole);
        let largest = areas(&found).last().copied().unwrap_or_default();
        let most = wish.as_square_meters().max(largest) * (1.0 + 1e-8);
        prop_assert!(areas(&joined).iter().all(|a| *a <= most));
    }
}
