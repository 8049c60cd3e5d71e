//! The schemas by name, and their answers as a diary writes them.

use form_schema::{FieldError, FormData};
use serde_json::{Map, Value, json};
use slab_diary::{Body, EntryKind, EntrySchema, Place, fill_place};
use units::UnitSystem;

/// The kinds that are asked with a form: all but those with a screen of their own.
pub(crate) fn forms() -> Vec<&'static EntrySchema> {
    EntryKind::ALL.iter().map(|kind| kind.schema()).filter(|schema| !schema.own_screen).collect()
}

pub(crate) fn form(kind: &str) -> Option<&'static EntrySchema> {
    EntryKind::named(kind).map(EntryKind::schema).filter(|schema| !schema.own_screen)
}

/// The body with its kind, as a diary writes it.
pub(crate) fn read_body(
    schema: &EntrySchema,
    typed: &FormData,
    usual: UnitSystem,
) -> Result<Map<String, Value>, Vec<FieldError>> {
    let fields = schema.kind.read(typed, usual)?;
    Ok(std::iter::once(("kind".to_owned(), json!(schema.kind.name()))).chain(fields).collect())
}

pub(crate) fn typed_from(body: &Body, place: Option<&Place>) -> FormData {
    let mut typed = body.form_data();
    fill_place(place, &mut typed);
    typed
}
