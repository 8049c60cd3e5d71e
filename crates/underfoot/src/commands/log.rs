//! Write entries into a diary. All are written or none.

use crate::out::answer;
use std::io::Read;
use std::path::Path;

use jiff::tz::TimeZone;
use serde_json::{Map, Value, json};
use slab_diary::{ComplaintKind, Context, Diary, Draft, Entry, PhotoHash, SlabId, When, complaints, read_lines};
use trade_facts::Trade;

use super::{fields, series};
use crate::cli::Log;
use crate::failure::{Answer, Failure};
use crate::session::{Session, fresh_id, now, zone_of};

pub(crate) fn run(session: &Session, log: &Log) -> Result<Answer, Failure> {
    if let Some(path) = &log.from {
        let text = read_text(path)?;
        // A whole diary opens its own slab; lines without a job under an unknown name do not.
        if let Some(name) = log.slab.as_deref().filter(|name| session.is_free(name) && opens_a_job(&text)) {
            return open_and_read(session, name, &text);
        }
        let slab = session.find(log.slab.as_deref())?.id;
        return report(session, from_lines(session, slab, &text)?);
    }
    let record = session.find(log.slab.as_deref())?;
    let kind = log.kind.as_deref().unwrap_or_default().replace('-', "_");
    let zone = zone_of(&session.diary(&record)?);
    let happened = log.happened.as_deref();
    let place = fields::place(&log.place)?;
    let body = if kind == "air_series" {
        series::body(log, &zone)?
    } else {
        fields::body(record.id, &kind, Map::new(), &log.fields)?
    };
    let photographs = photographs(&log.photo)?;
    let hashes = photographs.iter().map(|bytes| PhotoHash::of(bytes)).collect();
    let entry = draft_entry(session, record.id, &zone, happened, place, hashes, body)?;
    let diary = session.store.diary(record.id).map_err(Failure::data)?;
    check(&diary, std::slice::from_ref(&entry), InFuture::Refused, None)?;
    // A photograph is on disk before the entry that names it, but not before the entry may be written.
    for bytes in &photographs {
        session.store.put_photograph(bytes).map_err(Failure::data)?;
    }
    report(session, write(session, record.id, &[entry])?)
}

/// How many entries were new, and how many the diary had already.
#[derive(Debug, Clone)]
pub(crate) struct Written {
    pub(crate) added: u64,
    pub(crate) already: u64,
    pub(crate) ids: Vec<String>,
}

fn opens_a_job(text: &str) -> bool {
    text.lines().filter_map(|line| serde_json::from_str::<Value>(line).ok()).any(|line| {
        line.pointer("/body/kind").and_then(Value::as_str).is_some_and(|kind| kind.replace('-', "_") == "job_opened")
    })
}

/// Opens a slab for a diary that is read in whole. When the diary can't be read no slab is left.
fn open_and_read(session: &Session, name: &str, text: &str) -> Result<Answer, Failure> {
    let id = SlabId::of_name(name.trim());
    let empty = Diary::new();
    check(&empty, &read(session, id, &empty, text)?, InFuture::Kept, Some(text))?;
    session.store.create_slab(id, name.trim()).map_err(Failure::data)?;
    report(session, from_lines(session, id, text)?)
}

/// Reads and writes a whole file of lines.
pub(crate) fn from_lines(session: &Session, slab: SlabId, text: &str) -> Result<Written, Failure> {
    let diary = session.store.diary(slab).map_err(Failure::data)?;
    let entries = read(session, slab, &diary, text)?;
    check(&diary, &entries, InFuture::Told, Some(text))?;
    write(session, slab, &entries)
}

fn read(session: &Session, slab: SlabId, diary: &Diary, text: &str) -> Result<Vec<Entry>, Failure> {
    // Nothing of this machine or person is filled in: the same file read elsewhere, or by somebody
    // else, must give the same entries.
    let context = Context {
        slab,
        zone: zone_of(diary),
        author: session.named_author.clone().unwrap_or_else(|| "diary file".to_owned()),
        device: "diary file".to_owned(),
        noted: None,
    };
    read_lines(text, &context).map_err(|errors| {
        let told: Vec<String> = errors.iter().map(ToString::to_string).collect();
        Failure::Data(format!("nothing was written; {}", told.join("\n  ")))
    })
}

fn read_text(path: &Path) -> Result<String, Failure> {
    let mut text = String::new();
    if path == Path::new("-") {
        std::io::stdin().read_to_string(&mut text).map_err(|e| Failure::file(path, &e))?;
    } else {
        text = std::fs::read_to_string(path).map_err(|e| Failure::file(path, &e))?;
    }
    Ok(text)
}

