//! What a drawing holds, layer by layer.

use std::collections::BTreeMap;
use std::fmt;

use crate::Units;

/// A place in the drawing's own coordinates and units.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Spot {
    /// To the right.
    pub x: f64,
    /// Up.
    pub y: f64,
}

impl Spot {
    pub(crate) const fn new(x: f64, y: f64) -> Self {
        Self { x, y }
    }

    pub(crate) fn distance(self, other: Self) -> f64 {
        libm::hypot(self.x - other.x, self.y - other.y)
    }
}

impl fmt::Display for Spot {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "({:.3}, {:.3})", self.x, self.y)
    }
}

/// A closed line: corners in order, without a repeat of the first.
#[derive(Debug, Clone, PartialEq)]
pub struct Loop {
    /// The corners; curves are chords with their corners on the curve.
    pub corners: Vec<Spot>,
    /// The area inside, square units of the drawing.
    pub area: f64,
    /// The farthest that a chord lies from its curve, units of the drawing.
    pub deviation: f64,
    /// The area between chords and curves, at most, square units of the drawing.
    pub area_error: f64,
}

/// Lines that join end to end without closing.
#[derive(Debug, Clone, PartialEq)]
pub struct Chain {
    /// The points in order.
    pub points: Vec<Spot>,
}

/// Two ends that do not meet.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Gap {
    /// One end.
    pub from: Spot,
    /// The end nearest to it.
    pub to: Spot,
}

impl Gap {
    /// How wide it is, units of the drawing.
    #[must_use]
    pub fn width(&self) -> f64 {
        self.from.distance(self.to)
    }
}

/// A text and where it stands.
#[derive(Debug, Clone, PartialEq)]
pub struct Label {
    /// The text without codes of its look.
    pub text: String,
    /// Where it begins.
    pub at: Spot,
}

/// What one layer holds.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Layer {
    /// Closed lines, drawn so or made of lines and arcs that meet.
    pub loops: Vec<Loop>,
    /// What joins end to end without closing.
    pub open: Vec<Chain>,
    /// For each end of an open chain the nearest other end, narrowest first; for up to 200 ends.
    pub gaps: Vec<Gap>,
    /// Places where three or more lines meet, and how many do; what meets there is among the open.
    pub branches: Vec<(Spot, usize)>,
    /// Texts.
    pub labels: Vec<Label>,
    /// Kinds of entities that were left out, and how many of each.
    pub ignored: BTreeMap<String, usize>,
}

/// A drawing that was read.
#[derive(Debug, Clone, PartialEq)]
pub struct Drawing {
    /// The unit by the file's own word.
    pub units: Units,
    /// What the file says of metric or not (`$MEASUREMENT`): a hint for the question, never an answer.
    pub metric_hint: Option<bool>,
    /// Ends nearer than this were joined, units of the drawing.
    pub joined_within: f64,
    /// The layers by name.
    pub layers: BTreeMap<String, Layer>,
}
