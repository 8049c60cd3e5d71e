//! The command line of Underfoot: wiring and words only; every answer is computed by the core.
//!
//! Exit codes: 0 fine, 1 answered "no" or "held", 2 bad use, 3 bad data.

mod cli;
mod commands;
mod failure;
mod json;
mod logging;
mod out;
mod session;
mod text;

use std::process::ExitCode;

use clap::Parser;

fn main() -> ExitCode {
    let cli = cli::Cli::parse();
    match commands::run(cli) {
        Ok(answer) => answer.exit_code(),
        Err(failure) => {
            anstream::eprintln!("underfoot: {failure}");
            failure.exit_code()
        }
    }
}
