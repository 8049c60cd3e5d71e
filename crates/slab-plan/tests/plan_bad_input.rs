//! Everything a plan can have wrong: the error names the field by its path, shows the value and says
//! what would be accepted.

use serde_json::{Value, json};
use slab_plan::{Plan, PlanError, PlanSpec};

fn refused(spec: &Value) -> PlanError {
    match PlanSpec::from_json(&spec.to_string()).and_then(|s| Plan::resolve(&s)) {
        Ok(_) => panic!("accepted: {spec}"),
        Err(error) => error,
    }
}

fn square(x: f64, y: f64, side: f64) -> Value {
    json!({"rectangles": [{"corner": [format!("{x} ft"), format!("{y} ft")], "width": format!("{side} ft"), "depth": format!("{side} ft")}]})
}

fn corners(points: &[(i32, i32)]) -> Value {
    json!({"polygon": points.iter().map(|(x, y)| json!([format!("{x} ft"), format!("{y} ft")])).collect::<Vec<_>>()})
}

fn legs(lengths: &[(&str, &str)]) -> Value {
    let leg = |(turn, length): &(&str, &str)| match *turn {
        "" => json!({"length": length}),
        turn => json!({"turn": turn, "length": length}),
    };
    json!({"walk": {"start": ["0", "0"], "legs": lengths.iter().map(leg).collect::<Vec<_>>()}})
}

