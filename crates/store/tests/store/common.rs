//! A store in a folder of its own, entries to put in it, and a second way into the database.

use jiff::Timestamp;
use jiff::tz::TimeZone;
use rusqlite::Connection;
use slab_diary::{Context, Entry, SlabId, read_lines};
use store::{NewPerson, Person, PersonId, Role, Store};
use tempfile::TempDir;

pub(crate) fn new_store() -> (TempDir, Store) {
    let dir = tempfile::tempdir().expect("a folder");
    let store = Store::open(dir.path()).expect("it opens");
    (dir, store)
}

pub(crate) fn store_with_slab() -> (TempDir, Store, SlabId) {
    let (dir, store) = new_store();
    let slab = SlabId::of_name("shop");
    store.create_slab(slab, "Creek Road shop").expect("a slab");
    (dir, store, slab)
}

/// The database as any other program would open it.
pub(crate) fn raw(dir: &TempDir) -> Connection {
    Connection::open(dir.path().join("underfoot.sqlite")).expect("it opens")
}

pub(crate) fn context(slab: SlabId) -> Context {
    Context {
        slab,
        zone: TimeZone::get("America/Chicago").expect("a zone"),
        author: "crew".to_owned(),
        device: "phone".to_owned(),
        noted: None,
    }
}

pub(crate) fn read(slab: SlabId, lines: &str) -> Vec<Entry> {
    read_lines(lines, &context(slab)).expect("the lines read")
}

/// Notes with the numbers `from..to` in their text.
pub(crate) fn notes(slab: SlabId, from: usize, to: usize) -> Vec<Entry> {
    let line =
        |n| format!("{{\"happened\":\"2026-03-02 07:00\",\"body\":{{\"kind\":\"note\",\"text\":\"note {n}\"}}}}\n");
    read(slab, &(from..to).map(line).collect::<String>())
}

pub(crate) fn note(slab: SlabId, text: &str) -> Entry {
    let line = serde_json::json!({"happened": "2026-03-02 07:00", "body": {"kind": "note", "text": text}});
    read(slab, &line.to_string()).remove(0)
}

/// A note whose form is newer than this program, with a body that must survive to the letter.
pub(crate) fn from_newer_program(slab: SlabId, body: &str) -> Entry {
    let id = slab_diary::EntryId::of_label(slab, "newer");
    Entry::from_json(&format!(
        "{{\"id\":\"{id}\",\"slab\":\"{slab}\",\"happened\":\"2026-03-02T07:00:00-06:00\",\
         \"noted\":\"2026-03-02T07:00:00-06:00\",\"author\":\"crew\",\"device\":\"phone\",\"schema\":2,\"body\":{body}}}"
    ))
    .expect("a newer body is kept")
}

/// The example of every kind of entry.
pub(crate) fn one_of_every_kind(slab: SlabId) -> Vec<Entry> {
    let lines: Vec<&str> = slab_diary::EntryKind::ALL.iter().map(|kind| kind.schema().example).collect();
    read(slab, &lines.join("\n"))
}

pub(crate) fn moment(text: &str) -> Timestamp {
    text.parse().expect("a moment")
}

/// A password as it is kept. The store never looks at what is between the signs.
pub(crate) const PHC: &str = "$argon2id$v=19$m=19456,t=2,p=1$c2FsdHNhbHQ$aGFzaGhhc2hoYXNoaGFzaA";

pub(crate) fn new_person(number: u128, name: &str) -> NewPerson<'_> {
    NewPerson { id: PersonId::from_u128(number), name, password_phc: PHC, lang: "en", unit_system: "imperial" }
}

pub(crate) fn add_person(store: &Store, number: u128, name: &str, role: Role) -> Person {
    store.add_person(&new_person(number, name), role, moment("2026-03-01T12:00:00Z")).expect("added")
}

/// Adds an entry as any other program could.
pub(crate) fn add_raw(connection: &Connection, insert: &str, entry: &Entry) {
    let text = entry.to_json();
    let digest = blake3::hash(text.as_bytes());
    let sql = format!(
        "{insert} INTO entry (id, slab, happened_us, noted_us, kind, replaces, text, digest)
         VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8)"
    );
    let values = (
        entry.id.to_string(),
        entry.slab.to_string(),
        entry.happened.instant().as_microsecond(),
        entry.noted.instant().as_microsecond(),
        entry.body.kind_name(),
        entry.replaces.map(|id| id.to_string()),
        &text,
        digest.as_bytes(),
    );
    assert_eq!(connection.execute(&sql, values).expect("added"), 1);
}
