//! Sessions and passwords: planted cookies, guessing, the set-up code.

use axum::http::Method;
use store::TokenHash;
use web::Access;

use crate::common::{Got, Site};
use crate::crowd::{Crowd, PASSWORD, as_person, cookie_set, cookies_of, request};

fn sign_in(site: &Site, cookies: &str, name: &str, password: &str) -> Got {
    site.put("/sign-in", cookies, &[("name", name), ("password", password)])
}

#[test]
fn a_planted_token_never_becomes_good() {
    let crowd = Crowd::new();
    let planted = "session=planted by a neighbor";
    assert_eq!(crowd.site.look("/", planted).status, 303);
    let got = sign_in(&crowd.site, planted, "Olga", PASSWORD).ends(303);
    let token = cookie_set(&got, "session").expect("a session");
    assert_eq!(token.len(), 64);
    assert_ne!(token, "planted by a neighbor");
    assert_eq!(crowd.site.look("/", planted).status, 303, "still nobody's");
    assert_eq!(crowd.site.look("/", &format!("session={token}")).status, 200);
}

#[test]
fn every_sign_in_has_a_token_of_its_own_and_ends_the_one_before() {
    let crowd = Crowd::new();
    let first = cookie_set(&sign_in(&crowd.site, "", "Olga", PASSWORD), "session").unwrap();
    let again = sign_in(&crowd.site, &format!("session={first}"), "Olga", PASSWORD);
    let second = cookie_set(&again, "session").unwrap();
    assert_ne!(first, second);
    assert_eq!(crowd.site.look("/", &format!("session={first}")).status, 303);
    let cookie = format!("session={second}");
    assert_eq!(crowd.site.look("/", &cookie).status, 200);
    let out = crowd.site.put("/sign-out", &cookie, &[]).ends(303);
    assert_eq!(out.header("clear-site-data"), "\"cache\"");
    assert!(cookies_of(&out).iter().any(|c| c.starts_with("session=;") && c.contains("Max-Age=0")));
    assert_eq!(crowd.site.look("/", &cookie).status, 303, "over on the server, not only in the browser");
}

#[test]
fn cookies_are_out_of_reach_of_script_and_of_other_sites() {
    for public in [None, Some("https://slabs.example.org")] {
        let crowd = Crowd::at(public);
        let got = sign_in(&crowd.site, "", "Gina", PASSWORD).ends(303);
        let cookies = cookies_of(&got);
        assert_eq!(cookies.len(), 3, "session, language, measure");
        for cookie in cookies {
            assert!(cookie.contains("; HttpOnly") && cookie.contains("; SameSite=Lax"), "{cookie}");
            assert!(cookie.contains("; Path=/") && !cookie.contains("Domain"), "{cookie}");
            assert_eq!(cookie.contains("; Secure"), public.is_some(), "{cookie}");
        }
        assert_eq!(cookie_set(&got, "__Host-session").is_some(), public.is_some());
        assert_eq!(cookie_set(&got, "session").is_some(), public.is_none());
    }
}

#[test]
fn the_store_keeps_no_token_and_no_password() {
    let crowd = Crowd::new();
    let token = cookie_set(&sign_in(&crowd.site, "", "Olga", PASSWORD), "session").unwrap();
    for file in std::fs::read_dir(crowd.site.folder()).unwrap() {
        let path = file.unwrap().path();
        if path.is_file() {
            let bytes = std::fs::read(&path).unwrap();
            for secret in [token.as_str(), PASSWORD] {
                let found = bytes.windows(secret.len()).any(|part| part == secret.as_bytes());
                assert!(!found, "{} holds it", path.display());
            }
        }
    }
}

#[test]
fn an_unknown_name_and_a_wrong_password_get_the_same_words() {
    let crowd = Crowd::new();
    let people = crowd.site.store.people().unwrap();
    let gina = people.iter().find(|person| person.name == "Gina").unwrap();
    crowd.site.store.close_person(gina.id, crate::crowd::now()).unwrap();
    let page = |name: &str, password: &str| {
        let text = sign_in(&crowd.site, "", name, password).ends(422).text();
        text.replace(name, "NAME")
    };
    let wrong = page("Olga", "not the password");
    assert!(wrong.contains("Name or password is wrong"));
    assert_eq!(page("Nobody", "not the password"), wrong);
    assert_eq!(page("Gina", PASSWORD), wrong, "a closed account is nobody");
    assert_eq!(page("Olga", ""), wrong);
    assert_eq!(page("Olga", &"x".repeat(5_000)), wrong);
    assert!(!wrong.contains("not the password"), "a password never comes back");
}

