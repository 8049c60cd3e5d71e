//! What can be wrong with a plan: the field by its path, the value, and what would be accepted.

use units::{Area, AreaUnit, Length, LengthUnit};

use super::{Point, Remedy, Suspect, Turn, Walk};

/// A plan that cannot be used as typed. Paths count from 0, as JSON does; legs and edges from 1.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
pub enum PlanError {
    /// A field is missing, unknown or not of its kind.
    #[error("{path}: {problem}")]
    Unreadable {
        /// The field.
        path: String,
        /// What the reader said, with the value and what would be accepted.
        problem: String,
    },
    /// A length of nothing, or two corners in the same place.
    #[error("{path}: \"{typed}\" has no length; accepted: a length above zero, such as 12' 6\"")]
    ZeroLength {
        /// The field.
        path: String,
        /// What was typed, or the two corners.
        typed: String,
    },
    /// Beyond any slab: a slip of the keyboard.
    #[error("{path}: \"{typed}\" is too large; accepted: lengths to 10 km, areas to 100 km²")]
    TooLarge {
        /// The field.
        path: String,
        /// What was typed.
        typed: String,
    },
    /// Too few corners, legs or rectangles.
    #[error("{path}: {count} given; accepted: {least} or more")]
    TooFew {
        /// The field.
        path: String,
        /// How many there are.
        count: usize,
        /// How many there must be.
        least: usize,
    },
    /// Too many corners, legs or shapes.
    #[error("{path}: {count} given; accepted: up to {most}")]
    TooMany {
        /// The field.
        path: String,
        /// How many there are.
        count: usize,
        /// How many there may be.
        most: usize,
    },
    /// A leg after the first without its turn.
    #[error("{path}: leg {leg} has no turn; accepted: right 90, left 45, right, left, straight, back")]
    MissingTurn {
        /// The field.
        path: String,
        /// Number of the leg, from 1.
        leg: usize,
    },
    /// The outline of the shape crosses or touches itself.
    #[error("{path}: edge {first} and edge {second} cross or touch at {}; accepted: corners in order around the shape", place(*.at))]
    Crossing {
        /// The shape.
        path: String,
        /// Number of one edge (from corner n to the next), from 1.
        first: usize,
        /// Number of the other.
        second: usize,
        /// Where they meet.
        at: Point,
    },
    /// Nothing is left of the shape.
    #[error("{path}: {}it has no area; accepted: an area above zero, such as 850 ft2", quoted(.typed))]
    NoArea {
        /// The shape.
        path: String,
        /// What was typed, if it was an area.
        typed: Option<String>,
    },
    /// The walk ends too far from its start. The plan as typed stays as it is.
    #[error("{path}: {}", open_walk(.walk, .suspects))]
    WalkOpen {
        /// The walk.
        path: String,
        /// The walk as far as it was computed: state open, nothing adjusted.
        walk: Box<Walk>,
        /// Legs that alone could explain the gap.
        suspects: Vec<Suspect>,
    },
    /// The turns with the closing turn are too far from one full turn.
    #[error("{path}: all turns add up to {sum}, a walk around a shape makes right 360° or left 360° (within {:.2}°){}; \
             accepted: turns that add up, or no \"closing_turn\"", .limit.as_right_degrees(), blame(.suspects))]
    TurnsOpen {
        /// The walk.
        path: String,
        /// All turns after the first leg together, the closing turn with them.
        sum: Turn,
        /// The largest difference from a full turn that would be accepted.
        limit: Turn,
        /// Turns that, taken the other way, would add up.
        suspects: Vec<Suspect>,
    },
    /// A drawn shape where only areas are known, or the other way round.
    #[error(
        "{path}: an area alone and a drawn shape do not go together; accepted: every shape of the plan drawn, or every one as an area"
    )]
    MixedShapes {
        /// The shape that differs from the outline.
        path: String,
    },
    /// Part of a cut-out lies off the slab.
    #[error("{path}: {} of the cut-out lies outside the outline; accepted: cut-outs inside it", patch(*.outside))]
    CutOutOutside {
        /// The cut-out.
        path: String,
        /// How much lies outside.
        outside: Area,
    },
    /// Part of a zone lies off the slab.
    #[error("{path}: {} of zone \"{name}\" lies outside the outline; accepted: zones inside it", patch(*.outside))]
    ZoneOutside {
        /// The zone's shape.
        path: String,
        /// The zone.
        name: String,
        /// How much lies outside.
        outside: Area,
    },
    /// Two zones share ground.
    #[error("{path}: zone \"{name}\" overlaps zone \"{other}\" by {}; accepted: zones side by side", patch(*.overlap))]
    ZonesOverlap {
        /// The later zone's shape.
        path: String,
        /// The later zone.
        name: String,
        /// The earlier zone.
        other: String,
        /// How much both cover.
        overlap: Area,
    },
    /// Areas that add up to more than the slab has.
    #[error("{path}: together {}, more than the {} there are; accepted: areas that fit", patch(*.sum), patch(*.available))]
    AreasTooLarge {
        /// The zones or the cut-outs.
        path: String,
        /// What they add up to.
        sum: Area,
        /// What there is.
        available: Area,
    },
    /// Two zones of the same name.
    #[error("{path}: zone \"{name}\" is there already; accepted: each name once (capitals do not count)")]
    DuplicateZone {
        /// The later name.
        path: String,
        /// The name.
        name: String,
    },
    /// A zone without a name.
    #[error("{path}: the name is empty; accepted: a name such as \"A\" or \"hall\"")]
    BlankZoneName {
        /// The name.
        path: String,
    },
    /// More than one zone without a shape.
    #[error("{path}: zones \"{other}\" and \"{name}\" both have no shape; accepted: one zone as the rest of the slab")]
    TwoRestZones {
        /// The later zone.
        path: String,
        /// The later zone's name.
        name: String,
        /// The earlier zone's name.
        other: String,
    },
    /// Nothing of the slab is left for the zone.
    #[error("{path}: nothing of the slab is left for zone \"{name}\"; accepted: a zone with an area above zero")]
    EmptyZone {
        /// The zone.
        path: String,
        /// Its name.
        name: String,
    },
    /// Joints or score lines where only areas are known.
    #[error("{path}: only areas are known, so no line has a place; accepted: an outline that is drawn, or no {path}")]
    LinesWithoutShape {
        /// The joints or the score lines.
        path: String,
    },
    /// A line or a pattern of which nothing lies on the slab or in its zone.
    #[error(
        "{path}: nothing of it lies on the slab or in its zone; accepted: lines with a part on it, not along its edge"
    )]
    LineOffSlab {
        /// The joint or the pattern.
        path: String,
    },
    /// A pattern of more lines than a slab has.
    #[error("{path}: \"{typed}\" makes {count} lines; accepted: a length that makes up to {most}")]
    TooManyLines {
        /// The spacing or the inset.
        path: String,
        /// What was typed.
        typed: String,
        /// How many lines it makes one way.
        count: usize,
        /// How many there may be.
        most: usize,
    },
    /// A border that meets itself everywhere.
    #[error(
        "{path}: \"{typed}\" leaves nothing inside the border; accepted: less than half the width of the slab or zone"
    )]
    BorderTooWide {
        /// The inset.
        path: String,
        /// What was typed.
        typed: String,
    },
    /// A line limited to a zone that is not there.
    #[error("{path}: there is no zone \"{name}\"; accepted: {}, or none for the whole slab", .known.join(", "))]
    UnknownZone {
        /// The field.
        path: String,
        /// The name typed.
        name: String,
        /// The names there are.
        known: Vec<String>,
    },
}

