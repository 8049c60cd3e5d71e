//! A drawing beside the same in words, and what an answer rests on: shared by the pages with charts.

use localization::Locale;
use pictures::Drawing;
use slab_diary::EntryId;
use slab_diary::Slab;
use trade_facts::{Citation, Trade};

use crate::control::short;

/// Units across a chart beside the ways of a desk: fewer than its pixels, so that the lettering is large.
pub(crate) const DESK_UNITS: f64 = 660.0;

/// A drawing as the template shows it.
#[derive(Debug, Clone)]
pub(crate) struct Charted {
    pub(crate) title: String,
    pub(crate) svg: String,
    /// The same for a desk, where it was drawn so.
    pub(crate) wide: Option<String>,
    pub(crate) sentences: Vec<String>,
    pub(crate) head: Vec<String>,
    pub(crate) rows: Vec<Vec<String>>,
}

impl Charted {
    pub(crate) fn new(title: &str, drawing: Drawing) -> Self {
        Self {
            title: title.to_owned(),
            svg: drawing.svg,
            wide: None,
            sentences: drawing.sentences,
            head: drawing.table.head,
            rows: drawing.table.rows,
        }
    }

    /// Drawn a second time for a desk: what it tells is the same.
    pub(crate) fn with_wide(self, drawing: Drawing) -> Self {
        Self { wide: Some(drawing.svg), ..self }
    }
}

/// Entries as links with what they say.
pub(crate) fn evidence(ids: &[EntryId], slab: &Slab<'_>, slab_id: &str, locale: Locale) -> Vec<(String, String)> {
    ids.iter()
        .filter_map(|id| {
            let entry = slab.entries().iter().find(|e| e.id == *id)?;
            let line = crate::entry_text::line(entry, locale);
            let what = short(entry, slab, locale);
            let said = if line.is_empty() { what } else { format!("{what}: {line}") };
            Some((format!("/slab/{slab_id}/entry/{id}"), said))
        })
        .collect()
}

/// The source of something with its grade.
pub(crate) fn source(citation: &Citation, trade: &Trade, locale: Locale) -> String {
    let cited = locale.cite(trade, citation);
    let grade = locale.grade(trade.grade_to_show(citation));
    locale.message("standing-source", &[("source", cited.into()), ("grade", grade.into())])
}

/// The hour of a local time as it is said: `11 AM`, `noon`.
pub(crate) fn hour(at: jiff::civil::DateTime, locale: Locale) -> String {
    match (at.hour(), at.minute()) {
        (0, 0) => return locale.message("pic-midnight", &[]),
        (12, 0) => return locale.message("pic-noon", &[]),
        _ => {}
    }
    let twelve = if at.hour() % 12 == 0 { 12 } else { at.hour() % 12 };
    let n = if at.minute() == 0 { twelve.to_string() } else { format!("{twelve}:{:02}", at.minute()) };
    let key = if at.hour() < 12 { "pic-hour-am" } else { "pic-hour-pm" };
    locale.message(key, &[("n", n.into())])
}
