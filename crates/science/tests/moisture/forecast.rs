//! The forecast: Bayes' rule where the answer is known, reproducibility, and what readings do.

use proptest::prelude::*;
use science::chance::{Seed, normal_quantile};
use science::moisture::{
    Accuracy, Concrete, Draws, DryingSlab, Forecast, ForecastPlan, HumidityBand, Point, Reading, ReadingError, Sides,
    Spread,
};
use units::{Duration, HumidityDifference, Length};

use crate::{air, plain_slab, rh, share};

fn points(value: f64) -> HumidityDifference {
    HumidityDifference::points(value)
}

fn prior_slab() -> DryingSlab {
    let thickness = Length::millimeters(100.0);
    let concrete = Concrete::default_prior(share(0.5), thickness, Sides::One).unwrap();
    let mut slab = DryingSlab::new(thickness, Sides::One, concrete, air(50.0));
    slab.wet_cure = Duration::days(7.0);
    slab
}

fn plan(members: usize, seed: u64) -> ForecastPlan {
    ForecastPlan::new(prior_slab(), Draws { members, seed: Seed(seed) })
}

fn reading(day: f64, percent: f64) -> Reading {
    Reading { at: Duration::days(day), depth: Length::millimeters(40.0), humidity: rh(percent) }
}

fn width(band: &HumidityBand) -> f64 {
    (band.p90.value - band.p10.value).as_points()
}

/// When only the steady offset is unknown, prior and reading errors are all normal, and so is the
/// posterior: mean h + s²/(s² + v)·(r̄ - h), variance s²v/(s² + v), v = σ²/n + b² (textbook
/// conjugate normal; grade M). Sharp readings far out also need the second round of drawing.
#[test]
fn known_posterior_is_met() {
    let exact = Spread {
        diffusivity_factor: 1.0,
        ambient: points(0.0),
        thickness: share(0.0),
        dry_share_factor: 1.0,
        knee: points(0.0),
        exponent_factor: 1.0,
        start_below: points(0.0),
        equation: points(4.0),
    };
    let day = Duration::days(200.0);
    let solution = plain_slab().dry(day, &[Point::Probe], Accuracy::ENSEMBLE).unwrap();
    let here = |day: f64| solution.humidity(0, Duration::days(day)).as_percent();
    for (off, each, shared) in [(2.0, 2.0, 1.5), (-5.0, 1.0, 0.5), (8.0, 0.3, 0.1), (0.0, 6.0, 0.0)] {
        let mut plan = ForecastPlan::new(plain_slab(), Draws { members: 2000, seed: Seed(12) });
        plan.spread = exact;
        plan.horizon = day;
        let readings = [60.0, 90.0, 120.0].map(|d| reading(d, here(d) + off));
        let error = ReadingError { each: points(each), shared: points(shared) };
        let forecast = plan.after_readings(&readings, error).unwrap();
        let (prior, noise) = (16.0, each * each / 3.0 + shared * shared);
        let mean = here(200.0) + prior / (prior + noise) * off;
        let sd = (prior * noise / (prior + noise)).sqrt();
        let band = forecast.humidity(day);
        for (quantile, p) in [(band.p10, 0.1), (band.p50, 0.5), (band.p90, 0.9)] {
            let known = mean + sd * normal_quantile(p);
            let ours = quantile.value.as_percent();
            // Four standard errors of a quantile of a normal sample of the effective size.
            let density = (-0.5 * normal_quantile(p).powi(2)).exp() / 2.5066;
            let allowed = 4.0 * sd * (p * (1.0 - p) / forecast.effective_members()).sqrt() / density + 0.02;
            assert!((ours - known).abs() < allowed, "off {off} each {each}: P{p} is {ours}, known {known} ± {allowed}");
        }
    }
}

/// Bit for bit on one thread and on several.
#[test]
fn forecast_does_not_depend_on_the_number_of_threads() {
    let readings = [reading(30.0, 93.0), reading(45.0, 91.0)];
    let answer = |threads: usize| {
        let pool = rayon::ThreadPoolBuilder::new().num_threads(threads).build().unwrap();
        pool.install(|| {
            let forecast = plan(300, 9).after_readings(&readings, ReadingError::default()).unwrap();
            (forecast.humidity(Duration::days(100.0)), forecast.date_to(rh(85.0)), forecast.effective_members())
        })
    };
    let one = answer(1);
    assert_eq!(one, answer(2));
    assert_eq!(one, answer(5));
}

