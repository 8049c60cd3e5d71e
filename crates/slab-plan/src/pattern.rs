//! From a pattern of score lines to its lines, before they are clipped.

use geo::{Coord, Line, MultiPolygon};
use units::{AsWritten, Length};

use super::limits::{length, line_limit};
use super::{PlanError, Point, border, ground};

/// Parallel lines: the direction they run in, a point on one of them, from line to line.
struct Family {
    along: Coord<f64>,
    through: Coord<f64>,
    spacing: f64,
}

/// A grid turned to the left by an angle in radians, over everything in `scope`.
pub(super) fn grid(
    spacing: [(&AsWritten<Length>, &str); 2],
    path: &str,
    origin: Option<Point>,
    left_radians: f64,
    scope: &MultiPolygon<f64>,
) -> Result<Vec<Line<f64>>, PlanError> {
    let through = origin.or_else(|| ground::bounds(scope).map(|(low, _)| low)).unwrap_or_default().coord();
    let (sin, cos) = (libm::sin(left_radians), libm::cos(left_radians));
    let mut lines = Vec::new();
    // The spacing to the right is that of the lines that run up.
    for ((written, field), along) in spacing.into_iter().zip([Coord { x: -sin, y: cos }, Coord { x: cos, y: sin }]) {
        let path = format!("{path}.{field}");
        let family = Family { along, through, spacing: length(written, &path)? };
        lines.extend(family.over(scope, written, &path)?);
    }
    Ok(lines)
}

/// The loops at a constant distance inside every edge of `scope`.
pub(super) fn along_edges(
    inset: &AsWritten<Length>,
    path: &str,
    scope: &MultiPolygon<f64>,
) -> Result<Vec<Line<f64>>, PlanError> {
    let path = format!("{path}.inset");
    let lines = border::inside(scope, length(inset, &path)?);
    if lines.is_empty() {
        return Err(PlanError::BorderTooWide { path, typed: inset.text().to_owned() });
    }
    line_limit(lines.len(), &path, inset.text())?;
    Ok(lines)
}

impl Family {
    /// Every line of the family that can touch the box around `scope`, from edge to edge of that box.
    fn over(
        &self,
        scope: &MultiPolygon<f64>,
        written: &AsWritten<Length>,
        path: &str,
    ) -> Result<Vec<Line<f64>>, PlanError> {
        let Some((low, high)) = ground::bounds(scope) else { return Ok(Vec::new()) };
        let (low, high) = (low.coord(), high.coord());
        let across = Coord { x: self.along.y, y: -self.along.x };
        let corners = [low, Coord { x: high.x, y: low.y }, high, Coord { x: low.x, y: high.y }];
        let reach = |axis: Coord<f64>| {
            corners
                .iter()
                .map(|c| (*c - self.through).x * axis.x + (*c - self.through).y * axis.y)
                .fold((f64::INFINITY, f64::NEG_INFINITY), |(least, most), value| (least.min(value), most.max(value)))
        };
        let (first, last) = reach(across);
        let (first, last) = (libm::ceil(first / self.spacing), libm::floor(last / self.spacing));
        let count = (last - first + 1.0).max(0.0);
        // Counted before a single one is made; a count beyond all bounds stays a count.
        line_limit(count.min(1e12) as usize, path, written.text())?;
        let (from, to) = reach(self.along);
        let margin = (to - from) * 0.01;
        let place = |row: f64, along: f64| self.through + across * (row * self.spacing) + self.along * along;
        Ok((0..count as usize)
            .map(|i| first + i as f64)
            .map(|row| Line::new(place(row, from - margin), place(row, to + margin)))
            .collect())
    }
}
