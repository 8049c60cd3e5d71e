//! From what a form brought to an entry in the diary.
//!
//! A phone may send the same form twice, hours apart, when it doubts that the first came through. The
//! entry's id was made with the form, so the second adds nothing.

use forms::Form;
use jiff::Timestamp;
use jiff::tz::TimeZone;
use localization::{Lang, Locale};
use photo::PhotoError;
use serde_json::{Map, Value, json};
use slab_diary::{Complaint, ComplaintKind, Context, Diary, Draft, Entry, EntryId, PhotoHash, When, complaints};
use store::SlabRecord;
use trade_facts::Trade;

use crate::context::{Posted, RequestContext, Upload};
use crate::control::untangled;
use crate::measured;
use crate::page_error::PageError;

/// A phone whose clock is at most this far ahead is taken at its word.
const CLOCK_SLACK: jiff::SignedDuration = jiff::SignedDuration::from_mins(10);

/// The diary of a slab and the zone of its local times.
pub(crate) struct Opened {
    pub(crate) record: SlabRecord,
    pub(crate) diary: Diary,
    pub(crate) zone: TimeZone,
}

impl RequestContext {
    /// The slab that the path names, with its diary.
    pub(crate) fn opened(&self) -> Result<Opened, PageError> {
        self.open(self.slab()?)
    }

    /// A slab with its diary.
    pub(crate) fn open(&self, record: SlabRecord) -> Result<Opened, PageError> {
        let diary = self.app.store().diary(record.id)?;
        let all = slab_diary::Knowledge::happened_by(Timestamp::MAX);
        let zone = slab_diary::fold(&diary, all).time_zone();
        Ok(Opened { record, diary, zone })
    }
}

/// Writes what a form brought. `old` is the entry it corrects.
pub(crate) fn write_form(
    context: &RequestContext,
    opened: &Opened,
    form: &'static Form,
    posted: &Posted,
    old: Option<&Entry>,
) -> Result<EntryId, PageError> {
    let locale = context.locale();
    let said = |mistakes: Vec<forms::FieldError>| -> Vec<(String, String)> {
        mistakes.into_iter().map(|m| (m.field.clone(), m.said(locale))).collect()
    };
    let typed = untangled(&posted.typed);
    let mut wrong = Vec::new();
    let body = forms::read_body(form, &typed, locale.unit_system).map_err(said);
    let place = forms::read_place(&typed, locale.unit_system).map_err(said);
    let body = body.map_err(|w| wrong.extend(w)).ok();
    let place = place.map_err(|w| wrong.extend(w)).ok();
    let photographs = photographs(&posted.files, locale).map_err(|w| wrong.extend(w)).ok();
    let (Some(body), Some(place), Some(photographs), true) = (body, place, photographs, wrong.is_empty()) else {
        return Err(PageError::FieldErrors(wrong));
    };
    write(context, opened, Written { body, place, photographs, old }, posted)
}

/// What is to be written.
pub(crate) struct Written<'a> {
    pub(crate) body: Map<String, Value>,
    pub(crate) place: Option<Value>,
    pub(crate) photographs: Vec<Vec<u8>>,
    pub(crate) old: Option<&'a Entry>,
}

/// Makes the entry, checks it against the diary, and writes it after its photographs.
pub(crate) fn write(
    context: &RequestContext,
    opened: &Opened,
    written: Written<'_>,
    posted: &Posted,
) -> Result<EntryId, PageError> {
    let locale = context.locale();
    let Written { mut body, place, photographs, old } = written;
    let mut pictures = Vec::new();
    if let Some(old) = old {
        measured::forget_measured(&mut body, &old.body, !photographs.is_empty());
        for hash in &old.photographs {
            pictures.push(context.app.store().photograph(hash)?);
        }
    }
    pictures.extend(photographs.iter().cloned());
    measured::fill_in(&mut body, &pictures);
    let hashes: Vec<PhotoHash> = photographs.iter().map(|bytes| PhotoHash::of(bytes)).collect();
    let mut line = header(context, opened, posted);
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
    let entry = settled(context, opened, &Value::Object(line), locale)?;
    if let Some(there) = context.app.store().entry(opened.record.id, entry.id)? {
        return if there.body == entry.body && there.place == entry.place {
            Ok(there.id)
        } else {
            Err(PageError::mistake("entry", locale.message("mistake-already-written", &[])))
        };
    }
    let now = context.app.asked_at(opened.record.id).max(context.now());
    let wrong: Vec<(String, String)> = complaints(&opened.diary, std::slice::from_ref(&entry), Trade::built_in(), now)
        .iter()
        .map(|complaint| (field_of(complaint), complaint_said(complaint, locale)))
        .collect();
    if !wrong.is_empty() {
        return Err(PageError::FieldErrors(wrong));
    }
    for bytes in &photographs {
        context.app.store().put_photograph(bytes)?;
    }
    let id = entry.id;
    context.app.store().append(opened.record.id, &[entry])?;
    Ok(id)
}

