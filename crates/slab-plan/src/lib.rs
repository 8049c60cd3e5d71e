//! The plan of a slab: where it is, how large it is, and which zone a point lies in.
//!
//! Why: areas decide how much is bought, places decide which zone an observation speaks for. A
//! person gives the slab as rectangles, as a polygon, as a walk along the walls with a tape, or, for
//! a bid, as an area alone. [`PlanSpec`] keeps what was typed; [`Plan`] is the proof that it makes
//! sense: no outline crosses itself, zones lie on the slab and apart from each other, walks close.
//!
//! The plan has its own axes: x to the right (plan east), y up (plan north). The first wall of a
//! walk runs plan east unless a turn says otherwise.
//!
//! To add a way of giving a shape: one variant of [`ShapeSpec`], one arm in `shape::resolve`, and a
//! case in `tests/plan_bad_input.rs` for everything it can have wrong.

mod angle;
mod blunder;
mod border;
mod circle;
pub(crate) mod clip;
mod error;
pub(crate) mod ground;
pub mod layout;
mod limits;
mod line_spec;
mod lines;
mod offset;
mod pattern;
mod precision;
mod shape;
mod spec;
mod taped;
mod walk;
mod zones;

pub use angle::{Bearing, Turn};
pub use blunder::{Remedy, Suspect};
pub use error::PlanError;
pub use ground::Piece;
pub use line_spec::{BorderSpec, DiagonalSpec, FreeSpec, GridSpec, JointKind, JointSpec, ScoreSpec};
pub(crate) use lines::Run;
pub use lines::{Joint, Pattern};
pub use offset::{Offset, Point, WrittenPoint};
pub use precision::Precision;
pub use shape::Patch;
pub use spec::{LegSpec, PlanSpec, RectangleSpec, ShapeSpec, WalkSpec, ZoneSpec};
pub use walk::{ANGULAR_LIMIT_PER_CORNER, CLOSURE_LIMIT, Walk, WalkLeg, WalkState};
pub use zones::{FIT_TOLERANCE, WHOLE, Zone};

use geo::MultiPolygon;
use units::{Area, AsWritten, Length};

use shape::{Drawn, Shape};
use walk::Walks;
use zones::Whole;

/// A slab's plan, proved to make sense.
#[derive(Debug, Clone, PartialEq)]
pub struct Plan {
    gross: Area,
    area: Area,
    /// The slab without its cut-outs, and the cut-outs; nothing when only areas are known.
    ground: Option<(MultiPolygon<f64>, MultiPolygon<f64>)>,
    zones: Vec<Zone>,
    walks: Walks,
    north: Option<Bearing>,
    joints: Vec<Joint>,
    patterns: Vec<Pattern>,
}

/// How much of a zone a patch covers.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Share<'a> {
    /// The zone.
    pub zone: &'a Zone,
    /// The part of it that the patch covers, above zero.
    pub area: Area,
}

impl Plan {
    /// Makes geometry of what was typed.
    ///
    /// # Errors
    /// [`PlanError`]: the field by its path, the value, and what would be accepted.
    pub fn resolve(spec: &PlanSpec) -> Result<Self, PlanError> {
        let north = spec.north.as_ref().map(AsWritten::value);
        limits::shape_limit(spec.cut_outs.len(), 0, "cut_outs")?;
        match shape::resolve(&spec.outline, "outline")? {
            Shape::Area(gross) => {
                let area = gross - area_of_cut_outs(spec, gross)?;
                let (zones, walks) = zones::divide(&spec.zones, &Whole::Area(area))?;
                lines::none(spec)?;
                let (gross, area) = (Area::square_meters(gross), Area::square_meters(area));
                let (joints, patterns) = (Vec::new(), Vec::new());
                Ok(Self { gross, area, ground: None, zones, walks, north, joints, patterns })
            }
            Shape::Drawn(outline) => {
                let (cut, mut walks) = cut_outs(spec, &outline)?;
                let slab = ground::without(&outline.ground, &cut);
                if slab.0.is_empty() {
                    return Err(PlanError::NoArea { path: "cut_outs".to_owned(), typed: None });
                }
                let (zones, zone_walks) = zones::divide(&spec.zones, &Whole::Drawn { outline: &outline, slab: &slab })?;
                let gross = Area::square_meters(ground::area(&outline.ground));
                if let Some(walk) = outline.walk {
                    walks.insert(0, ("outline.walk".to_owned(), walk));
                }
                walks.extend(zone_walks);
                let (joints, patterns) = lines::resolve(spec, &slab, &zones)?;
                let area = Area::square_meters(ground::area(&slab));
                Ok(Self { gross, area, ground: Some((slab, cut)), zones, walks, north, joints, patterns })
            }
        }
    }

