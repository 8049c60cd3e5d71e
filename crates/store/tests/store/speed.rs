//! A diary of 100,000 entries loads in under two seconds on two idle cores, in a release build:
//! `cargo test -p store --release -- --ignored --nocapture hundred_thousand`.

use std::time::{Duration, Instant};

use crate::common::{read, store_with_slab};

#[test]
#[ignore = "only a release build on an idle machine is fast"]
#[expect(clippy::disallowed_methods, reason = "it is a stopwatch")]
fn a_hundred_thousand_entries_load_in_two_seconds() {
    let (_dir, store, slab) = store_with_slab();
    let line = |n: usize| {
        let (day, hour, minute) = (1 + n / 1440 % 28, n / 60 % 24, n % 60);
        let happened = format!("2026-03-{day:02}T{hour:02}:{minute:02}-06:00");
        let body = match n % 3 {
            0 => format!(r#"{{"kind":"air_reading","air":"{} °F","humidity":"45 %","wind":"3 mph"}}"#, 40 + n % 50),
            1 => format!(r#"{{"kind":"water_drop","soaked_in":"{} s"}}"#, 10 + n % 300),
            _ => format!(r#"{{"kind":"note","text":"note number {n} of a long and busy job"}}"#),
        };
        format!(
            "{{\"happened\":\"{happened}\",\"author\":\"crew {n}\",\"place\":{{\"point\":[\"5 ft\",\"5 ft\"]}},\"body\":{body}}}\n"
        )
    };
    let entries = read(slab, &(0..100_000).map(line).collect::<String>());
    let start = Instant::now();
    assert_eq!(store.append(slab, &entries).expect("added").added, 100_000);
    let appended = start.elapsed();
    let start = Instant::now();
    let diary = store.diary(slab).expect("a diary");
    let loaded = start.elapsed();
    let start = Instant::now();
    assert!(store.check().expect("a report").is_sound());
    println!("100,000 entries: added in {appended:.2?}, loaded in {loaded:.2?}, checked in {:.2?}", start.elapsed());
    assert_eq!(diary.len(), 100_000);
    assert!(loaded < Duration::from_secs(2), "{loaded:?}");
}
