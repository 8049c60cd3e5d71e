//! Photographs are kept by the hash of their bytes, without the place, and named in the entry.

#![allow(clippy::unwrap_used, reason = "a test may stop")]

mod common;

use common::{Site, assert_refused, repository};
use slab_diary::PhotoHash;

/// Pictures with texts in them that must not be kept; see `make.py` beside them.
const PICTURES: [&str; 3] = ["gray.jpg", "cmyk.jpg", "texts.png"];

fn picture(name: &str) -> Vec<u8> {
    std::fs::read(repository("crates/photo/tests/data").join(name)).unwrap()
}

fn put(site: &Site, name: &str) -> String {
    site.file(name, picture(name))
}

/// Hashes that the entries of a kind name, and the bytes kept under each.
fn kept(site: &Site, kind: &str) -> Vec<(String, Vec<u8>)> {
    let told = site.run(&["diary", "--kind", kind, "--json"]).ends(0).json_lines();
    let hashes = told.iter().flat_map(|entry| entry["photographs"].as_array().unwrap().clone());
    hashes
        .map(|hash| {
            let hash = hash.as_str().unwrap().to_owned();
            let bytes = std::fs::read(site.path("data/photographs").join(&hash)).unwrap();
            (hash, bytes)
        })
        .collect()
}

fn holds(bytes: &[u8], word: &[u8]) -> bool {
    bytes.windows(word.len()).any(|part| part == word)
}

/// BLAKE3 of the bytes i mod 251, by length, from the function's published test vectors (M; the last was made
/// again with the Python package `blake3` 1.0.11).
#[test]
fn the_hash_is_blake3() {
    for (length, hash) in [
        (0, "af1349b9f5f9a1a6a0404dea36dcc9499bcb25c9adc112b7cc9a93cae41f3262"),
        (1, "2d3adedff11b61f14c886e35afa036736dcd87a74d27b5c1510225d0f592e213"),
        (1024, "42214739f095a406f3fc83deb889744ac00df831c10daa55189b5d121c855af7"),
    ] {
        let bytes: Vec<u8> = (0..length).map(|i| (i % 251) as u8).collect();
        assert_eq!(PhotoHash::of(&bytes).as_str(), hash, "{length} bytes");
    }
}

#[test]
fn a_photograph_is_stored_under_the_hash_of_what_is_kept_and_the_entry_names_it() {
    let site = Site::with_slab();
    for name in PICTURES {
        site.run(&["log", "slab-photograph", "card=gray_card", "evenness=patchy", "--photo", &put(&site, name)])
            .ends(0);
    }
    let kept = kept(&site, "slab-photograph");
    assert_eq!((kept.len(), site.photographs()), (PICTURES.len(), PICTURES.len()));
    for (hash, bytes) in kept {
        assert_eq!(hash, PhotoHash::of(&bytes).as_str());
        assert!(bytes.starts_with(b"\xff\xd8") || bytes.starts_with(b"\x89PNG"), "still a picture");
    }
}

/// Position, captions and maker's notes are not kept; the person's own file is left alone.
#[test]
fn what_is_kept_does_not_say_where_it_was_taken() {
    let site = Site::with_slab();
    for name in PICTURES {
        let photo = put(&site, name);
        assert!(holds(&picture(name), b"SECRET"), "{name} has something to lose");
        site.run(&["log", "note", "text=crack", "--photo", &photo]).ends(0);
        assert_eq!(std::fs::read(&photo).unwrap(), picture(name));
    }
    assert!(kept(&site, "note").iter().all(|(_, bytes)| !holds(bytes, b"SECRET")));
}

#[test]
fn one_entry_may_have_several_and_the_same_picture_is_kept_once() {
    let site = Site::with_slab();
    let (one, two) = (put(&site, PICTURES[0]), put(&site, PICTURES[1]));
    for text in ["text=first", "text=second"] {
        site.run(&["log", "note", text, "--photo", &one, "--photo", &two]).ends(0);
    }
    assert_eq!(site.photographs(), 2);
    let kept = kept(&site, "note");
    assert_eq!(kept[..2], kept[2..], "both entries name both");
    // What was kept once is the same when it is put in again.
    let again = site.file("again.jpg", &kept[0].1);
    site.run(&["log", "note", "text=third", "--photo", &again]).ends(0);
    assert_eq!(site.photographs(), 2);
}

#[test]
fn a_correction_keeps_the_photographs() {
    let site = Site::with_slab();
    site.run(&["log", "note", "text=crack", "--photo", &put(&site, PICTURES[0])]).ends(0);
    let before = kept(&site, "note");
    let old = site.ids("note")[0].clone();
    site.run(&["fix", &old, "text=crack by the door"]).ends(0);
    assert_eq!(kept(&site, "note"), before);
}

#[test]
fn a_file_that_is_no_photograph_writes_nothing() {
    let site = Site::with_slab();
    let before = (site.entries(), 0);
    let (text, empty) = (site.file("text.jpg", "a text"), site.file("empty.jpg", ""));
    let cut = site.file("cut.jpg", &picture(PICTURES[0])[..40]);
    for file in ["gone.jpg", &text, &empty, &cut] {
        let name = file.rsplit('/').next().unwrap();
        assert_refused(&site, site.run(&["log", "note", "text=crack", "--photo", file]), before, 3, &[name]);
    }
}

/// "Nothing was written" holds for the photograph too.
#[test]
fn a_refused_entry_leaves_no_photograph_behind() {
    let site = Site::with_slab();
    let photo = put(&site, PICTURES[0]);
    site.run(&["log", "note", "text=later", "--happened", "2999-01-01", "--photo", &photo]).ends(3);
    assert_eq!(site.photographs(), 0);
}
