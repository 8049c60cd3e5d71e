//! sRGB as screens and photographs hold it, and the light it stands for.
//!
//! IEC 61966-2-1 (M for its text; V: `srgb_check_values.csv`, `srgb_random200.csv` by
//! colour-science 0.4.7).

use super::{ColorError, Lab, Xyz};

/// A screen color: three values that grow about as the eye sees, 0 to 1 where a screen can show it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Srgb([f64; 3]);

/// Red, green and blue light of the sRGB primaries; 1, 1, 1 is the white of the screen.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct LinearRgb([f64; 3]);

impl Srgb {
    /// From the three bytes of a pixel: red, green, blue.
    #[must_use]
    pub fn bytes(bytes: [u8; 3]) -> Self {
        Self(bytes.map(|byte| f64::from(byte) / 255.0))
    }

    /// From values as encoded, red, green, blue; outside 0 to 1 no screen shows it.
    #[must_use]
    pub const fn encoded(values: [f64; 3]) -> Self {
        Self(values)
    }

    /// From `#7a563a`, with or without the mark.
    ///
    /// # Errors
    /// Anything but six hexadecimal digits.
    pub fn read(text: &str) -> Result<Self, ColorError> {
        let refuse = || ColorError::Hex(text.trim().to_owned());
        let digits = text.trim().trim_start_matches('#');
        if digits.len() != 6 || !digits.bytes().all(|b| b.is_ascii_hexdigit()) {
            return Err(refuse());
        }
        let number = u32::from_str_radix(digits, 16).map_err(|_| refuse())?;
        let [_, red, green, blue] = number.to_be_bytes();
        Ok(Self::bytes([red, green, blue]))
    }

    /// The values as encoded.
    #[must_use]
    pub const fn as_encoded(self) -> [f64; 3] {
        self.0
    }

    /// The nearest bytes, clipped to what a screen can show.
    #[must_use]
    #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "clamped to 0 to 255")]
    pub fn as_bytes(self) -> [u8; 3] {
        self.0.map(|value| (value.clamp(0.0, 1.0) * 255.0).round() as u8)
    }

    /// Whether a screen can show it: every value within 0 to 1.
    #[must_use]
    pub fn is_displayable(self) -> bool {
        self.0.iter().all(|value| (0.0..=1.0).contains(value))
    }

    /// The light it stands for.
    #[must_use]
    pub fn linear(self) -> LinearRgb {
        LinearRgb(self.0.map(decoded))
    }

    /// The same color in CIELAB.
    #[must_use]
    pub fn lab(self) -> Lab {
        self.linear().xyz().lab()
    }
}

impl LinearRgb {
    /// From amounts of red, green and blue light.
    #[must_use]
    pub const fn new(light: [f64; 3]) -> Self {
        Self(light)
    }

    /// The amounts of red, green and blue light.
    #[must_use]
    pub const fn as_light(self) -> [f64; 3] {
        self.0
    }

    /// As a screen holds it.
    #[must_use]
    pub fn encoded(self) -> Srgb {
        Srgb(self.0.map(encoded))
    }

    /// The same color as CIE XYZ.
    #[must_use]
    pub fn xyz(self) -> Xyz {
        Xyz::of_light(self.0)
    }
}

/// V' ≤ 0.04045: V = V'/12.92, else ((V' + 0.055)/1.055)^2.4. Below zero, where no screen is, the
/// straight line goes on.
fn decoded(value: f64) -> f64 {
    if value <= 0.04045 { value / 12.92 } else { libm::pow((value + 0.055) / 1.055, 2.4) }
}

/// V ≤ 0.0031308: V' = 12.92 V, else 1.055 V^(1/2.4) − 0.055.
fn encoded(light: f64) -> f64 {
    if light <= 0.003_130_8 { 12.92 * light } else { 1.055 * libm::pow(light, 1.0 / 2.4) - 0.055 }
}
