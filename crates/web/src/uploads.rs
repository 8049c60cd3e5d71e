//! Files that were sent and not yet written: a person looks at what was read before it enters the
//! diary. Few and for a short time; lost with the server, and then the file is chosen again.

use std::collections::VecDeque;
use std::sync::{Mutex, PoisonError};

use axum::body::Bytes;
use jiff::{SignedDuration, Timestamp};
use slab::diary::SlabId;

/// Files kept at once; the oldest go first.
const MOST_KEPT: usize = 12;
/// How long one is kept.
const LONGEST: SignedDuration = SignedDuration::from_hours(2);

/// A file that waits to be written.
#[derive(Debug, Clone)]
pub(crate) struct Waiting {
    pub(crate) slab: SlabId,
    pub(crate) name: String,
    pub(crate) bytes: Bytes,
    pub(crate) since: Timestamp,
}

/// The files that wait, each under a secret of its own.
#[derive(Debug, Default)]
pub(crate) struct Uploads {
    waiting: Mutex<VecDeque<(String, Waiting)>>,
}

impl Uploads {
    pub(crate) fn keep(&self, secret: &str, file: Waiting) {
        let mut waiting = self.waiting.lock().unwrap_or_else(PoisonError::into_inner);
        waiting.retain(|(_, old)| file.since.duration_since(old.since) < LONGEST);
        while waiting.len() >= MOST_KEPT {
            waiting.pop_front();
        }
        waiting.push_back((secret.to_owned(), file));
    }

    /// A file of that slab, while it is kept.
    pub(crate) fn get(&self, secret: &str, slab: SlabId, now: Timestamp) -> Option<Waiting> {
        let waiting = self.waiting.lock().unwrap_or_else(PoisonError::into_inner);
        let (_, file) = waiting.iter().find(|(known, file)| known == secret && file.slab == slab)?;
        (now.duration_since(file.since) < LONGEST).then(|| file.clone())
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn file(slab: &str, minute: i64) -> Waiting {
        Waiting {
            slab: SlabId::of_name(slab),
            name: "log.csv".to_owned(),
            bytes: Bytes::from_static(b"x"),
            since: Timestamp::from_second(60 * minute).expect("a moment"),
        }
    }

    #[test]
    fn a_file_is_found_by_its_secret_for_its_slab_and_for_two_hours_only() {
        let uploads = Uploads::default();
        uploads.keep("a", file("one", 0));
        let at = |minute: i64| Timestamp::from_second(60 * minute).expect("a moment");
        assert!(uploads.get("a", SlabId::of_name("one"), at(119)).is_some());
        assert!(uploads.get("a", SlabId::of_name("one"), at(121)).is_none());
        assert!(uploads.get("b", SlabId::of_name("one"), at(1)).is_none());
        assert!(uploads.get("a", SlabId::of_name("two"), at(1)).is_none());
    }

    #[test]
    fn the_oldest_make_room() {
        let uploads = Uploads::default();
        for number in 0..=MOST_KEPT {
            uploads.keep(&number.to_string(), file("one", 1));
        }
        let now = Timestamp::from_second(60).expect("a moment");
        assert!(uploads.get("0", SlabId::of_name("one"), now).is_none());
        assert!(uploads.get("1", SlabId::of_name("one"), now).is_some());
    }
}