/// The photographs as they are kept: they say when they were taken and which way is up, never where.
fn photographs(files: &[std::path::PathBuf]) -> Result<Vec<Vec<u8>>, Failure> {
    let kept = |path: &std::path::PathBuf| {
        let bytes = std::fs::read(path).map_err(|e| Failure::file(path, &e))?;
        photo::inspect(&bytes)
            .and_then(|_| photo::without_location(bytes))
            .map_err(|e| Failure::Data(format!("photo \"{}\": {e}", path.display())))
    };
    files.iter().map(kept).collect()
}

/// An entry made here and now.
pub(crate) fn draft_entry(
    session: &Session,
    slab: SlabId,
    zone: &TimeZone,
    happened: Option<&str>,
    place: Option<Value>,
    photographs: Vec<PhotoHash>,
    body: Value,
) -> Result<Entry, Failure> {
    let now = When::new(now(), zone);
    let mut line = Map::new();
    line.insert("id".to_owned(), json!(fresh_id().to_string()));
    line.insert("happened".to_owned(), json!(happened.map_or_else(|| now.to_string(), str::to_owned)));
    if let Some(place) = place {
        line.insert("place".to_owned(), place);
    }
    if !photographs.is_empty() {
        line.insert("photographs".to_owned(), json!(photographs));
    }
    line.insert("body".to_owned(), body);
    settle(session, slab, zone, now, line)
}

/// Turns a written line into an entry noted at a moment.
pub(crate) fn settle(
    session: &Session,
    slab: SlabId,
    zone: &TimeZone,
    noted: When,
    line: Map<String, Value>,
) -> Result<Entry, Failure> {
    let context = Context {
        slab,
        zone: zone.clone(),
        author: session.author.clone(),
        device: Session::device(),
        noted: Some(noted),
    };
    Draft::parse(&Value::Object(line).to_string())
        .and_then(|draft| draft.settle(&context, 0))
        .map_err(|(field, problem)| Failure::Data(format!("{field}: {problem}")))
}

/// What to do with an entry dated in the future.
#[derive(Clone, Copy, PartialEq, Eq)]
enum InFuture {
    /// Refuse it: the person is there to mend it.
    Refused,
    /// Say so and keep it: another device's clock may be right and ours wrong. It counts for
    /// nothing until its moment has come.
    Told,
    /// Keep it without a word: it is told when the entries are written.
    Kept,
}

/// Checks entries against the diary and writes them, all or none.
pub(crate) fn append(session: &Session, slab: SlabId, entries: Vec<Entry>) -> Result<Written, Failure> {
    let diary = session.store.diary(slab).map_err(Failure::data)?;
    check(&diary, &entries, InFuture::Refused, None)?;
    write(session, slab, &entries)
}

/// `file` is the text that the entries were read from, so that a complaint can name its line.
fn check(diary: &Diary, entries: &[Entry], future: InFuture, file: Option<&str>) -> Result<(), Failure> {
    let lines: Vec<usize> = file
        .unwrap_or_default()
        .lines()
        .enumerate()
        .filter(|(_, line)| !line.trim_start_matches('\u{feff}').trim().is_empty())
        .map(|(index, _)| index + 1)
        .collect();
    let told = |complaint: &slab_diary::Complaint| {
        let line = entries.iter().position(|e| e.id == complaint.entry).and_then(|index| lines.get(index));
        line.map_or_else(|| complaint.to_string(), |line| format!("line {line}: {complaint}"))
    };
    let (ahead, wrong): (Vec<_>, Vec<_>) = complaints(diary, entries, Trade::built_in(), now())
        .into_iter()
        .partition(|c| future != InFuture::Refused && c.kind == ComplaintKind::InFuture);
    for complaint in ahead.iter().filter(|_| future == InFuture::Told) {
        anstream::eprintln!("underfoot: {}; kept, and left out of every answer until then", told(complaint));
    }
    if wrong.is_empty() {
        return Ok(());
    }
    let told: Vec<String> = wrong.iter().map(told).collect();
    Err(Failure::Data(format!("nothing was written; {}", told.join("\n  "))))
}

fn write(session: &Session, slab: SlabId, entries: &[Entry]) -> Result<Written, Failure> {
    let ids = entries.iter().map(|e| e.id.to_string()).collect();
    let appended = session.store.append(slab, entries).map_err(Failure::data)?;
    Ok(Written { added: appended.added, already: appended.already, ids })
}

pub(crate) fn report(session: &Session, written: Written) -> Result<Answer, Failure> {
    if session.json {
        answer!("{}", json!({ "added": written.added, "already": written.already, "ids": written.ids }));
    } else {
        let count = |n: u64| (n as f64).into();
        let text = session
            .locale
            .message("entries-written", &[("added", count(written.added)), ("already", count(written.already))]);
        answer!("{text}");
        if written.ids.len() == 1 {
            answer!("  {}", written.ids[0]);
        }
    }
    Ok(Answer::Yes)
}