/// Two seeds differ by no more than their sampling intervals allow.
#[test]
fn seeds_differ_within_their_sampling_error() {
    let band = |seed: u64| plan(1000, seed).before_readings().unwrap().humidity(Duration::days(120.0));
    let (a, b) = (band(1), band(2));
    assert_ne!(a, b);
    for (x, y) in [(a.p10, b.p10), (a.p50, b.p50), (a.p90, b.p90)] {
        assert!(x.low <= y.high && y.low <= x.high, "{x:?} against {y:?}");
        assert!(x.low <= x.value && x.value <= x.high);
    }
}

#[test]
fn readings_narrow_the_band_and_pull_it_towards_them() {
    let later = Duration::days(150.0);
    let before = plan(1000, 3).before_readings().unwrap();
    let middle = |f: &Forecast| f.humidity(later).p50.value.as_percent();
    let at = |day: f64| before.humidity(Duration::days(day)).p50.value.as_percent();
    let after = |off: f64| {
        let readings = [30.0, 45.0, 60.0].map(|d| reading(d, at(d) + off));
        plan(1000, 3).after_readings(&readings, ReadingError::default()).unwrap()
    };
    let (dry, same, wet) = (after(-4.0), after(0.0), after(4.0));
    assert!(middle(&dry) < middle(&same) && middle(&same) < middle(&wet));
    for forecast in [&dry, &same, &wet] {
        assert!(width(&forecast.humidity(later)) < 0.85 * width(&before.humidity(later)));
        assert!(forecast.effective_members() < 1000.0);
    }
    assert!((before.effective_members() - 1000.0).abs() < 1e-6);
    let date = |f: &Forecast| f.date_to(rh(85.0)).p50.expect("85 % within a year").value;
    assert!(date(&dry) < date(&wet));
}

#[test]
fn prior_is_at_least_forty_per_cent_wide_in_diffusivity() {
    let spread = Spread::default();
    assert!(spread.diffusivity_factor >= 1.4);
    assert!(spread.thickness.as_share() >= 0.1);
    // Time goes with one over diffusivity, so P90 over P10 of the drying time shows the width.
    let mut plan = plan(2000, 5);
    plan.horizon = Duration::days(3000.0);
    let date = plan.before_readings().unwrap().date_to(rh(85.0));
    let (early, late) = (date.p10.unwrap().value - date.cured, date.p90.unwrap().value - date.cured);
    assert!(late / early > 1.4 * 1.4, "{early:?} to {late:?}");
}

#[test]
fn unreached_limits_are_said() {
    let mut short = plan(500, 6);
    short.horizon = Duration::days(60.0);
    let forecast = short.before_readings().unwrap();
    let date = forecast.date_to(rh(85.0));
    assert!(date.p90.is_none() && date.not_within_horizon.as_share() > 0.1);
    let reached = forecast.chance_at_or_below(rh(85.0), Duration::days(60.0)).as_share();
    // Steady air only dries, so whoever reached it is still there.
    assert!((reached + date.not_within_horizon.as_share() - 1.0).abs() < 0.005);
    let hopeless = forecast.date_to(rh(45.0));
    assert_eq!((hopeless.p10, hopeless.not_within_horizon.as_share()), (None, 1.0));
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(8))]

    /// P10 ≤ P50 ≤ P90, a stricter limit is reached later, and more likely as time goes.
    #[test]
    fn bands_are_in_order(seed: u64, first in 85.0..96.0_f64, fall in 0.0..4.0_f64) {
        let readings = [reading(30.0, first), reading(50.0, first - fall)];
        let forecast = plan(300, seed).after_readings(&readings, ReadingError::default()).unwrap();
        for day in [20.0, 60.0, 120.0, 300.0] {
            let band = forecast.humidity(Duration::days(day));
            prop_assert!(band.p10.value <= band.p50.value && band.p50.value <= band.p90.value);
        }
        let days = |limit: f64| forecast.date_to(rh(limit)).p50.map_or(f64::INFINITY, |d| d.value.as_days());
        prop_assert!(days(85.0) <= days(80.0) && days(90.0) <= days(85.0));
        let chance = |day: f64| forecast.chance_at_or_below(rh(85.0), Duration::days(day)).as_share();
        prop_assert!(chance(60.0) <= chance(120.0) + 1e-9 && chance(120.0) <= chance(360.0) + 1e-9);
    }
}
