//! Findings about joints, and layouts that cannot be made, in sentences.

use slab::layout::{Finding, FindingCode, LayoutError};
use slab::plan::Turn;
use slab::trade::Trade;
use units::{Area, Length};
use words::{Arg, Voice};

/// A finding as the page tells it.
#[derive(Debug, Clone)]
pub(super) struct FindingSaid {
    pub(super) said: String,
    pub(super) grade: String,
    /// Id and statement of each fact it rests on; the statements are English.
    pub(super) facts: Vec<(&'static str, String)>,
}

fn degrees(turn: Turn, voice: Voice) -> String {
    format!("{}°", voice.number(turn.as_right_degrees().abs(), 0))
}

/// What speaks against a layout, with what says so.
pub(super) fn finding(finding: &Finding, voice: Voice) -> FindingSaid {
    let at = finding.at;
    let mut args: Vec<(&str, Arg<'_>)> =
        [("x", at.x), ("y", at.y)].map(|(name, far)| (name, voice.length(Length::from(far)).into())).into();
    let mut told = |name, text: String| args.push((name, text.into()));
    let key = match finding.code {
        FindingCode::PanelTooLong { side, limit } => {
            told("side", voice.length(side));
            told("limit", voice.length(limit));
            "lines-finding-long"
        }
        FindingCode::AspectTooLarge { aspect, limit } => {
            told("aspect", voice.number(aspect, 2));
            told("limit", voice.number(limit, 2));
            "lines-finding-aspect"
        }
        FindingCode::TaperingPanel { angle, limit } => {
            told("angle", degrees(angle, voice));
            told("limit", degrees(limit, voice));
            "lines-finding-tapering"
        }
        FindingCode::CornerWithoutJoint => "lines-finding-corner",
        FindingCode::ColumnWithoutJoint => "lines-finding-column",
        FindingCode::JointStopsShort => "lines-finding-short",
    };
    let trade = Trade::built_in();
    let fact = |id: &&'static str| Some((*id, trade.fact(id)?.statement.clone()));
    FindingSaid {
        said: voice.say(key, &args),
        grade: voice.grade(finding.grade),
        facts: finding.facts.iter().filter_map(fact).collect(),
    }
}

/// Why a layout cannot be made.
pub(super) fn layout_error(error: &LayoutError, voice: Voice) -> String {
    let count = |n: usize| Arg::Number(n as f64);
    match error {
        LayoutError::NotDrawn | LayoutError::NoPattern { .. } => voice.say("lines-not-drawn", &[]),
        LayoutError::TooMany { most } => voice.say("lines-wrong-crossings", &[("most", count(*most))]),
        LayoutError::TooManySections { count: given, most } => {
            voice.say("lines-wrong-sections", &[("count", count(*given)), ("most", count(*most))])
        }
        LayoutError::TooManyCuts { count: given, most } => {
            voice.say("lines-wrong-cuts", &[("count", count(*given)), ("most", count(*most))])
        }
        LayoutError::TooFine { .. } => voice.say("lines-wrong-fine", &[]),
        LayoutError::OutOfRange { .. } => voice.say("lines-wrong-wish", &[("zero", voice.area(Area::ZERO).into())]),
        LayoutError::Rule(_) => voice.say("lines-wrong-thickness", &[]),
    }
}
