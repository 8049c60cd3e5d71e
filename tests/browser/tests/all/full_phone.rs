//! A phone whose browser refuses to keep more: it says so at once, and nothing typed and no photograph is lost.

use std::path::PathBuf;

use browser_tests::{CLOCK, Reading, Server, Site, Tab, Visit, repository};
use serde_json::json;

use crate::offline::{ready_for_offline, waiting};

/// A photograph with so many bytes of comment that it has sixteen megabytes.
fn large_photograph(site: &Site) -> PathBuf {
    let small = std::fs::read(repository("crates/photo/tests/data/progressive.jpg")).unwrap();
    let (begin, rest) = small.split_at(2);
    let mut large = begin.to_vec();
    for _ in 0..250 {
        large.extend([0xff, 0xfe, 0xff, 0xff]);
        large.extend([b' '; 0xffff - 2]);
    }
    large.extend(rest);
    let path = site.path("large.jpg");
    std::fs::write(&path, large).unwrap();
    path
}

/// From now on the browser keeps at most so many bytes of these pages.
fn has_room_for(tab: &Tab, server: &Server, bytes: u64) {
    let origin = server.url("");
    tab.cdp("Storage.overrideQuotaForOrigin", json!({ "origin": origin, "quotaSize": bytes }));
}

#[test]
fn a_photograph_is_not_lost_on_a_full_phone() {
    let site = Site::with_slab();
    let server = site.serve();
    let (slab, port) = (site.slab(), server.port);
    let visit = Visit::within(120);
    let tab = visit.tab(Reading::PHONE);
    // All pages, and not the photograph.
    has_room_for(&tab, &server, 12_000_000);
    ready_for_offline(&tab, &server, &slab);
    tab.go(&server, &format!("/slab/{slab}/add/slab_photograph"));
    tab.choose("place_kind", "zone:office");
    tab.photograph(&[&large_photograph(&site)]);
    // At once, not only when it is too late.
    tab.until_true("document.querySelector('[data-unsaved]')?.hidden === false");
    let away = Server::stopped_at(port);
    drop(server);
    tab.eval("window.stays = true");
    tab.tap(".send button");
    tab.until_true("document.querySelector('[data-mistakes]')?.innerText.includes('no room to keep the entry')");
    assert!(tab.is("window.stays === true"), "the page is still the same one");
    assert_eq!(tab.eval("document.querySelector('[data-photo]').files.length"), 1);
    assert_eq!(tab.eval("document.querySelectorAll('.photographs img').length"), 1);
    assert_eq!(waiting(&tab), 0);
    assert!(tab.is("!document.querySelector('.send button').disabled"), "it can be pressed again");
    drop(away);

    let server = site.serve_at(port, &["--clock", CLOCK]);
    tab.tap_to(".send button");
    assert_eq!((site.count("slab_photograph"), site.photographs()), (1, 1), "{}", tab.seen());
    drop(server);
}

#[test]
fn a_phone_without_room_for_the_pages_says_which_are_missing() {
    let site = Site::with_slab();
    let server = site.serve();
    let slab = site.slab();
    let visit = Visit::within(120);
    let tab = visit.tab(Reading::PHONE);
    tab.go(&server, "/");
    tab.until_true("navigator.serviceWorker.ready.then(() => navigator.serviceWorker.controller !== null)");
    tab.until_true("caches.open('pages').then((pages) => pages.match('/glossary')).then(Boolean)");
    has_room_for(&tab, &server, 1);
    tab.go(&server, &format!("/slab/{slab}"));
    tab.until_true("document.querySelector('[data-keeping=state]').dataset.says === 'script-no-room-pages'");
    let said = tab.text("document.querySelector('[data-keeping=state]').textContent");
    assert!(said.contains("no room") && said.contains("Plan"), "{said}");
    drop(server);
}
