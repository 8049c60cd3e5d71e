//! Slabs by name and by id.

use slab_diary::SlabId;
use store::{MAX_NAME_LETTERS, StoreError};

use crate::common::{new_store, notes, read, store_with_slab};

fn id(text: &str) -> SlabId {
    text.parse().expect("an id")
}

#[test]
fn the_list_counts_entries_and_knows_the_last_noted() {
    let (_dir, store, slab) = store_with_slab();
    let empty = store.slabs().expect("slabs");
    assert_eq!((empty[0].entries, empty[0].last_noted), (0, None));
    let lines = r#"{"happened":"2026-03-02 07:00","noted":"2026-03-05 18:00:00.25","body":{"kind":"note","text":"late"}}
        {"happened":"2026-03-04 07:00","body":{"kind":"note","text":"on the day"}}"#;
    store.append(slab, &read(slab, lines)).expect("added");
    let slabs = store.slabs().expect("slabs");
    assert_eq!(slabs.len(), 1);
    assert_eq!((slabs[0].id, slabs[0].name.as_str(), slabs[0].entries), (slab, "Creek Road shop", 2));
    // 18:00 in Chicago in the first week of March is 6 hours behind UTC.
    assert_eq!(slabs[0].last_noted, Some("2026-03-06T00:00:00.25Z".parse().expect("a moment")));
}

#[test]
fn each_slab_has_its_own_diary() {
    let (_dir, store, shop) = store_with_slab();
    let house = SlabId::of_name("house");
    store.create_slab(house, "house").expect("a slab");
    store.append(shop, &notes(shop, 0, 3)).expect("added");
    store.append(house, &notes(house, 0, 2)).expect("added");
    assert_eq!(store.diary(shop).expect("a diary").len(), 3);
    assert_eq!(store.diary(house).expect("a diary").len(), 2);
    let counts: Vec<_> = store.slabs().expect("slabs").into_iter().map(|s| (s.name, s.entries)).collect();
    assert_eq!(counts, [("Creek Road shop".to_owned(), 3), ("house".to_owned(), 2)]);
}

#[test]
fn a_slab_is_found_by_name_id_and_unambiguous_beginning() {
    let (_dir, store) = new_store();
    let shop = id("0190a8f0-7c1e-7b3a-9c51-0d6e3b9a7f10");
    let porch = id("0190a8f1-7c1e-7b3a-9c51-0d6e3b9a7f10");
    let pool = id("7190a8f1-7c1e-7b3a-9c51-0d6e3b9a7f10");
    store.create_slab(shop, "  Éclair shop ").expect("a slab");
    store.create_slab(porch, "Porch").expect("a slab");
    store.create_slab(pool, "Porch, pool side").expect("a slab");
    for (asked, wanted) in [
        ("Éclair shop", shop),
        ("éCLAIR SHOP", shop),
        (" éc", shop),
        ("0190a8f0", shop),
        ("0190A8F0-7C1E-7B3A-9C51-0D6E3B9A7F10", shop),
        ("porch", porch),
        ("porch,", pool),
        ("7", pool),
        ("7190a8f17c1e7b3a9c510d6e3b9a7f10", pool),
    ] {
        assert_eq!(store.find_slab(asked).expect(asked).id, wanted, "{asked}");
    }
    let error = store.find_slab("por").expect_err("two begin so");
    assert!(matches!(&error, StoreError::AmbiguousSlab { matches, .. } if matches.len() == 2), "{error}");
    assert!(error.to_string().contains("Porch, pool side (7190a8f1-"), "{error}");
    for asked in ["barn", "", "  "] {
        let error = store.find_slab(asked).expect_err("not there");
        assert!(matches!(&error, StoreError::NoSuchSlab { there, .. } if there.len() == 3), "{error}");
        assert!(error.to_string().contains("Éclair shop (0190a8f0-"), "{error}");
    }
}

#[test]
fn an_empty_store_says_that_no_slab_was_made() {
    let (_dir, store) = new_store();
    let error = store.find_slab("shop").expect_err("none is there").to_string();
    assert!(error.contains("no slab was made yet"), "{error}");
    let error = store.diary(SlabId::of_name("x")).expect_err("none is there");
    assert!(matches!(error, StoreError::NoSuchSlab { .. }), "{error}");
}

#[test]
fn making_a_slab_again_changes_nothing_and_a_taken_name_is_refused() {
    let (_dir, store) = new_store();
    let (one, two) = (SlabId::of_name("one"), SlabId::of_name("two"));
    assert!(store.create_slab(one, "Ñandú").expect("new"));
    assert!(!store.create_slab(one, "Ñandú").expect("the same again"));
    let error = store.create_slab(two, "ñANDÚ").expect_err("taken");
    assert!(matches!(error, StoreError::SlabNameTaken { by, .. } if by == one), "{error}");
    let error = store.create_slab(one, "Porch").expect_err("known under another name");
    assert!(matches!(&error, StoreError::SlabKnownAs { name, .. } if name == "Ñandú"), "{error}");
    assert_eq!(store.slabs().expect("slabs").len(), 1);
}

#[test]
fn names_that_cannot_be_are_refused() {
    let (_dir, store) = new_store();
    let slab = SlabId::of_name("x");
    let too_long = "a".repeat(MAX_NAME_LETTERS + 1);
    for name in ["", " \t ", "two\nlines", "0190a8f0-7c1e-7b3a-9c51-0d6e3b9a7f10", &too_long] {
        let error = store.create_slab(slab, name).expect_err(name);
        assert!(matches!(error, StoreError::SlabName { .. }), "{error}");
    }
    assert!(store.slabs().expect("slabs").is_empty());
    store.create_slab(slab, &"é".repeat(MAX_NAME_LETTERS)).expect("letters count, not bytes");
}
