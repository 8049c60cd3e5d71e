//! Lengths as a person would have typed them.

use slab_plan::{Offset, WrittenPoint};
use units::{AsWritten, ReadError};

/// In what the points of a plan are written.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Notation {
    /// Meters to a hundredth of a millimeter: `12.34567 m`.
    #[default]
    Meters,
    /// Feet and inches to a thousandth of an inch: `12' 6.125"`.
    FeetInches,
}

impl Notation {
    fn offset(self, meters: f64) -> Result<AsWritten<Offset>, ReadError> {
        let text = match self {
            Self::Meters => {
                let text = format!("{meters:.5}");
                let text = text.trim_end_matches('0').trim_end_matches('.');
                if text == "0" || text == "-0" { "0".to_owned() } else { format!("{text} m") }
            }
            Self::FeetInches => {
                let thousandths = libm::round(meters / 0.0254 * 1000.0);
                let (sign, size) = if thousandths < 0.0 { ("-", -thousandths) } else { ("", thousandths) };
                let feet = libm::floor(size / 12_000.0);
                let inches = format!("{:.3}", (size - feet * 12_000.0) / 1000.0);
                format!("{sign}{feet}' {}\"", inches.trim_end_matches('0').trim_end_matches('.'))
            }
        };
        AsWritten::read(&text)
    }

    /// A point of a plan.
    pub(crate) fn point(self, x: f64, y: f64) -> Result<WrittenPoint, ReadError> {
        Ok([self.offset(x)?, self.offset(y)?])
    }
}
