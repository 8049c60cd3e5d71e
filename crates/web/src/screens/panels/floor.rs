//! The floor as it may look with a panel's color and mottling: pictures, and the label they carry.

use std::sync::Arc;

use axum::Router;
use axum::http::header::{CACHE_CONTROL, CONTENT_DISPOSITION, CONTENT_TYPE};
use axum::response::IntoResponse;
use diary_photographs::{Illustrated, Mottling, ScaleFrom, illustrated, over, panel_mottling};
use localization::{Locale, UnitSystem};
use photo::decode;
use pictures::{FloorPart, PlanLook, floor_svg, png, stretch_svg};
use science::chance::Seed;
use science::color::Lab;
use slab_answers::panels::{Panel, panels, stands_for};
use slab_diary::Knowledge;
use slab_diary::body::PanelState;
use slab_diary::{Slab, fold};
use units::Length;

use super::{Found, way};
use crate::app::App;
use crate::context::{Answer, RequestContext, page};
use crate::frame::NavLink;
use crate::page_error::PageError;
use crate::visitor::Permission;

/// Units across the drawing of the whole floor, and of a stretch.
const WIDE: f64 = 700.0;
/// Side of the stretch that is shown near, as it is said in each measure.
fn stretch(locale: Locale) -> (Length, Length) {
    match locale.unit_system {
        UnitSystem::Imperial => (Length::feet(6.0), Length::feet(4.0)),
        UnitSystem::Metric => (Length::meters(1.8), Length::meters(1.2)),
    }
}

pub(super) fn routes() -> Router<Arc<App>> {
    Router::new()
        .route("/slab/{slab}/panels/floor.png", page(Permission::Read, floor_png))
        .route("/slab/{slab}/panels/floor.svg", page(Permission::Read, floor_drawing))
        .route("/slab/{slab}/panels/stretch.png", page(Permission::Read, stretch_png))
}

/// The pictures of a panel, or of a recipe with the mottling of the panel nearest to it.
pub(super) struct Shown {
    pub(super) title: String,
    pub(super) floor: Option<String>,
    pub(super) near: String,
    pub(super) near_said: String,
    pub(super) note: String,
    pub(super) ways: Vec<NavLink>,
}

