//! Opening: again, at the same moment, and what is not ours.

use std::sync::Barrier;
use std::thread;

use rusqlite::Connection;
use slab_diary::{Diary, EntryKind, SlabId};
use store::{Store, StoreError};

use crate::common::{new_store, one_of_every_kind, raw, store_with_slab};

#[test]
fn a_store_opened_again_has_everything() {
    let (dir, store, slab) = store_with_slab();
    let entries = one_of_every_kind(slab);
    assert!(entries.len() >= EntryKind::ALL.len());
    let hash = store.put_photograph(b"a picture").expect("it is kept");
    store.append(slab, &entries).expect("they are added");
    let before = (store.slabs().expect("slabs"), store.diary(slab).expect("a diary"));
    assert_eq!(before.1, entries.iter().cloned().collect::<Diary>());
    drop(store);

    let store = Store::open(dir.path()).expect("it opens again");
    assert_eq!((store.slabs().expect("slabs"), store.diary(slab).expect("a diary")), before);
    assert_eq!(store.photograph(&hash).expect("a photograph"), b"a picture");
    for entry in entries {
        let kept = store.diary(slab).expect("a diary").get(entry.id).expect("it is there").to_json();
        assert_eq!(kept, entry.to_json());
    }
}

#[test]
fn a_folder_deep_down_is_made() {
    let dir = tempfile::tempdir().expect("a folder");
    let deep = dir.path().join("one/two/three");
    Store::open(&deep).expect("it opens");
    assert!(deep.join("underfoot.sqlite").is_file());
    assert!(deep.join("photographs").is_dir());
}

#[test]
fn a_file_in_the_way_is_named() {
    let dir = tempfile::tempdir().expect("a folder");
    let path = dir.path().join("taken");
    std::fs::write(&path, "not a folder").expect("a file");
    let error = Store::open(&path).expect_err("a file is no folder");
    assert!(matches!(&error, StoreError::Disk { path: named, .. } if *named == path), "{error}");
}

#[test]
fn many_programs_may_make_the_store_at_the_same_moment() {
    for _ in 0..5 {
        let dir = tempfile::tempdir().expect("a folder");
        let at_once = Barrier::new(8);
        thread::scope(|scope| {
            for number in 0..8 {
                let (at_once, path) = (&at_once, dir.path());
                scope.spawn(move || {
                    at_once.wait();
                    let store = Store::open(path).expect("it opens");
                    let name = format!("slab {number}");
                    store.create_slab(SlabId::of_name(&name), &name).expect("a slab");
                });
            }
        });
        assert_eq!(Store::open(dir.path()).expect("it opens").slabs().expect("slabs").len(), 8);
    }
}

#[test]
fn tables_of_a_newer_program_are_refused_and_not_touched() {
    let (dir, store) = new_store();
    drop(store);
    let other = raw(&dir);
    other.pragma_update(None, "user_version", 99).expect("a version");
    other.pragma_update_and_check(None, "journal_mode", "DELETE", |_| Ok(())).expect("a journal");
    drop(other);
    let path = dir.path().join("underfoot.sqlite");
    let before = std::fs::read(&path).expect("bytes");

    let error = Store::open(dir.path()).expect_err("it is newer");
    assert!(matches!(error, StoreError::NewerDatabase { found: 99, known: 2, .. }), "{error}");
    assert!(error.to_string().contains("tables are version 99; accepted: version 2 or older"), "{error}");
    assert_eq!(std::fs::read(&path).expect("bytes"), before);
}

#[test]
fn a_database_of_another_program_is_refused_and_not_touched() {
    let dir = tempfile::tempdir().expect("a folder");
    let path = dir.path().join("underfoot.sqlite");
    Connection::open(&path).expect("a database").execute_batch("CREATE TABLE theirs (x)").expect("a table");
    let before = std::fs::read(&path).expect("bytes");
    let error = Store::open(dir.path()).expect_err("it is foreign");
    assert!(matches!(&error, StoreError::ForeignDatabase { path: named, .. } if *named == path), "{error}");
    assert_eq!(std::fs::read(&path).expect("bytes"), before);
}

#[test]
fn a_file_that_is_no_database_is_refused_and_not_touched() {
    let dir = tempfile::tempdir().expect("a folder");
    let path = dir.path().join("underfoot.sqlite");
    let text = "a shopping list, quite long enough to be taken for the head of a database file, ".repeat(4);
    std::fs::write(&path, &text).expect("a file");
    let error = Store::open(dir.path()).expect_err("it is no database");
    assert!(matches!(error, StoreError::ForeignDatabase { .. }), "{error}");
    assert_eq!(std::fs::read_to_string(&path).expect("text"), text);
}

#[test]
fn a_store_may_be_shared_between_threads() {
    fn shareable<T: Send + Sync>() {}
    shareable::<Store>();
}
