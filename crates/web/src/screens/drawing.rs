//! Drawing the plan, and correcting it: room by room, by a walk along the walls, as areas for a bid, or
//! as the diary keeps it.

mod dxf;
mod error_source;
mod fill;
mod inputs;
mod kept;
mod lines;
mod look;
mod read;
mod sketch;
mod way;

use std::sync::Arc;

use askama::Template;
use axum::Router;
use axum::http::StatusCode;
use axum::response::{IntoResponse, Redirect};
use form_schema::FormData;
use localization::Locale;
use serde_json::{Value, json};
use slab_diary::fold;
use slab_diary::{Entry, EntryId, EntryKind, Knowledge};
use slab_plan::PlanSpec;

use crate::app::App;
use crate::context::{Answer, Posted, RequestContext, form, page};
use crate::control::mistake_of;
use crate::entries::{Opened, Submitted, after, must_be_writers, write};
use crate::frame::{Frame, NavLink, show};
use crate::page_error::PageError;
use crate::visitor::Permission;

use inputs::{Inputs, inputs};
use kept::{Kept, KeptShown, LEAVE_OUT};
use look::{Look, look, prove};
use way::Telling;

pub(super) use look::zone_name;

pub(super) fn routes() -> Router<Arc<App>> {
    Router::new()
        .route("/slab/{slab}/plan/draw", page(Permission::Write, blank).merge(form(Permission::Write, draw)))
        .route("/slab/{slab}/plan/look", form(Permission::Write, look_at))
        .merge(lines::routes())
        .merge(dxf::routes())
}

#[derive(Template)]
#[template(path = "draw.html")]
struct Page {
    frame: Frame,
    way: &'static str,
    what: String,
    ways: Vec<NavLink>,
    action: String,
    look_address: String,
    inputs: Inputs,
    kept: Option<KeptShown>,
    look: Look,
    mistakes: Vec<(String, String)>,
    entry: String,
    replaces: String,
    next: String,
    happened: String,
    happened_mistake: Option<String>,
    by_server: bool,
}

#[derive(Template)]
#[template(path = "plan_look.html")]
struct Fragment {
    frame: Frame,
    look: Look,
}

/// The way that the address names.
fn asked_way(context: &RequestContext) -> Option<Telling> {
    context.query.first("way").and_then(Telling::named)
}

/// The ways of telling a plan, those that need no text: for the page of a slab without one.
pub(super) fn ways(id: &str, locale: Locale) -> Vec<NavLink> {
    let told = [Telling::Rooms, Telling::Walk, Telling::Area].into_iter().map(|way| link(id, way, locale, false));
    told.chain([NavLink { href: format!("/slab/{id}/plan/dxf"), label: locale.message("dxf-title", &[]), here: false }])
        .collect()
}

/// Which page around the plan is shown.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Here {
    Drawing(Telling),
    Lines,
    Dxf,
}

/// The ways between the pages that write a plan.
fn all_ways(id: &str, locale: Locale, here: Here) -> Vec<NavLink> {
    let mut all: Vec<NavLink> =
        Telling::ALL.into_iter().map(|each| link(id, each, locale, here == Here::Drawing(each))).collect();
    let way = |end: &str, label: String, is: Here| NavLink {
        href: format!("/slab/{id}/plan/{end}"),
        label,
        here: here == is,
    };
    all.push(way("dxf", locale.message("dxf-title", &[]), Here::Dxf));
    all.push(way("lines", locale.message("lines-title", &[]), Here::Lines));
    all
}

/// The addresses of the forms that tell a plan, with their names.
pub(super) fn addresses(locale: Locale, id: &str) -> impl Iterator<Item = (String, String)> {
    let ways = Telling::ALL.into_iter().map(move |way| link(id, way, locale, false));
    let first = (format!("/slab/{id}/plan/draw"), locale.message("draw-title", &[]));
    std::iter::once(first).chain(ways.map(|way| (way.href, way.label)))
}

fn link(id: &str, way: Telling, locale: Locale, here: bool) -> NavLink {
    NavLink { href: format!("/slab/{id}/plan/draw?way={}", way.name()), label: way.label(locale), here }
}

