//! The plan with everything that was found and tried on it, to look at and to write from: the drawing,
//! and the same as a list.

use std::sync::Arc;

use askama::Template;
use axum::Router;
use axum::http::header::{CONTENT_DISPOSITION, CONTENT_TYPE};
use axum::response::IntoResponse;
use forms::PlaceAsk;
use pictures::{
    Layer, PlanDrawing, PlanItem, PlanLayers, PlanLook, bay_sentences, marks_of, next_marks, no_next_sentence,
    plan_svg, zone_sentences,
};
use slab::diary::Knowledge;
use slab::diary::body::Finish;
use slab::map::{Fineness, SlabMap};
use slab::plan::Plan;
use slab::slab::{Slab, fold};
use slab::standing::open_incidents;
use slab::trade::Trade;
use units::Area;
use words::{Arg, Voice};

use crate::app::App;
use crate::ask::{Answer, Ask, page};
use crate::entries::Opened;
use crate::frame::{Frame, Way, show};
use crate::screens::drawing::zone_name;
use crate::sight::Sight;
use crate::trouble::Trouble;
use crate::visitor::May;

/// Written at a place most often, so they stand first when the plan is tapped.
const FIRST: [&str; 5] = ["incident", "water_drop", "scrape", "slab_photograph", "defect"];
/// Units across a drawing to print.
const WIDE: f64 = 1000.0;

pub(super) fn routes() -> Router<Arc<App>> {
    Router::new()
        .route("/slab/{slab}/plan", page(May::Read, shown))
        .route("/slab/{slab}/plan.svg", page(May::Read, download))
        .merge(super::drawing::routes())
}

struct Item {
    number: Option<u32>,
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
    name: String,
    area: String,
    finish: Option<String>,
}

