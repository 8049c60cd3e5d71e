//! What the benchmarks share: a stop watch and the best of several runs, and the way to Python.
//!
//! Run with `cargo bench -p benches`. These are not tests: nothing fails on a slow machine.

pub mod python;

use std::hint::black_box;
use std::time::Duration;

/// Times a piece of work several times and gives the best and the median time.
#[expect(clippy::disallowed_methods, reason = "a benchmark reads the clock")]
pub fn times<T>(runs: usize, mut work: impl FnMut() -> T) -> (Duration, Duration) {
    let mut times: Vec<Duration> = (0..runs.max(1))
        .map(|_| {
            let start = std::time::Instant::now();
            black_box(work());
            start.elapsed()
        })
        .collect();
    times.sort();
    (times[0], times[times.len() / 2])
}

/// Prints one line of a table.
pub fn row(what: &str, (best, median): (Duration, Duration)) {
    println!("{what:<58} best {:>10.3} ms   median {:>10.3} ms", best.as_secs_f64() * 1e3, median.as_secs_f64() * 1e3);
}
