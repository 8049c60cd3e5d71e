//! The floor as it may look with a panel's color and mottling: pictures, and the label they carry.

use std::sync::Arc;

use axum::Router;
use axum::http::header::{CACHE_CONTROL, CONTENT_DISPOSITION, CONTENT_TYPE};
use axum::response::IntoResponse;
use photo::decode;
use photographed::{Illustrated, Mottling, ScaleFrom, illustrated, over, panel_mottling};
use pictures::{FloorPart, PlanLook, floor_svg, png, stretch_svg};
use science::chance::Seed;
use science::color::Lab;
use slab::diary::Knowledge;
use slab::diary::body::PanelState;
use slab::panels::{Panel, panels, stands_for};
use slab::slab::{Slab, fold};
use units::Length;
use words::{Measure, Voice};

use super::{Found, way};
use crate::app::App;
use crate::ask::{Answer, Ask, page};
use crate::frame::Way;
use crate::trouble::Trouble;
use crate::visitor::May;

/// Units across the drawing of the whole floor, and of a stretch.
const WIDE: f64 = 700.0;
/// Side of the stretch that is shown near, as it is said in each measure.
fn stretch(voice: Voice) -> (Length, Length) {
    match voice.measure {
        Measure::Imperial => (Length::feet(6.0), Length::feet(4.0)),
        Measure::Metric => (Length::meters(1.8), Length::meters(1.2)),
    }
}

pub(super) fn routes() -> Router<Arc<App>> {
    Router::new()
        .route("/slab/{slab}/panels/floor.png", page(May::Read, floor_png))
        .route("/slab/{slab}/panels/floor.svg", page(May::Read, floor_drawing))
        .route("/slab/{slab}/panels/stretch.png", page(May::Read, stretch_png))
}

/// The pictures of a panel, or of a recipe with the mottling of the panel nearest to it.
pub(super) struct Shown {
    pub(super) title: String,
    pub(super) floor: Option<String>,
    pub(super) near: String,
    pub(super) near_said: String,
    pub(super) note: String,
    pub(super) ways: Vec<Way>,
}

