//! How much concrete to order.

use units::{Length, Volume};

use super::{Panels, PourSheet};
use crate::error::PaperError;

/// Ready-mix is ordered by the quarter yard: common practice, no source.
const STEP_YD3: f64 = 0.25;
/// Rounding dust in the sum must not buy a further quarter yard.
const DUST: f64 = 1e-9;

/// Concrete for the slab and its panels.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ConcreteOrder {
    /// The slab: the areas of its zones times its thickness. Without thickened edges or footings.
    pub slab: Volume,
    /// The sample panels.
    pub panels: Volume,
    /// The waste allowance on both.
    pub waste: Volume,
    /// The sum, rounded up to the quarter cubic yard.
    pub order: Volume,
}

impl Panels {
    /// Concrete in all panels of this kind: count × edge² × thickness.
    #[must_use]
    pub fn concrete(&self) -> Volume {
        self.edge * self.edge * self.thickness * f64::from(self.count)
    }
}

impl PourSheet {
    /// Slab, panels, waste and the rounded order.
    ///
    /// # Errors
    /// A thickness, an area, a panel or a waste share out of range.
    pub fn concrete(&self) -> Result<ConcreteOrder, PaperError> {
        self.check()?;
        let slab: Volume = self.zones.iter().map(|zone| zone.area * self.thickness).sum();
        let panels: Volume = self.panels.iter().map(Panels::concrete).sum();
        let waste = (slab + panels) * self.waste.as_share();
        let steps = ((slab + panels + waste).as_cubic_yards() / STEP_YD3 - DUST).ceil();
        Ok(ConcreteOrder { slab, panels, waste, order: Volume::cubic_yards(steps * STEP_YD3) })
    }

    /// Fails on the first figure that no slab can have.
    pub(super) fn check(&self) -> Result<(), PaperError> {
        within("thickness", self.thickness, Length::ZERO, Length::inches(36.0))?;
        if self.zones.is_empty() {
            return Err(PaperError::field("zones", "none", "at least one zone"));
        }
        for (at, zone) in self.zones.iter().enumerate() {
            let area = zone.area.as_square_feet();
            if !(area > 0.0 && area <= 1e7) {
                let found = format!("{area} ft²");
                return Err(PaperError::field(format!("zones[{at}].area"), found, "above 0, at most 10,000,000 ft²"));
            }
        }
        for (at, set) in self.panels.iter().enumerate() {
            if !(1..=99).contains(&set.count) {
                return Err(PaperError::field(format!("panels[{at}].count"), set.count, "1 to 99"));
            }
            within(&format!("panels[{at}].edge"), set.edge, Length::inches(5.999), Length::feet(6.0))?;
            within(&format!("panels[{at}].thickness"), set.thickness, Length::ZERO, Length::inches(12.0))?;
        }
        let waste = self.waste.as_share();
        if !(0.0..=0.5).contains(&waste) {
            return Err(PaperError::field("waste", waste, "a share from 0 to 0.5"));
        }
        Ok(())
    }
}

fn within(field: &str, length: Length, above: Length, most: Length) -> Result<(), PaperError> {
    if length > above && length <= most {
        return Ok(());
    }
    let (low, high) = (above.as_inches().round(), most.as_inches());
    let accepted = format!("{} {low} in, at most {high} in", if low > 0.0 { "at least" } else { "above" });
    Err(PaperError::field(field, format!("{} in", length.as_inches()), accepted))
}
