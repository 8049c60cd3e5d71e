//! CIE XYZ under D65, relative to a white of Y = 1.

use super::{Lab, LinearRgb};

pub(super) type Matrix = [[f64; 3]; 3];

/// Chromaticities x, y of the red, green and blue primaries (IEC 61966-2-1, after ITU-R BT.709).
const PRIMARIES: [[f64; 2]; 3] = [[0.64, 0.33], [0.30, 0.60], [0.15, 0.06]];
/// Chromaticity of D65.
const WHITE_XY: [f64; 2] = [0.3127, 0.3290];
/// XYZ of D65 at Y = 1.
pub(super) const WHITE: [f64; 3] = unit_luminance(WHITE_XY);
/// Light to XYZ: columns are the primaries, scaled so that their sum is the white.
pub(super) const FROM_LIGHT: Matrix = from_light();
/// XYZ to light.
const TO_LIGHT: Matrix = inverse(FROM_LIGHT);

/// A color as CIE XYZ under D65, the white of a screen at Y = 1.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Xyz([f64; 3]);

impl Xyz {
    /// From X, Y and Z with white at Y = 1.
    #[must_use]
    pub const fn new(values: [f64; 3]) -> Self {
        Self(values)
    }

    /// X, Y and Z.
    #[must_use]
    pub const fn as_values(self) -> [f64; 3] {
        self.0
    }

    pub(super) fn of_light(light: [f64; 3]) -> Self {
        Self(times(FROM_LIGHT, light))
    }

    /// As light of the sRGB primaries; outside 0 to 1 no screen shows it.
    #[must_use]
    pub fn linear(self) -> LinearRgb {
        LinearRgb::new(times(TO_LIGHT, self.0))
    }

    /// The same color in CIELAB.
    #[must_use]
    pub fn lab(self) -> Lab {
        Lab::of_xyz(self)
    }
}

const fn unit_luminance(xy: [f64; 2]) -> [f64; 3] {
    let [x, y] = xy;
    [x / y, 1.0, (1.0 - x - y) / y]
}

const fn from_light() -> Matrix {
    let [r, g, b] = [unit_luminance(PRIMARIES[0]), unit_luminance(PRIMARIES[1]), unit_luminance(PRIMARIES[2])];
    let columns = [[r[0], g[0], b[0]], [r[1], g[1], b[1]], [r[2], g[2], b[2]]];
    let scale = times(inverse(columns), WHITE);
    let mut scaled = columns;
    let mut row = 0;
    while row < 3 {
        let mut column = 0;
        while column < 3 {
            scaled[row][column] *= scale[column];
            column += 1;
        }
        row += 1;
    }
    scaled
}

const fn times(m: Matrix, v: [f64; 3]) -> [f64; 3] {
    [
        m[0][0] * v[0] + m[0][1] * v[1] + m[0][2] * v[2],
        m[1][0] * v[0] + m[1][1] * v[1] + m[1][2] * v[2],
        m[2][0] * v[0] + m[2][1] * v[1] + m[2][2] * v[2],
    ]
}

/// By cofactors; the primaries span a triangle, so the determinant is not zero.
const fn inverse(m: Matrix) -> Matrix {
    let [[a, b, c], [d, e, f], [g, h, i]] = m;
    let (ca, cb, cc) = (e * i - f * h, f * g - d * i, d * h - e * g);
    let determinant = a * ca + b * cb + c * cc;
    [
        [ca / determinant, (c * h - b * i) / determinant, (b * f - c * e) / determinant],
        [cb / determinant, (a * i - c * g) / determinant, (c * d - a * f) / determinant],
        [cc / determinant, (b * g - a * h) / determinant, (a * e - b * d) / determinant],
    ]
}
