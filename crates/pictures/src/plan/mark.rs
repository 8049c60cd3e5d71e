//! What lies on the plan: layers, and marks with their kind and place.

use slab_diary::EntryKind;
use std::sync::Arc;

use localization::Locale;
use slab_answers::map::SlabMap;
use slab_plan::Point;
use units::Length;

/// A layer that can be shown or hidden.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Layer {
    /// The zones with their names.
    Zones,
    /// What is not slab.
    CutOuts,
    /// Lengths of the outer walls.
    Dimensions,
    /// How the ground drinks, by the map.
    Absorbency,
    /// The finishes of the zones.
    Finishes,
    /// Joints.
    Joints,
    /// Score lines.
    ScoreLines,
    /// The stretches between the joints, and stretches of work.
    Sections,
    /// What happened to the slab, open or dealt with; cracks too.
    Incidents,
    /// Tests and photographs.
    Tests,
    /// Where to test next.
    Next,
}

impl Layer {
    /// All, in the order they are listed.
    pub const ALL: [Self; 11] = [
        Self::Zones,
        Self::CutOuts,
        Self::Dimensions,
        Self::Absorbency,
        Self::Finishes,
        Self::Joints,
        Self::ScoreLines,
        Self::Sections,
        Self::Incidents,
        Self::Tests,
        Self::Next,
    ];

    /// Its name in `data-layer-of`.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::Zones => "zones",
            Self::CutOuts => "cut-outs",
            Self::Dimensions => "dimensions",
            Self::Absorbency => "absorbency",
            Self::Finishes => "finishes",
            Self::Joints => "joints",
            Self::ScoreLines => "score-lines",
            Self::Sections => "sections",
            Self::Incidents => "incidents",
            Self::Tests => "tests",
            Self::Next => "next",
        }
    }
}

/// What is drawn on the plan beside the plan itself.
#[derive(Debug, Clone, Default)]
pub struct PlanLayers {
    /// The marks, in the order of their importance: the first get the best places for their words.
    pub marks: Vec<PlanMark>,
    /// The map of this slab: how its ground drinks, and the sections between its joints.
    pub map: Option<Arc<SlabMap>>,
    /// The zones by name, each with its finish by the id in the trade facts.
    pub finishes: Vec<(String, String)>,
    /// Layers left out of drawing and list.
    pub hidden: Vec<Layer>,
}

/// Something at a place of the plan.
#[derive(Debug, Clone, PartialEq)]
pub struct PlanMark {
    /// Its id, such as that of the entry; becomes `data-item`.
    pub id: String,
    /// Where it belongs.
    pub layer: Layer,
    /// What it is, which chooses its shape.
    pub kind: MarkKind,
    /// Where it is.
    pub at: MarkPlace,
    /// A word or value beside the mark, in the reader's language; may be empty.
    pub short: String,
    /// The whole of it in words.
    pub title: String,
    /// Dealt with: drawn quietly. Counts for incidents and defects only.
    pub settled: bool,
}

/// Where a mark is.
#[derive(Debug, Clone, PartialEq)]
pub enum MarkPlace {
    /// At a point.
    Point(Point),
    /// Around a point.
    Circle {
        /// The middle.
        center: Point,
        /// How far around it, above zero.
        radius: Length,
    },
    /// A patch by its corners, three or more.
    Polygon(Vec<Point>),
    /// Somewhere in the zone of this name.
    Zone(String),
}

impl MarkPlace {
    pub(super) fn is_zone(&self) -> bool {
        matches!(self, Self::Zone(_))
    }
}

/// Kinds of marks; each has its own shape.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum MarkKind {
    /// Something happened to the slab.
    Incident,
    /// A crack, hole or patch.
    Defect,
    /// Seconds for a water drop to soak in.
    WaterDrop,
    /// What a blade lifts.
    Scrape,
    /// What a solvent rag lifts.
    SolventWipe,
    /// Fizz under a drop of dilute acid.
    AcidDrop,
    /// Surface pH.
    Ph,
    /// Relative humidity in the slab.
    Humidity,
    /// Moisture emission by a dish.
    Dish,
    /// Moisture under a taped sheet.
    Sheet,
    /// Temperature of slab or air.
    Temperature,
    /// A photograph.
    Photo,
    /// Test here next.
    Next,
    /// A stretch of work.
    Section,
}

impl MarkKind {
    /// All of them.
    pub const ALL: [Self; 14] = [
        Self::Incident,
        Self::Defect,
        Self::WaterDrop,
        Self::Scrape,
        Self::SolventWipe,
        Self::AcidDrop,
        Self::Ph,
        Self::Humidity,
        Self::Dish,
        Self::Sheet,
        Self::Temperature,
        Self::Photo,
        Self::Next,
        Self::Section,
    ];

    /// Its class in the drawing, such as `p-mark-water-drop`.
    #[must_use]
    pub const fn class(self) -> &'static str {
        match self {
            Self::Incident => "p-mark-incident",
            Self::Defect => "p-mark-defect",
            Self::WaterDrop => "p-mark-water-drop",
            Self::Scrape => "p-mark-scrape",
            Self::SolventWipe => "p-mark-solvent-wipe",
            Self::AcidDrop => "p-mark-acid-drop",
            Self::Ph => "p-mark-ph",
            Self::Humidity => "p-mark-humidity",
            Self::Dish => "p-mark-dish",
            Self::Sheet => "p-mark-sheet",
            Self::Temperature => "p-mark-temperature",
            Self::Photo => "p-mark-photo",
            Self::Next => "p-mark-next",
            Self::Section => "p-mark-section",
        }
    }

    /// Whether being dealt with changes how it is drawn.
    pub(super) const fn can_settle(self) -> bool {
        matches!(self, Self::Incident | Self::Defect)
    }

    /// What stands in its shape in the key: a letter where a letter tells it from a number.
    pub(super) const fn sample(self) -> &'static str {
        if matches!(self, Self::Next) { "A" } else { "" }
    }

    /// What its shape means.
    pub(super) fn meaning(self, settled: bool, locale: Locale) -> String {
        match (self, settled) {
            (Self::Incident, false) => locale.message("pic-legend-open", &[]),
            (Self::Incident, true) => locale.message("pic-legend-settled", &[]),
            (Self::Next, _) => locale.message("pic-legend-next", &[]),
            (Self::Section, _) => String::new(),
            (Self::Defect, false) => locale.kind(EntryKind::Defect),
            (Self::Defect, true) => {
                let settled = locale.message("pic-settled", &[]);
                locale
                    .message("pic-named", &[("name", locale.kind(EntryKind::Defect).into()), ("value", settled.into())])
            }
            (kind, _) => locale.kind(kind.entry_kind()),
        }
    }

    /// The kind of diary entry behind it.
    const fn entry_kind(self) -> EntryKind {
        match self {
            Self::Incident | Self::Next | Self::Section => EntryKind::Incident,
            Self::Defect => EntryKind::Defect,
            Self::WaterDrop => EntryKind::WaterDrop,
            Self::Scrape => EntryKind::Scrape,
            Self::SolventWipe => EntryKind::SolventWipe,
            Self::AcidDrop => EntryKind::AcidDrop,
            Self::Ph => EntryKind::SurfacePh,
            Self::Humidity => EntryKind::SlabHumidity,
            Self::Dish => EntryKind::EmissionDish,
            Self::Sheet => EntryKind::PlasticSheet,
            Self::Temperature => EntryKind::Temperature,
            Self::Photo => EntryKind::SlabPhotograph,
        }
    }
}
