//! Drawings made by ezdxf (`reference/plan/dxf/make_drawings.py files`): areas against Shapely's.

use drawings::{Choice, Drawing, DrawingError, Notation, Units, read_dxf};
use serde_json::Value;
use slab_plan::{Plan, ShapeSpec};

const FOLDER: &str = concat!(env!("CARGO_MANIFEST_DIR"), "/../../reference/plan/dxf/");

fn drawing(name: &str) -> Drawing {
    let bytes = std::fs::read(format!("{FOLDER}{name}.dxf")).expect("a file of the reference");
    read_dxf(&bytes).expect("a drawing")
}

fn square_meters(drawing: &Drawing, choice: &Choice) -> f64 {
    let spec = drawing.plan(choice).expect("a plan");
    Plan::resolve(&spec).expect("a sound slab").area().as_square_meters()
}

#[test]
fn areas_agree_with_ezdxf_and_shapely() {
    let text = std::fs::read_to_string(format!("{FOLDER}areas.json")).expect("the reference");
    let said: serde_json::Map<String, Value> = serde_json::from_str(&text).expect("JSON");
    assert_eq!(said.len(), 8, "drawings of the reference");
    let mut compared = 0;
    for (file, said) in &said {
        let drawing = drawing(file.trim_end_matches(".dxf"));
        for (layer, key) in [("SLAB", "slab"), ("PITS", "pits")] {
            let loops = drawing.layers.get(layer).map(|l| l.loops.clone()).unwrap_or_default();
            let mut ours: Vec<(f64, f64)> = loops.iter().map(|l| (l.area, l.area_error)).collect();
            ours.sort_by(|a, b| b.0.total_cmp(&a.0));
            let theirs: Vec<f64> = said[key].as_array().expect("a list").iter().filter_map(Value::as_f64).collect();
            assert_eq!(ours.len(), theirs.len(), "{file} {layer}");
            for ((area, bound), theirs) in ours.iter().zip(theirs) {
                // ezdxf's own chords are off by up to 1e-6 of the area where a curve is.
                let allowed = bound + theirs * if *bound > 0.0 { 1e-6 } else { 1e-9 };
                assert!((area - theirs).abs() <= allowed, "{file} {layer}: {area} within {bound}, Shapely {theirs}");
                compared += 1;
            }
        }
    }
    assert_eq!(compared, 13);
}

#[test]
fn units_turn_into_the_right_plan() {
    // By hand: 12 m × 7 m less a pit of 1.5 m × 1 m and a round column of 200 mm radius.
    let rectangle = drawing("rectangle_mm");
    assert_eq!((rectangle.units, rectangle.metric_hint), (Units::Millimeters, Some(true)));
    let mut choice = Choice::of_outline("SLAB");
    assert!((square_meters(&rectangle, &choice) - 84.0).abs() < 1e-6);
    choice.cut_out_layers = vec!["PITS".to_owned()];
    let column = std::f64::consts::PI * 0.04;
    assert!((square_meters(&rectangle, &choice) - (82.5 - column)).abs() < 3e-4 * column + 1e-4);
    assert_eq!(rectangle.layers["SLAB"].ignored.get("HATCH"), Some(&1));

    // 40 ft × 20 ft, half a circle of 10 ft radius added, and a niche on a chord of 10 ft taken off:
    // 90 degrees on a radius of 5 √2 ft, (θ − sin θ) r² / 2 = 50 (π/2 − 1) / 2 ft².
    let bulges = drawing("bulges_inch");
    assert_eq!(bulges.units, Units::Inches);
    let feet = Choice { notation: Notation::FeetInches, ..Choice::of_outline("SLAB") };
    let pi = std::f64::consts::PI;
    let said = (800.0 + 50.0 * pi - 25.0 * (pi / 2.0 - 1.0)) * 0.3048 * 0.3048;
    let bound = bulges.layers["SLAB"].loops[0].area_error * 0.0254 * 0.0254;
    let found = square_meters(&bulges, &feet);
    assert!((found - said).abs() < bound + 1e-3, "{found}, by hand {said}");
    assert!(bulges.layers["SLAB"].loops[0].deviation < 0.02 + 120.0 * 0.000_153);

    // By hand: 20 ft × 15 ft less 4 m² of pits, in feet since R12 says nothing of units; a quarter circle
    // cut out of a square of 4 ft.
    let old = drawing("r12");
    assert_eq!(old.units, Units::NotTold);
    assert_eq!(old.plan(&Choice::of_outline("SLAB")), Err(DrawingError::UnitsNotTold));
    let told = Choice { units: Some(Units::Feet), cut_out_layers: vec!["PITS".to_owned()], ..feet };
    let spec = old.plan(&told).expect("a plan");
    assert_eq!(spec.cut_outs.len(), 2);
    let ShapeSpec::Polygon(corners) = &spec.outline else { panic!("a polygon") };
    assert!(corners.iter().any(|c| c[0].text() == "20' 0\"" && c[1].text() == "15' 0\""), "{corners:?}");
    assert_eq!(drawing("no_units").plan(&Choice::of_outline("SLAB")), Err(DrawingError::UnitsNotTold));
}

