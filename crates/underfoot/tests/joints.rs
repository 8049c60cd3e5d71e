//! The pour sheet, the calculation and the layout give one slab one joint spacing.

#![allow(clippy::unwrap_used, reason = "a test may stop")]

use calculators::{NoFiles, calculate};
use localization::{Lang, Locale, UnitSystem};
use papers::JointAdvice;
use serde_json::json;
use slab_plan::layout::{JointLimits, advise_joints, check_joints};
use slab_plan::{Plan, PlanSpec};
use trade_facts::Trade;
use units::Length;

/// By hand: 24 and 36 times the thickness, held to 15 ft.
const SPACINGS: [(f64, f64, f64); 5] =
    [(4.0, 8.0, 12.0), (5.0, 10.0, 15.0), (6.0, 12.0, 15.0), (7.5, 15.0, 15.0), (8.0, 15.0, 15.0)];

/// What the calculation answers, in feet and inches: closest, widest, depth of the cut.
fn calculated(inches: f64) -> [f64; 3] {
    let typed = [("length", "60 ft".to_owned()), ("width", "30 ft".to_owned()), ("thickness", format!("{inches} in"))];
    let answer = calculate("joints", &typed.into_iter().collect(), None, &NoFiles).unwrap();
    let answer = answer.json(Locale::new(Lang::En, UnitSystem::Imperial));
    ["spacing_low_ft", "spacing_high_ft", "cut_depth_in"].map(|name| answer["results"][name].as_f64().unwrap())
}

#[test]
fn one_slab_has_one_joint_spacing() {
    let trade = Trade::built_in();
    let hall =
        json!({"outline": {"polygon": [["0 ft", "0 ft"], ["60 ft", "0 ft"], ["60 ft", "30 ft"], ["0 ft", "30 ft"]]}});
    let hall = Plan::resolve(&PlanSpec::from_json(&hall.to_string()).unwrap()).unwrap();
    let limits = JointLimits::of(trade).unwrap();
    for (inches, low, high) in SPACINGS {
        let thickness = Length::inches(inches);
        let paper = JointAdvice::for_thickness(trade, thickness).unwrap();
        let proposed = advise_joints(&hall, thickness, &[], &limits).unwrap();
        let checked = check_joints(&hall, thickness, &[], &limits).unwrap();
        let [calculated_low, calculated_high, cut] = calculated(inches);
        let feet = |(low, high): (Length, Length)| [low.as_feet(), high.as_feet()];
        let all = [
            ("pour sheet", feet((paper.spacing.low, paper.spacing.high))),
            ("proposal", feet(proposed.spacing)),
            ("check", feet(checked.spacing)),
            ("calculation", [calculated_low, calculated_high]),
        ];
        for (who, found) in all {
            let near = found.iter().zip([low, high]).all(|(found, wanted)| (found - wanted).abs() < 1e-6);
            assert!(near, "{who}, {inches} in: {found:?} ft, wanted {low} to {high}");
        }
        assert!((paper.depth.as_inches() - cut).abs() < 1e-6, "{inches} in: {} and {cut}", paper.depth.as_inches());
    }
}
