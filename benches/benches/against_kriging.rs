//! Maps of water drops and their fit, here and in Python, timed in one run and printed as one table.
//!
//! `cargo bench -p benches --bench against_kriging`, with the Python environment that `./check` makes in
//! `.tools/venv`, or another one named by `UNDERFOOT_PYTHON`. Not tests: nothing fails on a slow machine.

use std::error::Error;
use std::path::{Path, PathBuf};
use std::process::{Command, ExitCode};

use benches::times;
use science::absorbency::{
    AbsorbencyError, Aim, Covariance, DropTest, End, Estimate, Field, Ground, LogVariance, NextRule, Nugget, Place,
    fit_covariance,
};
use serde_json::Value;
use units::{Area, Duration, Length};

type Outcome<T> = Result<T, Box<dyn Error>>;

const DROPS: u32 = 100;
const SIDE: u32 = 200;
const LENGTH_X: f64 = 20.0;
const LENGTH_Y: f64 = 15.0;
/// Steps of the scattered places, the same numbers as in `python/kriging.py`.
const STEP_X: f64 = 0.754_877_666_246_692_7;
const STEP_Y: f64 = 0.569_840_290_998_053_3;

fn place(x: f64, y: f64) -> Place {
    Place { x: Length::meters(x), y: Length::meters(y) }
}

/// Drop i at (20·frac(i·step), 15·frac(i·step)), ln seconds 4.5 + sin(x/2)·cos(y/3) + 0.1·sin(12.9898·i).
fn drops() -> Vec<DropTest> {
    (1..=DROPS)
        .map(|i| {
            let i = f64::from(i);
            let (x, y) = (LENGTH_X * (i * STEP_X).fract(), LENGTH_Y * (i * STEP_Y).fract());
            let log = 4.5 + (0.5 * x).sin() * (y / 3.0).cos() + 0.1 * (12.9898 * i).sin();
            DropTest { place: place(x, y), end: End::SoakedIn(Duration::seconds(log.exp())) }
        })
        .collect()
}

fn grid() -> Vec<Place> {
    let at = |i: u32, length: f64| (f64::from(i) + 0.5) / f64::from(SIDE) * length;
    (0..SIDE).flat_map(|j| (0..SIDE).map(move |i| place(at(i, LENGTH_X), at(j, LENGTH_Y)))).collect()
}

/// What `python/kriging.py` prints.
#[expect(clippy::disallowed_methods, reason = "a benchmark is told by its environment which Python to run")]
fn python(work: &str) -> Outcome<Value> {
    let package = Path::new(env!("CARGO_MANIFEST_DIR"));
    let program =
        std::env::var("UNDERFOOT_PYTHON").map_or_else(|_| package.join("../.tools/venv/bin/python"), PathBuf::from);
    let said = Command::new(&program)
        .arg(package.join("python/kriging.py"))
        .arg(work)
        // Settings that a sandbox may make to hide the processor's abilities would slow Python down.
        .env_remove("OPENBLAS_CORETYPE")
        .env_remove("OPENBLAS_L2_SIZE")
        // One thread was the quicker for matrices of this size, by up to ten times on a busy machine.
        .env("OPENBLAS_NUM_THREADS", "1")
        .output()
        .map_err(|e| format!("{}: {e}. Make it with ./check, or name one in UNDERFOOT_PYTHON", program.display()))?;
    if !said.status.success() {
        return Err(format!("kriging.py {work}: {}", String::from_utf8_lossy(&said.stderr)).into());
    }
    Ok(serde_json::from_slice(&said.stdout)?)
}

fn number(value: &Value, key: &str) -> Outcome<f64> {
    value[key].as_f64().ok_or_else(|| format!("no number {key} in {value}").into())
}

/// A line of the table.
fn line(what: &str, ours: f64, theirs: f64, asked: &str) {
    println!("| {what} | {:.2} ms | {:.1} ms | {:.1} | {asked} |", 1e3 * ours, 1e3 * theirs, theirs / ours);
}

/// Factoring, then mean and variance at 40,000 places.
fn map() -> Outcome<()> {
    let (drops, grid) = (drops(), grid());
    let covariance =
        Covariance { sill: LogVariance::new(0.36)?, length: Length::meters(2.2), nugget: LogVariance::new(0.03)? };
    let work = || Ok::<Vec<Estimate>, AbsorbencyError>(Field::with_covariance(&drops, covariance)?.map(&grid));
    let found = work()?;
    let (ours, _) = times(50, work);
    let theirs = python("map")?;
    let mean = |of: fn(&Estimate) -> f64| found.iter().map(of).sum::<f64>() / found.len() as f64;
    let off = (mean(Estimate::log_mean) - number(&theirs, "mean")?).abs();
    let off = off.max((mean(|e| e.log_variance().value()) - number(&theirs, "variance")?).abs());
    let what =
        format!("100 drops, 200 x 200 places, mean and variance / PyKrige vectorized (means differ by {off:.0e})");
    line(&what, ours.as_secs_f64(), number(&theirs, "seconds")?, "20");
    Ok(())
}

/// The top of the restricted likelihood, all three numbers free.
fn fit() -> Outcome<()> {
    let drops = drops();
    let nugget = Nugget::AtLeast(LogVariance::new(1e-4)?);
    let found = fit_covariance(&drops, nugget)?;
    let (ours, _) = times(50, || fit_covariance(&drops, nugget));
    let theirs = python("fit")?;
    for (key, name, asked) in [
        ("net", "SciPy L-BFGS-B from 8 lengths", "20"),
        ("one_start", "the same from one start, a smaller search", "-"),
    ] {
        let theirs = &theirs[key];
        let off = (number(theirs, "log_likelihood")? - found.log_likelihood).abs();
        let what = format!("REML, 100 drops, the whole range searched / {name} (tops differ by {off:.0e})");
        line(&what, ours.as_secs_f64(), number(theirs, "seconds")?, asked);
    }
    Ok(())
}

/// Five next places on a map of 1,200 places with 300 to choose from; Python has no like of it.
fn next() -> Outcome<()> {
    let grid = |columns: u32, rows: u32| -> Vec<Place> {
        let at = |i: u32, of: u32, length: f64| (f64::from(i) + 0.5) / f64::from(of) * length;
        let row = |j: u32| (0..columns).map(move |i| place(at(i, columns, LENGTH_X), at(j, rows, LENGTH_Y)));
        (0..rows).flat_map(row).collect()
    };
    let each = Area::square_meters(LENGTH_X * LENGTH_Y / 1200.0);
    let ground = Ground { map: grid(40, 30), each, reachable: grid(20, 15) };
    let field = Field::fit(&drops())?;
    let rule = NextRule { aim: Aim::at_limit(Duration::seconds(90.0)), most: 5 };
    let (ours, _) = times(10, || field.next_places(&ground, rule));
    println!("| 5 next places of 300, map of 1,200 places | {:.1} ms | - | - | - |", 1e3 * ours.as_secs_f64());
    Ok(())
}

fn run() -> Outcome<()> {
    println!("{} cores", std::thread::available_parallelism()?);
    println!("| work, best of several | ours | Python | Python ÷ ours | asked |\n|---|--:|--:|--:|--:|");
    map()?;
    fit()?;
    next()
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
