//! Joints and score lines: as rows, with what they come to, a proposal of saw cuts, and what speaks
//! against the joints. Written as the plan that stands with its lines replaced.

mod fill;
mod inputs;
mod look;
mod read;
mod said;

use std::sync::Arc;

use askama::Template;
use axum::Router;
use axum::http::StatusCode;
use axum::response::{IntoResponse, Redirect};
use forms::Typed;
use slab::diary::Knowledge;
use slab::diary::body::Pour;
use slab::layout::{JointLimits, advise_joints};
use slab::plan::{Plan, PlanSpec};
use slab::slab::{Slab, fold};
use slab::trade::Trade;
use units::Length;

use super::inputs::Shown;
use super::read::Wrong;
use crate::app::App;
use crate::ask::{Answer, Ask, Posted, form, page};
use crate::control::{Mistakes, mistake_of};
use crate::entries::{Opened, after};
use crate::frame::{Frame, Way, show};
use crate::trouble::Trouble;
use crate::visitor::May;

use inputs::{Inputs, inputs};
use look::{Look, look, prove};
use read::{Lines, Tools};

/// Rows of one kind in a form, at most: a plan takes fewer, and a page of more helps nobody.
const MOST_ROWS: usize = 2_000;

pub(super) fn routes() -> Router<Arc<App>> {
    Router::new()
        .route("/slab/{slab}/plan/lines", page(May::Write, blank).merge(form(May::Write, posted)))
        .route("/slab/{slab}/plan/lines/look", form(May::Write, look_at))
}

#[derive(Template)]
#[template(path = "lines.html")]
struct Page {
    frame: Frame,
    ways: Vec<Way>,
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
        let thickness = pour.and_then(|pour| pour.body.thickness.as_ref()).map(units::Written::value);
        Some(Self { spec: seen.body, plan, thickness })
    }

    /// The tools as typed, the thickness else as the diary knows it.
    fn tools(&self, typed: &Typed, ask: &Ask) -> (Tools, Wrong) {
        let (mut tools, wrong) = read::tools(typed, ask.voice());
        if typed.answer("thickness").is_none() {
            tools.thickness = self.thickness;
        }
        (tools, wrong)
    }

    fn look(&self, typed: &Typed, ask: &Ask) -> (Look, Wrong) {
        let voice = ask.voice();
        let (tools, mut wrong) = self.tools(typed, ask);
        let proved = read::read(typed, voice).and_then(|lines| prove(&lines, self.spec, voice));
        let look = look(proved.as_ref().map(|(_, plan)| plan), self.plan, &tools, voice);
        wrong.extend(proved.err().unwrap_or_default());
        (look, wrong)
    }
}

fn slab_of<'o>(ask: &Ask, opened: &'o Opened) -> Slab<'o> {
    fold(&opened.diary, Knowledge::noted_by(ask.app.asked_at(opened.record.id)))
}

fn shown(ask: &Ask, opened: &Opened, typed: &Typed, mistakes: &Mistakes) -> Page {
    let voice = ask.voice();
    let id = opened.record.id;
    let slab = slab_of(ask, opened);
    let text = |name: &str| typed.first(name).unwrap_or_default().to_owned();
    let more = typed.first("step") == Some("more");
    let desk = Standing::of(&slab).map(|standing| Desk {
        inputs: inputs(&Shown { typed, mistakes, voice }, standing.plan, more),
        look: standing.look(typed, ask).0,
        thickness_known: standing.thickness.map(|thick| voice.length(thick)),
    });
    Page {
        frame: ask.frame(voice.say("lines-title", &[])).about(ask, &opened.record, &opened.zone),
        ways: super::all_ways(&id.to_string(), voice, super::Here::Lines),
        action: format!("/slab/{id}/plan/lines"),
        desk,
        patterns_mistake: mistake_of(mistakes, "patterns").or_else(|| mistake_of(mistakes, "plan")),
        entry: typed.first("entry").map_or_else(|| ask.app.fresh_id().to_string(), str::to_owned),
        next: typed.first("next").map_or_else(|| format!("/slab/{id}/plan"), str::to_owned),
        happened: text("happened"),
        happened_mistake: mistake_of(mistakes, "happened"),
        mistakes: mistakes.to_vec(),
    }
}

