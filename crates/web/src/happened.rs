//! What happened to a slab, day by day, short enough for a time line.

use jiff::civil::Date;
use pictures::Happened;
use slab::diary::Entry;
use slab::diary::body::Body;
use slab::slab::Slab;
use words::{Arg, Voice};

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
    Trouble,
}

struct Gathered<'d> {
    on: Date,
    row: Row,
    entries: Vec<&'d Entry>,
}

/// The rows, in order of time.
pub(crate) fn happened(slab: &Slab<'_>, voice: Voice) -> Vec<Happened> {
    let zone = slab.time_zone();
    let mut rows: Vec<Gathered<'_>> = Vec::new();
    for entry in slab.entries() {
        let kind = entry.body.kind();
        let row = match STEPS.iter().find(|step| **step == kind) {
            Some(step) => Row::Step(step),
            None if TESTS.contains(&kind) => Row::Tests,
            None if matches!(kind, "incident" | "defect") => Row::Trouble,
            None => continue,
        };
        let on = entry.happened.instant().to_zoned_datetime(zone.clone()).date();
        match rows.iter_mut().find(|g| g.on == on && g.row == row && row != Row::Trouble) {
            Some(gathered) => gathered.entries.push(entry),
            None => rows.push(Gathered { on, row, entries: vec![entry] }),
        }
    }
    rows.iter()
        .map(|gathered| Happened {
            on: gathered.on,
            label: label(gathered, voice),
            trouble: gathered.row == Row::Trouble,
            id: gathered.entries.first().map(|entry| entry.id.to_string()),
        })
        .collect()
}

fn label(gathered: &Gathered<'_>, voice: Voice) -> String {
    let counted = |what: String, count: usize| {
        voice.say("time-counted", &[("what", what.into()), ("count", Arg::Number(count as f64))])
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
            let kinds: Vec<String> = kinds.into_iter().map(|(kind, count)| counted(voice.kind(kind), count)).collect();
            kinds.join(", ")
        }
        Row::Step(kind) => {
            let coats: Vec<String> = gathered.entries.iter().filter_map(|entry| coat(entry)).collect();
            if coats.is_empty() {
                counted(voice.kind(kind), gathered.entries.len())
            } else {
                format!("{} {}", voice.kind(kind), coats.join(", "))
            }
        }
        Row::Trouble => gathered.entries.first().map(|entry| trouble(entry, voice)).unwrap_or_default(),
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
fn trouble(entry: &Entry, voice: Voice) -> String {
    let what = match &entry.body {
        Body::Incident(incident) => voice.term(&incident.what),
        // What kind of defect is the first thing it says.
        _ => crate::told::told(entry, voice)
            .into_iter()
            .next()
            .map_or_else(|| voice.kind(entry.body.kind()), |(_, value)| value),
    };
    match entry.place.as_ref().and_then(|place| place.zone.clone()) {
        Some(zone) => format!("{what}, {zone}"),
        None => what,
    }
}
