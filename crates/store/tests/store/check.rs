//! The look over the whole store finds what is broken, and only that.

use std::fs;

use slab_diary::PhotoHash;
use store::{Problem, Report, Store};
use tempfile::TempDir;

use crate::common::{note, notes, one_of_every_kind, raw, store_with_slab};

/// A store with entries of every kind and two photographs, one of them named.
fn full_store() -> (TempDir, Store, PhotoHash) {
    let (dir, store, slab) = store_with_slab();
    store.append(slab, &one_of_every_kind(slab)).expect("added");
    let hash = store.put_photograph(b"a picture").expect("kept");
    store.put_photograph(b"another").expect("kept");
    let mut entry = note(slab, "see the picture");
    entry.photographs.push(hash.clone());
    store.append(slab, &[entry]).expect("added");
    (dir, store, hash)
}

/// Changes an entry behind the triggers' back, as a broken disk would.
fn damage(dir: &TempDir, statement: &str) {
    let other = raw(dir);
    other.execute_batch("DROP TRIGGER entry_is_never_changed; DROP TRIGGER entry_is_never_dropped").expect("triggers");
    assert_eq!(other.execute(statement, []).expect(statement), 1, "{statement}");
}

#[test]
fn a_sound_store_is_found_sound() {
    let (_dir, store, _) = full_store();
    let report = store.check().expect("a report");
    assert!(report.is_sound(), "{report:?}");
    assert_eq!((report.photographs, report.unnamed_photographs), (2, 1));
    let entries: u64 = store.slabs().expect("slabs").iter().map(|slab| slab.entries).sum();
    assert_eq!(report.entries, entries);
}

#[test]
fn a_damaged_and_a_missing_photograph_are_found() {
    let (dir, store, hash) = full_store();
    let file = dir.path().join("photographs").join(hash.as_str());
    fs::write(&file, b"A picture").expect("damage");
    let report = store.check().expect("a report");
    assert!(matches!(&report.problems[..], [Problem::Photograph { hash: named, .. }] if *named == hash), "{report:?}");
    fs::remove_file(&file).expect("loss");
    let report = store.check().expect("a report");
    assert!(
        matches!(&report.problems[..], [Problem::PhotographMissing { hash: named, .. }] if *named == hash),
        "{report:?}"
    );
}

#[test]
fn one_changed_letter_of_an_entry_is_found() {
    let (dir, store, slab) = store_with_slab();
    store.append(slab, &notes(slab, 0, 3)).expect("added");
    damage(&dir, "UPDATE entry SET text = replace(text, 'note 1', 'note 7') WHERE text LIKE '%note 1%'");
    let report = store.check().expect("a report");
    assert!(matches!(&report.problems[..], [Problem::Entry(says)] if says.contains("hash")), "{report:?}");
    assert!(store.diary(slab).is_err(), "a diary with a forged entry is not handed out");
}

#[test]
fn columns_that_disagree_with_the_text_are_found() {
    for column in ["happened_us = happened_us + 1", "noted_us = 0", "kind = 'pour'", "replaces = id"] {
        let (dir, store, slab) = store_with_slab();
        store.append(slab, &notes(slab, 0, 3)).expect("added");
        damage(&dir, &format!("UPDATE entry SET {column} WHERE arrival = 2"));
        let report = store.check().expect("a report");
        let name = column.split([' ', '_']).next().expect("a word");
        assert!(
            matches!(&report.problems[..], [Problem::Entry(says)] if says.contains(&format!("column \"{name}\""))),
            "{report:?}"
        );
    }
}

#[test]
fn an_entry_of_no_slab_is_found() {
    let (dir, store, slab) = store_with_slab();
    store.append(slab, &notes(slab, 0, 1)).expect("added");
    let other = raw(&dir);
    other.pragma_update(None, "foreign_keys", false).expect("keys off");
    other.execute("DELETE FROM slab", []).expect("loss");
    let report = store.check().expect("a report");
    assert!(matches!(&report.problems[..], [Problem::Database(says)] if says.contains("slab")), "{report:?}");
}

