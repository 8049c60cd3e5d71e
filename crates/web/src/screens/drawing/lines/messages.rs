//! Findings about joints, and layouts that cannot be made, in sentences.

use localization::{Arg, Locale};
use slab_plan::Turn;
use slab_plan::layout::{Finding, FindingCode, LayoutError};
use trade_facts::Trade;
use units::{Area, Length};

/// A finding as the page tells it.
#[derive(Debug, Clone)]
pub(super) struct FindingSaid {
    pub(super) said: String,
    pub(super) grade: String,
    /// Id and statement of each fact it rests on; the statements are English.
    pub(super) facts: Vec<(&'static str, String)>,
}

fn degrees(turn: Turn, locale: Locale) -> String {
    format!("{}°", locale.number(turn.as_right_degrees().abs(), 0))
}

/// What speaks against a layout, with what says so.
pub(super) fn finding(finding: &Finding, locale: Locale) -> FindingSaid {
    let at = finding.at;
    let mut args: Vec<(&str, Arg<'_>)> =
        [("x", at.x), ("y", at.y)].map(|(name, far)| (name, locale.length(Length::from(far)).into())).into();
    let mut told = |name, text: String| args.push((name, text.into()));
    let key = match finding.code {
        FindingCode::PanelTooLong { side, limit } => {
            told("side", locale.length(side));
            told("limit", locale.length(limit));
            "lines-finding-long"
        }
        FindingCode::AspectTooLarge { aspect, limit } => {
            told("aspect", locale.number(aspect, 2));
            told("limit", locale.number(limit, 2));
            "lines-finding-aspect"
        }
        FindingCode::TaperingPanel { angle, limit } => {
            told("angle", degrees(angle, locale));
            told("limit", degrees(limit, locale));
            "lines-finding-tapering"
        }
        FindingCode::CornerWithoutJoint => "lines-finding-corner",
        FindingCode::ColumnWithoutJoint => "lines-finding-column",
        FindingCode::JointStopsShort => "lines-finding-short",
    };
    let trade = Trade::built_in();
    let fact = |id: &&'static str| Some((*id, trade.fact(id)?.statement.clone()));
    FindingSaid {
        said: locale.message(key, &args),
        grade: locale.grade(finding.grade),
        facts: finding.facts.iter().filter_map(fact).collect(),
    }
}

/// Why a layout cannot be made.
pub(super) fn layout_error(error: &LayoutError, locale: Locale) -> String {
    let count = |n: usize| Arg::Number(n as f64);
    match error {
        LayoutError::NotDrawn | LayoutError::NoPattern { .. } => locale.message("lines-not-drawn", &[]),
        LayoutError::TooMany { most } => locale.message("lines-wrong-crossings", &[("most", count(*most))]),
        LayoutError::TooManySections { count: given, most } => {
            locale.message("lines-wrong-sections", &[("count", count(*given)), ("most", count(*most))])
        }
        LayoutError::TooManyCuts { count: given, most } => {
            locale.message("lines-wrong-cuts", &[("count", count(*given)), ("most", count(*most))])
        }
        LayoutError::TooFine { .. } => locale.message("lines-wrong-fine", &[]),
        LayoutError::OutOfRange { .. } => {
            locale.message("lines-wrong-wish", &[("zero", locale.area(Area::ZERO).into())])
        }
        LayoutError::Rule(_) | LayoutError::Fact(_) => locale.message("lines-wrong-thickness", &[]),
    }
}
