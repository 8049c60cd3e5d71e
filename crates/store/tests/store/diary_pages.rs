//! A diary by pages, single entries, and photographs by the slab that names them.

use std::fs;

use slab_diary::{Entry, EntryId, SlabId};
use store::{Store, StoreError};

use crate::common::{from_newer_program, note, notes, one_of_every_kind, raw, read, store_with_slab};

/// Entries of every kind, several at one instant, noted in another order than they happened.
fn busy(slab: SlabId) -> Vec<Entry> {
    let mut entries = one_of_every_kind(slab);
    entries.extend(notes(slab, 0, 20));
    for n in 0..20 {
        let (happened, noted) = (7 + n % 3, 59 - n % 5);
        let line = format!(
            r#"{{"happened":"2026-03-02 {happened:02}:00","noted":"2026-03-04 12:{noted}","body":{{"kind":"note","text":"late {n}"}}}}"#
        );
        entries.extend(read(slab, &line));
    }
    entries
}

fn cursor(entry: &Entry) -> (i64, EntryId) {
    (entry.happened.instant().as_microsecond(), entry.id)
}

fn all_pages(store: &Store, slab: SlabId, kinds: Option<&[&str]>, limit: u32) -> Vec<Entry> {
    let mut told: Vec<Entry> = Vec::new();
    loop {
        let page = store.entries_page(slab, kinds, told.last().map(cursor), limit).expect("a page");
        assert!(page.len() <= limit as usize);
        if page.is_empty() {
            return told;
        }
        told.extend(page);
    }
}

#[test]
fn pages_tell_the_whole_diary_backwards() {
    let (_dir, store, slab) = store_with_slab();
    let mut wanted = busy(slab);
    let house = SlabId::of_name("house");
    store.create_slab(house, "house").expect("a slab");
    store.append(slab, &wanted).expect("added");
    store.append(house, &notes(house, 0, 30)).expect("added");
    wanted.sort_by_key(|entry| std::cmp::Reverse(entry.order()));
    for limit in [1, 7, 1000] {
        assert_eq!(all_pages(&store, slab, None, limit), wanted, "{limit} on a page");
    }
    assert!(store.entries_page(slab, None, None, 0).expect("a page").is_empty());
}

#[test]
fn pages_of_some_kinds_leave_the_others_out() {
    let (_dir, store, slab) = store_with_slab();
    let mut entries = busy(slab);
    entries.push(from_newer_program(slab, r#"{"kind": "laser_scan"}"#));
    store.append(slab, &entries).expect("added");
    entries.sort_by_key(|entry| std::cmp::Reverse(entry.order()));
    for kinds in [&["note"][..], &["pour", "note"], &["laser_scan"], &["never"], &[]] {
        let wanted: Vec<Entry> =
            entries.iter().filter(|entry| kinds.contains(&entry.body.kind_name())).cloned().collect();
        assert_eq!(all_pages(&store, slab, Some(kinds), 3), wanted, "{kinds:?}");
    }
    assert!(!all_pages(&store, slab, Some(&["pour"]), 3).is_empty());
}

#[test]
fn a_cursor_that_the_diary_does_not_have_leads_to_what_happened_before() {
    let (_dir, store, slab) = store_with_slab();
    let house = SlabId::of_name("house");
    store.create_slab(house, "house").expect("a slab");
    let early = read(slab, r#"{"happened":"2026-03-01 07:00","body":{"kind":"note","text":"early"}}"#);
    store.append(slab, &[early.clone(), notes(slab, 0, 3)].concat()).expect("added");
    let elsewhere = notes(house, 0, 1).remove(0);
    store.append(house, std::slice::from_ref(&elsewhere)).expect("added");
    for id in [elsewhere.id, EntryId::of_label(slab, "nowhere")] {
        let page = store.entries_page(slab, None, Some((cursor(&elsewhere).0, id)), 10).expect("a page");
        assert_eq!(page, early);
    }
}

#[test]
fn pages_of_no_slab_and_of_damaged_entries_are_refused() {
    let (dir, store, slab) = store_with_slab();
    let error = store.entries_page(SlabId::of_name("barn"), None, None, 10).expect_err("not there");
    assert!(matches!(error, StoreError::NoSuchSlab { .. }), "{error}");
    assert!(store.entries_page(slab, None, None, 10).expect("a page").is_empty());
    let entries = notes(slab, 0, 3);
    store.append(slab, &entries).expect("added");
    let other = raw(&dir);
    other.execute_batch("DROP TRIGGER entry_is_never_changed; UPDATE entry SET text = text || ' '").expect("damage");
    let error = store.entries_page(slab, None, None, 10).expect_err("damaged");
    assert!(matches!(error, StoreError::EntryDamaged { .. }), "{error}");
    let error = store.entry(slab, entries[0].id).expect_err("damaged");
    assert!(matches!(error, StoreError::EntryDamaged { .. }), "{error}");
}

#[test]
fn an_entry_is_found_in_its_own_diary_only() {
    let (_dir, store, slab) = store_with_slab();
    let house = SlabId::of_name("house");
    store.create_slab(house, "house").expect("a slab");
    let entries = busy(slab);
    store.append(slab, &entries).expect("added");
    for entry in &entries {
        assert_eq!(store.entry(slab, entry.id).expect("read").as_ref(), Some(entry));
        for other in [house, SlabId::of_name("nowhere")] {
            assert_eq!(store.entry(other, entry.id).expect("read"), None);
        }
    }
    assert_eq!(store.entry(slab, EntryId::of_label(slab, "nowhere")).expect("read"), None);
}

#[test]
fn a_photograph_opens_only_for_a_slab_that_names_it() {
    let (dir, store, slab) = store_with_slab();
    let house = SlabId::of_name("house");
    store.create_slab(house, "house").expect("a slab");
    let (named, unnamed) = (store.put_photograph(b"one").expect("kept"), store.put_photograph(b"two").expect("kept"));
    let mut entry = note(slab, "see the picture");
    entry.photographs = vec![named.clone(), named.clone()];
    store.append(slab, &[entry]).expect("added");
    assert_eq!(store.photograph_of(slab, &named).expect("read").as_deref(), Some(&b"one"[..]));
    for (of, hash) in [(slab, &unnamed), (house, &named), (house, &unnamed), (SlabId::of_name("nowhere"), &named)] {
        assert_eq!(store.photograph_of(of, hash).expect("read"), None);
    }
    let mut entry = note(house, "the same");
    entry.photographs.push(named.clone());
    store.append(house, &[entry]).expect("added");
    assert!(store.photograph_of(house, &named).expect("read").is_some());
    fs::remove_file(dir.path().join("photographs").join(named.as_str())).expect("loss");
    let error = store.photograph_of(slab, &named).expect_err("lost");
    assert!(matches!(error, StoreError::NoPhotograph(_)), "{error}");
}

#[test]
fn adding_an_entry_again_mends_its_index() {
    let (dir, store, slab) = store_with_slab();
    let hash = store.put_photograph(b"one").expect("kept");
    let mut entry = note(slab, "see the picture");
    entry.photographs.push(hash.clone());
    store.append(slab, std::slice::from_ref(&entry)).expect("added");
    raw(&dir).execute("DELETE FROM entry_photograph", []).expect("loss");
    assert_eq!(store.photograph_of(slab, &hash).expect("read"), None);
    assert_eq!(store.append(slab, &[entry]).expect("again").already, 1);
    assert!(store.photograph_of(slab, &hash).expect("read").is_some());
}
