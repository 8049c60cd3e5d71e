//! Reads a reference file.

use std::path::Path;

/// Every row after the comments, without its header, which must read as given.
pub(crate) fn rows(name: &str, header: &str) -> Vec<Vec<String>> {
    let mut all = every_row(name);
    let first = all.remove(0).join(",");
    assert_eq!(first, header, "header of {name}");
    all
}

/// Every row after the comments, headers among them.
pub(crate) fn every_row(name: &str) -> Vec<Vec<String>> {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../reference/physics").join(name);
    csv::ReaderBuilder::new()
        .has_headers(false)
        .flexible(true)
        .comment(Some(b'#'))
        .from_path(&path)
        .unwrap_or_else(|e| panic!("{}: {e}", path.display()))
        .records()
        .map(|record| record.expect("a readable row").iter().map(str::to_owned).collect())
        .collect()
}

/// The number in a cell.
pub(crate) fn number(cell: &str) -> f64 {
    cell.parse().unwrap_or_else(|_| panic!("{cell:?} is not a number"))
}

/// Asserts that two numbers agree within an absolute tolerance.
#[track_caller]
pub(crate) fn near(ours: f64, theirs: f64, tolerance: f64, what: &str) {
    assert!((ours - theirs).abs() <= tolerance, "{what}: ours {ours}, reference {theirs}, allowed {tolerance}");
}

/// Asserts that two numbers agree within a share of the reference.
#[track_caller]
pub(crate) fn near_share(ours: f64, theirs: f64, share: f64, what: &str) {
    near(ours, theirs, share * theirs.abs(), what);
}
