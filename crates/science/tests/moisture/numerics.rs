//! The solver as a numerical method: balance, order, symmetry, independence of its past.

use proptest::prelude::*;
use science::moisture::{
    Accuracy, Ambient, DryingHistory, DryingSlab, Point, SelfDesiccation, Shape, Sides, Spell, Surface, Workspace,
};
use units::{Duration, Length, Speed, Temperature};

use crate::{air, d1, plain_slab, rh, share};

/// Slabs of every kind: shape, sides, film or none, wet cure, changing air, self-desiccation.
fn any_slab() -> impl Strategy<Value = DryingSlab> {
    let shape = (0.01..1.0_f64, 70.0..90.0_f64, 2.0..25.0_f64);
    let size = (60.0..300.0_f64, any::<bool>(), 1e-11..2e-9_f64);
    let face = prop::option::of(1e-8..1e-6_f64);
    let rooms = prop::collection::vec((20.0..95.0_f64, 5.0..35.0_f64), 1..20);
    let sink = prop::option::of((0.0..0.1_f64, 5.0..60.0_f64));
    (shape, size, face, rooms, sink, 0.0..20.0_f64, 80.0..=100.0_f64).prop_map(
        |((dry, knee, n), (mm, two, d), film, rooms, sink, cure, initial)| {
            let mut concrete = d1(d);
            concrete.shape = Shape::new(share(dry), rh(knee), n).unwrap();
            concrete.by_temperature = true;
            let spells: Vec<Spell> = rooms
                .iter()
                .enumerate()
                .map(|(i, (room, celsius))| Spell {
                    from: Duration::days(7.3 * i as f64),
                    humidity: rh(*room),
                    temperature: Temperature::celsius(*celsius),
                })
                .collect();
            let sides = if two { Sides::Two } else { Sides::One };
            let mut slab = DryingSlab::new(Length::millimeters(mm), sides, concrete, Ambient::series(&spells).unwrap());
            slab.initial = rh(initial);
            slab.wet_cure = Duration::days(cure);
            if let Some(film) = film {
                slab.surface = Surface::Film(Speed::meters_per_second(film));
            }
            slab.self_desiccation =
                sink.map(|(fall, days)| SelfDesiccation { fall: share(fall), time_constant: Duration::days(days) });
            slab
        },
    )
}

fn dry(slab: &DryingSlab, days: f64, accuracy: Accuracy) -> DryingHistory {
    slab.dry(Duration::days(days), &[Point::Probe, Point::Deepest, Point::Mean], accuracy).unwrap()
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(64))]

    /// What the cells lost is what left through the faces and what hydration took, to 1e-10 of RH,
    /// however coarse the grid and the steps.
    #[test]
    fn moisture_is_conserved(slab in any_slab(), cells in 8_usize..60, loose in 1e-6..1e-2_f64) {
        let history = dry(&slab, 200.0, Accuracy { cells, tolerance: loose });
        let balance = history.balance();
        prop_assert!(balance.unexplained().as_share().abs() < 1e-10, "{:?}", balance);
    }

    /// A slab drying two sides is two slabs of half the thickness, each drying one.
    #[test]
    fn two_sides_are_twice_one_side(slab in any_slab()) {
        let mut half = slab.clone();
        // Steady air: with changing air a step's mean depends on where rounding put its ends.
        half.ambient = air(55.0);
        half.sides = Sides::One;
        half.thickness = slab.sides.path(slab.thickness);
        let mut whole = half.clone();
        whole.sides = Sides::Two;
        whole.thickness = half.thickness * 2.0;
        let (one, two) = (dry(&half, 200.0, Accuracy::default()), dry(&whole, 200.0, Accuracy::default()));
        for day in [5.0, 30.0, 100.0, 200.0] {
            for point in 0..3 {
                let at = Duration::days(day);
                let off = (one.humidity(point, at) - two.humidity(point, at)).as_share();
                prop_assert!(off.abs() < 1e-8, "point {} day {}: {:e}", point, day, off);
            }
        }
    }

    /// What a workspace did before does not matter.
    #[test]
    fn a_run_does_not_depend_on_earlier_runs(first in any_slab(), second in any_slab()) {
        let mut used = Workspace::default();
        let points = [Point::Probe];
        first.dry_in(&mut used, Duration::days(50.0), &points, Accuracy::ENSEMBLE).unwrap();
        let after = second.dry_in(&mut used, Duration::days(50.0), &points, Accuracy::ENSEMBLE).unwrap();
        let fresh = second.dry(Duration::days(50.0), &points, Accuracy::ENSEMBLE).unwrap();
        prop_assert_eq!(after, fresh);
    }
}

