//! What can be wrong with an order or a joint layout.

use units::{Area, Fraction, Length, Volume};

/// An order or a layout that cannot be computed.
#[derive(Debug, Clone, Copy, PartialEq, thiserror::Error)]
pub enum ConcreteError {
    /// An area that is not above zero.
    #[error("area {} ft²; accepted: above 0", .0.as_square_feet())]
    Area(Area),
    /// A length that is not above zero.
    #[error("{field} {} in; accepted: above 0, such as 4 in", .value.as_inches())]
    Length {
        /// Which length.
        field: &'static str,
        /// What was given.
        value: Length,
    },
    /// A rounding step that is not above zero.
    #[error("rounding step {} yd³; accepted: above 0, such as 0.25 yd³", .0.as_cubic_yards())]
    Step(Volume),
    /// A spacing rule whose ends are out of order.
    #[error(
        "joint spacing of {low} to {high} times the thickness; accepted: above 0, lower end first, such as 24 to 36"
    )]
    SpacingRule {
        /// Lower multiple.
        low: f64,
        /// Upper multiple.
        high: f64,
    },
    /// A longest side over shortest side below one.
    #[error("panel aspect limit {0}; accepted: 1 or more, such as 1.5")]
    Aspect(f64),
    /// A slab so long or narrow for its joints that something is mistyped.
    #[error("a slab of {} ft by {} ft takes more than 10000 panels along a side; accepted: fewer", .length.as_feet(), .width.as_feet())]
    TooManyPanels {
        /// Slab length.
        length: Length,
        /// Slab width.
        width: Length,
    },
    /// A cut depth of nothing.
    #[error("cut depth {} % of the thickness; accepted: above 0 %, such as 25 %", .0.as_percent())]
    CutDepth(Fraction),
}

pub(super) fn above_zero(field: &'static str, value: Length) -> Result<Length, ConcreteError> {
    if value > Length::ZERO && value.as_meters().is_finite() {
        Ok(value)
    } else {
        Err(ConcreteError::Length { field, value })
    }
}
