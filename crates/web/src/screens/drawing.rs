//! Drawing the plan, and correcting it: room by room, by a walk along the walls, as areas for a bid, or
//! as the diary keeps it.

mod blame;
mod dxf;
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
use forms::Typed;
use serde_json::{Value, json};
use slab::diary::{Entry, EntryId, Knowledge};
use slab::plan::PlanSpec;
use slab::slab::fold;
use words::Voice;

use crate::app::App;
use crate::ask::{Answer, Ask, Posted, form, page};
use crate::control::mistake_of;
use crate::entries::{Opened, Written, after, write};
use crate::frame::{Frame, Way, show};
use crate::trouble::Trouble;
use crate::visitor::May;

use inputs::{Inputs, inputs};
use kept::{Kept, KeptShown, LEAVE_OUT};
use look::{Look, look, prove};
use way::Telling;

pub(super) use look::zone_name;

pub(super) fn routes() -> Router<Arc<App>> {
    Router::new()
        .route("/slab/{slab}/plan/draw", page(May::Write, blank).merge(form(May::Write, draw)))
        .route("/slab/{slab}/plan/look", form(May::Write, look_at))
        .merge(lines::routes())
        .merge(dxf::routes())
}

#[derive(Template)]
#[template(path = "draw.html")]
struct Page {
    frame: Frame,
    way: &'static str,
    what: String,
    ways: Vec<Way>,
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
fn asked_way(ask: &Ask) -> Option<Telling> {
    ask.query.first("way").and_then(Telling::named)
}

/// The ways of telling a plan, those that need no text: for the page of a slab without one.
pub(super) fn ways(id: &str, voice: Voice) -> Vec<Way> {
    let told = [Telling::Rooms, Telling::Walk, Telling::Area].into_iter().map(|way| link(id, way, voice, false));
    told.chain([Way { href: format!("/slab/{id}/plan/dxf"), label: voice.say("dxf-title", &[]), here: false }])
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
fn all_ways(id: &str, voice: Voice, here: Here) -> Vec<Way> {
    let mut all: Vec<Way> =
        Telling::ALL.into_iter().map(|each| link(id, each, voice, here == Here::Drawing(each))).collect();
    let way =
        |end: &str, label: String, is: Here| Way { href: format!("/slab/{id}/plan/{end}"), label, here: here == is };
    all.push(way("dxf", voice.say("dxf-title", &[]), Here::Dxf));
    all.push(way("lines", voice.say("lines-title", &[]), Here::Lines));
    all
}

fn link(id: &str, way: Telling, voice: Voice, here: bool) -> Way {
    Way { href: format!("/slab/{id}/plan/draw?way={}", way.name()), label: way.label(voice), here }
}

fn shown(ask: &Ask, opened: &Opened, way: Telling, typed: &Typed, mistakes: &[(String, String)]) -> Page {
    let voice = ask.voice();
    let id = opened.record.id;
    let slab = fold(&opened.diary, Knowledge::noted_by(ask.app.asked_at(id)));
    let text = |name: &str| typed.first(name).unwrap_or_default().to_owned();
    let fixing = !text("replaces").is_empty();
    let title = if fixing { voice.say("draw-title-fix", &[]) } else { voice.say("draw-title", &[]) };
    let address = |end: &str| format!("/slab/{id}/plan/{end}?way={}", way.name());
    Page {
        frame: ask.frame(title).about(ask, &opened.record, &opened.zone),
        way: way.name(),
        what: way.what(voice),
        ways: all_ways(&id.to_string(), voice, Here::Drawing(way)),
        action: address("draw"),
        look_address: address("look"),
        inputs: inputs(way, typed, mistakes, voice),
        kept: Kept::of(way, typed, &slab).map(|kept| kept.shown(mistake_of(mistakes, LEAVE_OUT), voice)),
        look: look(way, typed, &slab, voice),
        entry: typed.first("entry").map_or_else(|| ask.app.fresh_id().to_string(), str::to_owned),
        replaces: text("replaces"),
        next: typed.first("next").map_or_else(|| format!("/slab/{id}/plan"), str::to_owned),
        happened: text("happened"),
        happened_mistake: mistake_of(mistakes, "happened"),
        by_server: fixing || !mistakes.is_empty() || typed.first("look").is_some(),
        mistakes: mistakes.to_vec(),
    }
}

fn blank(ask: &Ask) -> Answer {
    let opened = ask.opened()?;
    let slab = fold(&opened.diary, Knowledge::noted_by(ask.app.asked_at(opened.record.id)));
    let (way, mut typed) = match slab.plan_entry() {
        None => (asked_way(ask).unwrap_or(Telling::Rooms), Typed::new()),
        Some((seen, _)) => {
            let (present, typed) = fill::fill(seen.body);
            match asked_way(ask) {
                Some(Telling::Text) => (Telling::Text, fill::text(seen.body)),
                Some(way) if way != present => (way, Typed::new()),
                _ => (present, typed),
            }
        }
    };
    if let Some((seen, _)) = slab.plan_entry() {
        let local = seen.entry.happened.local();
        typed.set("replaces", seen.entry.id.to_string());
        typed.set("happened", format!("{} {:02}:{:02}", local.date(), local.hour(), local.minute()));
    }
    Ok(show(&shown(ask, &opened, way, &typed, &[])))
}

/// The plan that the form corrects.
fn corrected<'o>(typed: &Typed, opened: &'o Opened) -> Option<&'o Entry> {
    let id: EntryId = typed.answer("replaces")?.parse().ok()?;
    opened.diary.get(id).filter(|entry| entry.body.kind() == "plan")
}

