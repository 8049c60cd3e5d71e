//! Drawing files on the command line: their layers, the plans they make, and what is refused.

#![allow(clippy::unwrap_used, reason = "a test may stop")]

mod common;

use common::Site;
use serde_json::Value;

fn sample(name: &str) -> String {
    format!("{}/../../reference/plan/dxf/{name}", env!("CARGO_MANIFEST_DIR"))
}

/// The areas that an independent reader found in the committed drawings (see `make_drawings.py`).
fn areas() -> Value {
    let text = std::fs::read_to_string(sample("areas.json")).unwrap();
    serde_json::from_str(&text).unwrap()
}

#[test]
fn the_layers_are_told_with_what_they_hold() {
    let site = Site::empty();
    let told = site.run(&["drawing", &sample("rectangle_mm.dxf"), "--units", "metric"]).ends(0).out;
    assert!(told.contains("SLAB\n") && told.contains("closed line"), "{told}");
    assert!(told.contains("84 m²"), "{told}");
    let spanish = site.run(&["drawing", &sample("open_loop.dxf"), "--lang", "es"]).ends(0).out;
    assert!(spanish.contains("la abertura más chica es de"), "{spanish}");
}

#[test]
fn every_committed_drawing_is_told_as_json_with_the_areas_of_another_reader() {
    let site = Site::empty();
    let areas = areas();
    let mut compared = 0;
    for (name, wanted) in areas.as_object().unwrap() {
        let told = site.run(&["drawing", &sample(name), "--json"]).ends(0).json();
        assert_eq!(told["schema"], "underfoot.drawing/1");
        let layer = told["layers"].as_array().unwrap().iter().find(|layer| layer["name"] == "SLAB").unwrap();
        let mut found: Vec<f64> =
            layer["closed"].as_array().unwrap().iter().map(|c| c["area_units2"].as_f64().unwrap()).collect();
        let mut wanted: Vec<f64> = wanted["slab"].as_array().unwrap().iter().map(|a| a.as_f64().unwrap()).collect();
        found.sort_by(f64::total_cmp);
        wanted.sort_by(f64::total_cmp);
        assert_eq!(found.len(), wanted.len(), "{name}");
        for (found, wanted) in found.iter().zip(&wanted) {
            // Curves are chords of at most 2 degrees here, finer there.
            assert!((found / wanted - 1.0).abs() < 2e-3, "{name}: {found} for {wanted}");
            compared += 1;
        }
    }
    assert_eq!(compared, 9);
}

#[test]
fn chosen_layers_make_a_plan_in_words_and_for_the_diary() {
    let site = Site::with_slab();
    let path = sample("rectangle_mm.dxf");
    let words = site.run(&["drawing", &path, "--outline", "SLAB", "--units", "metric"]).ends(0).out;
    assert!(words.contains("84 m²"), "{words}");
    let plan = site.run(&["drawing", &path, "--outline", "SLAB", "--json"]).ends(0).json();
    let outline = format!("outline={}", plan["outline"]);
    site.run(&["log", "plan", &outline]).ends(0);
    let logged = site.run(&["diary", "--kind", "plan", "--json"]).ends(0);
    assert_eq!(logged.json_lines().last().unwrap()["body"]["outline"], plan["outline"]);
    let all = sample("zones_joints.dxf");
    let args = ["drawing", &all, "--outline", "SLAB", "--zone", "ZONES", "--joint", "JOINTS"];
    let words = site.run(&args).ends(0).out;
    assert!(words.contains("1,200 ft²") && words.contains("joint"), "{words}");
    let plan = site.run(&[&args[..], &["--json"]].concat()).ends(0).json();
    assert_eq!(plan["zones"].as_array().unwrap().len(), 2);
    assert_eq!(plan["zones"][0]["name"], "Salón");
    assert_eq!(plan["joints"].as_array().unwrap().len(), 2);
}

#[test]
fn lines_along_the_edge_are_no_joints() {
    let site = Site::empty();
    let line = |layer: &str, [x, y, to_x, to_y]: [i32; 4]| {
        format!("0\nLINE\n8\n{layer}\n10\n{x}\n20\n{y}\n11\n{to_x}\n21\n{to_y}\n")
    };
    let sides = [[0, 0, 9, 0], [9, 0, 9, 6], [9, 6, 0, 6], [0, 6, 0, 0]];
    let slab: String = sides.iter().map(|side| line("A", *side)).collect();
    let joints = line("B", sides[0]) + &line("B", [3, 0, 3, 6]);
    let file = site.file("a.dxf", format!("0\nSECTION\n2\nENTITIES\n{slab}{joints}0\nENDSEC\n0\nEOF\n"));
    let ran = site.run(&["drawing", &file, "--outline", "A", "--joint", "B", "--drawn-in", "m", "--json"]).ends(0);
    assert_eq!(ran.json()["joints"].as_array().unwrap().len(), 1);
    assert!(ran.err.contains("1 line of the joint layers lies off the slab"), "{}", ran.err);
}

#[test]
fn a_unit_that_the_file_does_not_tell_is_asked_for() {
    let site = Site::empty();
    let path = sample("no_units.dxf");
    let asked = site.run(&["drawing", &path, "--outline", "SLAB"]).ends(2);
    assert!(asked.err.contains("--drawn-in"), "{}", asked.err);
    let words = site.run(&["drawing", &path, "--outline", "SLAB", "--drawn-in", "ft"]).ends(0).out;
    assert!(words.contains("600 ft²"), "{words}");
}

#[test]
fn bad_use_and_bad_files_end_as_other_commands_do() {
    let site = Site::empty();
    let path = sample("rectangle_mm.dxf");
    let unknown = site.run(&["drawing", &path, "--outline", "ROOF"]).ends(2);
    assert!(unknown.err.contains("ROOF") && unknown.err.contains("SLAB"), "{}", unknown.err);
    site.run(&["drawing", &path, "--zone", "SLAB"]).ends(2);
    site.run(&["drawing", "no-such-file.dxf"]).ends(3);
    let open = site.run(&["drawing", &sample("open_loop.dxf"), "--outline", "SLAB"]).ends(3);
    assert!(open.err.contains("open by"), "{}", open.err);
    for (name, bytes) in [
        ("empty.dxf", Vec::new()),
        ("binary.dxf", b"Binary DXF\r\n\x1a\0".to_vec()),
        ("text.dxf", b"hello\nworld\n".to_vec()),
        ("large.dxf", vec![b' '; (32 << 20) + 2]),
    ] {
        let ran = site.run(&["drawing", &site.file(name, bytes)]).ends(3);
        assert!(ran.err.contains(name) && !ran.err.contains("panicked"), "{}", ran.err);
    }
}
