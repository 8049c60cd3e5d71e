//! Bringing a weather file or a logger's table into the diary: sent, looked at, and only then written.

use std::sync::Arc;

use askama::Template;
use axum::Router;
use axum::http::StatusCode;
use axum::response::{IntoResponse, Redirect};
use serde_json::{Map, Value};
use slab_diary::{EntryId, EntryKind};
use weather_series::{ColumnMap, Import, ImportError, import};

use crate::air_import::{Choice, Looked, choice, looked};
use crate::app::App;
use crate::context::{Answer, Posted, RequestContext, Upload, form, page};
use crate::control::mistake_of;
use crate::entries::{Opened, Submitted, after, write};
use crate::frame::{Frame, show};
use crate::page_error::PageError;
use crate::uploads::{Waiting, tidy};
use crate::visitor::Permission;

/// Largest file: a year by the hour is 2 MB.
const MAX_BYTES: usize = 8 * 1024 * 1024;
/// Most rows: a year at ten-minute steps has 52,560. The diary is read whole at every look.
const MAX_ROWS: usize = 60_000;

pub(super) fn routes() -> Router<Arc<App>> {
    Router::new()
        .route("/slab/{slab}/air-record", page(Permission::Write, blank).merge(form(Permission::Write, posted)))
}

#[derive(Template)]
#[template(path = "air_record.html")]
struct Page {
    frame: Frame,
    mistakes: Vec<(String, String)>,
    file_mistake: Option<String>,
    /// What was read, when something was.
    looked: Option<Looked>,
    /// Which column is what, to be put right.
    choice: Option<Choice>,
    /// The secret of the file that waits.
    kept: String,
    name: String,
    entry: String,
}

impl Page {
    fn new(context: &RequestContext, opened: &Opened) -> Self {
        let title = context.locale().message("air-title", &[]);
        Self {
            frame: context.frame(title).about(context, &opened.record, &opened.zone),
            mistakes: Vec::new(),
            file_mistake: None,
            looked: None,
            choice: None,
            kept: String::new(),
            name: String::new(),
            entry: context.app.fresh_id().to_string(),
        }
    }

    fn wrong(mut self, context: &RequestContext, mistakes: Vec<(String, String)>) -> Answer {
        if context.wants_json() {
            return Err(PageError::FieldErrors(mistakes));
        }
        self.file_mistake = mistake_of(&mistakes, "file");
        self.mistakes = mistakes;
        Ok((StatusCode::UNPROCESSABLE_ENTITY, show(&self)).into_response())
    }
}

fn blank(context: &RequestContext) -> Answer {
    let opened = context.opened()?;
    Ok(show(&Page::new(context, &opened)))
}

fn posted(context: &RequestContext, posted: &Posted) -> Answer {
    let opened = context.opened()?;
    let locale = context.locale();
    let mut page = Page::new(context, &opened);
    let (kept, file) = match waiting(context, &opened, posted) {
        Ok(found) => found,
        Err(key) => return page.wrong(context, vec![("file".to_owned(), locale.message(key, &[]))]),
    };
    page.kept = kept;
    page.name.clone_from(&file.name);
    let map = mapping(posted);
    let read = match read(&file, map.as_ref(), &opened) {
        Ok(read) => read,
        Err(error) => {
            page.choice = choice(Err(&error), &posted.typed, locale);
            let field = if page.choice.is_some() { "columns" } else { "file" };
            return page.wrong(context, vec![(field.to_owned(), crate::air_text::refused(&error, locale))]);
        }
    };
    if read.series.samples.len() > MAX_ROWS {
        let count = locale.count(read.series.samples.len() as u32);
        return page
            .wrong(context, vec![("file".to_owned(), locale.message("air-mistake-rows", &[("count", count.into())]))]);
    }
    let mut mistakes = Vec::new();
    if posted.typed.first("step") == Some("write") {
        match written(context, &opened, &file, &read, posted) {
            Ok(id) => return Ok(Redirect::to(&after(posted, &opened.record, "written", id)).into_response()),
            Err(PageError::FieldErrors(wrong)) => mistakes = wrong,
            Err(trouble) => return Err(trouble),
        }
    }
    page.choice = choice(Ok(&read), &posted.typed, locale);
    page.looked = Some(looked(&read, &posted.typed, &opened.zone, locale));
    if mistakes.is_empty() { Ok(show(&page)) } else { page.wrong(context, mistakes) }
}

/// The file that came, or the one that was kept; with the secret it is kept under.
fn waiting(context: &RequestContext, opened: &Opened, posted: &Posted) -> Result<(String, Waiting), &'static str> {
    let (slab, now) = (opened.record.id, context.app.real_now());
    if let Some(Upload { name, bytes, .. }) = posted.files.iter().find(|f| f.field == "file") {
        if bytes.len() > MAX_BYTES {
            return Err("air-mistake-bytes");
        }
        let file = Waiting { slab, name: tidy(name), bytes: bytes.clone(), since: now };
        let secret = context.app.secret();
        context.app.uploads.keep(&secret, file.clone());
        return Ok((secret, file));
    }
    match posted.typed.first("kept").filter(|secret| !secret.is_empty()) {
        Some(secret) => {
            let file = context.app.uploads.get(secret, slab, now).ok_or("air-mistake-gone")?;
            Ok((secret.to_owned(), file))
        }
        None => Err("air-mistake-no-file"),
    }
}

/// The columns as chosen; nothing when all is left to be recognized.
fn mapping(posted: &Posted) -> Option<ColumnMap> {
    let mut map = ColumnMap::default();
    for (key, value) in crate::air_import::chosen(&posted.typed) {
        map.set(key, &value).ok()?;
    }
    (map != ColumnMap::default()).then_some(map)
}

fn read(file: &Waiting, map: Option<&ColumnMap>, opened: &Opened) -> Result<Import, ImportError> {
    import(&file.bytes, None, map, &opened.zone)
}

fn written(
    context: &RequestContext,
    opened: &Opened,
    file: &Waiting,
    read: &Import,
    posted: &Posted,
) -> Result<EntryId, PageError> {
    let named = posted.typed.first("source").map(tidy).filter(|name| !name.is_empty());
    let series = serde_json::to_value(&read.series).map_err(|e| PageError::failed("keeping an air record", &e))?;
    let mut fields = Map::new();
    fields.insert("source".to_owned(), Value::from(named.unwrap_or_else(|| file.name.clone())));
    fields.insert("series".to_owned(), series);
    write(context, opened, Submitted::of(EntryKind::AirSeries, fields), posted)
}