impl PlanError {
    /// The field, such as `zones[1].shape.walk.legs[3].turn`.
    #[must_use]
    pub fn path(&self) -> &str {
        match self {
            Self::Unreadable { path, .. }
            | Self::ZeroLength { path, .. }
            | Self::TooLarge { path, .. }
            | Self::TooFew { path, .. }
            | Self::TooMany { path, .. }
            | Self::MissingTurn { path, .. }
            | Self::Crossing { path, .. }
            | Self::NoArea { path, .. }
            | Self::WalkOpen { path, .. }
            | Self::TurnsOpen { path, .. }
            | Self::MixedShapes { path }
            | Self::CutOutOutside { path, .. }
            | Self::ZoneOutside { path, .. }
            | Self::ZonesOverlap { path, .. }
            | Self::AreasTooLarge { path, .. }
            | Self::DuplicateZone { path, .. }
            | Self::BlankZoneName { path }
            | Self::TwoRestZones { path, .. }
            | Self::EmptyZone { path, .. }
            | Self::LinesWithoutShape { path }
            | Self::LineOffSlab { path }
            | Self::TooManyLines { path, .. }
            | Self::BorderTooWide { path, .. }
            | Self::UnknownZone { path, .. } => path,
        }
    }
}

/// `1' 6" (0.457 m)`.
fn tape(length: Length) -> String {
    format!("{} ({})", length.show_feet_inches(16), length.show(LengthUnit::Meter, 3))
}

fn patch(area: Area) -> String {
    format!("{} ({})", area.show(AreaUnit::SquareFoot, 2), area.show(AreaUnit::SquareMeter, 3))
}

fn place(at: Point) -> String {
    let show = |offset| Length::from(offset).show_feet_inches(16);
    format!("[{}, {}]", show(at.x), show(at.y))
}

fn quoted(typed: &Option<String>) -> String {
    typed.as_ref().map_or_else(String::new, |text| format!("\"{text}\": "))
}

fn open_walk(walk: &Walk, suspects: &[Suspect]) -> String {
    let toward = walk.direction.map_or_else(String::new, |d| format!(", toward {d}"));
    let precision = walk.precision.map_or_else(String::new, |p| format!("{p} of "));
    let allowed = walk.perimeter / walk.limit.parts();
    format!(
        "the walk ends {} from where it began{toward}; that is {precision}the {} walked, and the limit is {}{}; \
         accepted: legs that close within {}, or a wider \"limit\"",
        tape(walk.misclosure),
        tape(walk.perimeter),
        walk.limit,
        blame(suspects),
        tape(allowed),
    )
}

fn blame(suspects: &[Suspect]) -> String {
    if suspects.is_empty() {
        return "; no single leg explains it".to_owned();
    }
    let each: Vec<String> = suspects
        .iter()
        .map(|s| match s.remedy {
            Remedy::Length(length) => format!("leg {} (\"{}\") if it were {}", s.leg, s.typed, tape(length)) + &left(s),
            Remedy::Turn(turn) => {
                format!("the turn before leg {} (\"{}\") if it were {turn}", s.leg, s.typed) + &left(s)
            }
            Remedy::Inside(turn) => {
                let typed = format!("the turn before leg {} (\"{}\"", s.leg, s.typed);
                format!("{typed} is the angle inside the corner?) if it were {turn}") + &left(s)
            }
        })
        .collect();
    format!("; most likely wrong: {}", each.join(", or "))
}

/// The gap that a suspect would leave, where a tape would see it.
fn left(suspect: &Suspect) -> String {
    match suspect.leaves {
        Some(gap) if gap > Length::inches(1.0 / 16.0) => format!(", leaving {}", tape(gap)),
        _ => String::new(),
    }
}
