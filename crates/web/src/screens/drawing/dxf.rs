//! A plan out of a drawing file: sent, its layers looked at and chosen, and only then written.

mod layers;
mod messages;

use std::sync::Arc;

use askama::Template;
use axum::Router;
use axum::http::StatusCode;
use axum::response::{IntoResponse, Redirect};
use drawings::{Choice, Drawing, DrawingError, read_dxf};
use form_schema::FormData;
use localization::{Arg, Locale};
use slab_diary::Knowledge;
use slab_diary::{Slab, fold};
use slab_plan::{Plan, PlanError, PlanSpec};

use super::look::{Look, of_plan};
use super::read::Wrong;
use crate::app::App;
use crate::context::{Answer, Posted, RequestContext, form, page};
use crate::control::{self, mistake_of};
use crate::entries::{Opened, after};
use crate::frame::{Frame, NavLink, show};
use crate::page_error::PageError;
use crate::uploads::{Waiting, tidy};
use crate::visitor::Permission;

use layers::{Chosen, LayerRow, row_of};
use messages::{drawing_error, layer_of};

/// Lines of joint layers that are left out because they lie off the slab, at most.
const MAX_LEFT_OUT: usize = 100;

pub(super) fn routes() -> Router<Arc<App>> {
    Router::new().route("/slab/{slab}/plan/dxf", page(Permission::Write, blank).merge(form(Permission::Write, posted)))
}

