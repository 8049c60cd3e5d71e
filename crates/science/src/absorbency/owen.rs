//! Owen's T function.

use std::f64::consts::TAU;

use crate::chance::normal_cdf;

/// Gauss-Legendre points and weights, 20 a unit, upper half (NumPy's `leggauss(20)`, grade V).
const POINTS: [f64; 10] = [
    0.076_526_521_133_497_34,
    0.227_785_851_141_645_07,
    0.373_706_088_715_419_55,
    0.510_867_001_950_827_1,
    0.636_053_680_726_515,
    0.746_331_906_460_150_8,
    0.839_116_971_822_218_8,
    0.912_234_428_251_326,
    0.963_971_927_277_913_8,
    0.993_128_599_185_095,
];
const WEIGHTS: [f64; 10] = [
    0.152_753_387_130_726_28,
    0.149_172_986_472_604_24,
    0.142_096_109_318_382_4,
    0.131_688_638_449_176_9,
    0.118_194_531_961_518_6,
    0.101_930_119_817_240_7,
    0.083_276_741_576_704_71,
    0.062_672_048_334_109_08,
    0.040_601_429_800_386_446,
    0.017_614_007_139_150_893,
];

/// Owen's T: the chance that, of two independent standard normal numbers X and Y, X is above `h` and
/// Y between 0 and `a`·X. `a` may be infinite. Absolute error below 1e-15 (checked against SciPy's
/// `owens_t`, grade V).
///
/// T(h,a) = 1/2π ∫₀ᵃ e^(−h²(1+x²)/2)/(1+x²) dx (Owen, Annals of Mathematical Statistics 27, 1956;
/// grade M), by 20 Gauss-Legendre points where |a| ≤ 1; beyond, by
/// T(h,a) = ½(Q(h)+Q(ah)) − Q(h)Q(ah) − T(ah,1/a) with Q the upper tail.
#[must_use]
pub fn owens_t(h: f64, a: f64) -> f64 {
    if h.is_nan() || a.is_nan() {
        return f64::NAN;
    }
    let (height, slope) = (h.abs(), a.abs());
    let value = if slope <= 1.0 {
        integral(height, slope)
    } else if slope.is_infinite() {
        0.5 * normal_cdf(-height)
    } else {
        let (q, r) = (normal_cdf(-height), normal_cdf(-slope * height));
        0.5 * (q + r) - q * r - integral(slope * height, 1.0 / slope)
    };
    value.copysign(a)
}

fn integral(h: f64, a: f64) -> f64 {
    let (half, fall) = (0.5 * a, -0.5 * h * h);
    let at = |x: f64| {
        let square = 1.0 + x * x;
        libm::exp(fall * square) / square
    };
    let sum: f64 = POINTS.iter().zip(&WEIGHTS).map(|(p, w)| w * (at(half * (1.0 - p)) + at(half * (1.0 + p)))).sum();
    half * sum / TAU
}
