//! The screens that are only where people sign in, looked at like all others.

use browser_tests::{Reading, Site, Tab, Visit};

use crate::screens::{Looks, look};
use crate::share::{serve_people, set_up, sign_in};

/// Looks at the page that is there and goes back to the phone.
fn look_here(tab: &Tab, screen: &str, looks: &mut Looks) {
    let reading = tab.reading();
    look(tab, screen, looks);
    tab.set_size(reading.size);
}

fn every_screen(reading: Reading) {
    let site = Site::with_slab();
    let server = serve_people(&site);
    let slab = site.slab();
    let mut looks = Looks::default();
    let stranger = Visit::within(200).tab(reading);
    stranger.read_as(&server, reading);
    stranger.go(&server, "/set-up");
    look_here(&stranger, "set-up", &mut looks);
    let owner = Visit::within(200).tab(reading);
    owner.read_as(&server, reading);
    set_up(&owner, &server);
    stranger.go(&server, "/");
    look_here(&stranger, "sign-in", &mut looks);
    stranger.fill("[name='name']", "Nobody");
    stranger.fill("[name='password']", "not a password");
    stranger.tap_to(".send button");
    look_here(&stranger, "sign-in refused", &mut looks);

    for path in ["/", "/people", "/password"] {
        owner.go(&server, path);
        look_here(&owner, path, &mut looks);
    }
    owner.go(&server, "/people");
    owner.fill("[name='name']", "Beto");
    owner.choose("role", "guest");
    owner.tap_to("form[action='/people'] .send button");
    let password = owner.text("document.querySelector('output.secret').textContent");
    look_here(&owner, "a person was added", &mut looks);
    owner.go(&server, &format!("/slab/{slab}/links"));
    for page in ["plan", "diary", "photographs", "order", "choice"] {
        owner.tap(&format!("[name='page'][value='{page}']"));
        owner.until_true(&format!("document.querySelector('[name=page][value={page}]').checked"));
    }
    owner.tap_to("form[action$='/links'] .send button");
    look_here(&owner, "a link was made", &mut looks);
    let address = owner.text("document.querySelector('.address a').getAttribute('href')");
    let root = address.split_once("/s/").map(|(_, token)| format!("/s/{token}")).expect("a link's address");

    let visitor = Visit::within(200).tab(reading);
    visitor.read_as(&server, reading);
    for page in ["", "/standing", "/plan", "/diary", "/photographs", "/order", "/choice"] {
        visitor.go(&server, &format!("{root}{page}"));
        assert_eq!(visitor.status(), 200, "{page}");
        look_here(&visitor, &format!("by a link: {page}"), &mut looks);
    }
    visitor.go(&server, "/s/0000");
    look_here(&visitor, "a link that opens nothing", &mut looks);
    sign_in(&visitor, &server, "Beto", &password);
    visitor.go(&server, &format!("/slab/{slab}/add"));
    assert_eq!(visitor.status(), 403);
    look_here(&visitor, "not for a guest", &mut looks);
    looks.faultless(reading);
}

#[test]
fn in_english() {
    every_screen(Reading::PHONE);
}

#[test]
fn in_spanish() {
    every_screen(Reading::PHONE.spanish());
}
