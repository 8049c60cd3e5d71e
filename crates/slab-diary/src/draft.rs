//! Reading entries as a person or another program would write them: JSON Lines with only what is
//! needed, `#labels` for ids, and local times.

use std::collections::HashSet;

use form_schema::InputKind;
use jiff::tz::TimeZone;
use serde_json::{Map, Value};

use super::body::EntryKind;
use super::entry::{Entry, EntryError, SCHEMA};
use super::ids::{EntryId, SlabId};
use super::when::When;

/// What a written line may leave out.
#[derive(Debug, Clone)]
pub struct Context {
    /// The slab the lines belong to.
    pub slab: SlabId,
    /// Zone of local times, unless a `job_opened` line names one.
    pub zone: TimeZone,
    /// Author of lines that name none.
    pub author: String,
    /// Device of lines that name none.
    pub device: String,
    /// When the lines are noted, where they don't say; `None` is when each happened, as for a diary
    /// that is replayed or typed up from paper.
    pub noted: Option<When>,
}

/// A line that cannot be read.
#[derive(Debug)]
pub struct DraftError {
    /// Line number, from 1.
    pub line: usize,
    /// What is wrong with it.
    pub error: EntryError,
}

fn header(field: &str, problem: impl Into<String>) -> EntryError {
    EntryError::Header { field: field.to_owned(), problem: problem.into() }
}

/// One written line before it is an entry: a JSON object with at least `happened` and `body`.
#[derive(Debug, Clone, PartialEq)]
pub struct Draft {
    fields: Map<String, Value>,
    /// The body as it was written: one from a newer program is kept byte for byte.
    raw_body: Option<String>,
    text: String,
}

/// Just the body, unread.
#[derive(serde::Deserialize)]
struct RawBody<'l> {
    #[serde(borrow, default)]
    body: Option<&'l serde_json::value::RawValue>,
}

impl Draft {
    /// Takes a JSON object.
    ///
    /// # Errors
    /// Says where the JSON breaks.
    pub fn parse(text: &str) -> Result<Self, EntryError> {
        match serde_json::from_str::<Value>(text) {
            Ok(Value::Object(fields)) => {
                let raw: Option<RawBody<'_>> = serde_json::from_str(text).ok();
                let raw_body = raw.and_then(|r| r.body).map(|body| body.get().to_owned());
                Ok(Self { fields, raw_body, text: text.trim().to_owned() })
            }
            Ok(_) => {
                Err(header("line", "it is not a JSON object; accepted: {\"happened\": …, \"body\": {\"kind\": …}}"))
            }
            Err(error) => Err(header(
                "line",
                format!("broken JSON at column {}: {error}; accepted: one JSON object on one line", error.column()),
            )),
        }
    }

    fn zone_named(&self) -> Option<&str> {
        let body = self.fields.get("body")?;
        (EntryKind::named(body.get("kind")?.as_str()?)? == EntryKind::JobOpened)
            .then(|| body.get("time_zone")?.as_str())
            .flatten()
    }

    /// Fills in what was left out and reads the entry.
    ///
    /// # Errors
    /// The field with its path, and what was wrong with it.
    pub fn settle(mut self, context: &Context) -> Result<Entry, EntryError> {
        // An id made from the text must not depend on what this program fills in.
        let own_id = EntryId::of_text(context.slab, &self.text).to_string();
        let id = match self.fields.get("id") {
            None => own_id,
            Some(given) => resolve_label(context.slab, "id", given)?,
        };
        self.fields.insert("id".to_owned(), Value::String(id));
        if let Some(given) = self.fields.get("replaces") {
            let id = resolve_label(context.slab, "replaces", given)?;
            self.fields.insert("replaces".to_owned(), Value::String(id));
        }
        match self.fields.get("slab") {
            None => {
                self.fields.insert("slab".to_owned(), Value::String(context.slab.to_string()));
            }
            Some(Value::String(text)) if *text == context.slab.to_string() => {}
            Some(other) => {
                return Err(header(
                    "slab",
                    format!("{other} is another slab; accepted: {} or no slab at all", context.slab),
                ));
            }
        }
        let zone = &context.zone;
        let happened = match self.fields.get("happened") {
            None => {
                return Err(header(
                    "happened",
                    "is missing; accepted: 2026-03-02T07:00-06:00, 2026-03-02 07:00, 2026-03-02",
                ));
            }
            Some(value) => moment("happened", value, zone)?,
        };
        let noted = match self.fields.get("noted") {
            Some(value) => moment("noted", value, zone)?,
            None => context.noted.clone().unwrap_or_else(|| happened.clone()),
        };
        self.fields.insert("happened".to_owned(), Value::String(happened.to_string()));
        self.fields.insert("noted".to_owned(), Value::String(noted.to_string()));
        self.fields.entry("author").or_insert_with(|| Value::String(context.author.clone()));
        self.fields.entry("device").or_insert_with(|| Value::String(context.device.clone()));
        self.fields.entry("schema").or_insert_with(|| Value::from(SCHEMA));
        match self.fields.get("body") {
            Some(Value::Object(_)) => {
                let Some(Value::Object(body)) = self.fields.get_mut("body") else { unreachable!("matched above") };
                let schema = body.get("kind").and_then(Value::as_str).and_then(EntryKind::named).map(EntryKind::schema);
                let entries = schema.into_iter().flat_map(|schema| schema.fields);
                for field in entries.filter(|field| matches!(field.input, InputKind::Entry(_))) {
                    let label = body.get(field.name).filter(|id| id.as_str().is_some_and(|t| t.starts_with('#')));
                    if let Some(label) = label {
                        let id = resolve_label(context.slab, &format!("body.{}", field.name), label)?;
                        body.insert(field.name.to_owned(), Value::String(id));
                        self.raw_body = None;
                    }
                }
            }
            Some(_) => return Err(header("body", "is not an object; accepted: {\"kind\": …}")),
            None => {
                let kinds: Vec<&str> = EntryKind::ALL.iter().map(|kind| kind.name()).collect();
                return Err(header(
                    "body",
                    format!("is missing; accepted: {{\"kind\": …}} with one of {}", kinds.join(", ")),
                ));
            }
        }
        let text = match self.raw_body {
            None => Value::Object(self.fields).to_string(),
            Some(raw) => {
                self.fields.shift_remove("body");
                let header = Value::Object(self.fields).to_string();
                format!("{},\"body\":{raw}}}", header.strip_suffix('}').unwrap_or(&header))
            }
        };
        Entry::from_json(&text)
    }
}

