//! Joint spacing and depth for this thickness, within the limits of the trade.

use trade_facts::{Measured, Trade, Which};
use units::Length;

use crate::error::PaperError;

/// Where to joint a slab of one thickness. The engineer's joint plan comes first.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct JointAdvice {
    /// The lesser multiple of the thickness.
    pub times_low: f64,
    /// The greater multiple of the thickness.
    pub times_high: f64,
    /// Closest usual spacing.
    pub spacing_low: Length,
    /// Widest spacing.
    pub spacing_high: Length,
    /// The widest spacing whatever the thickness, when it cut the range short.
    pub held_to: Option<Length>,
    /// Least depth of the cut.
    pub depth: Length,
}

impl JointAdvice {
    /// spacing = 24 to 36 × thickness, at most 5 m; depth ≥ 1/4 × thickness: limits `joint-spacing`
    /// and `joint-depth` (ready-mix association sheet, V) and `joint-spacing-most` (CSA A23.1 as
    /// quoted, V2).
    ///
    /// # Errors
    /// A limit that the trade facts lack or hold in another unit.
    pub fn for_thickness(trade: &Trade, thickness: Length) -> Result<Self, PaperError> {
        let lacking = |id: &str| PaperError::field(format!("limits.toml, {id}"), "not usable", "its number and unit");
        let limit = |id: &str| trade.limit(id).ok_or_else(|| lacking(id));
        let spacing = limit("joint-spacing")?;
        let times = |which| spacing.plain(which).ok_or_else(|| lacking("joint-spacing"));
        let (times_low, times_high) = (times(Which::Low)?, times(Which::High)?);
        let most: Length = limit("joint-spacing-most")?.value_as().ok_or_else(|| lacking("joint-spacing-most"))?;
        let share = limit("joint-depth")?.plain(Which::Usual).ok_or_else(|| lacking("joint-depth"))?;
        let (low, high) = (thickness * times_low, thickness * times_high);
        Ok(Self {
            times_low,
            times_high,
            spacing_low: low.min(most),
            spacing_high: high.min(most),
            held_to: (high > most).then_some(most),
            depth: thickness * share,
        })
    }
}
