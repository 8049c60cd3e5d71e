//! Joints and score lines: as rows, with what they come to, a proposal of saw cuts, and what speaks
//! against the joints. Written as the plan that stands with its lines replaced.

mod fill;
mod inputs;
mod look;
mod messages;
mod read;

use std::sync::Arc;

use askama::Template;
use axum::Router;
use axum::http::StatusCode;
use axum::response::{IntoResponse, Redirect};
use form_schema::FormData;
use slab_diary::body::Pour;
use slab_diary::{EntryId, Knowledge};
use slab_diary::{Slab, fold};
use slab_plan::layout::{JointLimits, advise_joints};
use slab_plan::{Plan, PlanSpec};
use trade_facts::Trade;
use units::Length;

use super::inputs::Shown;
use super::read::Wrong;
use crate::app::App;
use crate::context::{Answer, Posted, RequestContext, form, page};
use crate::control::{FieldErrors, mistake_of};
use crate::entries::{Opened, after};
use crate::frame::{Frame, NavLink, show};
use crate::page_error::PageError;
use crate::visitor::Permission;

use inputs::{Inputs, inputs};
use look::{Look, look, prove};
use read::{Lines, Tools};

/// Rows of one kind in a form, at most: a plan takes fewer, and a page of more helps nobody.
const MAX_ROWS: usize = 2_000;

pub(super) fn routes() -> Router<Arc<App>> {
    Router::new()
        .route("/slab/{slab}/plan/lines", page(Permission::Write, blank).merge(form(Permission::Write, posted)))
        .route("/slab/{slab}/plan/lines/look", form(Permission::Write, look_at))
}

#[derive(Template)]
#[template(path = "lines.html")]
struct Page {
    frame: Frame,
    ways: Vec<NavLink>,
    action: String,
    /// Nothing when the slab has no plan that is drawn.
    desk: Option<Desk>,
    mistakes: Vec<(String, String)>,
    /// What concerns the patterns, or the plan, as a whole.
    patterns_mistake: Option<String>,
    entry: String,
    next: String,
    happened: String,
    happened_mistake: Option<String>,
}

/// The rows, and what they come to.
struct Desk {
    inputs: Inputs,
    look: Look,
    /// Thickness that the diary knows.
    thickness_known: Option<String>,
}

#[derive(Template)]
#[template(path = "lines_look.html")]
struct Fragment {
    frame: Frame,
    look: Look,
}

/// The plan that stands, when it is drawn and holds together.
struct Standing<'s> {
    spec: &'s PlanSpec,
    plan: &'s Plan,
    thickness: Option<Length>,
}

impl<'s> Standing<'s> {
    fn of(slab: &'s Slab<'_>) -> Option<Self> {
        let plan = slab.plan().filter(|plan| plan.is_drawn())?;
        let (seen, _) = slab.plan_entry()?;
        let pour = slab.last::<Pour>();
        let thickness = pour.and_then(|pour| pour.body.thickness.as_ref()).map(units::AsWritten::value);
        Some(Self { spec: seen.body, plan, thickness })
    }

    /// The tools as typed, the thickness else as the diary knows it.
    fn tools(&self, typed: &FormData, context: &RequestContext) -> (Tools, Wrong) {
        let (mut tools, wrong) = read::tools(typed, context.locale());
        if typed.answer("thickness").is_none() {
            tools.thickness = self.thickness;
        }
        (tools, wrong)
    }

    fn look(&self, typed: &FormData, context: &RequestContext) -> (Look, Wrong) {
        let locale = context.locale();
        let (tools, mut wrong) = self.tools(typed, context);
        let proved = read::read(typed, locale).and_then(|lines| prove(&lines, self.spec, locale));
        let look = look(proved.as_ref().map(|(_, plan)| plan), self.plan, &tools, locale);
        wrong.extend(proved.err().unwrap_or_default());
        (look, wrong)
    }
}

fn slab_of<'o>(context: &RequestContext, opened: &'o Opened) -> Slab<'o> {
    fold(&opened.diary, Knowledge::noted_by(context.app.asked_at(opened.record.id)))
}

