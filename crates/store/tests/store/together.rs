//! Readers beside a writer: they do not wait for it, and see all that it has acknowledged.

use std::sync::atomic::{AtomicBool, AtomicUsize, Ordering};
use std::thread;
use std::time::Duration;

use slab_diary::SlabId;
use store::{SlabQuery, TokenHash};

use crate::common::{moment, new_person, new_store, notes, raw, store_with_slab};

#[test]
fn readers_see_whole_batches_and_every_acknowledged_one() {
    const BATCH: usize = 7;
    const BATCHES: usize = 40;
    let (_dir, store, slab) = store_with_slab();
    let (acknowledged, done) = (AtomicUsize::new(0), AtomicBool::new(false));
    thread::scope(|scope| {
        let (store, acknowledged, done) = (&store, &acknowledged, &done);
        for _ in 0..3 {
            scope.spawn(move || {
                let mut last = 0;
                while !done.load(Ordering::SeqCst) {
                    let least = acknowledged.load(Ordering::SeqCst) * BATCH;
                    let record = store.slab_record(slab).expect("read").expect("it is there");
                    let diary = store.diary(slab).expect("a diary").len();
                    let page = store.entries_page(slab, None, None, 10_000).expect("a page").len();
                    let counts = [record.entries as usize, diary, page];
                    assert!(counts.iter().all(|count| count % BATCH == 0), "half a batch: {counts:?}");
                    assert!(counts.is_sorted() && counts[0] >= least.max(last), "{counts:?} after {least}, {last}");
                    assert_eq!(record.version as usize, counts[0]);
                    last = counts[2];
                }
            });
        }
        for batch in 0..BATCHES {
            store.append(slab, &notes(slab, batch * BATCH, (batch + 1) * BATCH)).expect("added");
            acknowledged.fetch_add(1, Ordering::SeqCst);
        }
        done.store(true, Ordering::SeqCst);
    });
    assert_eq!(store.diary(slab).expect("a diary").len(), BATCH * BATCHES);
    assert!(store.check().expect("a report").is_sound());
}

#[test]
fn readers_do_not_wait_while_a_writer_waits() {
    let (dir, store, slab) = store_with_slab();
    store.append(slab, &notes(slab, 0, 3)).expect("added");
    let other = raw(&dir);
    other.execute_batch("BEGIN IMMEDIATE").expect("the only writer");
    thread::scope(|scope| {
        // It waits at most ten seconds for its turn, which comes only after the reading.
        let writer = scope.spawn(|| store.append(slab, &notes(slab, 3, 6)));
        for _ in 0..30 {
            assert_eq!(store.diary(slab).expect("a diary").len(), 3);
            assert_eq!(store.slab_page(&SlabQuery { limit: 9, ..SlabQuery::default() }).expect("a page").1, 1);
            thread::sleep(Duration::from_millis(10));
        }
        assert!(!writer.is_finished(), "it waits");
        other.execute_batch("COMMIT").expect("done");
        assert_eq!(writer.join().expect("it ended").expect("added").added, 3);
    });
    assert_eq!(store.diary(slab).expect("a diary").len(), 6);
}

#[test]
fn what_a_call_has_written_the_next_one_reads() {
    let (_dir, store) = new_store();
    let now = moment("2026-03-01T12:00:00Z");
    for n in 0..30_u128 {
        let (name, slab) = (format!("name {n}"), SlabId::of_name(&format!("slab {n}")));
        let person = store.add_person(&new_person(n, &name), store::Role::Owner, now).expect("added");
        assert_eq!(store.person(person.id).expect("read"), Some(person.clone()));
        let token = TokenHash::of(name.as_bytes());
        store.start_session(token, person.id, now, moment("2026-03-02T12:00:00Z")).expect("started");
        assert!(store.session(token, now).expect("read").is_some());
        store.end_session(token).expect("ended");
        assert_eq!(store.session(token, now).expect("read"), None);
        store.create_slab(slab, &name).expect("a slab");
        assert!(store.slab_record(slab).expect("read").is_some());
        let entries = notes(slab, 0, 1);
        store.append(slab, &entries).expect("added");
        assert!(store.entry(slab, entries[0].id).expect("read").is_some());
    }
}