#[test]
fn zones_joints_and_labels() {
    let choice = Choice {
        cut_out_layers: vec!["PITS".to_owned()],
        zone_layers: vec!["ZONES".to_owned()],
        joint_layers: vec!["JOINTS".to_owned()],
        notation: Notation::FeetInches,
        ..Choice::of_outline("SLAB")
    };
    let spec = drawing("zones_joints").plan(&choice).expect("a plan");
    let plan = Plan::resolve(&spec).expect("a sound slab");
    let names: Vec<&str> = plan.zones().iter().map(slab_plan::Zone::name).collect();
    assert_eq!(names, ["Salón", "ZONES"]);
    assert_eq!((plan.joints().len(), spec.cut_outs.len()), (2, 1));
    let ellipse = std::f64::consts::PI * 3.0 * 1.5;
    assert!((plan.area().as_square_feet() - (1200.0 - ellipse)).abs() < 2e-3 * ellipse);
    assert!((plan.zone("salón").expect("there").area().as_square_feet() - 600.0).abs() < 1e-6);
    let length = slab_plan::layout::joint_lines(&plan).expect("drawn").length.as_feet();
    // 30 ft and 40 ft, less what the ellipse takes: its center is at y = 20, half axis 1.5; the line at y = 15 misses it.
    assert!((length - 70.0).abs() < 1e-6, "{length}");
}

#[test]
fn an_open_line_is_refused_with_its_gap() {
    let open = drawing("open_loop");
    let error = open.plan(&Choice::of_outline("SLAB")).expect_err("open");
    let DrawingError::Open { from, to, gap, length, .. } = &error else { panic!("{error}") };
    assert!((gap - 25.0).abs() < 1e-9 && (length.as_meters() - 0.025).abs() < 1e-12);
    let mut heights = [from.y, to.y];
    heights.sort_by(f64::total_cmp);
    assert_eq!(heights, [7971.0, 7996.0]);
    assert!(error.to_string().contains("25.0 mm"), "{error}");
}

#[test]
fn wrong_choices_are_refused() {
    let drawing = drawing("rectangle_mm");
    let unknown = drawing.plan(&Choice::of_outline("WALLS")).expect_err("no such layer").to_string();
    assert!(unknown.contains("WALLS") && unknown.contains("PITS, SLAB"), "{unknown}");
    let outside = Choice { cut_out_layers: vec!["SLAB".to_owned()], ..Choice::of_outline("PITS") };
    assert!(matches!(drawing.plan(&outside), Err(DrawingError::Apart { count: 2, .. })));
    let wide = Choice { units: Some(Units::Feet), ..Choice::of_outline("SLAB") };
    assert!(drawing.plan(&wide).is_ok());
    let wider = Choice { units: Some(Units::Meters), ..Choice::of_outline("SLAB") };
    assert!(drawing.plan(&wider).expect_err("12 km").to_string().contains("12000 m"));
}
