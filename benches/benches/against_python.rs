//! The same work here and in Python, timed in one run and printed as one table.
//!
//! `cargo bench -p benches --bench against_python`, with the Python environment that `./check` makes in
//! `.tools/venv`, or another one named by `UNDERFOOT_PYTHON`. What was measured last, and what that
//! does not prove, is in `docs/speed.md`.

use std::error::Error;
use std::process::ExitCode;

use benches::python::{Python, number};
use benches::times;
use science::air::{AirError, dew_point};
use science::chance::Seed;
use science::moisture::{
    Accuracy, Ambient, Concrete, Draws, DryingHistory, DryingSlab, ForecastPlan, Point, Sides, Workspace,
};
use serde_json::Value;
use units::{Diffusivity, Duration, Fraction, Length, RelativeHumidity, Temperature};

type Outcome<T> = Result<T, Box<dyn Error>>;

/// Case D03 of `reference/physics/drying_reference_mc90.csv` at 28, 90, 180 and 365 days (1600 cells).
const D03: [(f64, f64); 4] = [(28.0, 0.92132), (90.0, 0.85924), (180.0, 0.81884), (365.0, 0.77795)];
/// Where the fastest setting is looked for, the same as in `python/drying.py`.
const CELLS: [usize; 9] = [10, 12, 16, 20, 24, 32, 48, 64, 96];
const TOLERANCES: [f64; 9] = [1e-2, 5e-3, 2e-3, 1e-3, 5e-4, 2e-4, 1e-4, 2e-5, 1e-5];
const DEW_POINTS: u32 = 1_000_000;
/// Steps of the scattered points, the same numbers as in `python/dew_point.py`.
const STEP_T: f64 = 0.618_033_988_749_894_9;
const STEP_RH: f64 = 0.754_877_666_246_692_7;

/// A line of the table.
fn line(what: &str, ours: f64, theirs: Option<f64>, asked: &str) {
    let shown = |seconds: f64| {
        if seconds < 1e-3 { format!("{:.1} µs", 1e6 * seconds) } else { format!("{:.1} ms", 1e3 * seconds) }
    };
    let python = theirs.map_or_else(|| "-".to_owned(), shown);
    let ratio = theirs.map_or_else(|| "-".to_owned(), |theirs| format!("{:.0}", theirs / ours));
    println!("| {what} | {} | {python} | {ratio} | {asked} |", shown(ours));
}

fn room(percent: f64) -> Outcome<Ambient> {
    Ok(Ambient::constant(RelativeHumidity::percent(percent)?, Temperature::celsius(18.0)))
}

/// The worst error at the days of D03, RH as a share of 1.
fn error(history: &DryingHistory) -> f64 {
    let off = |(day, known): &(f64, f64)| (history.humidity(0, Duration::days(*day)).as_share() - known).abs();
    D03.iter().map(off).fold(0.0, f64::max)
}

/// One way to solve the slab: its error, and the least time of several.
struct Tried {
    accuracy: Accuracy,
    error: f64,
    seconds: f64,
}

fn tried(slab: &DryingSlab, accuracy: Accuracy) -> Outcome<Tried> {
    let year = Duration::days(365.0);
    let mut space = Workspace::default();
    let error = error(&slab.dry_in(&mut space, year, &[Point::Probe], accuracy)?);
    let (best, _) = times(200, || slab.dry_in(&mut space, year, &[Point::Probe], accuracy));
    Ok(Tried { accuracy, error, seconds: best.as_secs_f64() })
}