fn draw(ask: &Ask, posted: &Posted) -> Answer {
    let opened = ask.opened()?;
    let way = asked_way(ask).unwrap_or(Telling::Rooms);
    if ask.query.first("look").is_some() {
        let mut typed = posted.typed.clone();
        typed.set("look", "1");
        return Ok(show(&shown(ask, &opened, way, &typed, &[])));
    }
    match written(ask, &opened, way, posted) {
        Ok(_) => {
            let location = after(posted, &opened.record, "plan-written");
            if ask.wants_json() {
                let said = ask.voice().say("said-plan-written", &[]);
                return Ok(axum::Json(json!({ "ok": true, "location": location, "said": said })).into_response());
            }
            Ok(Redirect::to(&location).into_response())
        }
        Err(Trouble::Mistakes(mistakes)) if !ask.wants_json() => {
            let page = show(&shown(ask, &opened, way, &posted.typed, &mistakes));
            Ok((StatusCode::UNPROCESSABLE_ENTITY, page).into_response())
        }
        Err(trouble) => Err(trouble),
    }
}

fn written(ask: &Ask, opened: &Opened, way: Telling, posted: &Posted) -> Result<EntryId, Trouble> {
    let slab = fold(&opened.diary, Knowledge::noted_by(ask.app.asked_at(opened.record.id)));
    let kept = Kept::of(way, &posted.typed, &slab);
    let proved = prove(way, &posted.typed, kept.as_ref(), ask.voice());
    let proved = proved.map_err(|(wrong, _)| Trouble::Mistakes(wrong))?;
    write_plan(ask, opened, &proved.told.spec, posted)
}

/// Writes a plan; as a correction where the form says of which.
fn write_plan(ask: &Ask, opened: &Opened, spec: &PlanSpec, posted: &Posted) -> Result<EntryId, Trouble> {
    let spec = serde_json::to_value(spec).map_err(|e| Trouble::Failed(e.to_string()))?;
    let Value::Object(mut body) = spec else {
        return Err(Trouble::Failed("a plan is an object".to_owned()));
    };
    body.insert("kind".to_owned(), json!("plan"));
    let old = corrected(&posted.typed, opened);
    write(ask, opened, Written { body, place: None, photographs: Vec::new(), old }, posted)
}

/// The look as it is typed, without the page around it.
fn look_at(ask: &Ask, posted: &Posted) -> Answer {
    let opened = ask.opened()?;
    let slab = fold(&opened.diary, Knowledge::noted_by(ask.app.asked_at(opened.record.id)));
    let way = asked_way(ask).unwrap_or(Telling::Rooms);
    let look = look(way, &posted.typed, &slab, ask.voice());
    Ok(show(&Fragment { frame: ask.frame(String::new()), look }))
}
