//! The answer: even, patchy, or can't tell, with its reasons and what they rest on.

use science::color::Lab;

use crate::grid::Grid;
use crate::line::Line;
use crate::look::Rect;
use crate::why::Why;

/// The answer to "is the slab one color?".
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Verdict {
    /// One color, as far as the picture shows. No proof of dryness.
    Even,
    /// More than one color.
    Patchy,
    /// The picture does not settle it; the reasons say why.
    CantTell,
}

impl Verdict {
    /// The word of the diary: `even`, `patchy` or `cant_tell`.
    #[must_use]
    pub fn word(self) -> &'static str {
        match self {
            Self::Even => "even",
            Self::Patchy => "patchy",
            Self::CantTell => "cant_tell",
        }
    }
}

/// What a photograph says of the evenness of a slab.
#[derive(Debug, Clone, PartialEq)]
pub struct Evenness {
    /// The answer.
    pub verdict: Verdict,
    /// 95th percentile of the cells' ΔE00 to their median color; nothing where nothing was measured.
    pub score_de00: Option<f64>,
    /// ΔE00 between the mean colors of the two classes.
    pub class_de00: Option<f64>,
    /// Share of the slab in the smaller class, 0 to 0.5.
    pub share: Option<f64>,
    /// Color of the slab by the card; nothing without a card that could be read.
    pub base_lab: Option<Lab>,
    /// The reasons, gravest first, and remarks. Empty only beside a verdict that nothing qualifies.
    pub why: Vec<Why>,
    /// Share of cells that are over- or underexposed, 0 to 1.
    pub clipped_share: f64,
    /// Range of the smooth light over the picture, in ln.
    pub light_range: Option<f64>,
    /// How much warmer the dark class is than the bright one: extra fall of blue over red, over the
    /// fall of lightness. Damp on concrete measured 0.15 to 0.20, shade −0.15 to 0.
    pub warmth: Option<f64>,
    /// Straight lines found.
    pub lines: Vec<Line>,
    /// The cells, for a drawing.
    pub grid: Grid,
    /// The card, where it was given and lies in the picture.
    pub card: Option<Rect>,
}

impl Evenness {
    pub(crate) fn too_small(why: Why) -> Self {
        Self {
            verdict: Verdict::CantTell,
            score_de00: None,
            class_de00: None,
            share: None,
            base_lab: None,
            why: vec![why],
            clipped_share: 0.0,
            light_range: None,
            warmth: None,
            lines: Vec::new(),
            grid: Grid::nothing(),
            card: None,
        }
    }

    /// The same without its map, to be kept: the map is by far the largest part of it.
    #[must_use]
    pub fn without_map(self) -> Self {
        Self { grid: Grid::nothing(), ..self }
    }

    /// Whether a second photograph, from another side or hour, may settle it.
    #[must_use]
    pub fn asks_for_second(&self) -> bool {
        self.verdict == Verdict::CantTell && self.why.iter().any(Why::asks_for_second)
    }
}
