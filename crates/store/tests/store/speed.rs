//! A diary of 100,000 entries loads in under two seconds on two idle cores, and a page of 1,000 slabs
//! with 100,000 entries lists in under two milliseconds, in a release build:
//! `cargo test -p store --release -- --ignored --nocapture --test-threads 1 speed`.

use std::time::{Duration, Instant};

use slab_diary::{EntryId, SlabId};
use store::SlabQuery;

use crate::common::{moment, new_store, notes, read, store_with_slab};

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
    let middle = moment("2026-03-14T12:00:00Z").as_microsecond();
    for (what, kinds, before) in [
        ("newest", None, None),
        ("from the middle", None, Some((middle, EntryId::of_label(slab, "nowhere")))),
        ("of a third of the entries", Some(&["water_drop"][..]), None),
        ("of a kind that is not there", Some(&["pour"][..]), None),
    ] {
        let took = median(|| drop(store.entries_page(slab, kinds, before, 50).expect("a page")));
        println!("a page of 50 entries, {what}: {took:.2?}");
    }
    assert!(loaded < Duration::from_secs(2), "{loaded:?}");
}

/// The middle one of 101 runs.
#[expect(clippy::disallowed_methods, reason = "it is a stopwatch")]
fn median(run: impl Fn()) -> Duration {
    let mut times: Vec<Duration> = (0..101)
        .map(|_| {
            let start = Instant::now();
            run();
            start.elapsed()
        })
        .collect();
    times.sort_unstable();
    times[50]
}

#[test]
#[ignore = "only a release build on an idle machine is fast"]
fn a_page_of_a_thousand_slabs_lists_in_two_milliseconds() {
    let (_dir, store) = new_store();
    let id = |n: u32| SlabId::of_name(&format!("slab {n}"));
    for n in 0..1000 {
        store.create_slab(id(n), &format!("Éclair Road {n} shop")).expect("a slab");
        store.append(id(n), &notes(id(n), 0, 100)).expect("added");
        if n % 10 == 0 {
            store.put_away(id(n), moment("2026-04-01T12:00:00Z")).expect("put away");
        }
    }
    let page =
        |search, put_away, offset| store.slab_page(&SlabQuery { search, put_away, offset, limit: 50 }).expect("a page");
    assert_eq!((page(None, false, 0).0.len(), page(None, false, 0).1, page(None, true, 0).1), (50, 900, 100));
    for (what, took) in [
        ("first page", median(|| drop(page(None, false, 0)))),
        ("last page", median(|| drop(page(None, false, 850)))),
        ("search in all", median(|| drop(page(Some("ÉCLAIR"), false, 0)))),
        ("search of few", median(|| drop(page(Some("99"), false, 0)))),
        ("put away", median(|| drop(page(None, true, 0)))),
        ("one slab", median(|| drop(store.slab_record(id(500)).expect("read").expect("it is there")))),
    ] {
        println!("1,000 slabs, 100,000 entries, {what}: {took:.2?}");
        assert!(took < Duration::from_millis(2), "{what}: {took:?}");
    }
    println!("the whole list: {:.2?}", median(|| drop(store.slabs().expect("slabs"))));
}
