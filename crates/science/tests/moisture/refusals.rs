//! What is refused, and what is said.

use science::chance::Seed;
use science::moisture::{
    Accuracy, Ambient, Concrete, Draws, DryingError, DryingSlab, ForecastPlan, Point, Reading, ReadingError,
    SelfDesiccation, Shape, Sides, Spell, Surface,
};
use units::{Diffusivity, Duration, HumidityDifference, Length, Pressure, Speed, Temperature};

use crate::{plain_slab, rh, share};

fn refused(change: impl FnOnce(&mut DryingSlab)) -> String {
    let mut slab = plain_slab();
    change(&mut slab);
    slab.dry(Duration::days(90.0), &[Point::Probe], Accuracy::default()).unwrap_err().to_string()
}

#[test]
fn numbers_of_the_slab_out_of_range() {
    assert_eq!(
        refused(|s| s.thickness = Length::millimeters(5.0)),
        "thickness 5.0 mm: give 10 mm to 2000 mm (3/8 in to 79 in)"
    );
    assert_eq!(
        refused(|s| s.concrete.saturated = Diffusivity::square_meters_per_second(1.0)),
        "diffusivity 1e0 m²/s: give 1e-13 to 1e-6 m²/s"
    );
    assert_eq!(refused(|s| s.surface = Surface::Film(Speed::ZERO)), "film coefficient 0e0 m/s: give a number above 0");
    let no_time = Some(SelfDesiccation { fall: share(0.1), time_constant: Duration::ZERO });
    assert_eq!(
        refused(|s| s.self_desiccation = no_time),
        "self-desiccation: give a time constant above 0 and a fall below 100 % RH"
    );
    assert!(refused(|s| s.wet_cure = Duration::days(-1.0)).starts_with("horizon -1.0 days"));
    assert!(refused(|s| s.thickness = Length::meters(f64::NAN)).starts_with("thickness NaN mm"));
}

#[test]
fn questions_out_of_range() {
    let slab = plain_slab();
    let dry = |days: f64, point: Point, accuracy: Accuracy| {
        slab.dry(Duration::days(days), &[point], accuracy).unwrap_err().to_string()
    };
    let usual = Accuracy::default();
    assert_eq!(dry(0.0, Point::Probe, usual), "horizon 0.0 days: give more than 0 and at most 36500 days");
    assert_eq!(
        dry(90.0, Point::Depth(Length::millimeters(120.0)), usual),
        "depth 120.0 mm in a slab of 100.0 mm: give a depth within the slab"
    );
    assert_eq!(
        dry(90.0, Point::Probe, Accuracy { cells: 4, tolerance: 1e-4 }),
        "4 cells at tolerance 1e-4: give 8 to 4000 cells and 1e-12 to 1e-2"
    );
}

#[test]
fn parameters_out_of_range() {
    let thickness = Length::millimeters(100.0);
    let prior = |ratio: f64| Concrete::default_prior(share(ratio), thickness, Sides::One);
    assert_eq!(prior(0.9).unwrap_err().to_string(), "water-cement ratio 0.9: give 0.35 to 0.75");
    assert!(units::Fraction::share(1.4).is_err(), "a water-cement ratio of 1.4 is refused as it is read");
    assert_eq!(
        Concrete::published_from_strength(Pressure::megapascals(5.0)).unwrap_err().to_string(),
        "characteristic strength 5.0 MPa: give 10 to 100 MPa (1450 to 14500 psi)"
    );
    for (dry, knee, n, field) in
        [(0.0, 80.0, 15.0, "dry share"), (0.05, 100.0, 15.0, "knee"), (0.05, 80.0, 0.5, "exponent")]
    {
        match Shape::new(share(dry), rh(knee), n) {
            Err(DryingError::Shape { field: named, .. }) => assert_eq!(named, field),
            other => panic!("{other:?}"),
        }
    }
}

#[test]
fn air_out_of_order() {
    let spell =
        |day: f64| Spell { from: Duration::days(day), humidity: rh(50.0), temperature: Temperature::celsius(20.0) };
    assert_eq!(Ambient::series(&[]), Err(DryingError::Spells { index: 0 }));
    assert_eq!(Ambient::series(&[spell(1.0)]), Err(DryingError::Spells { index: 0 }));
    assert_eq!(Ambient::series(&[spell(0.0), spell(2.0), spell(2.0)]), Err(DryingError::Spells { index: 2 }));
}

