//! The sample panels: their colors, the recipe for a wished color, the floor as it may look, and the
//! client's choice.

mod floor;
mod wished;

use std::sync::Arc;

use askama::Template;
use axum::Router;
use localization::Locale;
use science::chance::Seed;
use science::color::Lab;
use science::color::recipe::{Coats, Recipe, Shares, WaterParts};
use slab_answers::panels::{Panel, RecipeBook, panels, recipe_books, stands_for};
use slab_answers::standing::{HoldPointId, judge};
use slab_diary::Knowledge;
use slab_diary::body::{PanelStained, PanelState};
use slab_diary::{Slab, fold};
use trade_facts::Trade;

use crate::app::App;
use crate::chart_section::{evidence, source};
use crate::context::{Answer, RequestContext, page};
use crate::frame::{Frame, NavLink, show};
use crate::screens::slab::form_for;
use crate::visitor::Permission;
use wished::{Found, Wished};

/// The number that draws and mottling begin with: the same page says and shows the same to everybody.
const SEED: Seed = Seed(1);

pub(super) fn routes() -> Router<Arc<App>> {
    Router::new().route("/slab/{slab}/panels", page(Permission::Read, shown)).merge(floor::routes())
}

/// A color as a patch and in numbers.
#[derive(Clone)]
struct Swatch {
    hex: String,
    said: String,
}

/// One state of a panel.
struct State {
    name: String,
    swatch: Option<Swatch>,
    src: Option<String>,
    whole: Option<String>,
    care: Option<String>,
}

struct PanelRow {
    name: String,
    what: String,
    recipe: String,
    stands_for: String,
    approved: Vec<String>,
    states: Vec<State>,
    choose: Option<String>,
    photograph: Option<String>,
    preview: Option<String>,
}

/// A set of panels and what it can answer.
struct Set {
    name: String,
    panels: String,
    doubts: Vec<String>,
    left_out: Vec<String>,
}

#[derive(Template)]
#[template(path = "panels.html")]
struct Page {
    frame: Frame,
    answer: String,
    state: &'static str,
    why: Vec<String>,
    step: Option<(String, String)>,
    rows: Vec<PanelRow>,
    sets: Vec<Set>,
    wished: Wished,
    found: Option<Found>,
    mistake: Option<String>,
    preview: Option<floor::Shown>,
    evidence: Vec<(String, String)>,
    source: String,
    ignored: String,
    writes: bool,
}

fn shown(context: &RequestContext) -> Answer {
    let opened = context.opened()?;
    let (locale, trade) = (context.locale(), Trade::built_in());
    let slab = fold(&opened.diary, Knowledge::noted_by(context.app.asked_at(opened.record.id)));
    let id = opened.record.id.to_string();
    let writes = context.visitor.permission >= Permission::Write;
    let known = panels(&slab);
    let books = recipe_books(&slab, SEED);
    let wished = Wished::read(context, &books);
    let (found, mistake) = match wished.answer(&books, locale) {
        Some(Ok(found)) => (Some(found), None),
        Some(Err(said)) => (None, Some(said)),
        None => (None, None),
    };
    let standing = judge(&slab, trade);
    let point = standing.hold_point(HoldPointId::Panel);
    let args = [("question", locale.hold_point_question(point.id).into()), ("state", locale.state(point.state).into())];
    let step = point.next.as_ref().filter(|_| writes).map(|next| {
        (format!("/slab/{id}/add/{}?next=/slab/{id}/panels", form_for(next.action).name()), locale.order(next))
    });
    let mut evidence_of: Vec<_> = books.iter().flat_map(|book| book.evidence.iter().copied()).collect();
    evidence_of.sort_unstable();
    evidence_of.dedup();
    Ok(show(&Page {
        frame: context.frame(locale.message("way-panels", &[])).about(context, &opened.record, &opened.zone),
        answer: locale.message("photos-answer", &args),
        state: point.state.name(),
        why: point.why.iter().map(|reason| locale.reason(reason)).collect(),
        step,
        rows: known.iter().map(|panel| row(panel, &slab, &id, writes, locale)).collect(),
        sets: books.iter().map(|book| set(book, locale)).collect(),
        preview: floor::shown(context, &known, &slab, found.as_ref(), &id),
        wished,
        found,
        mistake,
        evidence: evidence(&evidence_of, &slab, &id, locale),
        source: source(&point.citation, trade, locale),
        ignored: locale.message("standing-if-ignored", &[("consequence", locale.consequence(point.id).into())]),
        writes,
    }))
}

