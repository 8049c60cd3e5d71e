//! The place of an entry: a zone, a point, a patch.

use form_schema::{FieldError, FieldErrorKind, FormData, QuantityInput};
use serde_json::{Map, Value, json};
use units::{AsWritten, UnitSystem};

use crate::Place;
use crate::body::{OFFSET, PlaceInput, RADIUS};

/// The inputs of a place: what kind it is; the zone; a point and how far around it; the corners of a
/// patch, repeated.
pub const PLACE_INPUTS: &[&str] = &["place_kind", "zone", "x", "y", "radius", "corner_x", "corner_y"];

/// Kinds of place, the values of `place_kind`. The last two are not asked for, but an old entry may
/// have them.
pub const PLACE_KINDS: &[&str] = &["slab", "zone", "point", "zone_point", "patch"];

impl PlaceInput {
    /// Whether a point may be given.
    #[must_use]
    pub const fn points(self) -> bool {
        matches!(self, Self::Point | Self::Spot)
    }

    /// The values of `place_kind` to offer.
    #[must_use]
    pub fn kinds(self) -> &'static [&'static str] {
        match self {
            Self::None => &[],
            Self::Zone => &PLACE_KINDS[..2],
            Self::Point | Self::Spot => &PLACE_KINDS[..3],
        }
    }
}

/// Reads the place; `None` is the whole slab. An empty `place_kind` is a point when `x` or `y` was
/// typed, a zone when one was, else the whole slab.
///
/// # Errors
/// Every mistake at once, each with its input. Whether the plan has the zone is for the diary to say.
pub fn read_place(typed: &FormData, unit_system: UnitSystem) -> Result<Option<Value>, Vec<FieldError>> {
    let mut reader = Reader { typed, unit_system, place: Map::new(), errors: Vec::new() };
    match typed.answer("place_kind").unwrap_or_else(|| guessed(typed)) {
        "slab" => return Ok(None),
        "zone" => reader.zone(),
        "point" => reader.point(),
        "zone_point" => {
            reader.zone();
            reader.point();
        }
        "patch" => {
            if typed.answer("zone").is_some() {
                reader.zone();
            }
            reader.patch();
        }
        other => reader.errors.push(FieldError::new("place_kind", FieldErrorKind::NotAChoice(PLACE_KINDS), other)),
    }
    if reader.errors.is_empty() { Ok(Some(Value::Object(reader.place))) } else { Err(reader.errors) }
}

fn guessed(typed: &FormData) -> &'static str {
    if typed.answer("x").is_some() || typed.answer("y").is_some() {
        "point"
    } else if typed.answer("zone").is_some() {
        "zone"
    } else {
        "slab"
    }
}

struct Reader<'a> {
    typed: &'a FormData,
    unit_system: UnitSystem,
    place: Map<String, Value>,
    errors: Vec<FieldError>,
}

impl Reader<'_> {
    fn zone(&mut self) {
        match self.typed.answer("zone") {
            Some(zone) => drop(self.place.insert("zone".to_owned(), json!(zone))),
            None => self.errors.push(FieldError::new("zone", FieldErrorKind::Missing, "")),
        }
    }

    fn offset(&mut self, input: &str, text: Option<&str>) -> Option<String> {
        let read = match text {
            Some(text) => quantity(OFFSET, text, self.unit_system),
            None => Err(FieldErrorKind::Missing),
        };
        read.map_err(|what| self.errors.push(FieldError::new(input, what, text.unwrap_or_default()))).ok()
    }

    fn point(&mut self) {
        let x = self.offset("x", self.typed.answer("x"));
        let y = self.offset("y", self.typed.answer("y"));
        if let (Some(x), Some(y)) = (x, y) {
            self.place.insert("point".to_owned(), json!([x, y]));
        }
        if let Some(radius) = self.typed.answer("radius") {
            match quantity(RADIUS, radius, self.unit_system) {
                Ok(radius) => drop(self.place.insert("radius".to_owned(), json!(radius))),
                Err(what) => self.errors.push(FieldError::new("radius", what, radius)),
            }
        }
    }

    fn patch(&mut self) {
        let (xs, ys) = (self.typed.get("corner_x"), self.typed.get("corner_y"));
        if xs.len() != ys.len() || xs.len() < 3 {
            return self.errors.push(FieldError::new("corner_x", FieldErrorKind::NoPatch, ""));
        }
        let mut corners = Vec::new();
        for (x, y) in xs.iter().zip(ys) {
            let corner = (self.offset("corner_x", Some(x)), self.offset("corner_y", Some(y)));
            if let (Some(x), Some(y)) = corner {
                corners.push(json!([x, y]));
            }
        }
        self.place.insert("polygon".to_owned(), Value::Array(corners));
    }
}

/// The inputs as an old place fills them.
pub fn fill_place(place: Option<&Place>, typed: &mut FormData) {
    let Some(place) = place else { return typed.set("place_kind", "slab") };
    let kind = match (&place.zone, &place.point, &place.polygon) {
        (_, _, Some(_)) => "patch",
        (Some(_), Some(_), None) => "zone_point",
        (None, Some(_), None) => "point",
        (_, None, None) => "zone",
    };
    typed.set("place_kind", kind);
    if let Some(zone) = &place.zone {
        typed.set("zone", zone);
    }
    if let Some([x, y]) = &place.point {
        typed.set("x", x.text());
        typed.set("y", y.text());
    }
    if let Some(radius) = &place.radius {
        typed.set("radius", AsWritten::text(radius));
    }
    for [x, y] in place.polygon.iter().flatten() {
        typed.push("corner_x", x.text());
        typed.push("corner_y", y.text());
    }
}

fn quantity(asked: QuantityInput, text: &str, unit_system: UnitSystem) -> Result<String, FieldErrorKind> {
    asked.read(text, Some(unit_system)).map_err(|problem| FieldErrorKind::Quantity { asked, problem })
}
