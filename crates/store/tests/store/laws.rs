//! Laws of the diary that the store must not break.

use proptest::collection::vec;
use proptest::prelude::*;
use slab_diary::{Diary, Entry, SlabId};
use store::Store;

use crate::common::{from_newer_program, note, one_of_every_kind, store_with_slab};

/// Entries of every kind, notes of any letters, and one that a newer program wrote.
fn entries(texts: &[String]) -> Vec<Entry> {
    let slab = SlabId::of_name("shop");
    let mut entries = one_of_every_kind(slab);
    entries.extend(texts.iter().enumerate().map(|(n, text)| note(slab, &format!("{n} {text}"))));
    entries.push(from_newer_program(slab, "{\"kind\": \"later\",  \"n\": 1.0}"));
    entries
}

proptest! {
    // Every case waits for the disk a few times.
    #![proptest_config(ProptestConfig { cases: 24, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn replaying_in_any_order_and_any_batches_gives_the_same_diary(
        texts in vec(any::<String>(), 0..6),
        keys in vec(any::<u32>(), 128),
        again in vec(any::<prop::sample::Index>(), 0..6),
        batch in 1_usize..60,
    ) {
        let entries = entries(&texts);
        prop_assert!(entries.len() <= keys.len(), "more examples than keys");
        let wanted: Diary = entries.iter().cloned().collect();
        let mut shuffled: Vec<Entry> = entries.clone();
        shuffled.extend(again.iter().map(|index| index.get(&entries).clone()));
        let mut order: Vec<usize> = (0..shuffled.len()).collect();
        order.sort_by_key(|&n| keys[n % keys.len()]);

        let (dir, store, slab) = store_with_slab();
        let mut added = 0;
        for part in order.chunks(batch) {
            let part: Vec<Entry> = part.iter().map(|&n| shuffled[n].clone()).collect();
            added += store.append(slab, &part).expect("added").added;
        }
        prop_assert_eq!(added, entries.len() as u64);
        let kept = store.diary(slab).expect("a diary");
        prop_assert_eq!(&kept, &wanted);
        let letters = |diary: &Diary| diary.entries().map(Entry::to_json).collect::<Vec<_>>();
        prop_assert_eq!(letters(&kept), letters(&wanted));
        drop(store);
        prop_assert_eq!(Store::open(dir.path()).expect("it opens").diary(slab).expect("a diary"), wanted);
    }

    #[test]
    fn a_photograph_of_any_bytes_comes_back(bytes in vec(any::<u8>(), 1..5000)) {
        let (_dir, store, _) = store_with_slab();
        let hash = store.put_photograph(&bytes).expect("kept");
        prop_assert_eq!(store.photograph(&hash).expect("read"), bytes);
    }
}
