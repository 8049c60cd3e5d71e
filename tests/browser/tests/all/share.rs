//! Where people sign in: a share link opens its own pages and no others, a withdrawn one nothing, and a
//! guest reads and cannot write.

use browser_tests::{CLOCK, Reading, Server, Site, Tab, Visit, free_port};

const OWNER: (&str, &str) = ("Ana", "a long first password");

/// Reachable from elsewhere, so that people have to sign in.
pub(crate) fn serve_people(site: &Site) -> Server {
    let address = format!("0.0.0.0:{}", free_port());
    site.serve_on(&address, &["--clock", CLOCK])
}

/// The first owner, by the code that the server showed on its terminal.
pub(crate) fn set_up(tab: &Tab, server: &Server) {
    let is_code = |word: &&str| word.len() == 14 && word.matches('-').count() == 2;
    let code = server.said.split_whitespace().map(|w| w.trim_end_matches(['.', ','])).find(is_code);
    let code = code.unwrap_or_else(|| panic!("no code in: {}", server.said));
    tab.go(server, "/set-up");
    tab.fill("[name='code']", code);
    tab.fill("[name='name']", OWNER.0);
    tab.fill("[name='password']", OWNER.1);
    tab.fill("[name='again']", OWNER.1);
    tab.tap_to(".send button");
    assert_eq!(tab.status(), 200, "{}", tab.seen());
}

/// Signs in and ends on the list.
pub(crate) fn sign_in(tab: &Tab, server: &Server, name: &str, password: &str) {
    tab.go(server, "/sign-in");
    tab.fill("[name='name']", name);
    tab.fill("[name='password']", password);
    tab.tap_to(".send button");
    assert_eq!(tab.path(), "/", "{}", tab.seen());
}

/// Sends a form as a page of ours would, with this visitor's cookies; gives the status.
fn post(tab: &Tab, path: &str) -> u64 {
    let sent = tab.eval(&format!(
        "fetch('{path}', {{ method: 'POST', body: new URLSearchParams({{ text: 'not theirs to write' }}),
           headers: {{ Accept: 'application/json' }}, redirect: 'manual' }}).then((answer) => answer.status)"
    ));
    sent.as_u64().unwrap()
}

/// Nothing on the page writes, apart from how a person reads.
fn cannot_write(tab: &Tab) {
    let ways = tab.eval(
        "[...document.querySelectorAll('form[method=post]:not(.reading), a[href*=\"/add\"], a[href*=\"/fix/\"], a[href*=\"/draw\"], a[href*=\"/new\"]')].map((one) => one.outerHTML.slice(0, 120))",
    );
    assert!(ways.as_array().unwrap().is_empty(), "{ways} at {}", tab.path());
}

#[test]
fn a_link_opens_its_pages_until_it_is_withdrawn() {
    let site = Site::with_slab();
    let server = serve_people(&site);
    let slab = site.slab();
    let owner = Visit::within(120).tab(Reading::DESK);
    set_up(&owner, &server);
    owner.go(&server, &format!("/slab/{slab}/links"));
    owner.tap_to("form[action$='/links'] .send button");
    let address = owner.text("document.querySelector('.address a').getAttribute('href')");
    let path = address.split_once("/s/").map(|(_, token)| format!("/s/{token}")).expect("a link's address");

    let visitor = Visit::within(120).tab(Reading::PHONE);
    visitor.go(&server, &path);
    assert_eq!(visitor.status(), 200);
    assert!(visitor.main_text().len() > 100, "{}", visitor.seen());
    assert!(visitor.seen().contains("Creek Road shop"));
    cannot_write(&visitor);
    let shown = visitor.path();
    let root = path.trim_end_matches('/');
    for other in ["diary", "plan", "photographs", "order", "choice"] {
        visitor.go(&server, &format!("{root}/{other}"));
        assert_eq!(visitor.status(), 404, "{other} is not one of its pages");
    }
    visitor.go(&server, &format!("/slab/{slab}"));
    assert_eq!(visitor.path(), "/sign-in", "the slab itself asks who is there");
    let before = site.diary().len();
    for there in [format!("/slab/{slab}/add/note"), format!("{root}/choice"), format!("/slab/{slab}/put-away")] {
        let status = post(&visitor, &there);
        assert!((400..500).contains(&status), "{there}: {status}");
    }
    assert_eq!(site.diary().len(), before);

    owner.go(&server, &format!("/slab/{slab}/links"));
    owner.tap_to("form[action$='/withdraw'] button");
    for there in [path.as_str(), &shown] {
        visitor.go(&server, there);
        assert!((400..500).contains(&visitor.status()), "{}: {}", visitor.status(), visitor.seen());
        assert!(!visitor.seen().contains("Creek Road shop"), "{}", visitor.seen());
    }
}

#[test]
fn a_guest_reads_and_cannot_write() {
    let site = Site::with_slab();
    let server = serve_people(&site);
    let slab = site.slab();
    let owner = Visit::within(120).tab(Reading::DESK);
    set_up(&owner, &server);
    owner.go(&server, "/people");
    owner.fill("[name='name']", "Beto");
    owner.choose("role", "guest");
    owner.tap_to("form[action='/people'] .send button");
    let password = owner.text("document.querySelector('output.secret').textContent");

    let guest = Visit::within(120).tab(Reading::PHONE);
    guest.go(&server, &format!("/slab/{slab}"));
    assert_eq!(guest.path(), "/sign-in");
    guest.fill("[name='name']", "Beto");
    guest.fill("[name='password']", "not the password");
    guest.tap_to(".send button");
    assert_eq!(guest.path(), "/sign-in", "a wrong password opens nothing");
    guest.fill("[name='password']", &password);
    guest.tap_to(".send button");
    assert_eq!(guest.path(), format!("/slab/{slab}"), "back to where it began");
    for page in ["", "/diary", "/plan"] {
        guest.go(&server, &format!("/slab/{slab}{page}"));
        assert_eq!(guest.status(), 200);
        cannot_write(&guest);
    }
    guest.go(&server, "/");
    cannot_write(&guest);
    let before = site.diary().len();
    for page in ["/add", "/add/note", "/plan/draw", "/links"] {
        guest.go(&server, &format!("/slab/{slab}{page}"));
        assert_eq!(guest.status(), 403, "{page}");
    }
    for there in ["/add/note", "/plan/draw", "/put-away", "/links"] {
        assert_eq!(post(&guest, &format!("/slab/{slab}{there}")), 403, "{there}");
    }
    assert_eq!(post(&guest, "/people"), 403);
    assert_eq!(site.diary().len(), before);
    assert!(!site.run(&["list"]).fine().out.is_empty(), "nothing was put away");
}
