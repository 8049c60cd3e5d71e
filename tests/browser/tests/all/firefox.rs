//! The main walk in a second engine: the answer, an entry by one tap and one typed, the plan, a photograph, Spanish,
//! and a day without a connection.

use browser_tests::{CLOCK, Firefox, Site, repository};

#[test]
fn the_main_walk_in_firefox() {
    let site = Site::with_slab();
    let server = site.serve();
    let (slab, port) = (site.slab(), server.port);
    let firefox = Firefox::within(150);
    let page = |path: &str| format!("http://127.0.0.1:{port}/slab/{slab}{path}");

    // From the list to the answer.
    firefox.go(&format!("http://127.0.0.1:{port}/"));
    firefox.tap_to(".slabs li > a");
    firefox.until_true("document.querySelectorAll('.ledger li').length === 11");

    // One tap, after the zone: the confirmation says what and where.
    firefox.go(&page("/add/water_drop"));
    firefox.tap("label.chip:has([value='zone:shop'])");
    firefox.tap_to("button[name='preset'][value='soaked_15_s']");
    firefox.until_true("document.querySelector('[data-said-here]')?.textContent.includes('shop')");
    assert_eq!(site.count("water_drop"), 1);

    // A tap on the plan sets a drop with its clock.
    firefox.go(&page("/drops"));
    firefox.until_true("!document.querySelector('[data-drops]').hidden");
    let at = firefox.eval(
        "(() => { const svg = document.querySelector('[data-plan] svg'); svg.scrollIntoView({ block: 'center' });
           const [x0, y0, m] = [svg.dataset.x0, svg.dataset.y0, svg.dataset.m].map(Number);
           const point = new DOMPoint((10 * 0.3048 - x0) / m, (y0 - 20 * 0.3048) / m).matrixTransform(svg.getScreenCTM());
           return [point.x, point.y]; })()",
    );
    firefox.tap_at(at[0].as_f64().unwrap(), at[1].as_f64().unwrap());
    firefox.until_true("document.querySelectorAll('[data-drops-list] li').length === 1");
    firefox.until_true("/0:0[1-9]/.test(document.querySelector('[data-drops-list] output').textContent)");
    firefox.tap("[data-drops-list] li button:nth-child(3)");
    firefox.until_true("self.underfootOutbox.all().then((all) => all.length === 0)");
    firefox.until_true("document.querySelectorAll('[data-drops-list] li').length === 0");
    assert_eq!(site.count("water_drop"), 2);

    // A photograph.
    firefox.go(&page("/add/slab_photograph"));
    firefox.choose_file("[data-photo]", &repository("crates/photo/tests/data/progressive.jpg"));
    firefox.until_true("document.querySelectorAll('.photographs img').length === 1");
    firefox.tap_to(".send button");
    assert_eq!((site.count("slab_photograph"), site.photographs() >= 1), (1, true));

    // The other language, from the head of the page.
    firefox.tap_to("button[name='lang']");
    firefox.until_true("document.documentElement.lang.startsWith('es')");

    // Without a connection what is typed waits, and arrives once.
    firefox.go(&page(""));
    firefox.until_true("navigator.serviceWorker.ready.then(() => true)");
    if firefox.eval("navigator.serviceWorker.controller === null") == true {
        firefox.go(&page(""));
    }
    firefox.until_true(
        "caches.open('pages').then((pages) => pages.keys()).then((kept) => {
           const paths = kept.map((request) => new URL(request.url).pathname);
           return JSON.parse(document.body.dataset.keep).every(([path]) => paths.includes(path.split('?')[0])); })",
    );
    drop(server);
    firefox.go(&page("/add/note"));
    firefox.until_true("!document.querySelector('[data-kept]').hidden");
    firefox.type_into("[name='text']", "sin señal");
    firefox.tap_to(".send button");
    firefox.until_true("self.underfootOutbox.all().then((all) => all.length === 1)");
    let _server = site.serve_at(port, &["--clock", CLOCK]);
    firefox.tap("[data-outbox] button:not([hidden])");
    firefox.until_true("self.underfootOutbox.all().then((all) => all.length === 0)");
    assert_eq!(site.count("note"), 1);
    let note = site.diary().into_iter().find(|entry| entry["body"]["kind"] == "note").unwrap();
    assert_eq!(note["body"]["text"], "sin señal");
}
