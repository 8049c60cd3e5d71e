//! Mark-up and margin: two ratios of one profit that are never the same number.
//!
//! Why this module exists: 25 % put on the cost is 20 % of the price, and a quote that confuses
//! them gives the difference away. Money itself is decimal and lives elsewhere; here are only the
//! ratios.
//!
//! Identity: (1 + mark-up)(1 − margin) = 1.

/// A ratio that no price has.
#[derive(Debug, Clone, Copy, PartialEq, thiserror::Error)]
pub enum MarkupError {
    /// A mark-up of minus everything or worse.
    #[error("mark-up {} %; accepted: above -100 % and finite, such as 25 %", .0 * 100.0)]
    Markup(f64),
    /// A margin of the whole price or more.
    #[error("margin {} %; accepted: below 100 % and finite, such as 20 %", .0 * 100.0)]
    Margin(f64),
}

/// Profit as a share of cost. May exceed 1; below zero is a loss.
#[derive(Debug, Clone, Copy, PartialEq, PartialOrd)]
pub struct Markup(f64);

/// Profit as a share of price. Always below 1; below zero is a loss.
#[derive(Debug, Clone, Copy, PartialEq, PartialOrd)]
pub struct Margin(f64);

impl Markup {
    /// From a share of cost, 0.25 for 25 %.
    ///
    /// # Errors
    /// At or below -1, or not finite.
    pub fn share(value: f64) -> Result<Self, MarkupError> {
        if value > -1.0 && value.is_finite() { Ok(Self(value)) } else { Err(MarkupError::Markup(value)) }
    }

    /// As a share of cost.
    #[must_use]
    pub const fn as_share(self) -> f64 {
        self.0
    }

    /// Price over cost.
    #[must_use]
    pub const fn price_over_cost(self) -> f64 {
        1.0 + self.0
    }

    /// The same profit as a share of price: mark-up / (1 + mark-up).
    #[must_use]
    pub const fn margin(self) -> Margin {
        Margin(self.0 / (1.0 + self.0))
    }
}

impl Margin {
    /// From a share of price, 0.20 for 20 %.
    ///
    /// # Errors
    /// At or above 1, or not finite.
    pub fn share(value: f64) -> Result<Self, MarkupError> {
        if value < 1.0 && value.is_finite() { Ok(Self(value)) } else { Err(MarkupError::Margin(value)) }
    }

    /// As a share of price.
    #[must_use]
    pub const fn as_share(self) -> f64 {
        self.0
    }

    /// Price over cost.
    #[must_use]
    pub const fn price_over_cost(self) -> f64 {
        1.0 / (1.0 - self.0)
    }

    /// The same profit as a share of cost: margin / (1 − margin).
    #[must_use]
    pub const fn markup(self) -> Markup {
        Markup(self.0 / (1.0 - self.0))
    }
}
