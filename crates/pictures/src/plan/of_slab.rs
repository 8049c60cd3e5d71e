//! The marks that a slab's diary holds.

use std::collections::HashSet;

use localization::{Locale, UnitSystem};
use science::emission::moisture_emission;
use slab_answers::standing::open_incidents;
use slab_diary::Slab;
use slab_diary::body::{Accepted, DefectKind, Fizz, Repair, ScrapeResult, SheetResult, WaterDrop, WipeResult};
use slab_diary::{Body, Entry, EntryId, Place};
use slab_plan::Point;
use trade_facts::Trade;
use units::{Area, Duration, Mass};

use super::mark::{Layer, MarkKind, MarkPlace, PlanMark};
use crate::day::day;

/// Marks of everything in the diary that has a place: incidents (open or dealt with, as
/// `slab_answers::standing` judges), defects, tests, placed photographs. Incidents come first, the latest
/// test first; of tests of one kind at one place only the latest is a mark, and its title tells how
/// many came before.
///
/// Each mark's id is that of its entry. `short` and `title` are in the reader's language.
#[must_use]
pub fn marks_of(slab: &Slab<'_>, trade: &Trade, locale: Locale) -> Vec<PlanMark> {
    let open: HashSet<EntryId> = open_incidents(slab, trade).iter().map(|s| s.entry.id).collect();
    let repaired = slab.all::<Repair>().filter_map(|s| s.body.of);
    let settled: HashSet<EntryId> = repaired.chain(slab.all::<Accepted>().map(|s| s.body.of)).collect();
    let mut marks: Vec<(PlanMark, u32)> = Vec::new();
    for entry in slab.entries().iter().rev() {
        let Some(at) = entry.place.as_ref().and_then(place) else { continue };
        let Some(told) = told(&entry.body, locale) else { continue };
        let layer = if told.kind.can_settle() { Layer::Incidents } else { Layer::Tests };
        if layer == Layer::Tests
            && let Some((_, earlier)) = marks.iter_mut().find(|(m, _)| m.kind == told.kind && m.at == at)
        {
            *earlier += 1;
            continue;
        }
        let done = match told.kind {
            MarkKind::Incident => !open.contains(&entry.id),
            _ => settled.contains(&entry.id),
        };
        let zone = zone_of(slab, entry);
        let title = title(entry, &told, zone.as_deref(), done, locale);
        let (id, kind, short) = (entry.id.to_string(), told.kind, told.short);
        marks.push((PlanMark { id, layer, kind, at, short, title, settled: done }, 0));
    }
    marks.sort_by_key(|(mark, _)| (mark.layer, mark.settled));
    marks
        .into_iter()
        .map(|(mut mark, earlier)| {
            if earlier > 0 {
                let n = locale.count(earlier);
                let args = [("what", mark.title.into()), ("n", n.into()), ("count", earlier.into())];
                mark.title = locale.message("pic-earlier", &args);
            }
            mark
        })
        .collect()
}

fn place(place: &Place) -> Option<MarkPlace> {
    if let Some(corners) = &place.polygon {
        return Some(MarkPlace::Polygon(corners.iter().map(Point::from).collect()));
    }
    if let Some(at) = &place.point {
        let center = Point::from(at);
        return Some(match &place.radius {
            Some(radius) => MarkPlace::Circle { center, radius: radius.value() },
            None => MarkPlace::Point(center),
        });
    }
    place.zone.clone().map(MarkPlace::Zone)
}

/// What an entry says on a plan.
struct Told {
    kind: MarkKind,
    /// Beside the mark.
    short: String,
    /// In the title; the short form when that is enough.
    long: Option<String>,
}

impl Told {
    fn new(kind: MarkKind, short: String) -> Self {
        Self { kind, short, long: None }
    }
}

fn told(body: &Body, locale: Locale) -> Option<Told> {
    let word = |key: &'static str| locale.message(key, &[]);
    Some(match body {
        Body::Incident(b) => Told::new(MarkKind::Incident, locale.term(&b.what)),
        Body::Defect(b) => Told::new(MarkKind::Defect, word(defect(b.what))),
        Body::WaterDrop(b) => water_drop(b, locale),
        Body::Scrape(b) => Told::new(MarkKind::Scrape, word(scraped(b.result))),
        Body::SolventWipe(b) => Told::new(MarkKind::SolventWipe, word(wiped(b.result))),
        Body::AcidDrop(b) => Told::new(MarkKind::AcidDrop, word(fizz(b.fizz))),
        Body::SurfacePh(b) => Told::new(MarkKind::Ph, locale.ph(b.ph.value())),
        Body::SlabHumidity(b) => Told::new(MarkKind::Humidity, locale.humidity(b.humidity.value())),
        Body::EmissionDish(b) => dish(b.gain.value(), b.area.value(), b.exposed.value(), locale),
        Body::PlasticSheet(b) => Told::new(MarkKind::Sheet, word(sheet(b.result))),
        Body::Temperature(b) => {
            let read = b.slab.as_ref().or(b.air.as_ref())?;
            Told::new(MarkKind::Temperature, locale.temperature(read.value()))
        }
        Body::SlabPhotograph(_) => Told::new(MarkKind::Photo, String::new()),
        _ => return None,
    })
}

