//! What the photographs of an entry measure, for the fields that were left to them.

use diary_photographs::{look, panel_lab};
use photo::{Decoded, decode};
use serde_json::{Map, Value, json};
use slab_diary::body::{PanelPhotographed, SlabPhotograph};
use slab_diary::{Body, EntryBody, EntryKind};

/// What of an entry goes into the measuring of its photographs.
const MARKS: [&str; 3] = ["card", "card_box", "panel_box"];

/// The field that a photograph of this kind of entry can answer.
const fn measured(kind: EntryKind) -> Option<&'static str> {
    match kind {
        EntryKind::SlabPhotograph => Some("evenness"),
        EntryKind::PanelPhotographed => Some("lab"),
        _ => None,
    }
}

/// Fills in what the photographs say and the person did not: a slab's evenness, a panel's color. What was
/// given stands. A photograph that says nothing for sure leaves "can't tell", or no color. Fields that cannot
/// be read are left to whoever checks them.
pub(crate) fn fill_in(kind: EntryKind, fields: &mut Map<String, Value>, photographs: &[Vec<u8>]) {
    let Some(field) = measured(kind) else { return };
    if fields.get(field).is_some_and(|value| !value.is_null()) || photographs.is_empty() {
        return;
    }
    let Ok(body) = Body::of_kind(kind, fields.clone()) else { return };
    let pictures: Vec<Decoded> = photographs.iter().filter_map(|bytes| decode(bytes).ok()).take(2).collect();
    let value = if let Some(slab) = SlabPhotograph::of(&body) {
        look(slab, &pictures).map(|looked| json!(looked.verdict.word()))
    } else {
        let panel = PanelPhotographed::of(&body).zip(pictures.first());
        panel.and_then(|(panel, picture)| panel_lab(panel, picture).ok()).map(|lab| {
            // Rounded as far as a photograph goes.
            json!([lab.lightness(), lab.a(), lab.b()].map(|n| (n * 100.0).round() / 100.0))
        })
    };
    if let Some(value) = value {
        fields.insert(field.to_owned(), value);
    }
}

/// Whether a stored body says what a new one says, and beyond it only what its photographs measured.
pub(crate) fn is_the_same_but_measured(kind: EntryKind, new: &Body, stored: &Body) -> bool {
    let (new, mut stored) = (new.to_fields(), stored.to_fields());
    if let Some(field) = measured(kind).filter(|field| !new.contains_key(*field)) {
        stored.remove(field);
    }
    new == stored
}

/// Takes out of a correction what its photographs may have measured and the person left as it was, when another
/// photograph came along or the card or the panel was marked otherwise: it is measured anew.
pub(crate) fn forget(kind: EntryKind, fields: &mut Map<String, Value>, old: &Body, more_photographs: bool) {
    let Some(field) = measured(kind) else { return };
    let old = old.to_fields();
    let marked_otherwise = MARKS.iter().any(|mark| fields.get(*mark) != old.get(*mark));
    if (more_photographs || marked_otherwise) && fields.get(field) == old.get(field) {
        fields.remove(field);
    }
}
