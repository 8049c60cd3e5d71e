//! Joint spacing and depth for this thickness, as the rule of the layout has them.

use slab_plan::layout::{JointLimits, JointSpacing, LayoutError};
use trade_facts::Trade;
use units::Length;

use crate::error::PaperError;

/// Where to joint a slab of one thickness. The engineer's joint plan comes first.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct JointAdvice {
    /// The lesser multiple of the thickness.
    pub times_low: f64,
    /// The greater multiple of the thickness.
    pub times_high: f64,
    /// Closest and widest spacing.
    pub spacing: JointSpacing,
    /// Least depth of the cut.
    pub depth: Length,
}

impl JointAdvice {
    /// What [`JointLimits`] says for a thickness.
    ///
    /// # Errors
    /// A limit that the trade facts lack or hold in another unit; a thickness that is not above zero.
    pub fn for_thickness(trade: &Trade, thickness: Length) -> Result<Self, PaperError> {
        let limits = JointLimits::of(trade).map_err(refused)?;
        Ok(Self {
            times_low: limits.rule.low_multiple,
            times_high: limits.rule.high_multiple,
            spacing: limits.spacing(thickness).map_err(refused)?,
            depth: limits.least_cut(thickness).map_err(refused)?,
        })
    }
}

fn refused(error: LayoutError) -> PaperError {
    match error {
        LayoutError::Fact(id) => PaperError::field(format!("limits.toml, {id}"), "not usable", "its number and unit"),
        other => PaperError::field("thickness", other, "above 0"),
    }
}
