//! What to buy for a slab: the packs in one sentence, then every line with its range and what it rests
//! on, and the same as a file for a spreadsheet.

mod sheet;

use std::sync::Arc;

use askama::Template;
use axum::Router;
use localization::Locale;
use slab_answers::order::{Amount, CoverageBasis, Line, OrderNote, ZoneCoverage, order};
use slab_diary::{EntryId, EntryKind, Knowledge};
use slab_diary::{Slab, fold};
use trade_facts::Trade;

use crate::app::App;
use crate::context::{Answer, RequestContext, page};
use crate::control::short;
use crate::entries::Opened;
use crate::frame::{Frame, NavLink, show};
use crate::view_scope::ViewScope;
use crate::visitor::Permission;

pub(super) fn routes() -> Router<Arc<App>> {
    Router::new()
        .route("/slab/{slab}/order", page(Permission::Read, shown))
        .route("/slab/{slab}/order.csv", page(Permission::Read, sheet::file))
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
    missing: Vec<(String, Option<NavLink>)>,
    recipe: String,
    rows: Vec<Row>,
    zones: Vec<ZoneRow>,
    file: Option<String>,
}

fn shown(context: &RequestContext) -> Answer {
    let opened = context.opened()?;
    let frame =
        context.frame(context.locale().message("order-title", &[])).about(context, &opened.record, &opened.zone);
    order_of(context, &opened, frame, &ViewScope::own(context, opened.record.id))
}

/// The order in any frame.
pub(crate) fn order_of(context: &RequestContext, opened: &Opened, frame: Frame, sight: &ViewScope) -> Answer {
    let (locale, trade) = (context.locale(), Trade::built_in());
    let slab = fold(&opened.diary, Knowledge::noted_by(context.app.asked_at(opened.record.id)));
    let base = &sight.base;
    let way = |path: &str, key: &'static str| {
        sight.writes.then(|| NavLink { href: format!("{base}/{path}"), label: locale.message(key, &[]), here: false })
    };
    let Ok(order) = order(&slab, trade) else {
        return Ok(show(&Page {
            frame,
            answer: locale.message("order-no-area", &[]),
            buy: Vec::new(),
            missing: vec![(locale.message("order-no-area-what", &[]), way("plan/draw", "slab-draw-plan"))],
            recipe: String::new(),
            rows: Vec::new(),
            zones: Vec::new(),
            file: None,
        }));
    };
    let mut missing = Vec::new();
    if order.coverage.iter().any(|zone| zone.basis == CoverageBasis::Unknown) {
        missing.push((locale.message("order-no-finish", &[]), way("add/finish", "order-note-finish")));
    }
    if order.recipes.iter().any(|recipe| recipe.panel.is_none()) {
        let panels = slab.of_kinds(&[EntryKind::PanelStained]).next().is_some();
        let (path, key) =
            if panels { ("add/choice_approved", "order-approve") } else { ("add/panel_made", "order-make-panel") };
        missing.push((locale.message("order-no-recipe", &[]), way(path, key)));
    }
    if !order.lines.iter().any(|line| line.item == slab_answers::order::Item::Sealer) {
        missing.push((locale.message("order-no-sealer", &[]), way("add/sealer_chosen", "order-choose-sealer")));
    }
    let packs = |line: &Line| locale.pack_list(&line.buy).map(|packs| (packs, item_of(line, locale)));
    let area = slab.area().unwrap_or(units::Area::ZERO);
    Ok(show(&Page {
        frame,
        answer: locale.message("order-answer", &[("area", locale.area(area).into())]),
        buy: order.lines.iter().filter_map(packs).collect(),
        missing,
        recipe: locale.order_recipes(&order),
        rows: order.lines.iter().map(|line| row(line, sight, &slab, locale)).collect(),
        zones: order.coverage.iter().map(|zone| zone_row(zone, sight, &slab, locale)).collect(),
        file: (!sight.by_link).then(|| format!("{base}/order.csv")),
    }))
}

