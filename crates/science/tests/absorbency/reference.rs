//! The 25-point slab: predictions, leave-one-out, Owen's T.

use science::absorbency::{Field, LogVariance, Outcome, owens_t};
use science::chance::normal_cdf;
use units::{Duration, Fraction};

use crate::{place, rows, slab_25, slab_25_covariance};

fn field() -> Field {
    Field::with_covariance(&slab_25(), slab_25_covariance()).expect("a field")
}

/// NumPy, PyKrige and gstools, grade V. Columns: NumPy (mean, latent, with nugget), PyKrige and
/// gstools (mean, variance with nugget), scikit-learn with a known level, which is another model and
/// not compared, then median and 95 % band of a fresh drop, which the file takes at ±1.959964
/// deviations: six digits, so the share is worked back from them.
#[test]
fn predictions_agree_with_two_kriging_libraries() {
    let rows = rows("slab25_krige_ref100.csv", 100);
    let places: Vec<_> = rows.iter().map(|r| place(r[0], r[1])).collect();
    let mut worst = 0.0_f64;
    for (row, at) in rows.iter().zip(field().map(&places)) {
        let (mean, latent) = (at.log_mean(), at.log_variance().value());
        let fresh = at.fresh_drop().log_variance().value();
        for (ours, column) in [(mean, 2), (latent, 3), (fresh, 4), (mean, 5), (fresh, 6), (mean, 7), (fresh, 8)] {
            worst = worst.max((ours - row[column]).abs());
        }
        assert!((at.median().as_seconds() / row[11] - 1.0).abs() < 1e-9, "{row:?}");
        for (deviations, column) in [(-1.959_964, 12), (1.959_964, 13)] {
            let share = Fraction::share(normal_cdf(deviations)).unwrap();
            let ours = at.fresh_drop().quantile(share).as_seconds();
            assert!((ours / row[column] - 1.0).abs() < 1e-9, "{deviations} {row:?} {ours}");
        }
    }
    assert!(worst < 1e-9, "worst {worst:e}");
}

/// On the grid too: mean, latent variance and the chance of less than a minute, grade V.
#[test]
fn the_grid_of_the_slab_agrees() {
    let rows = rows("slab25_next_point.csv", 320);
    let places: Vec<_> = rows.iter().map(|r| place(r[0], r[1])).collect();
    for (row, ours) in rows.iter().zip(field().map(&places)) {
        assert!((ours.log_mean() - row[2]).abs() < 1e-9, "{row:?}");
        assert!((ours.log_variance().value() - row[3]).abs() < 1e-9, "{row:?}");
        let quicker = 1.0 - ours.chance_above(Duration::seconds(60.0)).as_share();
        assert!((quicker - row[4]).abs() < 1e-9, "{row:?}");
    }
}

/// Grade V: each drop left out and kriged from the other 24.
#[test]
fn leave_one_out_agrees() {
    let report = field().left_out();
    let rows = rows("slab25_loo.csv", 25);
    let errors: Vec<f64> = rows.iter().map(|r| (r[2] - r[3]) / r[4].sqrt()).collect();
    for ((row, drop), error) in rows.iter().zip(&report.drops).zip(&errors) {
        assert!((drop.foretold.log_mean() - row[3]).abs() < 1e-9, "{row:?}");
        assert!((drop.foretold.log_variance().value() - row[4]).abs() < 1e-9, "{row:?}");
        let Outcome::Timed { standardized } = drop.outcome else { panic!("{row:?}") };
        assert!((standardized - error).abs() < 1e-8, "{row:?}");
    }
    let squares: f64 = errors.iter().map(|e| e * e).sum();
    let inside = |reach: f64| errors.iter().filter(|e| e.abs() <= reach).count() as f64 / 25.0;
    assert_eq!(report.timed, 25);
    assert!((report.mean - errors.iter().sum::<f64>() / 25.0).abs() < 1e-8);
    assert!((report.root_mean_square - (squares / 25.0).sqrt()).abs() < 1e-8);
    assert_eq!(report.held_80.as_share(), inside(1.281_551_565_5));
    assert_eq!(report.held_95.as_share(), inside(1.959_963_984_5));
}

/// Leave-one-out from the projection matrix is what comes of truly leaving one out.
#[test]
fn leaving_out_by_hand_gives_the_same() {
    let drops = slab_25();
    for (index, drop) in field().left_out().drops.iter().enumerate() {
        let mut others = drops.clone();
        let one = others.remove(index);
        let by_hand = Field::with_covariance(&others, slab_25_covariance()).unwrap().at(one.place).fresh_drop();
        let (a, b) = (by_hand.log_variance().value(), drop.foretold.log_variance().value());
        assert!((by_hand.log_mean() - drop.foretold.log_mean()).abs() < 1e-9, "drop {index}");
        assert!((a - b).abs() < 1e-9, "drop {index}");
    }
}

/// SciPy, grade V; the stated absolute error.
#[test]
fn owens_t_agrees_with_scipy() {
    let mut worst = 0.0_f64;
    for row in rows("owens_t.csv", 663) {
        worst = worst.max((owens_t(row[0], row[1]) - row[2]).abs());
    }
    assert!(worst < 1e-15, "worst {worst:e}");
    assert!(owens_t(f64::NAN, 1.0).is_nan() && owens_t(1.0, f64::NAN).is_nan());
    assert_eq!(owens_t(f64::INFINITY, 0.5), 0.0);
}

#[test]
fn a_variance_of_four_hundredths_is_a_factor_of_1_22() {
    let factor = LogVariance::new(0.04).unwrap().spread_factor();
    assert!((factor - 1.221_402_758).abs() < 1e-9);
    assert!(LogVariance::new(-0.1).is_err() && LogVariance::new(f64::NAN).is_err());
}
