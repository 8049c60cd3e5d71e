//! Where to test next.

use science::absorbency::{Aim, Enough, Field, Fields, Gain, Ground, NextRule, Place, State};
use units::{Area, Duration, Fraction};

use crate::{place, rows, slab_25, slab_25_covariance, soaked};

fn field() -> Field {
    Field::with_covariance(&slab_25(), slab_25_covariance()).expect("a field")
}

/// The 20 × 16 places of the reference slab, each 0.25 m².
fn grid() -> Vec<Place> {
    rows("slab25_next_point.csv", 320).iter().map(|r| place(r[0], r[1])).collect()
}

fn ground() -> Ground {
    Ground { map: grid(), each: Area::square_meters(0.25), reachable: grid() }
}

fn share(value: f64) -> Fraction {
    Fraction::share(value).expect("a share")
}

fn minute(gain: f64, change: f64) -> Aim {
    Aim::Limit { limit: Duration::seconds(60.0), least_gain: share(gain), least_change: share(change) }
}

fn spread() -> Aim {
    Aim::Spread { least_fall: share(0.0) }
}

/// Grade V: mean Bernoulli variance and mean variance after a drop at each of 320 places.
#[test]
fn criteria_and_the_best_place_agree_with_the_reference() {
    let rows = rows("slab25_next_point.csv", 320);
    for (aim, column) in [(minute(0.0, 0.0), 7), (spread(), 5)] {
        let ours = field().weigh_places(&ground(), aim).unwrap();
        assert_eq!(ours.len(), 320);
        for (row, ours) in rows.iter().zip(&ours) {
            assert!((ours - row[column]).abs() < 1e-9, "{row:?}: {ours}");
        }
        let lowest = rows.iter().min_by(|a, b| a[column].total_cmp(&b[column])).unwrap();
        let first = &field().next_places(&ground(), NextRule { aim, most: 1 }).unwrap().places[0];
        assert_eq!((first.place.x.as_meters(), first.place.y.as_meters()), (lowest[0], lowest[1]));
    }
}

/// Without a limit the state after planned drops is the mean variance of a field that has them,
/// whatever they read.
#[test]
fn planned_drops_shrink_the_variance_as_real_ones_do() {
    let advice = field().next_places(&ground(), NextRule { aim: spread(), most: 5 }).unwrap();
    assert_eq!((advice.places.len(), advice.enough), (5, Enough::AsAsked));
    let mut drops = slab_25();
    let mut before = advice.before;
    for (index, next) in advice.places.iter().enumerate() {
        drops.push(soaked(next.place.x.as_meters(), next.place.y.as_meters(), 40.0 + 90.0 * index as f64));
        let real = Field::with_covariance(&drops, slab_25_covariance()).unwrap();
        let mean = real.map(&grid()).iter().map(|e| e.log_variance().value()).sum::<f64>() / 320.0;
        let (State::MeanVariance(after), State::MeanVariance(earlier)) = (next.after, before) else {
            panic!("{next:?}")
        };
        assert!((after.value() - mean).abs() < 1e-9, "after {index}: {} {mean}", after.value());
        let Gain::Spread(fall) = next.gain else { panic!("{next:?}") };
        assert!((fall.as_share() - (1.0 - after.value() / earlier.value())).abs() < 1e-9);
        before = next.after;
    }
}

/// With a limit the settled area is the fall of the area called wrongly, step by step, and never
/// more than the area that changes its call.
#[test]
fn settled_area_adds_up() {
    let advice = field().next_places(&ground(), NextRule { aim: minute(0.0, 0.0), most: 5 }).unwrap();
    let State::Misclassified(mut wrong) = advice.before else { panic!("{advice:?}") };
    let chance = |e: science::absorbency::Estimate| e.chance_above(Duration::seconds(60.0)).as_share();
    let by_chance: f64 = field().map(&grid()).into_iter().map(chance).map(|p| 0.25 * p.min(1.0 - p)).sum();
    assert!((wrong.as_square_meters() - by_chance).abs() < 1e-9, "{wrong:?} {by_chance}");
    let mut seen: Vec<Place> = Vec::new();
    for next in &advice.places {
        let (Gain::Limit { settles, changes }, State::Misclassified(after)) = (next.gain, next.after) else {
            panic!("{next:?}")
        };
        assert!((wrong - after - settles).abs() < Area::square_meters(1e-9));
        assert!(settles > Area::ZERO && settles <= changes);
        assert!(!seen.contains(&next.place), "{next:?} twice");
        seen.push(next.place);
        wrong = after;
    }
    assert_eq!(seen.len(), 5);
}