#[test]
fn an_unknown_name_takes_as_long_as_a_wrong_password() {
    // Here with a hash of the usual cost, unlike the other tests.
    let site = Site::with(Access::People { public: None });
    set_up(&site, "ABCD-EFGH-JKLM").ends(303);
    #[expect(clippy::disallowed_methods, reason = "how long it takes is what is asked")]
    let time = |name: &str| {
        let begin = std::time::Instant::now();
        sign_in(&site, "", name, "not the password").ends(422);
        begin.elapsed().as_secs_f64()
    };
    let best = |name: &str| (0..2).map(|_| time(name)).fold(f64::MAX, f64::min);
    let (known, unknown) = (best("Olga"), best("Nobody"));
    let share = unknown / known;
    // Without the hash of nobody's password it would be a thousandth; a busy machine makes it a half.
    assert!((0.1..10.0).contains(&share), "unknown {unknown} s, known {known} s");
}

#[test]
fn a_flood_of_guesses_is_slowed_by_name_and_other_names_still_get_in() {
    let crowd = Crowd::new();
    let mut refused = 0;
    for n in 0..30 {
        let got = sign_in(&crowd.site, "", "Olga", &format!("guess number {n}"));
        match got.status.as_u16() {
            422 => assert!(n < 5, "guess {n} was looked at"),
            429 => refused += 1,
            other => panic!("{other}"),
        }
    }
    assert_eq!(refused, 25);
    let right = sign_in(&crowd.site, "", "Olga", PASSWORD);
    assert_eq!(right.status, 429, "the right one is not told from a wrong one while it waits");
    assert!(cookies_of(&right).is_empty());
    assert_eq!(sign_in(&crowd.site, "", " oLGA ", PASSWORD).status, 429, "spelled another way it is the same name");
    assert_eq!(sign_in(&crowd.site, "", "Carl", PASSWORD).status, 303);
    assert_eq!(crowd.site.look("/", &as_person("Olga")).status, 200, "who is in stays in");
}

#[test]
fn many_names_from_one_address_are_slowed_too() {
    let crowd = Crowd::new();
    let tried: Vec<u16> =
        (0..40).map(|n| sign_in(&crowd.site, "", &format!("name {n}"), "guess").status.as_u16()).collect();
    assert_eq!(tried.iter().filter(|status| **status == 422).count(), 20);
    assert_eq!(tried[39], 429);
}

#[test]
fn a_name_as_long_as_a_book_is_cut_before_it_is_remembered() {
    let crowd = Crowd::new();
    let book = "n".repeat(1_000_000);
    let page = sign_in(&crowd.site, "", &book, "guess").ends(422).text();
    assert!(page.len() < 20_000, "{} letters", page.len());
    let more = "n".repeat(3_000_000);
    assert_eq!(sign_in(&crowd.site, "", &more, "guess").status, 413);
}

fn put_code(site: &Site, code: &str) -> bool {
    let plain: String = code.chars().filter(char::is_ascii_alphanumeric).collect();
    site.store.put_owner_code(TokenHash::of(plain.as_bytes()), crate::crowd::now()).unwrap()
}

fn set_up(site: &Site, code: &str) -> Got {
    put_code(site, code);
    try_code(site, code, "Olga", PASSWORD, PASSWORD)
}

fn try_code(site: &Site, code: &str, name: &str, password: &str, again: &str) -> Got {
    site.put("/set-up", "", &[("code", code), ("name", name), ("password", password), ("again", again)])
}

#[test]
fn the_set_up_code_works_once_and_only_while_nobody_is_there() {
    let site = Site::with(Access::People { public: None });
    put_code(&site, "ABCD-EFGH-JKLM");
    for path in ["/", "/new", "/people", "/slab/00000000-0000-0000-0000-000000000000"] {
        assert_eq!(site.look(path, "").header("location"), "/set-up", "{path}");
    }
    try_code(&site, "AAAA-BBBB-CCCC", "Eve", PASSWORD, PASSWORD).ends(422).holds("not the code in the terminal");
    assert!(site.store.people().unwrap().is_empty());
    let got = try_code(&site, "abcd efgh jklm", "Olga", PASSWORD, PASSWORD).ends(303);
    let cookie = format!("session={}", cookie_set(&got, "session").unwrap());
    assert_eq!(site.look("/people", &cookie).status, 200, "an admin");
    assert_eq!(try_code(&site, "ABCD-EFGH-JKLM", "Eve", PASSWORD, PASSWORD).header("location"), "/sign-in");
    assert!(!put_code(&site, "ZZZZ-YYYY-XXXX"), "no new code once somebody is there");
    assert_eq!(site.store.people().unwrap().len(), 1);
    assert_eq!(site.look("/set-up", "").header("location"), "/sign-in");
}