#[test]
fn a_torn_database_file_is_found() {
    let (dir, store, slab) = store_with_slab();
    store.append(slab, &notes(slab, 0, 500)).expect("added");
    drop(store);
    let path = dir.path().join("underfoot.sqlite");
    let mut bytes = fs::read(&path).expect("bytes");
    let page = usize::from(u16::from_be_bytes([bytes[16], bytes[17]]));
    // The first pages hold the names of the tables; leave them, and tear every other one after.
    let half = bytes.len() / page / 2;
    for torn in bytes.chunks_mut(page).skip(half).step_by(2) {
        torn.fill(0xA5);
    }
    fs::write(&path, bytes).expect("damage");
    let store = Store::open(dir.path()).expect("its first pages still read");
    let report = store.check().expect("a report");
    assert!(report.problems.iter().any(|p| matches!(p, Problem::Database(_))), "{report:?}");
}

#[test]
fn leftovers_are_listed_and_other_files_left_alone() {
    let (dir, store, hash) = full_store();
    let folder = dir.path().join("photographs");
    let leftover = format!("{}.0.part", hash.as_str());
    fs::write(folder.join(&leftover), b"a pi").expect("half a file");
    fs::write(folder.join("notes.txt"), b"mine").expect("a file");
    let report = store.check().expect("a report");
    assert!(report.is_sound(), "{report:?}");
    assert_eq!(report.unfinished_files, [leftover]);
    assert!(folder.join("notes.txt").exists());
}

#[test]
fn an_empty_store_is_sound() {
    let (_dir, store) = crate::common::new_store();
    assert_eq!(store.check().expect("a report"), Report::default());
}

#[test]
fn a_tally_that_disagrees_with_the_entries_is_found() {
    for (statement, says) in [
        ("UPDATE tally SET entries = entries + 1", "the tally says 4 entries, the diary has 3"),
        ("UPDATE tally SET last_arrival = 9", "but their last is another"),
        ("UPDATE tally SET last_noted_us = 0", "but their last is another"),
        ("DELETE FROM tally", "the tally says 0 entries, the diary has 3"),
        ("INSERT INTO tally VALUES ('nowhere', 2, 1, 0)", "slab nowhere: the tally says 2 entries, the diary has 0"),
    ] {
        let (dir, store, slab) = store_with_slab();
        store.append(slab, &notes(slab, 0, 3)).expect("added");
        raw(&dir).execute(statement, []).expect(statement);
        let report = store.check().expect("a report");
        assert!(matches!(&report.problems[..], [Problem::Tally(found)] if found.contains(says)), "{report:?}");
    }
}

#[test]
fn an_index_of_photographs_that_disagrees_with_the_entries_is_found() {
    for (statement, says) in [
        ("DELETE FROM entry_photograph", "not in the slab's index"),
        ("INSERT INTO entry_photograph SELECT slab, 'ff' FROM entry_photograph", "no entry names it"),
        ("INSERT INTO entry_photograph SELECT 'nowhere', hash FROM entry_photograph", "no entry names it"),
    ] {
        let (dir, store, _) = full_store();
        assert_eq!(raw(&dir).execute(statement, []).expect(statement), 1, "{statement}");
        let report = store.check().expect("a report");
        assert!(matches!(&report.problems[..], [Problem::Tally(found)] if found.contains(says)), "{report:?}");
    }
}

#[test]
fn a_row_of_another_table_that_belongs_nowhere_is_found() {
    let (dir, store, _) = store_with_slab();
    let other = raw(&dir);
    other.pragma_update(None, "foreign_keys", false).expect("keys off");
    other.execute("INSERT INTO put_away VALUES ('nowhere', 0)", []).expect("a row");
    let report = store.check().expect("a report");
    assert!(matches!(&report.problems[..], [Problem::Database(says)] if says.contains("\"put_away\"")), "{report:?}");
}

#[test]
fn a_damaged_entry_is_told_once_though_it_named_a_photograph() {
    let (dir, store, _) = full_store();
    damage(&dir, "UPDATE entry SET text = text || ' ' WHERE text LIKE '%see the picture%'");
    let report = store.check().expect("a report");
    assert!(matches!(&report.problems[..], [Problem::Entry(_)]), "{report:?}");
}
