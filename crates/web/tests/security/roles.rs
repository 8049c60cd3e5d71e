//! Who may do what: guests write nothing, crew has no say over people.

use crate::crowd::{Crowd, as_person};
use crate::routes::{filled, routes};

#[test]
fn a_guest_can_send_to_no_route_that_writes() {
    let crowd = Crowd::new();
    let holes = crowd.holes();
    let (entries, people) = (crowd.site.entries(crowd.slab), crowd.site.store.people().unwrap());
    let links = crowd.site.store.links_of(crowd.slab).unwrap();
    let mut tried = 0;
    for route in routes() {
        let Some("Write" | "Own") = route.form.as_deref() else { continue };
        let path = filled(&route.path, &holes);
        let got = crowd.site.put(&path, &as_person("Gina"), &[("text", "n"), ("name", "x"), ("role", "owner")]);
        assert_eq!(got.status, 403, "{path}");
        let stranger = crowd.site.put(&path, "", &[("text", "n")]);
        assert_eq!(stranger.status, 303, "{path}");
        assert!(stranger.header("location").starts_with("/sign-in?next="), "{path}");
        tried += 1;
    }
    assert!(tried >= 15, "only {tried} tried");
    assert_eq!(crowd.site.entries(crowd.slab), entries);
    assert_eq!(crowd.site.store.people().unwrap(), people);
    assert_eq!(crowd.site.store.links_of(crowd.slab).unwrap(), links);
}

#[test]
fn a_guest_sees_no_way_to_write() {
    let crowd = Crowd::new();
    let holes = crowd.holes();
    let mut seen = 0;
    for route in routes() {
        let Some("Read") = route.page.as_deref() else { continue };
        let path = filled(&route.path, &holes);
        if path.ends_with(".pdf") {
            continue;
        }
        let got = crowd.site.look(&path, &as_person("Gina"));
        if !got.header("content-type").starts_with("text/html") || got.status != 200 {
            continue;
        }
        let page = got.text();
        for part in page.split("<form ").skip(1) {
            let tag = part.split('>').next().unwrap();
            let allowed = ["action=\"/reading\"", "action=\"/sign-out\"", "action=\"/password\"", "method=\"get\""];
            let sums = tag.contains("action=\"/sums");
            assert!(sums || allowed.iter().any(|a| tag.contains(a)), "{path}: <form {tag}>");
        }
        for part in page.split("href=\"").skip(1) {
            let href = part.split('"').next().unwrap();
            let writes =
                ["/add/", "/fix/", "/plan/draw", "/plan/lines", "/plan/dxf"].iter().any(|way| href.contains(way))
                    || ["/add", "/air-record", "/links", "/new", "/people"].iter().any(|way| href.ends_with(way));
            assert!(!writes, "{path} leads to {href}");
        }
        seen += 1;
    }
    assert!(seen >= 10, "only {seen} pages seen");
}

#[test]
fn crew_writes_but_has_no_say_over_people_and_links() {
    let crowd = Crowd::new();
    let holes = crowd.holes();
    let crew = as_person("Carl");
    let mut tried = 0;
    for route in routes() {
        let path = filled(&route.path, &holes);
        if route.page.as_deref() == Some("Own") {
            assert_eq!(crowd.site.look(&path, &crew).status, 403, "{path}");
            tried += 1;
        }
        if route.form.as_deref() == Some("Own") {
            let got =
                crowd.site.put(&path, &crew, &[("name", "Eve"), ("role", "owner"), ("page", "diary"), ("days", "9")]);
            assert_eq!(got.status, 403, "{path}");
            tried += 1;
        }
    }
    assert!(tried >= 7, "only {tried} tried");
    let note = format!("/slab/{}/add/note", crowd.slab);
    assert_eq!(crowd.site.put(&note, &crew, &[("text", "swept")]).status, 303);
    let page = crowd.site.look("/", &crew).text();
    assert!(!page.contains("href=\"/people\"") && page.contains("href=\"/password\""));
    let owner = crowd.site.look("/", &as_person("Olga")).text();
    assert!(owner.contains("href=\"/people\""));
}

#[test]
fn a_closed_account_and_a_smaller_role_hold_at_once() {
    let crowd = Crowd::new();
    let people = crowd.site.store.people().unwrap();
    let id = |name: &str| people.iter().find(|person| person.name == name).unwrap().id;
    let owner = as_person("Olga");
    let role = format!("/people/{}/role", id("Carl"));
    assert_eq!(crowd.site.put(&role, &owner, &[("role", "guest")]).status, 303);
    let note = format!("/slab/{}/add/note", crowd.slab);
    assert_eq!(crowd.site.put(&note, &as_person("Carl"), &[("text", "n")]).status, 403);
    assert_eq!(crowd.site.put(&format!("/people/{}/close", id("Gina")), &owner, &[]).status, 303);
    assert_eq!(crowd.site.look("/", &as_person("Gina")).header("location"), "/sign-in?next=%2F");
    // The last owner can neither step down nor close.
    let me = format!("/people/{}", id("Olga"));
    let down = crowd.site.put(&format!("{me}/role"), &owner, &[("role", "crew")]).ends(422);
    down.holds("Olga is the only admin");
    crowd.site.put(&format!("{me}/close"), &owner, &[]).ends(422).holds("Olga is the only admin");
    let nonsense = crowd.site.put(&role, &owner, &[("role", "emperor")]).ends(422);
    nonsense.holds("Accepted: admin, crew or guest");
}