/// The name of a line, with which of it.
fn item_of(line: &Line, locale: Locale) -> String {
    match &line.which {
        Some(which) => format!("{} ({})", locale.item(line.item), locale.term(which)),
        None => locale.item(line.item),
    }
}

/// Low, usual and high of an amount in words.
fn three(need: &Amount, locale: Locale) -> [String; 3] {
    let pieces = |count: u32| locale.message("order-pieces", &[("count", count.into())]);
    match need {
        Amount::Volume(s) => [s.low, s.usual, s.high].map(|q| locale.volume(q)),
        Amount::Mass(s) => [s.low, s.usual, s.high].map(|q| locale.mass(q)),
        Amount::Area(s) => [s.low, s.usual, s.high].map(|q| locale.area(q)),
        Amount::Pieces(s) => [s.low, s.usual, s.high].map(pieces),
    }
}

/// The entries something rests on.
fn evidence(ids: &[EntryId], sight: &ViewScope, slab: &Slab<'_>, locale: Locale) -> Vec<Evidence> {
    let mut ids = ids.to_vec();
    ids.sort_unstable();
    ids.dedup();
    let told = |entry: &EntryId| {
        let entry = slab.entries().iter().find(|e| e.id == *entry)?;
        let mut said = short(entry, slab, locale);
        let line = crate::entry_text::line(entry, locale);
        if !line.is_empty() {
            said = format!("{said}: {line}");
        }
        Some((sight.entries.then(|| format!("{}/entry/{}", sight.base, entry.id)), said))
    };
    ids.iter().filter_map(told).collect()
}

fn row(line: &Line, sight: &ViewScope, slab: &Slab<'_>, locale: Locale) -> Row {
    let [low, usual, high] = three(&line.need, locale);
    let mut facts = line.facts.clone();
    facts.sort_unstable();
    facts.dedup();
    Row {
        item: item_of(line, locale),
        low,
        usual,
        high,
        buy: locale.pack_list(&line.buy),
        notes: line.notes.iter().map(|note: &OrderNote| locale.order_note(*note)).collect(),
        grade: locale.grade(line.grade),
        evidence: evidence(&line.evidence, sight, slab, locale),
        facts: facts.into_iter().map(|fact| fact_name(fact, locale)).collect(),
    }
}

/// A record by its id, and whether its words are English to a reader of Spanish: of the facts, those that a form
/// asks for have their Spanish.
fn fact_name(id: String, locale: Locale) -> (String, String, bool) {
    let trade = Trade::built_in();
    let named = locale.term(&id);
    if named != id {
        return (id, named, false);
    }
    let material = || trade.material(&id).map(|record| locale.text_of(record, "item"));
    let allowance = || trade.allowance(&id).map(|record| locale.text_of(record, "meaning"));
    if let Some(text) = material().or_else(allowance) {
        return (id, text, false);
    }
    let Some(fact) = trade.fact(&id) else { return (id.clone(), id, true) };
    let text = locale.text_of(fact, "statement");
    let english = text == fact.statement;
    (id, text, english)
}

fn zone_row(zone: &ZoneCoverage, sight: &ViewScope, slab: &Slab<'_>, locale: Locale) -> ZoneRow {
    let basis = match zone.basis {
        CoverageBasis::Panels(count) => locale.message("order-zone-panels", &[("count", count.into())]),
        CoverageBasis::Table => locale.message("order-zone-table", &[]),
        CoverageBasis::Unknown => locale.message("order-zone-unknown", &[]),
    };
    ZoneRow {
        zone: if zone.zone.is_empty() { locale.message("order-whole-slab", &[]) } else { zone.zone.clone() },
        area: locale.area(zone.area),
        finish: zone.finish.as_deref().map_or_else(|| locale.message("not-said", &[]), |finish| locale.term(finish)),
        coverage: locale.range(&locale.coverage(zone.coverage.low), &locale.coverage(zone.coverage.high)),
        basis,
        grade: locale.grade(zone.grade),
        evidence: evidence(&zone.evidence, sight, slab, locale),
    }
}
