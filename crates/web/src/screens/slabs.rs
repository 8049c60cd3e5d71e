//! The list of slabs, each with its one sentence; opening a slab; the demo; putting a slab away.

use std::sync::Arc;

use askama::Template;
use axum::Router;
use axum::response::{IntoResponse, Redirect};
use forms::Typed;
use jiff::tz::TimeZone;
use serde_json::json;
use slab::diary::{Diary, SlabId};
use slab::standing::State;
use store::{SlabQuery, SlabRecord};

use crate::app::App;
use crate::ask::{Answer, Ask, Posted, form, page};
use crate::control::{Control, Known, Mistakes, controls};
use crate::entries::{Opened, write_form};
use crate::frame::{Frame, show};
use crate::trouble::Trouble;
use crate::visitor::May;

/// Slabs on one page of the list.
const PER_PAGE: u64 = 30;

pub(super) fn routes() -> Router<Arc<App>> {
    Router::new()
        .route("/", page(May::Read, list))
        .route("/new", page(May::Write, blank).merge(form(May::Write, open)))
        .route("/demo", form(May::Write, add_demo))
        .route("/slab/{slab}/put-away", form(May::Write, put_away))
        .route("/slab/{slab}/bring-back", form(May::Write, bring_back))
        .route("/offline", page(May::Nothing, offline))
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

fn list(ask: &Ask) -> Answer {
    let search = ask.query.first("q").unwrap_or_default().trim().to_owned();
    let away = ask.query.first("away").is_some();
    let offset: u64 = ask.query.first("from").and_then(|text| text.parse().ok()).unwrap_or(0);
    let query =
        SlabQuery { search: (!search.is_empty()).then_some(search.as_str()), put_away: away, offset, limit: PER_PAGE };
    let (records, total) = ask.app.store().slab_page(&query)?;
    let rows: Result<Vec<Row>, Trouble> = records.iter().map(|record| row(ask, record)).collect();
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
    let frame = ask.frame(ask.voice().say("slabs-title", &[]));
    Ok(show(&List {
        rows: rows?,
        nothing_at_all: total == 0 && search.is_empty() && !away,
        has_demo: ask.app.settings.demo.is_some(),
        before: (offset > 0).then(|| href(offset.saturating_sub(PER_PAGE))),
        after: (offset + PER_PAGE < total).then(|| href(offset + PER_PAGE)),
        frame,
        search,
        away,
        total,
    }))
}

fn row(ask: &Ask, record: &SlabRecord) -> Result<Row, Trouble> {
    let overall = ask.app.overall(record)?;
    Ok(Row {
        id: record.id.to_string(),
        name: record.name.clone(),
        answer: ask.voice().overall(&overall),
        state: overall.state.name(),
        demo: ask.app.is_demo(record.id),
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

fn new_slab(ask: &Ask, typed: &Typed, mistakes: &Mistakes) -> NewSlab {
    let nothing = Diary::new();
    let slab = slab::slab::fold(&nothing, slab::diary::Knowledge::noted_by(ask.now()));
    let known = Known { slab: &slab, trade: slab::trade::Trade::built_in(), voice: ask.voice() };
    let job = forms::form("job_opened").expect("opening a job is a kind of entry");
    let id = |name: &str| typed.first(name).map_or_else(|| ask.app.fresh_id().to_string(), str::to_owned);
    NewSlab {
        frame: ask.frame(ask.voice().say("new-slab-title", &[])),
        controls: controls(job, typed, mistakes, &known),
        entry: id("entry"),
        slab: id("slab"),
        mistakes: mistakes.to_vec(),
        has_demo: ask.app.settings.demo.is_some(),
        server_typed: !mistakes.is_empty(),
    }
}

/// What most floors are, so that a name is enough.
fn usual() -> Typed {
    let usual = [("exposure", "interior"), ("age", "new"), ("time_zone", "America/Chicago")];
    usual.into_iter().map(|(name, value)| (name.to_owned(), value.to_owned())).collect()
}

fn blank(ask: &Ask) -> Answer {
    Ok(show(&new_slab(ask, &usual(), &[])))
}

fn open(ask: &Ask, posted: &Posted) -> Answer {
    match open_slab(ask, posted) {
        Ok(id) => {
            let location = format!("/slab/{id}?said=opened");
            if ask.wants_json() {
                return Ok(axum::Json(json!({ "ok": true, "location": location })).into_response());
            }
            Ok(Redirect::to(&location).into_response())
        }
        Err(Trouble::Mistakes(mistakes)) if !ask.wants_json() => {
            let page = show(&new_slab(ask, &posted.typed, &mistakes));
            Ok((axum::http::StatusCode::UNPROCESSABLE_ENTITY, page).into_response())
        }
        Err(trouble) => Err(trouble),
    }
}

fn open_slab(ask: &Ask, posted: &Posted) -> Result<SlabId, Trouble> {
    let voice = ask.voice();
    let job = forms::form("job_opened").expect("opening a job is a kind of entry");
    let name = posted.typed.first("name").unwrap_or_default().trim().to_owned();
    // All that is wrong with the form first: a slab is made only when its first entry can be.
    forms::read_body(job, &posted.typed, voice.measure).map_err(|mistakes| {
        Trouble::Mistakes(mistakes.into_iter().map(|m| (m.field.clone(), m.said(voice))).collect())
    })?;
    let id: SlabId = match posted.typed.first("slab").map(str::parse) {
        Some(Ok(id)) => id,
        _ => ask.app.fresh_id().to_string().parse().map_err(|_| Trouble::NotFound)?,
    };
    ask.app.store().create_slab(id, &name).map_err(|error| match error {
        store::StoreError::SlabNameTaken { .. } => {
            Trouble::mistake("name", voice.say("mistake-name-taken", &[("name", name.as_str().into())]))
        }
        store::StoreError::SlabName { .. } => Trouble::mistake("name", voice.say("mistake-name", &[])),
        store::StoreError::SlabKnownAs { .. } => Trouble::mistake("entry", voice.say("mistake-already-written", &[])),
        other => Trouble::from(other),
    })?;
    let record = ask.app.store().slab_record(id)?.ok_or(Trouble::NotFound)?;
    let zone = posted.typed.first("time_zone").and_then(|name| TimeZone::get(name).ok()).unwrap_or(TimeZone::UTC);
    let opened = Opened { diary: ask.app.store().diary(id)?, record, zone };
    write_form(ask, &opened, job, posted, None)?;
    Ok(id)
}

fn add_demo(ask: &Ask, _: &Posted) -> Answer {
    let demo = ask.app.settings.demo.ok_or(Trouble::NotFound)?;
    let id = (demo.fill)(ask.app.store()).map_err(|error| {
        eprintln!("underfoot: {error}");
        Trouble::Failed("the demo".to_owned())
    })?;
    ask.app.store().bring_back(id)?;
    Ok(Redirect::to(&format!("/slab/{id}")).into_response())
}

fn put_away(ask: &Ask, _: &Posted) -> Answer {
    ask.app.store().put_away(ask.slab()?.id, ask.app.real_now())?;
    Ok(Redirect::to("/?said=put-away").into_response())
}

fn bring_back(ask: &Ask, _: &Posted) -> Answer {
    let id = ask.slab()?.id;
    ask.app.store().bring_back(id)?;
    Ok(Redirect::to(&format!("/slab/{id}?said=brought-back")).into_response())
}

#[derive(Template)]
#[template(path = "offline.html")]
struct Offline {
    frame: Frame,
}

/// What a phone shows in place of a page that it has not kept.
fn offline(ask: &Ask) -> Answer {
    let mut frame = ask.frame(ask.voice().say("offline-title", &[]));
    frame.visitor = String::new();
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
