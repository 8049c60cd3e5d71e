//! The plan with everything that was found and tried on it, to look at and to write from: the drawing,
//! and the same as a list.

use std::sync::Arc;

use askama::Template;
use axum::Router;
use axum::http::header::{CONTENT_DISPOSITION, CONTENT_TYPE};
use axum::response::IntoResponse;
use localization::{Arg, Locale};
use pictures::{
    KeyLine, Layer, PlanDrawing, PlanItem, PlanLayers, PlanLook, bay_sentences, marks_of, next_marks, no_next_sentence,
    plan_svg, zone_sentences,
};
use slab_answers::map::{Fineness, SlabMap};
use slab_answers::standing::open_incidents;
use slab_diary::Knowledge;
use slab_diary::body::Finish;
use slab_diary::{EntryKind, Slab, fold};
use slab_plan::Plan;
use trade_facts::Trade;
use units::Area;

use crate::app::App;
use crate::context::{Answer, RequestContext, page};
use crate::entries::Opened;
use crate::frame::{Frame, NavLink, show};
use crate::page_error::PageError;
use crate::screens::drawing::zone_name;
use crate::view_scope::ViewScope;
use crate::visitor::Permission;

/// Written at a place most often, so they stand first when the plan is tapped.
const FIRST: [EntryKind; 5] =
    [EntryKind::Incident, EntryKind::WaterDrop, EntryKind::Scrape, EntryKind::SlabPhotograph, EntryKind::Defect];
/// Units across a drawing to print, and across the plan beside its list at a desk.
const WIDE: f64 = 1000.0;
const DESK: f64 = 480.0;

pub(super) fn routes() -> Router<Arc<App>> {
    Router::new()
        .route("/slab/{slab}/plan", page(Permission::Read, shown))
        .route("/slab/{slab}/plan.svg", page(Permission::Read, download))
        .merge(super::drawing::routes())
}

struct Item {
    number: Option<String>,
    text: String,
    href: Option<String>,
}

struct Group {
    label: String,
    items: Vec<Item>,
}

/// The map of the slab in words.
struct MapSaid {
    zones: Vec<(String, String)>,
    bays: Vec<String>,
    next: Vec<NextRow>,
    /// Why no place is named, when none is.
    no_next: Option<String>,
    limits: String,
}

/// A place to test next, with the form that takes its drop.
struct NextRow {
    number: String,
    said: String,
    href: Option<String>,
}

struct ZoneRow {
    /// Its number, where a drawing has no room for its name.
    number: Option<String>,
    name: String,
    area: String,
    finish: Option<String>,
}

/// The plan laid out for a screen.
struct Drawn {
    /// Which screens show it.
    class: &'static str,
    svg: String,
    key: Vec<KeyLine>,
}

