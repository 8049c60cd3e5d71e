//! `field=value` arguments to the JSON of a body.

use serde_json::{Map, Value, json};
use slab_diary::body::{Body, BodyError};
use slab_diary::{EntryId, SlabId};

use crate::cli::PlaceArgs;
use crate::failure::Failure;

/// The body of a kind from its fields. Values are texts; where the kind wants a number, a yes or no
/// or a list, the same text is taken as JSON.
pub(crate) fn body(slab: SlabId, kind: &str, base: Map<String, Value>, fields: &[String]) -> Result<Value, Failure> {
    let mut object = base;
    object.insert("kind".to_owned(), json!(kind));
    let mut given = Vec::new();
    for field in fields {
        let Some((name, value)) = field.split_once('=') else {
            return Err(Failure::Use(format!("\"{field}\": accepted: field=value, such as soaked_in=\"45 s\"")));
        };
        let name = name.trim().replace('-', "_");
        let value = match value.strip_prefix('#') {
            Some(label) if name == "of" && !label.is_empty() => EntryId::of_label(slab, label).to_string(),
            _ => value.to_owned(),
        };
        object.insert(name.clone(), json!(value));
        given.push(name);
    }
    // Each refusal names the field; turn that one from text to JSON once and read again.
    let mut turned: Vec<String> = Vec::new();
    loop {
        let value = Value::Object(object.clone());
        let raw = serde_json::value::to_raw_value(&value).map_err(Failure::data)?;
        let Err(error) = Body::read(&raw, slab_diary::SCHEMA) else { return Ok(value) };
        let BodyError::Field { field, .. } = &error else { return Err(Failure::Use(error.to_string())) };
        let root = field.split(['.', '[']).next().unwrap_or_default().to_owned();
        let as_json = given.contains(&root)
            && !turned.contains(&root)
            && object
                .get(&root)
                .and_then(Value::as_str)
                .and_then(|text| serde_json::from_str::<Value>(text).ok())
                .map(|value| object.insert(root.clone(), value))
                .is_some();
        if !as_json {
            return Err(Failure::Data(error.to_string()));
        }
        turned.push(root);
    }
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
