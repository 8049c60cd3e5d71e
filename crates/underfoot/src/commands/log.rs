//! Write entries into a diary. All are written or none.

use std::io::Read;
use std::path::Path;

use diary_writer::{Appended, LineError, LinesError, NewEntry, WriteError, Writer};
use jiff::tz::TimeZone;
use localization::Locale;
use serde_json::{Map, Value, json};
use slab_diary::{DateOrder, Diary, EntryId, EntryKind, ProblemKind, SlabId, When};

use super::{fields, series};
use crate::cli::Log;
use crate::failure::{Answer, Failure};
use crate::out::answer;
use crate::session::{Session, fresh_id, now, zone_of};

/// Who writes what is read from a file that names nobody: the same file read elsewhere, or by somebody else, must
/// give the same entries.
pub(crate) const DIARY_FILE: &str = "diary file";

pub(crate) fn run(session: &Session, log: &Log) -> Result<Answer, Failure> {
    if let Some(path) = &log.from {
        let text = read_text(path)?;
        // A whole diary opens its own slab; lines without a job under an unknown name do not.
        if let Some(name) = log.slab.as_deref().filter(|name| session.is_free(name) && opens_a_job(&text)) {
            return open_and_read(session, name, &text);
        }
        let slab = session.find(log.slab.as_deref())?.id;
        return report(session, &from_lines(session, slab, &text)?);
    }
    let record = session.find(log.slab.as_deref())?;
    let diary = session.diary(&record)?;
    let zone = zone_of(&diary);
    let kind = fields::kind_named(log.kind.as_deref().unwrap_or_default())?;
    let place = fields::place(&log.place)?;
    let fields = match kind {
        EntryKind::AirSeries => series::fields(log, &zone)?,
        _ if kind.schema().own_screen => one_json(kind, &log.fields)?,
        _ => fields::fields(kind, Map::new(), &log.fields, session.locale)?,
    };
    let read = |path: &std::path::PathBuf| {
        std::fs::read(path).map(|bytes| (path.display().to_string(), bytes)).map_err(|e| Failure::file(path, &e))
    };
    let photographs = log.photo.iter().map(read).collect::<Result<_, _>>()?;
    let new = NewEntry { happened: log.happened.as_deref(), place, photographs, ..new_entry(kind, fields, &zone) };
    report(session, &write(session, record.id, &diary, &zone, new)?)
}

/// An entry noted here and now.
pub(crate) fn new_entry<'a>(kind: EntryKind, fields: Map<String, Value>, zone: &TimeZone) -> NewEntry<'a> {
    NewEntry {
        id: EntryId(fresh_id()),
        happened: None,
        noted: When::new(now(), zone),
        replaces: None,
        kind,
        fields,
        place: None,
        photographs: Vec::new(),
    }
}

/// Writes one entry under the name of whoever sits here.
pub(crate) fn write(
    session: &Session,
    slab: SlabId,
    diary: &Diary,
    zone: &TimeZone,
    new: NewEntry<'_>,
) -> Result<Appended, Failure> {
    let (author, device) = (session.author.as_str(), Session::device());
    let writer = Writer {
        store: &session.store,
        slab,
        diary,
        zone,
        author,
        device: &device,
        dates: session.locale.date_order(),
        now: now(),
    };
    writer.write(new).map_err(|error| refused(&error, session.locale))
}

/// Reads and writes a whole file of lines; what is doubtful is told on standard error.
fn from_lines(session: &Session, slab: SlabId, text: &str) -> Result<Appended, Failure> {
    let diary = session.store.diary(slab).map_err(Failure::data)?;
    let zone = zone_of(&diary);
    let written = file_writer(session, slab, &diary, &zone).write_lines(text);
    let written = written.map_err(|error| lines_refused(&error, session.locale))?;
    for doubt in &written.doubts {
        let told = session.locale.entry_problem_line(&doubt.problem);
        let kept = match doubt.problem.what {
            ProblemKind::InFuture => "Kept, and left out of every answer until then.",
            _ => "Kept; it proves nothing of any one zone.",
        };
        anstream::eprintln!("underfoot: line {}: {told} {kept}", doubt.line);
    }
    Ok(written.appended)
}