fn moment(field: &str, value: &Value, zone: &TimeZone) -> Result<When, EntryError> {
    let Value::String(text) = value else {
        return Err(header(field, format!("{value} is not a moment; accepted: \"2026-03-02 07:00\"")));
    };
    When::read(text, zone).map_err(|e| header(field, e.to_string()))
}

fn resolve_label(slab: SlabId, field: &str, value: &Value) -> Result<String, EntryError> {
    match value {
        Value::String(text) => match text.strip_prefix('#') {
            Some(label) if !label.is_empty() => Ok(EntryId::of_label(slab, label).to_string()),
            _ => text
                .parse::<EntryId>()
                .map(|id| id.to_string())
                .map_err(|e| header(field, format!("{e}, or a label such as #oil"))),
        },
        other => Err(header(field, format!("{other} is not an id; accepted: a UUID, or a label such as #oil"))),
    }
}

/// Reads entries as JSON Lines; blank lines are passed over. All lines are read or none.
///
/// # Errors
/// Every line that cannot be read, with field, value and what would be accepted.
pub fn read_lines(text: &str, context: &Context) -> Result<Vec<Entry>, Vec<DraftError>> {
    let mut drafts = Vec::new();
    let mut errors = Vec::new();
    let mut context = context.clone();
    for (index, line) in text.lines().enumerate() {
        let line_number = index + 1;
        let line = line.trim_start_matches('\u{feff}').trim();
        if line.is_empty() {
            continue;
        }
        match Draft::parse(line) {
            Ok(draft) => {
                if let Some(name) = draft.zone_named() {
                    match TimeZone::get(name) {
                        Ok(zone) => context.zone = zone,
                        Err(_) => errors.push(DraftError {
                            line: line_number,
                            error: header(
                                "body.time_zone",
                                format!("\"{name}\" is not a time zone; accepted: a name such as America/Chicago"),
                            ),
                        }),
                    }
                }
                drafts.push((line_number, draft));
            }
            Err(error) => errors.push(DraftError { line: line_number, error }),
        }
    }
    let mut read: HashSet<String> = HashSet::new();
    let mut entries = Vec::with_capacity(drafts.len());
    for (line, draft) in drafts {
        let noted_typed = draft.fields.contains_key("noted");
        // A line that says what another said is that entry, not one more.
        if !read.insert(in_one_order(&Value::Object(draft.fields.clone()))) {
            continue;
        }
        match draft.settle(&context) {
            Ok(mut entry) => {
                if !noted_typed {
                    note_after_what_it_corrects(&mut entry, &entries, &context.zone);
                }
                entries.push(entry);
            }
            Err(error) => errors.push(DraftError { line, error }),
        }
    }
    if errors.is_empty() {
        Ok(entries)
    } else {
        errors.sort_by_key(|e| e.line);
        Err(errors)
    }
}

/// A correction is written down after what it corrects, also where neither says when and it tells of an earlier
/// moment.
fn note_after_what_it_corrects(entry: &mut Entry, before: &[Entry], zone: &TimeZone) {
    let Some(old) = entry.replaces.and_then(|id| before.iter().find(|old| old.id == id)) else { return };
    if entry.noted.instant() <= old.noted.instant() {
        entry.noted = When::new(old.noted.instant() + jiff::SignedDuration::from_secs(1), zone);
    }
}

/// What a line says, whatever the order of its fields and the blanks between them.
fn in_one_order(value: &Value) -> String {
    match value {
        Value::Object(fields) => {
            let mut fields: Vec<String> =
                fields.iter().map(|(name, value)| format!("{name:?}:{}", in_one_order(value))).collect();
            fields.sort();
            format!("{{{}}}", fields.join(","))
        }
        Value::Array(items) => format!("[{}]", items.iter().map(in_one_order).collect::<Vec<_>>().join(",")),
        plain => plain.to_string(),
    }
}
