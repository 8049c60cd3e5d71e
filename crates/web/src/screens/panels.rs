//! The sample panels: their colors, the recipe for a wished color, the floor as it may look, and the
//! client's choice.

mod floor;
mod wished;

use std::sync::Arc;

use askama::Template;
use axum::Router;
use science::chance::Seed;
use science::color::Lab;
use science::color::recipe::{Coats, Recipe, Shares, WaterParts};
use slab::diary::Knowledge;
use slab::diary::body::{PanelStained, PanelState};
use slab::panels::{Panel, RecipeBook, panels, recipe_books, stands_for};
use slab::slab::{Slab, fold};
use slab::standing::{HoldPointId, judge};
use slab::trade::Trade;
use words::Voice;

use crate::app::App;
use crate::ask::{Answer, Ask, page};
use crate::charted::{evidence, source};
use crate::frame::{Frame, Way, show};
use crate::screens::slab::form_for;
use crate::visitor::May;
use wished::{Found, Wished};

/// The number that draws and mottling begin with: the same page says and shows the same to everybody.
const SEED: Seed = Seed(1);

pub(super) fn routes() -> Router<Arc<App>> {
    Router::new().route("/slab/{slab}/panels", page(May::Read, shown)).merge(floor::routes())
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

fn shown(ask: &Ask) -> Answer {
    let opened = ask.opened()?;
    let (voice, trade) = (ask.voice(), Trade::built_in());
    let slab = fold(&opened.diary, Knowledge::noted_by(ask.app.asked_at(opened.record.id)));
    let id = opened.record.id.to_string();
    let writes = ask.visitor.may >= May::Write;
    let known = panels(&slab);
    let books = recipe_books(&slab, SEED);
    let wished = Wished::read(ask, &books);
    let (found, mistake) = match wished.answer(&books, voice) {
        Some(Ok(found)) => (Some(found), None),
        Some(Err(said)) => (None, Some(said)),
        None => (None, None),
    };
    let standing = judge(&slab, trade);
    let point = standing.hold_point(HoldPointId::Panel);
    let args = [("question", voice.hold_point_question(point.id).into()), ("state", voice.state(point.state).into())];
    let step = point
        .next
        .filter(|_| writes)
        .map(|next| (format!("/slab/{id}/add/{}?next=/slab/{id}/panels", form_for(next.action)), voice.order(&next)));
    let mut evidence_of: Vec<_> = books.iter().flat_map(|book| book.evidence.iter().copied()).collect();
    evidence_of.sort_unstable();
    evidence_of.dedup();
    Ok(show(&Page {
        frame: ask.frame(voice.say("way-panels", &[])).about(ask, &opened.record, &opened.zone),
        answer: voice.say("photos-answer", &args),
        state: point.state.name(),
        why: point.why.iter().map(|reason| voice.reason(reason)).collect(),
        step,
        rows: known.iter().map(|panel| row(panel, &slab, &id, writes, voice)).collect(),
        sets: books.iter().map(|book| set(book, voice)).collect(),
        preview: floor::shown(ask, &known, &slab, found.as_ref(), &id),
        wished,
        found,
        mistake,
        evidence: evidence(&evidence_of, &slab, &id, voice),
        source: source(&point.citation, trade, voice),
        ignored: voice.say("standing-if-ignored", &[("consequence", voice.consequence(point.id).into())]),
        writes,
    }))
}

fn row(panel: &Panel<'_>, slab: &Slab<'_>, id: &str, writes: bool, voice: Voice) -> PanelRow {
    let query = |pairs: &[(&str, &str)]| form_urlencoded::Serializer::new(String::new()).extend_pairs(pairs).finish();
    let states = panel.looks.iter().map(|look| {
        let hash = look.seen.entry.photographs.first();
        let whole = hash.map(|hash| format!("/slab/{id}/photo/{}", hash.as_str()));
        let care = match (look.outdated, look.lab) {
            (true, _) => Some(voice.panel_left_out(slab::panels::LeftOut::StainedSince)),
            (false, None) => Some(voice.panel_left_out(slab::panels::LeftOut::NotMeasured)),
            (false, Some(_)) => None,
        };
        State {
            name: state_said(look.seen.body.state, voice),
            swatch: look.lab.map(|lab| swatch(lab, voice)),
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
        name: voice.say("panels-name", &[("panel", panel.name.into())]),
        what: voice.concrete_of(panel.mix(), panel.finish()),
        recipe: match panel.stained {
            Some(stained) => as_mixed(stained.body, voice).unwrap_or_else(|| crate::told::line(stained.entry, voice)),
            None => voice.say("panels-bare", &[]),
        },
        stands_for: match zones.is_empty() {
            true => voice.say("panels-stands-for-none", &[]),
            false => voice.say("panels-stands-for", &[("zones", voice.list(&zones).into())]),
        },
        approved: panel
            .approved
            .iter()
            .map(|seen| {
                let date = voice.date(seen.entry.happened.date());
                voice.say("panels-approved", &[("by", seen.body.by.as_str().into()), ("date", date.into())])
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
fn as_mixed(stained: &PanelStained, voice: Voice) -> Option<String> {
    let parts: Vec<f64> = stained.mix.iter().map(|share| share.parts).collect();
    let shares = Shares::of_parts(&parts).ok()?;
    let (water, coats) = (WaterParts::new(stained.water_parts).ok()?, Coats::new(stained.coats).ok()?);
    let mix: Vec<_> = stained.mix.iter().enumerate().map(|(at, one)| (one.stain.as_str(), shares.share(at))).collect();
    let mix: Vec<_> = mix.into_iter().filter(|(_, share)| share.as_share() > 0.0).collect();
    Some(voice.recipe(&mix, &Recipe { shares, water, coats }))
}

fn set(book: &RecipeBook<'_>, voice: Voice) -> Set {
    let state = if book.state == PanelState::Sealed { "sealed" } else { "stained" };
    let args = [("state", state.into()), ("concrete", voice.concrete_of(book.mix, book.finish).into())];
    let names: Vec<String> = book.used.iter().map(|used| used.panel.to_owned()).collect();
    Set {
        name: voice.say("recipe-set", &args),
        panels: voice.say("panels-in-set", &[("panels", voice.list(&names).into())]),
        doubts: voice.recipe_doubts(book),
        left_out: book
            .left_out
            .iter()
            .map(|(panel, why)| {
                let why = voice.panel_left_out(*why);
                voice.say("recipe-panel-out", &[("panel", (*panel).into()), ("why", why.into())])
            })
            .collect(),
    }
}

fn state_said(state: PanelState, voice: Voice) -> String {
    let key = match state {
        PanelState::Bare => "preview-state-bare",
        PanelState::Stained => "preview-state-stained",
        PanelState::Sealed => "preview-state-sealed",
    };
    voice.say(key, &[])
}

fn swatch(lab: Lab, voice: Voice) -> Swatch {
    Swatch { hex: words::hex(lab), said: voice.color(lab) }
}

fn way(href: String, key: &str, voice: Voice) -> Way {
    Way { href, label: voice.say(key, &[]), here: false }
}
