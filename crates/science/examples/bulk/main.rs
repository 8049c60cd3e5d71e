//! Answers questions in bulk: one a line on standard input, its numbers on one line of standard output.
//!
//! ```text
//! echo 'dew_point t_c=21.5 rh_pct=45' | cargo run -q --release -p science --example bulk
//! 9.0799316225992470e0
//! ```
//!
//! A line is a name and its numbers as `key=value`, lists with commas; units are in the keys. Numbers
//! come back with all their digits. What the crate refuses comes back as `refused: ` and its reason.
//! `reference/live.py` compares the answers with those of outside libraries; a failing line it prints
//! can be put in here as it stands.

mod absorbency;
mod air;
mod ask;
mod cure;
mod moisture;

use std::error::Error;
use std::io::{BufRead, BufWriter, Write};

use ask::Ask;
use science::chance::{normal_cdf, normal_quantile};

/// Numbers of an answer, or why there is none.
type Answer = Result<Vec<f64>, Box<dyn Error>>;

fn answer(line: &str) -> Answer {
    let ask = Ask::read(line)?;
    match ask.name {
        "saturation" => air::saturation(&ask),
        "dew_point" => air::dew_point(&ask),
        "wet_bulb" => air::wet_bulb(&ask),
        "humidity_ratio" => air::humidity_ratio(&ask),
        "pressure" => air::pressure(&ask),
        "evaporation" => air::evaporation(&ask),
        "equivalent_age" => cure::equivalent_age(&ask),
        "temperature_time" => cure::temperature_time(&ask),
        "normal" => Ok(vec![normal_cdf(ask.number("z")?), normal_quantile(ask.number("share")?)]),
        "drying" => moisture::drying(&ask),
        "krige" => absorbency::krige(&ask),
        "krige_left_out" => absorbency::left_out(&ask),
        "krige_top" => absorbency::top(&ask),
        "krige_likelihood" => absorbency::likelihood(&ask),
        "next_test" => absorbency::next_test(&ask),
        "owens_t" => Ok(vec![science::absorbency::owens_t(ask.number("h")?, ask.number("a")?)]),
        name => Err(format!("{name:?} is not one of the questions").into()),
    }
}

fn main() -> Result<(), Box<dyn Error>> {
    let mut out = BufWriter::new(std::io::stdout().lock());
    for line in std::io::stdin().lock().lines() {
        match answer(&line?) {
            Ok(numbers) => {
                // 17 significant digits carry a double without loss.
                let cells: Vec<String> = numbers.iter().map(|number| format!("{number:.16e}")).collect();
                writeln!(out, "{}", cells.join(" "))?;
            }
            Err(reason) => writeln!(out, "refused: {reason}")?,
        }
    }
    out.flush()?;
    Ok(())
}
