//! From what is wrong with a plan to the input it came from.

use localization::Locale;
use slab_plan::{PlanError, Remedy, Suspect};

use super::read::{Sources, Wrong};
use super::way::{CUT, LEG, PART, ROOM, Telling, in_row};

/// Walls that are pointed at, at most: with more, the person had better tape all of them again.
const MAX_SUSPECTS: usize = 3;

/// What is wrong, by field: the mistake itself, then the walls that could explain it.
pub(super) fn blame(error: &PlanError, from: &Sources, locale: Locale) -> Wrong {
    let shown = renumbered(error, from);
    let said = locale.plan_error(&shown);
    if from.way == Telling::Text {
        // The plan's own paths name the place best where it is typed as it is kept.
        return vec![("json".to_owned(), format!("{}: {said}", error.path()))];
    }
    if let Some(said) = super::kept::unfit(error.path(), &said, locale) {
        return vec![(super::kept::LEAVE_OUT.to_owned(), said)];
    }
    let mut wrong = vec![(field(error.path(), from), said)];
    let said = suspects(&shown).iter().map(|suspect| {
        let args = [("suspect", locale.suspect(suspect).into())];
        locale.message("draw-suspect", &args)
    });
    wrong.extend(suspects(error).iter().map(|suspect| suspected(suspect, from)).zip(said).take(MAX_SUSPECTS));
    wrong
}

fn suspects(error: &PlanError) -> &[Suspect] {
    match error {
        PlanError::WalkOpen { suspects, .. } | PlanError::TurnsOpen { suspects, .. } => suspects,
        _ => &[],
    }
}

/// Walls are told by their number on the page, where rows may lie empty between them.
fn renumbered(error: &PlanError, from: &Sources) -> PlanError {
    let after_last = from.legs.last().map_or(1, |row| row + 2);
    let shown = |leg: usize| from.legs.get(leg.wrapping_sub(1)).map_or(after_last, |row| row + 1);
    let mut error = error.clone();
    match &mut error {
        PlanError::WalkOpen { suspects, .. } | PlanError::TurnsOpen { suspects, .. } => {
            suspects.iter_mut().for_each(|suspect| suspect.leg = shown(suspect.leg));
        }
        PlanError::MissingTurn { leg, .. } if from.way == Telling::Walk => *leg = shown(*leg),
        PlanError::Crossing { first, second, .. } if from.way == Telling::Walk => {
            (*first, *second) = (shown(*first), shown(*second));
        }
        _ => {}
    }
    error
}

fn suspected(suspect: &Suspect, from: &Sources) -> String {
    match (suspect.remedy, from.legs.get(suspect.leg.wrapping_sub(1))) {
        (Remedy::Length(_), Some(row)) => in_row(LEG[2], *row),
        (Remedy::Turn(_) | Remedy::Inside(_), Some(row)) => in_row(LEG[0], *row),
        (_, None) => "closing_side".to_owned(),
    }
}

/// The number that a path has after this name: 2 in `zones[2].shape`.
pub(super) fn number(path: &str, name: &str) -> Option<usize> {
    let (_, rest) = path.split_once(&format!("{name}["))?;
    rest.split(']').next()?.parse().ok()
}

/// The input of a rectangle's row that a path ends in; `usual` when it speaks of the whole of it.
fn side<'n>(path: &str, [x, y, width, depth]: [&'n str; 4], usual: &'n str) -> &'n str {
    if path.ends_with(".width") {
        width
    } else if path.ends_with(".depth") {
        depth
    } else if path.contains(".corner.[0]") || path.contains(".corner[0]") {
        x
    } else if path.contains(".corner") {
        y
    } else {
        usual
    }
}

/// The field of the page that a path of the plan came from.
pub(super) fn field(path: &str, from: &Sources) -> String {
    let [room_name, x, y, width, depth] = ROOM;
    let room = |row: usize, usual: &'static str| in_row(side(path, [x, y, width, depth], usual), row);
    if let Some(row) = number(path, "cut_outs").and_then(|i| from.cuts.get(i)) {
        return in_row(side(path, CUT, CUT[0]), *row);
    }
    if path.starts_with("cut_outs") {
        return "cuts".to_owned();
    }
    if let Some(rows) = number(path, "zones").and_then(|i| from.zones.get(i)) {
        let row = number(path, "rectangles").and_then(|j| rows.get(j)).or_else(|| rows.first());
        return match (row, from.way) {
            (None, _) => "rest_name".to_owned(),
            (Some(row), Telling::Area) if path.ends_with(".name") => in_row(PART[0], *row),
            (Some(row), Telling::Area) => in_row(PART[1], *row),
            (Some(row), _) => room(*row, room_name),
        };
    }
    if let Some(row) = number(path, "legs").and_then(|i| from.legs.get(i)) {
        return in_row(if path.ends_with(".turn") { LEG[0] } else { LEG[2] }, *row);
    }
    if let Some(row) = number(path, "rectangles").and_then(|i| from.outline.get(i)) {
        return room(*row, room_name);
    }
    match from.way {
        Telling::Walk if path.contains("start[0]") => "start_x",
        Telling::Walk if path.contains("start[1]") => "start_y",
        Telling::Walk if path.starts_with("outline") => "legs",
        Telling::Rooms | Telling::Walk => "rooms",
        Telling::Area if path.starts_with("zones") => "parts",
        Telling::Area => "area",
        Telling::Text => "json",
    }
    .to_owned()
}
