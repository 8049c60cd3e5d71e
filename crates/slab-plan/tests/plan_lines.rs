//! Joints and score lines of a plan: how they are kept, and everything they can have wrong.

use serde_json::{Value, json};
use slab_plan::{JointKind, Plan, PlanError, PlanSpec};

fn hall(more: &Value) -> Value {
    let mut plan = json!({
        "outline": {"rectangles": [{"corner": ["0", "0"], "width": "40 ft", "depth": "30 ft"}]},
        "zones": [
            {"name": "West", "shape": {"rectangles": [{"corner": ["0", "0"], "width": "20 ft", "depth": "30 ft"}]}},
            {"name": "East"}
        ]
    });
    for (key, value) in more.as_object().expect("fields") {
        plan[key] = value.clone();
    }
    plan
}

fn resolved(spec: &Value) -> Result<Plan, PlanError> {
    PlanSpec::from_json(&spec.to_string()).and_then(|s| Plan::resolve(&s))
}

#[test]
fn a_plan_without_lines_is_kept_as_before() {
    let typed = r#"{"outline":{"area":"850 ft2"}}"#;
    let spec = PlanSpec::from_json(typed).expect("reads");
    assert_eq!(serde_json::to_string(&spec).expect("writes"), typed);
}

#[test]
fn lines_are_kept_as_typed() {
    let typed = concat!(
        r#"{"outline":{"rectangles":[{"corner":["0","0"],"width":"40 ft","depth":"30 ft"}]},"#,
        r#""joints":[{"line":[["20 ft","0"],["20 ft","30 ft"]],"kind":"saw_cut"},{"line":[["0","10'"],["20 ft","10'"]]}],"#,
        r#""score_lines":[{"grid":{"spacing_x":"4 ft","spacing_y":"4 ft","origin":["1 ft","2 ft"],"turn":"left 30"}},"#,
        r#"{"diagonal":{"spacing":"3 ft"}},{"border":{"inset":"18 in"}},{"lines":{"lines":[[["0","0"],["40 ft","30 ft"]]]}}]}"#,
    );
    let spec = PlanSpec::from_json(typed).expect("reads");
    assert_eq!(serde_json::to_string(&spec).expect("writes"), typed);
    let plan = Plan::resolve(&spec).expect("resolves");
    assert_eq!(plan.joints().iter().map(slab_plan::Joint::kind).collect::<Vec<_>>(), [Some(JointKind::SawCut), None]);
    assert_eq!(plan.patterns().len(), 4);
    for kind in JointKind::ALL {
        assert_eq!(serde_json::to_value(kind).expect("a word"), kind.code());
    }
}

