//! Checks of `science::absorbency` against reference files, closed answers and laws.
//!
//! The reference values are files in `reference/kriging`; its README says where each comes from and
//! how good it is. Row counts are pinned so that no case vanishes in silence.

mod censored;
mod fit;
mod laws;
mod next;
mod reference;
mod refusals;

use std::path::Path;

use science::absorbency::{Covariance, DropTest, End, LogVariance, Place};
use units::{Duration, Length};

/// Every row of a file in `reference/kriging` after its comment and header, as numbers.
pub(crate) fn rows(name: &str, count: usize) -> Vec<Vec<f64>> {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../reference/kriging").join(name);
    let cell = |text: &str| text.parse().unwrap_or_else(|_| panic!("{text:?} in {name} is not a number"));
    let rows: Vec<Vec<f64>> = csv::ReaderBuilder::new()
        .comment(Some(b'#'))
        .from_path(&path)
        .unwrap_or_else(|e| panic!("{}: {e}", path.display()))
        .records()
        .map(|record| record.expect("a readable row").iter().map(cell).collect())
        .collect();
    assert_eq!(rows.len(), count, "rows of {name}");
    rows
}

pub(crate) fn place(x: f64, y: f64) -> Place {
    Place { x: Length::meters(x), y: Length::meters(y) }
}

pub(crate) fn soaked(x: f64, y: f64, seconds: f64) -> DropTest {
    DropTest { place: place(x, y), end: End::SoakedIn(Duration::seconds(seconds)) }
}

pub(crate) fn stood(x: f64, y: f64, seconds: f64) -> DropTest {
    DropTest { place: place(x, y), end: End::StillStood(Duration::seconds(seconds)) }
}

pub(crate) fn covariance(sill: f64, length: f64, nugget: f64) -> Covariance {
    let variance = |value| LogVariance::new(value).expect("0 or more");
    Covariance { sill: variance(sill), length: Length::meters(length), nugget: variance(nugget) }
}

/// The drops of the 25-point reference slab.
pub(crate) fn slab_25() -> Vec<DropTest> {
    rows("slab25_points.csv", 25).iter().map(|r| soaked(r[0], r[1], r[2])).collect()
}

/// The covariance at which the reference values of that slab were computed.
pub(crate) fn slab_25_covariance() -> Covariance {
    covariance(0.36, 2.2, 0.03)
}
