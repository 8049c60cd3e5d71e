//! Files from strangers: cut short, nested without end, numbers that are none, counts beyond reason.
//! Each is an error, and comes soon.

use drawings::{Choice, DrawingError, Notation, Units, read_dxf};
use proptest::prelude::*;

fn file(blocks: &str, entities: &str) -> String {
    format!("0\nSECTION\n2\nBLOCKS\n{blocks}0\nENDSEC\n0\nSECTION\n2\nENTITIES\n{entities}0\nENDSEC\n0\nEOF\n")
}

fn block(name: &str, holds: &str) -> String {
    format!("0\nBLOCK\n8\n0\n2\n{name}\n70\n0\n10\n0\n20\n0\n{holds}0\nENDBLK\n")
}

fn insert(name: &str, more: &str) -> String {
    format!("0\nINSERT\n8\nSLAB\n2\n{name}\n10\n0\n20\n0\n{more}")
}

fn line(x: &str) -> String {
    format!("0\nLINE\n8\nSLAB\n10\n{x}\n20\n0\n11\n5\n21\n5\n")
}

fn refused(text: &str) -> String {
    read_dxf(text.as_bytes()).expect_err("refused").to_string()
}

#[test]
fn each_bad_file_says_what_is_wrong() {
    let bomb: String = (0..12)
        .map(|i| block(&format!("B{i}"), &insert(&format!("B{}", i + 1), "").repeat(10)))
        .chain([block("B12", &line("1"))])
        .collect();
    let many = line("1").repeat(200_001);
    let cases: Vec<(String, &str)> = vec![
        (String::new(), "empty"),
        ("  \r\n ".to_owned(), "empty"),
        ("Binary DXF\r\n\u{1a}\0".to_owned(), "binary"),
        ("hello\nworld\n".to_owned(), "line 1: \"hello\""),
        ("0\nSECTION\n".to_owned(), "ends within a section"),
        ("0\nSECTION\n2\nENTITIES\n0\nLINE\n10\n1".to_owned(), "ends within an entity"),
        ("0\nSECTION\n2\nENTITIES\n0\nENDSEC\n".to_owned(), "EOF"),
        (file("", &line("NaN")), "\"NaN\" stands where a number"),
        (file("", &line("inf")), "inf"),
        (file("", &line("1e300")), "10^12"),
        (file("", &line("1,5")), "line 16: \"1,5\""),
        (file("", &insert("X", "70\n99999\n")), "32767"),
        (file(&block("A", &insert("A", "")), &insert("A", "")), "holds itself"),
        (file(&(block("A", &insert("b", "")) + &block("B", &insert("a", ""))), &insert("A", "")), "16 deep"),
        (file(&bomb, &insert("B0", "")), "more than 200000 entities"),
        (file(&block("A", ""), &insert("A", "70\n32767\n71\n32767\n")), "more than 200000 entities"),
        (file("", &many), "more than 200000 entities"),
        (file("0\nENDBLK\n", ""), "blocks that begin and end"),
        (file(&block("A", &block("B", "")), ""), "blocks that begin and end"),
        (file("8\n0\n", ""), "an entity (code 0)"),
    ];
    assert_eq!(cases.len(), 20);
    for (text, shows) in cases {
        let said = refused(&text);
        assert!(said.contains(shows), "{said} does not show {shows}");
    }
}

#[test]
fn too_many_bytes_are_not_read() {
    let error = read_dxf(&vec![b' '; (32 << 20) + 1]).expect_err("too large");
    assert_eq!(error, DrawingError::TooLarge { what: "bytes", most: 32 << 20 });
}

#[test]
fn a_missing_block_and_strange_kinds_are_counted() {
    let text = file("", &(insert("GONE", "") + "0\nDRAGON\n8\nSLAB\n10\nfire\n" + &line("1")));
    let drawing = read_dxf(text.as_bytes()).expect("a drawing");
    let ignored = &drawing.layers["SLAB"].ignored;
    assert_eq!(ignored.get("DRAGON"), Some(&1));
    assert_eq!(ignored.get("INSERT of a block that is not there"), Some(&1));
    assert_eq!(drawing.layers["SLAB"].open.len(), 1);
}

