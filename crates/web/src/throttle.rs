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

/// The two things that are counted for one try. Whoever has one address of the newer kind has a whole
/// net of them, so that net is one sender.
fn keys(name: &str, from: IpAddr) -> [String; 2] {
    let from = match from {
        IpAddr::V4(address) => address.to_string(),
        IpAddr::V6(address) => match address.to_ipv4_mapped() {
            Some(old) => old.to_string(),
            None => address.segments()[..4].iter().map(|part| format!("{part:x}:")).collect(),
        },
    };
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
    /// Lets a try in and counts it, before its password is looked at, so that many at once are counted
    /// too; or says how long this name or address must still wait. A name is at most as long as a
    /// person's can be.
    pub(crate) fn admit(&self, name: &str, from: IpAddr, now: Timestamp) -> Result<(), SignedDuration> {
        let mut tries = self.tries.lock().unwrap_or_else(PoisonError::into_inner);
        let keys = keys(name, from);
        let left = |key: &String| {
            let known = tries.get(key)?;
            let left = wait(key, known.wrong) - now.duration_since(known.last);
            (left > SignedDuration::ZERO).then_some(left)
        };
        if let Some(longest) = keys.iter().filter_map(left).max() {
            return Err(longest);
        }
        for key in keys {
            let known = tries.entry(key).or_insert(Tries { wrong: 0, last: now });
            // An hour without a try forgives.
            if now.duration_since(known.last) > SignedDuration::from_hours(1) {
                known.wrong = 0;
            }
            known.wrong = known.wrong.saturating_add(1);
            known.last = now;
        }
        while tries.len() > KEPT
            && let Some(oldest) = tries.iter().min_by_key(|(_, t)| t.last).map(|(key, _)| key.clone())
        {
            tries.remove(&oldest);
        }
        Ok(())
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
            assert_eq!(throttle.admit("Ana ", HERE, at(0)), Ok(()));
        }
        assert_eq!(throttle.admit("ana", HERE, at(0)), Err(SignedDuration::from_secs(1)));
        assert_eq!(throttle.admit("ana", HERE, at(1)), Ok(()));
        assert_eq!(throttle.admit("ana", HERE, at(1)), Err(SignedDuration::from_secs(2)));
        assert_eq!(throttle.admit("ben", HERE, at(1)), Ok(()), "another name on the same site is free");
        throttle.forgive("ana", HERE);
        assert_eq!(throttle.admit("ana", HERE, at(1)), Ok(()));
    }

    #[test]
    fn many_names_from_one_address_are_slowed_too() {
        let throttle = Throttle::default();
        for n in 0..20 {
            assert_eq!(throttle.admit(&format!("name {n}"), HERE, at(0)), Ok(()));
        }
        assert!(throttle.admit("fresh", HERE, at(0)).is_err());
    }

    #[test]
    fn one_net_is_one_sender() {
        let throttle = Throttle::default();
        for n in 0..20_u16 {
            let from = IpAddr::V6(std::net::Ipv6Addr::new(0x2001, 0xdb8, 1, 2, n, n, n, n));
            assert_eq!(throttle.admit(&format!("name {n}"), from, at(0)), Ok(()));
        }
        let same = IpAddr::V6(std::net::Ipv6Addr::new(0x2001, 0xdb8, 1, 2, 9, 9, 9, 9));
        let other = IpAddr::V6(std::net::Ipv6Addr::new(0x2001, 0xdb8, 1, 3, 9, 9, 9, 9));
        assert!(throttle.admit("fresh", same, at(0)).is_err());
        assert!(throttle.admit("fresh", other, at(0)).is_ok());
    }

    #[test]
    fn an_hour_forgives_and_no_wait_is_longer_than_a_quarter_of_an_hour() {
        let throttle = Throttle::default();
        let mut now = 0;
        for _ in 0..40 {
            match throttle.admit("ana", HERE, at(now)) {
                Ok(()) => {}
                Err(left) => {
                    assert!(left <= LONGEST, "{left:?}");
                    now += left.as_secs();
                }
            }
        }
        assert_eq!(throttle.admit("ana", HERE, at(now)), Ok(()));
        assert_eq!(throttle.admit("ana", HERE, at(now)), Err(LONGEST));
        assert_eq!(throttle.admit("ana", HERE, at(now + 3_700)), Ok(()));
        assert_eq!(throttle.admit("ana", HERE, at(now + 3_700)), Ok(()), "forgiven");
    }

    #[test]
    fn a_flood_of_names_and_addresses_is_forgotten_from_its_oldest_end() {
        let throttle = Throttle::default();
        for n in 0..6_000_u32 {
            let from = IpAddr::V4(std::net::Ipv4Addr::from(n));
            assert_eq!(throttle.admit(&format!("name {n}"), from, at(i64::from(n))), Ok(()));
        }
        let kept = throttle.tries.lock().expect("a lock");
        assert_eq!(kept.len(), KEPT);
        assert!(kept.contains_key("name name 5999") && !kept.contains_key("name name 0"));
    }
}
