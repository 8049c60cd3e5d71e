//! Slowing down those who guess passwords.

use std::collections::HashMap;
use std::net::IpAddr;
use std::sync::{Mutex, PoisonError};

use jiff::{SignedDuration, Timestamp};

/// Wrong tries that cost nothing.
const FREE: u32 = 5;
/// The longest wait.
const LONGEST: SignedDuration = SignedDuration::from_mins(15);
/// More names than this are not kept: the oldest go first.
const KEPT: usize = 10_000;

#[derive(Debug, Clone, Copy)]
struct Tries {
    wrong: u32,
    last: Timestamp,
}

/// Wrong tries by name and by address. Kept in memory only: a restart forgives.
#[derive(Debug, Default)]
pub(crate) struct Throttle {
    tries: Mutex<HashMap<String, Tries>>,
}

/// The two things that are counted for one try.
fn keys(name: &str, from: IpAddr) -> [String; 2] {
    [format!("name {}", name.trim().to_lowercase()), format!("from {from}")]
}

/// Each wrong try beyond the free ones doubles the wait. An address may be shared by a whole site, so
/// it gets four times as many.
fn wait(key: &str, wrong: u32) -> SignedDuration {
    let free = if key.starts_with("from ") { 4 * FREE } else { FREE };
    match wrong.checked_sub(free) {
        None => SignedDuration::ZERO,
        Some(beyond) => SignedDuration::from_secs(1_i64 << beyond.min(20)).min(LONGEST),
    }
}

impl Throttle {
    /// How long this name or address must still wait; nothing when it may try now.
    pub(crate) fn must_wait(&self, name: &str, from: IpAddr, now: Timestamp) -> Option<SignedDuration> {
        let tries = self.tries.lock().unwrap_or_else(PoisonError::into_inner);
        let longest = keys(name, from)
            .iter()
            .filter_map(|key| tries.get(key).map(|t| wait(key, t.wrong) - now.duration_since(t.last)))
            .max()?;
        (longest > SignedDuration::ZERO).then_some(longest)
    }

    /// Counts a try before its password is looked at, so that many at once are counted too.
    pub(crate) fn count(&self, name: &str, from: IpAddr, now: Timestamp) {
        let mut tries = self.tries.lock().unwrap_or_else(PoisonError::into_inner);
        for key in keys(name, from) {
            let known = tries.entry(key).or_insert(Tries { wrong: 0, last: now });
            // An hour without a try forgives.
            if now.duration_since(known.last) > SignedDuration::from_hours(1) {
                known.wrong = 0;
            }
            known.wrong = known.wrong.saturating_add(1);
            known.last = now;
        }
        if tries.len() > KEPT
            && let Some(oldest) = tries.iter().min_by_key(|(_, t)| t.last).map(|(key, _)| key.clone())
        {
            tries.remove(&oldest);
        }
    }

    /// A right password forgives the name, and takes its own try off the address: others may sit there.
    pub(crate) fn forgive(&self, name: &str, from: IpAddr) {
        let mut tries = self.tries.lock().unwrap_or_else(PoisonError::into_inner);
        let [by_name, by_address] = keys(name, from);
        tries.remove(&by_name);
        if let Some(known) = tries.get_mut(&by_address) {
            known.wrong = known.wrong.saturating_sub(1);
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const HERE: IpAddr = IpAddr::V4(std::net::Ipv4Addr::LOCALHOST);

    fn at(seconds: i64) -> Timestamp {
        Timestamp::from_second(1_800_000_000 + seconds).expect("a moment")
    }

    #[test]
    fn five_wrong_tries_are_free_and_then_the_wait_doubles() {
        let throttle = Throttle::default();
        for _ in 0..5 {
            assert_eq!(throttle.must_wait("ana", HERE, at(0)), None);
            throttle.count("Ana ", HERE, at(0));
        }
        assert_eq!(throttle.must_wait("ana", HERE, at(0)), Some(SignedDuration::from_secs(1)));
        assert_eq!(throttle.must_wait("ana", HERE, at(1)), None);
        throttle.count("ana", HERE, at(1));
        assert_eq!(throttle.must_wait("ana", HERE, at(1)), Some(SignedDuration::from_secs(2)));
        assert_eq!(throttle.must_wait("ben", HERE, at(1)), None, "another name on the same site is free");
        throttle.forgive("ana", HERE);
        assert_eq!(throttle.must_wait("ana", HERE, at(1)), None);
    }

    #[test]
    fn many_names_from_one_address_are_slowed_too() {
        let throttle = Throttle::default();
        for n in 0..20 {
            throttle.count(&format!("name {n}"), HERE, at(0));
        }
        assert!(throttle.must_wait("fresh", HERE, at(0)).is_some());
    }

    #[test]
    fn an_hour_forgives_and_no_wait_is_longer_than_a_quarter_of_an_hour() {
        let throttle = Throttle::default();
        for _ in 0..100 {
            throttle.count("ana", HERE, at(0));
        }
        assert_eq!(throttle.must_wait("ana", HERE, at(0)), Some(LONGEST));
        throttle.count("ana", HERE, at(3_700));
        assert_eq!(throttle.must_wait("ana", HERE, at(3_700)), None);
    }
}
