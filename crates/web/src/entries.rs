//! From what a form brought to an entry in the diary.
//!
//! A phone may send the same form twice, hours apart, when it doubts that the first came through. The
//! entry's id was made with the form, so the second adds nothing.

use diary_writer::{NewEntry, WriteError, Writer};
use form_schema::{FieldError, FieldErrorKind};
use jiff::Timestamp;
use jiff::tz::TimeZone;
use localization::Locale;
use photo::PhotoError;
use serde_json::{Map, Value};
use slab_diary::{
    BodyError, Diary, Entry, EntryError, EntryId, EntryKind, Knowledge, Problem, ProblemKind, When, fold, read_place,
};
use store::SlabRecord;
use trade_facts::Trade;

use crate::context::{Posted, RequestContext};
use crate::control::{Known, place_left_open, untangled};
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
    kind: EntryKind,
    posted: &Posted,
    old: Option<&Entry>,
) -> Result<EntryId, PageError> {
    must_be_writers(context, posted)?;
    let locale = context.locale();
    let typed = untangled(&posted.typed);
    let mut wrong: Vec<FieldError> = Vec::new();
    let fields = kind.read(&typed, locale.unit_system).map_err(|w| wrong.extend(w)).ok();
    let place = read_place(&typed, locale.unit_system).map_err(|w| wrong.extend(w)).ok();
    let mut said = field_errors(&wrong, kind, locale);
    let slab = fold(&opened.diary, Knowledge::noted_by(context.app.asked_at(opened.record.id)));
    let known = Known { slab: &slab, trade: Trade::built_in(), locale };
    let left_open = place_left_open(kind.schema(), &typed, &known);
    let when_open =
        kind.schema().asks_when && posted.typed.first("happened").is_some_and(|text| text.trim().is_empty());
    let place = place.filter(|_| left_open.is_none() && !when_open);
    said.extend(left_open.map(|told| ("place".to_owned(), told)));
    said.extend(when_open.then(|| ("happened".to_owned(), locale.message("mistake-no-moment", &[]))));
    let photographs: Vec<(String, Vec<u8>)> = posted
        .files
        .iter()
        .filter(|file| file.field == "photographs")
        .map(|file| (file.name.clone(), file.bytes.to_vec()))
        .collect();
    let (Some(fields), Some(place)) = (fields, place) else {
        // What is wrong with the photographs is told at once too.
        said.extend(photographs.iter().filter_map(|(name, bytes)| {
            photo::inspect(bytes).err().map(|error| ("photographs".to_owned(), photo_error(name, &error, locale)))
        }));
        return Err(PageError::FieldErrors(said));
    };
    write(context, opened, Submitted { kind, fields, place, photographs, old }, posted)
}

/// Errors of fields as a page shows them: the input, and the sentence.
pub(crate) fn field_errors(errors: &[FieldError], kind: EntryKind, locale: Locale) -> Vec<(String, String)> {
    let said = |error: &FieldError| match error.what {
        // The list above the form names no field: what is missing has to.
        FieldErrorKind::Missing => {
            let field = localization::input_label(locale, kind.schema(), &error.field);
            locale.message("mistake-missing-named", &[("field", field.into())])
        }
        _ => locale.field_error(error),
    };
    errors.iter().map(|error| (error.field.clone(), said(error))).collect()
}

/// What a page submits as one entry.
pub(crate) struct Submitted<'a> {
    pub(crate) kind: EntryKind,
    pub(crate) fields: Map<String, Value>,
    pub(crate) place: Option<Value>,
    pub(crate) photographs: Vec<(String, Vec<u8>)>,
    pub(crate) old: Option<&'a Entry>,
}

impl Submitted<'_> {
    /// An entry of fields alone.
    pub(crate) const fn of(kind: EntryKind, fields: Map<String, Value>) -> Self {
        Self { kind, fields, place: None, photographs: Vec::new(), old: None }
    }
}

/// Refuses a form that somebody else filled in, on this phone or in another tab, before this visitor signed
/// in: it would be written under the wrong name. Every form of ours says who fills it in, and so does whatever a
/// phone has kept, which is known by its id. A program that is no browser says nothing and writes as itself.
pub(crate) fn must_be_writers(context: &RequestContext, posted: &Posted) -> Result<(), PageError> {
    let was_kept = context.wants_json() && posted.typed.first("entry").is_some();
    match posted.typed.first("writer") {
        Some(writer) if writer == context.visitor.writer() => Ok(()),
        None if !(was_kept && context.app.asks_for_people()) => Ok(()),
        // The phone keeps it for whoever wrote it.
        _ if context.wants_json() => Err(PageError::OtherWriter),
        // The form comes back with all that was typed, as one of this visitor's own.
        _ => {
            let name = context.visitor.name.as_str().into();
            Err(PageError::mistake("writer", context.locale().message("mistake-writer", &[("name", name)])))
        }
    }
}

