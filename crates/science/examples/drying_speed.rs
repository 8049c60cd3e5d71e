//! How long one drying run and one forecast take; the SciPy side is `benches/python/drying.py`.
//!
//! Run: `cargo run --release -p science --example drying_speed`. Prints one JSON object. Times are the
//! least of several, in one warm workspace as the SciPy side has its tables ready too.

use std::error::Error;
use std::time::Instant;

use science::chance::Seed;
use science::moisture::{
    Accuracy, Ambient, Concrete, Draws, DryingSlab, ForecastPlan, Point, Reading, ReadingError, Sides, Workspace,
};
use units::{Diffusivity, Duration, Fraction, Length, RelativeHumidity, Temperature};

/// Case D03 at 28, 90, 180 and 365 days, solved on 1600 cells.
const REFERENCE: [(f64, f64); 4] = [(28.0, 0.92132), (90.0, 0.85924), (180.0, 0.81884), (365.0, 0.77795)];

/// Seconds of the fastest of several goes.
#[expect(clippy::disallowed_methods, reason = "this program exists to measure time")]
fn fastest<T>(goes: usize, mut work: impl FnMut() -> T) -> f64 {
    let time = || {
        let start = Instant::now();
        std::hint::black_box(work());
        start.elapsed().as_secs_f64()
    };
    std::iter::repeat_with(time).take(goes).fold(f64::INFINITY, f64::min)
}

fn main() -> Result<(), Box<dyn Error>> {
    let thickness = Length::millimeters(100.0);
    let room = Ambient::constant(RelativeHumidity::percent(50.0)?, Temperature::celsius(18.0));
    let d03 = Concrete::published(Diffusivity::square_meters_per_second(4.031281e-10));
    let slab = DryingSlab::new(thickness, Sides::One, d03, room.clone());
    let year = Duration::days(365.0);
    let mut space = Workspace::default();
    let mut runs = Vec::new();
    for (name, accuracy) in [("ensemble", Accuracy::ENSEMBLE), ("default", Accuracy::default())] {
        let history = slab.dry_in(&mut space, year, &[Point::Probe], accuracy)?;
        let error = REFERENCE
            .iter()
            .map(|(day, known)| (history.humidity(0, Duration::days(*day)).as_share() - known).abs())
            .fold(0.0, f64::max);
        let seconds = fastest(200, || slab.dry_in(&mut space, year, &[Point::Probe], accuracy));
        runs.push(format!(
            "{{\"accuracy\":\"{name}\",\"cells\":{},\"steps\":{},\"seconds\":{seconds:.3e},\"rh_365d_pct\":{:.3},\"error_rh\":{error:.1e}}}",
            accuracy.cells,
            history.steps(),
            history.humidity(0, year).as_percent()
        ));
    }
    let prior = Concrete::default_prior(Fraction::share(0.5)?, thickness, Sides::One)?;
    let mut plan =
        ForecastPlan::new(DryingSlab::new(thickness, Sides::One, prior, room), Draws { members: 1000, seed: Seed(1) });
    plan.horizon = Duration::days(180.0);
    let depth = plan.slab.probe_depth();
    let day = |day: f64, percent: f64| -> Result<Reading, Box<dyn Error>> {
        Ok(Reading { at: Duration::days(day), depth, humidity: RelativeHumidity::percent(percent)? })
    };
    let readings = [day(28.0, 92.0)?, day(42.0, 89.5)?, day(56.0, 88.0)?];
    let before = fastest(10, || plan.before_readings());
    let after = fastest(10, || plan.after_readings(&readings, ReadingError::default()));
    println!(
        "{{\"runs_365d\":[{}],\"forecast_1000_members_180d_seconds\":{before:.4},\"with_3_readings_seconds\":{after:.4}}}",
        runs.join(",")
    );
    Ok(())
}
