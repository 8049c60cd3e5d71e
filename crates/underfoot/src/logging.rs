//! The server's log: which events are kept, and how they look. `docs/logging.md` says what a line holds.

use std::io;

use tracing::level_filters::LevelFilter;
use tracing_subscriber::filter::Targets;
use tracing_subscriber::layer::SubscriberExt;
use tracing_subscriber::{Layer, Registry, fmt};

use crate::cli::{LogFormatArg, LogLevelArg, Serve};
use crate::failure::Failure;

/// Sends what is told from now on to standard error. A panic becomes a line too, in place of the words that the
/// language prints by itself: those may hold what somebody typed, and nothing at all is written at level `off`.
pub(crate) fn start(args: &Serve) -> Result<(), Failure> {
    std::panic::set_hook(Box::new(web::tell_panic));
    let level = match args.log_level {
        LogLevelArg::Off => return Ok(()),
        LogLevelArg::Error => LevelFilter::ERROR,
        LogLevelArg::Warn => LevelFilter::WARN,
        LogLevelArg::Info => LevelFilter::INFO,
        LogLevelArg::Debug => LevelFilter::DEBUG,
    };
    let lines = match args.log_format {
        // A standard error that nobody takes any more must not stop the server.
        LogFormatArg::Text => {
            fmt::layer().with_writer(io::stderr).with_ansi(false).with_target(false).log_internal_errors(false).boxed()
        }
        LogFormatArg::Json => fmt::layer()
            .json()
            .flatten_event(true)
            .with_current_span(false)
            .with_span_list(false)
            .with_writer(io::stderr)
            .with_target(false)
            .log_internal_errors(false)
            .boxed(),
    };
    let subscriber = Registry::default().with(lines).with(kept(level));
    tracing::subscriber::set_global_default(subscriber).map_err(Failure::data)
}

/// Only what this program says itself: a library may tell addresses and what was sent. Of the library that listens,
/// only that no connection can be taken, which has no other way out.
fn kept(level: LevelFilter) -> Targets {
    Targets::new()
        .with_target("underfoot", level)
        .with_target("web", level)
        .with_target("axum::serve", LevelFilter::ERROR)
}