#[test]
fn forecasts_out_of_range() {
    let plan = || ForecastPlan::new(plain_slab(), Draws { members: 100, seed: Seed(1) });
    let message = |plan: ForecastPlan| plan.before_readings().unwrap_err().to_string();
    let with = |change: fn(&mut ForecastPlan)| {
        let mut changed = plan();
        change(&mut changed);
        message(changed)
    };
    assert_eq!(with(|p| p.draws.members = 10), "10 members: give 50 to 100000");
    assert_eq!(with(|p| p.spread.diffusivity_factor = 0.5), "diffusivity factor of the prior is 0.5: give 1 to 5");
    assert_eq!(
        with(|p| p.spread.ambient = HumidityDifference::points(-1.0)),
        "ambient spread of the prior is -1: give 0 to 20 points"
    );
    assert_eq!(
        with(|p| p.spread.thickness = share(0.6)),
        "thickness spread of the prior is 0.6: give a share below 0.5"
    );
    let read =
        |day: f64, mm: f64| Reading { at: Duration::days(day), depth: Length::millimeters(mm), humidity: rh(90.0) };
    let after = |reading: Reading, each: f64| {
        let error = ReadingError { each: HumidityDifference::points(each), ..ReadingError::default() };
        plan().after_readings(&[reading], error).unwrap_err().to_string()
    };
    assert_eq!(
        after(read(500.0, 40.0), 2.0),
        "reading at day 500.0: give a day after 0 and up to the horizon, day 365.0"
    );
    assert_eq!(after(read(50.0, 140.0), 2.0), "depth 140.0 mm in a slab of 100.0 mm: give a depth within the slab");
    assert_eq!(after(read(50.0, 40.0), 0.0), "reading error 0 points of RH: give 0.1 to 20");
}

/// 45 % RH in a 200 mm slab five days after a week under water is a broken probe.
#[test]
fn impossible_readings_are_refused_and_named() {
    let thickness = Length::millimeters(200.0);
    let concrete = Concrete::default_prior(share(0.5), thickness, Sides::One).unwrap();
    let mut slab = DryingSlab::new(thickness, Sides::One, concrete, crate::air(50.0));
    slab.wet_cure = Duration::days(7.0);
    let depth = slab.probe_depth();
    let plan = ForecastPlan::new(slab, Draws { members: 200, seed: Seed(2) });
    let reading = |day: f64, percent: f64| Reading { at: Duration::days(day), depth, humidity: rh(percent) };
    let readings = [reading(10.0, 97.0), reading(12.0, 45.0)];
    let refusal = plan.after_readings(&readings, ReadingError::default()).unwrap_err();
    match &refusal {
        DryingError::ImpossibleReading { at, read, sigmas, .. } => {
            assert_eq!((at.as_days(), read.as_percent()), (12.0, 45.0));
            assert!(*sigmas > 10.0);
        }
        other => panic!("{other:?}"),
    }
    assert!(refusal.to_string().starts_with("reading 45.0 % RH at day 12.0 cannot be this slab"), "{refusal}");
    // The same slab with a sound probe is forecast.
    plan.after_readings(&[reading(10.0, 97.0), reading(12.0, 96.0)], ReadingError::default()).unwrap();
}

/// Fifty members cannot stand for what thirty sharp readings leave of the prior.
#[test]
fn too_few_members_that_agree_are_refused() {
    let slab = plain_slab();
    let depth = slab.probe_depth();
    let history = slab.dry(Duration::days(365.0), &[Point::Probe], Accuracy::default()).unwrap();
    let readings: Vec<Reading> = (1..=30)
        .map(|k| Duration::days(f64::from(k) * 10.0))
        .map(|at| Reading { at, depth, humidity: history.humidity(0, at) })
        .collect();
    let error = ReadingError { each: HumidityDifference::points(0.5), shared: HumidityDifference::points(1.0) };
    let plan = |members| ForecastPlan::new(plain_slab(), Draws { members, seed: Seed(4) });
    match plan(50).after_readings(&readings, error) {
        Err(DryingError::TooFewAgree { effective, needed }) => assert!(effective < needed),
        other => panic!("{:?}", other.map(|f| f.effective_members())),
    }
    // Many members can.
    assert!(plan(2000).after_readings(&readings, error).unwrap().effective_members() > 100.0);
}
