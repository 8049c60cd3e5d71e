//! A plan out of a drawing file: sent, its layers looked at and chosen, and only then written.

mod layers;
mod said;

use std::sync::Arc;

use askama::Template;
use axum::Router;
use axum::http::StatusCode;
use axum::response::{IntoResponse, Redirect};
use drawings::{Choice, Drawing, DrawingError, read_dxf};
use forms::Typed;
use slab::diary::Knowledge;
use slab::plan::{Plan, PlanError, PlanSpec};
use slab::slab::{Slab, fold};
use words::{Arg, Voice};

use super::look::{Look, of_plan};
use super::read::Wrong;
use crate::app::App;
use crate::ask::{Answer, Ask, Posted, form, page};
use crate::control::{self, mistake_of};
use crate::entries::{Opened, after};
use crate::frame::{Frame, Way, show};
use crate::trouble::Trouble;
use crate::uploads::{Waiting, tidy};
use crate::visitor::May;

use layers::{Chosen, LayerRow, row_of};
use said::{drawing_error, layer_of};

/// Lines of joint layers that are left out because they lie off the slab, at most.
const MOST_LEFT_OUT: usize = 100;

pub(super) fn routes() -> Router<Arc<App>> {
    Router::new().route("/slab/{slab}/plan/dxf", page(May::Write, blank).merge(form(May::Write, posted)))
}

#[derive(Template)]
#[template(path = "dxf.html")]
struct Page {
    frame: Frame,
    ways: Vec<Way>,
    action: String,
    mistakes: Vec<(String, String)>,
    file_mistake: Option<String>,
    /// What was read, when something was.
    seen: Option<Seen>,
    /// The secret of the file that waits.
    kept: String,
    name: String,
    entry: String,
    next: String,
    happened: String,
    happened_mistake: Option<String>,
}

/// A drawing as the page shows it.
struct Seen {
    layers: Vec<LayerRow>,
    more_layers: Option<String>,
    layers_mistake: Option<String>,
    units: Vec<control::Choice>,
    unit_mistake: Option<String>,
    look: Look,
    /// Whether it can be written.
    ready: bool,
}

/// A plan out of the drawing.
struct Made {
    spec: PlanSpec,
    plan: Plan,
    /// Lines of joint layers that lie off the slab.
    left_out: usize,
}

fn blank(ask: &Ask) -> Answer {
    let opened = ask.opened()?;
    Ok(show(&shown(ask, &opened, &Typed::new(), &[])))
}

fn shown(ask: &Ask, opened: &Opened, typed: &Typed, mistakes: &control::Mistakes) -> Page {
    let voice = ask.voice();
    let id = opened.record.id;
    let text = |name: &str| typed.first(name).unwrap_or_default().to_owned();
    Page {
        frame: ask.frame(voice.say("dxf-title", &[])).about(ask, &opened.record, &opened.zone),
        ways: super::all_ways(&id.to_string(), voice, super::Here::Dxf),
        action: format!("/slab/{id}/plan/dxf"),
        file_mistake: mistake_of(mistakes, "file"),
        seen: None,
        kept: String::new(),
        name: String::new(),
        entry: typed.first("entry").map_or_else(|| ask.app.fresh_id().to_string(), str::to_owned),
        next: typed.first("next").map_or_else(|| format!("/slab/{id}/plan"), str::to_owned),
        happened: text("happened"),
        happened_mistake: mistake_of(mistakes, "happened"),
        mistakes: mistakes.to_vec(),
    }
}

fn posted(ask: &Ask, posted: &Posted) -> Answer {
    let opened = ask.opened()?;
    let (typed, voice) = (&posted.typed, ask.voice());
    let (kept, file, drawing) = match waiting(ask, &opened, posted) {
        Ok(found) => found,
        Err(said) => return refused(ask, vec![("file".to_owned(), said)], |wrong| shown(ask, &opened, typed, wrong)),
    };
    let chosen = Chosen::of(&drawing, typed);
    let mut made = chosen
        .choice(&drawing, voice)
        .map_err(|said| vec![("layers".to_owned(), said)])
        .and_then(|choice| make(&drawing, &choice, voice));
    if typed.first("step") == Some("write")
        && let Ok(plan) = &made
    {
        match super::write_plan(ask, &opened, &plan.spec, posted) {
            Ok(_) => return Ok(Redirect::to(&after(posted, &opened.record, "plan-written")).into_response()),
            Err(Trouble::Mistakes(wrong)) => made = Err(wrong),
            Err(trouble) => return Err(trouble),
        }
    }
    let slab = fold(&opened.diary, Knowledge::noted_by(ask.app.asked_at(opened.record.id)));
    let page = |wrong: &control::Mistakes| {
        let mut page = shown(ask, &opened, typed, wrong);
        let (layers, more) = chosen.rows(&drawing, wrong, voice);
        page.seen = Some(Seen {
            layers,
            more_layers: (more > 0).then(|| voice.say("dxf-more-layers", &[("count", Arg::Number(more as f64))])),
            layers_mistake: mistake_of(wrong, "layers"),
            units: chosen.unit_choices(&drawing, voice),
            unit_mistake: mistake_of(wrong, "unit"),
            look: look(made.as_ref(), &slab, voice),
            ready: made.is_ok(),
        });
        (page.kept, page.name) = (kept.clone(), file.name.clone());
        page
    };
    match &made {
        // What our own guess brings is a question to the person and no mistake of theirs.
        Err(wrong) if chosen.by_person || ask.wants_json() => refused(ask, wrong.clone(), page),
        _ => Ok(show(&page(&[]))),
    }
}

