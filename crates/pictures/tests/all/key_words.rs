//! Every message of the drawings is named somewhere in the code: none is idle.

use localization::{FILES, Lang};

/// The sources of this crate.
const SOURCES: &[&str] = &[
    include_str!("../../src/day.rs"),
    include_str!("../../src/chart/drying.rs"),
    include_str!("../../src/chart/evaporation.rs"),
    include_str!("../../src/chart/score.rs"),
    include_str!("../../src/plan/mod.rs"),
    include_str!("../../src/plan/floor.rs"),
    include_str!("../../src/plan/furniture.rs"),
    include_str!("../../src/plan/ground.rs"),
    include_str!("../../src/plan/mark.rs"),
    include_str!("../../src/plan/of_slab.rs"),
    include_str!("../../src/plan/section_names.rs"),
    include_str!("../../src/plan/strokes.rs"),
    include_str!("../../src/plan/absorbency/mod.rs"),
    include_str!("../../src/plan/absorbency/words.rs"),
    include_str!("../../src/plan/walls.rs"),
    include_str!("../../src/time_line/mod.rs"),
    include_str!("../../src/time_line/draw.rs"),
];

#[test]
fn no_message_is_idle() {
    let (.., text) =
        FILES.iter().find(|(l, name, _)| *l == Lang::En && name.ends_with("pictures.ftl")).expect("the file");
    let keys = text.lines().filter_map(|l| l.split_once(" =")).map(|(key, _)| key).filter(|k| k.starts_with("pic-"));
    let mut count = 0;
    for key in keys {
        let named = SOURCES.iter().any(|s| s.contains(&format!("\"{key}\"")));
        assert!(named || key.starts_with("pic-month-"), "{key}");
        count += 1;
    }
    assert!(count > 100, "only {count} keys");
}
