//! What a photograph that came with a form measures, for the fields that were left to it.

use photo::{Decoded, decode};
use serde::de::DeserializeOwned;
use serde_json::{Map, Value, json};
use slab::diary::Body;

/// Fills in what the photographs say and the person did not: a slab's evenness, a panel's colour. What
/// was typed stands. A photograph that says nothing for sure leaves "can't tell", or no colour.
pub(crate) fn fill_in(body: &mut Map<String, Value>, photographs: &[Vec<u8>]) {
    let kind = body.get("kind").and_then(Value::as_str).unwrap_or_default().to_owned();
    let pictures = || -> Vec<Decoded> { photographs.iter().filter_map(|bytes| decode(bytes).ok()).take(2).collect() };
    match kind.as_str() {
        "slab_photograph" if !body.contains_key("evenness") => {
            if let Some(looked) = typed(body).and_then(|typed| photographed::look(&typed, &pictures())) {
                body.insert("evenness".to_owned(), json!(looked.verdict.word()));
            }
        }
        "panel_photographed" if !body.contains_key("lab") => {
            let pictures = pictures();
            let colour = typed(body)
                .zip(pictures.first())
                .and_then(|(typed, picture)| photographed::panel_lab(&typed, picture).ok());
            if let Some(lab) = colour {
                // Rounded as far as a photograph goes.
                let lab = [lab.lightness(), lab.a(), lab.b()].map(|n| (n * 100.0).round() / 100.0);
                body.insert("lab".to_owned(), json!(lab));
            }
        }
        _ => {}
    }
}

/// Takes the evenness out of a correction that leaves it as it was: it may have come from the
/// photographs there were.
pub(crate) fn forget_measured(body: &mut Map<String, Value>, old: &Body) {
    if let Body::SlabPhotograph(old) = old
        && body.get("evenness") == old.evenness.and_then(|evenness| serde_json::to_value(evenness).ok()).as_ref()
    {
        body.remove("evenness");
    }
}

/// The body as its own type, when it already is one.
fn typed<T: DeserializeOwned>(body: &Map<String, Value>) -> Option<T> {
    let mut fields = body.clone();
    fields.remove("kind");
    serde_json::from_value(Value::Object(fields)).ok()
}
