//! What a recipe cannot be worked out from, and why a number is withheld.

/// Panels, or words about them, that no model can be fitted to.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
pub enum RecipeRefusal {
    /// Not a number of coats.
    #[error("coats {0}; accepted: 1 to {most}", most = super::Coats::MOST)]
    Coats(u32),
    /// Not a dilution.
    #[error("water {0} parts to 1 of stain; accepted: 0 to {most}", most = super::WaterParts::MOST)]
    Water(f64),
    /// Parts of a mix that are no mix.
    #[error("parts {parts:?} of stain; accepted: 1 to 3 numbers of 0 or more, not all 0, such as 3 and 1")]
    Parts {
        /// What was given, one number a stain.
        parts: Vec<f64>,
    },
    /// No stained panel.
    #[error("no stained panel; accepted: at least one panel of each stain, and a bare one beside")]
    NoPanels,
    /// No bare place.
    #[error("no bare place; accepted: at least one color of the bare concrete beside the panels")]
    NoBare,
    /// One panel counts other stains than the first.
    #[error(
        "panel {panel} (from 0) names {found} stains, the first {expected}; accepted: parts of the same stains, in the same order, 0 where one is left out"
    )]
    Stains {
        /// The panel, from 0.
        panel: usize,
        /// Stains it names.
        found: usize,
        /// Stains the first panel names.
        expected: usize,
    },
    /// A stain that no panel tries.
    #[error("stain {stain} (from 0) is in no panel; accepted: at least one panel of each stain")]
    StainUntried {
        /// The stain, from 0.
        stain: usize,
    },
    /// Too dark, too bright or not a number: its absorption cannot be told.
    #[error("{channel} light {value} of {place}; accepted: above 0.0002 and below 0.99 of a white surface")]
    Light {
        /// Where it was measured.
        place: Place,
        /// "red", "green" or "blue".
        channel: &'static str,
        /// Reflected share of the light.
        value: f64,
    },
    /// The fit came to no end.
    #[error("no strengths fit these panels; check that no panel's color or recipe is mistyped")]
    NoFit,
}

/// Where a color was measured.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Place {
    /// A bare place, from 0.
    Bare(usize),
    /// A stained panel, from 0.
    Panel(usize),
}

impl std::fmt::Display for Place {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        match self {
            Self::Bare(index) => write!(f, "bare place {index} (from 0)"),
            Self::Panel(index) => write!(f, "panel {index} (from 0)"),
        }
    }
}

/// Why a prediction comes without a radius, with what is there and what is needed.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, thiserror::Error)]
pub enum NoInterval {
    /// Too few panels to tell how far predictions miss.
    #[error("{panels} panels of {stains} stains; needed for an interval: {needed} stained, and a bare one beside")]
    TooFewPanels {
        /// Stains in the panels.
        stains: usize,
        /// Stained panels there are.
        panels: usize,
        /// Stained panels needed.
        needed: usize,
    },
    /// Nothing shows that the stains add up in a mix.
    #[error("no panel of {panels} mixes two stains; needed for an interval with {stains} stains: at least one mix")]
    NoMix {
        /// Stains in the panels.
        stains: usize,
        /// Stained panels there are.
        panels: usize,
    },
    /// With its only panel left out, nothing is known of the stain.
    #[error("stain {stain} (from 0) is in one panel only; needed for an interval: two")]
    StainInOnePanel {
        /// The stain, from 0.
        stain: usize,
    },
    /// With one panel left out, no strengths fit the others.
    #[error("with panel {panel} (from 0) left out, nothing fits the others; check its color and recipe")]
    NoFitWithout {
        /// The panel, from 0.
        panel: usize,
    },
}

impl NoInterval {
    /// A stable word for screens and JSON.
    #[must_use]
    pub const fn code(self) -> &'static str {
        match self {
            Self::TooFewPanels { .. } => "too-few-panels",
            Self::NoMix { .. } => "no-mix",
            Self::StainInOnePanel { .. } => "stain-in-one-panel",
            Self::NoFitWithout { .. } => "no-fit-without-panel",
        }
    }
}

/// A recipe beyond what the panels tried. Such a prediction is refused: the model is a regression.
#[derive(Debug, Clone, Copy, PartialEq, thiserror::Error)]
pub enum OutsideTested {
    /// Other stains than the panels'.
    #[error("the recipe names {found} stains; the panels try {expected}")]
    Stains {
        /// Stains in the recipe.
        found: usize,
        /// Stains in the panels.
        expected: usize,
    },
    /// More or fewer coats than tried with a stain of the recipe.
    #[error("{coats} coats; panels with stain {stain} (from 0) try {low} to {high}")]
    Coats {
        /// Which stain's panels.
        stain: usize,
        /// Asked for.
        coats: u32,
        /// Fewest tried.
        low: u32,
        /// Most tried.
        high: u32,
    },
    /// More or less water than tried with a stain of the recipe.
    #[error("{water} parts of water; panels with stain {stain} (from 0) try {low} to {high}")]
    Water {
        /// Which stain's panels.
        stain: usize,
        /// Asked for, parts to one of stain.
        water: f64,
        /// Least tried.
        low: f64,
        /// Most tried.
        high: f64,
    },
    /// A mix not between the mixes that were tried.
    #[error("these shares lie outside the mixes that the panels try")]
    Shares,
}

/// A wish that cannot be searched for.
#[derive(Debug, Clone, Copy, PartialEq, thiserror::Error)]
pub enum SearchRefusal {
    /// A panel that is not there.
    #[error("panel {index} (from 0) wished for; there are {panels}")]
    NoSuchPanel {
        /// Asked for, from 0.
        index: usize,
        /// How many there are.
        panels: usize,
    },
    /// More share steps than anyone measures out, or none.
    #[error("shares in steps of 1/{0}; accepted: 1 to {most}", most = super::PracticalGrid::FINEST)]
    ShareSteps(u32),
}