#[test]
fn each_fault_names_field_value_and_accepted_form() {
    let joint = |line: Value| hall(&json!({"joints": [{"line": line}]}));
    let score = |pattern: Value| hall(&json!({"score_lines": [pattern]}));
    let grid = |x: &str, y: &str| json!({"grid": {"spacing_x": x, "spacing_y": y}});
    let many: Vec<Value> =
        (0..501).map(|i| json!({"line": [[format!("{} ft", 1 + i % 30), "0"], ["9 ft", "30 ft"]]})).collect();
    let zigzag: Vec<Value> = (0..2001).map(|i| json!([format!("{} in", i % 7), format!("{} in", i % 11)])).collect();
    let both = [grid("0.02 ft", "40 ft"), json!({"grid": {"spacing_x": "0.05 ft", "spacing_y": "40 ft"}})];

    // (plan, path, what the message shows)
    let cases: Vec<(Value, &str, &str)> = vec![
        (joint(json!([["1 ft", "1 ft"]])), "joints[0].line", "2 or more"),
        (joint(json!([["1 ft", "1 ft"], ["1 ft", "1 ft"]])), "joints[0].line", "point 1 and point 2"),
        (joint(json!([["41 ft", "0"], ["41 ft", "30 ft"]])), "joints[0]", "with a part on it"),
        (joint(json!([["0", "0"], ["40 ft", "0"]])), "joints[0]", "not along its edge"),
        (joint(json!([["40000 ft", "0"], ["0", "0"]])), "joints[0].line[0][0]", "10 km"),
        (joint(json!([["20 parsecs", "0"], ["0", "0"]])), "joints[0].line[0][0]", "20 parsecs"),
        (
            hall(&json!({"joints": [{"line": [["1 ft", "0"], ["1 ft", "9 ft"]], "kind": "weld"}]})),
            "joints[0].kind",
            "weld",
        ),
        (
            hall(&json!({"joints": [{"line": [["30 ft", "0"], ["30 ft", "9 ft"]], "zone": "West"}]})),
            "joints[0]",
            "in its zone",
        ),
        (
            hall(&json!({"joints": [{"line": [["1 ft", "0"], ["1 ft", "9 ft"]], "zone": "North"}]})),
            "joints[0].zone",
            "West, East",
        ),
        (hall(&json!({"joints": many})), "joints", "500"),
        (joint(json!(zigzag)), "joints[0].line", "2000"),
        (score(grid("0 ft", "4 ft")), "score_lines[0].grid.spacing_x", "0 ft"),
        (score(grid("4 ft", "-4 ft")), "score_lines[0].grid.spacing_y", "below zero"),
        (score(grid("4 ft", "0.02 ft")), "score_lines[0].grid.spacing_y", "1501 lines"),
        (score(grid("1e-300 m", "4 ft")), "score_lines[0].grid.spacing_x", "up to 1000"),
        (score(grid("41 ft", "41 ft")), "score_lines[0].grid", "nothing of it"),
        (score(json!({"diagonal": {"spacing": "0 ft"}})), "score_lines[0].diagonal.spacing", "above zero"),
        (
            score(json!({"diagonal": {"spacing": "4 ft", "turn": "left"}})),
            "score_lines[0].diagonal.turn",
            "unknown field",
        ),
        (score(json!({"border": {"inset": "15 ft"}})), "score_lines[0].border.inset", "15 ft"),
        (score(json!({"border": {"inset": "12 ft", "zone": "west"}})), "score_lines[0].border.inset", "half the width"),
        (score(json!({"lines": {"lines": []}})), "score_lines[0].lines.lines", "1 or more"),
        (score(json!({"lines": {"lines": [[["1 ft", "1 ft"]]]}})), "score_lines[0].lines.lines[0]", "2 or more"),
        (
            score(json!({"grid": {"spacing_x": "4 ft", "spacing_y": "4 ft", "zone": "Hall"}})),
            "score_lines[0].grid.zone",
            "Hall",
        ),
        (score(json!({"spiral": {}})), "score_lines[0]", "unknown variant `spiral`"),
        (hall(&json!({"score_lines": both.clone()})), "score_lines[0].grid.spacing_x", "2001 lines"),
        (hall(&json!({"score_lines": vec![both[1].clone(); 3]})), "score_lines", "2000"),
        (hall(&json!({"score_lines": vec![grid("9 ft", "9 ft"); 51]})), "score_lines", "50"),
        (
            json!({"outline": {"area": "850 ft2"}, "joints": [{"line": [["0", "0"], ["1 ft", "0"]]}]}),
            "joints",
            "only areas are known",
        ),
        (json!({"outline": {"area": "850 ft2"}, "score_lines": [grid("4 ft", "4 ft")]}), "score_lines", "drawn"),
    ];
    assert_eq!(cases.len(), 29);
    for (spec, path, shows) in cases {
        let error = resolved(&spec).expect_err(&format!("{path} {shows}"));
        let said = error.to_string();
        assert_eq!(error.path(), path, "{said}");
        assert!(said.contains(shows), "{said} does not show {shows}");
        assert!(said.starts_with(path), "{said}");
        assert!(said.contains("accepted") || matches!(error, PlanError::Unreadable { .. }), "{said}");
    }
}
