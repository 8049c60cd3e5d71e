//! Before a person goes to a site without signal: everything needed there comes onto the phone by itself, and the
//! phone says so, or says what is missing.

use browser_tests::{CLOCK, Reading, Server, Site, Tab, Visit};

/// Waits until the slab's page says how it stands, in this way.
#[track_caller]
fn it_says(tab: &Tab, key: &str) {
    tab.until_true(&format!("document.querySelector('[data-keeping=state]')?.dataset.says === '{key}'"));
}

fn links(tab: &Tab) -> Vec<String> {
    let found = tab.eval("[...document.querySelectorAll('.kinds a')].map((link) => link.getAttribute('href'))");
    found.as_array().unwrap().iter().map(|link| link.as_str().unwrap().to_owned()).collect()
}

#[test]
fn every_form_and_every_sum_is_there_without_signal() {
    let site = Site::with_slab();
    let server = site.serve();
    let (slab, port) = (site.slab(), server.port);
    let visit = Visit::within(240);
    let tab = visit.tab(Reading::PHONE);
    // The first page of all, and no other.
    tab.go(&server, &format!("/slab/{slab}"));
    it_says(&tab, "script-all-kept");
    assert!(tab.seen().contains("All forms of this slab are on this phone"), "{}", tab.seen());
    let away = Server::stopped_at(port);
    drop(server);
    tab.go(&away, &format!("/slab/{slab}/add"));
    it_says(&tab, "script-all-kept");
    // A file of air readings is read by the server.
    let forms: Vec<String> = links(&tab).into_iter().filter(|link| !link.ends_with("/air-record")).collect();
    assert!(forms.len() > 40, "{forms:?}");
    for form in forms {
        tab.go(&away, &form);
        assert!(tab.sees("form[data-entry]"), "{form}: {}", tab.seen());
    }
    tab.go(&away, "/sums");
    let sums = links(&tab);
    assert!(sums.len() > 10, "{sums:?}");
    for sum in sums {
        tab.go(&away, &sum);
        assert!(tab.sees("form[data-sum=blank]"), "{sum}: {}", tab.seen());
    }
    tab.go(&away, "/sums/dew-point");
    tab.fill("[name='air']", "70 F");
    tab.tap_to(".send button");
    assert!(tab.sees("[data-cannot-sum]"), "{}", tab.seen());
    assert_eq!(tab.value("[name='air']"), "70 F", "what was typed is not lost");
}

#[test]
fn a_form_opened_for_a_place_is_of_that_place_without_signal() {
    let site = Site::with_slab();
    let server = site.serve();
    let (slab, port) = (site.slab(), server.port);
    let visit = Visit::within(120);
    let tab = visit.tab(Reading::PHONE);
    tab.go(&server, &format!("/slab/{slab}"));
    it_says(&tab, "script-all-kept");
    let form = format!("/slab/{slab}/add/water_drop");
    // Opened for another place while there was signal.
    tab.go(&server, &format!("{form}?zone=shop"));
    assert!(tab.is("document.querySelector(\"[value='zone:shop']\").checked"));
    let away = Server::stopped_at(port);
    drop(server);
    let place = |tab: &Tab| tab.text("document.querySelector('[name=place_kind]:checked')?.value ?? ''");
    tab.go(&away, &form);
    assert_eq!(place(&tab), "", "a blank form is blank");
    tab.go(&away, &format!("{form}?x=10.00+ft&y=5.00+ft"));
    assert_eq!((place(&tab), tab.value("[name='x']")), ("point".to_owned(), "10.00 ft".to_owned()));
    // Drawn since the form was kept.
    tab.go(&away, &format!("{form}?zone=porch"));
    assert_eq!(place(&tab), "zone:porch");
    tab.go(&away, &format!("{form}?zone=office&next=/slab/{slab}/plan"));
    assert_eq!(place(&tab), "zone:office");
    tab.tap_to("button[name='preset'][value='soaked_15_s']");
    assert_eq!(tab.path(), format!("/slab/{slab}/plan"), "and it leads on to where it was opened from");
    let server = site.serve_at(port, &["--clock", CLOCK]);
    tab.tap("[data-outbox] button:not([hidden])");
    tab.until_true("self.underfootOutbox.all().then((all) => all.length === 0)");
    let drop = site.diary().into_iter().find(|entry| entry["body"]["kind"] == "water_drop").expect("it arrived");
    assert!(drop["place"].to_string().contains("office"), "{drop}");
    std::mem::drop(server);
}

#[test]
fn what_is_missing_is_named() {
    let site = Site::with_slab();
    let server = site.serve();
    let (slab, port) = (site.slab(), server.port);
    let visit = Visit::within(120);
    let tab = visit.tab(Reading::PHONE.spanish());
    tab.read_as(&server, Reading::PHONE.spanish());
    tab.go(&server, &format!("/slab/{slab}"));
    it_says(&tab, "script-all-kept");
    assert!(tab.seen().contains("Todos los formularios de esta losa"), "{}", tab.seen());
    tab.go(&server, &format!("/slab/{slab}/add/scrape"));
    let name = tab.text("document.querySelector('h1').textContent");
    let gone = format!("caches.open('pages').then((pages) => pages.delete('/slab/{slab}/add/scrape'))");
    assert!(tab.is(&gone));
    let away = Server::stopped_at(port);
    drop(server);
    tab.go(&away, &format!("/slab/{slab}"));
    it_says(&tab, "script-not-kept");
    let said = tab.text("document.querySelector('[data-keeping=state]').textContent");
    assert!(said.contains(&format!(": {name}.")), "only that one: {said}");
    // On other pages too, since it matters before going.
    tab.go(&away, &format!("/slab/{slab}/diary"));
    tab.until_true("!document.querySelector('[data-keeping=trouble]').hidden");
}