    /// The area of the slab without its cut-outs, above zero.
    #[must_use]
    pub fn area(&self) -> Area {
        self.area
    }

    /// The area inside the outline, cut-outs counted in.
    #[must_use]
    pub fn outline_area(&self) -> Area {
        self.gross
    }

    /// The area of the cut-outs; where two overlap it counts once.
    #[must_use]
    pub fn cut_out_area(&self) -> Area {
        self.gross - self.area
    }

    /// The area that lies in no zone: zero when a rest zone takes what the others leave.
    #[must_use]
    pub fn unzoned_area(&self) -> Area {
        (self.area - self.zones.iter().map(Zone::area).sum()).max(Area::ZERO)
    }

    /// Whether shapes are drawn; otherwise only areas are known and no point lies in any zone.
    #[must_use]
    pub fn is_drawn(&self) -> bool {
        self.ground.is_some()
    }

    /// All edges of the slab together, those of cut-outs too; `None` when it is not drawn.
    #[must_use]
    pub fn perimeter(&self) -> Option<Length> {
        self.ground.as_ref().map(|(slab, _)| Length::meters(ground::perimeter(slab)))
    }

    /// The centroid of the slab without its cut-outs; `None` when it is not drawn.
    #[must_use]
    pub fn centroid(&self) -> Option<Point> {
        self.ground.as_ref().and_then(|(slab, _)| ground::centroid(slab))
    }

    /// The lower left and upper right corners of the box around the slab; `None` when not drawn.
    #[must_use]
    pub fn bounds(&self) -> Option<(Point, Point)> {
        self.ground.as_ref().and_then(|(slab, _)| ground::bounds(slab))
    }

    /// The slab's pieces for drawing, cut-outs as their holes; none when it is not drawn.
    #[must_use]
    pub fn pieces(&self) -> Vec<Piece> {
        self.ground.as_ref().map_or_else(Vec::new, |(slab, _)| ground::pieces(slab))
    }

    /// The cut-outs' pieces for drawing.
    #[must_use]
    pub fn cut_out_pieces(&self) -> Vec<Piece> {
        self.ground.as_ref().map_or_else(Vec::new, |(_, cut)| ground::pieces(cut))
    }

    /// Whether the point lies on the slab or on its edge.
    #[must_use]
    pub fn contains(&self, at: Point) -> bool {
        self.ground.as_ref().is_some_and(|(slab, _)| ground::touches(slab, at))
    }

    /// The zones in the order typed; at least one.
    #[must_use]
    pub fn zones(&self) -> &[Zone] {
        &self.zones
    }

    /// The zone of that name; capitals and spaces around it do not count.
    #[must_use]
    pub fn zone(&self, name: &str) -> Option<&Zone> {
        self.zones.iter().find(|z| zones::folded(&z.name) == zones::folded(name))
    }

