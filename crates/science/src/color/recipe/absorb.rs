//! From reflected light to absorption over scatter and back, for a layer too thick to see through.

use crate::{FormulaSource, Grade};

/// The law between reflected light and absorption over scatter of a layer too thick to see through.
pub const KUBELKA_MUNK: FormulaSource = FormulaSource {
    id: "kubelka-munk-1931",
    document: "Kubelka and Munk 1931, Zeitschrift für technische Physik 12",
    locator: "K/S = (1 - R)^2/(2R)",
    grade: Grade::FromMemory,
};

/// K/S = (1 − R)²/(2R), [`KUBELKA_MUNK`].
pub(super) fn absorption(reflected: f64) -> f64 {
    let absorbed = 1.0 - reflected;
    absorbed * absorbed / (2.0 * reflected)
}

/// R = 1 + q − √(q² + 2q), written as 1/(1 + q + √(q² + 2q)), which loses no digits for a large q.
pub(super) fn reflected(q: f64) -> f64 {
    1.0 / (1.0 + q + libm::sqrt(q * (q + 2.0)))
}

#[cfg(test)]
mod tests {
    use super::{absorption, reflected};

    /// Thirteen reflectances from 0.02 to 0.95; twelve digits are printed.
    #[test]
    fn absorption_over_scatter_and_back_as_in_the_reference() {
        let mut seen = 0;
        for line in include_str!("../../../../../reference/color/km_check.csv").lines().skip(1) {
            let n: Vec<f64> = line.split(',').map(|cell| cell.parse().unwrap()).collect();
            assert!((absorption(n[0]) / n[1] - 1.0).abs() < 1e-11, "K/S of {}", n[0]);
            assert!((reflected(n[1]) - n[2]).abs() < 1e-11, "R of {}", n[1]);
            assert!((reflected(absorption(n[0])) - n[0]).abs() < 1e-15, "back to {}", n[0]);
            seen += 1;
        }
        assert_eq!(seen, 13);
    }
}
