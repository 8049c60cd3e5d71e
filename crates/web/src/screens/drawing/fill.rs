//! From a plan in the diary to the form that tells it again.

use form_schema::FormData;
use slab_plan::{Offset, PlanSpec, RectangleSpec, ShapeSpec, Turn, WalkSpec};
use units::AsWritten;

use super::way::{CUT, PART, ROOM, Telling};

/// The way in which this plan can be told, with everything it says.
pub(super) fn fill(spec: &PlanSpec) -> (Telling, FormData) {
    let as_text = || {
        let json = serde_json::to_string_pretty(spec).unwrap_or_default();
        (Telling::Text, [("json", json)].into_iter().collect())
    };
    let (way, typed) = match &spec.outline {
        ShapeSpec::Rectangles(outline) => (Telling::Rooms, rooms(spec, outline)),
        ShapeSpec::Walk(walk) => (Telling::Walk, walked(spec, walk)),
        ShapeSpec::Area(area) => (Telling::Area, areas(spec, area.text())),
        ShapeSpec::Polygon(_) => (Telling::Text, None),
    };
    typed.map_or_else(as_text, |typed| (way, typed))
}

/// A plan as text, whatever shapes it has.
pub(super) fn text(spec: &PlanSpec) -> FormData {
    [("json", serde_json::to_string_pretty(spec).unwrap_or_default())].into_iter().collect()
}

fn push_rectangle(typed: &mut FormData, names: [&str; 4], rectangle: &RectangleSpec) {
    let [x, y] = &rectangle.corner;
    let texts = [x.text(), y.text(), rectangle.width.text(), rectangle.depth.text()];
    for (name, text) in names.into_iter().zip(texts) {
        typed.push(format!("{name}[]"), text);
    }
}

fn push_room(typed: &mut FormData, name: &str, rectangle: &RectangleSpec) {
    let [called, sides @ ..] = ROOM;
    typed.push(format!("{called}[]"), name);
    push_rectangle(typed, sides, rectangle);
}

/// Cut-outs, zones of rectangles, the rest and north; nothing when some shape is of another kind.
fn drawn(spec: &PlanSpec, typed: &mut FormData) -> Option<()> {
    for cut in &spec.cut_outs {
        let ShapeSpec::Rectangles(rectangles) = cut else { return None };
        rectangles.iter().for_each(|r| push_rectangle(typed, CUT, r));
    }
    for zone in &spec.zones {
        match &zone.shape {
            Some(ShapeSpec::Rectangles(rectangles)) => {
                rectangles.iter().for_each(|r| push_room(typed, &zone.name, r));
            }
            None => typed.set("rest_name", &zone.name),
            Some(_) => return None,
        }
    }
    if let Some(north) = &spec.north {
        typed.set("north", north.text());
    }
    Some(())
}

fn rooms(spec: &PlanSpec, outline: &[RectangleSpec]) -> Option<FormData> {
    let mut typed = FormData::new();
    drawn(spec, &mut typed)?;
    let named: Vec<&RectangleSpec> = spec
        .zones
        .iter()
        .filter_map(|zone| match &zone.shape {
            Some(ShapeSpec::Rectangles(rectangles)) => Some(rectangles),
            _ => None,
        })
        .flatten()
        .collect();
    let nameless: Vec<&RectangleSpec> = outline.iter().filter(|r| !named.contains(r)).collect();
    // Ground in no zone can't be told room by room.
    if !nameless.is_empty() && !named.is_empty() && typed.first("rest_name").is_none() {
        return None;
    }
    nameless.into_iter().for_each(|r| push_room(&mut typed, "", r));
    Some(typed)
}

fn walked(spec: &PlanSpec, walk: &WalkSpec) -> Option<FormData> {
    let mut typed = FormData::new();
    drawn(spec, &mut typed)?;
    for (name, at) in ["start_x", "start_y"].into_iter().zip(&walk.start) {
        // Left empty it is 0 again.
        if at.value() != Offset::ZERO {
            typed.set(name, at.text());
        }
    }
    for leg in &walk.legs {
        let (side, angle) = leg.turn.as_ref().map_or_else(Default::default, side_and_angle);
        typed.push("turn[]", side);
        typed.push("angle[]", angle);
        typed.push("length[]", leg.length.text());
    }
    if let Some(closing) = &walk.closing_turn {
        let (side, angle) = side_and_angle(closing);
        typed.set("closing_side", side);
        typed.set("closing_angle", angle);
    }
    if let Some(limit) = &walk.limit {
        typed.set("limit", limit.text());
    }
    Some(typed)
}

/// The side of a turn, and its angle as it was written.
pub(super) fn side_and_angle(turn: &AsWritten<Turn>) -> (String, String) {
    let degrees = turn.value().as_right_degrees();
    if degrees == 0.0 {
        return ("straight".to_owned(), String::new());
    }
    let side = if degrees < 0.0 { "left" } else { "right" };
    let folded = turn.text().to_lowercase();
    let word_end = folded.find(|c: char| !c.is_alphabetic()).unwrap_or(folded.len());
    let written = match folded.rsplit_once(' ') {
        Some((angle, _)) if word_end == 0 => angle,
        _ => &folded[word_end..],
    };
    let same = |angle: &str| {
        AsWritten::<Turn>::read(&format!("{side} {angle}")).is_ok_and(|read| read.value() == turn.value())
    };
    let angle = written.trim();
    let angle = if same(angle) { angle.to_owned() } else { degrees.abs().to_string() };
    (side.to_owned(), angle)
}

fn areas(spec: &PlanSpec, area: &str) -> Option<FormData> {
    let mut typed: FormData = [("area", area)].into_iter().collect();
    if !spec.cut_outs.is_empty() || spec.north.is_some() {
        return None;
    }
    for zone in &spec.zones {
        match &zone.shape {
            Some(ShapeSpec::Area(area)) => {
                typed.push(format!("{}[]", PART[0]), &zone.name);
                typed.push(format!("{}[]", PART[1]), area.text());
            }
            None => typed.set("rest_name", &zone.name),
            Some(_) => return None,
        }
    }
    Some(typed)
}
