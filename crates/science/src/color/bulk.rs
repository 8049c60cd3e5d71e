//! Whole pictures at once: the same formulas as one color at a time, in 32-bit numbers and in an
//! order that a processor can do several of at once.
//!
//! Why this module exists: a photograph has twelve million pixels, and the exact functions take
//! seconds for them. Nothing here is exact: every function states its distance from the exact one,
//! and the tests hold it to that. A value that goes into a record comes from the exact functions.

use rayon::prelude::*;

use super::xyz::{FROM_LIGHT, WHITE};
use super::{Lab, Srgb};

/// How many pixels one processor takes at a time.
const SHARE: usize = 1 << 15;
/// How many pixels are worked on together: so many that the loop over them is kept as a loop, which is
/// what compilers turn into work on several at once.
const LANES: usize = 64;

/// Turns pixels into CIELAB (D65); holds the light of each of the 256 values of a byte.
#[derive(Debug, Clone)]
pub struct Bulk {
    light: [f32; 256],
    /// Rows X/Xn, Y/Yn, Z/Zn; columns red, green, blue.
    matrix: [[f32; 3]; 3],
}

impl Default for Bulk {
    fn default() -> Self {
        Self::new()
    }
}

#[expect(clippy::cast_possible_truncation, reason = "32 bits are what this module is about")]
impl Bulk {
    /// Fills the table.
    #[must_use]
    pub fn new() -> Self {
        let mut light = [0.0; 256];
        for (byte, value) in (0..=255_u8).zip(&mut light) {
            *value = Srgb::bytes([byte; 3]).linear().as_light()[0] as f32;
        }
        let mut matrix = [[0.0; 3]; 3];
        for (row, out) in matrix.iter_mut().enumerate() {
            for (column, value) in out.iter_mut().enumerate() {
                *value = (FROM_LIGHT[row][column] / WHITE[row]) as f32;
            }
        }
        Self { light, matrix }
    }

    /// Light of each byte value, 0 to 1, to 1e-7 of it.
    #[must_use]
    pub const fn light(&self) -> &[f32; 256] {
        &self.light
    }

    /// CIELAB of pixels: `pixels` red, green, blue by byte; `lab` L, a, b, three for each pixel.
    /// What does not make a whole pixel, or has no room, is left. L, a and b are within 0.001 of [`Srgb::lab`].
    /// Long pictures are shared among the processors.
    pub fn lab_of_bytes(&self, pixels: &[u8], lab: &mut [f32]) {
        pixels
            .par_chunks(3 * SHARE)
            .zip(lab.par_chunks_mut(3 * SHARE))
            .for_each(|(pixels, lab)| self.labs(pixels, lab));
    }

    fn labs(&self, pixels: &[u8], lab: &mut [f32]) {
        let mut chunks = pixels.chunks_exact(3 * LANES);
        let mut outs = lab.chunks_exact_mut(3 * LANES);
        for (chunk, out) in (&mut chunks).zip(&mut outs) {
            let mut light = [[0.0; LANES]; 3];
            for (lane, pixel) in chunk.as_chunks::<3>().0.iter().enumerate() {
                for channel in 0..3 {
                    light[channel][lane] = self.light[usize::from(pixel[channel])];
                }
            }
            self.lanes(&light, out);
        }
        for (pixel, out) in chunks.remainder().as_chunks::<3>().0.iter().zip(outs.into_remainder().chunks_exact_mut(3))
        {
            out.copy_from_slice(&self.lab_of_light(pixel.map(|byte| self.light[usize::from(byte)])));
        }
    }

    /// CIELAB of one amount of red, green and blue light, 0 to 1. Each within 0.001.
    #[must_use]
    pub fn lab_of_light(&self, light: [f32; 3]) -> [f32; 3] {
        let f = self.matrix.map(|m| compressed(m[0] * light[0] + m[1] * light[1] + m[2] * light[2]));
        [116.0 * f[1] - 16.0, 500.0 * (f[0] - f[1]), 200.0 * (f[1] - f[2])]
    }

    fn lanes(&self, light: &[[f32; LANES]; 3], out: &mut [f32]) {
        let mut f = [[0.0; LANES]; 3];
        for (values, m) in f.iter_mut().zip(&self.matrix) {
            for lane in 0..LANES {
                values[lane] = compressed(m[0] * light[0][lane] + m[1] * light[1][lane] + m[2] * light[2][lane]);
            }
        }
        for (lane, lab) in out.as_chunks_mut::<3>().0.iter_mut().enumerate().take(LANES) {
            let [x, y, z] = [f[0][lane], f[1][lane], f[2][lane]];
            *lab = [116.0 * y - 16.0, 500.0 * (x - y), 200.0 * (y - z)];
        }
    }
}