fn shown(context: &RequestContext, opened: &Opened, typed: &FormData, mistakes: &FieldErrors) -> Page {
    let locale = context.locale();
    let id = opened.record.id;
    let slab = slab_of(context, opened);
    let text = |name: &str| typed.first(name).unwrap_or_default().to_owned();
    let more = typed.first("step") == Some("more");
    let desk = Standing::of(&slab).map(|standing| Desk {
        inputs: inputs(&Shown { typed, mistakes, locale }, standing.plan, more),
        look: standing.look(typed, context).0,
        thickness_known: standing.thickness.map(|thick| locale.length(thick)),
    });
    Page {
        frame: context.frame(locale.message("lines-title", &[])).about(context, &opened.record, &opened.zone),
        ways: super::all_ways(&id.to_string(), locale, super::Here::Lines),
        action: format!("/slab/{id}/plan/lines"),
        desk,
        patterns_mistake: mistake_of(mistakes, "patterns").or_else(|| mistake_of(mistakes, "plan")),
        entry: typed.first("entry").map_or_else(|| context.app.fresh_id().to_string(), str::to_owned),
        next: typed.first("next").map_or_else(|| format!("/slab/{id}/plan"), str::to_owned),
        happened: text("happened"),
        happened_mistake: mistake_of(mistakes, "happened"),
        mistakes: mistakes.to_vec(),
    }
}

fn answered(context: &RequestContext, opened: &Opened, typed: &FormData, mistakes: Wrong) -> Answer {
    if mistakes.is_empty() {
        return Ok(show(&shown(context, opened, typed, &[])));
    }
    if context.wants_json() {
        return Err(PageError::FieldErrors(mistakes));
    }
    Ok((StatusCode::UNPROCESSABLE_ENTITY, show(&shown(context, opened, typed, &mistakes))).into_response())
}

fn blank(context: &RequestContext) -> Answer {
    let opened = context.opened()?;
    let slab = slab_of(context, &opened);
    let typed = Standing::of(&slab).map_or_else(FormData::new, |standing| fill::fill(standing.spec));
    Ok(show(&shown(context, &opened, &typed, &[])))
}

fn bounded(typed: &FormData) -> Result<(), PageError> {
    if typed.iter().all(|(_, texts)| texts.len() <= MAX_ROWS) { Ok(()) } else { Err(PageError::TooLarge) }
}

fn posted(context: &RequestContext, posted: &Posted) -> Answer {
    bounded(&posted.typed)?;
    let opened = context.opened()?;
    let slab = slab_of(context, &opened);
    let locale = context.locale();
    let Some(standing) = Standing::of(&slab) else {
        return answered(
            context,
            &opened,
            &posted.typed,
            vec![("plan".to_owned(), locale.message("lines-not-drawn", &[]))],
        );
    };
    match posted.typed.first("step") {
        Some("write") => match written(context, &opened, &standing, posted) {
            Ok(id) => Ok(Redirect::to(&after(posted, &opened.record, "plan-written", id)).into_response()),
            Err(PageError::FieldErrors(wrong)) => answered(context, &opened, &posted.typed, wrong),
            Err(trouble) => Err(trouble),
        },
        Some("propose") => match proposed(context, &standing, &posted.typed) {
            Ok(typed) => answered(context, &opened, &typed, Vec::new()),
            Err(wrong) => answered(context, &opened, &posted.typed, wrong),
        },
        Some("more") => answered(context, &opened, &posted.typed, Vec::new()),
        _ => {
            let (_, wrong) = standing.look(&posted.typed, context);
            answered(context, &opened, &posted.typed, wrong)
        }
    }
}

/// The form with saw cuts in its rows; nothing is written.
fn proposed(context: &RequestContext, standing: &Standing<'_>, typed: &FormData) -> Result<FormData, Wrong> {
    let locale = context.locale();
    let (tools, wrong) = standing.tools(typed, context);
    if let Some(wrong) = wrong.into_iter().find(|(field, _)| field == "thickness") {
        return Err(vec![wrong]);
    }
    let at = |field: &str, said: String| vec![(field.to_owned(), said)];
    let thickness = tools.thickness.ok_or_else(|| at("thickness", locale.message("lines-wrong-no-thickness", &[])))?;
    let advice = JointLimits::of(Trade::built_in())
        .and_then(|limits| advise_joints(standing.plan, thickness, &[], &limits))
        .map_err(|error| at("thickness", messages::layout_error(&error, locale)))?;
    Ok(fill::proposed(typed, &advice.cuts, locale))
}

fn written(
    context: &RequestContext,
    opened: &Opened,
    standing: &Standing<'_>,
    posted: &Posted,
) -> Result<EntryId, PageError> {
    let locale = context.locale();
    let lines: Lines = read::read(&posted.typed, locale).map_err(PageError::FieldErrors)?;
    let (spec, _) = prove(&lines, standing.spec, locale).map_err(PageError::FieldErrors)?;
    super::write_plan(context, opened, &spec, posted)
}

/// The look at what is typed, without the page around it.
fn look_at(context: &RequestContext, posted: &Posted) -> Answer {
    bounded(&posted.typed)?;
    let opened = context.opened()?;
    let slab = slab_of(context, &opened);
    let standing = Standing::of(&slab).ok_or(PageError::NotFound)?;
    let (look, _) = standing.look(&posted.typed, context);
    Ok(show(&Fragment { frame: context.frame(String::new()), look }))
}
