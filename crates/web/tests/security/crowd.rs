//! A server with people: an owner, crew and a guest, each with a session, and a slab with entries.

use std::sync::atomic::{AtomicU32, Ordering};

use argon2::password_hash::PasswordHasher;
use argon2::password_hash::phc::PasswordHash;
use axum::body::Body;
use axum::http::header::{CONTENT_TYPE, HOST};
use axum::http::{Method, Request};
use jiff::{SignedDuration, Timestamp};
use slab_diary::{EntryId, PhotoHash, SlabId};
use store::{LinkId, NewLink, NewPerson, Person, PersonId, Role, TokenHash};
use web::Access;

use crate::common::{DEMO, Got, NOW, Site};
use crate::pictures::jpeg;

/// The password of everybody here.
pub(crate) const PASSWORD: &str = "wet sand and lime";

pub(crate) fn now() -> Timestamp {
    NOW.parse().unwrap()
}

pub(crate) fn hours(hours: i64) -> SignedDuration {
    SignedDuration::from_hours(hours)
}

/// A hash that costs nothing to check: its parameters stand in it.
fn cheap(password: &str) -> String {
    let few = argon2::Params::new(8, 1, 1, None).unwrap();
    let cheap = argon2::Argon2::new(argon2::Algorithm::Argon2id, argon2::Version::V0x13, few);
    let hash: PasswordHash = cheap.hash_password_with_salt(password.as_bytes(), b"salt of a test..").unwrap();
    hash.to_string()
}

pub(crate) struct Crowd {
    pub(crate) site: Site,
    pub(crate) slab: SlabId,
    pub(crate) entry: EntryId,
    pub(crate) photo: PhotoHash,
}

impl Crowd {
    pub(crate) fn new() -> Self {
        Self::at(None)
    }

    pub(crate) fn at(public: Option<&str>) -> Self {
        let site = Site::with(Access::People { public: public.map(str::to_owned) });
        for (n, name, role) in [(1, "Olga", Role::Owner), (2, "Carl", Role::Crew), (3, "Gina", Role::Guest)] {
            add(&site, n, name, role);
        }
        let slab = site.slab("Creek Road shop", DEMO);
        let hash = site.store.put_photograph(&jpeg()).unwrap();
        let line = format!(
            r#"{{"happened":"2026-03-20 09:00","photographs":["{}"],"body":{{"kind":"slab_photograph"}}}}"#,
            hash.as_str()
        );
        let entry = site.add(slab, &line);
        Self { site, slab, entry, photo: hash }
    }

    /// What fills the holes of every path; the link shows everything.
    pub(crate) fn holes(&self) -> Vec<(&'static str, String)> {
        let all = ["standing", "plan", "diary", "photographs", "order", "choice"];
        let (token, link) = link(&self.site, self.slab, &all, now() + hours(1));
        let other = match self.site.store.person_by_name("Petra").unwrap() {
            Some(there) => there.person,
            None => add(&self.site, 90, "Petra", Role::Crew),
        };
        vec![
            ("slab", self.slab.to_string()),
            ("entry", self.entry.to_string()),
            ("hash", self.photo.as_str().to_owned()),
            ("kind", "note".to_owned()),
            ("person", other.id.to_string()),
            ("link", link.to_string()),
            ("token", token),
            ("sum", "dew-point".to_owned()),
            ("name", "no-such-work".to_owned()),
        ]
    }
}

/// Adds a person with [`PASSWORD`] and a session under the cookie that [`as_person`] gives.
pub(crate) fn add(site: &Site, number: u128, name: &str, role: Role) -> Person {
    let id = PersonId::from_u128(number);
    let phc = cheap(PASSWORD);
    let new = NewPerson { id, name, password_phc: &phc, lang: "en", unit_system: "imperial" };
    let person = site.store.add_person(&new, role, now()).unwrap();
    let token = TokenHash::of(format!("token of {name}").as_bytes());
    site.store.start_session(token, id, now() - hours(1), now() + hours(24)).unwrap();
    person
}

/// The cookie of a person added here.
pub(crate) fn as_person(name: &str) -> String {
    format!("session=token of {name}")
}

static LINKS: AtomicU32 = AtomicU32::new(1);

