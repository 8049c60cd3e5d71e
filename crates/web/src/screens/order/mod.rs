//! What to buy for a slab: the packs in one sentence, then every line with its range and what it rests
//! on, and the same as a file for a spreadsheet.

mod sheet;

use std::sync::Arc;

use askama::Template;
use axum::Router;
use slab::diary::{EntryId, Knowledge};
use slab::order::{Amount, CoverageBasis, Line, Order, OrderNote, ZoneCoverage, order};
use slab::slab::{Slab, fold};
use slab::trade::Trade;
use words::Voice;

use crate::app::App;
use crate::ask::{Answer, Ask, page};
use crate::control::short;
use crate::entries::Opened;
use crate::frame::{Frame, Way, show};
use crate::sight::Sight;
use crate::visitor::May;

pub(super) fn routes() -> Router<Arc<App>> {
    Router::new()
        .route("/slab/{slab}/order", page(May::Read, shown))
        .route("/slab/{slab}/order.csv", page(May::Read, sheet::file))
}

/// An entry in words, with the way to it where it can be opened.
type Evidence = (Option<String>, String);

/// A line as the template draws it.
struct Row {
    item: String,
    low: String,
    usual: String,
    high: String,
    buy: Option<String>,
    notes: Vec<String>,
    grade: String,
    evidence: Vec<Evidence>,
    /// Anchor and words of the records it used, and whether those are English.
    facts: Vec<(String, String, bool)>,
}

/// A zone as the template draws it.
struct ZoneRow {
    zone: String,
    area: String,
    finish: String,
    coverage: String,
    basis: String,
    grade: String,
    evidence: Vec<Evidence>,
}

#[derive(Template)]
#[template(path = "order.html")]
struct Page {
    frame: Frame,
    answer: String,
    /// Everything that is bought in packs: packs and what is in them.
    buy: Vec<(String, String)>,
    /// What would make the order narrower or whole, and the page where it is written.
    missing: Vec<(String, Option<Way>)>,
    recipe: String,
    rows: Vec<Row>,
    zones: Vec<ZoneRow>,
    file: Option<String>,
}

fn shown(ask: &Ask) -> Answer {
    let opened = ask.opened()?;
    let frame = ask.frame(ask.voice().say("order-title", &[])).about(ask, &opened.record, &opened.zone);
    order_of(ask, &opened, frame, &Sight::own(ask, opened.record.id))
}

/// The order in any frame.
pub(crate) fn order_of(ask: &Ask, opened: &Opened, frame: Frame, sight: &Sight) -> Answer {
    let (voice, trade) = (ask.voice(), Trade::built_in());
    let slab = fold(&opened.diary, Knowledge::noted_by(ask.app.asked_at(opened.record.id)));
    let base = &sight.base;
    let way = |path: &str, key: &str| {
        sight.writes.then(|| Way { href: format!("{base}/{path}"), label: voice.say(key, &[]), here: false })
    };
    let Ok(order) = order(&slab, trade) else {
        return Ok(show(&Page {
            frame,
            answer: voice.say("order-no-area", &[]),
            buy: Vec::new(),
            missing: vec![(voice.say("order-no-area-what", &[]), way("plan/draw", "slab-draw-plan"))],
            recipe: String::new(),
            rows: Vec::new(),
            zones: Vec::new(),
            file: None,
        }));
    };
    let mut missing = Vec::new();
    if order.coverage.iter().any(|zone| zone.basis == CoverageBasis::Unknown) {
        missing.push((voice.say("order-no-finish", &[]), way("add/finish", "order-note-finish")));
    }
    if order.recipe.panel.is_none() {
        let panels = slab.of_kinds(&["panel_stained"]).next().is_some();
        let (path, key) =
            if panels { ("add/choice_approved", "order-approve") } else { ("add/panel_made", "order-make-panel") };
        missing.push((voice.say("order-no-recipe", &[]), way(path, key)));
    }
    if !order.lines.iter().any(|line| line.item == slab::order::Item::Sealer) {
        missing.push((voice.say("order-no-sealer", &[]), way("add/sealer_chosen", "order-choose-sealer")));
    }
    let packs = |line: &Line| voice.pack_list(&line.buy).map(|packs| (packs, item_of(line, voice)));
    let area = slab.area().unwrap_or(units::Area::ZERO);
    Ok(show(&Page {
        frame,
        answer: voice.say("order-answer", &[("area", voice.area(area).into())]),
        buy: order.lines.iter().filter_map(packs).collect(),
        missing,
        recipe: recipe(&order, voice),
        rows: order.lines.iter().map(|line| row(line, sight, &slab, voice)).collect(),
        zones: order.coverage.iter().map(|zone| zone_row(zone, sight, &slab, voice)).collect(),
        file: (!sight.by_link).then(|| format!("{base}/order.csv")),
    }))
}