pub(super) fn shown(
    context: &RequestContext,
    known: &[Panel<'_>],
    slab: &Slab<'_>,
    found: Option<&Found>,
    id: &str,
) -> Option<Shown> {
    let locale = context.locale();
    let asked = context.query.first("show").map(str::trim);
    let seed: u64 = context.query.first("seed").and_then(|text| text.parse().ok()).unwrap_or(1);
    let pictured = |panel: &&Panel<'_>| pictured(panel).is_some();
    let named = |name: &str| known.iter().filter(pictured).find(|panel| panel.name.eq_ignore_ascii_case(name));
    let (panel, lab) = match (asked, found) {
        (Some(name), _) => (named(name)?, None),
        (None, Some(found)) => (named(found.nearest_panel.as_deref()?)?, Some(found.lab)),
        // Unasked: the panel of the last approval.
        (None, None) => {
            let last = known.iter().filter(pictured).filter(|panel| !panel.approved.is_empty());
            (last.max_by_key(|panel| panel.approved.last().map(|seen| seen.entry.happened.instant()))?, None)
        }
    };
    let mut query = form_urlencoded::Serializer::new(String::new());
    query.append_pair("panel", panel.name).append_pair("seed", &seed.to_string());
    if let Some(lab) = lab {
        let numbers = [lab.lightness(), lab.a(), lab.b()].map(|n| format!("{n:.2}"));
        query.append_pair("lab", &numbers.join(","));
    }
    let query = query.finish();
    let base = format!("/slab/{id}/panels");
    let drawn = slab.plan().is_some_and(slab_plan::Plan::is_drawn);
    let (state, _) = pictured_state(panel)?;
    let (wide, deep) = stretch(locale);
    let near = [("width", locale.length(wide).into()), ("depth", locale.length(deep).into())];
    let other = {
        let mut pairs = form_urlencoded::Serializer::new(String::new());
        pairs.append_pair("show", panel.name).append_pair("seed", &(seed.wrapping_add(1)).to_string());
        format!("{base}?{}#preview", pairs.finish())
    };
    let mut ways = Vec::new();
    if drawn {
        ways.push(way(format!("{base}/floor.svg?{query}"), "panels-svg", locale));
        ways.push(way(format!("{base}/floor.png?{query}"), "panels-png", locale));
    }
    if lab.is_none() {
        ways.push(way(other, "panels-other-seed", locale));
    }
    let title = match lab {
        Some(_) => locale.message("panels-preview-recipe", &[("panel", panel.name.into())]),
        None => locale.message("panels-preview", &[("panel", panel.name.into())]),
    };
    Some(Shown {
        title,
        floor: drawn.then(|| format!("{base}/floor.png?{query}")),
        near: format!("{base}/stretch.png?{query}"),
        near_said: locale.message("panels-near", &near),
        note: note(panel, state, lab.is_some(), locale),
        ways,
    })
}

fn note(panel: &Panel<'_>, state: PanelState, worked_out: bool, locale: Locale) -> String {
    let state = super::state_said(state, locale);
    let args = [("panel", panel.name.into()), ("state", state.into())];
    locale.message(if worked_out { "preview-note-recipe" } else { "preview-note" }, &args)
}

/// The panel's last photograph that still shows it: sealed, else stained, else bare.
fn pictured_state<'p, 'd>(panel: &'p Panel<'d>) -> Option<(PanelState, &'p slab_answers::panels::PanelLook<'d>)> {
    let states = [PanelState::Sealed, PanelState::Stained, PanelState::Bare];
    states.into_iter().find_map(|state| {
        let look = panel.look(state)?;
        (!look.outdated && !look.seen.entry.photographs.is_empty()).then_some((state, look))
    })
}

fn pictured<'p, 'd>(panel: &'p Panel<'d>) -> Option<&'p slab_answers::panels::PanelLook<'d>> {
    pictured_state(panel).map(|(_, look)| look)
}

/// What a picture is drawn from.
struct Drawn {
    mottling: Mottling,
    note: String,
    seed: Seed,
    zones: Vec<String>,
}

fn drawn(context: &RequestContext, slab: &Slab<'_>) -> Result<Drawn, PageError> {
    let locale = context.locale();
    let known = panels(slab);
    let name = context.query.first("panel").unwrap_or_default();
    let panel = known.iter().find(|panel| panel.name.eq_ignore_ascii_case(name)).ok_or(PageError::NotFound)?;
    let (state, look) = pictured_state(panel).ok_or(PageError::NotFound)?;
    let hash = look.seen.entry.photographs.first().ok_or(PageError::NotFound)?;
    let picture =
        decode(&context.app.store().photograph(hash)?).map_err(|e| PageError::failed("reading a photograph", &e))?;
    let side = panel.made.and_then(|made| made.body.side.as_ref()).map(units::AsWritten::value);
    let mut mottling =
        panel_mottling(look.seen.body, side, &picture).map_err(|e| PageError::failed("measuring a panel", &e))?;
    let numbers: Vec<f64> =
        context.query.first("lab").unwrap_or_default().split(',').filter_map(|text| text.parse().ok()).collect();
    let lab = <[f64; 3]>::try_from(numbers).ok().and_then(|[l, a, b]| Lab::new(l, a, b).ok());
    let mut said = note(panel, state, lab.is_some(), locale);
    if let Some(lab) = lab {
        mottling.color = mottling.color.moved_to(lab);
    }
    if mottling.scale_from == ScaleFrom::Assumed {
        said = format!("{said} {}", locale.message("preview-scale-assumed", &[]));
    }
    let seed = Seed(context.query.first("seed").and_then(|text| text.parse().ok()).unwrap_or(1));
    Ok(Drawn { mottling, note: said, seed, zones: stands_for(slab, panel) })
}

fn whole_floor(context: &RequestContext) -> Result<String, PageError> {
    let opened = context.opened()?;
    let slab = fold(&opened.diary, Knowledge::noted_by(context.app.asked_at(opened.record.id)));
    let drawn = drawn(context, &slab)?;
    let plan = slab.plan().filter(|plan| plan.is_drawn()).ok_or(PageError::NotFound)?;
    let Illustrated { colors, pixel } = illustrated(&drawn.mottling.color, plan, drawn.seed)
        .map_err(|e| PageError::failed("illustrating a floor", &e))?;
    let look = PlanLook::new("floor", &opened.record.name, context.locale()).wide(WIDE);
    let part = FloorPart { colors: &colors, pixel, zones: &drawn.zones };
    floor_svg(plan, &[part], &drawn.note, &look).ok_or(PageError::NotFound)
}

fn floor_drawing(context: &RequestContext) -> Answer {
    let svg = whole_floor(context)?;
    let headers = [(CONTENT_TYPE, "image/svg+xml"), (CONTENT_DISPOSITION, "attachment; filename=\"floor.svg\"")];
    Ok((headers, svg).into_response())
}

fn floor_png(context: &RequestContext) -> Answer {
    as_png(&whole_floor(context)?)
}

fn stretch_png(context: &RequestContext) -> Answer {
    let opened = context.opened()?;
    let slab = fold(&opened.diary, Knowledge::noted_by(context.app.asked_at(opened.record.id)));
    let drawn = drawn(context, &slab)?;
    let (wide, deep) = stretch(context.locale());
    let Illustrated { colors, pixel } = over(&drawn.mottling.color, wide, deep, drawn.seed)
        .map_err(|e| PageError::failed("illustrating a floor", &e))?;
    let part = FloorPart { colors: &colors, pixel, zones: &[] };
    let look = PlanLook::new("stretch", &opened.record.name, context.locale()).wide(WIDE);
    as_png(&stretch_svg(&part, (wide, deep), &drawn.note, &look))
}

fn as_png(svg: &str) -> Answer {
    // The drawing holds names of the slab and its zones, which its reader's words may quote.
    let bytes = png(svg, 1.5).map_err(|_| PageError::failed_without_words("turning a drawing into a picture"))?;
    Ok(([(CONTENT_TYPE, "image/png"), (CACHE_CONTROL, "private, max-age=600")], bytes).into_response())
}