fn answered(ask: &Ask, opened: &Opened, typed: &Typed, mistakes: Wrong) -> Answer {
    if mistakes.is_empty() {
        return Ok(show(&shown(ask, opened, typed, &[])));
    }
    if ask.wants_json() {
        return Err(Trouble::Mistakes(mistakes));
    }
    Ok((StatusCode::UNPROCESSABLE_ENTITY, show(&shown(ask, opened, typed, &mistakes))).into_response())
}

fn blank(ask: &Ask) -> Answer {
    let opened = ask.opened()?;
    let slab = slab_of(ask, &opened);
    let typed = Standing::of(&slab).map_or_else(Typed::new, |standing| fill::fill(standing.spec));
    Ok(show(&shown(ask, &opened, &typed, &[])))
}

fn bounded(typed: &Typed) -> Result<(), Trouble> {
    if typed.iter().all(|(_, texts)| texts.len() <= MOST_ROWS) { Ok(()) } else { Err(Trouble::TooLarge) }
}

fn posted(ask: &Ask, posted: &Posted) -> Answer {
    bounded(&posted.typed)?;
    let opened = ask.opened()?;
    let slab = slab_of(ask, &opened);
    let voice = ask.voice();
    let Some(standing) = Standing::of(&slab) else {
        return answered(ask, &opened, &posted.typed, vec![("plan".to_owned(), voice.say("lines-not-drawn", &[]))]);
    };
    match posted.typed.first("step") {
        Some("write") => match written(ask, &opened, &standing, posted) {
            Ok(()) => Ok(Redirect::to(&after(posted, &opened.record, "plan-written")).into_response()),
            Err(Trouble::Mistakes(wrong)) => answered(ask, &opened, &posted.typed, wrong),
            Err(trouble) => Err(trouble),
        },
        Some("propose") => match proposed(ask, &standing, &posted.typed) {
            Ok(typed) => answered(ask, &opened, &typed, Vec::new()),
            Err(wrong) => answered(ask, &opened, &posted.typed, wrong),
        },
        Some("more") => answered(ask, &opened, &posted.typed, Vec::new()),
        _ => {
            let (_, wrong) = standing.look(&posted.typed, ask);
            answered(ask, &opened, &posted.typed, wrong)
        }
    }
}

/// The form with saw cuts in its rows; nothing is written.
fn proposed(ask: &Ask, standing: &Standing<'_>, typed: &Typed) -> Result<Typed, Wrong> {
    let voice = ask.voice();
    let (tools, wrong) = standing.tools(typed, ask);
    if let Some(wrong) = wrong.into_iter().find(|(field, _)| field == "thickness") {
        return Err(vec![wrong]);
    }
    let at = |field: &str, said: String| vec![(field.to_owned(), said)];
    let thickness = tools.thickness.ok_or_else(|| at("thickness", voice.say("lines-wrong-no-thickness", &[])))?;
    let limits = JointLimits::of(Trade::built_in());
    let advice = advise_joints(standing.plan, thickness, &[], &limits)
        .map_err(|error| at("thickness", said::layout_error(&error, voice)))?;
    Ok(fill::proposed(typed, &advice.cuts, voice))
}

fn written(ask: &Ask, opened: &Opened, standing: &Standing<'_>, posted: &Posted) -> Result<(), Trouble> {
    let voice = ask.voice();
    let lines: Lines = read::read(&posted.typed, voice).map_err(Trouble::Mistakes)?;
    let (spec, _) = prove(&lines, standing.spec, voice).map_err(Trouble::Mistakes)?;
    super::write_plan(ask, opened, &spec, posted).map(|_| ())
}

/// The look at what is typed, without the page around it.
fn look_at(ask: &Ask, posted: &Posted) -> Answer {
    bounded(&posted.typed)?;
    let opened = ask.opened()?;
    let slab = slab_of(ask, &opened);
    let standing = Standing::of(&slab).ok_or(Trouble::NotFound)?;
    let (look, _) = standing.look(&posted.typed, ask);
    Ok(show(&Fragment { frame: ask.frame(String::new()), look }))
}