fn refused(ask: &Ask, wrong: Wrong, page: impl FnOnce(&control::Mistakes) -> Page) -> Answer {
    if ask.wants_json() {
        return Err(Trouble::Mistakes(wrong));
    }
    Ok((StatusCode::UNPROCESSABLE_ENTITY, show(&page(&wrong))).into_response())
}

/// The file that came, or the one that was kept, with the secret it is kept under; what cannot be
/// read is not kept.
fn waiting(ask: &Ask, opened: &Opened, posted: &Posted) -> Result<(String, Waiting, Drawing), String> {
    let (slab, now, voice) = (opened.record.id, ask.app.real_now(), ask.voice());
    let read = |bytes: &[u8]| read_dxf(bytes).map_err(|error| drawing_error(&error, voice));
    if let Some(upload) = posted.files.iter().find(|file| file.field == "file") {
        let drawing = read(&upload.bytes)?;
        let file = Waiting { slab, name: tidy(&upload.name), bytes: upload.bytes.clone(), since: now };
        let secret = ask.app.secret();
        ask.app.uploads.keep(&secret, file.clone());
        return Ok((secret, file, drawing));
    }
    let secret = posted.typed.first("kept").filter(|secret| !secret.is_empty());
    let secret = secret.ok_or_else(|| voice.say("dxf-wrong-no-file", &[]))?;
    let file = ask.app.uploads.get(secret, slab, now).ok_or_else(|| voice.say("dxf-wrong-gone", &[]))?;
    let drawing = read(&file.bytes)?;
    Ok((secret.to_owned(), file, drawing))
}

/// The plan that the chosen layers make. Joint lines that lie off the slab or along its edge are no
/// joints, and are left out.
fn make(drawing: &Drawing, choice: &Choice, voice: Voice) -> Result<Made, Wrong> {
    let mut spec = drawing.plan(choice).map_err(|error| {
        let row = layer_of(&error).and_then(|layer| row_of(drawing, layer));
        let field = match (&error, row) {
            (_, Some(row)) => format!("role[{row}]"),
            (DrawingError::UnitsNotTold | DrawingError::TooWide { .. }, None) => "unit".to_owned(),
            _ => "layers".to_owned(),
        };
        vec![(field, drawing_error(&error, voice))]
    })?;
    let mut left_out = 0;
    loop {
        let error = match Plan::resolve(&spec) {
            Ok(plan) => return Ok(Made { spec, plan, left_out }),
            Err(error) => error,
        };
        let joint = super::blame::number(error.path(), "joints").filter(|index| *index < spec.joints.len());
        match (&error, joint) {
            (PlanError::LineOffSlab { .. }, Some(index)) if left_out < MOST_LEFT_OUT => {
                spec.joints.remove(index);
                left_out += 1;
            }
            _ => return Err(vec![("layers".to_owned(), voice.plan_error(&error))]),
        }
    }
}

fn look(made: Result<&Made, &Wrong>, slab: &Slab<'_>, voice: Voice) -> Look {
    let made = match made {
        Ok(made) => made,
        Err(wrong) => {
            let wrong = wrong.iter().map(|(_, said)| (None, said.clone())).collect();
            return Look { wrong, ..Look::default() };
        }
    };
    let mut look = of_plan(&made.plan, slab, voice);
    let count = |n: usize| [("count", Arg::Number(n as f64))];
    if !made.spec.joints.is_empty() {
        look.sentences.push(voice.say("dxf-joints", &count(made.spec.joints.len())));
    }
    if made.left_out > 0 {
        look.doubts.push(voice.say("dxf-left-out", &count(made.left_out)));
    }
    let standing = slab.plan_entry().map(|(seen, _)| seen.body);
    if standing.is_some_and(|plan| !plan.joints.is_empty() || !plan.score_lines.is_empty()) {
        look.doubts.push(voice.say("dxf-drops-lines", &[]));
    }
    look
}
