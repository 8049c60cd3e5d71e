//! From what a form brought to an entry in the diary.
//!
//! A phone may send the same form twice, hours apart, when it doubts that the first came through. The
//! entry's id was made with the form, so the second adds nothing.

use forms::Form;
use jiff::Timestamp;
use jiff::tz::TimeZone;
use photo::PhotoError;
use serde_json::{Map, Value, json};
use slab::diary::{Complaint, ComplaintKind, Context, Diary, Draft, Entry, EntryId, PhotoHash, When, complaints};
use slab::trade::Trade;
use store::SlabRecord;
use words::{Lang, Voice};

use crate::ask::{Ask, Posted, Upload};
use crate::control::untangled;
use crate::measured;
use crate::trouble::Trouble;

/// A phone whose clock is at most this far ahead is taken at its word.
const CLOCK_SLACK: jiff::SignedDuration = jiff::SignedDuration::from_mins(10);

/// The diary of a slab and the zone of its local times.
pub(crate) struct Opened {
    pub(crate) record: SlabRecord,
    pub(crate) diary: Diary,
    pub(crate) zone: TimeZone,
}

impl Ask {
    /// The slab that the path names, with its diary.
    pub(crate) fn opened(&self) -> Result<Opened, Trouble> {
        self.open(self.slab()?)
    }

    /// A slab with its diary.
    pub(crate) fn open(&self, record: SlabRecord) -> Result<Opened, Trouble> {
        let diary = self.app.store().diary(record.id)?;
        let all = slab::diary::Knowledge::happened_by(Timestamp::MAX);
        let zone = slab::slab::fold(&diary, all).time_zone();
        Ok(Opened { record, diary, zone })
    }
}

/// Writes what a form brought. `old` is the entry it corrects.
pub(crate) fn write_form(
    ask: &Ask,
    opened: &Opened,
    form: &'static Form,
    posted: &Posted,
    old: Option<&Entry>,
) -> Result<EntryId, Trouble> {
    let voice = ask.voice();
    let said = |mistakes: Vec<forms::Mistake>| -> Vec<(String, String)> {
        mistakes.into_iter().map(|m| (m.field.clone(), m.said(voice))).collect()
    };
    let typed = untangled(&posted.typed);
    let mut wrong = Vec::new();
    let body = forms::read_body(form, &typed, voice.measure).map_err(said);
    let place = forms::read_place(&typed, voice.measure).map_err(said);
    let body = body.map_err(|w| wrong.extend(w)).ok();
    let place = place.map_err(|w| wrong.extend(w)).ok();
    let photographs = photographs(&posted.files, voice).map_err(|w| wrong.extend(w)).ok();
    let (Some(body), Some(place), Some(photographs), true) = (body, place, photographs, wrong.is_empty()) else {
        return Err(Trouble::Mistakes(wrong));
    };
    write(ask, opened, Written { body, place, photographs, old }, posted)
}

/// What is to be written.
pub(crate) struct Written<'a> {
    pub(crate) body: Map<String, Value>,
    pub(crate) place: Option<Value>,
    pub(crate) photographs: Vec<Vec<u8>>,
    pub(crate) old: Option<&'a Entry>,
}

/// Makes the entry, checks it against the diary, and writes it after its photographs.
pub(crate) fn write(ask: &Ask, opened: &Opened, written: Written<'_>, posted: &Posted) -> Result<EntryId, Trouble> {
    let voice = ask.voice();
    let Written { mut body, place, photographs, old } = written;
    let mut pictures = Vec::new();
    if let Some(old) = old {
        measured::forget_measured(&mut body, &old.body, !photographs.is_empty());
        for hash in &old.photographs {
            pictures.push(ask.app.store().photograph(hash)?);
        }
    }
    pictures.extend(photographs.iter().cloned());
    measured::fill_in(&mut body, &pictures);
    let hashes: Vec<PhotoHash> = photographs.iter().map(|bytes| PhotoHash::of(bytes)).collect();
    let mut line = header(ask, opened, posted);
    if let Some(old) = old {
        line.insert("replaces".to_owned(), json!(old.id.to_string()));
    }
    if let Some(place) = place {
        line.insert("place".to_owned(), place);
    }
    let kept = old.map(|old| old.photographs.clone()).unwrap_or_default();
    let all: Vec<PhotoHash> = kept.into_iter().chain(hashes).collect();
    if !all.is_empty() {
        line.insert("photographs".to_owned(), json!(all));
    }
    line.insert("body".to_owned(), Value::Object(body));
    let entry = settled(ask, opened, &Value::Object(line), voice)?;
    if let Some(there) = ask.app.store().entry(opened.record.id, entry.id)? {
        return if there.body == entry.body && there.place == entry.place {
            Ok(there.id)
        } else {
            Err(Trouble::mistake("entry", voice.say("mistake-already-written", &[])))
        };
    }
    let now = ask.app.asked_at(opened.record.id).max(ask.now());
    let wrong: Vec<(String, String)> = complaints(&opened.diary, std::slice::from_ref(&entry), Trade::built_in(), now)
        .iter()
        .map(|complaint| (field_of(complaint), complaint_said(complaint, voice)))
        .collect();
    if !wrong.is_empty() {
        return Err(Trouble::Mistakes(wrong));
    }
    for bytes in &photographs {
        ask.app.store().put_photograph(bytes)?;
    }
    let id = entry.id;
    ask.app.store().append(opened.record.id, &[entry])?;
    Ok(id)
}