#[derive(Template)]
#[template(path = "plan.html")]
struct Page {
    frame: Frame,
    answer: String,
    /// What keeps the plan of the diary from being drawn.
    wrong: Option<String>,
    entry: Option<String>,
    drawings: Vec<Drawn>,
    /// Name, label, and whether it is shown at first.
    layers: Vec<(&'static str, String, bool)>,
    map: Option<MapSaid>,
    first: Vec<NavLink>,
    others: Vec<NavLink>,
    groups: Vec<Group>,
    zones: Vec<ZoneRow>,
    facts: Vec<(String, String)>,
    /// How each walk of the plan closed.
    walks: Vec<String>,
    /// The lengths of the walls.
    walls: Vec<String>,
    ways: Vec<NavLink>,
    has_plan: bool,
    finishes: bool,
}

fn drawing_of(
    slab: &Slab<'_>,
    plan: &Plan,
    map: Option<&Arc<SlabMap>>,
    with_finishes: bool,
    look: &PlanLook,
) -> PlanDrawing {
    let locale = look.look.locale;
    let mut marks = marks_of(slab, Trade::built_in(), locale);
    marks.extend(map.iter().flat_map(|map| next_marks(map, locale)));
    let finish = |zone: &slab_diary::Zone| {
        let last = slab.all::<Finish>().rfind(|finish| slab.touches(finish.entry, zone))?;
        Some((zone.name.clone(), last.body.finish.clone()))
    };
    let finishes = slab.zones().iter().filter(|_| with_finishes).filter_map(finish).collect();
    let layers = PlanLayers { marks, map: map.map(Arc::clone), finishes, ..PlanLayers::default() };
    plan_svg(plan, &layers, look)
}

fn look(prefix: &str, locale: Locale) -> PlanLook {
    PlanLook::new(prefix, &locale.message("plan-picture", &[]), locale)
}

fn shown(context: &RequestContext) -> Answer {
    let opened = context.opened()?;
    let frame = context.frame(context.locale().message("way-plan", &[])).about(context, &opened.record, &opened.zone);
    plan_of(context, &opened, frame, &ViewScope::own(context, opened.record.id))
}

/// The plan in any frame.
pub(crate) fn plan_of(context: &RequestContext, opened: &Opened, frame: Frame, sight: &ViewScope) -> Answer {
    let locale = context.locale();
    let id = opened.record.id;
    let slab = fold(&opened.diary, Knowledge::noted_by(context.app.asked_at(id)));
    // Of a diary that grows, and of entries dated ahead that come to count.
    let name = format!("{id}.{}.{}", opened.record.version, slab.entries().len());
    let make = || SlabMap::of(&slab, Trade::built_in(), Fineness::SCREEN).ok();
    let map = context.app.works.map_once(name, make);
    let with_finishes = wants_finishes(context);
    let draw = |look: PlanLook| slab.plan().map(|plan| drawing_of(&slab, plan, map.as_ref(), with_finishes, &look));
    let (phone, desk) = (draw(look("plan", locale)), draw(look("plan-desk", locale).wide(DESK)));
    let items = phone.as_ref().map_or_else(Vec::new, |drawn| drawn.items.clone());
    // Where either has no room for a zone's name, its number is told.
    let numbers = |drawn: &Option<PlanDrawing>| -> Vec<Option<String>> {
        let zones = drawn.iter().flat_map(|drawn| &drawn.items).filter(|item| item.layer == Layer::Zones);
        zones.map(|item| item.number.clone()).collect()
    };
    let zone_numbers = numbers(&phone).into_iter().zip(numbers(&desk)).map(|(phone, desk)| phone.or(desk)).collect();
    let laid_out = |class, drawn: Option<PlanDrawing>| {
        let PlanDrawing { svg, key, .. } = drawn?;
        Some(Drawn { class, svg: quieted(svg?), key })
    };
    let drawings: Vec<Drawn> = [laid_out("on-phone", phone), laid_out("on-desk", desk)].into_iter().flatten().collect();
    let holds = |layer: &Layer| {
        let group = format!("data-layer-of=\"{}\"", layer.name());
        drawings.iter().any(|drawn| drawn.svg.contains(&group))
    };
    let layers = Layer::ALL.into_iter().filter(holds);
    let (first, others) = if sight.writes { to_write(&id.to_string(), locale) } else { Default::default() };
    let entry = slab.plan_entry();
    Ok(show(&Page {
        frame,
        answer: answer(&slab, locale),
        wrong: entry.and_then(|(_, error)| error).map(|error| locale.plan_error(error)),
        entry: entry.filter(|_| sight.entries).map(|(seen, _)| format!("{}/entry/{}", sight.base, seen.entry.id)),
        layers: layers.map(|layer| (layer.name(), layer_label(layer, locale), !QUIET.contains(&layer))).collect(),
        map: map.as_ref().map(|map| map_said(map, sight, locale)),
        first,
        others,
        walls: items.iter().filter(|item| item.layer == Layer::Dimensions).map(|item| item.text.clone()).collect(),
        walks: slab.plan().map_or_else(Vec::new, |plan| plan.walks().iter().map(|(_, w)| locale.walk(w)).collect()),
        zones: slab.plan().map_or_else(Vec::new, |plan| zones(&slab, plan, zone_numbers, locale)),
        groups: groups(items, sight, locale),
        facts: slab.plan().map_or_else(Vec::new, |plan| facts(plan, locale)),
        ways: super::drawing::ways(&id.to_string(), locale),
        has_plan: slab.plan().is_some(),
        finishes: with_finishes,
        drawings,
    }))
}

/// The hatches of finishes crowd those of how the slab drinks, so they come when they are asked for.
fn wants_finishes(context: &RequestContext) -> bool {
    context.query.first("finishes") == Some("yes")
}

/// Layers that are drawn and not shown at first: they would crowd the others.
const QUIET: [Layer; 2] = [Layer::Sections, Layer::ScoreLines];

/// Takes the quiet layers out of sight; the boxes beside the drawing bring them back.
fn quieted(svg: String) -> String {
    QUIET.iter().fold(svg, |svg, layer| {
        let group = format!("class=\"p-layer\" data-layer-of=\"{}\"", layer.name());
        svg.replace(&group, &group.replace("p-layer", "p-layer off"))
    })
}

fn map_said(map: &SlabMap, sight: &ViewScope, locale: Locale) -> MapSaid {
    let metric = locale.unit_system == localization::UnitSystem::Metric;
    let next = next_marks(map, locale);
    let rows = map.next.iter().zip(&next).zip(1_usize..).map(|((test, mark), number)| {
        let offset = |offset: slab_plan::Offset| {
            let length = units::Length::from(offset);
            if metric { format!("{:.2} m", length.as_meters()) } else { format!("{:.1} ft", length.as_feet()) }
        };
        let (x, y) = (offset(test.at.x), offset(test.at.y));
        let pairs = [("x", x.as_str()), ("y", y.as_str())];
        let query = form_urlencoded::Serializer::new(String::new()).extend_pairs(pairs).finish();
        NextRow {
            number: number.to_string(),
            said: mark.title.clone(),
            href: sight.writes.then(|| format!("{}/add/water_drop?{query}", sight.base)),
        }
    });
    let [quick, stands] = map.limits.map(|limit| locale.duration(limit));
    MapSaid {
        zones: zone_sentences(map, locale),
        bays: bay_sentences(map, locale),
        next: rows.collect(),
        no_next: no_next_sentence(map, locale),
        limits: locale.message("map-limits", &[("quick", quick.into()), ("stands", stands.into())]),
    }
}

/// How large, in how many zones, and what lies open on it.
fn answer(slab: &Slab<'_>, locale: Locale) -> String {
    let Some(plan) = slab.plan() else { return locale.message("plan-none", &[]) };
    let open = open_incidents(slab, Trade::built_in()).len();
    let args = [
        ("area", locale.area(plan.area()).into()),
        ("zones", Arg::Number(plan.zones().len() as f64)),
        ("open", Arg::Number(open as f64)),
    ];
    locale.message("plan-answer", &args)
}

/// Forms for what is found at a place: those wanted most, and all others.
fn to_write(id: &str, locale: Locale) -> (Vec<NavLink>, Vec<NavLink>) {
    let way = |kind: EntryKind| NavLink {
        href: format!("/slab/{id}/add/{}", kind.name()),
        label: locale.kind(kind),
        here: false,
    };
    let others = EntryKind::ALL.iter().copied().filter(|kind| kind.schema().place.points() && !FIRST.contains(kind));
    (FIRST.into_iter().map(way).collect(), others.map(way).collect())
}

fn layer_label(layer: Layer, locale: Locale) -> String {
    match layer {
        Layer::Zones => locale.message("plan-layer-zones", &[]),
        Layer::CutOuts => locale.message("plan-layer-cut-outs", &[]),
        Layer::Dimensions => locale.message("plan-layer-dimensions", &[]),
        Layer::Sections => locale.message("plan-layer-sections", &[]),
        Layer::Incidents => locale.message("plan-layer-incidents", &[]),
        Layer::Tests => locale.message("plan-layer-tests", &[]),
        Layer::Next => locale.message("plan-layer-next", &[]),
        Layer::Absorbency => locale.message("plan-layer-absorbency", &[]),
        Layer::Finishes => locale.message("plan-layer-finishes", &[]),
        Layer::Joints => locale.message("plan-layer-joints", &[]),
        Layer::ScoreLines => locale.message("plan-layer-score-lines", &[]),
    }
}

/// What lies on the plan, layer by layer. What the plan itself is made of is told beside it.
fn groups(items: Vec<PlanItem>, sight: &ViewScope, locale: Locale) -> Vec<Group> {
    let mut groups = Vec::new();
    for layer in [Layer::Incidents, Layer::Tests, Layer::Joints, Layer::ScoreLines, Layer::Sections] {
        let items: Vec<Item> = items
            .iter()
            .filter(|item| item.layer == layer)
            .map(|item| Item {
                number: item.number.clone(),
                text: item.text.clone(),
                href: item.id.as_ref().filter(|_| sight.entries).map(|entry| format!("{}/entry/{entry}", sight.base)),
            })
            .collect();
        if !items.is_empty() {
            groups.push(Group { label: layer_label(layer, locale), items });
        }
    }
    groups
}

fn zones(slab: &Slab<'_>, plan: &Plan, numbers: Vec<Option<String>>, locale: Locale) -> Vec<ZoneRow> {
    let of = |name: &str| slab.zones().iter().find(|zone| zone.name == name);
    let finish = |name: &str| {
        let zone = of(name)?;
        let last = slab.all::<Finish>().rfind(|finish| slab.touches(finish.entry, zone))?;
        Some(locale.term(&last.body.finish))
    };
    let mut numbers = numbers.into_iter();
    let row = |zone: &slab_plan::Zone| ZoneRow {
        number: numbers.next().flatten(),
        name: zone_name(zone.name(), locale),
        area: locale.area(zone.area()),
        finish: finish(zone.name()),
    };
    plan.zones().iter().map(row).collect()
}

fn facts(plan: &Plan, locale: Locale) -> Vec<(String, String)> {
    let mut facts = Vec::new();
    if let Some(perimeter) = plan.perimeter() {
        facts.push((locale.message("plan-perimeter", &[]), locale.length(perimeter)));
    }
    if plan.cut_out_area() > Area::ZERO {
        facts.push((locale.message("plan-cut-outs", &[]), locale.area(plan.cut_out_area())));
    }
    if plan.unzoned_area() > Area::square_meters(0.01) {
        facts.push((locale.message("plan-unzoned", &[]), locale.area(plan.unzoned_area())));
    }
    facts
}

/// The drawing alone, large enough to print.
fn download(context: &RequestContext) -> Answer {
    let opened = context.opened()?;
    let slab = fold(&opened.diary, Knowledge::noted_by(context.app.asked_at(opened.record.id)));
    let map = SlabMap::of(&slab, Trade::built_in(), Fineness::PRINT).ok().map(Arc::new);
    let drawn = slab.plan().and_then(|plan| {
        let look = look("plan", context.locale()).wide(WIDE).keyed();
        drawing_of(&slab, plan, map.as_ref(), wants_finishes(context), &look).svg
    });
    let svg = drawn.ok_or(PageError::NotFound)?;
    let headers =
        [(CONTENT_TYPE, "image/svg+xml; charset=utf-8"), (CONTENT_DISPOSITION, "attachment; filename=\"plan.svg\"")];
    Ok((headers, svg).into_response())
}
