//! The set-up code: good once, for the first owner only.

use std::thread;

use store::{Role, StoreError, TokenHash};

use crate::common::{add_person, moment, new_person, new_store, raw};

#[test]
fn the_code_lets_the_first_owner_in_once() {
    let (dir, store) = new_store();
    let (code, now) = (TokenHash::of(b"the code"), moment("2026-03-01T12:00:00Z"));
    let ana = new_person(1, "Ana");
    assert!(!store.set_up_owner(code, now, &ana).expect("no code was kept"));
    assert!(store.put_owner_code(code, now).expect("kept"));
    assert!(!store.set_up_owner(TokenHash::of(b"another"), now, &ana).expect("a wrong code"));
    assert!(store.people().expect("people").is_empty());
    assert!(store.set_up_owner(code, now, &ana).expect("set up"));
    let people = store.people().expect("people");
    assert_eq!((people.len(), people[0].id, people[0].role, people[0].made), (1, ana.id, Role::Owner, now));
    let kept: i64 = raw(&dir).query_row("SELECT count(*) FROM owner_code", [], |row| row.get(0)).expect("a count");
    assert_eq!(kept, 0);
    assert!(!store.set_up_owner(code, now, &new_person(2, "Eve")).expect("used up"));
    assert!(!store.put_owner_code(code, now).expect("somebody is there"));
    assert!(!store.set_up_owner(code, now, &new_person(2, "Eve")).expect("nothing was kept"));
    assert_eq!(store.people().expect("people").len(), 1);
}

#[test]
fn a_newer_code_replaces_the_older() {
    let (_dir, store) = new_store();
    let now = moment("2026-03-01T12:00:00Z");
    for code in ["old", "new"] {
        assert!(store.put_owner_code(TokenHash::of(code.as_bytes()), now).expect("kept"));
    }
    assert!(!store.set_up_owner(TokenHash::of(b"old"), now, &new_person(1, "Ana")).expect("replaced"));
    assert!(store.set_up_owner(TokenHash::of(b"new"), now, &new_person(1, "Ana")).expect("set up"));
}

#[test]
fn a_kept_code_opens_nothing_once_somebody_is_there() {
    let (_dir, store) = new_store();
    let (code, now) = (TokenHash::of(b"the code"), moment("2026-03-01T12:00:00Z"));
    store.put_owner_code(code, now).expect("kept");
    let guest = add_person(&store, 1, "Lee", Role::Guest);
    assert!(!store.set_up_owner(code, now, &new_person(2, "Eve")).expect("too late"));
    assert_eq!(store.people().expect("people"), [guest]);
}

#[test]
fn a_refused_owner_leaves_the_code_good() {
    let (_dir, store) = new_store();
    let (code, now) = (TokenHash::of(b"the code"), moment("2026-03-01T12:00:00Z"));
    store.put_owner_code(code, now).expect("kept");
    let error = store.set_up_owner(code, now, &new_person(1, " ")).expect_err("no name");
    assert!(matches!(error, StoreError::Field { field: "person name", .. }), "{error}");
    assert!(store.set_up_owner(code, now, &new_person(1, "Ana")).expect("set up"));
}

#[test]
fn of_many_at_the_same_moment_one_becomes_owner() {
    let (_dir, store) = new_store();
    let (code, now) = (TokenHash::of(b"the code"), moment("2026-03-01T12:00:00Z"));
    store.put_owner_code(code, now).expect("kept");
    let owners: usize = thread::scope(|scope| {
        let store = &store;
        let tries: Vec<_> = (0..8_u128)
            .map(|n| {
                scope
                    .spawn(move || store.set_up_owner(code, now, &new_person(n, &format!("owner {n}"))).expect("tried"))
            })
            .collect();
        tries.into_iter().map(|one| usize::from(one.join().expect("it ended"))).sum()
    });
    assert_eq!((owners, store.people().expect("people").len()), (1, 1));
}
