//! The covariance: likelihood, its top, and the nugget from repeats.

use science::absorbency::{
    DropTest, Field, LogVariance, Note, Nugget, NuggetBasis, fit_covariance, log_likelihood, repeats,
};
use science::chance::{Seed, Stream};
use units::Length;

use crate::{covariance, place, rows, slab_25, soaked, stood};

fn variance(value: f64) -> LogVariance {
    LogVariance::new(value).expect("a variance")
}

/// Grade V. The last row is the optimum with t² held at 0.0001 or more.
#[test]
fn likelihood_and_its_top_agree_with_the_reference() {
    let rows = rows("slab25_reml.csv", 28);
    let drops = slab_25();
    for row in &rows {
        let ours = log_likelihood(&drops, covariance(row[0], row[1], row[2])).unwrap();
        // The file has twelve digits.
        assert!((ours - row[3]).abs() < 1e-9, "{row:?}: {ours}");
    }
    let fitted = fit_covariance(&drops, Nugget::AtLeast(variance(1e-4))).unwrap();
    let top = rows.last().unwrap();
    let found = fitted.covariance;
    assert!((fitted.log_likelihood - top[3]).abs() < 1e-9, "{fitted:?}");
    assert!((found.sill.value() / top[0] - 1.0).abs() < 1e-5, "{found:?}");
    assert!((found.length.as_meters() / top[1] - 1.0).abs() < 1e-5, "{found:?}");
    assert!((found.nugget.value() - top[2]).abs() < 1e-12, "{found:?}");
    assert_eq!(fitted.basis, NuggetBasis::Floor);
    assert!(!fitted.length_at_limit && !fitted.sill_at_limit);
}

/// Drops from a wavy field with noise, by the stream of a seed.
fn drawn(seed: u64, places: usize) -> Vec<DropTest> {
    let mut stream = Stream::of_member(Seed(seed), 0);
    let (level, slope, wave) = (stream.standard_normal(), stream.standard_normal(), stream.standard_normal());
    (0..places)
        .map(|_| {
            let (x, y) = (10.0 * stream.unit(), 8.0 * stream.unit());
            let smooth = 4.5 + 0.3 * level + 0.08 * slope * x + 0.5 * (0.9 * x + wave).sin() * (0.7 * y).cos();
            soaked(x, y, (smooth + 0.2 * stream.standard_normal()).exp())
        })
        .collect()
}

/// No point of a net over the range has a likelihood above the top found.
#[test]
fn the_top_is_the_top() {
    for seed in 0..12 {
        let drops = drawn(seed, 8 + 3 * seed as usize);
        let fitted = fit_covariance(&drops, Nugget::AtLeast(variance(0.02))).unwrap();
        // 0.3 m to 15 m, inside the bounds of every one of these sets.
        for length in (0..15).map(|step| 0.3 * 50.0_f64.powf(f64::from(step) / 14.0)) {
            for sill in (0..8).map(|step| 0.01 * 2.5_f64.powi(step)) {
                for nugget in (0..6).map(|step| 0.02 * 2.5_f64.powi(step)) {
                    let there = log_likelihood(&drops, covariance(sill, length, nugget)).unwrap();
                    assert!(
                        there <= fitted.log_likelihood + 1e-9,
                        "seed {seed}: {sill} {length} {nugget} has {there}, top {fitted:?}"
                    );
                }
            }
        }
    }
}

/// Worked by hand: three drops about the mean of their logarithms, and two a factor of 1.2 apart.
#[test]
fn repeats_are_pooled() {
    let mut drops = drawn(3, 8);
    drops.extend([soaked(20.0, 20.0, 50.0), soaked(20.05, 20.0, 60.0), soaked(20.0, 20.05, 75.0)]);
    drops.extend([soaked(30.0, 20.0, 100.0), soaked(30.0, 20.08, 120.0), stood(30.0, 20.0, 600.0)]);
    let found = repeats(&drops).unwrap().unwrap();
    let (a, b, c) = (50.0_f64.ln(), 60.0_f64.ln(), 75.0_f64.ln());
    let mean = (a + b + c) / 3.0;
    let three = (a - mean).powi(2) + (b - mean).powi(2) + (c - mean).powi(2);
    let by_hand = (three + 1.2_f64.ln().powi(2) / 2.0) / 3.0;
    assert_eq!((found.degrees_of_freedom, found.places), (3, 2));
    assert!((found.variance.value() - by_hand).abs() < 1e-12);
    let field = Field::fit(&drops).unwrap();
    assert_eq!(field.fitted().unwrap().basis, NuggetBasis::Repeats(found));
    assert!((field.covariance().nugget.value() - by_hand).abs() < 1e-12);
    assert!(!field.notes().contains(&Note::NuggetNotMeasured));
}

#[test]
fn repeats_that_agree_to_the_second_do_not_make_drops_exact() {
    let mut drops = drawn(4, 8);
    drops.extend([soaked(20.0, 20.0, 60.0), soaked(20.0, 20.0, 60.0), soaked(20.0, 20.0, 60.0)]);
    let field = Field::fit(&drops).unwrap();
    assert!(matches!(field.fitted().unwrap().basis, NuggetBasis::RepeatsRaised(_)));
    assert!((field.covariance().nugget.value() - 0.02).abs() < 1e-15);
}

#[test]
fn single_drops_leave_the_nugget_on_or_above_its_floor_and_say_so() {
    assert_eq!(repeats(&slab_25()), Ok(None));
    let field = Field::fit(&slab_25()).unwrap();
    assert!(field.covariance().nugget.value() >= 0.02 - 1e-15);
    assert!(field.notes().contains(&Note::NuggetNotMeasured));
}

/// The same time everywhere.
#[test]
fn an_even_slab_shows_no_pattern() {
    let drops: Vec<DropTest> = (0..9).map(|i| soaked(f64::from(i % 3) * 3.0, f64::from(i / 3) * 3.0, 60.0)).collect();
    let field = Field::fit(&drops).unwrap();
    assert!(field.notes().contains(&Note::NoPattern), "{:?} {:?}", field.notes(), field.fitted());
    assert!((field.at(place(4.0, 4.0)).median().as_seconds() - 60.0).abs() < 1e-6);
}

/// Never beyond three times the largest distance, wherever the likelihood rises to.
#[test]
fn the_length_stays_within_what_the_drops_can_tell() {
    for seed in 20..40 {
        let length = Field::fit(&drawn(seed, 7)).unwrap().covariance().length;
        assert!(length > Length::ZERO && length < Length::meters(3.0 * 12.9), "seed {seed}: {length:?}");
    }
}
