//! Several people on one phone: what waits, what is half typed and what is kept for reading belongs to the one who
//! wrote it, with signal or without.

use browser_tests::{CLOCK, Reading, Server, Site, Tab, Visit};

use crate::offline::{box_says, ready_for_offline, waiting};
use crate::share::{serve_people, set_up, sign_in};

const HALF: &str = "half a thought about the north wall";

/// Two people whom an owner has added: their passwords.
fn crew(server: &Server) -> [String; 2] {
    let owner = Visit::within(180).tab(Reading::DESK);
    set_up(&owner, server);
    ["Beto", "Carla"].map(|name| {
        owner.go(server, "/people");
        owner.fill("[name='name']", name);
        owner.choose("role", "crew");
        owner.tap_to("form[action='/people'] .send button");
        owner.text("document.querySelector('output.secret').textContent")
    })
}

fn serve_again(site: &Site, port: u16) -> Server {
    site.serve_on(&format!("0.0.0.0:{port}"), &["--clock", CLOCK])
}

/// Signs out by the menu; gives what was asked before, and says yes to it.
fn sign_out(tab: &Tab) -> String {
    tab.eval("window.confirm = (text) => { sessionStorage.setItem('asked', text); return true; }; 0");
    tab.eval("sessionStorage.removeItem('asked')");
    tab.tap(".menu > summary");
    tab.until_true("document.querySelector('.menu').open");
    tab.tap_to("form[data-sign-out] button");
    tab.text("sessionStorage.getItem('asked')")
}

/// Whether the page is there that says that nobody is signed in any more.
fn is_signed_out(tab: &Tab) {
    tab.until_true("document.querySelector('[data-signed-out]')?.hidden === false");
    assert!(!tab.seen().contains("Creek Road shop"), "{}", tab.seen());
    assert!(!tab.sees("form[data-entry]"));
}

#[test]
fn what_waits_is_sent_under_the_name_of_who_wrote_it() {
    let site = Site::with_slab();
    let server = serve_people(&site);
    let (slab, port) = (site.slab(), server.port);
    let [beto, carla] = crew(&server);
    let visit = Visit::within(240);
    let phone = visit.tab(Reading::PHONE);
    sign_in(&phone, &server, "Beto", &beto);
    ready_for_offline(&phone, &server, &slab);
    let away = Server::stopped_at(port);
    drop(server);

    phone.go(&away, &format!("/slab/{slab}/add/water_drop"));
    phone.choose("place_kind", "zone:shop");
    phone.tap_to("button[name='preset'][value='soaked_15_s']");
    box_says(&phone, 1);
    phone.go(&away, &format!("/slab/{slab}/add/note"));
    phone.fill("[name='text']", HALF);

    // Without signal: this phone knows nobody any more, and says what becomes of what waits.
    let asked = sign_out(&phone);
    assert!(asked.contains("Not sent yet: 1") && asked.contains("when you sign in here again"), "{asked}");
    is_signed_out(&phone);
    phone.until_true("document.querySelector('[data-outbox] .count').textContent.includes(': 1.')");
    assert!(!phone.seen().contains("Water drop"), "how many, not what: {}", phone.seen());
    for page in ["", "/diary", "/add/water_drop", "/add/note"] {
        phone.go(&away, &format!("/slab/{slab}{page}"));
        is_signed_out(&phone);
    }

    // The server knew nothing of it; at the first contact the session ends there too.
    let server = serve_again(&site, port);
    phone.go(&server, &format!("/slab/{slab}"));
    assert_eq!(phone.path(), "/sign-in", "{}", phone.seen());
    sign_in(&phone, &server, "Carla", &carla);
    ready_for_offline(&phone, &server, &slab);
    assert!(!phone.sees("[data-outbox]"), "nothing of Carla's waits: {}", phone.seen());
    phone.eval("self.underfootOutbox.sendAll().then(() => 0)");
    assert_eq!((waiting(&phone), site.count("water_drop")), (1, 0), "kept, and not sent as Carla");
    let refused = phone.text(
        "self.underfootOutbox.all().then((all) => self.underfootOutbox.post(all[0])).then((outcome) => outcome.is)",
    );
    assert_eq!(refused, "needs-sign-in", "the server refuses what Beto wrote while Carla is signed in");
    assert_eq!(site.count("water_drop"), 0);
    phone.go(&server, &format!("/slab/{slab}/add/note"));
    assert_eq!(phone.value("[name='text']"), "", "what Beto typed is not Carla's to see");
    assert_eq!(sign_out(&phone), "", "nothing of hers waits, so nothing is asked");
    assert_eq!(phone.path(), "/sign-in");

    sign_in(&phone, &server, "Beto", &beto);
    phone.until_true("self.underfootOutbox.all().then((all) => all.length === 0)");
    let drop = site.diary().into_iter().find(|entry| entry["body"]["kind"] == "water_drop").expect("it arrived");
    assert_eq!(drop["author"], "Beto");
    phone.go(&server, &format!("/slab/{slab}/add/note"));
    assert_eq!(phone.value("[name='text']"), HALF, "his own is still there");
}

#[test]
fn a_page_left_open_writes_nothing_once_its_person_is_gone() {
    let site = Site::with_slab();
    let server = serve_people(&site);
    let slab = site.slab();
    let [beto, carla] = crew(&server);
    let visit = Visit::within(240);
    let (old, new) = (visit.tab(Reading::PHONE), visit.tab(Reading::PHONE));
    sign_in(&old, &server, "Beto", &beto);
    ready_for_offline(&old, &server, &slab);
    old.go(&server, &format!("/slab/{slab}/add/note"));
    old.fill("[name='text']", HALF);
    new.go(&server, "/");
    sign_out(&new);
    old.until_true("location.pathname === '/sign-in'");
    sign_in(&new, &server, "Carla", &carla);
    // As if the old page had not noticed: the phone itself takes nothing under a name that is gone.
    new.go(&server, &format!("/slab/{slab}/add/note"));
    new.eval("document.body.dataset.writer = 'somebody else'");
    new.fill("[name='text']", "not mine");
    new.tap_to(".send button");
    assert_eq!(new.path(), "/", "{}", new.seen());
    assert_eq!((waiting(&new), site.count("note")), (0, 0));
}