/// f(t) = t^(1/3) above δ³, else t/(3δ²) + 4/29, without a branch.
#[inline]
fn compressed(t: f32) -> f32 {
    const DELTA: f32 = 6.0 / 29.0;
    let line = t * (1.0 / (3.0 * DELTA * DELTA)) + 4.0 / 29.0;
    if t > DELTA * DELTA * DELTA { cube_root(t) } else { line }
}

/// Cube root of a positive number, without a division: the inverse root y, guessed by a third of the
/// exponent (off by at most 4 %), then bettered by the series of (1 − e)^(−1/3) with e = 1 − t y³, to e³
/// and then to e. What is left is the rounding of 32 bits.
#[inline(always)]
#[expect(clippy::cast_possible_wrap, clippy::cast_precision_loss, reason = "the guess works on the bits")]
fn cube_root(t: f32) -> f32 {
    /// 4/3 of the bits of 1, less what makes the guess best, over 2⁹; and 2²³, at which a number's last
    /// bit is worth 1. So the guess is made in floating point without a turn to integers and back.
    const BIAS: f32 = 2_773_373.0 + 8_388_608.0;
    let guess = ((t.to_bits() >> 9) as i32 as f32) * (-1.0 / 3.0) + BIAS;
    let y = f32::from_bits(guess.to_bits() << 9);
    let e = 1.0 - t * y * y * y;
    let y = y * (1.0 + e * (1.0 / 3.0 + e * (2.0 / 9.0 + e * (14.0 / 81.0))));
    let e = 1.0 - t * y * y * y;
    let y = y + y * e * (1.0 / 3.0);
    t * y * y
}

/// ΔE00 of many colors against one: `lab` holds L, a, b of each, `out` gets one number for each.
/// Within 0.001 of [`super::ciede2000`], except within a degree of opposite hues, where the formula
/// itself jumps. Long pictures are shared among the processors.
pub fn ciede2000_to(lab: &[f32], base: Lab, out: &mut [f32]) {
    let one = One::of(base);
    lab.par_chunks(3 * SHARE).zip(out.par_chunks_mut(SHARE)).for_each(|(lab, out)| differences(lab, &one, out));
}

fn differences(lab: &[f32], one: &One, out: &mut [f32]) {
    let mut chunks = lab.chunks_exact(3 * LANES);
    let mut outs = out.chunks_exact_mut(LANES);
    for (chunk, out) in (&mut chunks).zip(&mut outs) {
        let mut columns = [[0.0; LANES]; 3];
        for (lane, color) in chunk.as_chunks::<3>().0.iter().enumerate() {
            for channel in 0..3 {
                columns[channel][lane] = color[channel];
            }
        }
        for (lane, out) in out.iter_mut().enumerate().take(LANES) {
            *out = one.to([columns[0][lane], columns[1][lane], columns[2][lane]]);
        }
    }
    for (color, out) in chunks.remainder().as_chunks::<3>().0.iter().zip(outs.into_remainder()) {
        *out = one.to(*color);
    }
}

/// The color that the others are held against.
struct One {
    l: f32,
    a: f32,
    b: f32,
    chroma: f32,
}

#[inline(always)]
fn seventh_share(chroma: f32) -> f32 {
    let square = chroma * chroma;
    let power = square * square * square * chroma;
    (power / (power + 6_103_515_625.0)).sqrt()
}

impl One {
    #[expect(clippy::cast_possible_truncation, reason = "32 bits are what this module is about")]
    fn of(base: Lab) -> Self {
        let (a, b) = (base.a() as f32, base.b() as f32);
        Self { l: base.lightness() as f32, a, b, chroma: (a * a + b * b).sqrt() }
    }

