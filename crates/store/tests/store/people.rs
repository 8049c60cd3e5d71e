//! People: names, roles, and that an owner is always left.

use std::thread;

use store::{Role, StoreError};

use crate::common::{PHC, add_person, moment, new_person, new_store, note, raw, store_with_slab};

#[test]
fn a_person_comes_back_as_added() {
    let (dir, store) = new_store();
    let now = moment("2026-03-01T12:00:00.25Z");
    let added = store.add_person(&new_person(7, "  Zoë Moss "), Role::Crew, now).expect("added");
    assert_eq!((added.name.as_str(), added.role, added.made, added.closed), ("Zoë Moss", Role::Crew, now, None));
    assert_eq!((added.lang.as_str(), added.unit_system.as_str()), ("en", "imperial"));
    add_person(&store, 8, "ana", Role::Owner);
    drop(store);
    let store = store::Store::open(dir.path()).expect("it opens again");
    assert_eq!(store.person(added.id).expect("read"), Some(added.clone()));
    let names: Vec<String> = store.people().expect("people").into_iter().map(|person| person.name).collect();
    assert_eq!(names, ["ana", "Zoë Moss"]);
    for name in ["Zoë Moss", "ZOË MOSS", " zoë moss  "] {
        let found = store.person_by_name(name).expect("read").expect(name);
        assert_eq!((&found.person, found.password_phc.as_str()), (&added, PHC));
        assert!(!format!("{found:?}").contains("argon2id"), "the hash must not reach a log");
    }
    assert_eq!(store.person_by_name("Zoë").expect("read"), None);
    assert_eq!(store.person(new_person(9, "x").id).expect("read"), None);
}

#[test]
fn a_taken_name_is_refused() {
    let (_dir, store) = new_store();
    add_person(&store, 1, "Ñandú", Role::Owner);
    let gone = add_person(&store, 2, "Lee", Role::Crew);
    let now = moment("2026-03-02T12:00:00Z");
    store.close_person(gone.id, now).expect("closed");
    for name in ["ñANDÚ", "LEE"] {
        let error = store.add_person(&new_person(3, name), Role::Crew, now).expect_err("taken");
        assert!(matches!(&error, StoreError::PersonNameTaken { name: taken } if taken == name), "{error}");
    }
    assert_eq!(store.people().expect("people").len(), 2);
}

#[test]
fn what_cannot_be_kept_is_refused() {
    let (_dir, store) = new_store();
    let now = moment("2026-03-02T12:00:00Z");
    let long = "a".repeat(81);
    for name in ["", "  ", "two\nlines", long.as_str()] {
        let error = store.add_person(&new_person(1, name), Role::Crew, now).expect_err(name);
        assert!(matches!(error, StoreError::Field { field: "person name", .. }), "{error}");
    }
    for code in ["", "en us", "en;", "é", &long] {
        let mut person = new_person(1, "Ana");
        person.lang = code;
        let error = store.add_person(&person, Role::Crew, now).expect_err(code);
        assert!(matches!(&error, StoreError::Field { field: "lang", .. }), "{error}");
    }
    let (spaced, too_long) = (format!("{PHC} "), format!("{PHC}{}", "a".repeat(500)));
    for password in ["hunter2", "", "$1", "$plain text$a$b", "forgot$to$hash$it", &spaced, &too_long] {
        let mut person = new_person(1, "Ana");
        person.password_phc = password;
        let error = store.add_person(&person, Role::Crew, now).expect_err(password);
        assert!(matches!(error, StoreError::PasswordNotHashed), "{error}");
        assert!(password.is_empty() || !error.to_string().contains(password), "{error}");
    }
    assert!(store.people().expect("people").is_empty());
}

