//! Without a connection: what is written waits on the phone and arrives exactly once.
//!
//! The server is stopped, not the browser's network switched off: that switch does not reach what a
//! service worker fetches.

use browser_tests::{CLOCK, Reading, Server, Site, Tab, Visit, repository};

/// Opens the slab and waits until the phone has all it needs to do without a connection.
pub(crate) fn ready_for_offline(tab: &Tab, server: &Server, slab: &str) {
    tab.go(server, &format!("/slab/{slab}"));
    tab.until_true("navigator.serviceWorker.ready.then(() => true)");
    // A page that was under way when the worker took over belongs to it only when it is opened again.
    if !tab.is("navigator.serviceWorker.controller !== null") {
        tab.reload();
    }
    tab.until_true("navigator.serviceWorker.controller !== null");
    tab.until_true(
        "caches.open('pages').then((pages) => pages.keys()).then((kept) => {
           const paths = kept.map((request) => new URL(request.url).pathname);
           return JSON.parse(document.body.dataset.keep).every(([path]) => paths.includes(path.split('?')[0])); })",
    );
}

/// How many wait on the phone, whoever wrote them.
pub(crate) fn waiting(tab: &Tab) -> u64 {
    tab.eval("self.underfootOutbox.all().then((all) => all.length)").as_u64().unwrap()
}

/// The number that the box shows.
#[track_caller]
pub(crate) fn box_says(tab: &Tab, number: u64) {
    tab.until_true(&format!(
        "!document.querySelector('[data-outbox]').hidden &&
         document.querySelector('[data-outbox] .count').textContent.match(/\\d+/)?.[0] === '{number}' &&
         document.querySelectorAll('[data-outbox] li[data-state]').length === {number}"
    ));
}

fn write_offline(tab: &Tab, server: &Server, slab: &str) {
    let form = |kind: &str| {
        tab.go(server, &format!("/slab/{slab}/add/{kind}"));
        // The strips at the top come a moment later and move the page.
        tab.until_true("!document.querySelector('[data-kept]').hidden");
        let box_is_right = "self.underfootOutbox.all().then((all) => \
            document.querySelectorAll('[data-outbox] li[data-state]').length === all.length)";
        tab.until_true(box_is_right);
    };
    form("water_drop");
    tab.choose("place_kind", "zone:shop");
    tab.tap_to("button[name='preset'][value='soaked_15_s']");
    box_says(tab, 1);
    assert!(tab.sees("[data-kept]"), "it says that the page is a kept one: {}", tab.seen());
    form("scrape");
    tab.tap_to("button[name='preset'][value='powder']");
    form("acid_drop");
    tab.choose("place_kind", "zone:office");
    tab.tap_to("button[name='preset'][value='strong']");
    box_says(tab, 3);
    form("air_reading");
    tab.fill("[name='air']", "68 F");
    tab.fill("[name='humidity']", "45 %");
    // In the middle of typing the phone loads the page again.
    tab.reload();
    assert_eq!(tab.value("[name='humidity']"), "45 %");
    tab.tap_to(".send button");
    form("note");
    tab.fill("[name='text']", "sin señal, todo se queda en el teléfono");
    tab.tap_to(".send button");
    box_says(tab, 5);
    for photograph in ["progressive.jpg", "restarts.jpg"] {
        form("slab_photograph");
        tab.photograph(&[&repository(&format!("crates/photo/tests/data/{photograph}"))]);
        tab.until_true("document.querySelectorAll('.photographs img').length === 1");
        tab.tap_to(".send button");
    }
}

#[test]
fn five_entries_and_two_photographs_arrive_exactly_once() {
    let site = Site::with_slab();
    let server = site.serve();
    let (slab, port) = (site.slab(), server.port);
    let before = site.diary().len();
    let visit = Visit::within(120);
    let tab = visit.tab(Reading::PHONE);
    ready_for_offline(&tab, &server, &slab);
    let away = Server::stopped_at(port);
    drop(server);

    write_offline(&tab, &away, &slab);
    box_says(&tab, 7);
    tab.reload();
    box_says(&tab, 7);
    tab.go(&away, &format!("/slab/{slab}"));
    box_says(&tab, 7);
    // Kept to send them a second time later on.
    tab.eval("self.underfootOutbox.all().then((all) => { window.again = all; })");
    tab.tap("[data-outbox] button:not([hidden])");
    tab.until_true("document.querySelector('[data-outbox] [role=status]').textContent.length > 10");
    assert_eq!(waiting(&tab), 7, "nobody answered, so all of it still waits");

    let server = site.serve_at(port, &["--clock", CLOCK]);
    tab.tap("[data-outbox] button:not([hidden])");
    tab.until_true("self.underfootOutbox.all().then((all) => all.length === 0)");
    tab.until_true("document.querySelectorAll('[data-outbox] li').length === 0");
    assert_eq!(site.diary().len(), before + 7);
    for kind in ["water_drop", "scrape", "acid_drop", "air_reading", "note"] {
        assert_eq!(site.count(kind), 1, "{kind}");
    }
    assert_eq!(site.count("slab_photograph"), 2);
    assert_eq!(site.photographs(), 2);

    // The phone never heard the answer and sends everything again.
    tab.eval("Promise.all(window.again.map((record) => self.underfootOutbox.put(record))).then(() => self.underfootOutbox.sendAll())");
    assert_eq!(waiting(&tab), 0);
    assert_eq!(site.diary().len(), before + 7, "a second sending adds nothing");
    assert_eq!(site.photographs(), 2);
    drop(server);
}

#[test]
fn two_tabs_send_what_waits_once() {
    let site = Site::with_slab();
    let server = site.serve();
    let (slab, port) = (site.slab(), server.port);
    let visit = Visit::within(120);
    let (one, other) = (visit.tab(Reading::PHONE), visit.tab(Reading::PHONE));
    ready_for_offline(&one, &server, &slab);
    other.go(&server, &format!("/slab/{slab}/diary"));
    let away = Server::stopped_at(port);
    drop(server);
    one.go(&away, &format!("/slab/{slab}/add/water_drop"));
    one.choose("place_kind", "zone:shop");
    one.tap_to("button[name='preset'][value='soaked_15_s']");
    other.go(&away, &format!("/slab/{slab}/add/scrape"));
    other.choose("place_kind", "zone:office");
    other.tap_to("button[name='preset'][value='curl']");
    box_says(&one, 2);
    box_says(&other, 2);
    let server = site.serve_at(port, &["--clock", CLOCK]);
    // Both at once: each begins before the other has answered.
    one.eval("self.underfootOutbox.sendAll(); 0");
    other.eval("self.underfootOutbox.sendAll(); 0");
    for tab in [&one, &other] {
        tab.until_true("document.querySelectorAll('[data-outbox] li').length === 0");
    }
    assert_eq!((site.count("water_drop"), site.count("scrape")), (1, 1));
    drop(server);
}
