//! Constant diffusivity against Crank's series, `crank_constant_D.csv` (grade V by computation).

use science::moisture::{Accuracy, Concrete, DryingSlab, Point, Shape, Sides, Surface};
use units::{Diffusivity, Duration, Length, Speed};

use crate::{air, number, rh, rows};

const D: f64 = 1e-9;
const PATH: f64 = 0.1;

/// u runs from 1 to 0 as the humidity from 100 % to 0 %, so an error in u is one in RH.
fn history(row: &[String], sides: Sides) -> (f64, f64) {
    let cell = |i: usize| number(&row[i]).expect("a filled cell");
    let concrete = Concrete { shape: Shape::CONSTANT, ..Concrete::published(Diffusivity::square_meters_per_second(D)) };
    let thickness = if sides == Sides::Two { 2.0 * PATH } else { PATH };
    let mut slab = DryingSlab::new(Length::meters(thickness), sides, concrete, air(0.0));
    slab.initial = rh(100.0);
    if row[3] != "inf" {
        slab.surface = Surface::Film(Speed::meters_per_second(cell(3) * D / PATH));
    }
    let end = Duration::seconds(cell(0) * PATH * PATH / D);
    let points = [Point::Depth(Length::meters(cell(2) * PATH)), Point::Mean];
    let history = slab.dry(end, &points, Accuracy::default()).unwrap();
    (history.humidity(0, end).as_share(), history.humidity(1, end).as_share())
}

#[test]
fn every_row_is_met_within_1e_3() {
    let mut means = 0;
    for row in rows("crank_constant_D.csv", 46) {
        for sides in [Sides::One, Sides::Two] {
            let (at_depth, mean) = history(&row, sides);
            let reference = number(&row[4]).unwrap();
            assert!((at_depth - reference).abs() < 1e-3, "{row:?} {sides:?}: {at_depth}");
            if let Some(reference) = number(&row[5]) {
                assert!((mean - reference).abs() < 1e-3, "{row:?} {sides:?}: mean {mean}");
                means += 1;
            }
        }
    }
    assert_eq!(means, 56, "means checked");
}
