//! The ways of telling a plan, and the rows that each is told in.

use form_schema::FormData;
use localization::Locale;

/// A way of telling a plan.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Telling {
    /// Room by room, each a rectangle.
    Rooms,
    /// A walk along the walls, turn and taped length.
    Walk,
    /// Only areas, for a bid.
    Area,
    /// The plan as the diary keeps it, for shapes that no form tells.
    Text,
}

impl Telling {
    pub(super) const ALL: [Self; 4] = [Self::Rooms, Self::Walk, Self::Area, Self::Text];

    /// Its name in addresses.
    pub(super) const fn name(self) -> &'static str {
        match self {
            Self::Rooms => "rooms",
            Self::Walk => "walk",
            Self::Area => "area",
            Self::Text => "text",
        }
    }

    pub(super) fn named(name: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|way| way.name() == name)
    }

    pub(super) fn label(self, locale: Locale) -> String {
        match self {
            Self::Rooms => locale.message("draw-by-rooms", &[]),
            Self::Walk => locale.message("draw-by-walk", &[]),
            Self::Area => locale.message("draw-by-area", &[]),
            Self::Text => locale.message("draw-by-text", &[]),
        }
    }

    /// What it is for, and how it is done.
    pub(super) fn what(self, locale: Locale) -> String {
        match self {
            Self::Rooms => locale.message("draw-by-rooms-what", &[]),
            Self::Walk => locale.message("draw-by-walk-what", &[]),
            Self::Area => locale.message("draw-by-area-what", &[]),
            Self::Text => locale.message("draw-by-text-what", &[]),
        }
    }
}

/// Inputs of one room; in the page each name ends in `[]`.
pub(super) const ROOM: [&str; 5] = ["room_name", "room_x", "room_y", "room_width", "room_depth"];
/// Inputs of one cut-out.
pub(super) const CUT: [&str; 4] = ["cut_x", "cut_y", "cut_width", "cut_depth"];
/// Inputs of one wall.
pub(super) const LEG: [&str; 3] = ["turn", "angle", "length"];
/// Inputs of one part of which only the area is known.
pub(super) const PART: [&str; 2] = ["part_name", "part_area"];

/// The field of an input in one row, counted from 0 as they stand on the page.
pub(super) fn in_row(name: &str, row: usize) -> String {
    format!("{name}[{row}]")
}

/// Input and row of such a field.
pub(super) fn row_of(field: &str) -> Option<(&str, usize)> {
    let (name, row) = field.strip_suffix(']')?.split_once('[')?;
    Some((name, row.parse().ok()?))
}

/// Every row with its place on the page, those left empty too.
pub(super) fn rows<'t, const N: usize>(typed: &'t FormData, names: &[&str; N]) -> Vec<(usize, [&'t str; N])> {
    let columns = names.map(|name| typed.get(&format!("{name}[]")));
    let count = columns.iter().map(|column| column.len()).max().unwrap_or(0);
    (0..count).map(|row| (row, columns.map(|column| column.get(row).map_or("", |text| text.trim())))).collect()
}

/// The rows in which something was typed.
pub(super) fn filled_rows<'t, const N: usize>(typed: &'t FormData, names: &[&str; N]) -> Vec<(usize, [&'t str; N])> {
    rows(typed, names).into_iter().filter(|(_, cells)| cells.iter().any(|cell| !cell.is_empty())).collect()
}
