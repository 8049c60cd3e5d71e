//! Panels between joints, and what can be said against them.

use units::{Area, Length};

use super::Section;
use crate::{Piece, Point, Turn};
use trade_facts::Grade;

/// A part of the slab between joints and edges.
#[derive(Debug, Clone, PartialEq)]
pub struct Panel {
    /// From 1, from the bottom up and left to right.
    pub id: usize,
    /// Its shape.
    pub piece: Piece,
    /// Its area.
    pub area: Area,
    /// The longer side of the smallest rectangle around it.
    pub long: Length,
    /// The shorter side of that rectangle.
    pub short: Length,
    /// The longer side over the shorter, 1 or more.
    pub aspect: f64,
}

impl From<&Section> for Panel {
    fn from(section: &Section) -> Self {
        Self {
            id: section.id,
            piece: section.piece.clone(),
            area: section.area,
            long: section.long,
            short: section.short,
            aspect: section.long / section.short,
        }
    }
}

/// What speaks against a layout of joints.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum FindingCode {
    /// A panel's side is longer than the rule's longest spacing.
    PanelTooLong {
        /// The side.
        side: Length,
        /// The longest spacing.
        limit: Length,
    },
    /// A panel is too far from square.
    AspectTooLarge {
        /// The longer side over the shorter.
        aspect: f64,
        /// The largest of the rule.
        limit: f64,
    },
    /// No joint starts at a corner that points into the slab.
    CornerWithoutJoint,
    /// No joint meets a column.
    ColumnWithoutJoint,
    /// A panel runs out in a sharp corner, which breaks off.
    TaperingPanel {
        /// The inner angle of the corner.
        angle: Turn,
        /// The sharpest that is let pass.
        limit: Turn,
    },
    /// A joint ends within a panel.
    JointStopsShort,
}

/// One thing that speaks against a layout, where, and what says so.
#[derive(Debug, Clone, PartialEq)]
pub struct Finding {
    /// What it is.
    pub code: FindingCode,
    /// The panel's id; `None` where it is about a place.
    pub panel: Option<usize>,
    /// The corner, the column, the end of the joint, or the middle of the panel's outer corners.
    pub at: Point,
    /// Ids of the trade facts it rests on; none where only practice or judgment carries it.
    pub facts: Vec<&'static str>,
    /// How sure the rule is.
    pub grade: Grade,
}
