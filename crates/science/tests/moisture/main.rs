//! Checks of `science::moisture` against solved cases, series solutions and laws.
//!
//! The reference values are files in `reference/physics`; each file's head says where it comes from
//! and how good it is. Row counts are pinned so that no case vanishes in silence.

#![expect(clippy::unwrap_used, reason = "where a check cannot go on, it fails")]

mod forecast;
mod laws;
mod numerics;
mod refusals;

mod series;
mod solved_cases;
mod tables;

use std::path::Path;

use science::moisture::{Ambient, Concrete, DryingSlab, Sides};
use units::{Diffusivity, Fraction, Length, RelativeHumidity, Temperature};

/// Every row of a file in `reference/physics` after its comments and header; the count is pinned.
pub(crate) fn rows(name: &str, count: usize) -> Vec<Vec<String>> {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../reference/physics").join(name);
    let rows: Vec<Vec<String>> = csv::ReaderBuilder::new()
        .comment(Some(b'#'))
        .flexible(true)
        .from_path(&path)
        .unwrap_or_else(|e| panic!("{}: {e}", path.display()))
        .records()
        .map(|record| record.expect("a readable row").iter().map(str::to_owned).collect())
        .collect();
    assert_eq!(rows.len(), count, "rows of {name}");
    rows
}

/// The number in a cell; `None` when it is blank.
pub(crate) fn number(cell: &str) -> Option<f64> {
    (!cell.is_empty()).then(|| cell.parse().unwrap_or_else(|_| panic!("{cell:?} is not a number")))
}

pub(crate) fn rh(percent: f64) -> RelativeHumidity {
    RelativeHumidity::percent(percent).expect("a humidity within 0 to 100 %")
}

pub(crate) fn share(value: f64) -> Fraction {
    Fraction::share(value).expect("a share within 0 to 1")
}

pub(crate) fn d1(square_meters_per_second: f64) -> Concrete {
    Concrete::published(Diffusivity::square_meters_per_second(square_meters_per_second))
}

/// Air at 18 °C.
pub(crate) fn air(percent: f64) -> Ambient {
    Ambient::constant(rh(percent), Temperature::celsius(18.0))
}

/// Case D03 of the reference: 100 mm drying one side at 50 % RH.
pub(crate) fn plain_slab() -> DryingSlab {
    DryingSlab::new(Length::millimeters(100.0), Sides::One, d1(4.031281e-10), air(50.0))
}
