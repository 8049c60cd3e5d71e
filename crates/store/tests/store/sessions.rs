//! Sessions: good from sign-in until their end, and only for a person who may sign in.

use std::fs;

use store::{PersonId, Role, Store, StoreError, TokenHash};
use tempfile::TempDir;

use crate::common::{add_person, moment, new_store, raw};

const SIGNED_IN: &str = "2026-03-01T12:00:00Z";
const OVER: &str = "2026-03-15T12:00:00Z";
const BEFORE_OVER: &str = "2026-03-15T11:59:59.999999Z";

fn signed_in() -> (TempDir, Store, PersonId, TokenHash) {
    let (dir, store) = new_store();
    add_person(&store, 1, "Ana", Role::Owner);
    let lee = add_person(&store, 2, "Lee", Role::Crew).id;
    let token = TokenHash::of(b"a token of Lee");
    store.start_session(token, lee, moment(SIGNED_IN), moment(OVER)).expect("started");
    (dir, store, lee, token)
}

#[test]
fn a_session_is_good_until_its_end() {
    let (dir, store, lee, token) = signed_in();
    drop(store);
    let store = Store::open(dir.path()).expect("it opens again");
    for now in [SIGNED_IN, BEFORE_OVER] {
        let session = store.session(token, moment(now)).expect("read").expect("it is good");
        assert_eq!((session.person.id, session.person.role), (lee, Role::Crew));
        assert_eq!((session.made, session.expires), (moment(SIGNED_IN), moment(OVER)));
    }
    for now in [OVER, "2027-01-01T00:00:00Z"] {
        assert_eq!(store.session(token, moment(now)).expect("read"), None);
    }
    assert_eq!(store.session(TokenHash::of(b"another"), moment(SIGNED_IN)).expect("read"), None);
}

#[test]
fn it_shows_the_person_as_they_are_now() {
    let (_dir, store, lee, token) = signed_in();
    store.set_role(lee, Role::Guest).expect("set");
    store.set_reading(lee, "es", "metric").expect("set");
    let person = store.session(token, moment(SIGNED_IN)).expect("read").expect("it is good").person;
    assert_eq!((person.role, person.lang.as_str()), (Role::Guest, "es"));
}

#[test]
fn use_is_noted_and_never_goes_back() {
    let (_dir, store, _, token) = signed_in();
    let last_seen = || store.session(token, moment(SIGNED_IN)).expect("read").expect("it is good").last_seen;
    assert_eq!(last_seen(), moment(SIGNED_IN));
    let later = moment("2026-03-01T12:05:00Z");
    assert!(store.touch_session(token, later).expect("noted"));
    assert!(store.touch_session(token, moment("2026-03-01T12:01:00Z")).expect("a slower request"));
    assert_eq!(last_seen(), later);
    assert!(!store.touch_session(token, moment(OVER)).expect("it is over"));
    assert!(!store.touch_session(TokenHash::of(b"another"), later).expect("there is none"));
}

#[test]
fn it_ends_when_asked() {
    let (_dir, store, lee, token) = signed_in();
    let ana = add_person(&store, 3, "Bo", Role::Guest).id;
    let (phone, other) = (TokenHash::of(b"phone"), TokenHash::of(b"other"));
    let (now, end) = (moment(SIGNED_IN), moment(OVER));
    store.start_session(phone, lee, now, end).expect("started");
    store.start_session(other, ana, now, end).expect("started");
    let good = || [token, phone, other].map(|t| store.session(t, now).expect("read").is_some());
    assert!(store.end_session(token).expect("ended"));
    assert!(!store.end_session(token).expect("ended already"));
    assert_eq!(good(), [false, true, true]);
    store.start_session(token, lee, now, end).expect("started");
    assert_eq!(store.end_sessions_of(lee).expect("ended"), 2);
    assert_eq!(good(), [false, false, true]);
}

#[test]
fn a_closed_person_has_none() {
    let (dir, store, lee, token) = signed_in();
    store.close_person(lee, moment(SIGNED_IN)).expect("closed");
    assert_eq!(store.session(token, moment(SIGNED_IN)).expect("read"), None);
    let count: i64 = raw(&dir).query_row("SELECT count(*) FROM session", [], |row| row.get(0)).expect("a count");
    assert_eq!(count, 0);
    let error = store.start_session(token, lee, moment(SIGNED_IN), moment(OVER)).expect_err("closed");
    assert!(matches!(error, StoreError::PersonClosed { .. }), "{error}");
    let nobody = PersonId::from_u128(9);
    let error = store.start_session(token, nobody, moment(SIGNED_IN), moment(OVER)).expect_err("nobody");
    assert!(matches!(error, StoreError::NoSuchPerson(id) if id == nobody), "{error}");
}

#[test]
fn even_a_row_left_behind_opens_nothing_for_a_closed_person() {
    let (dir, store, lee, token) = signed_in();
    raw(&dir).execute("UPDATE person SET closed_us = 0 WHERE id = ?1", [lee.to_string()]).expect("closed");
    assert_eq!(store.session(token, moment(SIGNED_IN)).expect("read"), None);
}

#[test]
fn those_that_are_over_are_dropped() {
    let (_dir, store, lee, token) = signed_in();
    let longer = TokenHash::of(b"longer");
    store.start_session(longer, lee, moment(SIGNED_IN), moment("2026-03-15T12:00:00.000001Z")).expect("started");
    assert_eq!(store.drop_expired_sessions(moment(BEFORE_OVER)).expect("none"), 0);
    assert_eq!(store.drop_expired_sessions(moment(OVER)).expect("dropped"), 1);
    assert_eq!(store.session(token, moment(SIGNED_IN)).expect("read"), None, "it is gone");
    assert!(store.session(longer, moment(OVER)).expect("read").is_some());
}

#[test]
fn an_end_before_the_beginning_is_refused() {
    let (_dir, store, lee, _) = signed_in();
    for end in [SIGNED_IN, "2026-02-01T00:00:00Z"] {
        let error = store.start_session(TokenHash::of(b"x"), lee, moment(SIGNED_IN), moment(end)).expect_err(end);
        assert!(matches!(error, StoreError::Field { field: "session end", .. }), "{error}");
    }
}

#[test]
fn only_the_published_hash_of_a_token_is_kept() {
    let (dir, store, lee, _) = signed_in();
    store.start_session(TokenHash::of(&[0]), lee, moment(SIGNED_IN), moment(OVER)).expect("started");
    // Test vector of the BLAKE3 reference implementation (test_vectors.json, input_len 1: byte 0). V2.
    let hash = "2D3ADEDFF11B61F14C886E35AFA036736DCD87A74D27B5C1510225D0F592E213";
    let found: bool = raw(&dir)
        .query_row("SELECT EXISTS (SELECT 1 FROM session WHERE hex(token_hash) = ?1)", [hash], |row| row.get(0))
        .expect("a row");
    assert!(found);
    drop(store);
    for file in fs::read_dir(dir.path()).expect("a folder").map(|file| file.expect("a file").path()) {
        if file.is_file() {
            let bytes = fs::read(&file).expect("bytes");
            assert!(!bytes.windows(14).any(|window| window == b"a token of Lee"), "{}", file.display());
        }
    }
}
