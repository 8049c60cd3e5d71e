//! Shell completions.

use clap::CommandFactory;

use crate::cli::Cli;
use crate::failure::{Answer, Failure};

pub(crate) fn run(shell: clap_complete::Shell) -> Result<Answer, Failure> {
    clap_complete::generate(shell, &mut Cli::command(), "underfoot", &mut std::io::stdout());
    Ok(Answer::Yes)
}
