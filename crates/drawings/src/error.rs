//! What can be wrong with a drawing.

use ::units::{Length, LengthUnit};

use crate::Spot;

/// A drawing that cannot be read, or that no plan can be made of.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
pub enum DrawingError {
    /// Not a DXF file as text.
    #[error("file: {found}; accepted: a DXF file saved as text (ASCII)")]
    NotText {
        /// What it looks like.
        found: &'static str,
    },
    /// Too large in one of its counts.
    #[error("file: more than {most} {what}; accepted: a drawing of the slab alone")]
    TooLarge {
        /// What there is too much of.
        what: &'static str,
        /// How much there may be.
        most: usize,
    },
    /// A line of the file that cannot be understood.
    #[error("line {line}: \"{found}\" stands where {expected} is due")]
    Malformed {
        /// Number of the line, from 1.
        line: usize,
        /// What is there, cut short.
        found: String,
        /// What would be accepted.
        expected: &'static str,
    },
    /// The file ends before its end mark.
    #[error("file: it ends within {within}; accepted: the whole file, to its EOF mark")]
    CutShort {
        /// What was being read.
        within: &'static str,
    },
    /// A block that holds itself.
    #[error("block \"{name}\": it is nested {depth} deep or holds itself; accepted: blocks nested up to {depth} deep")]
    Nested {
        /// The block.
        name: String,
        /// How deep blocks may be nested.
        depth: usize,
    },
    /// The file does not say in what unit it is drawn.
    #[error("units: the drawing does not say; accepted: a unit chosen for it, such as millimeters or inches")]
    UnitsNotTold,
    /// No such layer.
    #[error("layer \"{name}\": not in the drawing; accepted: {}", .known.join(", "))]
    UnknownLayer {
        /// The layer asked for.
        name: String,
        /// The layers there are.
        known: Vec<String>,
    },
    /// Nothing closed on a layer that should have it.
    #[error("layer \"{layer}\": it has no closed line; accepted: one closed line around the slab")]
    NothingClosed {
        /// The layer.
        layer: String,
    },
    /// A line that should be closed and is not.
    #[error("layer \"{layer}\": the line around is open by {} between {from} and {to}; accepted: ends that meet", shown(.gap, .length))]
    Open {
        /// The layer.
        layer: String,
        /// One end.
        from: Spot,
        /// The nearest other end.
        to: Spot,
        /// From one to the other in units of the drawing.
        gap: f64,
        /// The same as a length.
        length: Length,
    },
    /// Lines that meet three or more at one place.
    #[error(
        "layer \"{layer}\": {count} lines meet at {at}, so it is not told which one goes around; accepted: two at each corner"
    )]
    Branching {
        /// The layer.
        layer: String,
        /// Where.
        at: Spot,
        /// How many meet.
        count: usize,
    },
    /// More than one line around, apart from each other.
    #[error(
        "layer \"{layer}\": {count} closed lines lie apart from each other, one at {at}; accepted: one around the slab, others inside it"
    )]
    Apart {
        /// The layer.
        layer: String,
        /// How many there are.
        count: usize,
        /// A place on one that is not inside the largest.
        at: Spot,
    },
    /// Cut-outs or zones that are not inside the outline.
    #[error("layer \"{layer}\": the closed line at {at} does not lie inside the outline; accepted: lines inside it")]
    Outside {
        /// The layer.
        layer: String,
        /// A place on it outside.
        at: Spot,
    },
    /// Larger than any slab in the unit chosen.
    #[error("units: in {unit} the drawing is {} across; accepted: up to 10 km, so another unit", .across.show(LengthUnit::Meter, 0))]
    TooWide {
        /// The unit, as a word of code.
        unit: String,
        /// How wide or high it would be.
        across: Length,
    },
}

fn shown(gap: &f64, length: &Length) -> String {
    if *length > Length::ZERO {
        format!("{} ({})", length.show(LengthUnit::Millimeter, 1), length.show_feet_inches(64))
    } else {
        format!("{gap} units")
    }
}
