//! What happened to a slab, day by day, short enough for a time line.

use jiff::civil::Date;
use localization::{Arg, Locale};
use pictures::Happened;
use slab_diary::Entry;
use slab_diary::Slab;
use slab_diary::body::Body;

/// Tests of one day stand in one row: how each went is the standing's affair.
const TESTS: &[&str] = &[
    "color_look",
    "survey",
    "water_drop",
    "scrape",
    "solvent_wipe",
    "acid_drop",
    "surface_ph",
    "slab_humidity",
    "emission_dish",
    "plastic_sheet",
    "retest",
];

/// What stands in a row of its own, with all of its kind on that day.
const STEPS: &[&str] = &[
    "pour",
    "curing",
    "cured",
    "panel_made",
    "panel_stained",
    "choice_approved",
    "cleaning",
    "repair",
    "accepted",
    "hold_released",
    "coat_laid",
    "neutralized",
    "rinsed",
    "sealer_coat",
];

/// What a row gathers.
#[derive(PartialEq)]
enum Row {
    Tests,
    Step(&'static str),
    /// Each by itself.
    PageError,
}

struct Gathered<'d> {
    on: Date,
    row: Row,
    entries: Vec<&'d Entry>,
}

/// The rows, in order of time.
pub(crate) fn happened(slab: &Slab<'_>, locale: Locale) -> Vec<Happened> {
    let zone = slab.time_zone();
    let mut rows: Vec<Gathered<'_>> = Vec::new();
    for entry in slab.entries() {
        let kind = entry.body.kind();
        let row = match STEPS.iter().find(|step| **step == kind) {
            Some(step) => Row::Step(step),
            None if TESTS.contains(&kind) => Row::Tests,
            None if matches!(kind, "incident" | "defect") => Row::PageError,
            None => continue,
        };
        let on = entry.happened.instant().to_zoned_datetime(zone.clone()).date();
        match rows.iter_mut().find(|g| g.on == on && g.row == row && row != Row::PageError) {
            Some(gathered) => gathered.entries.push(entry),
            None => rows.push(Gathered { on, row, entries: vec![entry] }),
        }
    }
    rows.iter()
        .map(|gathered| Happened {
            on: gathered.on,
            label: label(gathered, locale),
            trouble: gathered.row == Row::PageError,
            id: gathered.entries.first().map(|entry| entry.id.to_string()),
        })
        .collect()
}

fn label(gathered: &Gathered<'_>, locale: Locale) -> String {
    let counted = |what: String, count: usize| {
        locale.message("time-counted", &[("what", what.into()), ("count", Arg::Number(count as f64))])
    };
    match gathered.row {
        Row::Tests => {
            let mut kinds: Vec<(&str, usize)> = Vec::new();
            for entry in &gathered.entries {
                let kind = entry.body.kind();
                match kinds.iter_mut().find(|(known, _)| *known == kind) {
                    Some((_, count)) => *count += 1,
                    None => kinds.push((kind, 1)),
                }
            }
            let kinds: Vec<String> = kinds.into_iter().map(|(kind, count)| counted(locale.kind(kind), count)).collect();
            kinds.join(", ")
        }
        Row::Step(kind) => {
            let coats: Vec<String> = gathered.entries.iter().filter_map(|entry| coat(entry)).collect();
            if coats.is_empty() {
                counted(locale.kind(kind), gathered.entries.len())
            } else {
                format!("{} {}", locale.kind(kind), coats.join(", "))
            }
        }
        Row::PageError => gathered.entries.first().map(|entry| trouble(entry, locale)).unwrap_or_default(),
    }
}

/// The number of a coat.
fn coat(entry: &Entry) -> Option<String> {
    match &entry.body {
        Body::CoatLaid(coat) => Some(coat.coat.to_string()),
        Body::SealerCoat(coat) => Some(coat.coat.to_string()),
        _ => None,
    }
}

/// What went against the work, and where when it has the name of a zone.
fn trouble(entry: &Entry, locale: Locale) -> String {
    let what = match &entry.body {
        Body::Incident(incident) => locale.term(&incident.what),
        // What kind of defect is the first thing it says.
        _ => crate::entry_text::told(entry, locale)
            .into_iter()
            .next()
            .map_or_else(|| locale.kind(entry.body.kind()), |(_, value)| value),
    };
    match entry.place.as_ref().and_then(|place| place.zone.clone()) {
        Some(zone) => format!("{what}, {zone}"),
        None => what,
    }
}
