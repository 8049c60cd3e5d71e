//! Which way each number moves the answer.

use proptest::prelude::*;
use science::moisture::{Accuracy, Ambient, Concrete, DryingSlab, Point, SelfDesiccation, Sides, Surface};
use units::{Duration, Length, Speed, Temperature};

use crate::{air, d1, plain_slab, rh, share};

/// Fine enough that two runs differ by physics and not by their steps.
const FINE: Accuracy = Accuracy { cells: 48, tolerance: 1e-6 };
/// What two fine runs may still differ by, in points of RH.
const SLACK: f64 = 0.005;

/// Humidity at a fixed depth of 30 mm on four days, %.
fn course(slab: &DryingSlab) -> [f64; 4] {
    let point = Point::Depth(Length::millimeters(30.0));
    let history = slab.dry(Duration::days(300.0), &[point], FINE).unwrap();
    [10.0, 40.0, 120.0, 300.0].map(|day| history.humidity(0, Duration::days(day)).as_percent())
}

/// Every value of `wetter` is at or above that of `drier`, and at least one clearly above.
fn assert_wetter(wetter: &DryingSlab, drier: &DryingSlab) -> Result<(), TestCaseError> {
    let (wet, dry) = (course(wetter), course(drier));
    prop_assert!(wet.iter().zip(&dry).all(|(w, d)| *w >= *d - SLACK), "{:?} against {:?}", wet, dry);
    prop_assert!(wet.iter().zip(&dry).any(|(w, d)| *w > *d + SLACK), "{:?} against {:?}", wet, dry);
    Ok(())
}

fn with(change: impl FnOnce(&mut DryingSlab)) -> DryingSlab {
    let mut slab = plain_slab();
    change(&mut slab);
    slab
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(16))]

    #[test]
    fn damper_air_leaves_it_wetter(room in 10.0..80.0_f64, more in 5.0..15.0_f64) {
        assert_wetter(&with(|s| s.ambient = air(room + more)), &with(|s| s.ambient = air(room)))?;
    }

    #[test]
    fn less_diffusive_concrete_stays_wetter(d in 1e-10..1e-9_f64, times in 1.2..3.0_f64) {
        assert_wetter(&with(|s| s.concrete = d1(d)), &with(|s| s.concrete = d1(d * times)))?;
    }

    #[test]
    fn thicker_slab_stays_wetter(mm in 60.0..120.0_f64, times in 1.2..2.0_f64) {
        let thick = |mm: f64| with(|s| s.thickness = Length::millimeters(mm));
        assert_wetter(&thick(mm * times), &thick(mm))?;
    }

    #[test]
    fn one_side_dries_slower_than_two(mm in 60.0..150.0_f64) {
        let slab = |sides| with(|s| { s.sides = sides; s.thickness = Length::millimeters(mm); });
        assert_wetter(&slab(Sides::One), &slab(Sides::Two))?;
    }

    #[test]
    fn stronger_film_keeps_it_wetter(film in 5e-9..1e-7_f64, times in 1.5..4.0_f64) {
        let filmed = |f: f64| with(|s| s.surface = Surface::Film(Speed::meters_per_second(f)));
        assert_wetter(&filmed(film), &filmed(film * times))?;
        assert_wetter(&filmed(film * times), &plain_slab())?;
    }

    #[test]
    fn longer_wet_cure_leaves_it_wetter(days in 0.0..10.0_f64, more in 2.0..20.0_f64) {
        let cured = |d: f64| with(|s| s.wet_cure = Duration::days(d));
        assert_wetter(&cured(days + more), &cured(days))?;
    }

    #[test]
    fn wetter_start_stays_wetter(start in 80.0..95.0_f64, more in 1.0..5.0_f64) {
        assert_wetter(&with(|s| s.initial = rh(start + more)), &with(|s| s.initial = rh(start)))?;
    }

    #[test]
    fn self_desiccation_dries(fall in 0.0..0.05_f64, more in 0.01..0.05_f64, days in 5.0..60.0_f64) {
        let sunk = |fall: f64| with(|s| {
            s.self_desiccation =
                Some(SelfDesiccation { fall: share(fall), time_constant: Duration::days(days) });
        });
        assert_wetter(&sunk(fall), &sunk(fall + more))?;
    }

    #[test]
    fn colder_prior_stays_wetter_and_so_does_more_water(c in 5.0..25.0_f64, wc in 0.36..0.65_f64) {
        let prior = |celsius: f64, ratio: f64| {
            let thickness = Length::millimeters(100.0);
            let concrete = Concrete::default_prior(share(ratio), thickness, Sides::One).unwrap();
            let ambient = Ambient::constant(rh(50.0), Temperature::celsius(celsius));
            DryingSlab::new(thickness, Sides::One, concrete, ambient)
        };
        assert_wetter(&prior(c, wc), &prior(c + 8.0, wc))?;
        assert_wetter(&prior(c, wc + 0.08), &prior(c, wc))?;
    }

    /// In steady drier air the humidity only falls and never leaves the range between air and start.
    #[test]
    fn drying_is_one_way_and_stays_between_air_and_start(
        room in 10.0..80.0_f64, start in 85.0..=100.0_f64, mm in 60.0..200.0_f64,
    ) {
        let slab = with(|s| {
            s.ambient = air(room);
            s.initial = rh(start);
            s.thickness = Length::millimeters(mm);
        });
        let points = [Point::Probe, Point::Deepest, Point::Mean, Point::Depth(Length::millimeters(2.0))];
        let history = slab.dry(Duration::days(730.0), &points, FINE).unwrap();
        for point in 0..points.len() {
            let mut before = start;
            for day in 0..=146 {
                let now = history.humidity(point, Duration::days(5.0 * f64::from(day))).as_percent();
                prop_assert!(now <= before + SLACK, "point {} day {}: {} after {}", point, 5 * day, now, before);
                prop_assert!(now >= room - SLACK);
                before = now;
            }
        }
        let deep = history.humidity(1, Duration::days(100.0));
        prop_assert!(history.humidity(0, Duration::days(100.0)).as_percent() <= deep.as_percent() + SLACK);
    }
}

