//! What a photograph that came with a form measures, for the fields that were left to it.

use photo::{Decoded, decode};
use serde::de::DeserializeOwned;
use serde_json::{Map, Value, json};
use slab_diary::Body;

/// Fills in what the photographs say and the person did not: a slab's evenness, a panel's color. What
/// was typed stands. A photograph that says nothing for sure leaves "can't tell", or no color.
pub(crate) fn fill_in(body: &mut Map<String, Value>, photographs: &[Vec<u8>]) {
    let kind = body.get("kind").and_then(Value::as_str).unwrap_or_default().to_owned();
    let pictures = || -> Vec<Decoded> { photographs.iter().filter_map(|bytes| decode(bytes).ok()).take(2).collect() };
    match kind.as_str() {
        "slab_photograph" if !body.contains_key("evenness") => {
            if let Some(looked) = typed(body).and_then(|typed| diary_photographs::look(&typed, &pictures())) {
                body.insert("evenness".to_owned(), json!(looked.verdict.word()));
            }
        }
        "panel_photographed" if !body.contains_key("lab") => {
            let pictures = pictures();
            let color = typed(body)
                .zip(pictures.first())
                .and_then(|(typed, picture)| diary_photographs::panel_lab(&typed, picture).ok());
            if let Some(lab) = color {
                // Rounded as far as a photograph goes.
                let lab = [lab.lightness(), lab.a(), lab.b()].map(|n| (n * 100.0).round() / 100.0);
                body.insert("lab".to_owned(), json!(lab));
            }
        }
        _ => {}
    }
}

/// What of an entry goes into the measuring of its photographs.
const MARKS: [&str; 3] = ["card", "card_box", "panel_box"];

/// Takes out of a correction what its photographs may have measured and the person left as it was, when
/// another photograph came along or the card or the panel was marked otherwise: it is measured anew.
pub(crate) fn forget_measured(body: &mut Map<String, Value>, old: &Body, more_photographs: bool) {
    let measured = match old {
        Body::SlabPhotograph(_) => "evenness",
        Body::PanelPhotographed(_) => "lab",
        _ => return,
    };
    let Ok(old) = serde_json::from_str::<Value>(old.to_raw().get()) else { return };
    let marked_otherwise = MARKS.iter().any(|mark| body.get(*mark) != old.get(*mark));
    if (more_photographs || marked_otherwise) && body.get(measured) == old.get(measured) {
        body.remove(measured);
    }
}

/// The body as its own type, when it already is one.
fn typed<T: DeserializeOwned>(body: &Map<String, Value>) -> Option<T> {
    let mut fields = body.clone();
    fields.remove("kind");
    serde_json::from_value(Value::Object(fields)).ok()
}
