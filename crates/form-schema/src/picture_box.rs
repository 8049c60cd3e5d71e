//! Where something lies in a photograph.

use serde::{Deserialize, Serialize};

/// A box in the upright picture. All four are percent of the picture, 0 to 100; the box lies wholly
/// inside it.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields, try_from = "PictureBoxAsWritten")]
pub struct PictureBox {
    /// Left edge, percent of the width.
    pub x: f64,
    /// Upper edge, percent of the height.
    pub y: f64,
    /// Width, percent of the picture's.
    pub w: f64,
    /// Height, percent of the picture's.
    pub h: f64,
}

/// A box that is not read yet.
#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct PictureBoxAsWritten {
    x: f64,
    y: f64,
    w: f64,
    h: f64,
}

/// A box that does not lie in the picture.
#[derive(Debug, Clone, Copy, PartialEq, thiserror::Error)]
#[error("the box x {x}, y {y}, w {w}, h {h} leaves the picture; accepted: each 0 to 100, x + w and y + h up to 100")]
pub struct PictureBoxError {
    /// Left edge, percent.
    pub x: f64,
    /// Upper edge, percent.
    pub y: f64,
    /// Width, percent.
    pub w: f64,
    /// Height, percent.
    pub h: f64,
}

impl PictureBox {
    /// A box from its left and upper edge, width and height, in percent of the picture.
    ///
    /// # Errors
    /// [`PictureBoxError`] when a number is not 0 to 100, or the box leaves the picture.
    pub fn percent(x: f64, y: f64, w: f64, h: f64) -> Result<Self, PictureBoxError> {
        // Sums of typed decimals may end a rounding error beyond the edge.
        let inside = |number: f64| (0.0..=100.0 + 1e-9).contains(&number);
        if [x, y, w, h, x + w, y + h].into_iter().all(inside) {
            Ok(Self { x, y, w, h })
        } else {
            Err(PictureBoxError { x, y, w, h })
        }
    }
}

impl TryFrom<PictureBoxAsWritten> for PictureBox {
    type Error = PictureBoxError;
    fn try_from(written: PictureBoxAsWritten) -> Result<Self, PictureBoxError> {
        Self::percent(written.x, written.y, written.w, written.h)
    }
}
