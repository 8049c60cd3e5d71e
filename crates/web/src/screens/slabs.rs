//! The list of slabs, each with its one sentence; opening a slab; the demo; putting a slab away.

use std::sync::Arc;

use askama::Template;
use axum::Router;
use axum::response::{IntoResponse, Redirect};
use form_schema::FormData;
use jiff::tz::TimeZone;
use serde_json::json;
use slab_answers::standing::State;
use slab_diary::{Diary, EntryKind, SlabId};
use store::{SlabQuery, SlabRecord};

use crate::app::App;
use crate::context::{Answer, Posted, RequestContext, form, page};
use crate::control::{Control, FieldErrors, Known, controls};
use crate::entries::{Opened, field_errors, must_be_writers, write_form};
use crate::frame::{Frame, show};
use crate::page_error::PageError;
use crate::visitor::Permission;

/// Slabs on one page of the list.
const PER_PAGE: u64 = 30;

pub(super) fn routes() -> Router<Arc<App>> {
    Router::new()
        .route("/", page(Permission::Read, list))
        .route("/new", page(Permission::Write, blank).merge(form(Permission::Write, open)))
        .route("/demo", form(Permission::Write, add_demo))
        .route("/slab/{slab}/put-away", form(Permission::Write, put_away))
        .route("/slab/{slab}/bring-back", form(Permission::Write, bring_back))
        .route("/offline", page(Permission::Nothing, offline))
}

struct Row {
    id: String,
    name: String,
    answer: String,
    state: &'static str,
    demo: bool,
}

#[derive(Template)]
#[template(path = "slabs.html")]
struct List {
    frame: Frame,
    rows: Vec<Row>,
    search: String,
    away: bool,
    total: u64,
    nothing_at_all: bool,
    has_demo: bool,
    before: Option<String>,
    after: Option<String>,
}

fn list(context: &RequestContext) -> Answer {
    let search = context.query.first("q").unwrap_or_default().trim().to_owned();
    let away = context.query.first("away").is_some();
    let offset: u64 = context.query.first("from").and_then(|text| text.parse().ok()).unwrap_or(0);
    let query =
        SlabQuery { search: (!search.is_empty()).then_some(search.as_str()), put_away: away, offset, limit: PER_PAGE };
    let (records, total) = context.app.store().slab_page(&query)?;
    let rows: Result<Vec<Row>, PageError> = records.iter().map(|record| row(context, record)).collect();
    let href = |from: u64| {
        let mut query = form_urlencoded::Serializer::new(String::new());
        if !search.is_empty() {
            query.append_pair("q", &search);
        }
        if away {
            query.append_pair("away", "1");
        }
        format!("/?{}", query.append_pair("from", &from.to_string()).finish())
    };
    let frame = context.frame(context.locale().message("slabs-title", &[]));
    Ok(show(&List {
        rows: rows?,
        nothing_at_all: total == 0 && search.is_empty() && !away,
        has_demo: context.app.settings.demo.is_some(),
        before: (offset > 0).then(|| href(offset.saturating_sub(PER_PAGE))),
        after: (offset + PER_PAGE < total).then(|| href(offset + PER_PAGE)),
        frame,
        search,
        away,
        total,
    }))
}

fn row(context: &RequestContext, record: &SlabRecord) -> Result<Row, PageError> {
    let overall = context.app.overall(record)?;
    Ok(Row {
        id: record.id.to_string(),
        name: record.name.clone(),
        answer: context.locale().overall(&overall),
        state: overall.state.name(),
        demo: context.app.is_demo(record.id),
    })
}

#[derive(Template)]
#[template(path = "new_slab.html")]
struct NewSlab {
    frame: Frame,
    controls: Vec<Control>,
    entry: String,
    slab: String,
    mistakes: Vec<(String, String)>,
    has_demo: bool,
    server_typed: bool,
}

fn new_slab(context: &RequestContext, typed: &FormData, mistakes: &FieldErrors) -> NewSlab {
    let nothing = Diary::new();
    let slab = slab_diary::fold(&nothing, slab_diary::Knowledge::noted_by(context.now()));
    let known = Known { slab: &slab, trade: trade_facts::Trade::built_in(), locale: context.locale() };
    let job = EntryKind::JobOpened.schema();
    let id = |name: &str| typed.first(name).map_or_else(|| context.app.fresh_id().to_string(), str::to_owned);
    NewSlab {
        frame: context.frame(context.locale().message("new-slab-title", &[])),
        controls: controls(job, typed, mistakes, &known),
        entry: id("entry"),
        slab: id("slab"),
        mistakes: mistakes.to_vec(),
        has_demo: context.app.settings.demo.is_some(),
        server_typed: !mistakes.is_empty(),
    }
}