pub(super) fn shown(ask: &Ask, known: &[Panel<'_>], slab: &Slab<'_>, found: Option<&Found>, id: &str) -> Option<Shown> {
    let voice = ask.voice();
    let asked = ask.query.first("show").map(str::trim);
    let seed: u64 = ask.query.first("seed").and_then(|text| text.parse().ok()).unwrap_or(1);
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
    let drawn = slab.plan().is_some_and(slab::plan::Plan::is_drawn);
    let (state, _) = pictured_state(panel)?;
    let (wide, deep) = stretch(voice);
    let near = [("width", voice.length(wide).into()), ("depth", voice.length(deep).into())];
    let other = {
        let mut pairs = form_urlencoded::Serializer::new(String::new());
        pairs.append_pair("show", panel.name).append_pair("seed", &(seed.wrapping_add(1)).to_string());
        format!("{base}?{}#preview", pairs.finish())
    };
    let mut ways = Vec::new();
    if drawn {
        ways.push(way(format!("{base}/floor.svg?{query}"), "panels-svg", voice));
        ways.push(way(format!("{base}/floor.png?{query}"), "panels-png", voice));
    }
    if lab.is_none() {
        ways.push(way(other, "panels-other-seed", voice));
    }
    let title = match lab {
        Some(_) => voice.say("panels-preview-recipe", &[("panel", panel.name.into())]),
        None => voice.say("panels-preview", &[("panel", panel.name.into())]),
    };
    Some(Shown {
        title,
        floor: drawn.then(|| format!("{base}/floor.png?{query}")),
        near: format!("{base}/stretch.png?{query}"),
        near_said: voice.say("panels-near", &near),
        note: note(panel, state, lab.is_some(), voice),
        ways,
    })
}

fn note(panel: &Panel<'_>, state: PanelState, worked_out: bool, voice: Voice) -> String {
    let state = super::state_said(state, voice);
    let args = [("panel", panel.name.into()), ("state", state.into())];
    voice.say(if worked_out { "preview-note-recipe" } else { "preview-note" }, &args)
}

/// The panel's last photograph that still shows it: sealed, else stained, else bare.
fn pictured_state<'p, 'd>(panel: &'p Panel<'d>) -> Option<(PanelState, &'p slab::panels::PanelLook<'d>)> {
    let states = [PanelState::Sealed, PanelState::Stained, PanelState::Bare];
    states.into_iter().find_map(|state| {
        let look = panel.look(state)?;
        (!look.outdated && !look.seen.entry.photographs.is_empty()).then_some((state, look))
    })
}

fn pictured<'p, 'd>(panel: &'p Panel<'d>) -> Option<&'p slab::panels::PanelLook<'d>> {
    pictured_state(panel).map(|(_, look)| look)
}

/// What a picture is drawn from.
struct Drawn {
    mottling: Mottling,
    note: String,
    seed: Seed,
    zones: Vec<String>,
}

fn drawn(ask: &Ask, slab: &Slab<'_>) -> Result<Drawn, Trouble> {
    let voice = ask.voice();
    let known = panels(slab);
    let name = ask.query.first("panel").unwrap_or_default();
    let panel = known.iter().find(|panel| panel.name.eq_ignore_ascii_case(name)).ok_or(Trouble::NotFound)?;
    let (state, look) = pictured_state(panel).ok_or(Trouble::NotFound)?;
    let hash = look.seen.entry.photographs.first().ok_or(Trouble::NotFound)?;
    let failed = |why: String| Trouble::Failed(why);
    let picture = decode(&ask.app.store().photograph(hash)?).map_err(|e| failed(e.to_string()))?;
    let side = panel.made.and_then(|made| made.body.side.as_ref()).map(units::Written::value);
    let mut mottling = panel_mottling(look.seen.body, side, &picture).map_err(|e| failed(e.to_string()))?;
    let numbers: Vec<f64> =
        ask.query.first("lab").unwrap_or_default().split(',').filter_map(|text| text.parse().ok()).collect();
    let lab = <[f64; 3]>::try_from(numbers).ok().and_then(|[l, a, b]| Lab::new(l, a, b).ok());
    let mut said = note(panel, state, lab.is_some(), voice);
    if let Some(lab) = lab {
        mottling.color = mottling.color.moved_to(lab);
    }
    if mottling.scale_from == ScaleFrom::Assumed {
        said = format!("{said} {}", voice.say("preview-scale-assumed", &[]));
    }
    let seed = Seed(ask.query.first("seed").and_then(|text| text.parse().ok()).unwrap_or(1));
    Ok(Drawn { mottling, note: said, seed, zones: stands_for(slab, panel) })
}

fn whole_floor(ask: &Ask) -> Result<String, Trouble> {
    let opened = ask.opened()?;
    let slab = fold(&opened.diary, Knowledge::noted_by(ask.app.asked_at(opened.record.id)));
    let drawn = drawn(ask, &slab)?;
    let plan = slab.plan().filter(|plan| plan.is_drawn()).ok_or(Trouble::NotFound)?;
    let Illustrated { colors, pixel } =
        illustrated(&drawn.mottling.color, plan, drawn.seed).map_err(|e| Trouble::Failed(e.to_string()))?;
    let look = PlanLook::new("floor", &opened.record.name, ask.voice()).wide(WIDE);
    let part = FloorPart { colors: &colors, pixel, zones: &drawn.zones };
    floor_svg(plan, &[part], &drawn.note, &look).ok_or(Trouble::NotFound)
}

fn floor_drawing(ask: &Ask) -> Answer {
    let svg = whole_floor(ask)?;
    let headers = [(CONTENT_TYPE, "image/svg+xml"), (CONTENT_DISPOSITION, "attachment; filename=\"floor.svg\"")];
    Ok((headers, svg).into_response())
}

fn floor_png(ask: &Ask) -> Answer {
    as_png(&whole_floor(ask)?)
}

fn stretch_png(ask: &Ask) -> Answer {
    let opened = ask.opened()?;
    let slab = fold(&opened.diary, Knowledge::noted_by(ask.app.asked_at(opened.record.id)));
    let drawn = drawn(ask, &slab)?;
    let (wide, deep) = stretch(ask.voice());
    let Illustrated { colors, pixel } =
        over(&drawn.mottling.color, wide, deep, drawn.seed).map_err(|e| Trouble::Failed(e.to_string()))?;
    let part = FloorPart { colors: &colors, pixel, zones: &[] };
    let look = PlanLook::new("stretch", &opened.record.name, ask.voice()).wide(WIDE);
    as_png(&stretch_svg(&part, (wide, deep), &drawn.note, &look))
}

fn as_png(svg: &str) -> Answer {
    let bytes = png(svg, 1.5).map_err(|e| Trouble::Failed(e.to_string()))?;
    Ok(([(CONTENT_TYPE, "image/png"), (CACHE_CONTROL, "private, max-age=600")], bytes).into_response())
}
