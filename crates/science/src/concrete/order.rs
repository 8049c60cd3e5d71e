//! Volume of a pour with its sample panels, waste and rounding.

use units::{Area, Fraction, Length, Volume};

use super::ConcreteError;
use super::error::above_zero;

/// The usual step of a ready-mix order, a quarter cubic yard (trade practice, M).
pub const QUARTER_YARD: Volume = Volume::cubic_yards(0.25);

/// Volume of a slab of even thickness; 27 ft³ to the cubic yard, exact.
///
/// # Errors
/// Area or thickness not above zero.
pub fn slab_volume(area: Area, thickness: Length) -> Result<Volume, ConcreteError> {
    if !(area > Area::ZERO && area.as_square_meters().is_finite()) {
        return Err(ConcreteError::Area(area));
    }
    Ok(area * above_zero("slab thickness", thickness)?)
}

/// Sample panels cast from the slab's own concrete.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct SamplePanels {
    /// How many.
    pub count: u32,
    /// One side.
    pub length: Length,
    /// The other side.
    pub width: Length,
    /// Thickness.
    pub thickness: Length,
}

impl SamplePanels {
    /// Volume of all of them.
    ///
    /// # Errors
    /// A side or a thickness not above zero (unless there are no panels).
    pub fn volume(&self) -> Result<Volume, ConcreteError> {
        if self.count == 0 {
            return Ok(Volume::ZERO);
        }
        let area = above_zero("panel length", self.length)? * above_zero("panel width", self.width)?;
        Ok(area * above_zero("panel thickness", self.thickness)? * f64::from(self.count))
    }
}

/// What a pour needs before waste.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ConcreteNeed {
    /// Area of the slab.
    pub area: Area,
    /// Thickness of the slab.
    pub thickness: Length,
    /// Panels cast beside it.
    pub panels: SamplePanels,
    /// Added for uneven ground, spilling and what stays in the truck, as a share of the volume.
    pub waste: Fraction,
}

/// What to order, and how it came about.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ConcreteOrder {
    /// The slab itself.
    pub slab: Volume,
    /// The sample panels.
    pub panels: Volume,
    /// The addition for waste.
    pub waste: Volume,
    /// Slab, panels and waste together.
    pub needed: Volume,
    /// Rounded up to the step.
    pub ordered: Volume,
}

impl ConcreteOrder {
    /// What the rounding adds.
    #[must_use]
    pub fn spare(&self) -> Volume {
        self.ordered - self.needed
    }
}

/// Volume to order for a pour, rounded up to a step such as [`QUARTER_YARD`].
///
/// # Errors
/// Area, thickness, panel sizes or step not above zero.
pub fn order(need: &ConcreteNeed, step: Volume) -> Result<ConcreteOrder, ConcreteError> {
    if !(step > Volume::ZERO && step.as_cubic_meters().is_finite()) {
        return Err(ConcreteError::Step(step));
    }
    let slab = slab_volume(need.area, need.thickness)?;
    let panels = need.panels.volume()?;
    let waste = (slab + panels) * need.waste.as_share();
    let needed = slab + panels + waste;
    // A need that is a whole number of steps but for rounding must not buy one more: a part in 1e9
    // of a step is less than a drop.
    let steps = libm::ceil(needed / step - 1e-9);
    let ordered = (step * steps).max(needed);
    Ok(ConcreteOrder { slab, panels, waste, needed, ordered })
}