/// What most floors are, so that a name is enough.
fn usual() -> FormData {
    let usual = [("exposure", "interior"), ("age", "new"), ("time_zone", "America/Chicago")];
    usual.into_iter().map(|(name, value)| (name.to_owned(), value.to_owned())).collect()
}

fn blank(context: &RequestContext) -> Answer {
    Ok(show(&new_slab(context, &usual(), &[])))
}

fn open(context: &RequestContext, posted: &Posted) -> Answer {
    match open_slab(context, posted) {
        Ok(id) => {
            let location = format!("/slab/{id}?said=opened");
            if context.wants_json() {
                return Ok(axum::Json(json!({ "ok": true, "location": location })).into_response());
            }
            Ok(Redirect::to(&location).into_response())
        }
        Err(PageError::FieldErrors(mistakes)) if !context.wants_json() => {
            let page = show(&new_slab(context, &posted.typed, &mistakes));
            Ok((axum::http::StatusCode::UNPROCESSABLE_ENTITY, page).into_response())
        }
        Err(trouble) => Err(trouble),
    }
}

fn open_slab(context: &RequestContext, posted: &Posted) -> Result<SlabId, PageError> {
    let locale = context.locale();
    must_be_writers(context, posted)?;
    let name = posted.typed.first("name").unwrap_or_default().trim().to_owned();
    // All that is wrong with the form first: a slab is made only when its first entry can be.
    EntryKind::JobOpened
        .read(&posted.typed, locale.unit_system)
        .map_err(|errors| PageError::FieldErrors(field_errors(&errors, EntryKind::JobOpened, locale)))?;
    let id: SlabId = match posted.typed.first("slab").map(str::parse) {
        Some(Ok(id)) => id,
        _ => context.app.fresh_id().to_string().parse().map_err(|_| PageError::NotFound)?,
    };
    context.app.store().create_slab(id, &name).map_err(|error| match error {
        store::StoreError::SlabNameTaken { .. } => {
            PageError::mistake("name", locale.message("mistake-name-taken", &[("name", name.as_str().into())]))
        }
        store::StoreError::SlabName { .. } => PageError::mistake("name", locale.message("mistake-name", &[])),
        store::StoreError::SlabKnownAs { .. } => {
            PageError::mistake("entry", locale.message("mistake-already-written", &[]))
        }
        other => PageError::from(other),
    })?;
    let record = context.app.store().slab_record(id)?.ok_or(PageError::NotFound)?;
    let zone = posted.typed.first("time_zone").and_then(|name| TimeZone::get(name).ok()).unwrap_or(TimeZone::UTC);
    let opened = Opened { diary: context.app.store().diary(id)?, record, zone };
    write_form(context, &opened, EntryKind::JobOpened, posted, None)?;
    Ok(id)
}

fn add_demo(context: &RequestContext, _: &Posted) -> Answer {
    let demo = context.app.settings.demo.ok_or(PageError::NotFound)?;
    let id = (demo.fill)(context.app.store()).map_err(|_| PageError::failed_without_words("the demo"))?;
    context.app.store().bring_back(id)?;
    Ok(Redirect::to(&format!("/slab/{id}")).into_response())
}

fn put_away(context: &RequestContext, _: &Posted) -> Answer {
    context.app.store().put_away(context.slab()?.id, context.app.real_now())?;
    Ok(Redirect::to("/?said=put-away").into_response())
}

fn bring_back(context: &RequestContext, _: &Posted) -> Answer {
    let id = context.slab()?.id;
    context.app.store().bring_back(id)?;
    Ok(Redirect::to(&format!("/slab/{id}?said=brought-back")).into_response())
}

#[derive(Template)]
#[template(path = "offline.html")]
struct Offline {
    frame: Frame,
}

/// What a phone shows in place of a page that it has not kept.
fn offline(context: &RequestContext) -> Answer {
    let frame = context.frame(context.locale().message("offline-title", &[])).for_anybody(&context.app);
    Ok(show(&Offline { frame }))
}

/// The mark of a state: a shape, since color alone is not enough.
pub(crate) fn mark(state: &str) -> &'static str {
    match state {
        s if s == State::Released.name() => "✓",
        s if s == State::Held.name() => "■",
        s if s == State::CantTell.name() => "◧",
        _ => "□",
    }
}
