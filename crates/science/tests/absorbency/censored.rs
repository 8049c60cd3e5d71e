//! Drops that still stood when the watching stopped.

use science::absorbency::{DropTest, Field, Note, Outcome};

use crate::{covariance, place, rows, slab_25, slab_25_covariance, soaked, stood};

fn drops_of(case: f64) -> Vec<DropTest> {
    rows("censored_drops.csv", 131)
        .iter()
        .filter(|r| r[0] == case)
        .map(|r| if r[4] == 1.0 { stood(r[1], r[2], r[3]) } else { soaked(r[1], r[2], r[3]) })
        .collect()
}

/// Exact by quadrature, grade V. One such drop: equal. Several: means within 0.01 deviations and
/// variances within 5 %, which is the method's own error: expectation propagation written apart in
/// NumPy is off by the same 0.0088 deviations and 4.3 % at worst.
#[test]
fn the_map_is_what_the_bound_says() {
    let (mut one_off, mut mean_off, mut variance_off) = (0.0_f64, 0.0_f64, 0.0_f64);
    for row in rows("censored_exact.csv", 72) {
        let field = Field::with_covariance(&drops_of(row[0]), covariance(row[2], row[3], row[4])).unwrap();
        let ours = field.at(place(row[5], row[6]));
        let mean = (ours.log_mean() - row[7]).abs() / row[8].sqrt();
        let variance = (ours.log_variance().value() / row[8] - 1.0).abs();
        if row[1] == 1.0 {
            one_off = one_off.max(mean).max(variance);
        } else {
            mean_off = mean_off.max(mean);
            variance_off = variance_off.max(variance);
        }
        assert_eq!(field.notes(), [Note::StillStanding { drops: row[1] as usize }]);
    }
    assert!(one_off < 1e-8, "one: {one_off:e}");
    assert!(mean_off < 0.01 && variance_off < 0.05, "several: mean {mean_off}, variance {variance_off}");
}

/// "Longer than a second", where its neighbors all took much longer, is no news.
#[test]
fn a_bound_that_everyone_expected_changes_nothing() {
    let mut drops = slab_25();
    let before = Field::with_covariance(&drops, slab_25_covariance()).unwrap();
    drops.push(stood(7.4, 5.5, 1.0));
    let after = Field::with_covariance(&drops, slab_25_covariance()).unwrap();
    for (x, y) in [(7.4, 5.5), (2.0, 2.0), (9.0, 7.0)] {
        let (a, b) = (before.at(place(x, y)), after.at(place(x, y)));
        assert!((a.log_mean() - b.log_mean()).abs() < 1e-6, "{x} {y}");
        assert!((a.log_variance().value() - b.log_variance().value()).abs() < 1e-6, "{x} {y}");
    }
    // The report counts the timed drops only and gives the other its chance.
    let report = after.left_out();
    assert_eq!((report.timed, report.drops.len()), (25, 26));
    let Outcome::StillStood { chance } = report.drops[25].outcome else { panic!("the last drop still stood") };
    assert!(chance.as_share() > 0.999_999);
}

/// A drop that stood raises the map about it above what a time at the bound would.
#[test]
fn still_standing_is_slower_than_soaked_at_that_moment() {
    let with = |last: DropTest| {
        let mut drops = slab_25();
        drops.push(last);
        Field::with_covariance(&drops, slab_25_covariance()).unwrap().at(place(1.0, 1.0))
    };
    let (timed, standing) = (with(soaked(1.2, 1.2, 600.0)), with(stood(1.2, 1.2, 600.0)));
    assert!(standing.log_mean() > timed.log_mean());
    assert!(standing.log_variance() > timed.log_variance());
}

/// Bounds far above everything the neighbors say still give numbers.
#[test]
fn a_hopeless_bound_is_survived() {
    let mut drops = slab_25();
    drops.extend([stood(1.0, 1.0, 1e9), stood(9.0, 1.0, 1e9)]);
    let at = Field::with_covariance(&drops, slab_25_covariance()).unwrap().at(place(1.0, 1.0));
    assert!(at.log_mean().is_finite() && at.log_variance().value() > 0.0);
    assert!(at.median().as_seconds() > 1000.0, "{:?}", at.median());
}
