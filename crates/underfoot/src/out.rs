//! Printing an answer. A reader that has read enough and closed the pipe ends the program quietly,
//! as any tool of a shell does; it is no fault.

use std::fmt::Arguments;
use std::io::Write;

/// Prints to standard output.
pub(crate) fn print(text: Arguments<'_>) {
    let mut out = anstream::stdout().lock();
    if let Err(error) = out.write_fmt(text).and_then(|()| out.flush()) {
        if error.kind() == std::io::ErrorKind::BrokenPipe {
            std::process::exit(0);
        }
        // Nothing can be said on a broken output but on the other one.
        anstream::eprintln!("underfoot: standard output: {error}");
        std::process::exit(3);
    }
}

/// Prints a line of an answer.
macro_rules! answer {
    ($($arg:tt)*) => { $crate::out::print(format_args!("{}\n", format_args!($($arg)*))) };
}
pub(crate) use answer;
