//! The 16 solved cases of `drying_reference_mc90.csv` (grade V by computation: 1600 cells).

use science::moisture::{Accuracy, DryingSlab, Point, Sides, Surface};
use units::{Duration, Length, Speed};

use crate::{air, d1, number, rh, rows};

const DAYS: [f64; 12] = [7.0, 14.0, 28.0, 42.0, 56.0, 90.0, 120.0, 180.0, 270.0, 365.0, 540.0, 730.0];
const LIMITS: [f64; 3] = [85.0, 80.0, 75.0];

fn slab_of(row: &[String]) -> DryingSlab {
    let cell = |i: usize| number(&row[i]).expect("a filled cell");
    let sides = match row[2].as_str() {
        "one" => Sides::One,
        "two" => Sides::Two,
        other => panic!("sides {other}"),
    };
    let mut slab = DryingSlab::new(Length::meters(cell(1)), sides, d1(cell(5)), air(100.0 * cell(6)));
    slab.initial = rh(100.0 * cell(7));
    if let Some(film) = number(&row[8]) {
        slab.surface = Surface::Film(Speed::meters_per_second(film));
    }
    slab
}

/// Worst error in RH (share of 1) and in time to a limit (share) over all cases.
fn worst(accuracy: Accuracy) -> (f64, f64) {
    let (mut humidity, mut time, mut limits) = (0.0_f64, 0.0_f64, 0);
    for row in rows("drying_reference_mc90.csv", 16) {
        let slab = slab_of(&row);
        let probe = slab.probe_depth().as_meters();
        assert!((probe - number(&row[9]).unwrap()).abs() < 1e-9, "{}: probe depth {probe}", row[0]);
        let history = slab.dry(Duration::days(3000.0), &[Point::Probe, Point::Deepest, Point::Mean], accuracy).unwrap();
        let mut note = |point: usize, day: f64, cell: &str| {
            let ours = history.humidity(point, Duration::days(day)).as_share();
            humidity = humidity.max((ours - number(cell).unwrap()).abs());
        };
        for (day, cell) in DAYS.iter().zip(&row[10..22]) {
            note(0, *day, cell);
        }
        note(1, 90.0, &row[22]);
        note(2, 90.0, &row[23]);
        for (limit, cell) in LIMITS.iter().zip(&row[24..27]) {
            let ours = history.time_to(0, rh(*limit));
            match number(cell) {
                Some(days) => {
                    let ours = ours.unwrap_or_else(|| panic!("{}: {limit} % is not reached", row[0])).as_days();
                    time = time.max((ours / days - 1.0).abs());
                    limits += 1;
                }
                None => assert!(ours.is_none(), "{}: {limit} % is reached", row[0]),
            }
        }
    }
    assert_eq!(limits, 47, "limits reached");
    (humidity, time)
}

#[test]
fn default_accuracy_is_within_2e_4_of_rh_and_0_3_per_cent_of_time() {
    let (humidity, time) = worst(Accuracy::default());
    assert!(humidity < 2e-4 && time < 0.003, "RH {humidity:e}, time {time}");
}

#[test]
fn ensemble_accuracy_is_within_1e_3_of_rh_and_1_5_per_cent_of_time() {
    let (humidity, time) = worst(Accuracy::ENSEMBLE);
    assert!(humidity < 1e-3 && time < 0.015, "RH {humidity:e}, time {time}");
}

#[test]
fn a_fine_grid_meets_the_reference_to_its_own_error() {
    let (humidity, time) = worst(Accuracy { cells: 400, tolerance: 1e-6 });
    assert!(humidity < 1e-5 && time < 2e-4, "RH {humidity:e}, time {time}");
}