/// Writes an entry through the writer that the command line has too.
pub(crate) fn write(
    context: &RequestContext,
    opened: &Opened,
    submitted: Submitted<'_>,
    posted: &Posted,
) -> Result<EntryId, PageError> {
    must_be_writers(context, posted)?;
    let locale = context.locale();
    let typed = |name: &str| posted.typed.first(name).map(str::trim).filter(|text| !text.is_empty());
    let now = When::new(context.app.asked_at(opened.record.id), &opened.zone);
    let noted = typed("noted")
        .and_then(|text| When::read(text, &opened.zone).ok())
        .filter(|when| when.instant() <= now.instant() + CLOCK_SLACK)
        .unwrap_or_else(|| now.clone());
    let id = typed("entry").and_then(|text| text.parse::<EntryId>().ok());
    let Submitted { kind, fields, place, photographs, old } = submitted;
    let writer = Writer {
        store: context.app.store(),
        slab: opened.record.id,
        diary: &opened.diary,
        zone: &opened.zone,
        author: &context.visitor.name,
        device: "page",
        dates: locale.date_order(),
        now: now.instant().max(context.now()),
    };
    let id = id.unwrap_or_else(|| EntryId(context.app.fresh_id()));
    let new = NewEntry { id, happened: typed("happened"), noted, replaces: old, kind, fields, place, photographs };
    writer.write(new).map_err(|error| refused(error, locale))?;
    Ok(id)
}

/// Why an entry was not written, as a page shows it.
fn refused(error: WriteError, locale: Locale) -> PageError {
    match error {
        WriteError::Photograph(name, error) => PageError::mistake("photographs", photo_error(&name, &error, locale)),
        WriteError::Happened(error) => PageError::mistake("happened", locale.typed_when_error(&error)),
        WriteError::Entry(EntryError::Header { field, problem }) => PageError::mistake(&field, problem),
        WriteError::Entry(EntryError::Place(problem)) => PageError::mistake("place", problem.to_string()),
        WriteError::Entry(EntryError::Body(BodyError::Fields(kind, errors))) => {
            PageError::FieldErrors(field_errors(&errors, kind, locale))
        }
        WriteError::Entry(EntryError::Body(error)) => PageError::mistake("body", locale.body_error(&error)),
        WriteError::Problems(problems) => {
            let said = problems.iter().map(|problem| (field_of(problem), locale.entry_problem(problem)));
            PageError::FieldErrors(said.collect())
        }
        WriteError::AlreadyWritten(_) => PageError::mistake("entry", locale.message("mistake-already-written", &[])),
        WriteError::Store(error) => PageError::from(error),
    }
}

fn photo_error(name: &str, error: &PhotoError, locale: Locale) -> String {
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

/// The input that a problem belongs to.
fn field_of(problem: &Problem) -> String {
    match problem.what {
        ProblemKind::OffPlan { .. } => "place".to_owned(),
        _ => problem.field.rsplit('.').next().unwrap_or(&problem.field).to_owned(),
    }
}

/// Where to go after writing: a path of ours that the form names, or the slab's page.
pub(crate) fn after(posted: &Posted, record: &SlabRecord, said: &str, entry: EntryId) -> String {
    let usual = format!("/slab/{}", record.id);
    let path = posted.typed.first("next").filter(|path| is_ours(path)).map_or(usual, str::to_owned);
    let joint = if path.contains('?') { '&' } else { '?' };
    format!("{path}{joint}said={said}&entry={entry}")
}

/// Whether it is a path on this server: a foreign address in a link must not lead away.
pub(crate) fn is_ours(path: &str) -> bool {
    path.starts_with('/') && !path.starts_with("//") && !path.contains(['\\', '\n', '\r', '\t'])
}

#[cfg(test)]
mod tests {
    use form_schema::{FieldError, FieldErrorKind};
    use localization::{Lang, Locale, UnitSystem};
    use slab_diary::EntryKind;

    #[test]
    fn what_is_missing_is_named_as_its_own_form_names_it() {
        let missing = [FieldError::new("humidity", FieldErrorKind::Missing, "")];
        let said =
            |kind, lang| super::field_errors(&missing, kind, Locale::new(lang, UnitSystem::Imperial)).remove(0).1;
        assert_eq!(said(EntryKind::SlabHumidity, Lang::En), "Missing: In-slab RH.");
        assert_eq!(said(EntryKind::SlabHumidity, Lang::Es), "Falta: Humedad en la losa.");
        assert_eq!(said(EntryKind::AirReading, Lang::Es), "Falta: Humedad del aire.");
    }
}