fn file_writer<'a>(session: &'a Session, slab: SlabId, diary: &'a Diary, zone: &'a TimeZone) -> Writer<'a> {
    let author = session.named_author.as_deref().unwrap_or(DIARY_FILE);
    Writer {
        store: &session.store,
        slab,
        diary,
        zone,
        author,
        device: DIARY_FILE,
        dates: DateOrder::Unknown,
        now: now(),
    }
}

fn opens_a_job(text: &str) -> bool {
    text.lines().filter_map(|line| serde_json::from_str::<Value>(line).ok()).any(|line| {
        let kind = line.pointer("/body/kind").and_then(Value::as_str).and_then(EntryKind::named);
        kind == Some(EntryKind::JobOpened)
    })
}

/// Opens a slab for a diary that is read in whole. When the diary can't be read no slab is left.
fn open_and_read(session: &Session, name: &str, text: &str) -> Result<Answer, Failure> {
    let id = SlabId::of_name(name.trim());
    let (empty, zone) = (Diary::new(), TimeZone::UTC);
    let checked = file_writer(session, id, &empty, &zone).check_lines(text);
    checked.map_err(|error| lines_refused(&error, session.locale))?;
    session.store.create_slab(id, name.trim()).map_err(Failure::data)?;
    report(session, &from_lines(session, id, text)?)
}

/// The fields of a kind with a reader of its own, such as a plan: each value is JSON.
fn one_json(kind: EntryKind, given: &[String]) -> Result<Map<String, Value>, Failure> {
    let mut fields = Map::new();
    for field in given {
        let Some((name, text)) = field.split_once('=') else {
            return Err(Failure::Use(format!("\"{field}\": accepted: field=value, with the value in JSON")));
        };
        let value = serde_json::from_str(text).map_err(|e| {
            Failure::Data(format!("{}.{name}: {e}; accepted: JSON, as docs/diary.md shows it", kind.name()))
        })?;
        fields.insert(name.trim().replace('-', "_"), value);
    }
    Ok(fields)
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

/// Why an entry was not written.
pub(crate) fn refused(error: &WriteError, locale: Locale) -> Failure {
    let lines = match error {
        WriteError::Happened(error) => vec![locale.typed_when_line(error)],
        WriteError::Entry(error) => vec![locale.entry_error(error)],
        WriteError::Problems(problems) => problems.iter().map(|p| locale.entry_problem_line(p)).collect(),
        WriteError::Photograph(..) | WriteError::AlreadyWritten(_) | WriteError::Store(_) => vec![error.to_string()],
    };
    Failure::Data(format!("nothing was written; {}", lines.join("\n  ")))
}

/// Why no line was written, each with its number.
fn lines_refused(error: &LinesError, locale: Locale) -> Failure {
    let lines = match error {
        LinesError::Write(error) => return refused(error, locale),
        LinesError::Lines(lines) => lines,
    };
    let told = lines.iter().map(|(line, error)| match error {
        LineError::Unread(error) => format!("line {line}: {}", locale.entry_error(error)),
        LineError::Problem(problem) => format!("line {line}: {}", locale.entry_problem_line(problem)),
    });
    Failure::Data(format!("nothing was written; {}", told.collect::<Vec<_>>().join("\n  ")))
}

pub(crate) fn report(session: &Session, written: &Appended) -> Result<Answer, Failure> {
    let Appended { added, already, ids } = written;
    let ids: Vec<String> = ids.iter().map(ToString::to_string).collect();
    if session.json {
        answer!("{}", json!({ "added": added, "already": already, "ids": ids }));
    } else {
        let count = |n: u64| (n as f64).into();
        let text = session.locale.message("entries-written", &[("added", count(*added)), ("already", count(*already))]);
        answer!("{text}");
        if let [one] = ids.as_slice() {
            answer!("  {one}");
        }
    }
    Ok(Answer::Yes)
}
