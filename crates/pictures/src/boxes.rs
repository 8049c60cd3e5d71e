//! Boxes along the axes of a drawing, and keeping lettering from lying on lettering.

/// A point of a drawing in its units: x to the right, y down.
pub(crate) type Xy = (f64, f64);

/// A box: left, top, right, bottom.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Box2 {
    pub(crate) left: f64,
    pub(crate) top: f64,
    pub(crate) right: f64,
    pub(crate) bottom: f64,
}

impl Box2 {
    pub(crate) fn around((x, y): Xy, width: f64, height: f64) -> Self {
        Self { left: x - width / 2.0, top: y - height / 2.0, right: x + width / 2.0, bottom: y + height / 2.0 }
    }

    /// The smallest box that holds the points; `None` without points.
    pub(crate) fn of(points: impl IntoIterator<Item = Xy>) -> Option<Self> {
        points.into_iter().map(|p| Self::around(p, 0.0, 0.0)).reduce(Self::join)
    }

    pub(crate) fn join(self, other: Self) -> Self {
        Self {
            left: self.left.min(other.left),
            top: self.top.min(other.top),
            right: self.right.max(other.right),
            bottom: self.bottom.max(other.bottom),
        }
    }

    pub(crate) fn width(self) -> f64 {
        self.right - self.left
    }

    pub(crate) fn height(self) -> f64 {
        self.bottom - self.top
    }

    pub(crate) fn center(self) -> Xy {
        ((self.left + self.right) / 2.0, (self.top + self.bottom) / 2.0)
    }

    /// Area in common, zero when they only touch.
    pub(crate) fn overlap(self, other: Self) -> f64 {
        let w = self.right.min(other.right) - self.left.max(other.left);
        let h = self.bottom.min(other.bottom) - self.top.max(other.top);
        if w > 0.0 && h > 0.0 { w * h } else { 0.0 }
    }

    pub(crate) fn inside(self, frame: Self) -> bool {
        self.left >= frame.left && self.right <= frame.right && self.top >= frame.top && self.bottom <= frame.bottom
    }

    /// Whether a straight stroke comes into the box (its edge does not count).
    pub(crate) fn crossed_by(self, (x1, y1): Xy, (x2, y2): Xy) -> bool {
        // The part of the stroke, from 0 to 1, that lies within both pairs of edges.
        let (mut from, mut to) = (0.0_f64, 1.0_f64);
        for (start, end, low, high) in [(x1, x2, self.left, self.right), (y1, y2, self.top, self.bottom)] {
            let along = end - start;
            if along == 0.0 {
                if start <= low || start >= high {
                    return false;
                }
                continue;
            }
            let (a, b) = ((low - start) / along, (high - start) / along);
            from = from.max(a.min(b));
            to = to.min(a.max(b));
        }
        from < to
    }
}

/// Boxes already taken.
#[derive(Debug, Clone, Default)]
pub(crate) struct Taken(Vec<Box2>);

impl Taken {
    pub(crate) fn take(&mut self, taken: Box2) {
        self.0.push(taken);
    }

    /// Area of a box that others have.
    pub(crate) fn overlap(&self, wanted: Box2) -> f64 {
        self.0.iter().map(|b| b.overlap(wanted)).sum()
    }

    pub(crate) fn is_free(&self, wanted: Box2) -> bool {
        self.0.iter().all(|b| b.overlap(wanted) == 0.0)
    }

    /// Whether a straight stroke comes into one of them.
    pub(crate) fn is_crossed_by(&self, from: Xy, to: Xy) -> bool {
        self.0.iter().any(|b| b.crossed_by(from, to))
    }

    /// Those that reach into a region, to search in it faster.
    pub(crate) fn near(&self, region: Box2) -> Self {
        Self(self.0.iter().filter(|b| b.overlap(region) > 0.0).copied().collect())
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const UNIT: Box2 = Box2 { left: 0.0, top: 0.0, right: 1.0, bottom: 1.0 };

    #[test]
    fn strokes_through_beside_and_along_a_box() {
        assert!(UNIT.crossed_by((-1.0, 0.5), (2.0, 0.5)));
        assert!(UNIT.crossed_by((0.2, 0.2), (0.3, 0.4)), "wholly inside");
        assert!(UNIT.crossed_by((-0.5, 0.5), (0.5, 1.5)) == UNIT.crossed_by((0.5, 1.5), (-0.5, 0.5)));
        assert!(!UNIT.crossed_by((-1.0, 1.0), (2.0, 1.0)), "along the edge");
        assert!(!UNIT.crossed_by((-1.0, 0.5), (-0.1, 0.5)), "ends before it");
        assert!(!UNIT.crossed_by((-1.0, 1.5), (0.5, 3.0)), "passes the corner");
    }

    #[test]
    fn overlap_is_the_area_in_common() {
        let other = Box2 { left: 0.5, top: 0.75, right: 3.0, bottom: 3.0 };
        assert!((UNIT.overlap(other) - 0.125).abs() < 1e-12);
        assert_eq!(UNIT.overlap(Box2 { left: 1.0, ..other }), 0.0);
    }
}
