//! Whole pictures at once: the same formulas as one colour at a time, in 32-bit numbers and in an
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
/// How many pixels are worked on together.
const LANES: usize = 16;

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
    /// What does not make a whole pixel, or has no room, is left. Within 0.003 ΔE00 of [`Srgb::lab`].
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

    /// CIELAB of one amount of red, green and blue light, 0 to 1. Within 0.003 ΔE00.
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

/// Cube root of a positive number: a third of the exponent as a first guess, then twice Halley's
/// step y (y³ + 2t)/(2y³ + t), each of which cubes the error (5 % → 1e-4 → below 32 bits).
#[inline]
#[expect(
    clippy::cast_possible_truncation,
    clippy::cast_precision_loss,
    clippy::cast_sign_loss,
    clippy::cast_possible_wrap,
    reason = "the guess works on the bits"
)]
fn cube_root(t: f32) -> f32 {
    const BIAS: f32 = 709_921_077.0;
    let mut y = f32::from_bits(((t.to_bits() as i32 as f32) * (1.0 / 3.0) + BIAS) as i32 as u32);
    for _ in 0..2 {
        let cube = y * y * y;
        y *= (cube + 2.0 * t) / (2.0 * cube + t);
    }
    y
}

/// ΔE00 of many colours against one: `lab` holds L, a, b of each, `out` gets one number for each.
/// Within 0.01 of [`super::ciede2000`], except within half a degree of opposite hues, where the
/// formula itself jumps. Long pictures are shared among the processors.
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
        for lane in 0..LANES {
            out[lane] = one.to([columns[0][lane], columns[1][lane], columns[2][lane]]);
        }
    }
    for (color, out) in chunks.remainder().as_chunks::<3>().0.iter().zip(outs.into_remainder()) {
        *out = one.to(*color);
    }
}

/// The colour that the others are held against.
struct One {
    l: f32,
    a: f32,
    b: f32,
    chroma: f32,
}

#[inline]
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

    /// The formula of [`super::ciede2000`] with hues kept as directions, so that no angle is taken
    /// but the one of the blue rotation.
    #[inline]
    fn to(&self, [l, a, b]: [f32; 3]) -> f32 {
        let chroma = (a * a + b * b).sqrt();
        let stretched = 1.5 - 0.5 * seventh_share(0.5 * (self.chroma + chroma));
        let (x1, x2) = (self.a * stretched, a * stretched);
        let (c1, c2) = ((x1 * x1 + self.b * self.b).sqrt(), (x2 * x2 + b * b).sqrt());
        // A neutral colour counts as hue 0, as in the exact function.
        let (i1, i2) = (1.0 / c1.max(1e-9), 1.0 / c2.max(1e-9));
        let (u1, v1) = if c1 > 1e-9 { (x1 * i1, self.b * i1) } else { (1.0, 0.0) };
        let (u2, v2) = if c2 > 1e-9 { (x2 * i2, b * i2) } else { (1.0, 0.0) };
        let (du, dv) = (u2 - u1, v2 - v1);
        let hue = (c1 * c2).sqrt() * (du * du + dv * dv).sqrt() * (u1 * v2 - v1 * u2).signum();
        let (su, sv) = (u1 + u2, v1 + v2);
        let length = 1.0 / (su * su + sv * sv).sqrt().max(1e-9);
        let (cos, sin) = (su * length, sv * length);

        let off = 0.5 * (self.l + l) - 50.0;
        let off = off * off;
        let mean = 0.5 * (c1 + c2);
        // cos and sin of two, three and four times the mean hue.
        let (cos2, sin2) = (cos * cos - sin * sin, 2.0 * sin * cos);
        let (cos3, sin3) = (cos2 * cos - sin2 * sin, sin2 * cos + cos2 * sin);
        let (cos4, sin4) = (cos2 * cos2 - sin2 * sin2, 2.0 * sin2 * cos2);
        // T, with cos(x − d) written out: cos 30°, sin 30°, cos 6°, sin 6°, cos 63°, sin 63°.
        let t = 1.0 - 0.17 * (cos * 0.866_025_4 + sin * 0.5)
            + 0.24 * cos2
            + 0.32 * (cos3 * 0.994_521_9 - sin3 * 0.104_528_46)
            - 0.20 * (cos4 * 0.453_990_5 + sin4 * 0.891_006_5);
        let lightness = (l - self.l) / (1.0 + 0.015 * off / (20.0 + off).sqrt());
        let chroma_step = (c2 - c1) / (1.0 + 0.045 * mean);
        let hue = hue / (1.0 + 0.015 * mean * t);
        // cos 275° and sin 275°.
        let from_blue = angle(cos * 0.087_155_74 - sin * 0.996_194_7, sin * 0.087_155_74 + cos * 0.996_194_7);
        let steps = from_blue * (180.0 / (std::f32::consts::PI * 25.0));
        let turn = std::f32::consts::FRAC_PI_3 * falling_exponential(steps * steps);
        let square = turn * turn;
        let sine = turn * (1.0 - square * (1.0 / 6.0 - square * (1.0 / 120.0 - square * (1.0 / 5040.0))));
        let turned = -2.0 * sine * seventh_share(mean);
        (lightness * lightness + chroma_step * chroma_step + hue * hue + turned * chroma_step * hue).max(0.0).sqrt()
    }
}

/// The angle of a unit vector between −π and π, to 1e-4 where it is within π/2; beyond, no less.
#[inline]
fn angle(cos: f32, sin: f32) -> f32 {
    // tan(x/2) = sin/(1 + cos), at most 1 in the half that counts.
    let t = (sin / (1.0 + cos).max(1e-6)).clamp(-1e3, 1e3);
    let small = t.clamp(-1.0, 1.0);
    let square = small * small;
    // arctangent on −1 to 1 as an odd polynomial (Abramowitz and Stegun 4.4.49, error 2e-8; M).
    let arc = small
        * (0.999_977_26
            + square
                * (-0.332_623_47
                    + square
                        * (0.193_543_46 + square * (-0.116_432_87 + square * (0.052_653_32 - square * 0.011_721_2)))));
    2.0 * arc + (t - small)
}

/// e^(−x) for x ≥ 0: 2^(whole) by the exponent's bits, the rest by a polynomial; to 1e-4 of it.
#[inline]
#[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "clamped to the exponents there are")]
fn falling_exponential(x: f32) -> f32 {
    let power = (-x * std::f32::consts::LOG2_E).max(-120.0);
    let whole = (power - 0.5) as i32;
    let rest = (power - whole as f32) * std::f32::consts::LN_2;
    let scale = f32::from_bits(((whole + 127) << 23) as u32);
    scale * (1.0 + rest * (1.0 + rest * (0.5 + rest * (1.0 / 6.0 + rest * (1.0 / 24.0 + rest * (1.0 / 120.0))))))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::colour::ciede2000;

    /// Every 5th value of each channel, and the corners: 140 608 colours.
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
            let fast = Lab::new(f64::from(lab[0]).max(0.0), lab[1].into(), lab[2].into()).unwrap();
            worst = worst.max(ciede2000(exact, fast).as_units());
        }
        assert!(worst < 0.003, "{worst}");
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
                // Opposite hues, and colours whose hue is rounding: the formula jumps there.
                if (chroma > 0.01 && apart > 1.5) || base.a() == 0.0 {
                    counted += 1;
                    worst = worst.max((ciede2000(base, exact).as_units() - f64::from(*fast)).abs());
                }
            }
            assert!(counted > 130_000, "{counted}");
            assert!(worst < 0.01, "{base:?}: {worst}");
        }
    }
}
