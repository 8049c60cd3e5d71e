//! Photographs: kept by content, before the entries that name them.

use std::fs;
use std::thread;

use slab_diary::{Entry, PhotoHash, SlabId};
use store::{MAX_PHOTOGRAPH_BYTES, StoreError};

use crate::common::{new_store, note, notes, store_with_slab};

fn with_photograph(slab: SlabId, hash: &PhotoHash) -> Entry {
    let mut entry = note(slab, "see the picture");
    entry.photographs.push(hash.clone());
    entry
}

#[test]
fn a_photograph_comes_back_as_it_was_put() {
    let (dir, store) = new_store();
    let bytes: Vec<u8> = (0..100_000_u32).flat_map(u32::to_le_bytes).collect();
    let hash = store.put_photograph(&bytes).expect("kept");
    assert_eq!(store.photograph(&hash).expect("read"), bytes);
    assert_eq!(store.put_photograph(&bytes).expect("again"), hash);
    let files: Vec<_> = fs::read_dir(dir.path().join("photographs")).expect("a folder").collect();
    assert_eq!(files.len(), 1, "{files:?}");
}

#[test]
fn its_name_is_the_published_hash() {
    let (_dir, store) = new_store();
    // Test vectors of the BLAKE3 reference implementation (test_vectors.json, input_len 1 and 1024:
    // bytes 0, 1, …, 250, 0, 1, …), first 32 bytes of output. V2.
    for (length, name) in [
        (1, "2d3adedff11b61f14c886e35afa036736dcd87a74d27b5c1510225d0f592e213"),
        (1024, "42214739f095a406f3fc83deb889744ac00df831c10daa55189b5d121c855af7"),
    ] {
        let bytes: Vec<u8> = (0..=250).cycle().take(length).collect();
        assert_eq!(store.put_photograph(&bytes).expect("kept").as_str(), name);
    }
}

#[test]
fn an_entry_may_only_name_photographs_that_are_there() {
    let (_dir, store, slab) = store_with_slab();
    let hash = PhotoHash::of(b"not put yet");
    let batch = [notes(slab, 0, 2), vec![with_photograph(slab, &hash)]].concat();
    let error = store.append(slab, &batch).expect_err("not there");
    assert!(
        matches!(&error, StoreError::PhotographNotPut { hash: named, entry } if *named == hash && *entry == batch[2].id)
    );
    assert!(error.to_string().contains(hash.as_str()), "{error}");
    assert!(store.diary(slab).expect("a diary").is_empty());
    store.put_photograph(b"not put yet").expect("kept");
    assert_eq!(store.append(slab, &batch).expect("added").added, 3);
}

#[test]
fn a_photograph_that_was_never_put_is_said_to_be_missing() {
    let (_dir, store) = new_store();
    let error = store.photograph(&PhotoHash::of(b"x")).expect_err("missing");
    assert!(matches!(error, StoreError::NoPhotograph(_)), "{error}");
}

#[test]
fn a_damaged_photograph_is_told_and_mended_by_putting_it_again() {
    for damaged in [&b"A picture"[..], b"a pict", b"a picture and more", b""] {
        let (dir, store) = new_store();
        let hash = store.put_photograph(b"a picture").expect("kept");
        fs::write(dir.path().join("photographs").join(hash.as_str()), damaged).expect("damage");
        let error = store.photograph(&hash).expect_err("damaged");
        let bytes = damaged.len() as u64;
        assert!(matches!(error, StoreError::PhotographDamaged { bytes: b, .. } if b == bytes), "{error}");
        assert_eq!(store.put_photograph(b"a picture").expect("mended"), hash);
        assert_eq!(store.photograph(&hash).expect("read"), b"a picture");
    }
}

#[test]
fn size_is_bounded_on_the_way_in_and_out() {
    let (dir, store) = new_store();
    let largest = vec![7; MAX_PHOTOGRAPH_BYTES];
    let hash = store.put_photograph(&largest).expect("just fits");
    for bytes in [vec![7; MAX_PHOTOGRAPH_BYTES + 1], Vec::new()] {
        let error = store.put_photograph(&bytes).expect_err("size");
        assert!(matches!(error, StoreError::PhotographSize { bytes: b } if b == bytes.len()), "{error}");
        assert!(error.to_string().contains("1 to 40000000 bytes"), "{error}");
    }
    let file = fs::OpenOptions::new().write(true).open(dir.path().join("photographs").join(hash.as_str()));
    file.expect("a file").set_len(1 << 40).expect("a sparse file of a terabyte");
    let error = store.photograph(&hash).expect_err("grown");
    assert!(matches!(error, StoreError::PhotographDamaged { bytes, .. } if bytes == 1 << 40), "{error}");
}

#[test]
fn a_leftover_of_a_crash_is_no_hindrance() {
    let (dir, store) = new_store();
    let hash = PhotoHash::of(b"a picture");
    let leftover = dir.path().join("photographs").join(format!("{}.0.part", hash.as_str()));
    fs::write(&leftover, b"a pi").expect("half a file");
    store.put_photograph(b"a picture").expect("kept");
    assert_eq!(store.photograph(&hash).expect("read"), b"a picture");
    assert!(leftover.exists(), "another program may still be writing it");
}

#[test]
fn the_same_photograph_put_from_many_sides_is_kept_once() {
    let (dir, store) = new_store();
    let bytes = vec![3; 500_000];
    thread::scope(|scope| {
        for _ in 0..6 {
            scope.spawn(|| store.put_photograph(&bytes).expect("kept"));
        }
    });
    assert_eq!(store.photograph(&PhotoHash::of(&bytes)).expect("read"), bytes);
    assert_eq!(fs::read_dir(dir.path().join("photographs")).expect("a folder").count(), 1);
}
