//! An entry of the diary as JSON.

use serde_json::{Value, json};
use slab_diary::Entry;
use slab_diary::Slab;

/// The entry's own form, with the entry that stands in its place if it was corrected.
pub(crate) fn entry(entry: &Entry, slab: &Slab<'_>) -> Value {
    // Its own text is JSON by construction.
    let mut value: Value = serde_json::from_str(&entry.to_json()).unwrap_or(Value::Null);
    if let Value::Object(fields) = &mut value {
        fields.insert("corrected_by".to_owned(), json!(slab.corrected_by(entry.id).map(|id| id.to_string())));
    }
    value
}
