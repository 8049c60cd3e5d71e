//! e^(−x) for x of 0 and more, written so that a compiler can work many side by side.
//!
//! The exponentials are most of the work of a map. Only sums, products and shifts of bits are used,
//! so every machine gives the same digits.

/// log₂ e and the two halves of ln 2; the upper one has 32 bits, so that multiples of it are exact.
const LOG2_E: f64 = std::f64::consts::LOG2_E;
const LN_2_HIGH: f64 = f64::from_bits(0x3fe6_2e42_fee0_0000);
const LN_2_LOW: f64 = f64::from_bits(0x3dea_39ef_3579_3c76);
/// 1.5 × 2⁵²: a number added to it is rounded to a whole one, which stands in its lowest bits.
const WHOLE: f64 = 6_755_399_441_055_744.0;
/// Where e^(−x) counts as no smaller: it would be 1e-304.
const FARTHEST: f64 = 700.0;
/// 1/13! to 1/2!: the series of e^r, of which |r| ≤ ½ ln 2 needs no more.
const SERIES: [f64; 12] = [
    1.0 / 6_227_020_800.0,
    1.0 / 479_001_600.0,
    1.0 / 39_916_800.0,
    1.0 / 3_628_800.0,
    1.0 / 362_880.0,
    1.0 / 40_320.0,
    1.0 / 5_040.0,
    1.0 / 720.0,
    1.0 / 120.0,
    1.0 / 24.0,
    1.0 / 6.0,
    0.5,
];

/// e^(−x), x ≥ 0, to 2 units of the last place; beyond 700 it stays at e^(−700).
#[inline(always)]
pub(crate) fn falling(x: f64) -> f64 {
    let x = x.min(FARTHEST);
    let shifted = WHOLE - x * LOG2_E;
    let whole = shifted - WHOLE;
    let rest = (-x - whole * LN_2_HIGH) - whole * LN_2_LOW;
    let mut sum = SERIES[0];
    for term in &SERIES[1..] {
        sum = sum * rest + term;
    }
    let small = (sum * rest + 1.0) * rest + 1.0;
    // 2^whole: the whole number moved into the exponent, whose zero stands at 1023.
    let power = f64::from_bits((shifted.to_bits() << 52).wrapping_add(1023 << 52));
    small * power
}

#[cfg(test)]
mod tests {
    use super::falling;

    /// Against `libm`, whose `exp` errs by less than one unit of the last place.
    #[test]
    fn falls_as_the_exponential_does() {
        assert_eq!(falling(0.0), 1.0);
        let mut worst = 0.0_f64;
        for i in 0..200_000 {
            let x = 699.9 * (f64::from(i) / 200_000.0).powi(3);
            worst = worst.max((falling(x) / libm::exp(-x) - 1.0).abs());
        }
        assert!(worst < 4.0 * f64::EPSILON, "{worst:e}");
        assert!(falling(1e9) > 0.0 && falling(1e9) < 1e-300);
    }
}
