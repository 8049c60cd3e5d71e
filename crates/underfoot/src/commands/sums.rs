//! One calculation without a slab. Fields, answers and refusals are those of the crate `sums`; here are
//! the files of this machine and the terminal.

use std::path::Path;

use calculators::{SumCommand, SumError};

use crate::cli::Common;
use crate::failure::{Answer, Failure};
use crate::out::answer;
use crate::session;

pub(crate) fn run(command: &SumCommand, common: &Common) -> Result<Answer, Failure> {
    let answered = calculators::run(command, &|path: &Path| std::fs::read(path));
    let notes = answered.as_ref().map_or_else(|refused| refused.notes.as_slice(), |sum| sum.notes());
    for note in notes {
        anstream::eprintln!("{note}");
    }
    let sum = answered?;
    let locale = session::locale(common);
    if common.json {
        answer!("{:#}", sum.json(locale));
    } else {
        crate::out::print(format_args!("{}", sum.text(locale)));
    }
    Ok(Answer::Yes)
}

impl From<SumError> for Failure {
    fn from(error: SumError) -> Self {
        match error.kind {
            calculators::ErrorKind::Use => Self::Use(error.said),
            calculators::ErrorKind::Data => Self::Data(error.said),
        }
    }
}