/// Under water nothing dries; the day the water goes it begins.
#[test]
fn wet_cure_only_delays_a_saturated_slab() {
    let plain = plain_slab();
    let cured = with(|s| s.wet_cure = Duration::days(7.0));
    let run = |slab: &DryingSlab| slab.dry(Duration::days(400.0), &[Point::Probe], FINE).unwrap();
    let (plain, cured) = (run(&plain), run(&cured));
    assert!(cured.humidity(0, Duration::days(7.0)).as_percent() > 100.0 - 1e-9);
    for day in [1.0, 10.0, 100.0, 300.0] {
        let off = cured.humidity(0, Duration::days(day + 7.0)) - plain.humidity(0, Duration::days(day));
        assert!(off.as_points().abs() < SLACK, "day {day}: {off:?}");
    }
    let time = |h: &science::moisture::DryingHistory| h.time_to(0, rh(85.0)).unwrap();
    assert!(((time(&cured) - time(&plain)).as_days() - 7.0).abs() < 0.05);
    // A limit met at the start is met when the face begins to dry, not before.
    assert_eq!(cured.time_to(0, rh(100.0)), Some(Duration::days(7.0)));
}

/// Sealed in by a film that lets nothing through to speak of, only hydration takes water.
#[test]
fn self_desiccation_alone_follows_its_law() {
    let slab = with(|s| {
        s.surface = Surface::Film(Speed::meters_per_second(1e-16));
        s.self_desiccation = Some(SelfDesiccation { fall: share(0.08), time_constant: Duration::days(20.0) });
    });
    let history = slab.dry(Duration::days(100.0), &[Point::Mean], FINE).unwrap();
    for day in [5.0, 20.0, 60.0, 100.0_f64] {
        let exact = 100.0 - 8.0 * (1.0 - (-day / 20.0).exp());
        let ours = history.humidity(0, Duration::days(day)).as_percent();
        assert!((ours - exact).abs() < 0.01, "day {day}: {ours} against {exact}");
    }
}
