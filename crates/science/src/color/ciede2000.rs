//! How far two colors lie apart to the eye: CIEDE2000.

use super::Lab;
use crate::{FormulaSource, Grade};

/// The difference formula with kL = kC = kH = 1.
pub const CIEDE2000: FormulaSource = FormulaSource {
    id: "ciede2000",
    document: "CIE 142-2001; Sharma, Wu and Dalal 2005, Color Research and Application 30(1)",
    locator: "equations 2 to 22; 34 published pairs",
    grade: Grade::Verified,
};

/// 25⁷.
const CHROMA_POWER: f64 = 6_103_515_625.0;

/// ΔE00: 0 is the same color; about 1 is what a trained eye can tell side by side (M).
#[derive(Debug, Clone, Copy, PartialEq, PartialOrd)]
pub struct ColorDifference(f64);

impl ColorDifference {
    /// For a number that came of differences, such as their mean.
    pub(super) const fn units(value: f64) -> Self {
        Self(value)
    }

    /// In units of ΔE00.
    #[must_use]
    pub const fn as_units(self) -> f64 {
        self.0
    }
}

/// Mean of two hues in degrees the short way round.
fn mean_hue(first: f64, second: f64) -> f64 {
    let sum = first + second;
    if (first - second).abs() <= 180.0 {
        sum / 2.0
    } else if sum < 360.0 {
        (sum + 360.0) / 2.0
    } else {
        (sum - 360.0) / 2.0
    }
}

/// Hue in degrees, 0 to 360; 0 for a neutral color, which has none.
fn hue(a: f64, b: f64) -> f64 {
    if a == 0.0 && b == 0.0 {
        return 0.0;
    }
    let degrees = libm::atan2(b, a).to_degrees();
    if degrees < 0.0 { degrees + 360.0 } else { degrees }
}

/// √(C⁷/(C⁷ + 25⁷))
fn chroma_share(chroma: f64) -> f64 {
    let power = libm::pow(chroma, 7.0);
    libm::sqrt(power / (power + CHROMA_POWER))
}

/// The difference of two colors, CIEDE2000 with kL = kC = kH = 1. Symmetric.
///
/// Where the hues lie opposite each other the formula itself jumps by up to a few tenths; where one
/// color is neutral its hue does not enter.
///
/// Source: [`CIEDE2000`], V.
#[must_use]
pub fn ciede2000(first: Lab, second: Lab) -> ColorDifference {
    let chroma = |lab: Lab, scale: f64| libm::hypot(lab.a() * scale, lab.b());
    // C̄ab, G, a' = (1 + G) a   (eq. 2 to 5)
    let stretched = 1.0 + 0.5 * (1.0 - chroma_share(0.5 * (chroma(first, 1.0) + chroma(second, 1.0))));
    let (c1, c2) = (chroma(first, stretched), chroma(second, stretched));
    let (h1, h2) = (hue(first.a() * stretched, first.b()), hue(second.a() * stretched, second.b()));

    // ΔL', ΔC', ΔH'   (eq. 8 to 11)
    let lightness = second.lightness() - first.lightness();
    let chroma_step = c2 - c1;
    let turn = match h2 - h1 {
        turn if turn > 180.0 => turn - 360.0,
        turn if turn < -180.0 => turn + 360.0,
        turn => turn,
    };
    let hue_step = 2.0 * libm::sqrt(c1 * c2) * libm::sin((turn / 2.0).to_radians());

    // L̄', C̄', h̄', T   (eq. 12 to 15)
    let mean_lightness = 0.5 * (first.lightness() + second.lightness());
    let mean_chroma = 0.5 * (c1 + c2);
    let mean = mean_hue(h1, h2);
    let cosine = |degrees: f64| libm::cos(degrees.to_radians());
    let t = 1.0 - 0.17 * cosine(mean - 30.0) + 0.24 * cosine(2.0 * mean) + 0.32 * cosine(3.0 * mean + 6.0)
        - 0.20 * cosine(4.0 * mean - 63.0);

    // SL, SC, SH, RT   (eq. 16 to 21)
    let off_middle = (mean_lightness - 50.0) * (mean_lightness - 50.0);
    let by_lightness = 1.0 + 0.015 * off_middle / libm::sqrt(20.0 + off_middle);
    let by_chroma = 1.0 + 0.045 * mean_chroma;
    let by_hue = 1.0 + 0.015 * mean_chroma * t;
    let from_blue = (mean - 275.0) / 25.0;
    let rotation = 30.0 * libm::exp(-from_blue * from_blue);
    let turned = -libm::sin((2.0 * rotation).to_radians()) * 2.0 * chroma_share(mean_chroma);

    // ΔE00   (eq. 22)
    let (l, c, h) = (lightness / by_lightness, chroma_step / by_chroma, hue_step / by_hue);
    ColorDifference(libm::sqrt((l * l + c * c + h * h + turned * c * h).max(0.0)))
}
