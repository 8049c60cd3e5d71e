//! `field=value` arguments to the fields of an entry, and the arguments that say where.

use localization::Locale;
use serde_json::{Map, Value, json};
use slab_diary::EntryKind;

use crate::cli::PlaceArgs;
use crate::failure::Failure;

/// The kind of a name, as it is typed on the command line.
pub(crate) fn kind_named(name: &str) -> Result<EntryKind, Failure> {
    EntryKind::named(name).ok_or_else(|| {
        let kinds: Vec<String> = EntryKind::ALL.iter().map(|kind| kind.name().replace('_', "-")).collect();
        Failure::Use(format!("kind \"{name}\" is not known; accepted: {}", kinds.join(", ")))
    })
}

/// Fields of a kind, over those that are there already.
pub(crate) fn fields(
    kind: EntryKind,
    base: Map<String, Value>,
    given: &[String],
    locale: Locale,
) -> Result<Map<String, Value>, Failure> {
    let mut fields = base;
    let mut wrong = Vec::new();
    for field in given {
        let Some((name, text)) = field.split_once('=') else {
            return Err(Failure::Use(format!("\"{field}\": accepted: field=value, such as soaked_in=\"45 s\"")));
        };
        let name = name.trim().replace('-', "_");
        if text.trim().is_empty() {
            // Nothing said: a correction takes the field out, and what is required is missed.
            fields.shift_remove(&name);
            continue;
        }
        match kind.read_text(&name, text) {
            Ok(value) => drop(fields.insert(name, value)),
            Err(error) => wrong.push(locale.field_error_line(kind, &error)),
        }
    }
    if wrong.is_empty() { Ok(fields) } else { Err(Failure::Data(wrong.join("\n  "))) }
}

/// The place of an entry.
pub(crate) fn place(args: &PlaceArgs) -> Result<Option<Value>, Failure> {
    let mut place = Map::new();
    if let Some(zone) = &args.zone {
        place.insert("zone".to_owned(), json!(zone));
    }
    if let Some(point) = &args.point {
        let Some((x, y)) = point.split_once(',') else {
            return Err(Failure::Use(format!("--point \"{point}\": accepted: X,Y such as \"12 ft,3 ft\"")));
        };
        place.insert("point".to_owned(), json!([x.trim(), y.trim()]));
    }
    if let Some(radius) = &args.radius {
        place.insert("radius".to_owned(), json!(radius));
    }
    Ok((!place.is_empty()).then_some(Value::Object(place)))
}
