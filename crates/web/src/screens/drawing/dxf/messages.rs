//! What is wrong with a drawing file, in sentences, and the field it belongs to.

use drawings::{DrawingError, Spot, Units};
use localization::{Arg, Locale};
use units::Length;

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
pub(super) fn spot(at: Spot, locale: Locale) -> String {
    format!("({}; {})", locale.number(at.x, 3), locale.number(at.y, 3))
}

/// A distance in the drawing: as a length when the unit is known, else in its own numbers.
pub(super) fn width(size: f64, one: Option<Length>, locale: Locale) -> String {
    match one {
        Some(one) => locale.length(one * size),
        None => locale.message("dxf-own-units", &[("size", locale.number(size, 3).into())]),
    }
}

pub(super) fn unit(units: Units, locale: Locale) -> String {
    match units {
        Units::NotTold => locale.message("dxf-unit-none", &[]),
        Units::Millimeters => locale.message("dxf-unit-mm", &[]),
        Units::Centimeters => locale.message("dxf-unit-cm", &[]),
        Units::Decimeters => locale.message("dxf-unit-dm", &[]),
        Units::Meters => locale.message("dxf-unit-m", &[]),
        Units::Inches => locale.message("dxf-unit-in", &[]),
        Units::Feet => locale.message("dxf-unit-ft", &[]),
        Units::Yards => locale.message("dxf-unit-yd", &[]),
        Units::SurveyFeet => locale.message("dxf-unit-survey", &[]),
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
fn expected(text: &str, locale: Locale) -> String {
    match text {
        "SECTION or EOF" => locale.message("dxf-expected-section", &[]),
        "a group code, a whole number" => locale.message("dxf-expected-code", &[]),
        "an entity (code 0)" => locale.message("dxf-expected-entity", &[]),
        "blocks that begin and end" => locale.message("dxf-expected-blocks", &[]),
        "a number" => locale.message("dxf-expected-number", &[]),
        "a number up to 10^12" => locale.message("dxf-expected-small", &[]),
        _ => locale.message("dxf-expected-whole", &[]),
    }
}

fn too_large(what: &str, most: usize, locale: Locale) -> String {
    let args = [("most", Arg::Number(most as f64))];
    match what {
        "bytes" => locale.message("dxf-wrong-bytes", &[]),
        "closed lines on a layer" => locale.message("dxf-wrong-loops", &args),
        "corners of a closed line" | "corners on a layer" => locale.message("dxf-wrong-corners", &args),
        _ => locale.message("dxf-wrong-much", &args),
    }
}

/// What is wrong, where, and what would be accepted.
pub(super) fn drawing_error(error: &DrawingError, locale: Locale) -> String {
    let name = |name: &str| ("layer", Arg::from(short(name)));
    let count = |count: usize| ("count", Arg::Number(count as f64));
    let at = |at: Spot| ("at", Arg::from(spot(at, locale)));
    match error {
        DrawingError::NotText { .. } => locale.message("dxf-wrong-not-text", &[]),
        DrawingError::TooLarge { what, most } => too_large(what, *most, locale),
        DrawingError::Malformed { line, found, expected: due } => {
            let args = [("line", line.to_string().into()), ("found", short(found).into())];
            let due = ("expected", expected(due, locale).into());
            locale.message("dxf-wrong-malformed", &args.into_iter().chain([due]).collect::<Vec<_>>())
        }
        DrawingError::CutShort { .. } => locale.message("dxf-wrong-cut-short", &[]),
        DrawingError::Nested { name, depth } => {
            let args = [("block", short(name).into()), ("depth", Arg::Number(*depth as f64))];
            locale.message("dxf-wrong-nested", &args)
        }
        DrawingError::UnitsNotTold => locale.message("dxf-wrong-unit", &[]),
        DrawingError::UnknownLayer { name: unknown, .. } => locale.message("dxf-wrong-layer", &[name(unknown)]),
        DrawingError::NothingClosed { layer } => locale.message("dxf-wrong-nothing-closed", &[name(layer)]),
        DrawingError::Open { layer, from, to, gap, length } => {
            let one = (*length > Length::ZERO).then(|| *length / *gap);
            let ends = [("from", spot(*from, locale).into()), ("to", spot(*to, locale).into())];
            let gap = ("gap", width(*gap, one, locale).into());
            locale.message("dxf-wrong-open", &ends.into_iter().chain([name(layer), gap]).collect::<Vec<_>>())
        }
        DrawingError::Branching { layer, at: place, count: lines } => {
            locale.message("dxf-wrong-branching", &[name(layer), at(*place), count(*lines)])
        }
        DrawingError::Apart { layer, count: lines, at: place } => {
            locale.message("dxf-wrong-apart", &[name(layer), at(*place), count(*lines)])
        }
        DrawingError::Outside { layer, at: place } => locale.message("dxf-wrong-outside", &[name(layer), at(*place)]),
        DrawingError::TooWide { across, .. } => {
            locale.message("dxf-wrong-wide", &[("across", locale.length(*across).into())])
        }
    }
}
