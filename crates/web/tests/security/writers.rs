//! Several people on one phone: a form that one filled in is never written under another's name.

use axum::http::Method;
use serde_json::Value;
use store::{PersonId, Role};

use crate::common::Got;
use crate::crowd::{Crowd, PASSWORD, add, as_person, request};

const WORDS: &str = "damp along the north wall";
const ID: &str = "0196f000-0000-7000-8000-000000000001";

fn id_of(number: u128) -> String {
    PersonId::from_u128(number).to_string()
}

/// Sends a note as this person; `writer` is who filled it in.
fn note(crowd: &Crowd, who: &str, accept: &str, writer: Option<&str>) -> Got {
    let path = format!("/slab/{}/add/note", crowd.slab);
    let cookie = as_person(who);
    let mut fields = vec![("text", WORDS), ("entry", ID)];
    fields.extend(writer.map(|writer| ("writer", writer)));
    crowd.site.send(request(Method::POST, &path, &[("cookie", &cookie), ("accept", accept)], &fields))
}

fn written(crowd: &Crowd) -> usize {
    crowd.site.store.diary(crowd.slab).unwrap().entries().filter(|entry| entry.body.kind_name() == "note").count()
}

#[test]
fn what_somebody_else_wrote_is_refused_and_left_to_its_writer() {
    let crowd = Crowd::new();
    add(&crowd.site, 5, "Dora", Role::Crew);
    let (carl, dora, before) = (id_of(2), id_of(5), written(&crowd));
    // From a phone's outbox: not a mistake to be mended, the phone keeps it for Carl.
    for writer in [Some(carl.as_str()), Some("here"), Some(""), Some("no id"), None] {
        let got = note(&crowd, "Dora", "application/json", writer).ends(409);
        let said: Value = serde_json::from_slice(&got.bytes).unwrap();
        assert_eq!(said["ok"], false, "{writer:?}");
        assert!(said["message"].as_str().unwrap().contains("Nothing was written"), "{said}");
    }
    assert_eq!(written(&crowd), before);
    // From a page without script: all that was typed comes back, now as Dora's own.
    let page = note(&crowd, "Dora", "text/html", Some(&carl)).ends(422).holds(WORDS).holds("You are signed in as Dora");
    page.holds(&format!("name=\"writer\" value=\"{dora}\""));
    assert_eq!(written(&crowd), before);
    note(&crowd, "Dora", "text/html", Some(&dora)).ends(303);
    assert_eq!(written(&crowd), before + 1);
    // Sent a second time by whoever wrote it, it is the same entry.
    note(&crowd, "Dora", "application/json", Some(&dora)).ends(200);
    assert_eq!(written(&crowd), before + 1);
}

#[test]
fn other_mistakes_do_not_hide_whose_it_is() {
    let crowd = Crowd::new();
    let cookie = as_person("Carl");
    let olga = id_of(1);
    for (path, fields) in [
        (format!("/slab/{}/add/water_drop", crowd.slab), vec![("soaked_in", "soon")]),
        (format!("/slab/{}/plan/draw?way=rooms", crowd.slab), vec![("room_width[]", "wide")]),
        ("/new".to_owned(), vec![("name", "Carl's own floor")]),
    ] {
        let mut fields = fields;
        fields.extend([("entry", ID), ("writer", olga.as_str())]);
        let headers = [("cookie", cookie.as_str()), ("accept", "application/json")];
        crowd.site.send(request(Method::POST, &path, &headers, &fields)).ends(409);
        let page = crowd.site.send(request(Method::POST, &path, &headers[..1], &fields)).ends(422);
        page.holds("You are signed in as Carl");
    }
    let list = crowd.site.look("/", &cookie).text();
    assert!(!list.contains("Carl's own floor") && !list.contains("Carl&#39;s own floor"), "no slab was opened");
}

#[test]
fn a_page_says_for_whom_it_was_made() {
    let crowd = Crowd::new();
    let slab = format!("/slab/{}", crowd.slab);
    let photo = format!("{slab}/photo/{}", crowd.photo.as_str());
    for path in ["/", &slab, &photo] {
        assert_eq!(crowd.site.look(path, &as_person("Carl")).ends(200).header("x-writer"), id_of(2), "{path}");
    }
    let sign_in = crowd.site.look("/sign-in", "").ends(200);
    assert!(sign_in.headers.contains_key("x-writer") && sign_in.header("x-writer").is_empty());
    // Kept on a phone for whoever holds it: no name, no person, in either case.
    for cookie in [as_person("Carl"), String::new()] {
        let page = crowd.site.look("/offline", &cookie).ends(200).text();
        assert!(!page.contains("data-writer") && !page.contains("Carl") && !page.contains("/sign-out"), "{page}");
    }
}

#[test]
fn whoever_begins_to_sign_in_ends_the_session_before() {
    let crowd = Crowd::new();
    let carl = as_person("Carl");
    assert_eq!(crowd.site.look("/", &carl).status, 200);
    crowd.site.put("/sign-in", &carl, &[("name", "Gina"), ("password", "not it")]).ends(422);
    assert_eq!(crowd.site.look("/", &carl).status, 303, "the phone is in other hands");
    let said =
        request(Method::POST, "/sign-out", &[("cookie", &as_person("Gina")), ("accept", "application/json")], &[]);
    assert_eq!(crowd.site.send(said).ends(200).text(), "{\"ok\":true}");
    assert_eq!(crowd.site.look("/", &as_person("Gina")).status, 303);
    crowd.site.put("/sign-in", "", &[("name", "Gina"), ("password", PASSWORD)]).ends(303);
}