    /// The formula of [`super::ciede2000`] with hues kept as directions, so that no angle is taken, and
    /// without a branch. Where a color is neutral its hue has no weight, and any will do.
    #[inline(always)]
    fn to(&self, [l, a, b]: [f32; 3]) -> f32 {
        /// So small that it counts only where it keeps nothing from being divided by nothing.
        const TINY: f32 = 1e-12;
        let chroma = (a * a + b * b).sqrt();
        let stretched = 1.5 - 0.5 * seventh_share(0.5 * (self.chroma + chroma));
        let (x1, x2) = (self.a * stretched, a * stretched);
        let (c1, c2) = ((x1 * x1 + self.b * self.b).sqrt(), (x2 * x2 + b * b).sqrt());
        // With h the difference of hues: c1 c2 cos h and c1 c2 sin h; then √(c1 c2) times cos h/2 up to
        // a right angle and sin h/2 beyond, and from it 2 √(c1 c2) sin h/2 with the sign of h.
        let (product, dot, cross) = (c1 * c2, x1 * x2 + self.b * b, x1 * b - self.b * x2);
        let half = (0.5 * (product + dot.abs())).sqrt();
        let hue = if dot >= 0.0 { cross / (half + TINY) } else { (2.0 * half).copysign(cross) };
        let (su, sv) = (x1 * c2 + x2 * c1, self.b * c2 + b * c1);
        let length = 1.0 / ((su * su + sv * sv).sqrt() + TINY);
        let (cos, sin) = (su * length, sv * length);

        let off = 0.5 * (self.l + l) - 50.0;
        let off = off * off;
        let root = (20.0 + off).sqrt();
        let lightness = (l - self.l) * root / (root + 0.015 * off);
        let mean = 0.5 * (c1 + c2);
        let chroma_step = (c2 - c1) / (1.0 + 0.045 * mean);
        let hue = hue / (1.0 + 0.015 * mean * hue_weight(cos, sin));
        let turned = -2.0 * blue_turn(cos, sin) * seventh_share(mean);
        let sum = lightness * lightness + chroma_step * chroma_step + hue * hue + turned * chroma_step * hue;
        (if sum > 0.0 { sum } else { 0.0 }).sqrt()
    }
}

/// T of the formula from cos and sin of the mean hue.
#[inline(always)]
fn hue_weight(cos: f32, sin: f32) -> f32 {
    // cos and sin of two, three and four times the mean hue.
    let (cos2, sin2) = (cos * cos - sin * sin, 2.0 * sin * cos);
    let (cos3, sin3) = (cos2 * cos - sin2 * sin, sin2 * cos + cos2 * sin);
    let (cos4, sin4) = (cos2 * cos2 - sin2 * sin2, 2.0 * sin2 * cos2);
    // cos(x − d) written out: cos 30°, sin 30°, cos 6°, sin 6°, cos 63°, sin 63°.
    1.0 - 0.17 * (cos * 0.866_025_4 + sin * 0.5) + 0.24 * cos2 + 0.32 * (cos3 * 0.994_521_9 - sin3 * 0.104_528_46)
        - 0.20 * (cos4 * 0.453_990_5 + sin4 * 0.891_006_5)
}

/// sin 2Δθ of the blue rotation, Δθ = 30° e^(−((h − 275°)/25°)²), from cos and sin of the mean hue h.
///
/// With s = sin²((h − 275°)/2), (h − 275°)² = 4 s + 4/3 s² + 32/45 s³ + 16/35 s⁴ + … (the series of the
/// squared arcsine, Abramowitz and Stegun 4.4.40 squared, M), no angle needed. Seven terms serve to
/// 1e-5 where the exponential is still seen; beyond they are too few, and it is nothing all the same.
#[inline(always)]
fn blue_turn(cos: f32, sin: f32) -> f32 {
    // cos 275° and sin 275°.
    let s = 0.5 - 0.5 * (cos * 0.087_155_74 - sin * 0.996_194_7);
    let square = s
        * (4.0
            + s * (4.0 / 3.0
                + s * (32.0 / 45.0 + s * (16.0 / 35.0 + s * (0.325_079_36 + s * (0.246_272_24 + s * 0.194_843_7))))));
    const STEP: f32 = 25.0 * std::f32::consts::PI / 180.0;
    let turn = std::f32::consts::FRAC_PI_3 * falling_power(square * (std::f32::consts::LOG2_E / (STEP * STEP)));
    let square = turn * turn;
    turn * (1.0 - square * (1.0 / 6.0 - square * (1.0 / 120.0 - square * (1.0 / 5040.0))))
}