#[test]
fn what_is_wrong_with_the_set_up_is_said_beside_its_field() {
    let site = Site::with(Access::People { public: None });
    put_code(&site, "ABCD-EFGH-JKLM");
    let short = try_code(&site, "ABCD-EFGH-JKLM", "Olga", "eleven-long", "eleven-long").ends(422);
    assert!(short.text().contains("id=\"mistake-password\"") && short.text().contains("12 to 256"));
    assert!(!short.text().contains("eleven-long"), "a password never comes back");
    assert!(short.text().contains("value=\"Olga\""), "the rest does");
    let other = try_code(&site, "ABCD-EFGH-JKLM", "Olga", PASSWORD, "wet sand and line").ends(422);
    assert!(other.text().contains("id=\"mistake-again\""));
    try_code(&site, "ABCD-EFGH-JKLM", " ", PASSWORD, PASSWORD).ends(422).holds("id=\"mistake-name\"");
    assert!(site.store.people().unwrap().is_empty());
}

#[test]
fn guessing_the_set_up_code_is_slowed() {
    let site = Site::with(Access::People { public: None });
    put_code(&site, "ABCD-EFGH-JKLM");
    let tried: Vec<u16> = (0..8).map(|_| try_code(&site, "AAAA", "Eve", "short", "short").status.as_u16()).collect();
    assert_eq!(tried, [422, 422, 422, 422, 422, 429, 429, 429]);
}

#[test]
fn a_password_of_ones_own_needs_the_old_one_and_ends_all_other_sessions() {
    let crowd = Crowd::new();
    let phone = as_person("Carl");
    let desk = format!("session={}", cookie_set(&sign_in(&crowd.site, "", "Carl", PASSWORD), "session").unwrap());
    let fresh = "quick lime, slow cure";
    let change = |now: &str| {
        let fields = [("now", now), ("password", fresh), ("again", fresh)];
        crowd.site.put("/password", &desk, &fields)
    };
    change("not the password").ends(422).holds("That is not your password now");
    assert_eq!(crowd.site.look("/", &phone).status, 200);
    let got = change(PASSWORD).ends(303);
    let new = format!("session={}", cookie_set(&got, "session").unwrap());
    for old in [&phone, &desk] {
        assert_eq!(crowd.site.look("/", old).status, 303);
    }
    assert_eq!(crowd.site.look("/", &new).status, 200);
    assert_eq!(sign_in(&crowd.site, "", "Carl", PASSWORD).status, 422);
    assert_eq!(sign_in(&crowd.site, "", "Carl", fresh).status, 303);
}

#[test]
fn a_starting_password_is_made_here_shown_once_and_works() {
    let crowd = Crowd::new();
    let owner = as_person("Olga");
    let page = crowd.site.put("/people", &owner, &[("name", "Nico"), ("role", "crew")]).ends(200).text();
    let password = page.split("class=\"secret\">").nth(1).unwrap().split('<').next().unwrap().to_owned();
    assert_eq!(password.len(), 19, "{password}");
    assert!(!crowd.site.look("/people", &owner).text().contains(&password));
    let first = sign_in(&crowd.site, "", "Nico", &password).ends(303);
    let cookie = format!("session={}", cookie_set(&first, "session").unwrap());
    // A new one signs out everywhere.
    let id = crowd.site.store.person_by_name("Nico").unwrap().unwrap().person.id;
    let again = crowd.site.put(&format!("/people/{id}/password"), &owner, &[]).ends(200).text();
    let newer = again.split("class=\"secret\">").nth(1).unwrap().split('<').next().unwrap().to_owned();
    assert_ne!(newer, password);
    assert_eq!(crowd.site.look("/", &cookie).status, 303);
    assert_eq!(sign_in(&crowd.site, "", "Nico", &password).status, 422);
    assert_eq!(sign_in(&crowd.site, "", "Nico", &newer).status, 303);
    crowd.site.put("/people", &owner, &[("name", " nICO"), ("role", "crew")]).ends(422).holds("is or was called");
    let short = crowd.site.put("/people", &owner, &[("name", "Tim"), ("role", "crew"), ("password", "short")]);
    short.ends(422).holds("12 to 256");
}

#[test]
fn a_session_that_is_over_opens_nothing() {
    let crowd = Crowd::new();
    let gina = crowd.site.store.person_by_name("Gina").unwrap().unwrap().person.id;
    let (token, now) = (TokenHash::of(b"old token"), crate::crowd::now());
    crowd.site.store.start_session(token, gina, now - crate::crowd::hours(400), now - crate::crowd::hours(1)).unwrap();
    assert_eq!(crowd.site.look("/", "session=old token").status, 303);
    for odd in
        ["session=", "session=%00", "session=' OR 1=1 --", "session=token of Gina; session=x", "Session=token of Gina"]
    {
        let got = crowd.site.send(request(Method::GET, "/people", &[("cookie", odd)], &[]));
        assert!(got.status == 303 || got.status == 403, "{odd}: {}", got.status);
    }
}
