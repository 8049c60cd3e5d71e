//! From a typed shape to ground.

use geo::line_intersection::{LineIntersection, line_intersection};
use geo::{Area as _, Coord, LineString, MultiPolygon, Polygon, Rect};
use units::Length;

use super::limits::{area, corner_limit, length, offset, shape_limit};
use super::{PlanError, Point, ShapeSpec, Walk, WrittenPoint, circle, ground, walk};

/// A shape after reading.
pub(super) enum Shape {
    Drawn(Drawn),
    /// Square meters only.
    Area(f64),
}

/// A shape with its place.
pub(super) struct Drawn {
    pub(super) ground: MultiPolygon<f64>,
    pub(super) walk: Option<Walk>,
}

impl Drawn {
    /// How far the adjustment of its walk may have moved a corner, meters.
    pub(super) fn slack(&self) -> f64 {
        self.walk.as_ref().map_or(0.0, |w| w.misclosure.as_meters())
    }
}

/// Reads the shape at `path`.
pub(super) fn resolve(spec: &ShapeSpec, path: &str) -> Result<Shape, PlanError> {
    let (ground, walk) = match spec {
        ShapeSpec::Area(written) => return Ok(Shape::Area(area(written, &format!("{path}.area"))?)),
        ShapeSpec::Rectangles(rectangles) => {
            let path = format!("{path}.rectangles");
            shape_limit(rectangles.len(), 1, &path)?;
            let mut parts = Vec::with_capacity(rectangles.len());
            for (i, rectangle) in rectangles.iter().enumerate() {
                let path = format!("{path}[{i}]");
                let low = coord(&rectangle.corner, &format!("{path}.corner"))?;
                let width = length(&rectangle.width, &format!("{path}.width"))?;
                let depth = length(&rectangle.depth, &format!("{path}.depth"))?;
                let high = Coord { x: low.x + width, y: low.y + depth };
                parts.push(MultiPolygon(vec![Rect::new(low, high).to_polygon()]));
            }
            (ground::joined(&parts), None)
        }
        ShapeSpec::Polygon(corners) => {
            let path = format!("{path}.polygon");
            let mut coords = Vec::with_capacity(corners.len());
            for (i, corner) in corners.iter().enumerate() {
                coords.push(coord(corner, &format!("{path}[{i}]"))?);
            }
            (ring(coords, &path)?, None)
        }
        ShapeSpec::Walk(spec) => {
            let path = format!("{path}.walk");
            let walk = walk::resolve(spec, &path)?;
            (ring(walk.points.iter().map(|p| p.coord()).collect(), &path)?, Some(walk))
        }
    };
    Ok(Shape::Drawn(Drawn { ground, walk }))
}

fn coord(written: &WrittenPoint, path: &str) -> Result<Coord<f64>, PlanError> {
    let axis = |i: usize| offset(&written[i], path, &format!("[{i}]"));
    Ok(Point::new(axis(0)?, axis(1)?).coord())
}

/// A polygon from its corners, proved simple: three corners or more, no edge without length, no two
/// edges that cross or touch, an area.
pub(super) fn ring(mut coords: Vec<Coord<f64>>, path: &str) -> Result<MultiPolygon<f64>, PlanError> {
    if coords.len() > 3 && coords.first() == coords.last() {
        coords.pop();
    }
    corner_limit(coords.len(), path)?;
    let line = LineString::from(coords);
    let closed = Polygon::new(line, Vec::new());
    let edges: Vec<_> = closed.exterior().lines().collect();
    if let Some(i) = edges.iter().position(|e| e.start == e.end) {
        let typed = format!("corner {} and corner {} in one place", i + 1, (i + 1) % edges.len() + 1);
        return Err(PlanError::ZeroLength { path: path.to_owned(), typed });
    }
    for i in 0..edges.len() {
        for j in i + 1..edges.len() {
            let neighbors = j == i + 1 || (i == 0 && j == edges.len() - 1);
            let at = match line_intersection(edges[i], edges[j]) {
                Some(LineIntersection::Collinear { intersection }) => intersection.start,
                Some(LineIntersection::SinglePoint { intersection, .. }) if !neighbors => intersection,
                _ => continue,
            };
            let at = Point::of(at);
            return Err(PlanError::Crossing { path: path.to_owned(), first: i + 1, second: j + 1, at });
        }
    }
    // Corners can lie so nearly in a line that rounding leaves nothing between them.
    let longest = edges.iter().map(|e| libm::hypot(e.dx(), e.dy())).fold(0.0, f64::max);
    if closed.unsigned_area() <= 1e-12 * longest * longest {
        return Err(PlanError::NoArea { path: path.to_owned(), typed: None });
    }
    Ok(MultiPolygon(vec![closed]))
}

/// A patch on the plan, such as the place of an incident: a circle or a polygon.
#[derive(Debug, Clone, PartialEq)]
pub struct Patch(PatchShape);

#[derive(Debug, Clone, PartialEq)]
enum PatchShape {
    Circle { center: Coord<f64>, radius: f64 },
    Polygon(MultiPolygon<f64>),
}

impl Patch {
    /// Everything within `radius` of a point; `radius` above zero and at most 10 km.
    ///
    /// # Errors
    /// [`PlanError::ZeroLength`] or [`PlanError::TooLarge`] at path `radius`.
    pub fn circle(center: Point, radius: Length) -> Result<Self, PlanError> {
        let meters = radius.as_meters();
        let typed = format!("{meters} m");
        if meters > super::offset::LARGEST_METERS {
            return Err(PlanError::TooLarge { path: "radius".to_owned(), typed });
        }
        if meters > 0.0 {
            Ok(Self(PatchShape::Circle { center: center.coord(), radius: meters }))
        } else {
            Err(PlanError::ZeroLength { path: "radius".to_owned(), typed })
        }
    }

    /// Whether a point lies in it or on its edge.
    #[must_use]
    pub fn holds(&self, at: Point) -> bool {
        match &self.0 {
            PatchShape::Circle { center, radius } => {
                let at = at.coord();
                libm::hypot(at.x - center.x, at.y - center.y) <= *radius
            }
            PatchShape::Polygon(polygon) => ground::touches(polygon, at),
        }
    }

    /// How much of it lies on the ground, square meters.
    pub(crate) fn on(&self, own: &MultiPolygon<f64>) -> f64 {
        match &self.0 {
            PatchShape::Circle { center, radius } => circle::shared_area(own, *center, *radius),
            PatchShape::Polygon(polygon) => ground::area(&ground::common(own, polygon)),
        }
    }

    /// The polygon with these corners in order.
    ///
    /// # Errors
    /// What a polygon of a plan can have wrong, at path `polygon`.
    pub fn polygon(corners: &[Point]) -> Result<Self, PlanError> {
        ring(corners.iter().map(|p| p.coord()).collect(), "polygon").map(|p| Self(PatchShape::Polygon(p)))
    }
}
