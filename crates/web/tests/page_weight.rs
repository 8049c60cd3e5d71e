//! What a phone loads over a weak signal before it can show a page for the first time. The parts of a page are
//! fetched afterwards; what they weigh on each page is held by the browser tests of the design.

#![allow(clippy::unwrap_used, reason = "a test may stop")]

mod common;

use std::collections::BTreeSet;

use axum::body::Body;
use axum::http::Request;
use axum::http::header::{ACCEPT_ENCODING, HOST};

use common::Site;

/// Style and script together, as they travel.
const MOST_BYTES: usize = 30_000;

/// A file of the site, as it travels.
fn sent(site: &Site, path: &str, how: &str) -> Vec<u8> {
    let request = Request::get(path).header(HOST, "localhost").header(ACCEPT_ENCODING, how);
    let got = site.send(request.body(Body::empty()).unwrap()).ends(200);
    assert_eq!(got.header("content-encoding"), if how == "gzip" { "gzip" } else { "" }, "{path}");
    got.bytes.to_vec()
}

/// What stands between `before` and the next quotation mark.
fn quoted<'t>(text: &'t str, before: &str) -> Vec<&'t str> {
    text.split(before).skip(1).map(|rest| rest.split('"').next().unwrap()).collect()
}

/// The address of a script and those of all that it imports.
fn with_imports(site: &Site, path: String, found: &mut BTreeSet<String>) {
    if !found.insert(path.clone()) {
        return;
    }
    let text = String::from_utf8(sent(site, &path, "identity")).unwrap();
    let folder = path.rsplit_once('/').unwrap().0;
    for name in quoted(&text, "from \"./").into_iter().chain(quoted(&text, "import \"./")) {
        with_imports(site, format!("{folder}/{name}"), found);
    }
}

#[test]
fn style_and_script_are_less_than_thirty_kilobytes() {
    let site = Site::empty();
    let page = site.get("/").text();
    let mut files = BTreeSet::new();
    for script in quoted(&page, "<script type=\"module\" src=\"") {
        with_imports(&site, script.to_owned(), &mut files);
    }
    assert!(files.len() >= 3, "what the entry module imports is found: {files:?}");
    files.extend(quoted(&page, "<link rel=\"stylesheet\" href=\"").into_iter().map(str::to_owned));
    let sizes: Vec<(usize, &str)> = files.iter().map(|file| (sent(&site, file, "gzip").len(), file.as_str())).collect();
    let all: usize = sizes.iter().map(|(size, _)| size).sum();
    assert!(all < MOST_BYTES, "{all} bytes: {sizes:#?}");
    println!("{all} bytes of {} files", files.len());
}