#[test]
fn a_crowd_of_lines_is_refused_soon() {
    let choice = Choice { units: Some(Units::Meters), ..Choice::of_outline("SLAB") };
    let tried = |entities: String| {
        read_dxf(file("", &entities).as_bytes()).and_then(|drawing| drawing.plan(&choice)).expect_err("a crowd")
    };
    let apart = |i: usize| format!("0\nLINE\n8\nSLAB\n10\n{i}\n20\n0\n11\n{i}\n21\n{}\n", 1000 + i % 7);
    assert!(matches!(tried((0..30_000).map(apart).collect()), DrawingError::Open { .. }));
    let alike = |i: usize| format!("0\nLWPOLYLINE\n8\nSLAB\n70\n0\n10\n0\n20\n0\n10\n5\n20\n{i}\n10\n9\n20\n0\n");
    assert!(matches!(tried((0..20_000).map(alike).collect()), DrawingError::Branching { .. }));
    let round = |i: usize| format!("0\nCIRCLE\n8\nSLAB\n10\n{i}\n20\n0\n40\n0.4\n");
    assert_eq!(
        tried((0..501).map(round).collect()),
        DrawingError::TooLarge { what: "closed lines on a layer", most: 500 }
    );
    assert_eq!(
        tried((0..400).map(round).collect()),
        DrawingError::TooLarge { what: "corners on a layer", most: 60_000 }
    );
}

#[test]
fn lines_that_branch_are_told() {
    let part = |from: (i32, i32), to: (i32, i32)| {
        format!("0\nLINE\n8\nSLAB\n10\n{}\n20\n{}\n11\n{}\n21\n{}\n", from.0, from.1, to.0, to.1)
    };
    let sides = [((0, 0), (4, 0)), ((4, 0), (4, 3)), ((4, 3), (0, 3)), ((0, 3), (0, 0)), ((0, 0), (4, 3))];
    let text = file("", &sides.iter().map(|(a, b)| part(*a, *b)).collect::<String>());
    let drawing = read_dxf(text.as_bytes()).expect("a drawing");
    let choice = Choice { units: Some(Units::Meters), ..Choice::of_outline("SLAB") };
    assert!(matches!(drawing.plan(&choice), Err(DrawingError::Branching { count: 3, .. })));
}

fn reference() -> &'static [&'static [u8]] {
    &[
        include_bytes!("../../../reference/plan/dxf/r12.dxf"),
        include_bytes!("../../../reference/plan/dxf/zones_joints.dxf"),
        include_bytes!("../../../reference/plan/dxf/nested_blocks.dxf"),
    ]
}

/// Reads, and makes a plan of whatever is there; only that it ends matters.
fn tried(bytes: &[u8]) -> Result<(), DrawingError> {
    let drawing = read_dxf(bytes)?;
    let layers: Vec<String> = drawing.layers.keys().cloned().collect();
    for layer in &layers {
        let choice = Choice {
            units: Some(Units::Feet),
            notation: Notation::FeetInches,
            zone_layers: layers.clone(),
            joint_layers: layers.clone(),
            ..Choice::of_outline(layer)
        };
        if let Ok(spec) = drawing.plan(&choice) {
            let _ = slab_plan::Plan::resolve(&spec);
        }
    }
    Ok(())
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(200))]

    #[test]
    fn a_file_cut_short_is_an_error(which in 0..3_usize, share in 0.0..0.999f64) {
        let whole = reference()[which];
        prop_assert!(tried(&whole[..(whole.len() as f64 * share) as usize]).is_err());
    }

    #[test]
    fn changed_bytes_never_panic(which in 0..3_usize, changes in prop::collection::vec((0.5..1.0f64, any::<u8>()), 1..40)) {
        let mut bytes = reference()[which].to_vec();
        for (at, byte) in changes {
            let at = (bytes.len() as f64 * at) as usize;
            bytes[at] = byte;
        }
        let _ = tried(&bytes);
    }

    #[test]
    fn changed_numbers_never_panic(which in 0..3_usize, seed in any::<u64>(), number in "-?[0-9]{1,13}(\\.[0-9]{1,6})?") {
        let text = String::from_utf8_lossy(reference()[which]).into_owned();
        let mut state = seed | 1;
        let mut changed = String::new();
        for line in text.lines() {
            state = state.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
            let hit = (state >> 33) % 50 == 0 && line.trim().parse::<f64>().is_ok();
            changed.push_str(if hit { &number } else { line });
            changed.push('\n');
        }
        let _ = tried(changed.as_bytes());
    }

    #[test]
    fn any_bytes_never_panic(bytes in prop::collection::vec(any::<u8>(), 0..400)) {
        let _ = tried(&bytes);
    }
}
