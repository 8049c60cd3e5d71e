//! A plan as it is typed and kept in the diary.

use serde::{Deserialize, Serialize};
use units::{Area, AsWritten, Length};

use super::{Bearing, JointSpec, PlanError, Precision, ScoreSpec, Turn, WrittenPoint};

/// A slab's plan as typed; [`super::Plan::resolve`] makes geometry of it.
///
/// ```
/// use slab_plan::{Plan, PlanSpec};
/// let typed = r#"{
///   "outline": {"rectangles": [{"corner": ["0 ft", "0 ft"], "width": "40 ft", "depth": "30 ft"}]},
///   "cut_outs": [{"rectangles": [{"corner": ["10 ft", "10 ft"], "width": "2 ft", "depth": "2 ft"}]}],
///   "zones": [
///     {"name": "hall", "shape": {"rectangles": [{"corner": ["0 ft", "0 ft"], "width": "20 ft", "depth": "30 ft"}]}},
///     {"name": "kitchen"}
///   ]
/// }"#;
/// let plan = Plan::resolve(&PlanSpec::from_json(typed)?)?;
/// assert_eq!(plan.zone("hall").map(|z| z.area().as_square_feet().round()), Some(596.0));
/// assert_eq!(plan.zone("kitchen").map(|z| z.area().as_square_feet().round()), Some(600.0));
/// # Ok::<(), slab_plan::PlanError>(())
/// ```
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct PlanSpec {
    /// The outer edge of the slab.
    pub outline: ShapeSpec,
    /// What lies inside the outline and is not slab: columns, pits, planters.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub cut_outs: Vec<ShapeSpec>,
    /// The parts that are judged and ordered for apart. With none, the slab is one zone, `whole`.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub zones: Vec<ZoneSpec>,
    /// The joints that the slab has: sawn, between pours, around what must move free.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub joints: Vec<JointSpec>,
    /// The score lines that are wanted or there, by pattern.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub score_lines: Vec<ScoreSpec>,
    /// The compass bearing that plan north (straight up on the plan) points to.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub north: Option<AsWritten<Bearing>>,
}

/// A named part of the slab.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct ZoneSpec {
    /// Its name, unique on the slab (capital letters do not tell two names apart).
    pub name: String,
    /// Its shape; the one zone without a shape is the rest of the slab.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub shape: Option<ShapeSpec>,
}

/// One shape, in any of the ways a person can give it.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "lowercase", deny_unknown_fields)]
pub enum ShapeSpec {
    /// Everything that lies in at least one of these rectangles.
    Rectangles(Vec<RectangleSpec>),
    /// The corners in order; the last joins the first.
    Polygon(Vec<WrittenPoint>),
    /// A walk along the walls.
    Walk(WalkSpec),
    /// Only the area is known, as for a bid: nothing can be placed on it.
    Area(AsWritten<Area>),
}

/// A rectangle along the plan's axes.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct RectangleSpec {
    /// The lower left corner.
    pub corner: WrittenPoint,
    /// To the right, above zero.
    pub width: AsWritten<Length>,
    /// Up, above zero.
    pub depth: AsWritten<Length>,
}

/// A walk along the walls: turn and taped length, leg after leg, back to the start.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct WalkSpec {
    /// The corner where the walk begins and ends.
    pub start: WrittenPoint,
    /// One leg per wall.
    pub legs: Vec<LegSpec>,
    /// The turn at the start corner, from the last wall onto the first. When it is given the turns
    /// can be checked by themselves: all together they make one full turn.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub closing_turn: Option<AsWritten<Turn>>,
    /// The loosest closure to accept in place of [`super::CLOSURE_LIMIT`].
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub limit: Option<AsWritten<Precision>>,
}

/// One wall of a walk.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct LegSpec {
    /// The turn before the wall. On the first leg it is counted from plan east and may be left out.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub turn: Option<AsWritten<Turn>>,
    /// The taped length, above zero.
    pub length: AsWritten<Length>,
}

impl PlanSpec {
    /// Reads a plan from JSON, so that an error names the field by its path.
    ///
    /// # Errors
    /// [`PlanError::Unreadable`] with the path, the value and what would be accepted.
    pub fn from_json(text: &str) -> Result<Self, PlanError> {
        let mut reader = serde_json::Deserializer::from_str(text);
        let spec: Self = serde_path_to_error::deserialize(&mut reader)
            .map_err(|e| PlanError::Unreadable { path: e.path().to_string(), problem: e.inner().to_string() })?;
        reader.end().map_err(|e| PlanError::Unreadable { path: ".".to_owned(), problem: e.to_string() })?;
        Ok(spec)
    }
}
