//! CIELAB under D65: lightness, red against green, yellow against blue.
//!
//! CIE 15 (M for its text; V: `srgb_random200.csv`, `lab_to_srgb_random200.csv`).

use super::xyz::WHITE;
use super::{ColorError, Srgb, Xyz};

/// δ = 6/29, where the cube root gives way to a straight line.
const DELTA: f64 = 6.0 / 29.0;

/// A color in CIELAB.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Lab {
    lightness: f64,
    a: f64,
    b: f64,
}

impl Lab {
    /// From L (0 black to 100 white), a (green below 0, red above) and b (blue below 0, yellow above).
    /// A gloss or a noisy instrument may read a little above the white of 100, up to 105.
    ///
    /// # Errors
    /// L outside 0 to 105, or a or b outside -200 to 200.
    pub fn new(lightness: f64, a: f64, b: f64) -> Result<Self, ColorError> {
        let refuse = |field, value| Err(ColorError::Lab { field, value });
        if !(0.0..=105.0).contains(&lightness) {
            return refuse("L", lightness);
        }
        if !(-200.0..=200.0).contains(&a) {
            return refuse("a", a);
        }
        if !(-200.0..=200.0).contains(&b) {
            return refuse("b", b);
        }
        Ok(Self { lightness, a, b })
    }

    /// L = 116 f(Y/Yn) − 16, a = 500 (f(X/Xn) − f(Y/Yn)), b = 200 (f(Y/Yn) − f(Z/Zn)).
    pub(super) fn of_xyz(xyz: Xyz) -> Self {
        let [x, y, z] = xyz.as_values();
        let (x, y, z) = (compressed(x / WHITE[0]), compressed(y / WHITE[1]), compressed(z / WHITE[2]));
        Self { lightness: 116.0 * y - 16.0, a: 500.0 * (x - y), b: 200.0 * (y - z) }
    }

    /// For a sum of colors, which may lie outside what a surface can have.
    pub(super) const fn sum(lightness: f64, a: f64, b: f64) -> Self {
        Self { lightness, a, b }
    }

    /// Lightness, 0 black to 100 white.
    #[must_use]
    pub const fn lightness(self) -> f64 {
        self.lightness
    }

    /// Red above 0, green below.
    #[must_use]
    pub const fn a(self) -> f64 {
        self.a
    }

    /// Yellow above 0, blue below.
    #[must_use]
    pub const fn b(self) -> f64 {
        self.b
    }

    /// The same color as CIE XYZ.
    #[must_use]
    pub fn xyz(self) -> Xyz {
        let y = (self.lightness + 16.0) / 116.0;
        let (x, z) = (y + self.a / 500.0, y - self.b / 200.0);
        Xyz::new([expanded(x) * WHITE[0], expanded(y) * WHITE[1], expanded(z) * WHITE[2]])
    }

    /// As a screen would hold it; not every color can be shown ([`Srgb::is_displayable`]).
    #[must_use]
    pub fn srgb(self) -> Srgb {
        self.xyz().linear().encoded()
    }
}

/// f(t) = t^(1/3) above δ³, else t/(3δ²) + 4/29.
fn compressed(t: f64) -> f64 {
    if t > DELTA * DELTA * DELTA { libm::cbrt(t) } else { t / (3.0 * DELTA * DELTA) + 4.0 / 29.0 }
}

/// The inverse of f.
fn expanded(f: f64) -> f64 {
    if f > DELTA { f * f * f } else { 3.0 * DELTA * DELTA * (f - 4.0 / 29.0) }
}