#[derive(Template)]
#[template(path = "plan.html")]
struct Page {
    frame: Frame,
    answer: String,
    /// What keeps the plan of the diary from being drawn.
    wrong: Option<String>,
    entry: Option<String>,
    drawing: Option<String>,
    /// Name, label, and whether it is shown at first.
    layers: Vec<(&'static str, String, bool)>,
    map: Option<MapSaid>,
    first: Vec<Way>,
    others: Vec<Way>,
    groups: Vec<Group>,
    zones: Vec<ZoneRow>,
    facts: Vec<(String, String)>,
    /// How each walk of the plan closed.
    walks: Vec<String>,
    /// The lengths of the walls.
    walls: Vec<String>,
    ways: Vec<Way>,
    has_plan: bool,
    finishes: bool,
}

fn drawing_of(
    slab: &Slab<'_>,
    plan: &Plan,
    map: Option<&Arc<SlabMap>>,
    with_finishes: bool,
    voice: Voice,
    wide: Option<f64>,
) -> PlanDrawing {
    let mut marks = marks_of(slab, Trade::built_in(), voice);
    marks.extend(map.iter().flat_map(|map| next_marks(map, voice)));
    let finish = |zone: &slab::slab::Zone| {
        let last = slab.all::<Finish>().rfind(|finish| slab.touches(finish.entry, zone))?;
        Some((zone.name.clone(), last.body.finish.clone()))
    };
    let finishes = slab.zones().iter().filter(|_| with_finishes).filter_map(finish).collect();
    let layers = PlanLayers { marks, map: map.map(Arc::clone), finishes, ..PlanLayers::default() };
    let look = PlanLook::new("plan", &voice.say("plan-picture", &[]), voice);
    plan_svg(plan, &layers, &wide.map_or(look.clone(), |units| look.wide(units)))
}

fn shown(ask: &Ask) -> Answer {
    let opened = ask.opened()?;
    let frame = ask.frame(ask.voice().say("way-plan", &[])).about(ask, &opened.record, &opened.zone);
    plan_of(ask, &opened, frame, &Sight::own(ask, opened.record.id))
}

/// The plan in any frame.
pub(crate) fn plan_of(ask: &Ask, opened: &Opened, frame: Frame, sight: &Sight) -> Answer {
    let voice = ask.voice();
    let id = opened.record.id;
    let slab = fold(&opened.diary, Knowledge::noted_by(ask.app.asked_at(id)));
    // Of a diary that grows, and of entries dated ahead that come to count.
    let name = format!("{id}.{}.{}", opened.record.version, slab.entries().len());
    let make = || SlabMap::of(&slab, Trade::built_in(), Fineness::SCREEN).ok();
    let map = ask.app.works.map_once(name, make);
    let with_finishes = wants_finishes(ask);
    let drawing = slab.plan().map(|plan| drawing_of(&slab, plan, map.as_ref(), with_finishes, voice, None));
    let (svg, items) = drawing.map_or((None, Vec::new()), |drawn| (drawn.svg.map(quieted), drawn.items));
    let layers = Layer::ALL
        .into_iter()
        .filter(|layer| svg.as_ref().is_some_and(|svg| svg.contains(&format!("data-layer-of=\"{}\"", layer.name()))));
    let (first, others) = if sight.writes { to_write(&id.to_string(), voice) } else { Default::default() };
    let entry = slab.plan_entry();
    Ok(show(&Page {
        frame,
        answer: answer(&slab, voice),
        wrong: entry.and_then(|(_, error)| error).map(|error| voice.plan_error(error)),
        entry: entry.filter(|_| sight.entries).map(|(seen, _)| format!("{}/entry/{}", sight.base, seen.entry.id)),
        layers: layers.map(|layer| (layer.name(), layer_label(layer, voice), !QUIET.contains(&layer))).collect(),
        map: map.as_ref().map(|map| map_said(map, sight, voice)),
        first,
        others,
        walls: items.iter().filter(|item| item.layer == Layer::Dimensions).map(|item| item.text.clone()).collect(),
        walks: slab.plan().map_or_else(Vec::new, |plan| plan.walks().iter().map(|(_, w)| voice.walk(w)).collect()),
        groups: groups(items, sight, voice),
        zones: slab.plan().map_or_else(Vec::new, |plan| zones(&slab, plan, voice)),
        facts: slab.plan().map_or_else(Vec::new, |plan| facts(plan, voice)),
        ways: super::drawing::ways(&id.to_string(), voice),
        has_plan: slab.plan().is_some(),
        finishes: with_finishes,
        drawing: svg,
    }))
}

/// The hatches of finishes crowd those of how the slab drinks, so they come when they are asked for.
fn wants_finishes(ask: &Ask) -> bool {
    ask.query.first("finishes") == Some("yes")
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

fn map_said(map: &SlabMap, sight: &Sight, voice: Voice) -> MapSaid {
    let metric = voice.measure == words::Measure::Metric;
    let next = next_marks(map, voice);
    let rows = map.next.iter().zip(&next).map(|(test, mark)| {
        let offset = |offset: slab::plan::Offset| {
            let length = units::Length::from(offset);
            if metric { format!("{:.2} m", length.as_meters()) } else { format!("{:.1} ft", length.as_feet()) }
        };
        let (x, y) = (offset(test.at.x), offset(test.at.y));
        let pairs = [("x", x.as_str()), ("y", y.as_str())];
        let query = form_urlencoded::Serializer::new(String::new()).extend_pairs(pairs).finish();
        NextRow {
            number: mark.short.clone(),
            said: mark.title.clone(),
            href: sight.writes.then(|| format!("{}/add/water_drop?{query}", sight.base)),
        }
    });
    let [quick, stands] = map.limits.map(|limit| voice.duration(limit));
    MapSaid {
        zones: zone_sentences(map, voice),
        bays: bay_sentences(map, voice),
        next: rows.collect(),
        no_next: no_next_sentence(map, voice),
        limits: voice.say("map-limits", &[("quick", quick.into()), ("stands", stands.into())]),
    }
}

/// How large, in how many zones, and what lies open on it.
fn answer(slab: &Slab<'_>, voice: Voice) -> String {
    let Some(plan) = slab.plan() else { return voice.say("plan-none", &[]) };
    let open = open_incidents(slab, Trade::built_in()).len();
    let args = [
        ("area", voice.area(plan.area()).into()),
        ("zones", Arg::Number(plan.zones().len() as f64)),
        ("open", Arg::Number(open as f64)),
    ];
    voice.say("plan-answer", &args)
}

/// Forms for what is found at a place: those wanted most, and all others.
fn to_write(id: &str, voice: Voice) -> (Vec<Way>, Vec<Way>) {
    let way = |kind: &str| Way { href: format!("/slab/{id}/add/{kind}"), label: voice.kind(kind), here: false };
    let others = forms::forms().iter().filter(|f| f.place == PlaceAsk::Point && !FIRST.contains(&f.kind));
    (FIRST.into_iter().map(way).collect(), others.map(|f| way(f.kind)).collect())
}

fn layer_label(layer: Layer, voice: Voice) -> String {
    match layer {
        Layer::Zones => voice.say("plan-layer-zones", &[]),
        Layer::CutOuts => voice.say("plan-layer-cut-outs", &[]),
        Layer::Dimensions => voice.say("plan-layer-dimensions", &[]),
        Layer::Sections => voice.say("plan-layer-sections", &[]),
        Layer::Incidents => voice.say("plan-layer-incidents", &[]),
        Layer::Tests => voice.say("plan-layer-tests", &[]),
        Layer::Next => voice.say("plan-layer-next", &[]),
        Layer::Absorbency => voice.say("plan-layer-absorbency", &[]),
        Layer::Finishes => voice.say("plan-layer-finishes", &[]),
        Layer::Joints => voice.say("plan-layer-joints", &[]),
        Layer::ScoreLines => voice.say("plan-layer-score-lines", &[]),
    }
}

/// What lies on the plan, layer by layer. What the plan itself is made of is told beside it.
fn groups(items: Vec<PlanItem>, sight: &Sight, voice: Voice) -> Vec<Group> {
    let mut groups = Vec::new();
    for layer in [Layer::Incidents, Layer::Tests, Layer::Joints, Layer::ScoreLines, Layer::Sections] {
        let items: Vec<Item> = items
            .iter()
            .filter(|item| item.layer == layer)
            .map(|item| Item {
                number: item.number,
                text: item.text.clone(),
                href: item.id.as_ref().filter(|_| sight.entries).map(|entry| format!("{}/entry/{entry}", sight.base)),
            })
            .collect();
        if !items.is_empty() {
            groups.push(Group { label: layer_label(layer, voice), items });
        }
    }
    groups
}

fn zones(slab: &Slab<'_>, plan: &Plan, voice: Voice) -> Vec<ZoneRow> {
    let of = |name: &str| slab.zones().iter().find(|zone| zone.name == name);
    let finish = |name: &str| {
        let zone = of(name)?;
        let last = slab.all::<Finish>().rfind(|finish| slab.touches(finish.entry, zone))?;
        Some(voice.term(&last.body.finish))
    };
    let row = |zone: &slab::plan::Zone| ZoneRow {
        name: zone_name(zone.name(), voice),
        area: voice.area(zone.area()),
        finish: finish(zone.name()),
    };
    plan.zones().iter().map(row).collect()
}

fn facts(plan: &Plan, voice: Voice) -> Vec<(String, String)> {
    let mut facts = Vec::new();
    if let Some(perimeter) = plan.perimeter() {
        facts.push((voice.say("plan-perimeter", &[]), voice.length(perimeter)));
    }
    if plan.cut_out_area() > Area::ZERO {
        facts.push((voice.say("plan-cut-outs", &[]), voice.area(plan.cut_out_area())));
    }
    if plan.unzoned_area() > Area::square_meters(0.01) {
        facts.push((voice.say("plan-unzoned", &[]), voice.area(plan.unzoned_area())));
    }
    facts
}

/// The drawing alone, large enough to print.
fn download(ask: &Ask) -> Answer {
    let opened = ask.opened()?;
    let slab = fold(&opened.diary, Knowledge::noted_by(ask.app.asked_at(opened.record.id)));
    let map = SlabMap::of(&slab, Trade::built_in(), Fineness::PRINT).ok().map(Arc::new);
    let drawn = slab
        .plan()
        .and_then(|plan| drawing_of(&slab, plan, map.as_ref(), wants_finishes(ask), ask.voice(), Some(WIDE)).svg);
    let svg = drawn.ok_or(Trouble::NotFound)?;
    let headers =
        [(CONTENT_TYPE, "image/svg+xml; charset=utf-8"), (CONTENT_DISPOSITION, "attachment; filename=\"plan.svg\"")];
    Ok((headers, svg).into_response())
}