/// Id, moments and author.
fn header(ask: &Ask, opened: &Opened, posted: &Posted) -> Map<String, Value> {
    let typed = |name: &str| posted.typed.first(name).map(str::trim).filter(|text| !text.is_empty());
    let now = When::new(ask.app.asked_at(opened.record.id), &opened.zone);
    let noted = typed("noted")
        .and_then(|text| When::read(text, &opened.zone).ok())
        .filter(|when| when.instant() <= now.instant() + CLOCK_SLACK)
        .unwrap_or_else(|| now.clone());
    let id = typed("entry")
        .and_then(|text| text.parse::<EntryId>().ok())
        .map_or_else(|| ask.app.fresh_id().to_string(), |id| id.to_string());
    let mut line = Map::new();
    line.insert("id".to_owned(), json!(id));
    line.insert("happened".to_owned(), json!(typed("happened").map_or_else(|| noted.to_string(), str::to_owned)));
    line.insert("noted".to_owned(), json!(noted.to_string()));
    line
}

fn settled(ask: &Ask, opened: &Opened, line: &Value, voice: Voice) -> Result<Entry, Trouble> {
    let context = Context {
        slab: opened.record.id,
        zone: opened.zone.clone(),
        author: ask.visitor.name.clone(),
        device: "page".to_owned(),
        noted: None,
    };
    Draft::parse(&line.to_string()).and_then(|draft| draft.settle(&context, 0)).map_err(|(field, problem)| {
        let said = match field.as_str() {
            "happened" => voice.say("mistake-happened", &[]),
            _ => problem,
        };
        Trouble::mistake(&field, said)
    })
}

/// The photographs that came along, as they are kept: they say when they were taken and which way is
/// up, never where.
fn photographs(files: &[Upload], voice: Voice) -> Result<Vec<Vec<u8>>, Vec<(String, String)>> {
    let (mut kept, mut wrong) = (Vec::new(), Vec::new());
    for file in files.iter().filter(|file| file.field == "photographs") {
        let bytes = file.bytes.to_vec();
        match photo::inspect(&bytes).and_then(|_| photo::without_location(bytes)) {
            Ok(bytes) => kept.push(bytes),
            Err(error) => wrong.push(("photographs".to_owned(), photo_said(&file.name, &error, voice))),
        }
    }
    if wrong.is_empty() { Ok(kept) } else { Err(wrong) }
}

fn photo_said(name: &str, error: &PhotoError, voice: Voice) -> String {
    let key = match error {
        PhotoError::Empty => "mistake-photo-empty",
        PhotoError::TooManyBytes { .. } => "mistake-photo-bytes",
        PhotoError::NotAccepted { .. } => "mistake-photo-kind",
        PhotoError::TooManyPixels { .. } => "mistake-photo-pixels",
        PhotoError::CutShort { .. } => "mistake-photo-cut",
        _ => "mistake-photo-broken",
    };
    voice.say(key, &[("name", name.into())])
}

/// The input that a complaint belongs to.
fn field_of(complaint: &Complaint) -> String {
    match (complaint.kind, complaint.field) {
        (ComplaintKind::OffPlan, _) => "place".to_owned(),
        (_, field) => field.rsplit('.').next().unwrap_or(field).to_owned(),
    }
}

fn complaint_said(complaint: &Complaint, voice: Voice) -> String {
    let key = match complaint.kind {
        ComplaintKind::BeforePour => "complaint-before-pour",
        ComplaintKind::InFuture => "complaint-in-future",
        ComplaintKind::Unknown => "complaint-unknown",
        ComplaintKind::UnknownTerm => "complaint-unknown-term",
        ComplaintKind::OffPlan => "complaint-off-plan",
        ComplaintKind::BadPlan => "complaint-bad-plan",
        ComplaintKind::Incomplete => "complaint-incomplete",
        ComplaintKind::OutOfRange => "complaint-out-of-range",
    };
    let said = voice.say(key, &[("value", complaint.value.as_str().into())]);
    // The finer half of a complaint is not translated.
    match voice.lang {
        Lang::En if complaint.kind != ComplaintKind::BadPlan => format!("{said} {}.", sentence(&complaint.accepted)),
        _ => said,
    }
}

fn sentence(text: &str) -> String {
    let mut letters = text.chars();
    letters.next().map_or_else(String::new, |first| first.to_uppercase().collect::<String>() + letters.as_str())
}

/// Where to go after writing: a path of ours that the form names, or the slab's page.
pub(crate) fn after(posted: &Posted, record: &SlabRecord, said: &str) -> String {
    let usual = format!("/slab/{}", record.id);
    let path = posted.typed.first("next").filter(|path| is_ours(path)).map_or(usual, str::to_owned);
    let joint = if path.contains('?') { '&' } else { '?' };
    format!("{path}{joint}said={said}")
}

/// Whether it is a path on this server: a foreign address in a link must not lead away.
pub(crate) fn is_ours(path: &str) -> bool {
    path.starts_with('/') && !path.starts_with("//") && !path.contains(['\\', '\n', '\r', '\t'])
}