/// A link to pages of a slab: its token and its id.
pub(crate) fn link(site: &Site, slab: SlabId, pages: &[&str], expires: Timestamp) -> (String, LinkId) {
    let number = LINKS.fetch_add(1, Ordering::Relaxed);
    let token = blake3::hash(&number.to_le_bytes()).to_hex().to_string();
    let id = LinkId::from_u128(u128::from(number));
    let new = NewLink {
        id,
        token: TokenHash::of(token.as_bytes()),
        slab,
        pages,
        note: "Rosa, owner",
        made_by: None,
        expires,
    };
    site.store.add_link(&new, now() - hours(48)).unwrap();
    (token, id)
}

/// A request with these headers besides the usual ones; what is sent is a form.
pub(crate) fn request(method: Method, path: &str, headers: &[(&str, &str)], fields: &[(&str, &str)]) -> Request<Body> {
    let body = form_urlencoded::Serializer::new(String::new()).extend_pairs(fields).finish();
    let mut request = Request::builder().method(method.clone()).uri(path);
    if !headers.iter().any(|(name, _)| *name == "host") {
        request = request.header(HOST, "localhost");
    }
    if method == Method::POST {
        request = request.header(CONTENT_TYPE, "application/x-www-form-urlencoded");
    }
    for (name, value) in headers {
        request = request.header(*name, *value);
    }
    request.body(Body::from(body)).unwrap()
}

impl Site {
    /// One more entry, as a line of a diary file; which it is.
    pub(crate) fn add(&self, slab: SlabId, line: &str) -> EntryId {
        let context = slab_diary::Context {
            slab,
            zone: jiff::tz::TimeZone::UTC,
            author: "diary file".to_owned(),
            device: "diary file".to_owned(),
            noted: None,
        };
        let entries = slab_diary::read_lines(line, &context).unwrap_or_else(|errors| panic!("{line}: {errors:?}"));
        self.store.append(slab, &entries).unwrap();
        entries[0].id
    }

    pub(crate) fn look(&self, path: &str, cookies: &str) -> Got {
        self.send(request(Method::GET, path, &[("cookie", cookies)], &[]))
    }

    pub(crate) fn put(&self, path: &str, cookies: &str, fields: &[(&str, &str)]) -> Got {
        self.send(request(Method::POST, path, &[("cookie", cookies)], fields))
    }

    /// How many entries a slab has.
    pub(crate) fn entries(&self, slab: SlabId) -> u64 {
        self.store.slab_record(slab).unwrap().unwrap().entries
    }
}

/// The value of a cookie that an answer sets.
pub(crate) fn cookie_set(got: &Got, name: &str) -> Option<String> {
    let all = got.headers.get_all("set-cookie").iter().map(|value| value.to_str().unwrap());
    let mut found = all.filter_map(|value| value.split(';').next()?.strip_prefix(&format!("{name}=")));
    found.next().map(str::to_owned)
}

/// Every cookie header of an answer.
pub(crate) fn cookies_of(got: &Got) -> Vec<String> {
    got.headers.get_all("set-cookie").iter().map(|value| value.to_str().unwrap().to_owned()).collect()
}

/// Header names that must be on every answer, and a part of their value.
pub(crate) const ALWAYS: [(&str, &str); 8] = [
    ("content-security-policy", "default-src 'none'; script-src 'self'; style-src 'self';"),
    ("content-security-policy", "frame-ancestors 'none'"),
    ("x-content-type-options", "nosniff"),
    ("x-frame-options", "DENY"),
    ("cross-origin-opener-policy", "same-origin"),
    ("cross-origin-resource-policy", "same-origin"),
    ("permissions-policy", "geolocation=()"),
    ("cache-control", ""),
];

/// Stops unless the answer carries what every answer must.
#[track_caller]
pub(crate) fn is_guarded(got: &Got, what: &str) {
    for (name, part) in ALWAYS {
        assert!(got.headers.contains_key(name), "{what}: no {name}");
        assert!(got.header(name).contains(part), "{what}: {name} is {}", got.header(name));
    }
    let referrer = got.header("referrer-policy");
    assert!(referrer == "same-origin" || referrer == "no-referrer", "{what}: {referrer}");
    assert!(!got.header("content-security-policy").contains("unsafe"), "{what}");
    for cookie in cookies_of(got) {
        assert!(cookie.contains("; HttpOnly"), "{what}: {cookie}");
        assert!(cookie.contains("; SameSite=Lax"), "{what}: {cookie}");
        assert!(cookie.contains("; Path=/"), "{what}: {cookie}");
    }
}
