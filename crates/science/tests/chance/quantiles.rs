//! Quantiles.

use proptest::prelude::*;
use science::chance::{Sample, SampleError, Seed, Stream, normal_quantile};

use crate::{number, rows};

/// NumPy, grade V.
#[test]
fn quantiles_agree_with_numpy() {
    for row in rows("quantile.csv", 42) {
        let values: Vec<f64> = row[3].split(' ').map(number).collect();
        let ours = Sample::of(values).unwrap().quantile(number(&row[1])).unwrap().value;
        assert!((ours - number(&row[2])).abs() < 1e-12, "{row:?}: {ours}");
    }
}

/// SciPy, grade V: the values are 1, 2, 3 …, so a value is its rank.
#[test]
fn order_statistic_intervals_agree_with_scipy() {
    for row in rows("order_interval.csv", 21) {
        let count = number(&row[0]) as u32;
        let estimate = Sample::of((1..=count).map(f64::from).collect()).unwrap().quantile(number(&row[1])).unwrap();
        let low = if row[2].is_empty() { f64::NEG_INFINITY } else { number(&row[2]) };
        let high = if row[3].is_empty() { f64::INFINITY } else { number(&row[3]) };
        assert_eq!((estimate.low, estimate.high), (low, high), "{row:?}");
    }
}

/// The interval holds the true quantile in 95 % of samples or a little more, as it must.
#[test]
fn intervals_hold_the_truth_as_often_as_they_say() {
    for share in [0.1, 0.5, 0.9] {
        let truth = normal_quantile(share);
        let held = (0..2000)
            .filter(|trial| {
                let mut stream = Stream::of_member(Seed(3), *trial);
                let values = (0..200).map(|_| stream.standard_normal()).collect();
                let estimate = Sample::of(values).unwrap().quantile(share).unwrap();
                estimate.low <= truth && truth <= estimate.high
            })
            .count();
        assert!((1880..=1960).contains(&held), "share {share}: held in {held} of 2000");
    }
}

#[test]
fn unreached_values_sort_last() {
    let sample = Sample::weighted(vec![f64::INFINITY, 1.0, 2.0, 3.0], vec![1.0, 2.0, 2.0, 3.0]).unwrap();
    assert!(sample.quantile(0.5).unwrap().value.is_finite());
    assert!(sample.quantile(0.99).unwrap().value.is_infinite());
    assert_eq!(sample.share_at_or_below(f64::MAX), 0.875);
}

#[test]
fn samples_that_say_nothing_are_refused() {
    assert_eq!(Sample::of(vec![]), Err(SampleError::Empty));
    assert_eq!(Sample::of(vec![1.0, f64::NAN]), Err(SampleError::NotANumber { index: 1 }));
    assert_eq!(Sample::weighted(vec![1.0], vec![]), Err(SampleError::Unmatched { values: 1, weights: 0 }));
    assert_eq!(Sample::weighted(vec![1.0, 2.0], vec![1.0, -1.0]), Err(SampleError::Weight { index: 1, weight: -1.0 }));
    assert!(Sample::weighted(vec![1.0], vec![0.0]).is_err());
    assert_eq!(Sample::of(vec![1.0]).unwrap().quantile(1.5), Err(SampleError::Share(1.5)));
}

proptest! {
    #[test]
    fn almost_equal_weights_give_the_plain_quantile(
        values in prop::collection::vec(-10.0..10.0_f64, 2..60),
        share in 0.0..=1.0_f64,
    ) {
        let plain = Sample::of(values.clone()).unwrap().quantile(share).unwrap().value;
        let mut weights = vec![1.0; values.len()];
        weights[0] += 1e-9;
        let weighted = Sample::weighted(values, weights).unwrap().quantile(share).unwrap().value;
        prop_assert!((plain - weighted).abs() < 1e-6, "{} against {}", plain, weighted);
    }

    #[test]
    fn scale_of_weights_and_order_do_not_matter(
        pairs in prop::collection::vec((-10.0..10.0_f64, 0.01..5.0_f64), 2..40),
        share in 0.0..=1.0_f64,
        scale in 0.1..10.0_f64,
    ) {
        let of = |pairs: &[(f64, f64)], scale: f64| {
            let (values, weights) = pairs.iter().map(|(v, w)| (*v, w * scale)).unzip();
            Sample::weighted(values, weights).unwrap()
        };
        let mut turned = pairs.clone();
        turned.reverse();
        let (a, b) = (of(&pairs, 1.0), of(&turned, scale));
        prop_assert!((a.quantile(share).unwrap().value - b.quantile(share).unwrap().value).abs() < 1e-9);
        prop_assert!(a.effective_size() <= pairs.len() as f64 + 1e-9 && a.effective_size() >= 1.0 - 1e-9);
    }

    #[test]
    fn a_bigger_share_is_never_a_smaller_value(
        pairs in prop::collection::vec((-10.0..10.0_f64, 0.0..5.0_f64), 2..40),
        one in 0.0..=1.0_f64,
        other in 0.0..=1.0_f64,
    ) {
        prop_assume!(pairs.iter().any(|p| p.1 > 0.0));
        let (values, weights): (Vec<f64>, Vec<f64>) = pairs.into_iter().unzip();
        let sample = Sample::weighted(values, weights).unwrap();
        let at = |share: f64| sample.quantile(share).unwrap();
        let (low, high) = (at(one.min(other)), at(one.max(other)));
        prop_assert!(low.value <= high.value + 1e-9);
        prop_assert!(low.low <= low.value + 1e-9 && low.value <= low.high + 1e-9);
    }
}
