//! Write entries into a diary. All are written or none.

use std::io::Read;
use std::path::Path;

use jiff::tz::TimeZone;
use serde_json::{Map, Value, json};
use slab::diary::{Context, Draft, Entry, PhotoHash, SlabId, When, complaints, read_lines};
use slab::trade::Trade;

use super::{fields, series};
use crate::cli::Log;
use crate::failure::{Answer, Failure};
use crate::session::{Session, fresh_id, now, zone_of};

pub(crate) fn run(session: &Session, log: &Log) -> Result<Answer, Failure> {
    let record = session.find(log.slab.as_deref())?;
    if let Some(path) = &log.from {
        let text = read_text(path)?;
        return report(session, from_lines(session, record.id, &text)?);
    }
    let kind = log.kind.as_deref().unwrap_or_default().replace('-', "_");
    let zone = zone_of(&session.diary(&record)?);
    let happened = log.happened.as_deref();
    let place = fields::place(&log.place)?;
    let body =
        if kind == "air_series" { series::body(log, &zone)? } else { fields::body(&kind, Map::new(), &log.fields)? };
    let photographs = photographs(session, &log.photo)?;
    let entry = draft_entry(session, record.id, &zone, happened, place, photographs, body)?;
    let appended = append(session, record.id, vec![entry])?;
    report(session, appended)
}

/// How many entries were new, and how many the diary had already.
#[derive(Debug, Clone)]
pub(crate) struct Written {
    pub(crate) added: u64,
    pub(crate) already: u64,
    pub(crate) ids: Vec<String>,
}

/// Reads and writes a whole file of lines.
pub(crate) fn from_lines(session: &Session, slab: SlabId, text: &str) -> Result<Written, Failure> {
    let diary = session.store.diary(slab).map_err(Failure::data)?;
    let context =
        Context { slab, zone: zone_of(&diary), author: session.author.clone(), device: Session::device(), noted: None };
    let entries = read_lines(text, &context).map_err(|errors| {
        let told: Vec<String> = errors.iter().map(ToString::to_string).collect();
        Failure::Data(format!("nothing was written; {}", told.join("\n  ")))
    })?;
    append(session, slab, entries)
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

fn photographs(session: &Session, files: &[std::path::PathBuf]) -> Result<Vec<PhotoHash>, Failure> {
    let mut hashes = Vec::new();
    for path in files {
        let bytes = std::fs::read(path).map_err(|e| Failure::file(path, &e))?;
        hashes.push(session.store.put_photograph(&bytes).map_err(Failure::data)?);
    }
    Ok(hashes)
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

/// Checks entries against the diary and writes them, all or none.
pub(crate) fn append(session: &Session, slab: SlabId, entries: Vec<Entry>) -> Result<Written, Failure> {
    let diary = session.store.diary(slab).map_err(Failure::data)?;
    let found = complaints(&diary, &entries, Trade::built_in(), now());
    if !found.is_empty() {
        let told: Vec<String> = found.iter().map(ToString::to_string).collect();
        return Err(Failure::Data(format!("nothing was written; {}", told.join("\n  "))));
    }
    let ids = entries.iter().map(|e| e.id.to_string()).collect();
    let appended = session.store.append(slab, &entries).map_err(Failure::data)?;
    Ok(Written { added: appended.added, already: appended.already, ids })
}

pub(crate) fn report(session: &Session, written: Written) -> Result<Answer, Failure> {
    if session.json {
        println!("{}", json!({ "added": written.added, "already": written.already, "ids": written.ids }));
    } else {
        let count = |n: u64| (n as f64).into();
        let text = session
            .voice
            .say("entries-written", &[("added", count(written.added)), ("already", count(written.already))]);
        anstream::println!("{text}");
        if written.ids.len() == 1 {
            anstream::println!("  {}", written.ids[0]);
        }
    }
    Ok(Answer::Yes)
}
