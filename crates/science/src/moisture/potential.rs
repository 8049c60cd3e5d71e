//! The integral of the diffusivity over humidity (Kirchhoff's potential), tabulated.

use units::{Fraction, RelativeHumidity};

use super::DryingError;

/// How diffusivity falls with humidity: D(H)/D1 = α + (1-α)/(1 + ((1-H)/(1-Hc))ⁿ).
///
/// CEB-FIP Model Code 1990, 2.1.9 (grade M); the form is that of Bažant and Najjar 1972 (grade M).
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Shape {
    /// α: what is left of the diffusivity in dry concrete, as a share of D1.
    pub(crate) dry_share: f64,
    /// Hc: the humidity at which the diffusivity has lost half of what it loses, a share of 1.
    pub(crate) knee: f64,
    /// n: how sharp the fall is.
    pub(crate) exponent: f64,
}

impl Shape {
    /// α 0.05, Hc 80 %, n 15: Model Code 1990 (grade M).
    pub const MODEL_CODE_1990: Self = Self { dry_share: 0.05, knee: 0.80, exponent: 15.0 };

    /// The same diffusivity at every humidity: the case with a known series solution.
    pub const CONSTANT: Self = Self { dry_share: 1.0, knee: 0.80, exponent: 15.0 };

    /// A shape of one's own: α (`dry_share`, above 0), Hc (`knee`, between 0 and 100 %, both
    /// excluded) and n (`exponent`, 1 to 60).
    ///
    /// # Errors
    /// When one is outside its range.
    pub fn new(dry_share: Fraction, knee: RelativeHumidity, exponent: f64) -> Result<Self, DryingError> {
        let shape = Self { dry_share: dry_share.as_share(), knee: knee.as_share(), exponent };
        let fail = |field, value| Err(DryingError::Shape { field, value });
        if shape.dry_share <= 0.0 {
            return fail("dry share", shape.dry_share);
        }
        if shape.knee <= 0.0 || shape.knee >= 1.0 {
            return fail("knee", shape.knee);
        }
        if !(1.0..=60.0).contains(&exponent) {
            return fail("exponent", exponent);
        }
        Ok(shape)
    }

    /// D(H)/D1, from `dry_share` towards 1.
    #[must_use]
    pub fn relative_diffusivity(&self, humidity: RelativeHumidity) -> f64 {
        self.relative(humidity.as_share())
    }

    /// D(H)/D1 at a humidity as a share of 1; held at its end values outside 0 to 1.
    pub(crate) fn relative(&self, humidity: f64) -> f64 {
        let dryness = (1.0 - humidity.clamp(0.0, 1.0)) / (1.0 - self.knee);
        self.dry_share + (1.0 - self.dry_share) / (1.0 + libm::pow(dryness, self.exponent))
    }

    /// ∫ D/D1 dH from 50 to 90 % RH: what decides how fast a room dries a probe's depth to 85 or
    /// 90 %. Shapes with the same integral reach 85 % within 15 % of the same time (200 random
    /// shapes, 100 mm, 50 % RH), while with the same D1 they differ by a factor of 1.8.
    pub(crate) fn drying_integral(&self) -> f64 {
        const PIECES: i32 = 16;
        let width = 0.4 / f64::from(PIECES);
        let at = |i: i32| self.relative(0.5 + width * f64::from(i));
        let inner: f64 = (1..PIECES).map(|i| if i % 2 == 1 { 4.0 * at(i) } else { 2.0 * at(i) }).sum();
        width / 3.0 * (at(0) + inner + at(PIECES))
    }
}

/// Intervals of the table. The cubic's error is h⁴/384·max|Φ''''|, below 1e-6 of Φ's range for
/// the published shape; a test holds it there.
const INTERVALS: usize = 256;

/// Φ(H) = ∫₀ᴴ D(h)/D1 dh and its slope.
///
/// Why a table: the flux between two cells is a difference of Φ, so the diffusivity is integrated
/// over the whole range of humidity between them (the value at the mean humidity errs 8e-3 in RH
/// at the drying front), and a cubic with matched slopes costs a few multiplications where the
/// formula costs a power.
#[derive(Debug, Clone, Default)]
pub(crate) struct Potential {
    /// Coefficients of the cubic in each interval.
    cubics: Vec<[f64; 4]>,
    slope_at_0: f64,
    slope_at_1: f64,
    value_at_1: f64,
}

impl Potential {
    /// Tabulates a shape, reusing the space of an earlier table.
    pub(crate) fn rebuild(&mut self, shape: &Shape) {
        let step = 1.0 / INTERVALS as f64;
        self.cubics.clear();
        self.cubics.reserve(INTERVALS);
        let mut value = 0.0;
        let mut left = shape.relative(0.0);
        self.slope_at_0 = left;
        for i in 0..INTERVALS {
            let start = i as f64 * step;
            let right = shape.relative((i + 1) as f64 * step);
            // Boole's rule: error of order h⁷, far below the cubic's own.
            let quarter = |part: f64| shape.relative(start + part * step);
            let area =
                step / 90.0 * (7.0 * (left + right) + 32.0 * (quarter(0.25) + quarter(0.75)) + 12.0 * quarter(0.5));
            let (m0, m1) = (left * step, right * step);
            self.cubics.push([value, m0, 3.0 * area - 2.0 * m0 - m1, m0 + m1 - 2.0 * area]);
            value += area;
            left = right;
        }
        self.value_at_1 = value;
        self.slope_at_1 = left;
    }

    /// Φ and dΦ/dH; straight beyond 0 and 1.
    #[inline]
    pub(crate) fn at(&self, humidity: f64) -> (f64, f64) {
        let place = humidity * INTERVALS as f64;
        if humidity > 0.0 && humidity < 1.0 {
            let interval = place as usize;
            let t = place - interval as f64;
            let [c0, c1, c2, c3] = self.cubics[interval.min(INTERVALS - 1)];
            let value = c0 + t * (c1 + t * (c2 + t * c3));
            let slope = (c1 + t * (2.0 * c2 + t * 3.0 * c3)) * INTERVALS as f64;
            (value, slope)
        } else if humidity <= 0.0 {
            (humidity * self.slope_at_0, self.slope_at_0)
        } else {
            (self.value_at_1 + (humidity - 1.0) * self.slope_at_1, self.slope_at_1)
        }
    }
}

#[cfg(test)]
mod tests {
    use super::{Potential, Shape};

    /// The table against a fine Simpson sum of the formula.
    #[test]
    fn table_integrates_the_formula() {
        let sharp = Shape { dry_share: 0.02, knee: 0.86, exponent: 22.0 };
        for (shape, allowed) in [(Shape::MODEL_CODE_1990, (1e-6, 1e-4)), (sharp, (3e-6, 1e-3))] {
            let mut table = Potential::default();
            table.rebuild(&shape);
            let pieces = 100_000;
            let width = 1.0 / f64::from(pieces);
            let mut sum = 0.0;
            let mut worst = (0.0_f64, 0.0_f64);
            for i in 0..pieces {
                let x = f64::from(i) * width;
                sum += width / 6.0
                    * (shape.relative(x) + 4.0 * shape.relative(x + width / 2.0) + shape.relative(x + width));
                let (value, slope) = table.at(x + width);
                worst.0 = worst.0.max((value - sum).abs());
                worst.1 = worst.1.max((slope / shape.relative(x + width) - 1.0).abs());
            }
            assert!(worst.0 < allowed.0 * sum, "{shape:?}: off by {}", worst.0);
            assert!(worst.1 < allowed.1, "{shape:?}: slope off by {}", worst.1);
        }
    }
}
