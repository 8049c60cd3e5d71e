//! From the drawing to the plan and back.

use slab_plan::{Offset, Plan, Point};

use crate::boxes::Xy;

/// Room beside the slab for the lengths of its walls, and without them.
const MARGIN: f64 = 40.0;
const BARE_MARGIN: f64 = 16.0;
/// A drawing is at most so many times as high as wide; a longer slab is drawn narrower.
const TALLEST: f64 = 1.4;

/// How a drawing lies on its plan.
///
/// Plan coordinates in meters of a point `(sx, sy)` of the drawing: `x = x0 + m·sx`,
/// `y = y0 − m·sy`, since y runs down in a drawing and up on a plan.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct PlanView {
    /// Width of the drawing, units.
    pub width: f64,
    /// Its height with the key, units.
    pub height: f64,
    /// Plan x of the drawing's upper left corner, meters.
    pub x0: f64,
    /// Plan y of it, meters.
    pub y0: f64,
    /// Meters for one unit, above zero.
    pub m: f64,
    /// Where the part with the slab ends.
    pub(super) slab_bottom: f64,
}

impl PlanView {
    /// Fits a drawn plan into a width.
    pub(super) fn of(plan: &Plan, width: f64, dimensions: bool) -> Option<Self> {
        let (low, high) = plan.bounds()?;
        let margin = if dimensions { MARGIN } else { BARE_MARGIN };
        let (wide, deep) = ((high.x - low.x).as_meters(), (high.y - low.y).as_meters());
        let m = (wide / (width - 2.0 * margin)).max(deep / (TALLEST * width - 2.0 * margin));
        // A slab narrower than the sheet stands in its middle.
        let left = (width - wide / m) / 2.0;
        let slab_bottom = deep / m + 2.0 * margin;
        let (x0, y0) = (low.x.as_meters() - m * left, high.y.as_meters() + m * margin);
        Some(Self { width, height: slab_bottom, x0, y0, m, slab_bottom })
    }

    /// The place on the plan under a point of the drawing.
    #[must_use]
    pub fn to_plan(&self, sx: f64, sy: f64) -> Point {
        Point::new(Offset::meters(self.x0 + self.m * sx), Offset::meters(self.y0 - self.m * sy))
    }

    /// The point of the drawing over a place on the plan.
    #[must_use]
    pub fn to_svg(&self, at: Point) -> Xy {
        ((at.x.as_meters() - self.x0) / self.m, (self.y0 - at.y.as_meters()) / self.m)
    }
}
