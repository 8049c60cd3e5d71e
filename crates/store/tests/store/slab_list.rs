//! The list of slabs by pages, and putting slabs away.

use slab_diary::SlabId;
use store::{SlabQuery, Store, StoreError};

use crate::common::{moment, new_store, notes, read};

/// Slabs of these names, each with one entry noted on the given day of March; day 0: none.
fn noted(store: &Store, slabs: &[(&str, u8)]) {
    for (name, day) in slabs {
        let slab = SlabId::of_name(name);
        store.create_slab(slab, name).expect("a slab");
        if *day > 0 {
            let moment = format!("2026-03-{day:02} 07:00");
            let line = format!(
                r#"{{"happened":"2026-03-01 07:00","noted":"{moment}","body":{{"kind":"note","text":"noted"}}}}"#
            );
            store.append(slab, &read(slab, &line)).expect("added");
        }
    }
}

fn names(store: &Store, query: &SlabQuery<'_>) -> (Vec<String>, u64) {
    let (records, total) = store.slab_page(query).expect("a page");
    (records.into_iter().map(|record| record.name).collect(), total)
}

#[test]
fn the_last_noted_is_first_and_empty_diaries_last() {
    let (_dir, store) = new_store();
    noted(&store, &[("pool", 3), ("barn", 0), ("shop", 9), ("Attic", 0), ("porch", 3), ("house", 5)]);
    let order = ["shop", "house", "pool", "porch", "Attic", "barn"];
    let page = |offset, limit| names(&store, &SlabQuery { offset, limit, ..SlabQuery::default() });
    assert_eq!(page(0, 10), (order.map(str::to_owned).to_vec(), 6));
    let mut by_pages = Vec::new();
    for offset in [0, 2, 4] {
        let (names, total) = page(offset, 2);
        assert_eq!((names.len(), total), (2, 6));
        by_pages.extend(names);
    }
    assert_eq!(by_pages, order);
    assert_eq!(page(6, 2), (vec![], 6));
    assert_eq!(page(0, 0), (vec![], 6));
    assert_eq!(page(u64::MAX, u64::MAX), (vec![], 6));

    noted(&store, &[("barn", 10)]);
    assert_eq!(page(0, 1).0, ["barn"]);
}

#[test]
fn a_search_finds_any_part_of_a_name_in_any_case() {
    let (_dir, store) = new_store();
    noted(&store, &[("Éclair shop", 1), ("Creek Road SHOP", 2), ("100% barn", 3), ("a_b", 4)]);
    let search = |text| names(&store, &SlabQuery { search: Some(text), limit: 10, ..SlabQuery::default() });
    assert_eq!(search("shop"), (vec!["Creek Road SHOP".to_owned(), "Éclair shop".to_owned()], 2));
    assert_eq!(search("éCL").0, ["Éclair shop"]);
    assert_eq!(search(" road ").0, ["Creek Road SHOP"]);
    assert_eq!(search("%"), (vec!["100% barn".to_owned()], 1), "no sign has a meaning of its own");
    assert_eq!(search("_").0, ["a_b"]);
    assert_eq!(search("porch"), (vec![], 0));
    assert_eq!(search("").1, 4);
}

#[test]
fn a_slab_put_away_is_on_the_other_list_until_brought_back() {
    let (dir, store) = new_store();
    noted(&store, &[("shop", 1), ("house", 2), ("barn", 0)]);
    let (shop, now) = (SlabId::of_name("shop"), moment("2026-04-01T12:00:00Z"));
    let list = |put_away| names(&store, &SlabQuery { put_away, limit: 10, ..SlabQuery::default() });
    assert!(store.put_away(shop, now).expect("put away"));
    assert!(!store.put_away(shop, now).expect("put away already"));
    assert_eq!(list(false), (vec!["house".to_owned(), "barn".to_owned()], 2));
    assert_eq!(list(true), (vec!["shop".to_owned()], 1));
    let other = Store::open(dir.path()).expect("it opens");
    assert!(other.slab_record(shop).expect("read").expect("it is there").put_away);
    assert_eq!(store.slabs().expect("slabs").len(), 3, "the whole list has it too");
    assert!(store.find_slab("shop").expect("found").put_away);

    let before = store.slab_record(shop).expect("read").expect("it is there");
    store.append(shop, &notes(shop, 0, 2)).expect("its diary may grow");
    let after = store.slab_record(shop).expect("read").expect("it is there");
    assert_eq!((after.entries, after.put_away), (before.entries + 2, true));
    assert!(store.bring_back(shop).expect("back"));
    assert!(!store.bring_back(shop).expect("back already"));
    assert_eq!((list(false).1, list(true).1), (3, 0));
    let nowhere = SlabId::of_name("nowhere");
    for error in [store.put_away(nowhere, now), store.bring_back(nowhere)] {
        assert!(matches!(error, Err(StoreError::NoSuchSlab { .. })), "{error:?}");
    }
}

#[test]
fn the_version_changes_with_every_arrival_and_with_nothing_else() {
    let (_dir, store) = new_store();
    noted(&store, &[("shop", 0), ("house", 0)]);
    let (shop, house) = (SlabId::of_name("shop"), SlabId::of_name("house"));
    let version = |slab| store.slab_record(slab).expect("read").expect("it is there").version;
    assert_eq!(version(shop), 0);
    let mut seen = vec![0];
    for n in 0..4 {
        store.append(shop, &notes(shop, n, n + 1)).expect("added");
        store.append(house, &notes(house, n, n + 1)).expect("added");
        assert!(version(shop) > seen[n], "it grows");
        seen.push(version(shop));
    }
    store.append(shop, &notes(shop, 0, 4)).expect("nothing new");
    store.append(house, &notes(house, 4, 9)).expect("another slab");
    store.put_away(shop, moment("2026-04-01T12:00:00Z")).expect("put away");
    assert_eq!(version(shop), seen[4]);
    assert!(store.append(shop, &[notes(shop, 9, 10), notes(house, 9, 10)].concat()).is_err());
    assert_eq!(version(shop), seen[4], "a refused batch leaves no trace");
}

#[test]
fn a_record_is_the_same_on_every_list() {
    let (_dir, store) = new_store();
    noted(&store, &[("shop", 4), ("house", 0), ("barn", 2)]);
    store.put_away(SlabId::of_name("barn"), moment("2026-04-01T12:00:00Z")).expect("put away");
    let whole = store.slabs().expect("slabs");
    assert_eq!(whole.iter().map(|slab| slab.name.as_str()).collect::<Vec<_>>(), ["barn", "house", "shop"]);
    let mut paged = Vec::new();
    for put_away in [true, false] {
        paged.extend(store.slab_page(&SlabQuery { put_away, limit: 10, ..SlabQuery::default() }).expect("a page").0);
    }
    paged.sort_by(|a, b| a.name.cmp(&b.name));
    assert_eq!(paged, whole);
    for record in whole {
        assert_eq!(store.slab_record(record.id).expect("read"), Some(record));
    }
    assert_eq!(store.slab_record(SlabId::of_name("nowhere")).expect("read"), None);
}
