//! How long a map, a fit and the search for the next places take; the Python side is called beside it
//! by `benches/benches/against_python.rs`.
//!
//! Run: `cargo run --release -p science --example absorbency_speed`, with RAYON_NUM_THREADS=1 for one thread. Prints one JSON object.
//! Times are the least of several. 100 drops at evenly scattered places of a slab of 20 m × 15 m, the
//! map on 200 × 200 places; the same formula for the drops can be written in any language.

use std::error::Error;
use std::time::Instant;

use science::absorbency::{
    Aim, Covariance, DropTest, End, Field, Ground, LogVariance, NextRule, Nugget, Place, fit_covariance,
};
use units::{Area, Duration, Length};

const DROPS: u32 = 100;
const SIDE: u32 = 200;
const LENGTH_X: f64 = 20.0;
const LENGTH_Y: f64 = 15.0;
/// Steps of an evenly scattered sequence: the golden ratio's and the plastic number's.
const STEP_X: f64 = 0.754_877_666_246_692_7;
const STEP_Y: f64 = 0.569_840_290_998_053_3;

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

fn place(x: f64, y: f64) -> Place {
    Place { x: Length::metres(x), y: Length::metres(y) }
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

fn grid(columns: u32, rows: u32) -> Vec<Place> {
    let at = |i: u32, of: u32, length: f64| (f64::from(i) + 0.5) / f64::from(of) * length;
    (0..rows).flat_map(|j| (0..columns).map(move |i| place(at(i, columns, LENGTH_X), at(j, rows, LENGTH_Y)))).collect()
}

fn main() -> Result<(), Box<dyn Error>> {
    let drops = drops();
    let covariance =
        Covariance { sill: LogVariance::new(0.36)?, length: Length::metres(2.2), nugget: LogVariance::new(0.03)? };
    let map = grid(SIDE, SIDE);
    // Factoring is part of each go, as it is on the other side.
    let map_seconds = fastest(10, || Field::with_covariance(&drops, covariance).map(|field| field.map(&map)));
    let nugget = Nugget::AtLeast(LogVariance::new(1e-4)?);
    let fit_seconds = fastest(5, || fit_covariance(&drops, nugget));
    let fitted = fit_covariance(&drops, nugget)?;
    let field = Field::with_covariance(&drops, covariance)?;
    let ground =
        Ground { map: grid(40, 30), each: Area::square_metres(LENGTH_X * LENGTH_Y / 1200.0), reachable: grid(20, 15) };
    let rule = NextRule { aim: Aim::at_limit(Duration::seconds(90.0)), most: 5 };
    let next_seconds = fastest(3, || field.next_places(&ground, rule));
    let sum: f64 = field.map(&map).iter().map(|e| e.log_mean() + e.log_variance().value()).sum();
    println!(
        "{{\"drops\":{DROPS},\"map_places\":{},\"map_seconds\":{map_seconds:.3e},\"map_mean_of_mean_plus_variance\":{:.12},\
         \"reml_seconds\":{fit_seconds:.3e},\"reml_log_likelihood\":{:.9},\"reml_sill\":{:.6},\"reml_length_m\":{:.6},\
         \"reml_nugget\":{:.6},\"next_map_places\":1200,\"next_reachable\":300,\"next_five_seconds\":{next_seconds:.3e}}}",
        map.len(),
        sum / map.len() as f64,
        fitted.log_likelihood,
        fitted.covariance.sill.value(),
        fitted.covariance.length.as_metres(),
        fitted.covariance.nugget.value(),
    );
    Ok(())
}
