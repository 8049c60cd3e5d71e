//! Foreign pages, foreign names, and what every answer carries.

use axum::http::Method;

use crate::common::{Got, Site};
use crate::crowd::{Crowd, as_person, cookies_of, is_guarded, request};
use crate::routes::{filled, routes};

fn posts(crowd: &Crowd) -> Vec<String> {
    let holes = crowd.holes();
    let all: Vec<String> =
        routes().iter().filter(|route| route.form.is_some()).map(|route| filled(&route.path, &holes)).collect();
    assert!(all.len() >= 20, "only {} routes take forms", all.len());
    all
}

fn send(crowd: &Crowd, path: &str, headers: &[(&str, &str)]) -> Got {
    let owner = as_person("Olga");
    let mut headers = headers.to_vec();
    headers.push(("cookie", owner.as_str()));
    crowd.site.send(request(Method::POST, path, &headers, &[("text", "from elsewhere")]))
}

#[test]
fn a_form_from_another_site_is_refused_on_every_route() {
    let crowd = Crowd::new();
    let before = crowd.site.entries(crowd.slab);
    let people = crowd.site.store.people().unwrap().len();
    let mut tried = 0;
    let foreign: [&[(&str, &str)]; 9] = [
        &[("sec-fetch-site", "cross-site")],
        &[("sec-fetch-site", "same-site")],
        &[("sec-fetch-site", "cross-site"), ("origin", "http://localhost")],
        &[("origin", "https://evil.example")],
        &[("origin", "null")],
        &[("origin", "http://localhost.evil.example")],
        &[("origin", "http://localhost:81")],
        &[("origin", "localhost")],
        &[("origin", "")],
    ];
    for path in posts(&crowd) {
        for headers in foreign {
            let got = send(&crowd, &path, headers);
            assert_eq!(got.status, 403, "{path} {headers:?}");
            assert!(cookies_of(&got).is_empty(), "{path} {headers:?}");
            tried += 1;
        }
    }
    assert!(tried > 150, "only {tried} tried");
    assert_eq!(crowd.site.entries(crowd.slab), before);
    assert_eq!(crowd.site.store.people().unwrap().len(), people + 1, "only the one the test added itself");
}

#[test]
fn other_ways_of_asking_change_nothing_either() {
    let crowd = Crowd::new();
    let note = format!("/slab/{}/add/note", crowd.slab);
    for method in [Method::PUT, Method::DELETE, Method::PATCH] {
        let foreign = [("origin", "https://evil.example"), ("cookie", "session=token of Olga")];
        assert_eq!(crowd.site.send(request(method.clone(), &note, &foreign, &[])).status, 403);
        let ours = [("cookie", "session=token of Olga")];
        assert_eq!(crowd.site.send(request(method, &note, &ours, &[])).status, 405);
    }
}

#[test]
fn our_own_pages_may_send() {
    let crowd = Crowd::new();
    let path = format!("/slab/{}/add/note", crowd.slab);
    let ours: [&[(&str, &str)]; 4] =
        [&[("sec-fetch-site", "same-origin")], &[("sec-fetch-site", "none")], &[("origin", "http://localhost")], &[]];
    for headers in ours {
        assert_eq!(send(&crowd, &path, headers).status, 303, "{headers:?}");
    }
}

#[test]
fn behind_encryption_only_the_public_address_is_ours() {
    let crowd = Crowd::at(Some("https://slabs.example.org"));
    let cookie = "__Host-session=token of Olga";
    let path = format!("/slab/{}/add/note", crowd.slab);
    let send = |origin: &str| {
        let headers = [("cookie", cookie), ("origin", origin), ("host", "slabs.example.org")];
        crowd.site.send(request(Method::POST, &path, &headers, &[("text", "a note")]))
    };
    assert_eq!(send("https://slabs.example.org").status, 303);
    for foreign in ["http://slabs.example.org", "https://slabs.example.org:444", "https://x.slabs.example.org"] {
        assert_eq!(send(foreign).status, 403, "{foreign}");
    }
    // The name without the prefix is not looked at: a neighbor could have planted it.
    assert_eq!(crowd.site.look("/", "session=token of Olga").status, 303);
    let got = crowd.site.look("/", cookie);
    assert_eq!(got.status, 200);
    assert_eq!(got.header("strict-transport-security"), "max-age=31536000");
}

