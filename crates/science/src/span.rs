//! Stretches of time on a caller's own clock.

use units::Duration;

/// A stretch of time. Both ends count from a moment the caller knows.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Span {
    /// When it begins.
    pub start: Duration,
    /// When it ends; not before `start`.
    pub end: Duration,
}

impl Span {
    /// How long it lasts.
    #[must_use]
    pub fn length(self) -> Duration {
        self.end - self.start
    }
}

/// The position of the first time that is not a number, or not after the one before it.
pub(crate) fn first_out_of_order(times: impl Iterator<Item = Duration>) -> Option<usize> {
    let mut before = f64::NEG_INFINITY;
    for (index, time) in times.enumerate() {
        let seconds = time.as_seconds();
        let rises = seconds.is_finite() && seconds > before;
        if !rises {
            return Some(index);
        }
        before = seconds;
    }
    None
}

/// Joins neighbors that touch, in order of time: three alarm hours in a row are one span.
#[must_use]
pub fn joined(pieces: impl IntoIterator<Item = Span>) -> Vec<Span> {
    let mut spans: Vec<Span> = Vec::new();
    for piece in pieces {
        match spans.last_mut() {
            Some(last) if piece.start <= last.end => last.end = last.end.max(piece.end),
            _ => spans.push(piece),
        }
    }
    spans
}
