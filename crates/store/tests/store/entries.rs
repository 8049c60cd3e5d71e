//! Adding entries: all or none, once, from several sides.

use std::thread;

use slab_diary::{Body, Clash, Diary, Entry, Place, SlabId};
use store::{Appended, Store, StoreError};

use crate::common::{from_newer_program, note, notes, raw, store_with_slab};

#[test]
fn adding_twice_adds_nothing() {
    let (_dir, store, slab) = store_with_slab();
    let entries = notes(slab, 0, 5);
    assert_eq!(store.append(slab, &entries).expect("added"), Appended { added: 5, already: 0 });
    assert_eq!(store.append(slab, &entries).expect("again"), Appended { added: 0, already: 5 });
    let overlap = notes(slab, 3, 8);
    assert_eq!(store.append(slab, &overlap).expect("added"), Appended { added: 3, already: 2 });
    let twice = [notes(slab, 8, 9), notes(slab, 8, 9)].concat();
    assert_eq!(store.append(slab, &twice).expect("added"), Appended { added: 1, already: 1 });
    assert_eq!(store.append(slab, &[]).expect("nothing"), Appended::default());
    assert_eq!(store.diary(slab).expect("a diary"), notes(slab, 0, 9).into_iter().collect::<Diary>());
}

#[test]
fn a_clash_is_refused_and_nothing_is_written() {
    let (_dir, store, slab) = store_with_slab();
    store.append(slab, &notes(slab, 0, 1)).expect("added");
    let before = store.diary(slab).expect("a diary");
    let mut forged = note(slab, "never said");
    forged.id = notes(slab, 0, 1)[0].id;
    let batch = [notes(slab, 1, 4), vec![forged.clone()], notes(slab, 4, 6)].concat();
    let error = store.append(slab, &batch).expect_err("a clash");
    assert!(matches!(error, StoreError::Clash(Clash(id)) if id == forged.id), "{error}");
    assert_eq!(store.diary(slab).expect("a diary"), before);
}

#[test]
fn a_clash_within_one_batch_is_refused() {
    let (_dir, store, slab) = store_with_slab();
    let (first, mut second) = (note(slab, "first"), note(slab, "second"));
    second.id = first.id;
    let error = store.append(slab, &[first, second]).expect_err("a clash");
    assert!(matches!(error, StoreError::Clash(_)), "{error}");
    assert!(store.diary(slab).expect("a diary").is_empty());
}

#[test]
fn the_same_instant_on_another_calendar_day_is_another_entry() {
    let (_dir, store, slab) = store_with_slab();
    let mut entry = note(slab, "late");
    entry.happened = "2026-03-02T23:00:00-06:00[America/Chicago]".parse_when();
    store.append(slab, std::slice::from_ref(&entry)).expect("added");
    entry.happened = "2026-03-03T05:00:00+00:00[UTC]".parse_when();
    let error = store.append(slab, &[entry]).expect_err("it would move the day");
    assert!(matches!(error, StoreError::Clash(_)), "{error}");
}

trait ParseWhen {
    fn parse_when(&self) -> slab_diary::When;
}

impl ParseWhen for str {
    fn parse_when(&self) -> slab_diary::When {
        slab_diary::When::read(self, &jiff::tz::TimeZone::UTC).expect("a moment")
    }
}

#[test]
fn an_entry_of_another_slab_is_refused() {
    let (_dir, store, slab) = store_with_slab();
    let other = SlabId::of_name("other");
    let batch = [notes(slab, 0, 2), notes(other, 0, 1)].concat();
    let error = store.append(slab, &batch).expect_err("another slab");
    assert!(matches!(error, StoreError::OtherSlab { says, wanted, .. } if says == other && wanted == slab), "{error}");
    assert!(store.diary(slab).expect("a diary").is_empty());
    let error = store.append(other, &notes(other, 0, 1)).expect_err("never made");
    assert!(matches!(error, StoreError::NoSuchSlab { .. }), "{error}");
}

#[test]
fn an_entry_that_would_not_read_back_is_refused() {
    let (_dir, store, slab) = store_with_slab();
    let mut entry = note(slab, "somewhere");
    entry.place = Some(Place::default());
    let error = store.append(slab, &[note(slab, "fine"), entry.clone()]).expect_err("it would lock the diary");
    assert!(matches!(error, StoreError::WouldNotReadBack { entry: id, .. } if id == entry.id), "{error}");
    assert!(store.diary(slab).expect("a diary").is_empty());
}

