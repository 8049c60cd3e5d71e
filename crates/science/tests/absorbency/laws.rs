//! Laws of the map.

use proptest::prelude::*;
use science::absorbency::{Covariance, DropTest, End, Estimate, Field, Fields, Limits};
use units::{Duration, Fraction};

use crate::{covariance, place, slab_25, slab_25_covariance, soaked};

/// Drops, a covariance and a place to look at.
#[derive(Debug, Clone)]
struct Asked {
    drops: Vec<DropTest>,
    with: Covariance,
    x: f64,
    y: f64,
}

impl Asked {
    fn at(&self, drops: &[DropTest], x: f64, y: f64) -> Estimate {
        Field::with_covariance(drops, self.with).expect("a field").at(place(x, y))
    }

    fn here(&self) -> Estimate {
        self.at(&self.drops, self.x, self.y)
    }
}

fn asked() -> impl Strategy<Value = Asked> {
    let drops = prop::collection::vec((0.0..10.0_f64, 0.0..8.0_f64, 2.0..6.5_f64), 8..30)
        .prop_map(|drops| drops.into_iter().map(|(x, y, log)| soaked(x, y, log.exp())).collect::<Vec<_>>())
        .prop_filter("six places", |drops| Field::with_covariance(drops, slab_25_covariance()).is_ok());
    let with = (0.05..2.0_f64, 0.5..6.0_f64, 0.01..0.3_f64).prop_map(|(s, l, t)| covariance(s, l, t));
    (drops, with, 0.0..10.0_f64, 0.0..8.0_f64).prop_map(|(drops, with, x, y)| Asked { drops, with, x, y })
}

/// Differences of mean and latent variance.
fn gap(a: &Estimate, b: &Estimate) -> f64 {
    let variance = (a.log_variance().value() - b.log_variance().value()).abs();
    (a.log_mean() - b.log_mean()).abs().max(variance)
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(48))]

    #[test]
    fn order_of_drops_does_not_matter(asked in asked()) {
        let turned: Vec<DropTest> = asked.drops.iter().rev().copied().collect();
        prop_assert!(gap(&asked.here(), &asked.at(&turned, asked.x, asked.y)) < 1e-9);
    }

    #[test]
    fn another_corner_and_swapped_directions_give_the_same_map(asked in asked()) {
        let moved: Vec<DropTest> = asked
            .drops
            .iter()
            .map(|d| DropTest { place: place(d.place.y.as_meters() - 31.0, d.place.x.as_meters() + 17.0), end: d.end })
            .collect();
        prop_assert!(gap(&asked.here(), &asked.at(&moved, asked.y - 31.0, asked.x + 17.0)) < 1e-8);
    }

    /// The level is unknown: twice every time gives twice every median and the same doubt.
    #[test]
    fn scaling_all_times_scales_the_map(asked in asked()) {
        let slower: Vec<DropTest> = asked
            .drops
            .iter()
            .map(|d| {
                let End::SoakedIn(time) = d.end else { panic!("all drops soak in") };
                DropTest { end: End::SoakedIn(time * 2.0), ..*d }
            })
            .collect();
        let (a, b) = (asked.here(), asked.at(&slower, asked.x, asked.y));
        prop_assert!((b.median() / a.median() - 2.0).abs() < 1e-8);
        prop_assert!((a.log_variance().value() - b.log_variance().value()).abs() < 1e-9);
    }

    /// One more drop never makes a place less known, whatever it reads.
    #[test]
    fn one_more_drop_never_widens_a_band(asked in asked(), log in 2.0..6.0_f64) {
        let mut more = asked.drops.clone();
        more.push(soaked(asked.x + 0.3, asked.y, log.exp()));
        let (a, b) = (asked.here(), asked.at(&more, asked.x, asked.y));
        prop_assert!(b.log_variance().value() <= a.log_variance().value() + 1e-10);
    }

    #[test]
    fn bands_chances_and_classes_go_together(asked in asked(), limit in 5.0..500.0_f64) {
        let at = asked.here();
        let (low, high) = at.p10_p90();
        prop_assert!(low <= at.median() && at.median() <= high && at.median() <= at.mean());
        prop_assert!((at.chance_above(low).as_share() - 0.9).abs() < 1e-9);
        prop_assert!((at.chance_above(high).as_share() - 0.1).abs() < 1e-9);
        let limits = Limits::new(vec![Duration::seconds(limit), Duration::seconds(3.0 * limit)]).unwrap();
        let chances = at.chances(&limits);
        prop_assert!((chances.iter().map(|c| c.as_share()).sum::<f64>() - 1.0).abs() < 1e-12);
        let class = at.class(&limits);
        prop_assert!(chances.iter().all(|c| *c <= chances[class]));
        let one = Limits::new(vec![Duration::seconds(limit)]).unwrap();
        prop_assert_eq!(at.class(&one) == 1, at.median() > Duration::seconds(limit));
    }
}

