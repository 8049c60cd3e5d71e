//! Advice on joints: the rule's numbers, what is found wrong, and that a proposal has less of it.

use science::concrete::joint_plan;
use serde_json::{Value, json};
use slab_plan::layout::{Finding, FindingCode, JointLimits, advise_joints, check_joints, columns, reentrant_corners};
use slab_plan::{Offset, Plan, PlanSpec, Point};
use trade_facts::{Grade, Measured, Trade};
use units::Length;

fn plan(spec: &Value) -> Plan {
    Plan::resolve(&PlanSpec::from_json(&spec.to_string()).expect("reads")).expect("resolves")
}

fn points(points: &[(f64, f64)]) -> Value {
    json!(points.iter().map(|(x, y)| json!([format!("{x} ft"), format!("{y} ft")])).collect::<Vec<_>>())
}

fn rectangle(x: f64, y: f64, width: f64, depth: f64) -> Value {
    json!({"polygon": points(&[(x, y), (x + width, y), (x + width, y + depth), (x, y + depth)])})
}

fn limits() -> JointLimits {
    JointLimits::of(Trade::built_in()).expect("the built-in facts hold the rule")
}

fn ell() -> Value {
    json!({"polygon": points(&[(0.0, 0.0), (36.0, 0.0), (36.0, 12.0), (12.0, 12.0), (12.0, 24.0), (0.0, 24.0)])})
}

fn word(finding: &Finding) -> &'static str {
    match finding.code {
        FindingCode::PanelTooLong { .. } => "long",
        FindingCode::AspectTooLarge { .. } => "aspect",
        FindingCode::CornerWithoutJoint => "corner",
        FindingCode::ColumnWithoutJoint => "column",
        FindingCode::TaperingPanel { .. } => "taper",
        FindingCode::JointStopsShort => "short",
    }
}

fn words(findings: &[Finding]) -> Vec<&'static str> {
    findings.iter().map(word).collect()
}

#[test]
fn limits_come_from_the_trade_facts() {
    let limits = limits();
    let rule = limits.rule;
    assert_eq!((rule.low_multiple, rule.high_multiple, rule.aspect_max), (24.0, 36.0, 1.5));
    assert_eq!((rule.cap, limits.cut_depth.as_share()), (Length::feet(15.0), 0.25));
    assert_eq!((limits.multiples.id, limits.cap.id), ("joint-spacing", "joint-spacing-usual"));
    // Of the two facts that could be the cap the tighter is taken.
    let most: Length = Trade::built_in().limit("joint-spacing-most").and_then(Measured::value_as).expect("a length");
    assert!(rule.cap < most);
}

#[test]
fn a_rectangle_is_cut_as_the_rule_of_thumb_says() {
    // 5 in × 36 = 15 ft: 40 ft in 3 parts, 30 ft in 2.
    let hall = plan(&json!({"outline": rectangle(0.0, 0.0, 40.0, 30.0)}));
    let advice = advise_joints(&hall, Length::inches(5.0), &[], &limits()).expect("advice");
    assert_eq!(words(&advice.findings), [""; 0]);
    assert_eq!(advice.panels.len(), 6);
    assert!((advice.length.as_feet() - 100.0).abs() < 1e-9);
    assert!((advice.spacing.0.as_feet() - 10.0).abs() < 1e-9 && (advice.spacing.1.as_feet() - 15.0).abs() < 1e-9);
    // No more is sawn than the plain rule for rectangles saws.
    for (length, width, thickness) in
        [(40.0, 30.0, 5.0), (61.0, 24.0, 4.0), (100.0, 20.0, 6.0), (33.0, 11.0, 4.0), (18.0, 90.0, 5.0)]
    {
        let slab = plan(&json!({"outline": rectangle(3.0, 4.0, length, width)}));
        let advice = advise_joints(&slab, Length::inches(thickness), &[], &limits()).expect("advice");
        let rule = joint_plan(Length::feet(length), Length::feet(width), Length::inches(thickness), &limits().rule)
            .expect("a rule");
        assert!(rule.aspect_within && advice.findings.is_empty(), "{length} by {width}: {:?}", words(&advice.findings));
        assert!(advice.length <= rule.cut_length * (1.0 + 1e-9), "{length} by {width}");
    }
}