fn shown(
    context: &RequestContext,
    opened: &Opened,
    way: Telling,
    typed: &FormData,
    mistakes: &[(String, String)],
) -> Page {
    let locale = context.locale();
    let id = opened.record.id;
    let slab = fold(&opened.diary, Knowledge::noted_by(context.app.asked_at(id)));
    let text = |name: &str| typed.first(name).unwrap_or_default().to_owned();
    let fixing = !text("replaces").is_empty();
    let title = if fixing { locale.message("draw-title-fix", &[]) } else { locale.message("draw-title", &[]) };
    let address = |end: &str| format!("/slab/{id}/plan/{end}?way={}", way.name());
    Page {
        frame: context.frame(title).about(context, &opened.record, &opened.zone),
        way: way.name(),
        what: way.what(locale),
        ways: all_ways(&id.to_string(), locale, Here::Drawing(way)),
        action: address("draw"),
        look_address: address("look"),
        inputs: inputs(way, typed, mistakes, locale),
        kept: Kept::of(way, typed, &slab).map(|kept| kept.shown(mistake_of(mistakes, LEAVE_OUT), locale)),
        look: look(way, typed, &slab, locale),
        entry: typed.first("entry").map_or_else(|| context.app.fresh_id().to_string(), str::to_owned),
        replaces: text("replaces"),
        next: typed.first("next").map_or_else(|| format!("/slab/{id}/plan"), str::to_owned),
        happened: text("happened"),
        happened_mistake: mistake_of(mistakes, "happened"),
        by_server: fixing || !mistakes.is_empty() || typed.first("look").is_some(),
        mistakes: mistakes.to_vec(),
    }
}

fn blank(context: &RequestContext) -> Answer {
    let opened = context.opened()?;
    let slab = fold(&opened.diary, Knowledge::noted_by(context.app.asked_at(opened.record.id)));
    let (way, mut typed) = match slab.plan_entry() {
        None => (asked_way(context).unwrap_or(Telling::Rooms), FormData::new()),
        Some((seen, _)) => {
            let (present, typed) = fill::fill(seen.body);
            match asked_way(context) {
                Some(Telling::Text) => (Telling::Text, fill::text(seen.body)),
                Some(way) if way != present => (way, FormData::new()),
                _ => (present, typed),
            }
        }
    };
    if let Some((seen, _)) = slab.plan_entry() {
        let local = seen.entry.happened.local();
        typed.set("replaces", seen.entry.id.to_string());
        typed.set("happened", format!("{} {:02}:{:02}", local.date(), local.hour(), local.minute()));
    }
    Ok(show(&shown(context, &opened, way, &typed, &[])))
}

/// The plan that the form corrects.
fn corrected<'o>(typed: &FormData, opened: &'o Opened) -> Option<&'o Entry> {
    let id: EntryId = typed.answer("replaces")?.parse().ok()?;
    opened.diary.get(id).filter(|entry| entry.body.kind() == Some(EntryKind::Plan))
}

fn draw(context: &RequestContext, posted: &Posted) -> Answer {
    let opened = context.opened()?;
    let way = asked_way(context).unwrap_or(Telling::Rooms);
    if context.query.first("look").is_some() {
        let mut typed = posted.typed.clone();
        typed.set("look", "1");
        return Ok(show(&shown(context, &opened, way, &typed, &[])));
    }
    match written(context, &opened, way, posted) {
        Ok(id) => {
            let location = after(posted, &opened.record, "plan-written", id);
            if context.wants_json() {
                let said = context.locale().message("said-plan-written", &[]);
                return Ok(axum::Json(json!({ "ok": true, "location": location, "said": said })).into_response());
            }
            Ok(Redirect::to(&location).into_response())
        }
        Err(PageError::FieldErrors(mistakes)) if !context.wants_json() => {
            let page = show(&shown(context, &opened, way, &posted.typed, &mistakes));
            Ok((StatusCode::UNPROCESSABLE_ENTITY, page).into_response())
        }
        Err(trouble) => Err(trouble),
    }
}

fn written(context: &RequestContext, opened: &Opened, way: Telling, posted: &Posted) -> Result<EntryId, PageError> {
    must_be_writers(context, posted)?;
    let slab = fold(&opened.diary, Knowledge::noted_by(context.app.asked_at(opened.record.id)));
    let kept = Kept::of(way, &posted.typed, &slab);
    let proved = prove(way, &posted.typed, kept.as_ref(), context.locale());
    let proved = proved.map_err(|(wrong, _)| PageError::FieldErrors(wrong))?;
    write_plan(context, opened, &proved.told.spec, posted)
}

/// Writes a plan; as a correction where the form says of which.
fn write_plan(
    context: &RequestContext,
    opened: &Opened,
    spec: &PlanSpec,
    posted: &Posted,
) -> Result<EntryId, PageError> {
    let spec = serde_json::to_value(spec).map_err(|e| PageError::failed("keeping a plan", &e))?;
    let Value::Object(fields) = spec else {
        return Err(PageError::failed_without_words("a plan is an object"));
    };
    let old = corrected(&posted.typed, opened);
    write(context, opened, Submitted { old, ..Submitted::of(EntryKind::Plan, fields) }, posted)
}

/// The look as it is typed, without the page around it.
fn look_at(context: &RequestContext, posted: &Posted) -> Answer {
    let opened = context.opened()?;
    let slab = fold(&opened.diary, Knowledge::noted_by(context.app.asked_at(opened.record.id)));
    let way = asked_way(context).unwrap_or(Telling::Rooms);
    let look = look(way, &posted.typed, &slab, context.locale());
    Ok(show(&Fragment { frame: context.frame(String::new()), look }))
}
