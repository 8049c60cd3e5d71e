//! Faults of ours as lines of the log: what was being done, for which request, and why it failed.
//!
//! A cause is put together from words of this program and of the system. What somebody typed, a name or a path
//! never becomes part of it, so an error that may quote such things is told without its words.

use std::error::Error;
use std::panic::{Location, PanicHookInfo};
use std::path::Path;

use crate::serving::{Serving, now_serving};

/// Parts of a path told of a source file that lies outside the workspace: library, folder, file.
const NEAR: usize = 3;

/// Tells a fault of whatever is being done just now.
pub(crate) fn tell(cause: &str) {
    match now_serving() {
        Some(serving) => tell_of(&serving, cause),
        None => tracing::error!(request_id = %"none", doing = "nothing for a request", cause, "fault"),
    }
}

/// Tells a fault, unless the log has one already of what is being done just now.
pub(crate) fn tell_unless_told(cause: &str) {
    if !now_serving().is_some_and(|serving| serving.fault_is_told()) {
        tell(cause);
    }
}

/// Tells a fault of this request or job.
pub(crate) fn tell_of(serving: &Serving, cause: &str) {
    serving.note_fault();
    tracing::error!(request_id = %serving.request, doing = serving.doing, cause, "fault");
}

/// Tells that the store failed, and hands its error on.
pub(crate) fn of_the_store(error: store::StoreError) -> store::StoreError {
    tell(&error.without_names());
    error
}

/// An error with what caused it, outermost first. Only for errors that quote nothing of what they were given.
pub(crate) fn chain(error: &dyn Error) -> String {
    let mut said = error.to_string();
    let mut deeper = error.source();
    while let Some(cause) = deeper {
        let words = cause.to_string();
        // Some errors say their cause themselves.
        if !said.ends_with(&words) {
            said = format!("{said}: {words}");
        }
        deeper = cause.source();
    }
    said
}

/// Writes a panic into the log, with its place in the source and the request it happened in. For the panic hook
/// of the program, in place of the usual one: a message made of values may hold what somebody typed, so only a
/// message that stands in the source as it is, is told.
pub fn tell_panic(panic: &PanicHookInfo<'_>) {
    let place = panic.location().map_or_else(|| "an unknown place".to_owned(), place);
    match panic.payload().downcast_ref::<&'static str>() {
        Some(said) => tell(&format!("panic at {place}: {said}")),
        None => tell(&format!("panic at {place}")),
    }
}

/// A place in the source without the folders of the machine that it was built on.
fn place(location: &Location<'_>) -> String {
    let file = location.file();
    let parts: Vec<&str> = file.split(['/', '\\']).collect();
    let kept = if Path::new(file).is_absolute() { NEAR } else { parts.len() };
    format!("{}:{}", parts[parts.len().saturating_sub(kept)..].join("/"), location.line())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[derive(Debug, thiserror::Error)]
    #[error("outer")]
    struct Outer(#[source] Middle);

    #[derive(Debug, thiserror::Error)]
    #[error("middle: inner")]
    struct Middle(#[source] Inner);

    #[derive(Debug, thiserror::Error)]
    #[error("inner")]
    struct Inner;

    #[test]
    fn a_chain_says_each_cause_once() {
        assert_eq!(chain(&Outer(Middle(Inner))), "outer: middle: inner");
    }

    #[test]
    fn a_place_has_no_folder_of_the_machine() {
        assert_eq!(place(Location::caller()).split(':').next(), Some("crates/web/src/fault.rs"));
    }
}
