//! A store of the first version of the tables is brought up to date and loses nothing.

use rusqlite::Connection;
use slab_diary::{Entry, PhotoHash, SlabId};
use store::{Problem, Role, Store};
use tempfile::TempDir;

use crate::common::{add_person, add_raw, note, notes, one_of_every_kind, raw, read};

/// A database as the first version of the program left it.
fn first_version(slabs: &[(&str, &[Entry])]) -> (TempDir, Connection) {
    let dir = tempfile::tempdir().expect("a folder");
    let old = raw(&dir);
    old.execute_batch(include_str!("../../migrations/0001_diary.sql")).expect("tables");
    old.pragma_update(None, "user_version", 1).expect("a version");
    for (name, entries) in slabs {
        let id = SlabId::of_name(name).to_string();
        old.execute("INSERT INTO slab VALUES (?1, ?2, ?3)", (id, name, name.to_lowercase())).expect("a slab");
        for entry in *entries {
            add_raw(&old, "INSERT", entry);
        }
    }
    (dir, old)
}

#[test]
fn everything_is_kept_tallied_and_indexed() {
    let (shop, house, barn) = (SlabId::of_name("Shop"), SlabId::of_name("House"), SlabId::of_name("Barn"));
    let (one, two) = (PhotoHash::of(b"one"), PhotoHash::of(b"two"));
    let mut pictured = note(shop, "two pictures");
    pictured.photographs = vec![one.clone(), two.clone(), one.clone()];
    let mut again = note(house, "one of them");
    again.photographs = vec![two.clone()];
    let late = read(
        shop,
        r#"{"happened":"2026-03-02 07:00","noted":"2026-09-05 18:00","body":{"kind":"note","text":"noted last, arrived first"}}"#,
    );
    let of_shop: Vec<Entry> = [late, one_of_every_kind(shop), vec![pictured]].concat();
    let of_house: Vec<Entry> = [notes(house, 0, 4), vec![again]].concat();
    let (dir, old) = first_version(&[("Shop", &of_shop), ("House", &of_house), ("Barn", &[])]);
    drop(old);

    let store = Store::open(dir.path()).expect("it is brought up to date");
    store.put_photograph(b"one").expect("kept");
    store.put_photograph(b"two").expect("kept");
    let record = |slab| store.slab_record(slab).expect("read").expect("it is there");
    let count = |entries: &[Entry]| entries.len() as u64;
    let (shop_last, all) = (of_shop.len() as i64, (of_shop.len() + of_house.len()) as i64);
    assert_eq!((record(shop).entries, record(shop).version), (count(&of_shop), shop_last));
    assert_eq!((record(house).entries, record(house).version), (count(&of_house), all));
    assert_eq!((record(barn).entries, record(barn).version, record(barn).last_noted), (0, 0, None));
    // 18:00 in Chicago in September is 5 hours behind UTC.
    assert_eq!(record(shop).last_noted, Some("2026-09-05T23:00:00Z".parse().expect("a moment")));
    assert!(!record(shop).put_away);
    for (slab, hash, there) in
        [(shop, &one, true), (shop, &two, true), (house, &one, false), (house, &two, true), (barn, &one, false)]
    {
        assert_eq!(store.photograph_of(slab, hash).expect("read").is_some(), there);
    }
    assert_eq!(store.diary(shop).expect("a diary"), of_shop.into_iter().collect());
    assert_eq!(store.diary(house).expect("a diary"), of_house.into_iter().collect());
    let report = store.check().expect("a report");
    assert!(report.is_sound(), "{report:?}");

    add_person(&store, 1, "Ana", Role::Owner);
    store.append(barn, &notes(barn, 0, 2)).expect("added");
    assert_eq!(record(barn).entries, 2);
    assert!(store.check().expect("a report").is_sound());
    let version: i64 = raw(&dir).pragma_query_value(None, "user_version", |row| row.get(0)).expect("a version");
    assert_eq!(version, 2);
}

#[test]
fn a_rotten_entry_does_not_lock_the_store() {
    let shop = SlabId::of_name("Shop");
    let (dir, old) = first_version(&[("Shop", &notes(shop, 0, 3))]);
    old.execute_batch(
        "DROP TRIGGER entry_is_never_changed;
         UPDATE entry SET text = substr(text, 1, 40) WHERE arrival = 2;
         UPDATE entry SET text = '{\"photographs\":[7,null,{}]}' WHERE arrival = 3",
    )
    .expect("damage");
    drop(old);
    let store = Store::open(dir.path()).expect("it opens");
    assert_eq!(store.slab_record(shop).expect("read").expect("it is there").entries, 3);
    let problems = store.check().expect("a report").problems;
    assert!(matches!(&problems[..], [Problem::Entry(_), Problem::Entry(_)]), "{problems:?}");
}

#[test]
fn an_older_program_that_has_it_open_goes_on_and_is_tallied() {
    let shop = SlabId::of_name("Shop");
    let (dir, old) = first_version(&[("Shop", &notes(shop, 0, 3))]);
    let store = Store::open(dir.path()).expect("it is brought up to date");
    add_raw(&old, "INSERT", &note(shop, "by the older program"));
    let record = store.slab_record(shop).expect("read").expect("it is there");
    assert_eq!((record.entries, record.version), (4, 4));
    assert!(store.check().expect("a report").is_sound());
    for (statement, word) in [("UPDATE entry SET text = 'x'", "never changed"), ("DELETE FROM entry", "never dropped")]
    {
        let error = old.execute_batch(statement).expect_err(statement).to_string();
        assert!(error.contains(word), "{statement}: {error}");
    }
}
