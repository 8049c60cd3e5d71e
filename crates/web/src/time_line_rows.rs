//! What happened to a slab, day by day, short enough for a time line.

use jiff::civil::Date;
use localization::{Arg, Locale};
use pictures::Happened;
use slab_diary::Slab;
use slab_diary::body::Body;
use slab_diary::body::TimeLine;
use slab_diary::{Entry, EntryKind};

/// What a row gathers.
#[derive(PartialEq)]
enum Row {
    Tests,
    Step(EntryKind),
    /// Each by itself.
    Trouble,
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
        let Some(kind) = entry.body.kind() else { continue };
        let row = match kind.schema().time_line {
            Some(TimeLine::Step) => Row::Step(kind),
            Some(TimeLine::Test) => Row::Tests,
            Some(TimeLine::Trouble) => Row::Trouble,
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
            label: label(gathered, locale),
            trouble: gathered.row == Row::Trouble,
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
            let mut kinds: Vec<(EntryKind, usize)> = Vec::new();
            for entry in &gathered.entries {
                let Some(kind) = entry.body.kind() else { continue };
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
        Row::Trouble => gathered.entries.first().map(|entry| trouble(entry, locale)).unwrap_or_default(),
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
            .map_or_else(|| locale.kind_of(&entry.body), |(_, value)| value),
    };
    match entry.place.as_ref().and_then(|place| place.zone.clone()) {
        Some(zone) => format!("{what}, {zone}"),
        None => what,
    }
}