#[test]
fn a_correction_and_what_it_replaces_may_come_in_any_order() {
    let (dir, store, slab) = store_with_slab();
    let wrong = note(slab, "55 F");
    let mut right = note(slab, "65 F");
    right.replaces = Some(wrong.id);
    store.append(slab, &[right.clone()]).expect("added");
    store.append(slab, std::slice::from_ref(&wrong)).expect("added");
    assert_eq!(store.diary(slab).expect("a diary"), [wrong.clone(), right].into_iter().collect::<Diary>());
    let column: String = raw(&dir)
        .query_row("SELECT replaces FROM entry WHERE replaces IS NOT NULL", [], |row| row.get(0))
        .expect("one row");
    assert_eq!(column, wrong.id.to_string());
}

#[test]
fn a_body_from_a_newer_program_survives_to_the_letter() {
    let (dir, store, slab) = store_with_slab();
    let body = "{ \"kind\" : \"laser_scan\",\n\t\"z\":[1.50, 1e3 ,-0.0], \"word\":\"\\u00e9 é\", \"big\":12345678901234567890123 }";
    let entry = from_newer_program(slab, body);
    store.append(slab, std::slice::from_ref(&entry)).expect("added");
    drop(store);
    let store = Store::open(dir.path()).expect("it opens again");
    let diary = store.diary(slab).expect("a diary");
    let kept = diary.get(entry.id).expect("it is there");
    assert!(matches!(&kept.body, Body::Unknown(unknown) if unknown.kind == "laser_scan" && unknown.raw.get() == body));
    assert_eq!(kept.to_json(), entry.to_json());
    assert_eq!(store.append(slab, std::slice::from_ref(kept)).expect("again"), Appended { added: 0, already: 1 });
    let respelled = from_newer_program(slab, &body.replace("1.50", "1.5"));
    let error = store.append(slab, &[respelled]).expect_err("other letters");
    assert!(matches!(error, StoreError::Clash(_)), "{error}");
}

#[test]
fn a_transaction_that_fails_in_the_middle_leaves_nothing() {
    let (dir, store, slab) = store_with_slab();
    store.append(slab, &notes(slab, 0, 2)).expect("added");
    // The sixth entry finds no room, as on a full disk.
    raw(&dir)
        .execute_batch(
            "CREATE TRIGGER no_room BEFORE INSERT ON entry WHEN (SELECT count(*) FROM entry) >= 5
             BEGIN SELECT RAISE(ABORT, 'no room'); END",
        )
        .expect("a trigger");
    let error = store.append(slab, &notes(slab, 2, 10)).expect_err("no room");
    assert!(matches!(&error, StoreError::Database { says, .. } if says.contains("no room")), "{error}");
    assert_eq!(store.diary(slab).expect("a diary").len(), 2);
    raw(&dir).execute_batch("DROP TRIGGER no_room").expect("room again");
    assert_eq!(store.append(slab, &notes(slab, 2, 10)).expect("added"), Appended { added: 8, already: 0 });
}

const WRITERS: usize = 4;
const ROUNDS: usize = 15;

/// Every writer adds its own entries in small batches, and one that all of them add.
fn write(store: &Store, slab: SlabId, writer: usize) {
    for round in 0..ROUNDS {
        let first = 1000 * (writer + 1) + 3 * round;
        let batch: Vec<Entry> = [notes(slab, first, first + 3), notes(slab, 0, 1)].concat();
        store.append(slab, &batch).expect("its turn comes");
    }
}

#[test]
fn writers_with_connections_of_their_own_all_land() {
    let (dir, store, slab) = store_with_slab();
    thread::scope(|scope| {
        for writer in 0..WRITERS {
            let path = dir.path();
            scope.spawn(move || write(&Store::open(path).expect("it opens"), slab, writer));
        }
    });
    assert_eq!(store.diary(slab).expect("a diary").len(), WRITERS * ROUNDS * 3 + 1);
}

#[test]
fn writers_that_share_a_connection_all_land() {
    let (_dir, store, slab) = store_with_slab();
    thread::scope(|scope| {
        for writer in 0..WRITERS {
            let store = &store;
            scope.spawn(move || write(store, slab, writer));
        }
    });
    assert_eq!(store.diary(slab).expect("a diary").len(), WRITERS * ROUNDS * 3 + 1);
}
