//! Nothing typed is lost: by a reload, by a mistake, by a server that is away.

use browser_tests::{Reading, Server, Site, Tab, Visit, repository};

fn phone(server: &Server, path: &str) -> Tab {
    let tab = Visit::within(60).tab(Reading::PHONE);
    tab.go(server, path);
    tab
}

#[test]
fn a_reload_brings_back_texts_choices_and_photographs() {
    let site = Site::with_slab();
    let server = site.serve();
    let tab = phone(&server, &format!("/slab/{}/add/incident", site.slab()));
    tab.select("what", "cutting-oil");
    tab.reload();
    assert_eq!(tab.value("[name='what']"), "cutting-oil", "after the first choice");
    tab.fill("[name='note']", "mañana temprano, junto a la puerta");
    tab.choose("place_kind", "zone:shop");
    tab.reload();
    assert_eq!(tab.value("[name='note']"), "mañana temprano, junto a la puerta");
    assert!(tab.is("document.querySelector('[name=place_kind][value=\"zone:shop\"]').checked"));
    tab.photograph(&[&repository("crates/photo/tests/data/restarts.jpg")]);
    tab.until_true("document.querySelectorAll('.photographs img').length === 1");
    // The copy on the phone is made in the background; it is there before a person can go on.
    tab.until_true("self.underfootOutbox.drafts.get(`${document.body.dataset.writer}:${document.querySelector('[data-draft]').dataset.draft}`).then((kept) => kept?.files.length === 1)");
    let id = tab.value("[name='entry']");
    tab.reload();
    assert!(tab.sees("[data-restored]"), "it says that it was restored");
    tab.until_true("document.querySelectorAll('.photographs img').length === 1");
    assert_eq!(tab.value("[name='entry']"), id, "and it is still the same entry");
    assert_eq!(tab.value("[name='what']"), "cutting-oil");
    tab.tap_to(".send button");
    let diary = site.diary();
    let entry = diary.iter().find(|e| e["body"]["kind"] == "incident").expect("it is in the diary");
    assert_eq!(entry["body"]["note"], "mañana temprano, junto a la puerta");
    assert_eq!(entry["place"]["zone"], "shop", "{entry}");
    assert_eq!(entry["photographs"].as_array().unwrap().len(), 1, "{entry}");
    tab.go(&server, &format!("/slab/{}/add/incident", site.slab()));
    assert_eq!(tab.value("[name='note']"), "", "the next one begins empty");
}

#[test]
fn a_reload_brings_back_a_slab_that_is_being_opened() {
    let site = Site::empty();
    let server = site.serve();
    let tab = phone(&server, "/new");
    tab.fill("[name='name']", "Nave 3, Cañada");
    tab.fill("[name='site']", "Lot 4");
    tab.reload();
    assert_eq!(tab.value("[name='name']"), "Nave 3, Cañada");
    assert_eq!(tab.value("[name='site']"), "Lot 4");
    tab.tap("[data-restored] button");
    tab.until_true("document.querySelector('[name=name]').value === '' && document.querySelector('form[data-draft]').dataset.ready === 'yes'");
    tab.reload();
    assert_eq!(tab.value("[name='name']"), "", "started afresh stays afresh");
}

#[test]
fn a_wrong_number_is_told_beside_its_field() {
    let site = Site::with_slab();
    let server = site.serve();
    let tab = phone(&server, &format!("/slab/{}/add/air_reading", site.slab()));
    tab.fill("[name='air']", "warm");
    tab.fill("[name='humidity']", "45 %");
    tab.tap(".send button");
    tab.until_true("document.querySelector('[data-mistake-for=air]:not([hidden])')?.textContent.length > 5");
    assert!(tab.is("document.activeElement.matches('[data-mistakes]')"), "the summary is read out first");
    assert!(tab.is("document.querySelector('[name=air]').getAttribute('aria-invalid') === 'true'"));
    assert_eq!(tab.value("[name='air']"), "warm");
    assert_eq!(tab.value("[name='humidity']"), "45 %");
    tab.reload();
    assert_eq!(tab.value("[name='humidity']"), "45 %", "kept over a reload after the mistake too");
    tab.fill("[name='air']", "68 F");
    tab.tap_to(".send button");
    assert_eq!(site.count("air_reading"), 1);
}

#[test]
fn without_script_the_page_with_the_mistake_has_all_that_was_typed() {
    let site = Site::with_slab();
    let server = site.serve();
    let tab = Visit::within(60).tab(Reading::PHONE.without_script());
    tab.go(&server, &format!("/slab/{}/add/air_reading", site.slab()));
    tab.fill("[name='air']", "tibio");
    tab.fill("[name='humidity']", "45 %");
    tab.tap_to(".send button");
    assert!(tab.is("document.querySelector('#mistake-air').textContent.trim().length > 5"), "{}", tab.seen());
    assert_eq!(tab.value("[name='air']"), "tibio");
    assert_eq!(tab.value("[name='humidity']"), "45 %");
    tab.fill("[name='air']", "68 F");
    tab.tap_to(".send button");
    assert_eq!(site.count("air_reading"), 1, "{}", tab.seen());
}

/// The connection breaks while the form is open, before any worker could keep pages.
#[test]
fn a_server_that_is_away_takes_nothing_with_it() {
    let site = Site::with_slab();
    let server = site.serve();
    let (port, slab) = (server.port, site.slab());
    let tab = phone(&server, &format!("/slab/{slab}/add/note"));
    tab.fill("[name='text']", "owner comes on Friday");
    drop(server);
    tab.tap(".send button");
    tab.until_true("self.underfootOutbox.all().then((all) => all.length === 1)");
    let server = site.serve_at(port, &["--clock", browser_tests::CLOCK]);
    tab.go(&server, &format!("/slab/{slab}"));
    tab.until_true("self.underfootOutbox.all().then((all) => all.length === 0)");
    assert_eq!(site.count("note"), 1);
}