/// The area expected to be called wrongly after a drop is the mean over what that drop may read.
#[test]
fn expected_misclassification_is_the_mean_over_readings() {
    let at = place(7.75, 0.75);
    let ground = Ground { reachable: vec![at], ..ground() };
    let advice = field().next_places(&ground, NextRule { aim: minute(0.0, 0.0), most: 1 }).unwrap();
    let State::Misclassified(after) = advice.places[0].after else { panic!("{advice:?}") };
    let fresh = field().at(at).fresh_drop();
    let readings = 400;
    let mut mean = 0.0;
    for i in 0..readings {
        let reading = fresh.quantile(share((f64::from(i) + 0.5) / f64::from(readings)));
        let mut drops = slab_25();
        drops.push(soaked(7.75, 0.75, reading.as_seconds()));
        let map = Field::with_covariance(&drops, slab_25_covariance()).unwrap().map(&grid());
        let p = map.iter().map(|e| e.chance_above(Duration::seconds(60.0)).as_share());
        mean += p.map(|p| 0.25 * p.min(1.0 - p)).sum::<f64>() / f64::from(readings);
    }
    // Of 80 m²; the midpoints of 400 quantiles cut the tails.
    assert!((after.as_square_meters() - mean).abs() < 5e-4, "{} {mean}", after.as_square_meters());
}

#[test]
fn enough_is_said_when_a_drop_would_settle_little() {
    let stop = |aim| {
        let advice = field().next_places(&ground(), NextRule { aim, most: 5 }).unwrap();
        assert!(advice.places.is_empty(), "{advice:?}");
        advice.enough
    };
    assert!(matches!(stop(minute(0.0, 0.5)), Enough::PlanStays(_)));
    assert!(matches!(stop(minute(0.5, 0.0)), Enough::LittleGain(Gain::Limit { .. })));
    assert!(matches!(stop(Aim::Spread { least_fall: share(0.5) }), Enough::LittleGain(Gain::Spread(_))));
    // A limit far from every time: everything is plainly slower, and no drop changes that.
    assert!(matches!(stop(Aim::at_limit(Duration::seconds(0.5))), Enough::PlanStays(_)));
}

#[test]
fn places_run_out() {
    let two = Ground { reachable: vec![place(1.0, 1.0), place(9.0, 7.5)], ..ground() };
    let advice = field().next_places(&two, NextRule { aim: spread(), most: 5 }).unwrap();
    assert_eq!((advice.places.len(), advice.enough), (2, Enough::NoPlaceLeft));
    let nowhere = Ground { reachable: vec![], ..ground() };
    let advice = field().next_places(&nowhere, NextRule { aim: spread(), most: 5 }).unwrap();
    assert_eq!((advice.places.len(), advice.enough), (0, Enough::NoPlaceLeft));
}

/// Two finishes are planned together; the one known worse gets the first drop, and a finish without
/// a field or without drops is named as left out.
#[test]
fn the_finish_known_worse_is_tested_first() {
    let times = [
        (20.0, 0.0, 20.0),
        (24.0, 1.0, 200.0),
        (28.0, 0.0, 30.0),
        (21.0, 6.0, 90.0),
        (25.0, 7.0, 15.0),
        (29.0, 6.0, 400.0),
    ];
    let rough = times.iter().map(|(x, y, s)| soaked(*x, *y, *s)).collect();
    let fields = Fields::fit([("trowel", slab_25()), ("broom", rough), ("float", vec![soaked(40.0, 0.0, 9.0)])]);
    let places: Vec<Place> = (0..80).map(|i| place(20.0 + f64::from(i % 10), f64::from(i / 10))).collect();
    let broom = Ground { map: places.clone(), each: Area::square_meters(1.0), reachable: places };
    let rule = NextRule { aim: spread(), most: 3 };
    let advice = fields.next_places(&[("trowel", ground()), ("broom", broom), ("salt", ground())], rule).unwrap();
    assert_eq!(advice.places[0].group, "broom");
    assert_eq!(advice.left_out, ["float", "salt"]);
}
