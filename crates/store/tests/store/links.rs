//! Share links: what opens them, what closes them.

use slab_diary::SlabId;
use store::{LinkId, LinkState, NewLink, PersonId, Role, Store, StoreError, TokenHash};

use crate::common::{add_person, moment, store_with_slab};

const MADE: &str = "2026-03-01T12:00:00Z";
const OVER: &str = "2026-06-01T12:00:00Z";
const BEFORE_OVER: &str = "2026-06-01T11:59:59.999999Z";

fn new_link(number: u128, slab: SlabId) -> NewLink<'static> {
    NewLink {
        id: LinkId::from_u128(number),
        token: TokenHash::of(&number.to_le_bytes()),
        slab,
        pages: &["standing", "hand_over"],
        note: "for the owner of the shop",
        made_by: None,
        expires: moment(OVER),
    }
}

#[test]
fn a_link_comes_back_as_made_and_opens_until_its_end() {
    let (dir, store, slab) = store_with_slab();
    let ana = add_person(&store, 1, "Ana", Role::Owner).id;
    let new = NewLink { made_by: Some(ana), ..new_link(1, slab) };
    let link = store.add_link(&new, moment(MADE)).expect("made");
    assert_eq!((link.id, link.slab, link.made_by), (new.id, slab, Some(ana)));
    assert_eq!(
        (link.pages.as_slice(), link.note.as_str()),
        (&["standing".to_owned(), "hand_over".to_owned()][..], new.note)
    );
    assert_eq!((link.made, link.expires, link.withdrawn), (moment(MADE), moment(OVER), None));
    drop(store);
    let store = Store::open(dir.path()).expect("it opens again");
    for now in [MADE, BEFORE_OVER] {
        assert_eq!(store.link_by_token(new.token, moment(now)).expect("read"), Some(link.clone()));
        assert!(link.is_open(moment(now)));
    }
    assert_eq!(store.link_by_token(new.token, moment(OVER)).expect("read"), None);
    assert!(!link.is_open(moment(OVER)));
    assert_eq!(store.link_state(new.token, moment(OVER)).expect("read"), LinkState::Expired(moment(OVER)));
    let other = TokenHash::of(b"guessed");
    assert_eq!(store.link_state(other, moment(MADE)).expect("read"), LinkState::Unknown);
    assert_eq!(store.link_by_token(other, moment(MADE)).expect("read"), None);
}

#[test]
fn a_withdrawn_link_opens_nothing_and_stays_so() {
    let (_dir, store, slab) = store_with_slab();
    let (one, two) = (new_link(1, slab), new_link(2, slab));
    for link in [&one, &two] {
        store.add_link(link, moment(MADE)).expect("made");
    }
    let when = moment("2026-04-01T12:00:00Z");
    assert!(store.withdraw_link(one.id, when).expect("withdrawn"));
    assert!(!store.withdraw_link(one.id, moment(BEFORE_OVER)).expect("withdrawn already"));
    assert!(!store.withdraw_link(LinkId::from_u128(9), when).expect("not there"));
    for now in [MADE, BEFORE_OVER, "2027-01-01T00:00:00Z"] {
        assert_eq!(store.link_state(one.token, moment(now)).expect("read"), LinkState::Withdrawn(when));
        assert_eq!(store.link_by_token(one.token, moment(now)).expect("read"), None);
    }
    assert!(store.link_by_token(two.token, when).expect("read").is_some());
}

#[test]
fn a_slab_lists_its_own_links_newest_first() {
    let (_dir, store, slab) = store_with_slab();
    let house = SlabId::of_name("house");
    store.create_slab(house, "house").expect("a slab");
    for (number, of, made) in [
        (1, slab, "2026-03-01T12:00:00Z"),
        (2, slab, "2026-03-03T12:00:00Z"),
        (3, house, MADE),
        (4, slab, "2026-03-02T12:00:00Z"),
    ] {
        store.add_link(&new_link(number, of), moment(made)).expect("made");
    }
    store.withdraw_link(LinkId::from_u128(4), moment(OVER)).expect("withdrawn");
    let ids = |slab| -> Vec<u128> {
        store.links_of(slab).expect("links").into_iter().map(|link| link.id.as_u128()).collect()
    };
    assert_eq!((ids(slab), ids(house), ids(SlabId::of_name("barn"))), (vec![2, 4, 1], vec![3], vec![]));
}

#[test]
fn what_cannot_be_a_link_is_refused() {
    let (_dir, store, slab) = store_with_slab();
    let now = moment(MADE);
    let add = |link: NewLink<'_>| store.add_link(&link, now).expect_err("refused");
    for pages in [&[][..], &[""], &["standing", "two words"], &["a\"b"], &["a,b"]] {
        let error = add(NewLink { pages, ..new_link(1, slab) });
        assert!(matches!(error, StoreError::Field { field: "link pages", .. }), "{error}");
    }
    let note = "a".repeat(501);
    let error = add(NewLink { note: &note, ..new_link(1, slab) });
    assert!(matches!(error, StoreError::Field { field: "link note", .. }), "{error}");
    let error = add(NewLink { expires: now, ..new_link(1, slab) });
    assert!(matches!(error, StoreError::Field { field: "link end", .. }), "{error}");
    let error = add(new_link(1, SlabId::of_name("barn")));
    assert!(matches!(error, StoreError::NoSuchSlab { .. }), "{error}");
    let error = add(NewLink { made_by: Some(PersonId::from_u128(9)), ..new_link(1, slab) });
    assert!(matches!(error, StoreError::NoSuchPerson(_)), "{error}");
    assert!(store.links_of(slab).expect("links").is_empty());
}

#[test]
fn one_token_opens_one_link() {
    let (_dir, store, slab) = store_with_slab();
    store.add_link(&new_link(1, slab), moment(MADE)).expect("made");
    let twin = NewLink { id: LinkId::from_u128(2), ..new_link(1, slab) };
    store.add_link(&twin, moment(MADE)).expect_err("the token is taken");
    assert_eq!(store.links_of(slab).expect("links").len(), 1);
}