fn row(panel: &Panel<'_>, slab: &Slab<'_>, id: &str, writes: bool, locale: Locale) -> PanelRow {
    let query = |pairs: &[(&str, &str)]| form_urlencoded::Serializer::new(String::new()).extend_pairs(pairs).finish();
    let states = panel.looks.iter().map(|look| {
        let hash = look.seen.entry.photographs.first();
        let whole = hash.map(|hash| format!("/slab/{id}/photo/{}", hash.as_str()));
        let care = match (look.outdated, look.lab) {
            (true, _) => Some(locale.panel_left_out(slab_answers::panels::LeftOut::StainedSince)),
            (false, None) => Some(locale.panel_left_out(slab_answers::panels::LeftOut::NotMeasured)),
            (false, Some(_)) => None,
        };
        State {
            name: state_said(look.seen.body.state, locale),
            swatch: look.lab.map(|lab| swatch(lab, locale)),
            src: whole.as_ref().map(|whole| format!("{whole}/small")),
            whole,
            care,
        }
    });
    let zones = stands_for(slab, panel);
    let best = [PanelState::Sealed, PanelState::Stained].into_iter().find(|state| panel.look(*state).is_some());
    let state_word = best.map_or("", |state| if state == PanelState::Sealed { "sealed" } else { "stained" });
    let photographed = panel.looks.iter().any(|look| !look.outdated && !look.seen.entry.photographs.is_empty());
    let next = format!("/slab/{id}/panels");
    PanelRow {
        name: locale.message("panels-name", &[("panel", panel.name.into())]),
        what: locale.concrete_of(panel.mix(), panel.finish()),
        recipe: match panel.stained {
            Some(stained) => {
                as_mixed(stained.body, locale).unwrap_or_else(|| crate::entry_text::line(stained.entry, locale))
            }
            None => locale.message("panels-bare", &[]),
        },
        stands_for: match zones.is_empty() {
            true => locale.message("panels-stands-for-none", &[]),
            false => locale.message("panels-stands-for", &[("zones", locale.list(&zones).into())]),
        },
        approved: panel
            .approved
            .iter()
            .map(|seen| {
                let date = locale.date(seen.entry.happened.date());
                locale.message("panels-approved", &[("by", seen.body.by.as_str().into()), ("date", date.into())])
            })
            .collect(),
        states: states.collect(),
        choose: (writes && panel.stained.is_some()).then(|| {
            let pairs = [("panel", panel.name), ("state", state_word), ("next", next.as_str())];
            format!("/slab/{id}/add/choice_approved?{}", query(&pairs))
        }),
        photograph: writes.then(|| {
            let pairs = [("panel", panel.name), ("next", next.as_str())];
            format!("/slab/{id}/add/panel_photographed?{}", query(&pairs))
        }),
        preview: photographed.then(|| format!("{next}?{}#preview", query(&[("show", panel.name)]))),
    }
}

/// How a panel was stained, as it is mixed; nothing when what is noted can't be a recipe.
fn as_mixed(stained: &PanelStained, locale: Locale) -> Option<String> {
    let parts: Vec<f64> = stained.mix.iter().map(|share| share.parts).collect();
    let shares = Shares::of_parts(&parts).ok()?;
    let (water, coats) = (WaterParts::new(stained.water_parts).ok()?, Coats::new(stained.coats).ok()?);
    let mix: Vec<_> = stained.mix.iter().enumerate().map(|(at, one)| (one.stain.as_str(), shares.share(at))).collect();
    let mix: Vec<_> = mix.into_iter().filter(|(_, share)| share.as_share() > 0.0).collect();
    Some(locale.recipe(&mix, &Recipe { shares, water, coats }))
}

fn set(book: &RecipeBook<'_>, locale: Locale) -> Set {
    let state = if book.state == PanelState::Sealed { "sealed" } else { "stained" };
    let args = [("state", state.into()), ("concrete", locale.concrete_of(book.mix, book.finish).into())];
    let names: Vec<String> = book.used.iter().map(|used| used.panel.to_owned()).collect();
    Set {
        name: locale.message("recipe-set", &args),
        panels: locale.message("panels-in-set", &[("panels", locale.list(&names).into())]),
        doubts: locale.recipe_doubts(book),
        left_out: book
            .left_out
            .iter()
            .map(|(panel, why)| {
                let why = locale.panel_left_out(*why);
                locale.message("recipe-panel-out", &[("panel", (*panel).into()), ("why", why.into())])
            })
            .collect(),
    }
}

fn state_said(state: PanelState, locale: Locale) -> String {
    let key = match state {
        PanelState::Bare => "preview-state-bare",
        PanelState::Stained => "preview-state-stained",
        PanelState::Sealed => "preview-state-sealed",
    };
    locale.message(key, &[])
}

fn swatch(lab: Lab, locale: Locale) -> Swatch {
    Swatch { hex: localization::hex(lab), said: locale.color(lab) }
}

fn way(href: String, key: &'static str, locale: Locale) -> NavLink {
    NavLink { href, label: locale.message(key, &[]), here: false }
}