#[test]
fn on_this_machine_only_its_own_names_are_answered() {
    let site = Site::empty();
    let ask = |host: &str| site.send(request(Method::GET, "/", &[("host", host)], &[]));
    for ours in ["localhost", "localhost:8712", "127.0.0.1:8712", "[::1]:8712"] {
        assert_eq!(ask(ours).status, 200, "{ours}");
    }
    for foreign in ["evil.example", "127.0.0.1.evil.example:8712", "localhost.evil.example", "10.0.0.7:8712", "[::2]"] {
        let got = ask(foreign);
        assert_eq!(got.status, 421, "{foreign}");
        assert!(!got.text().contains("href=\"/new\""), "{foreign}");
        is_guarded(&got, foreign);
    }
}

#[test]
fn on_this_machine_there_is_nobody_to_be() {
    let site = Site::empty();
    for path in ["/set-up", "/sign-in", "/people", "/password"] {
        assert_eq!(site.get(path).status, 404, "{path}");
        assert_eq!(site.post(path, &[("name", "x")]).status, 404, "{path}");
    }
    assert_eq!(site.post("/sign-out", &[]).status, 404);
    let page = site.get("/").text();
    assert!(!page.contains("/people") && !page.contains("/password"));
}

#[test]
fn every_answer_is_guarded_errors_too() {
    let crowd = Crowd::new();
    let holes = crowd.holes();
    let owner = as_person("Olga");
    let mut looked = 0;
    for route in routes().iter().filter(|route| route.page.is_some()) {
        let path = filled(&route.path, &holes);
        // The papers are typeset for a second or two each, and have no page of ours around them.
        if path.ends_with(".pdf") {
            continue;
        }
        for cookie in ["", owner.as_str(), "session=nobody"] {
            let got = crowd.site.look(&path, cookie);
            is_guarded(&got, &path);
            assert!(got.status != 500, "{path}: {}", got.text());
            looked += 1;
        }
    }
    assert!(looked > 90, "only {looked} looked at");
    for path in ["/no/such/page", "/slab/not-an-id", "/a/0000/app.css", "/slab/%00", "/s/short", "/%ff%fe"] {
        is_guarded(&crowd.site.look(path, &owner), path);
    }
    for path in posts(&crowd) {
        is_guarded(&crowd.site.put(&path, "", &[]), &path);
        is_guarded(&send(&crowd, &path, &[("sec-fetch-site", "cross-site")]), &path);
    }
    let sw = crowd.site.look("/sw.js", "");
    is_guarded(&sw, "/sw.js");
}

#[test]
fn nobody_is_led_away() {
    let crowd = Crowd::new();
    let odd = [
        "https://evil.example/",
        "//evil.example/",
        "/\\evil.example",
        "\\/evil.example",
        "/\t/evil.example",
        "/\n/evil.example",
        "javascript:alert(1)",
        "evil.example",
        " //evil.example",
        "/%0d%0aSet-Cookie:x=1//",
    ];
    let local = |got: &Got, what: &str| {
        let to = got.header("location");
        assert!(to.starts_with('/') && !to.starts_with("//") && !to.starts_with("/\\"), "{what:?} leads to {to:?}");
        assert!(!to.contains(['\r', '\n', '\t']), "{what:?} leads to {to:?}");
        assert!(!got.headers.contains_key("x") && cookies_of(got).iter().all(|c| !c.starts_with("x=")));
    };
    let password = crate::crowd::PASSWORD;
    for next in odd {
        let crowd_in = crowd.site.put("/sign-in", "", &[("name", "Olga"), ("password", password), ("next", next)]);
        assert_eq!(crowd_in.status, 303, "{next:?}");
        local(&crowd_in, next);
        let back = crowd.site.put("/reading", "", &[("lang", "es"), ("back", next)]);
        assert_eq!(back.status, 303);
        local(&back, next);
        let path = format!("/slab/{}/add/note", crowd.slab);
        let note = crowd.site.put(&path, &as_person("Olga"), &[("text", "n"), ("next", next)]);
        assert_eq!(note.status, 303, "{next:?}");
        local(&note, next);
        // The page must not repeat it as a way either.
        let query = form_urlencoded::Serializer::new(String::new()).append_pair("next", next).finish();
        let page = crowd.site.look(&format!("/sign-in?{query}"), "").text();
        let hidden = page.split("name=\"next\" value=\"").nth(1).unwrap().split('"').next().unwrap();
        assert!(hidden.starts_with('/') && !hidden.contains("evil.example"), "{next:?} gives {hidden}");
        assert!(!page.contains("href=\"http"), "{next:?}");
    }
}
