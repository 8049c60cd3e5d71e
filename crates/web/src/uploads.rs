//! Files that were sent and not yet written: a person looks at what was read before it enters the
//! diary. Few and for a short time; lost with the server, and then the file is chosen again.

use std::collections::VecDeque;
use std::sync::{Mutex, PoisonError};

use axum::body::Bytes;
use jiff::{SignedDuration, Timestamp};
use slab_diary::SlabId;

/// Files kept at once; the oldest go first.
const MAX_KEPT: usize = 12;
/// Bytes kept at once.
const MAX_BYTES: usize = 128 * 1024 * 1024;
/// Most letters of the name a file came with.
const MAX_NAME: usize = 120;
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
        let room = MAX_BYTES.saturating_sub(file.bytes.len());
        while waiting.len() >= MAX_KEPT || waiting.iter().map(|(_, old)| old.bytes.len()).sum::<usize>() > room {
            if waiting.pop_front().is_none() {
                break;
            }
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

/// A file's name as it is shown: one line of moderate length.
pub(crate) fn tidy(name: &str) -> String {
    let name: String = name.chars().filter(|c| !c.is_control()).take(MAX_NAME).collect();
    name.trim().to_owned()
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
        for number in 0..=MAX_KEPT {
            uploads.keep(&number.to_string(), file("one", 1));
        }
        let now = Timestamp::from_second(60).expect("a moment");
        assert!(uploads.get("0", SlabId::of_name("one"), now).is_none());
        assert!(uploads.get("1", SlabId::of_name("one"), now).is_some());
    }

    #[test]
    fn large_ones_make_room_by_their_bytes() {
        let uploads = Uploads::default();
        let part = Bytes::from(vec![0_u8; MAX_BYTES / 3]);
        for number in 0..4 {
            uploads.keep(&number.to_string(), Waiting { bytes: part.clone(), ..file("one", 1) });
        }
        let now = Timestamp::from_second(60).expect("a moment");
        let there: Vec<bool> =
            (0..4).map(|n| uploads.get(&n.to_string(), SlabId::of_name("one"), now).is_some()).collect();
        assert_eq!(there, [false, true, true, true]);
    }
}