/// Id, moments and author.
fn header(context: &RequestContext, opened: &Opened, posted: &Posted) -> Map<String, Value> {
    let typed = |name: &str| posted.typed.first(name).map(str::trim).filter(|text| !text.is_empty());
    let now = When::new(context.app.asked_at(opened.record.id), &opened.zone);
    let noted = typed("noted")
        .and_then(|text| When::read(text, &opened.zone).ok())
        .filter(|when| when.instant() <= now.instant() + CLOCK_SLACK)
        .unwrap_or_else(|| now.clone());
    let id = typed("entry")
        .and_then(|text| text.parse::<EntryId>().ok())
        .map_or_else(|| context.app.fresh_id().to_string(), |id| id.to_string());
    let mut line = Map::new();
    line.insert("id".to_owned(), json!(id));
    line.insert("happened".to_owned(), json!(typed("happened").map_or_else(|| noted.to_string(), str::to_owned)));
    line.insert("noted".to_owned(), json!(noted.to_string()));
    line
}

fn settled(context: &RequestContext, opened: &Opened, line: &Value, locale: Locale) -> Result<Entry, PageError> {
    let context = Context {
        slab: opened.record.id,
        zone: opened.zone.clone(),
        author: context.visitor.name.clone(),
        device: "page".to_owned(),
        noted: None,
    };
    Draft::parse(&line.to_string()).and_then(|draft| draft.settle(&context, 0)).map_err(|(field, problem)| {
        let said = match field.as_str() {
            "happened" => locale.message("mistake-happened", &[]),
            _ => problem,
        };
        PageError::mistake(&field, said)
    })
}

/// The photographs that came along, as they are kept: they say when they were taken and which way is
/// up, never where.
fn photographs(files: &[Upload], locale: Locale) -> Result<Vec<Vec<u8>>, Vec<(String, String)>> {
    let (mut kept, mut wrong) = (Vec::new(), Vec::new());
    for file in files.iter().filter(|file| file.field == "photographs") {
        let bytes = file.bytes.to_vec();
        match photo::inspect(&bytes).and_then(|_| photo::without_location(bytes)) {
            Ok(bytes) => kept.push(bytes),
            Err(error) => wrong.push(("photographs".to_owned(), photo_said(&file.name, &error, locale))),
        }
    }
    if wrong.is_empty() { Ok(kept) } else { Err(wrong) }
}

fn photo_said(name: &str, error: &PhotoError, locale: Locale) -> String {
    let key = match error {
        PhotoError::Empty => "mistake-photo-empty",
        PhotoError::TooManyBytes { .. } => "mistake-photo-bytes",
        PhotoError::NotAccepted { .. } => "mistake-photo-kind",
        PhotoError::TooManyPixels { .. } => "mistake-photo-pixels",
        PhotoError::CutShort { .. } => "mistake-photo-cut",
        _ => "mistake-photo-broken",
    };
    locale.message(key, &[("name", name.into())])
}

/// The input that a complaint belongs to.
fn field_of(complaint: &Complaint) -> String {
    match (complaint.kind, complaint.field) {
        (ComplaintKind::OffPlan, _) => "place".to_owned(),
        (_, field) => field.rsplit('.').next().unwrap_or(field).to_owned(),
    }
}

fn complaint_said(complaint: &Complaint, locale: Locale) -> String {
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
    let said = locale.message(key, &[("value", complaint.value.as_str().into())]);
    // The finer half of a complaint is not translated.
    match locale.lang {
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
