//! Feet, inches and fractions: the notation of the tape.

use crate::Length;

impl Length {
    /// From feet and inches together; either may carry a fraction.
    #[must_use]
    pub fn feet_inches(feet: f64, inches: f64) -> Self {
        Self::feet(feet) + Self::inches(inches)
    }

    /// Printed on the tape's terms, rounded to the nearest `1/denominator` inch: `12' 6 1/2"`.
    ///
    /// The fraction is reduced; feet are left out below one foot; a length below zero carries one
    /// minus sign in front. Printing is exact to the chosen fraction: reading it back and printing
    /// again gives the same text. `denominator` 0 counts as 1.
    #[must_use]
    pub fn show_feet_inches(self, denominator: u32) -> String {
        let parts = f64::from(denominator.max(1));
        let total = (self.as_inches().abs() * parts).round();
        let per_foot = 12.0 * parts;
        let feet = (total / per_foot).floor();
        let rest = total - feet * per_foot;
        let inches = (rest / parts).floor();
        // Below one inch of parts, so far inside u32.
        let above = (rest - inches * parts) as u32;
        let sign = if self.as_inches() < 0.0 && total > 0.0 { "-" } else { "" };
        let fraction = reduced(above, denominator.max(1));
        let inch_text = match (inches > 0.0, fraction) {
            (true, Some((n, d))) => format!("{inches:.0} {n}/{d}\""),
            (false, Some((n, d))) => format!("{n}/{d}\""),
            (_, None) => format!("{inches:.0}\""),
        };
        if feet > 0.0 { format!("{sign}{feet:.0}' {inch_text}") } else { format!("{sign}{inch_text}") }
    }
}

fn reduced(above: u32, below: u32) -> Option<(u32, u32)> {
    if above == 0 {
        return None;
    }
    let (mut a, mut b) = (above, below);
    while b != 0 {
        (a, b) = (b, a % b);
    }
    Some((above / a, below / a))
}