/// 2^(−x) for x ≥ 0, never below 2^(−60): whole powers by the exponent's bits, the rest by the
/// exponential's series, to 3e-6 of it.
#[inline(always)]
fn falling_power(x: f32) -> f32 {
    /// 1.5 × 2²³: a number added to it is rounded to a whole one, which then stands in its last bits.
    const ROUNDER: f32 = 12_582_912.0;
    let power = if x > 60.0 { -60.0 } else { -x };
    let rounded = power + ROUNDER;
    let rest = (power - (rounded - ROUNDER)) * std::f32::consts::LN_2;
    let scale = f32::from_bits((rounded.to_bits() << 23).wrapping_add(1.0_f32.to_bits()));
    scale * (1.0 + rest * (1.0 + rest * (0.5 + rest * (1.0 / 6.0 + rest * (1.0 / 24.0 + rest * (1.0 / 120.0))))))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::color::ciede2000;

    /// Every 5th value of each channel, and the corners: 140 608 colors.
    fn bytes() -> Vec<u8> {
        let steps: Vec<u8> = (0..=255).step_by(5).collect();
        let mut out = Vec::new();
        for &r in &steps {
            for &g in &steps {
                for &b in &steps {
                    out.extend([r, g, b]);
                }
            }
        }
        out.extend([1, 2, 3]);
        out
    }

    #[test]
    fn labs_of_whole_pictures_keep_to_the_exact_ones() {
        let pixels = bytes();
        let mut lab = vec![0.0; pixels.len()];
        Bulk::new().lab_of_bytes(&pixels, &mut lab);
        let mut worst = 0.0_f64;
        for (pixel, lab) in pixels.as_chunks::<3>().0.iter().zip(lab.as_chunks::<3>().0) {
            let exact = Srgb::bytes(*pixel).lab();
            for (fast, exact) in lab.iter().zip([exact.lightness(), exact.a(), exact.b()]) {
                worst = worst.max((f64::from(*fast) - exact).abs());
            }
        }
        assert!(worst < 0.001, "{worst}");
    }

    #[test]
    fn differences_of_whole_pictures_keep_to_the_exact_ones() {
        let pixels = bytes();
        let mut lab = vec![0.0; pixels.len()];
        Bulk::new().lab_of_bytes(&pixels, &mut lab);
        let mut out = vec![0.0; pixels.len() / 3];
        for base in [[60.0, 1.0, 6.0], [50.0, 0.0, 0.0], [40.0, 12.0, 20.0], [55.0, 5.0, -30.0]] {
            let base = Lab::new(base[0], base[1], base[2]).unwrap();
            ciede2000_to(&lab, base, &mut out);
            let hue = |lab: &Lab| libm::atan2(lab.b(), lab.a()).to_degrees();
            let (mut worst, mut counted) = (0.0_f64, 0);
            for (lab, fast) in lab.as_chunks::<3>().0.iter().zip(&out) {
                let exact = Lab::new(f64::from(lab[0]).max(0.0), lab[1].into(), lab[2].into()).unwrap();
                let chroma = libm::hypot(exact.a(), exact.b());
                let apart = ((hue(&exact) - hue(&base)).abs() - 180.0).abs();
                // Opposite hues, and colors whose hue is rounding: the formula jumps there.
                if (chroma > 0.01 && apart > 1.0) || base.a() == 0.0 {
                    counted += 1;
                    worst = worst.max((ciede2000(base, exact).as_units() - f64::from(*fast)).abs());
                }
            }
            assert!(counted > 130_000, "{counted}");
            assert!(worst < 0.001, "{base:?}: {worst}");
        }
    }

    /// 2000 pairs of colour-science 0.4.7 (`reference/color/README.md`), each alone and so by the loop's
    /// rest, and 64 times over and so by the loop itself.
    #[test]
    fn differences_of_color_science() {
        let text = include_str!("../../../../reference/color/ciede2000_random2000.csv");
        let mut lines = text.lines().filter(|line| !line.starts_with('#'));
        let names: Vec<&str> = lines.next().unwrap().split(',').collect();
        let mut counted = 0;
        for line in lines {
            let values: Vec<&str> = line.split(',').collect();
            let get = |name: &str| values[names.iter().position(|n| *n == name).expect(name)];
            let number = |name: &str| get(name).parse::<f64>().unwrap();
            let hue = |i: &str| libm::atan2(number(&format!("b{i}")), number(&format!("a{i}"))).to_degrees();
            if ((hue("1") - hue("2")).abs() - 180.0).abs() <= 1.0 {
                continue;
            }
            let base = Lab::new(number("L1"), number("a1"), number("b1")).unwrap();
            let other = [number("L2") as f32, number("a2") as f32, number("b2") as f32];
            let mut out = [0.0; LANES + 1];
            ciede2000_to(&other.repeat(LANES + 1), base, &mut out);
            assert_eq!(out[0], out[LANES], "the two ways differ");
            assert!((f64::from(out[0]) - number("dE00_color")).abs() < 0.001, "{line}: {}", out[0]);
            counted += 1;
        }
        assert_eq!(counted, 1868);
    }
}
