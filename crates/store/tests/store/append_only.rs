//! The table of entries refuses to change, whoever asks.

use crate::common::{add_raw, notes, raw, store_with_slab};

#[test]
fn no_statement_changes_or_drops_an_entry() {
    let (dir, store, slab) = store_with_slab();
    store.append(slab, &notes(slab, 0, 3)).expect("added");
    let before = store.diary(slab).expect("a diary");
    for (statement, word) in [
        ("UPDATE entry SET text = 'x'", "never changed"),
        ("UPDATE entry SET noted_us = 0 WHERE arrival = 1", "never changed"),
        ("UPDATE OR REPLACE entry SET id = 'x'", "never changed"),
        ("DELETE FROM entry", "never dropped"),
        ("DELETE FROM entry WHERE arrival = 2", "never dropped"),
        (
            "INSERT OR REPLACE INTO entry SELECT 9, id, slab, happened_us, noted_us, kind, replaces, 'x', digest FROM entry LIMIT 1",
            "never overwritten",
        ),
        (
            "REPLACE INTO entry SELECT arrival, 'x', slab, happened_us, noted_us, kind, replaces, 'x', digest FROM entry LIMIT 1",
            "never overwritten",
        ),
        (
            "INSERT INTO entry SELECT * FROM entry WHERE true ON CONFLICT (id) DO UPDATE SET text = 'x'",
            "never overwritten",
        ),
    ] {
        let error = raw(&dir).execute_batch(statement).expect_err(statement).to_string();
        assert!(error.contains(word), "{statement}: {error}");
    }
    assert_eq!(store.diary(slab).expect("a diary"), before);
    assert!(store.check().expect("a report").is_sound());
}

#[test]
fn entries_that_another_program_adds_are_tallied_too() {
    let (dir, store, slab) = store_with_slab();
    store.append(slab, &notes(slab, 0, 2)).expect("added");
    let more = notes(slab, 2, 4);
    let other = raw(&dir);
    for (entry, insert) in more.iter().zip(["INSERT", "INSERT OR IGNORE"]) {
        add_raw(&other, insert, entry);
    }
    let record = store.slab_record(slab).expect("read").expect("it is there");
    assert_eq!((record.entries, record.version), (4, 4));
    assert!(store.check().expect("a report").is_sound());
}