#[test]
fn password_role_and_reading_change() {
    let (_dir, store) = new_store();
    add_person(&store, 1, "Ana", Role::Owner);
    let lee = add_person(&store, 2, "Lee", Role::Guest);
    let other = PHC.replace("v=19", "v=16");
    store.set_password(lee.id, &other).expect("set");
    store.set_role(lee.id, Role::Crew).expect("set");
    store.set_reading(lee.id, "es", "metric").expect("set");
    let found = store.person_by_name("lee").expect("read").expect("Lee");
    assert_eq!((found.password_phc, found.person.role), (other, Role::Crew));
    assert_eq!((found.person.lang.as_str(), found.person.unit_system.as_str()), ("es", "metric"));
    let ana = store.person_by_name("ana").expect("read").expect("Ana");
    assert_eq!((ana.password_phc.as_str(), ana.person.lang.as_str(), ana.person.role), (PHC, "en", Role::Owner));

    assert!(matches!(store.set_password(lee.id, "open"), Err(StoreError::PasswordNotHashed)));
    assert!(matches!(store.set_reading(lee.id, "es", ""), Err(StoreError::Field { field: "unit_system", .. })));
    let nobody = new_person(9, "x").id;
    for result in [
        store.set_password(nobody, PHC),
        store.set_role(nobody, Role::Crew),
        store.set_reading(nobody, "es", "metric"),
        store.close_person(nobody, moment("2026-03-02T12:00:00Z")).map(drop),
    ] {
        assert!(matches!(result, Err(StoreError::NoSuchPerson(id)) if id == nobody));
    }
}

#[test]
fn a_closed_person_stays_but_cannot_be_changed() {
    let (_dir, store, slab) = store_with_slab();
    add_person(&store, 1, "Ana", Role::Owner);
    let crew = add_person(&store, 2, "crew", Role::Crew);
    store.append(slab, &[note(slab, "by crew")]).expect("added");
    let before = store.diary(slab).expect("a diary");
    let now = moment("2026-03-02T12:00:00Z");
    assert!(store.close_person(crew.id, now).expect("closed"));
    assert!(!store.close_person(crew.id, moment("2026-03-03T12:00:00Z")).expect("closed already"));
    let kept = store.person(crew.id).expect("read").expect("still there");
    assert_eq!((kept.closed, kept.name), (Some(now), crew.name));
    assert_eq!(store.person_by_name("crew").expect("read"), None);
    assert_eq!(store.people().expect("people").len(), 2);
    assert_eq!(store.diary(slab).expect("a diary"), before);
    for result in [
        store.set_password(crew.id, PHC),
        store.set_role(crew.id, Role::Owner),
        store.set_reading(crew.id, "es", "metric"),
    ] {
        assert!(matches!(&result, Err(StoreError::PersonClosed { since, .. }) if *since == now), "{result:?}");
    }
}

#[test]
fn the_last_owner_is_neither_closed_nor_demoted() {
    let (_dir, store) = new_store();
    let ana = add_person(&store, 1, "Ana", Role::Owner);
    let bo = add_person(&store, 2, "Bo", Role::Owner);
    add_person(&store, 3, "Lee", Role::Crew);
    let now = moment("2026-03-02T12:00:00Z");
    store.close_person(bo.id, now).expect("another owner is left");
    for role in [Role::Crew, Role::Guest] {
        let error = store.set_role(ana.id, role).expect_err("a closed owner does not count");
        assert!(matches!(&error, StoreError::LastOwner { name } if name == "Ana"), "{error}");
    }
    store.set_role(ana.id, Role::Owner).expect("no change is no demotion");
    let error = store.close_person(ana.id, now).expect_err("the last owner");
    assert!(matches!(error, StoreError::LastOwner { .. }), "{error}");
    assert_eq!(store.person(ana.id).expect("read"), Some(ana));
}

#[test]
fn owners_who_demote_each_other_at_the_same_moment_leave_one() {
    let (_dir, store) = new_store();
    let owners: Vec<_> = (0..8).map(|n| add_person(&store, n, &format!("owner {n}"), Role::Owner).id).collect();
    thread::scope(|scope| {
        for id in &owners {
            scope.spawn(|| store.set_role(*id, Role::Guest).is_ok());
        }
    });
    let left = store.people().expect("people").into_iter().filter(|person| person.role == Role::Owner).count();
    assert_eq!(left, 1);
}

#[test]
fn roles_have_their_words() {
    for role in Role::ALL {
        assert_eq!(role.name().parse::<Role>().expect("a role"), role);
    }
    let error = "boss".parse::<Role>().expect_err("no role").to_string();
    assert_eq!(error, "role \"boss\"; accepted: owner, crew or guest");
    let (dir, store) = new_store();
    add_person(&store, 1, "Ana", Role::Owner);
    raw(&dir).execute("UPDATE person SET role = 'boss'", []).expect_err("the table refuses it too");
}
