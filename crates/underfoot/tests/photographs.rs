//! Photographs are kept by the hash of their bytes and named in the entry.

#![allow(clippy::unwrap_used, reason = "a test may stop")]

mod common;

use common::Site;

/// BLAKE3 of the bytes i mod 251, by length: from the function's published test vectors (M, from memory;
/// a wrong memory would not match).
const VECTORS: [(usize, &str); 3] = [
    (0, "af1349b9f5f9a1a6a0404dea36dcc9499bcb25c9adc112b7cc9a93cae41f3262"),
    (1, "2d3adedff11b61f14c886e35afa036736dcd87a74d27b5c1510225d0f592e213"),
    (1024, "42214739f095a406f3fc83deb889744ac00df831c10daa55189b5d121c855af7"),
];

fn bytes(length: usize) -> Vec<u8> {
    (0..length).map(|i| (i % 251) as u8).collect()
}

#[test]
fn a_photograph_is_stored_under_its_hash_and_the_entry_names_it() {
    let site = Site::with_slab();
    for (length, hash) in &VECTORS[1..] {
        let photo = site.file("photo.jpg", bytes(*length));
        site.run(&["log", "slab-photograph", "card=grey_card", "evenness=patchy", "--photo", &photo]).ends(0);
        assert_eq!(std::fs::read(site.path("data/photographs").join(hash)).unwrap(), bytes(*length), "{hash}");
    }
    let told = site.run(&["diary", "--kind", "slab-photograph", "--json"]).ends(0).json_lines();
    let named: Vec<&str> = told.iter().map(|entry| entry["photographs"][0].as_str().unwrap()).collect();
    assert_eq!(named, [VECTORS[1].1, VECTORS[2].1]);
}

#[test]
fn one_entry_may_have_several_and_the_same_file_is_kept_once() {
    let site = Site::with_slab();
    let (one, two) = (site.file("1.jpg", bytes(1)), site.file("2.jpg", bytes(1024)));
    for text in ["text=first", "text=second"] {
        site.run(&["log", "note", text, "--photo", &one, "--photo", &two]).ends(0);
    }
    assert_eq!(site.photographs(), 2);
    for entry in site.run(&["diary", "--kind", "note", "--json"]).json_lines() {
        assert_eq!(entry["photographs"], serde_json::json!([VECTORS[1].1, VECTORS[2].1]));
    }
}

#[test]
fn a_correction_keeps_the_photographs() {
    let site = Site::with_slab();
    site.run(&["log", "note", "text=crack", "--photo", &site.file("1.jpg", bytes(1))]).ends(0);
    let old = site.ids("note")[0].clone();
    site.run(&["fix", &old, "text=crack by the door"]).ends(0);
    let stands = site.run(&["diary", "--kind", "note", "--json"]).json_lines();
    assert_eq!(stands[0]["photographs"], serde_json::json!([VECTORS[1].1]));
}

#[test]
fn a_photograph_that_is_not_there_writes_nothing() {
    let site = Site::with_slab();
    let before = site.entries();
    let refused = site.run(&["log", "note", "text=crack", "--photo", "gone.jpg"]).ends(3);
    assert!(refused.err.contains("gone.jpg") && refused.err.contains("accepted"), "{}", refused.err);
    assert_eq!((site.entries(), site.photographs()), (before, 0));
}

/// "Nothing was written" holds for the photograph too.
#[test]
fn a_refused_entry_leaves_no_photograph_behind() {
    let site = Site::with_slab();
    let photo = site.file("1.jpg", bytes(1));
    site.run(&["log", "note", "text=later", "--happened", "2999-01-01", "--photo", &photo]).ends(3);
    assert_eq!(site.photographs(), 0);
}