/// Far from every drop: the level, with all of s² and the doubt about the level.
#[test]
fn far_away_only_the_level_is_known() {
    let field = Field::with_covariance(&slab_25(), slab_25_covariance()).unwrap();
    let (far, farther) = (field.at(place(900.0, 900.0)), field.at(place(-2000.0, 50.0)));
    assert!(gap(&far, &farther) < 1e-12);
    assert!(far.log_variance().value() > 0.36);
}

/// Many drops at one place: the place is known to t²/n and its median is theirs.
#[test]
fn many_drops_at_one_place_average() {
    let mut drops: Vec<DropTest> = (0..6).map(|i| soaked(50.0 + 20.0 * f64::from(i), 0.0, 60.0)).collect();
    drops.extend((0..100).map(|i| soaked(0.0, 0.0, if i % 2 == 0 { 100.0 } else { 400.0 })));
    let at = Field::with_covariance(&drops, covariance(1.0, 1.0, 0.04)).unwrap().at(place(0.0, 0.0));
    assert!((at.median().as_seconds() - 200.0).abs() < 1.0, "{:?}", at.median());
    assert!((at.log_variance().value() / 0.0004 - 1.0).abs() < 0.01);
}

#[test]
fn a_map_is_its_places_one_by_one() {
    let field = Field::with_covariance(&slab_25(), slab_25_covariance()).unwrap();
    let places: Vec<_> = (0..300).map(|i| place(0.033 * f64::from(i), 0.02 * f64::from(i % 50))).collect();
    for (one, of_map) in places.iter().zip(field.map(&places)) {
        assert!(gap(&field.at(*one), &of_map) < 1e-12);
    }
    assert!(field.map(&[]).is_empty());
}

/// A boundary is a break: what a finish says does not depend on its neighbor, and a finish with
/// too few drops is refused alone.
#[test]
fn finishes_are_kept_apart() {
    let broom: Vec<DropTest> = (0..6).map(|i| soaked(20.0 + f64::from(i), 0.3 * f64::from(i), 12.0)).collect();
    let few = vec![soaked(40.0, 0.0, 30.0), soaked(41.0, 0.0, 30.0)];
    let fields = Fields::fit([
        ("trowel", slab_25()),
        ("broom", broom),
        ("float", few),
        ("broom", vec![soaked(22.0, 4.0, 13.0)]),
    ]);
    let alone = Field::fit(&slab_25()).unwrap();
    let beside = fields.get(&"trowel").unwrap().unwrap();
    for x in [0.5, 5.0, 9.9] {
        assert_eq!(alone.at(place(x, 4.0)), beside.at(place(x, 4.0)));
    }
    assert_eq!(fields.get(&"broom").unwrap().unwrap().drops().len(), 7);
    assert!(fields.get(&"float").unwrap().is_err());
    assert!(fields.get(&"salt").is_none());
    assert_eq!(fields.iter().map(|(key, _)| *key).collect::<Vec<_>>(), ["trowel", "broom", "float"]);
}

#[test]
fn quantiles_at_the_ends_are_nothing_and_without_end() {
    let at = Field::with_covariance(&slab_25(), slab_25_covariance()).unwrap().at(place(5.0, 5.0));
    assert_eq!(at.quantile(Fraction::share(0.0).unwrap()), Duration::ZERO);
    assert!(at.quantile(Fraction::share(1.0).unwrap()).as_seconds().is_infinite());
}