/// The name of a line, with which of it.
fn item_of(line: &Line, voice: Voice) -> String {
    match &line.which {
        Some(which) => format!("{} ({})", voice.item(line.item), voice.term(which)),
        None => voice.item(line.item),
    }
}

fn recipe(order: &Order, voice: Voice) -> String {
    let recipe = &order.recipe;
    match &recipe.panel {
        Some(panel) => voice.say(
            "order-recipe-panel",
            &[
                ("panel", panel.as_str().into()),
                ("coats", recipe.coats.usual.into()),
                ("water", recipe.water_parts.usual.into()),
            ],
        ),
        None => voice.say(
            "order-recipe-usual",
            &[
                ("low", recipe.coats.low.into()),
                ("high", recipe.coats.high.into()),
                ("water", recipe.water_parts.low.into()),
            ],
        ),
    }
}

/// Low, usual and high of an amount in words.
fn three(need: &Amount, voice: Voice) -> [String; 3] {
    let pieces = |count: u32| voice.say("order-pieces", &[("count", count.into())]);
    match need {
        Amount::Volume(s) => [s.low, s.usual, s.high].map(|q| voice.volume(q)),
        Amount::Mass(s) => [s.low, s.usual, s.high].map(|q| voice.mass(q)),
        Amount::Area(s) => [s.low, s.usual, s.high].map(|q| voice.area(q)),
        Amount::Pieces(s) => [s.low, s.usual, s.high].map(pieces),
    }
}

/// The entries something rests on.
fn evidence(ids: &[EntryId], sight: &Sight, slab: &Slab<'_>, voice: Voice) -> Vec<Evidence> {
    let mut ids = ids.to_vec();
    ids.sort_unstable();
    ids.dedup();
    let told = |entry: &EntryId| {
        let entry = slab.entries().iter().find(|e| e.id == *entry)?;
        let mut said = short(entry, slab, voice);
        let line = crate::told::line(entry, voice);
        if !line.is_empty() {
            said = format!("{said}: {line}");
        }
        Some((sight.entries.then(|| format!("{}/entry/{}", sight.base, entry.id)), said))
    };
    ids.iter().filter_map(told).collect()
}

fn row(line: &Line, sight: &Sight, slab: &Slab<'_>, voice: Voice) -> Row {
    let [low, usual, high] = three(&line.need, voice);
    let mut facts = line.facts.clone();
    facts.sort_unstable();
    facts.dedup();
    Row {
        item: item_of(line, voice),
        low,
        usual,
        high,
        buy: voice.pack_list(&line.buy),
        notes: line.notes.iter().map(|note: &OrderNote| voice.order_note(*note)).collect(),
        grade: voice.grade(line.grade),
        evidence: evidence(&line.evidence, sight, slab, voice),
        facts: facts.into_iter().map(|fact| fact_name(fact, voice)).collect(),
    }
}

/// A record by its id: finishes and sealers have a name in both languages, the others are English.
fn fact_name(id: String, voice: Voice) -> (String, String, bool) {
    let trade = Trade::built_in();
    let named = voice.term(&id);
    if named != id {
        return (id, named, false);
    }
    let material = || trade.material(&id).map(|record| record.item.clone());
    let allowance = || trade.allowance(&id).map(|record| record.meaning.clone());
    let fact = || trade.fact(&id).map(|record| record.statement.clone());
    let text = material().or_else(allowance).or_else(fact).unwrap_or_else(|| id.clone());
    (id, text, true)
}

fn zone_row(zone: &ZoneCoverage, sight: &Sight, slab: &Slab<'_>, voice: Voice) -> ZoneRow {
    let basis = match zone.basis {
        CoverageBasis::Panels(count) => voice.say("order-zone-panels", &[("count", count.into())]),
        CoverageBasis::Table => voice.say("order-zone-table", &[]),
        CoverageBasis::Unknown => voice.say("order-zone-unknown", &[]),
    };
    ZoneRow {
        zone: if zone.zone.is_empty() { voice.say("order-whole-slab", &[]) } else { zone.zone.clone() },
        area: voice.area(zone.area),
        finish: zone.finish.as_deref().map_or_else(|| voice.say("not-said", &[]), |finish| voice.term(finish)),
        coverage: voice.range(&voice.coverage(zone.coverage.low), &voice.coverage(zone.coverage.high)),
        basis,
        grade: voice.grade(zone.grade),
        evidence: evidence(&zone.evidence, sight, slab, voice),
    }
}