/// The zone that an entry names or its point lies in; nothing on an undivided slab.
fn zone_of(slab: &Slab<'_>, entry: &Entry) -> Option<String> {
    if let Some(named) = entry.place.as_ref().and_then(|p| p.zone.clone()) {
        return Some(named);
    }
    let plan = slab.plan().filter(|p| p.zones().len() > 1)?;
    plan.zone_at(slab.point_of(entry)?).map(|z| z.name().to_owned())
}

fn title(entry: &Entry, told: &Told, zone: Option<&str>, settled: bool, locale: Locale) -> String {
    let value = told.long.as_ref().unwrap_or(&told.short);
    let what = match told.kind {
        MarkKind::Incident | MarkKind::Defect => {
            let state = locale.message(if settled { "pic-settled" } else { "pic-open" }, &[]);
            locale.message("pic-named", &[("name", value.as_str().into()), ("value", state.into())])
        }
        _ if value.is_empty() => locale.kind_of(&entry.body),
        _ => locale
            .message("pic-named", &[("name", locale.kind_of(&entry.body).into()), ("value", value.as_str().into())]),
    };
    let what = match zone {
        Some(zone) => locale.message("pic-in-zone", &[("what", what.into()), ("zone", zone.into())]),
        None => what,
    };
    locale.message("pic-in-zone", &[("what", what.into()), ("zone", day(locale, entry.happened.date()).into())])
}

fn water_drop(drop: &WaterDrop, locale: Locale) -> Told {
    let say = |key: &'static str, time: String| locale.message(key, &[("time", time.into())]);
    if let Some(soaked) = &drop.soaked_in {
        let long = Some(say("pic-soaked", locale.duration(soaked.value())));
        return Told { kind: MarkKind::WaterDrop, short: short_time(soaked.value(), locale), long };
    }
    let bead = locale.message("pic-beads", &[]);
    let (short, long) = match &drop.still_stood_after {
        Some(stood) => {
            let long = say("pic-stood", locale.duration(stood.value()));
            let long = if drop.beads { locale.list(&[long, bead]) } else { long };
            (say("pic-short-stood", short_time(stood.value(), locale)), long)
        }
        None => (locale.message("pic-short-beads", &[]), bead),
    };
    Told { kind: MarkKind::WaterDrop, short, long: Some(long) }
}

/// `75 s`, `12 min`, `16 h`.
fn short_time(time: Duration, locale: Locale) -> String {
    let seconds = time.as_seconds();
    let (key, n, decimals) = match seconds {
        s if s < 180.0 => ("pic-seconds", s, 0),
        s if s < 3.0 * 3600.0 => ("pic-minutes", s / 60.0, 1),
        s => ("pic-hours", s / 3600.0, 1),
    };
    locale.message(key, &[("n", locale.number(n, decimals).into())])
}

fn dish(gain: Mass, area: Area, exposed: Duration, locale: Locale) -> Told {
    // A dish that cannot be worked out still shows where it stood.
    let Ok(reading) = moisture_emission(gain, area, exposed) else { return Told::new(MarkKind::Dish, String::new()) };
    let rate = reading.emission;
    let (key, n) = match locale.unit_system {
        UnitSystem::Imperial => ("pic-emission-pounds", rate.as_pounds_per_thousand_square_feet_day()),
        UnitSystem::Metric => ("pic-emission-grams", rate.as_grams_per_square_meter_day()),
    };
    let short = locale.message(key, &[("n", locale.number(n, 1).into())]);
    Told { kind: MarkKind::Dish, short, long: Some(locale.emission(rate)) }
}

const fn scraped(result: ScrapeResult) -> &'static str {
    match result {
        ScrapeResult::Powder => "pic-scrape-powder",
        ScrapeResult::ShineChange => "pic-scrape-shine-change",
        ScrapeResult::Curl => "pic-scrape-curl",
        ScrapeResult::Flake => "pic-scrape-flake",
        ScrapeResult::Tacky => "pic-scrape-tacky",
    }
}

const fn wiped(result: WipeResult) -> &'static str {
    match result {
        WipeResult::Clean => "pic-wipe-clean",
        WipeResult::ShineChange => "pic-wipe-shine-change",
        WipeResult::StickyOrYellow => "pic-wipe-sticky-or-yellow",
    }
}

const fn fizz(fizz: Fizz) -> &'static str {
    match fizz {
        Fizz::Strong => "pic-fizz-strong",
        Fizz::Weak => "pic-fizz-weak",
        Fizz::None => "pic-fizz-none",
    }
}

const fn sheet(result: SheetResult) -> &'static str {
    match result {
        SheetResult::Dry => "pic-sheet-dry",
        SheetResult::Darkened => "pic-sheet-darkened",
        SheetResult::Drops => "pic-sheet-drops",
    }
}

const fn defect(kind: DefectKind) -> &'static str {
    match kind {
        DefectKind::Crack => "pic-defect-crack",
        DefectKind::Hole => "pic-defect-hole",
        DefectKind::Spall => "pic-defect-spall",
        DefectKind::Patch => "pic-defect-patch",
        DefectKind::Dusting => "pic-defect-dusting",
    }
}
