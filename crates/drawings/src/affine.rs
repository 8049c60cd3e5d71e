//! Where a block's own coordinates end up: turned, scaled, mirrored, moved.

use crate::Spot;

/// `x' = a x + b y + e`, `y' = c x + d y + f`.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Affine {
    a: f64,
    b: f64,
    c: f64,
    d: f64,
    e: f64,
    f: f64,
}

impl Affine {
    pub(crate) const SAME: Self = Self { a: 1.0, b: 0.0, c: 0.0, d: 1.0, e: 0.0, f: 0.0 };

    /// The mirror of an entity drawn from below.
    pub(crate) const FROM_BELOW: Self = Self { a: -1.0, ..Self::SAME };

    pub(crate) const fn moved(x: f64, y: f64) -> Self {
        Self { e: x, f: y, ..Self::SAME }
    }

    pub(crate) const fn scaled(x: f64, y: f64) -> Self {
        Self { a: x, d: y, ..Self::SAME }
    }

    /// Turned to the left.
    pub(crate) fn turned(degrees: f64) -> Self {
        let (sin, cos) = match degrees.rem_euclid(360.0) {
            0.0 => (0.0, 1.0),
            90.0 => (1.0, 0.0),
            180.0 => (0.0, -1.0),
            270.0 => (-1.0, 0.0),
            other => (libm::sin(other.to_radians()), libm::cos(other.to_radians())),
        };
        Self { a: cos, b: -sin, c: sin, d: cos, e: 0.0, f: 0.0 }
    }

    /// First `inner`, then this.
    pub(crate) fn after(self, inner: Self) -> Self {
        Self {
            a: self.a * inner.a + self.b * inner.c,
            b: self.a * inner.b + self.b * inner.d,
            c: self.c * inner.a + self.d * inner.c,
            d: self.c * inner.b + self.d * inner.d,
            e: self.a * inner.e + self.b * inner.f + self.e,
            f: self.c * inner.e + self.d * inner.f + self.f,
        }
    }

    pub(crate) fn of(self, at: Spot) -> Spot {
        Spot::new(self.a * at.x + self.b * at.y + self.e, self.c * at.x + self.d * at.y + self.f)
    }

    /// By how much areas grow.
    pub(crate) fn area(self) -> f64 {
        (self.a * self.d - self.b * self.c).abs()
    }

    /// By how much lengths grow at most.
    pub(crate) fn stretch(self) -> f64 {
        libm::hypot(libm::hypot(self.a, self.b), libm::hypot(self.c, self.d))
    }
}
