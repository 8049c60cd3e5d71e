//! How a command ends.

use std::fmt;
use std::process::ExitCode;

/// A command that answered.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Answer {
    /// Fine.
    Yes,
    /// Answered "no" or "held".
    No,
}

/// A command that could not answer: what was wrong, where, and what would be accepted.
#[derive(Debug)]
pub(crate) enum Failure {
    /// The command was used wrongly.
    Use(String),
    /// The data is wrong.
    Data(String),
}

impl Answer {
    pub(crate) fn exit_code(self) -> ExitCode {
        match self {
            Self::Yes => ExitCode::SUCCESS,
            Self::No => ExitCode::from(1),
        }
    }
}

impl Failure {
    pub(crate) fn exit_code(&self) -> ExitCode {
        match self {
            Self::Use(_) => ExitCode::from(2),
            Self::Data(_) => ExitCode::from(3),
        }
    }

    /// Bad data, said by a library's own error.
    pub(crate) fn data(error: impl fmt::Display) -> Self {
        Self::Data(error.to_string())
    }

    /// A file that cannot be read or written.
    pub(crate) fn file(path: &std::path::Path, error: &std::io::Error) -> Self {
        Self::Data(format!("file \"{}\": {error}; accepted: a file that can be read or written there", path.display()))
    }
}

impl fmt::Display for Failure {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Use(text) | Self::Data(text) => f.write_str(text),
        }
    }
}