#[test]
fn each_fault_names_field_value_and_accepted_form() {
    let outline = square(0.0, 0.0, 10.0);
    let zoned = |zones: Value| json!({"outline": outline, "zones": zones});
    let cut = |shape: Value| json!({"outline": outline, "cut_outs": [shape]});
    let outlined = |shape: Value| json!({"outline": shape});
    let rectangle = |width: &str| json!({"rectangles": [{"corner": ["0", "0"], "width": width, "depth": "5 ft"}]});
    let a = |shape: Value| json!({"name": "A", "shape": shape});
    let right = [("", "10 ft"), ("right", "10 ft"), ("right", "10 ft")];

    // (plan, path, what the message shows)
    let cases: Vec<(Value, &str, &str)> = vec![
        (json!({"outline": outline, "color": "red"}), "color", "unknown field"),
        (outlined(json!({"circle": "5 ft"})), "outline", "unknown variant `circle`"),
        (outlined(rectangle("20 furlongs")), "outline.rectangles[0].width", "20 furlongs"),
        (outlined(rectangle("20")), "outline.rectangles[0].width", "unit is missing"),
        (outlined(rectangle("-4 ft")), "outline.rectangles[0].width", "below zero"),
        (outlined(rectangle("0 ft")), "outline.rectangles[0].width", "0 ft"),
        (outlined(rectangle("90000 ft")), "outline.rectangles[0].width", "90000 ft"),
        (outlined(rectangle("1e300 m")), "outline.rectangles[0].width", "1e300 m"),
        (outlined(json!({"rectangles": []})), "outline.rectangles", "1 or more"),
        (outlined(json!({"polygon": [["0", "0"], ["20 km", "0"], ["0", "5 ft"]]})), "outline.polygon[1][0]", "20 km"),
        (
            outlined(json!({"polygon": [["0", "0"], ["40000 ft", "0"], ["0", "5 ft"]]})),
            "outline.polygon[1][0]",
            "10 km",
        ),
        (outlined(corners(&[(0, 0), (10, 0)])), "outline.polygon", "3 or more"),
        (outlined(corners(&[(0, 0), (10, 10), (10, 0), (0, 10)])), "outline.polygon", "edge 1 and edge 3"),
        (outlined(corners(&[(0, 0), (10, 0), (10, 10), (5, 0), (0, 10)])), "outline.polygon", "[5' 0\", 0\"]"),
        (outlined(corners(&[(0, 0), (10, 0), (20, 0)])), "outline.polygon", "cross or touch"),
        (outlined(corners(&[(0, 0), (10, 0), (10, 0), (10, 10)])), "outline.polygon", "corner 2 and corner 3"),
        (outlined(json!({"area": "0 ft2"})), "outline.area", "0 ft2"),
        (outlined(json!({"area": "1200"})), "outline.area", "unit is missing"),
        (outlined(legs(&[("", "10 ft"), ("right", "10 ft")])), "outline.walk.legs", "2 given"),
        (outlined(legs(&[("", "10 ft"), ("right", "0 ft"), ("right", "5 ft")])), "outline.walk.legs[1].length", "0 ft"),
        (
            outlined(legs(&[("", "10 ft"), ("right", "-3 ft"), ("right", "5 ft")])),
            "outline.walk.legs[1].length",
            "-3 ft",
        ),
        (outlined(legs(&[("", "10 ft"), ("", "10 ft"), ("right", "5 ft")])), "outline.walk.legs[1].turn", "leg 2"),
        (
            outlined(legs(&[("", "10 ft"), ("rite 90", "9 ft"), ("left", "5 ft")])),
            "outline.walk.legs[1].turn",
            "rite 90",
        ),
        (outlined(legs(&[("", "10 ft"), ("90", "9 ft"), ("left", "5 ft")])), "outline.walk.legs[1].turn", "\"90\""),
        (outlined(legs(&right)), "outline.walk", "10' 0\""),
        (cut(square(5.0, 5.0, 10.0)), "cut_outs[0]", "75.00 ft²"),
        (cut(square(0.0, 0.0, 10.0)), "cut_outs", "no area"),
        (cut(json!({"area": "5 ft2"})), "cut_outs[0]", "drawn"),
        (zoned(json!([a(square(5.0, 5.0, 10.0))])), "zones[0].shape", "75.00 ft²"),
        (
            zoned(json!([a(square(0.0, 0.0, 6.0)), {"name": "B", "shape": square(4.0, 4.0, 6.0)}])),
            "zones[1].shape",
            "overlaps zone \"A\" by 4.00 ft²",
        ),
        (zoned(json!([a(square(0.0, 0.0, 5.0)), {"name": " a "}])), "zones[1].name", "capitals"),
        (zoned(json!([{"name": "  ", "shape": square(0.0, 0.0, 5.0)}])), "zones[0].name", "empty"),
        (zoned(json!([{"name": "A"}, {"name": "B"}])), "zones[1].shape", "\"A\" and \"B\""),
        (zoned(json!([a(square(0.0, 0.0, 10.0)), {"name": "rest"}])), "zones[1]", "rest"),
        (zoned(json!([a(json!({"area": "5 ft2"}))])), "zones[0].shape", "drawn"),
        (
            zoned(json!([a(legs(&[("", "5 ft"), ("left", "5 ft"), ("left", "9 ft"), ("left", "5 ft")]))])),
            "zones[0].shape.walk",
            "leg 3",
        ),
        (
            zoned(json!([a(json!({"rectangles": [{"corner": ["0", "0"], "width": "2 ft"}]}))])),
            "zones[0].shape.rectangles[0]",
            "depth",
        ),
        (json!({"outline": {"area": "100 ft2"}, "zones": [a(json!({"area": "101 ft2"}))]}), "zones", "101.00 ft²"),
        (json!({"outline": {"area": "100 ft2"}, "cut_outs": [{"area": "100 ft2"}]}), "cut_outs", "100.00 ft²"),
        (
            json!({"outline": {"area": "100 ft2"}, "zones": [a(json!({"area": "100 ft2"})), {"name": "rest"}]}),
            "zones[1]",
            "rest",
        ),
        (json!({"outline": {"area": "100 ft2"}, "zones": [a(square(0.0, 0.0, 5.0))]}), "zones[0].shape", "area"),
        (json!({"outline": outline, "north": "north-ish"}), "north", "north-ish"),
    ];
    assert_eq!(cases.len(), 42, "no case may vanish");
    for (spec, path, shows) in &cases {
        let error = refused(spec);
        let text = error.to_string();
        assert_eq!(error.path(), *path, "{text}");
        assert!(text.starts_with(path) && text.contains(shows), "\"{shows}\" in: {text}");
    }
}

#[test]
fn a_broken_line_of_json_says_where() {
    let error = PlanSpec::from_json("{\"outline\": {\"area\": \"5 ft2\"").expect_err("cut short");
    assert!(error.to_string().contains("column"), "{error}");
    assert!(PlanSpec::from_json("{\"outline\": {\"area\": \"5 ft2\"}} extra").is_err());
}

#[test]
fn a_shape_with_thousands_of_corners_is_refused_at_once() {
    let many: Vec<(i32, i32)> = (0..3000).map(|i| (i, i * i % 7)).collect();
    assert!(matches!(refused(&json!({"outline": corners(&many)})), PlanError::TooMany { count: 3000, .. }));
}
