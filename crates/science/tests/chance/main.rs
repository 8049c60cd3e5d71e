//! Checks of `science::chance`: draws against exact distributions, quantiles against SciPy and NumPy.

mod draws;
mod quantiles;

use std::path::Path;

/// Every row of a file in `reference/chance` after its comment and header; the count is pinned.
pub(crate) fn rows(name: &str, count: usize) -> Vec<Vec<String>> {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../reference/chance").join(name);
    let rows: Vec<Vec<String>> = csv::ReaderBuilder::new()
        .comment(Some(b'#'))
        .from_path(&path)
        .unwrap_or_else(|e| panic!("{}: {e}", path.display()))
        .records()
        .map(|record| record.expect("a readable row").iter().map(str::to_owned).collect())
        .collect();
    assert_eq!(rows.len(), count, "rows of {name}");
    rows
}

/// The number in a cell.
pub(crate) fn number(cell: &str) -> f64 {
    cell.parse().unwrap_or_else(|_| panic!("{cell:?} is not a number"))
}