#[test]
fn findings_carry_what_they_rest_on() {
    let check =
        |spec: &Value, inches: f64| check_joints(&plan(spec), Length::inches(inches), &[], &limits()).expect("a check");
    let bare = check(&json!({"outline": rectangle(0.0, 0.0, 20.0, 18.0)}), 4.0);
    assert_eq!(words(&bare.findings), ["long"]);
    assert_eq!((bare.findings[0].facts.clone(), bare.findings[0].grade), (vec!["joint-spacing"], Grade::SecondaryCopy));
    let FindingCode::PanelTooLong { side, limit } = bare.findings[0].code else { panic!("{:?}", bare.findings) };
    assert!((side.as_feet() - 20.0).abs() < 1e-9 && (limit.as_feet() - 12.0).abs() < 1e-9);
    // From 5 in on the cap of 15 ft binds.
    let thick = check(&json!({"outline": rectangle(0.0, 0.0, 20.0, 18.0)}), 6.0);
    assert_eq!(thick.findings[0].facts, ["joint-spacing-usual"]);
    // A side longer than the rule by what a tape can't tell is fine.
    assert_eq!(words(&check(&json!({"outline": rectangle(0.0, 0.0, 12.01, 12.0)}), 4.0).findings), [""; 0]);

    let joint = |line: &[(f64, f64)]| json!([{"line": points(line)}]);
    let narrow =
        check(&json!({"outline": rectangle(0.0, 0.0, 15.0, 10.0), "joints": joint(&[(3.0, 0.0), (3.0, 10.0)])}), 5.0);
    // 3 by 10 and 12 by 10 ft.
    assert_eq!(words(&narrow.findings), ["aspect"]);
    assert_eq!((narrow.findings[0].panel, narrow.findings[0].facts.clone()), (Some(1), vec!["joint-panel-aspect"]));
    assert_eq!(narrow.findings[0].grade, Grade::CommonPractice);
    let FindingCode::AspectTooLarge { aspect, limit } = narrow.findings[0].code else {
        panic!("{:?}", narrow.findings)
    };
    assert!((aspect - 10.0 / 3.0).abs() < 1e-9 && limit == 1.5);

    let stops =
        check(&json!({"outline": rectangle(0.0, 0.0, 12.0, 12.0), "joints": joint(&[(6.0, 0.0), (6.0, 7.0)])}), 5.0);
    assert_eq!(words(&stops.findings), ["short"]);
    assert!((stops.findings[0].at.y.as_feet() - 7.0).abs() < 1e-9);

    let sharp = check(&json!({"outline": {"polygon": points(&[(0.0, 0.0), (10.0, 0.0), (0.0, 10.0)])}}), 5.0);
    assert_eq!(words(&sharp.findings), ["taper"]);
    let FindingCode::TaperingPanel { angle, .. } = sharp.findings[0].code else { panic!("{:?}", sharp.findings) };
    assert!((angle.as_right_degrees() - 45.0).abs() < 1e-9);
}

#[test]
fn corners_and_columns_get_their_joints() {
    let bare = plan(&json!({"outline": ell(), "cut_outs": [rectangle(5.0, 5.0, 1.0, 1.0)]}));
    assert_eq!(reentrant_corners(&bare).expect("drawn").len(), 1);
    assert_eq!(columns(&bare).expect("drawn").len(), 1);
    let check = check_joints(&bare, Length::inches(5.0), &[], &limits()).expect("a check");
    assert_eq!(words(&check.findings), ["long", "corner", "column"]);
    let advice = advise_joints(&bare, Length::inches(5.0), &[], &limits()).expect("advice");
    let left = words(&advice.findings);
    assert!(!left.contains(&"corner") && !left.contains(&"column") && !left.contains(&"long"), "{left:?}");
    // A column given by a point alone.
    let hall = plan(&json!({"outline": rectangle(0.0, 0.0, 24.0, 24.0)}));
    let post = Point::new(Offset::feet(9.0), Offset::feet(12.0));
    let advice = advise_joints(&hall, Length::inches(5.0), &[post], &limits()).expect("advice");
    assert_eq!(words(&advice.findings), [""; 0]);
    let error = advise_joints(&hall, Length::inches(5.0), &[Point::new(Offset::feet(90.0), Offset::ZERO)], &limits());
    assert!(error.expect_err("off the slab").to_string().contains("columns on the slab"));
    // A pit is no column: its four corners point into the slab.
    let pit = plan(&json!({"outline": rectangle(0.0, 0.0, 40.0, 30.0), "cut_outs": [rectangle(10.0, 10.0, 8.0, 5.0)]}));
    assert_eq!((reentrant_corners(&pit).expect("drawn").len(), columns(&pit).expect("drawn").len()), (4, 0));
}

#[test]
fn a_turned_slab_is_cut_along_its_own_walls() {
    let (sin, cos) = (30.0_f64.to_radians().sin(), 30.0_f64.to_radians().cos());
    let turn = |(x, y): (f64, f64)| (x * cos - y * sin, x * sin + y * cos);
    let corners: Vec<(f64, f64)> = [(0.0, 0.0), (40.0, 0.0), (40.0, 30.0), (0.0, 30.0)].map(turn).to_vec();
    let slab = plan(&json!({"outline": {"polygon": points(&corners)}}));
    let advice = advise_joints(&slab, Length::inches(5.0), &[], &limits()).expect("advice");
    assert_eq!((advice.panels.len(), advice.findings.len()), (6, 0));
    assert!((advice.length.as_feet() - 100.0).abs() < 1e-6);
}

#[test]
fn impossible_wishes_are_refused() {
    let hall = plan(&json!({"outline": rectangle(0.0, 0.0, 40.0, 30.0)}));
    assert!(advise_joints(&hall, Length::ZERO, &[], &limits()).is_err());
    let thin = advise_joints(&hall, Length::inches(0.01), &[], &limits()).expect_err("too many cuts");
    assert!(thin.to_string().contains("up to 400"), "{thin}");
}
