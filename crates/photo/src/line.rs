//! A straight line found in a picture.

/// What a straight line in the picture is taken for.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum LineKind {
    /// Different light on the two sides, as at the edge of a cast shadow.
    Edge,
    /// Dark in itself between equal sides, as a sawn joint or a crack.
    Joint,
}

/// A straight line found in a picture.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Line {
    /// Where it starts, in pixels from the top left corner.
    pub from: [f32; 2],
    /// Where it ends, in pixels.
    pub to: [f32; 2],
    /// Step in ln Y from its darker to its brighter side; for a joint its depth. 0 or more.
    pub step: f32,
    /// What it is taken for.
    pub kind: LineKind,
    /// How far from it cells are not measured, in pixels.
    pub(crate) reach: f32,
    /// Unit normal, and distance of the line from the corner along it, in pixels.
    pub(crate) normal: [f32; 2],
    pub(crate) distance: f32,
}

impl Line {
    /// Distance of a point from the endless line, in pixels, above 0 on the side of its normal.
    pub(crate) fn side(&self, [x, y]: [f32; 2]) -> f32 {
        x * self.normal[0] + y * self.normal[1] - self.distance
    }
}