/// One slab for a year. Both sides look for their fastest setting within each error; then the settings
/// that ship, against SciPy's fastest within the like error.
fn drying(python: &Python) -> Outcome<()> {
    let concrete = Concrete::published(Diffusivity::square_meters_per_second(4.031281e-10));
    let slab = DryingSlab::new(Length::millimeters(100.0), Sides::One, concrete, room(50.0)?);
    let scipy = python.run("drying.py", &["--json"])?;
    let scipy = scipy.as_array().ok_or("drying.py prints a list")?;
    let mut ours = Vec::new();
    for cells in CELLS {
        for tolerance in TOLERANCES {
            ours.push(tried(&slab, Accuracy { cells, tolerance })?);
        }
    }
    for run in scipy {
        let target = number(run, "target")?;
        let within = ours.iter().filter(|t| t.error <= target);
        let best =
            within.min_by(|a, b| a.seconds.total_cmp(&b.seconds)).ok_or("no setting of ours meets the target")?;
        let what = format!(
            "drying, 365 days, within {target:.0e} of RH: {} cells (error {:.0e}) / SciPy {}",
            best.accuracy.cells,
            best.error,
            named(run)?
        );
        line(&what, best.seconds, Some(number(run, "seconds")?), if target == 1e-3 { "200" } else { "-" });
    }
    for (name, accuracy, target) in [("coarse", Accuracy::ENSEMBLE, 1e-4), ("default", Accuracy::default(), 2e-5)] {
        let as_shipped = tried(&slab, accuracy)?;
        for run in scipy.iter().filter(|run| run["target"] == target) {
            let what = format!("the {name} setting (error {:.0e}) / SciPy {}", as_shipped.error, named(run)?);
            line(&what, as_shipped.seconds, Some(number(run, "seconds")?), "-");
        }
    }
    Ok(())
}

/// A run of SciPy's in words.
fn named(run: &Value) -> Outcome<String> {
    let method = run["method"].as_str().ok_or("a run names its method")?;
    Ok(format!("{method}, {} cells (error {:.0e})", run["cells"], number(run, "error_rh")?))
}

/// A thousand possible slabs for half a year, on all cores.
fn ensemble() -> Outcome<()> {
    let thickness = Length::millimeters(100.0);
    let concrete = Concrete::default_prior(Fraction::share(0.5)?, thickness, Sides::One)?;
    let slab = DryingSlab::new(thickness, Sides::One, concrete, room(50.0)?);
    let mut plan = ForecastPlan::new(slab, Draws { members: 1000, seed: Seed(1) });
    plan.horizon = Duration::days(180.0);
    let (ours, _) = times(10, || plan.before_readings());
    line("forecast, 1000 members, 180 days, all cores", ours.as_secs_f64(), None, "under 1000 ms");
    Ok(())
}

fn scattered(step: f64, i: u32) -> f64 {
    let x = f64::from(i) * step;
    x - x.floor()
}

/// A million dew points on one core.
fn dew_points(python: &Python) -> Outcome<()> {
    let points = (0..DEW_POINTS)
        .map(|i| {
            let humidity = RelativeHumidity::percent(5.0 + 95.0 * scattered(STEP_RH, i))?;
            Ok((Temperature::celsius(-10.0 + 50.0 * scattered(STEP_T, i)), humidity))
        })
        .collect::<Outcome<Vec<_>>>()?;
    let all = || -> Result<Vec<f64>, AirError> {
        points.iter().map(|(t, rh)| dew_point(*t, *rh).map(Temperature::as_celsius)).collect()
    };
    let answers = all()?;
    let (ours, _) = times(10, all);
    let mean = answers.iter().sum::<f64>() / f64::from(DEW_POINTS);
    for (form, asked) in [("scalar", "20"), ("vectorized", "1")] {
        let theirs = python.run("dew_point.py", &[form])?;
        let off = (number(&theirs, "mean_c")? - mean).abs();
        let what = format!("1e6 dew points, one core / psychrolib {form} (means differ by {off:.0e} °C)");
        line(&what, ours.as_secs_f64(), Some(number(&theirs, "seconds")?), asked);
        let compiling = number(&theirs, "compile_seconds")?;
        if compiling > 0.0 {
            println!(
                "|   psychrolib compiling itself at its first call, not counted above | | {:.0} ms | | |",
                1e3 * compiling
            );
        }
    }
    Ok(())
}

fn run() -> Outcome<()> {
    let python = Python::find()?;
    println!("{} cores", std::thread::available_parallelism()?);
    println!("| work, best of several | ours | Python | Python ÷ ours | asked |\n|---|--:|--:|--:|--:|");
    drying(&python)?;
    ensemble()?;
    dew_points(&python)
}

fn main() -> ExitCode {
    match run() {
        Ok(()) => ExitCode::SUCCESS,
        Err(reason) => {
            eprintln!("{reason}");
            ExitCode::FAILURE
        }
    }
}
