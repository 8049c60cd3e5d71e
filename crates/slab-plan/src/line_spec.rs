//! Joints and score lines as they are typed and kept in the diary.

use serde::{Deserialize, Serialize};
use units::{AsWritten, Length};

use super::{Turn, WrittenPoint};

/// One joint of the slab: a line from point to point.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct JointSpec {
    /// Its points in order, two or more.
    pub line: Vec<WrittenPoint>,
    /// How it was made, where that is known.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub kind: Option<JointKind>,
    /// The zone that it is limited to; the whole slab without one.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub zone: Option<String>,
}

/// How a joint was made.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum JointKind {
    /// Sawn after the pour so that the slab cracks there.
    SawCut,
    /// Where one pour ended and the next began.
    Construction,
    /// Filled with soft board, so that the slab moves free of a wall or a column.
    Isolation,
}

impl JointKind {
    /// Every kind.
    pub const ALL: [Self; 3] = [Self::SawCut, Self::Construction, Self::Isolation];

    /// The word of the diary.
    #[must_use]
    pub const fn code(self) -> &'static str {
        match self {
            Self::SawCut => "saw_cut",
            Self::Construction => "construction",
            Self::Isolation => "isolation",
        }
    }
}

/// Score lines, cut or drawn into the surface for looks, by the pattern they make.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "lowercase", deny_unknown_fields)]
pub enum ScoreSpec {
    /// Two families of parallel lines at right angles.
    Grid(GridSpec),
    /// Two families at 45 degrees to the plan's axes.
    Diagonal(DiagonalSpec),
    /// A line along the outline and around the cut-outs.
    Border(BorderSpec),
    /// Lines from point to point.
    Lines(FreeSpec),
}

/// A grid of score lines.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct GridSpec {
    /// From line to line to the right, above zero.
    pub spacing_x: AsWritten<Length>,
    /// From line to line upward, above zero.
    pub spacing_y: AsWritten<Length>,
    /// A point where two lines cross; the lower left corner of the slab or zone without one.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub origin: Option<WrittenPoint>,
    /// How far the grid is turned about its origin.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub turn: Option<AsWritten<Turn>>,
    /// The zone that it is limited to; the whole slab without one.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub zone: Option<String>,
}

/// Score lines at 45 degrees both ways, making squares that stand on a corner.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct DiagonalSpec {
    /// The side of a square, which is the distance between neighboring lines; above zero.
    pub spacing: AsWritten<Length>,
    /// A point where two lines cross; the lower left corner of the slab or zone without one.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub origin: Option<WrittenPoint>,
    /// The zone that it is limited to; the whole slab without one.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub zone: Option<String>,
}

/// A line at a constant distance inside every edge.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct BorderSpec {
    /// The distance from the edges, above zero.
    pub inset: AsWritten<Length>,
    /// The zone that it is limited to; the whole slab without one.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub zone: Option<String>,
}

/// Score lines from point to point.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct FreeSpec {
    /// The lines, each of two points or more.
    pub lines: Vec<Vec<WrittenPoint>>,
    /// The zone that they are limited to; the whole slab without one.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub zone: Option<String>,
}

impl ScoreSpec {
    /// The word of the diary for the kind of pattern.
    #[must_use]
    pub const fn code(&self) -> &'static str {
        match self {
            Self::Grid(_) => "grid",
            Self::Diagonal(_) => "diagonal",
            Self::Border(_) => "border",
            Self::Lines(_) => "lines",
        }
    }

    /// The zone that it is limited to, as typed.
    #[must_use]
    pub fn zone(&self) -> Option<&str> {
        match self {
            Self::Grid(grid) => grid.zone.as_deref(),
            Self::Diagonal(diagonal) => diagonal.zone.as_deref(),
            Self::Border(border) => border.zone.as_deref(),
            Self::Lines(free) => free.zone.as_deref(),
        }
    }
}
