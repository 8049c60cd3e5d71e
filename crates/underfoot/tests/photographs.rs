//! Photographs are kept by the hash of their bytes and named in the entry.

#![allow(clippy::unwrap_used, reason = "a test may stop")]

mod common;

use common::{Site, assert_refused, repository};

/// Pictures without a place in them, which are kept as they are, and the BLAKE3 of their bytes as the Python
/// package `blake3` 1.0 tells it.
const GRAY: (&str, &str) = ("gray.jpg", "c91751b01ceb4db1696db7e3ee3d37b6c6305f0d48e2ba019abe991377f570c0");
const CMYK: (&str, &str) = ("cmyk.jpg", "e065512d8e91b106d7a7ce689d65739a42d3e7c6fe9d55427a47a34e7487f0fb");

fn picture(name: &str) -> Vec<u8> {
    std::fs::read(repository("crates/photo/tests/data").join(name)).unwrap()
}

fn put(site: &Site, name: &str) -> String {
    site.file(name, picture(name))
}

#[test]
fn a_photograph_is_stored_under_its_hash_and_the_entry_names_it() {
    let site = Site::with_slab();
    for (name, hash) in [GRAY, CMYK] {
        let photo = put(&site, name);
        site.run(&["log", "slab-photograph", "card=grey_card", "evenness=patchy", "--photo", &photo]).ends(0);
        assert_eq!(std::fs::read(site.path("data/photographs").join(hash)).unwrap(), picture(name), "{name}");
    }
    let told = site.run(&["diary", "--kind", "slab-photograph", "--json"]).ends(0).json_lines();
    let named: Vec<&str> = told.iter().map(|entry| entry["photographs"][0].as_str().unwrap()).collect();
    assert_eq!(named, [GRAY.1, CMYK.1]);
}

#[test]
fn one_entry_may_have_several_and_the_same_file_is_kept_once() {
    let site = Site::with_slab();
    let (one, two) = (put(&site, GRAY.0), put(&site, CMYK.0));
    for text in ["text=first", "text=second"] {
        site.run(&["log", "note", text, "--photo", &one, "--photo", &two]).ends(0);
    }
    assert_eq!(site.photographs(), 2);
    for entry in site.run(&["diary", "--kind", "note", "--json"]).json_lines() {
        assert_eq!(entry["photographs"], serde_json::json!([GRAY.1, CMYK.1]));
    }
}

#[test]
fn a_correction_keeps_the_photographs() {
    let site = Site::with_slab();
    site.run(&["log", "note", "text=crack", "--photo", &put(&site, GRAY.0)]).ends(0);
    let old = site.ids("note")[0].clone();
    site.run(&["fix", &old, "text=crack by the door"]).ends(0);
    let stands = site.run(&["diary", "--kind", "note", "--json"]).json_lines();
    assert_eq!(stands[0]["photographs"], serde_json::json!([GRAY.1]));
}

/// Degrees, minutes and seconds of a latitude as EXIF keeps them: three rationals.
const LATITUDE: [u8; 24] = [0, 0, 0, 41, 0, 0, 0, 1, 0, 0, 0, 53, 0, 0, 0, 1, 0, 0, 0x2f, 0x1d, 0, 0, 0x03, 0xe7];

/// A picture that says where it was taken: an EXIF block with one position, after the start of the file.
fn picture_with_a_place() -> Vec<u8> {
    let mut exif = b"Exif\0\0MM\0*\0\0\0\x08".to_vec();
    // The first directory: one entry, 0x8825, pointing to the position at 26.
    exif.extend([0, 1, 0x88, 0x25, 0, 4, 0, 0, 0, 1, 0, 0, 0, 26, 0, 0, 0, 0]);
    // The position: one entry, 2 (latitude), three rationals at 44.
    exif.extend([0, 1, 0, 2, 0, 5, 0, 0, 0, 3, 0, 0, 0, 44, 0, 0, 0, 0]);
    exif.extend(LATITUDE);
    let length = u16::try_from(exif.len() + 2).unwrap().to_be_bytes();
    let plain = picture(GRAY.0);
    [&plain[..2], &[0xff, 0xe1], &length, &exif, &plain[2..]].concat()
}

#[test]
fn what_is_kept_does_not_say_where_it_was_taken() {
    let holds_place = |bytes: &[u8]| bytes.windows(LATITUDE.len()).any(|part| part == LATITUDE);
    let site = Site::with_slab();
    assert!(holds_place(&picture_with_a_place()));
    let photo = site.file("phone.jpg", picture_with_a_place());
    site.run(&["log", "note", "text=crack", "--photo", &photo]).ends(0);
    let hash = site.run(&["diary", "--kind", "note", "--json"]).json_lines()[0]["photographs"][0].clone();
    let kept = std::fs::read(site.path("data/photographs").join(hash.as_str().unwrap())).unwrap();
    assert!(!holds_place(&kept) && kept.len() > 1000);
    assert!(holds_place(&std::fs::read(&photo).unwrap()), "the person's own file is left alone");
}

#[test]
fn a_photograph_that_is_none_writes_nothing() {
    let site = Site::with_slab();
    let before = (site.entries(), 0);
    let (text, empty) = (site.file("text.jpg", "a text"), site.file("empty.jpg", ""));
    let cut = site.file("cut.jpg", &picture(GRAY.0)[..40]);
    for file in ["gone.jpg", &text, &empty, &cut] {
        let name = file.rsplit('/').next().unwrap();
        assert_refused(&site, site.run(&["log", "note", "text=crack", "--photo", file]), before, 3, &[name]);
    }
}

/// "Nothing was written" holds for the photograph too.
#[test]
fn a_refused_entry_leaves_no_photograph_behind() {
    let site = Site::with_slab();
    let photo = put(&site, GRAY.0);
    site.run(&["log", "note", "text=later", "--happened", "2999-01-01", "--photo", &photo]).ends(3);
    assert_eq!(site.photographs(), 0);
}