    /// The zone in which the point lies. On an edge that two zones share it is the one typed first.
    #[must_use]
    pub fn zone_at(&self, at: Point) -> Option<&Zone> {
        let holds = |z: &&Zone| z.ground.as_ref().is_some_and(|g| ground::holds(g, at));
        // Rounding of a cut can leave a point of the outer edge just outside every zone.
        self.zones.iter().find(holds).or_else(|| self.zones.iter().find(|z| z.contains(at)))
    }

    /// The joints in the order typed.
    #[must_use]
    pub fn joints(&self) -> &[Joint] {
        &self.joints
    }

    /// The patterns of score lines in the order typed.
    #[must_use]
    pub fn patterns(&self) -> &[Pattern] {
        &self.patterns
    }

    /// The slab without its cut-outs; `None` when it is not drawn.
    pub(crate) fn slab_ground(&self) -> Option<&MultiPolygon<f64>> {
        self.ground.as_ref().map(|(slab, _)| slab)
    }

    /// The ground that lines limited to a zone lie on: that zone's, else the slab's.
    pub(crate) fn scope(&self, zone: Option<usize>) -> Option<&MultiPolygon<f64>> {
        zone.map_or_else(|| self.slab_ground(), |i| self.zones.get(i)?.ground.as_ref())
    }

    /// How much of each zone a patch covers; zones that it misses are left out.
    ///
    /// Exact for circles; for polygons to about 10⁻⁹ of the extent.
    #[must_use]
    pub fn shares(&self, patch: &Patch) -> Vec<Share<'_>> {
        self.zones
            .iter()
            .filter_map(|zone| Some((zone, patch.on(zone.ground.as_ref()?))))
            // Less than the rounding of a circle that misses the zone.
            .filter(|(zone, area)| *area > 1e-12 * zone.area.as_square_meters())
            .map(|(zone, area)| Share { zone, area: Area::square_meters(area) })
            .collect()
    }

    /// Every walk of the plan with its path, such as `outline.walk`: how each closed.
    #[must_use]
    pub fn walks(&self) -> &[(String, Walk)] {
        &self.walks
    }

    /// The compass bearing that plan north points to, if it was given.
    #[must_use]
    pub fn north(&self) -> Option<Bearing> {
        self.north
    }
}

fn area_of_cut_outs(spec: &PlanSpec, gross: f64) -> Result<f64, PlanError> {
    let mut sum = 0.0;
    for (i, cut) in spec.cut_outs.iter().enumerate() {
        let path = format!("cut_outs[{i}]");
        match shape::resolve(cut, &path)? {
            Shape::Area(area) => sum += area,
            Shape::Drawn(_) => return Err(PlanError::MixedShapes { path }),
        }
    }
    if sum >= gross {
        let (sum, available) = (Area::square_meters(sum), Area::square_meters(gross));
        return Err(PlanError::AreasTooLarge { path: "cut_outs".to_owned(), sum, available });
    }
    Ok(sum)
}

/// The part of the outline that is cut out, and the walks that drew it.
fn cut_outs(spec: &PlanSpec, outline: &Drawn) -> Result<(MultiPolygon<f64>, Walks), PlanError> {
    let mut parts = Vec::with_capacity(spec.cut_outs.len());
    let mut walks = Vec::new();
    for (i, cut) in spec.cut_outs.iter().enumerate() {
        let path = format!("cut_outs[{i}]");
        let Shape::Drawn(drawn) = shape::resolve(cut, &path)? else {
            return Err(PlanError::MixedShapes { path });
        };
        let tolerance = FIT_TOLERANCE.as_meters() + outline.slack() + drawn.slack();
        let outside = ground::area_wider_than(&ground::without(&drawn.ground, &outline.ground), tolerance);
        if outside > 0.0 {
            return Err(PlanError::CutOutOutside { path, outside: Area::square_meters(outside) });
        }
        parts.push(ground::within(&drawn.ground, &outline.ground));
        if let Some(walk) = drawn.walk {
            walks.push((format!("{path}.walk"), walk));
        }
    }
    Ok((ground::joined(&parts), walks))
}
