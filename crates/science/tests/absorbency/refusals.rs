//! What is refused, and what the refusal says.

use science::absorbency::{AbsorbencyError, Aim, Field, Fields, Ground, Limits, NextRule};
use units::{Area, Duration, Fraction};

use crate::{covariance, place, slab_25, slab_25_covariance, soaked, stood};

#[test]
fn five_places_are_too_few_however_many_drops() {
    let mut drops: Vec<_> = (0..5).map(|i| soaked(f64::from(i), 0.5 * f64::from(i), 60.0)).collect();
    drops.push(soaked(0.05, 0.0, 70.0));
    let refused = Field::fit(&drops).unwrap_err();
    assert_eq!(refused, AbsorbencyError::TooFewPlaces { places: 5, needed: 6, more: 1 });
    assert!(refused.to_string().contains("places to add: 1"), "{refused}");
    assert_eq!(Field::fit(&[]).unwrap_err(), AbsorbencyError::TooFewPlaces { places: 0, needed: 6, more: 6 });
}

#[test]
fn a_slab_on_which_water_stands_is_no_map() {
    let mut drops: Vec<_> = (0..8).map(|i| stood(f64::from(i), 0.0, 600.0)).collect();
    drops.push(soaked(9.0, 0.0, 60.0));
    assert_eq!(Field::fit(&drops).unwrap_err(), AbsorbencyError::NearlyAllStood { drops: 9, timed: 1, needed: 3 });
}

#[test]
fn times_and_places_must_be_numbers() {
    for seconds in [0.0, -3.0, f64::NAN, f64::INFINITY] {
        let mut drops = slab_25();
        drops[7] = soaked(1.0, 1.0, seconds);
        assert!(matches!(Field::fit(&drops), Err(AbsorbencyError::Time { index: 7, .. })), "{seconds}");
    }
    let mut drops = slab_25();
    drops[3] = soaked(f64::NAN, 1.0, 60.0);
    assert_eq!(Field::fit(&drops).unwrap_err(), AbsorbencyError::Place { index: 3 });
}

#[test]
fn a_covariance_without_noise_or_length_is_refused() {
    for (sill, length, nugget) in [(0.0, 2.0, 0.03), (0.3, 0.0, 0.03), (0.3, 2.0, 0.0), (0.3, f64::INFINITY, 0.03)] {
        let refused = Field::with_covariance(&slab_25(), covariance(sill, length, nugget)).unwrap_err();
        assert!(matches!(refused, AbsorbencyError::Covariance { .. }), "{sill} {length} {nugget}: {refused}");
    }
    let stiff = Field::with_covariance(&slab_25(), covariance(1.0, 1e9, 1e-300)).unwrap_err();
    assert_eq!(stiff, AbsorbencyError::Unsolvable);
}

#[test]
fn limits_rise_from_above_zero() {
    let of = |seconds: &[f64]| Limits::new(seconds.iter().map(|s| Duration::seconds(*s)).collect());
    assert_eq!(of(&[]), Err(AbsorbencyError::Limits { index: 0 }));
    assert_eq!(of(&[0.0]), Err(AbsorbencyError::Limits { index: 0 }));
    assert_eq!(of(&[30.0, 60.0, 60.0]), Err(AbsorbencyError::Limits { index: 2 }));
    assert_eq!(of(&[30.0, 60.0]).unwrap().times().len(), 2);
}

#[test]
fn grounds_and_rules_that_cannot_be_worked_are_refused() {
    let field = Field::with_covariance(&slab_25(), slab_25_covariance()).unwrap();
    let good = Ground { map: vec![place(1.0, 1.0)], each: Area::square_meters(0.25), reachable: vec![place(2.0, 2.0)] };
    let rule = NextRule { aim: Aim::spread(), most: 2 };
    let most = |most| field.next_places(&good, NextRule { aim: Aim::spread(), most });
    assert_eq!(most(0), Err(AbsorbencyError::Most(0)));
    assert_eq!(most(6), Err(AbsorbencyError::Most(6)));
    let without_map = Ground { map: vec![], ..good.clone() };
    assert!(matches!(field.next_places(&without_map, rule), Err(AbsorbencyError::Ground { map: 0, .. })));
    let without_area = Ground { each: Area::ZERO, ..good.clone() };
    assert!(matches!(field.next_places(&without_area, rule), Err(AbsorbencyError::Ground { .. })));
    let nowhere = Ground { map: vec![place(f64::NAN, 0.0)], ..good.clone() };
    assert_eq!(field.next_places(&nowhere, rule), Err(AbsorbencyError::Place { index: 0 }));
    let share = Fraction::share(0.001).unwrap();
    let aim = Aim::Limit { limit: Duration::ZERO, least_gain: share, least_change: share };
    assert_eq!(field.weigh_places(&good, aim), Err(AbsorbencyError::Limits { index: 0 }));
    let nobody = Fields::fit([("broom", vec![soaked(0.0, 0.0, 20.0)])]);
    assert_eq!(nobody.next_places(&[("broom", good)], rule), Err(AbsorbencyError::NothingToPlan));
}