/// Error at 24, 48 and 96 cells against 768, the time error made negligible.
#[test]
fn order_of_convergence_in_space_is_two() {
    let mut filmed = plain_slab();
    filmed.surface = Surface::Film(Speed::meters_per_second(3e-8));
    for slab in [plain_slab(), filmed] {
        let at = |cells: usize| dry(&slab, 365.0, Accuracy { cells, tolerance: 1e-7 });
        let best = at(768);
        let error = |cells: usize| -> f64 {
            let tried = at(cells);
            let off = |point: usize, day: f64| {
                (tried.humidity(point, Duration::days(day)) - best.humidity(point, Duration::days(day))).as_share()
            };
            let days = [14.0, 28.0, 60.0, 120.0, 240.0, 365.0];
            let squares: f64 = days.iter().flat_map(|d| (0..3).map(move |p| off(p, *d).powi(2))).sum();
            (squares / 18.0).sqrt()
        };
        let (coarse, middle, fine) = (error(24), error(48), error(96));
        let orders = [(coarse / middle).log2(), (middle / fine).log2()];
        assert!(orders.iter().all(|p| (1.8..2.6).contains(p)), "orders {orders:?}");
    }
}

/// A hundred times less tolerance gives at least ten times less error.
#[test]
fn tolerance_governs_the_error_in_time() {
    let at = |tolerance: f64| dry(&plain_slab(), 365.0, Accuracy { cells: 48, tolerance });
    let best = at(1e-8);
    let error = |tolerance: f64| -> f64 {
        let tried = at(tolerance);
        (1..=36)
            .map(|k| Duration::days(10.0 * f64::from(k)))
            .map(|t| (tried.humidity(0, t) - best.humidity(0, t)).as_share().abs())
            .fold(0.0, f64::max)
    };
    let (loose, tight) = (error(1e-3), error(1e-5));
    assert!(tight < loose / 10.0, "{loose:e} at 1e-3, {tight:e} at 1e-5");
}

/// Air cut into equal spells is constant air.
#[test]
fn equal_spells_are_constant_air() {
    let mut slab = plain_slab();
    let steady = dry(&slab, 365.0, Accuracy::default());
    let spell = |day: u32| Spell {
        from: Duration::days(f64::from(day)),
        humidity: rh(50.0),
        temperature: Temperature::celsius(18.0),
    };
    slab.ambient = Ambient::series(&(0..365).map(spell).collect::<Vec<_>>()).unwrap();
    let by_spells = dry(&slab, 365.0, Accuracy::default());
    for day in [7.0, 28.0, 90.0, 365.0] {
        let off = (steady.humidity(0, Duration::days(day)) - by_spells.humidity(0, Duration::days(day))).as_share();
        assert!(off.abs() < 2e-4, "day {day}: {off:e}");
    }
}

/// Day and night in the air reach the probe as their mean potential: the hourly series and its
/// daily means (of potential, here by symmetry of constant diffusivity of humidity) agree.
#[test]
fn swings_within_a_day_are_averaged() {
    let mut slab = plain_slab();
    slab.concrete.shape = Shape::CONSTANT;
    let spell = |hour: u32| Spell {
        from: Duration::hours(f64::from(hour)),
        humidity: rh(if hour % 24 < 12 { 40.0 } else { 70.0 }),
        temperature: Temperature::celsius(18.0),
    };
    slab.ambient = Ambient::series(&(0..24 * 90).map(spell).collect::<Vec<_>>()).unwrap();
    let hourly = dry(&slab, 90.0, Accuracy::default());
    slab.ambient = air(55.0);
    let mean = dry(&slab, 90.0, Accuracy::default());
    for day in [20.0, 45.0, 90.0] {
        let off = (hourly.humidity(0, Duration::days(day)) - mean.humidity(0, Duration::days(day))).as_share();
        assert!(off.abs() < 1e-3, "day {day}: {off:e}");
    }
}
