//! What is wrong with a drawing file, in sentences, and the field it belongs to.

use drawings::{DrawingError, Spot, Units};
use units::Length;
use words::{Arg, Voice};

/// Longest name of a layer or block that is shown.
const LONGEST_NAME: usize = 80;

/// A name out of a file: one line of moderate length.
pub(super) fn short(name: &str) -> String {
    let mut shown: String = name.chars().filter(|c| !c.is_control()).take(LONGEST_NAME).collect();
    if name.chars().count() > LONGEST_NAME {
        shown.push('…');
    }
    shown
}

/// A place in the drawing's own numbers.
pub(super) fn spot(at: Spot, voice: Voice) -> String {
    format!("({}; {})", voice.number(at.x, 3), voice.number(at.y, 3))
}

/// A distance in the drawing: as a length when the unit is known, else in its own numbers.
pub(super) fn width(size: f64, one: Option<Length>, voice: Voice) -> String {
    match one {
        Some(one) => voice.length(one * size),
        None => voice.say("dxf-own-units", &[("size", voice.number(size, 3).into())]),
    }
}

pub(super) fn unit(units: Units, voice: Voice) -> String {
    match units {
        Units::NotTold => voice.say("dxf-unit-none", &[]),
        Units::Millimeters => voice.say("dxf-unit-mm", &[]),
        Units::Centimeters => voice.say("dxf-unit-cm", &[]),
        Units::Decimeters => voice.say("dxf-unit-dm", &[]),
        Units::Meters => voice.say("dxf-unit-m", &[]),
        Units::Inches => voice.say("dxf-unit-in", &[]),
        Units::Feet => voice.say("dxf-unit-ft", &[]),
        Units::Yards => voice.say("dxf-unit-yd", &[]),
        Units::SurveyFeet => voice.say("dxf-unit-survey", &[]),
    }
}

/// The layer that an error is about.
pub(super) fn layer_of(error: &DrawingError) -> Option<&str> {
    match error {
        DrawingError::NothingClosed { layer }
        | DrawingError::Open { layer, .. }
        | DrawingError::Branching { layer, .. }
        | DrawingError::Apart { layer, .. }
        | DrawingError::Outside { layer, .. } => Some(layer),
        _ => None,
    }
}

/// What was due at a line; what the reader of files calls it in English has a name in both languages.
fn expected(text: &str, voice: Voice) -> String {
    match text {
        "SECTION or EOF" => voice.say("dxf-expected-section", &[]),
        "a group code, a whole number" => voice.say("dxf-expected-code", &[]),
        "an entity (code 0)" => voice.say("dxf-expected-entity", &[]),
        "blocks that begin and end" => voice.say("dxf-expected-blocks", &[]),
        "a number" => voice.say("dxf-expected-number", &[]),
        "a number up to 10^12" => voice.say("dxf-expected-small", &[]),
        _ => voice.say("dxf-expected-whole", &[]),
    }
}

fn too_large(what: &str, most: usize, voice: Voice) -> String {
    let args = [("most", Arg::Number(most as f64))];
    match what {
        "bytes" => voice.say("dxf-wrong-bytes", &[]),
        "closed lines on a layer" => voice.say("dxf-wrong-loops", &args),
        "corners of a closed line" | "corners on a layer" => voice.say("dxf-wrong-corners", &args),
        _ => voice.say("dxf-wrong-much", &args),
    }
}

/// What is wrong, where, and what would be accepted.
pub(super) fn drawing_error(error: &DrawingError, voice: Voice) -> String {
    let name = |name: &str| ("layer", Arg::from(short(name)));
    let count = |count: usize| ("count", Arg::Number(count as f64));
    let at = |at: Spot| ("at", Arg::from(spot(at, voice)));
    match error {
        DrawingError::NotText { .. } => voice.say("dxf-wrong-not-text", &[]),
        DrawingError::TooLarge { what, most } => too_large(what, *most, voice),
        DrawingError::Malformed { line, found, expected: due } => {
            let args = [("line", line.to_string().into()), ("found", short(found).into())];
            let due = ("expected", expected(due, voice).into());
            voice.say("dxf-wrong-malformed", &args.into_iter().chain([due]).collect::<Vec<_>>())
        }
        DrawingError::CutShort { .. } => voice.say("dxf-wrong-cut-short", &[]),
        DrawingError::Refused { problem } => voice.say("dxf-wrong-refused", &[("problem", short(problem).into())]),
        DrawingError::Nested { name, depth } => {
            let args = [("block", short(name).into()), ("depth", Arg::Number(*depth as f64))];
            voice.say("dxf-wrong-nested", &args)
        }
        DrawingError::UnitsNotTold => voice.say("dxf-wrong-unit", &[]),
        DrawingError::UnknownLayer { name: unknown, .. } => voice.say("dxf-wrong-layer", &[name(unknown)]),
        DrawingError::NothingClosed { layer } => voice.say("dxf-wrong-nothing-closed", &[name(layer)]),
        DrawingError::Open { layer, from, to, gap, length } => {
            let one = (*length > Length::ZERO).then(|| *length / *gap);
            let ends = [("from", spot(*from, voice).into()), ("to", spot(*to, voice).into())];
            let gap = ("gap", width(*gap, one, voice).into());
            voice.say("dxf-wrong-open", &ends.into_iter().chain([name(layer), gap]).collect::<Vec<_>>())
        }
        DrawingError::Branching { layer, at: place, count: lines } => {
            voice.say("dxf-wrong-branching", &[name(layer), at(*place), count(*lines)])
        }
        DrawingError::Apart { layer, count: lines, at: place } => {
            voice.say("dxf-wrong-apart", &[name(layer), at(*place), count(*lines)])
        }
        DrawingError::Outside { layer, at: place } => voice.say("dxf-wrong-outside", &[name(layer), at(*place)]),
        DrawingError::TooWide { across, .. } => {
            voice.say("dxf-wrong-wide", &[("across", voice.length(*across).into())])
        }
    }
}