#[derive(Template)]
#[template(path = "dxf.html")]
struct Page {
    frame: Frame,
    ways: Vec<NavLink>,
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

fn blank(context: &RequestContext) -> Answer {
    let opened = context.opened()?;
    Ok(show(&shown(context, &opened, &FormData::new(), &[])))
}

fn shown(context: &RequestContext, opened: &Opened, typed: &FormData, mistakes: &control::FieldErrors) -> Page {
    let locale = context.locale();
    let id = opened.record.id;
    let text = |name: &str| typed.first(name).unwrap_or_default().to_owned();
    Page {
        frame: context.frame(locale.message("dxf-title", &[])).about(context, &opened.record, &opened.zone),
        ways: super::all_ways(&id.to_string(), locale, super::Here::Dxf),
        action: format!("/slab/{id}/plan/dxf"),
        file_mistake: mistake_of(mistakes, "file"),
        seen: None,
        kept: String::new(),
        name: String::new(),
        entry: typed.first("entry").map_or_else(|| context.app.fresh_id().to_string(), str::to_owned),
        next: typed.first("next").map_or_else(|| format!("/slab/{id}/plan"), str::to_owned),
        happened: text("happened"),
        happened_mistake: mistake_of(mistakes, "happened"),
        mistakes: mistakes.to_vec(),
    }
}

fn posted(context: &RequestContext, posted: &Posted) -> Answer {
    let opened = context.opened()?;
    let (typed, locale) = (&posted.typed, context.locale());
    let (kept, file, drawing) = match waiting(context, &opened, posted) {
        Ok(found) => found,
        Err(said) => {
            return refused(context, vec![("file".to_owned(), said)], |wrong| shown(context, &opened, typed, wrong));
        }
    };
    let chosen = Chosen::of(&drawing, typed);
    let mut made = chosen
        .choice(&drawing, locale)
        .map_err(|said| vec![("layers".to_owned(), said)])
        .and_then(|choice| make(&drawing, &choice, locale));
    if typed.first("step") == Some("write")
        && let Ok(plan) = &made
    {
        match super::write_plan(context, &opened, &plan.spec, posted) {
            Ok(id) => return Ok(Redirect::to(&after(posted, &opened.record, "plan-written", id)).into_response()),
            Err(PageError::FieldErrors(wrong)) => made = Err(wrong),
            Err(trouble) => return Err(trouble),
        }
    }
    let slab = fold(&opened.diary, Knowledge::noted_by(context.app.asked_at(opened.record.id)));
    let page = |wrong: &control::FieldErrors| {
        let mut page = shown(context, &opened, typed, wrong);
        let (layers, more) = chosen.rows(&drawing, wrong, locale);
        page.seen = Some(Seen {
            layers,
            more_layers: (more > 0).then(|| locale.message("dxf-more-layers", &[("count", Arg::Number(more as f64))])),
            layers_mistake: mistake_of(wrong, "layers"),
            units: chosen.unit_choices(&drawing, locale),
            unit_mistake: mistake_of(wrong, "unit"),
            look: look(made.as_ref(), &slab, locale),
            ready: made.is_ok(),
        });
        (page.kept, page.name) = (kept.clone(), file.name.clone());
        page
    };
    match &made {
        // What our own guess brings is a question to the person and no mistake of theirs.
        Err(wrong) if chosen.by_person || context.wants_json() => refused(context, wrong.clone(), page),
        _ => Ok(show(&page(&[]))),
    }
}

fn refused(context: &RequestContext, wrong: Wrong, page: impl FnOnce(&control::FieldErrors) -> Page) -> Answer {
    if context.wants_json() {
        return Err(PageError::FieldErrors(wrong));
    }
    Ok((StatusCode::UNPROCESSABLE_ENTITY, show(&page(&wrong))).into_response())
}

/// The file that came, or the one that was kept, with the secret it is kept under; what cannot be
/// read is not kept.
fn waiting(context: &RequestContext, opened: &Opened, posted: &Posted) -> Result<(String, Waiting, Drawing), String> {
    let (slab, now, locale) = (opened.record.id, context.app.real_now(), context.locale());
    let read = |bytes: &[u8]| read_dxf(bytes).map_err(|error| drawing_error(&error, locale));
    if let Some(upload) = posted.files.iter().find(|file| file.field == "file") {
        let drawing = read(&upload.bytes)?;
        let file = Waiting { slab, name: tidy(&upload.name), bytes: upload.bytes.clone(), since: now };
        let secret = context.app.secret();
        context.app.uploads.keep(&secret, file.clone());
        return Ok((secret, file, drawing));
    }
    let secret = posted.typed.first("kept").filter(|secret| !secret.is_empty());
    let secret = secret.ok_or_else(|| locale.message("dxf-wrong-no-file", &[]))?;
    let file = context.app.uploads.get(secret, slab, now).ok_or_else(|| locale.message("dxf-wrong-gone", &[]))?;
    let drawing = read(&file.bytes)?;
    Ok((secret.to_owned(), file, drawing))
}

/// The plan that the chosen layers make. Joint lines that lie off the slab or along its edge are no
/// joints, and are left out.
fn make(drawing: &Drawing, choice: &Choice, locale: Locale) -> Result<Made, Wrong> {
    let mut spec = drawing.plan(choice).map_err(|error| {
        let row = layer_of(&error).and_then(|layer| row_of(drawing, layer));
        let field = match (&error, row) {
            (_, Some(row)) => format!("role[{row}]"),
            (DrawingError::UnitsNotTold | DrawingError::TooWide { .. }, None) => "unit".to_owned(),
            _ => "layers".to_owned(),
        };
        vec![(field, drawing_error(&error, locale))]
    })?;
    let mut left_out = 0;
    loop {
        let error = match Plan::resolve(&spec) {
            Ok(plan) => return Ok(Made { spec, plan, left_out }),
            Err(error) => error,
        };
        let joint = super::error_source::number(error.path(), "joints").filter(|index| *index < spec.joints.len());
        match (&error, joint) {
            (PlanError::LineOffSlab { .. }, Some(index)) if left_out < MAX_LEFT_OUT => {
                spec.joints.remove(index);
                left_out += 1;
            }
            _ => return Err(vec![("layers".to_owned(), locale.plan_error(&error))]),
        }
    }
}

fn look(made: Result<&Made, &Wrong>, slab: &Slab<'_>, locale: Locale) -> Look {
    let made = match made {
        Ok(made) => made,
        Err(wrong) => {
            let wrong = wrong.iter().map(|(_, said)| (None, said.clone())).collect();
            return Look { wrong, ..Look::default() };
        }
    };
    let mut look = of_plan(&made.plan, slab, locale);
    let count = |n: usize| [("count", Arg::Number(n as f64))];
    if !made.spec.joints.is_empty() {
        look.sentences.push(locale.message("dxf-joints", &count(made.spec.joints.len())));
    }
    if made.left_out > 0 {
        look.doubts.push(locale.message("dxf-left-out", &count(made.left_out)));
    }
    let standing = slab.plan_entry().map(|(seen, _)| seen.body);
    if standing.is_some_and(|plan| !plan.joints.is_empty() || !plan.score_lines.is_empty()) {
        look.doubts.push(locale.message("dxf-drops-lines", &[]));
    }
    look
}
