//! Parts by volume and specific gravity: two plain ratios shared by film, chemistry and ventilation.

use units::Density;

/// Density of water at 60 °F, g/mL, that turns a 60/60 °F specific gravity into a density
/// (0.99904 g/mL; V, the constant used in `reference/physics/hcl_baume.csv`).
const WATER_60F_G_PER_ML: f64 = 0.999_04;

/// A ratio that is not usable.
#[derive(Debug, Clone, Copy, PartialEq, thiserror::Error)]
pub enum MixtureError {
    /// The part of product is not above zero, or the other part is below zero.
    #[error(
        "parts {product} : {diluent} by volume; accepted: a product part above 0 and a diluent part of 0 or more, such as 1 : 4"
    )]
    Parts {
        /// Parts of product.
        product: f64,
        /// Parts of water or thinner.
        diluent: f64,
    },
    /// Not a specific gravity.
    #[error("specific gravity {0}; accepted: above 0 and up to 25, such as 0.864 or 1.16")]
    SpecificGravity(f64),
}

/// Parts by volume before mixing: `1 : 4` is one of product to four of water or thinner.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Parts {
    product: f64,
    diluent: f64,
}

impl Parts {
    /// Nothing added.
    pub const UNDILUTED: Self = Self { product: 1.0, diluent: 0.0 };

    /// From the two numbers of the ratio.
    ///
    /// # Errors
    /// When the product part is not above zero, the diluent part is below zero, or either is not finite.
    pub fn new(product: f64, diluent: f64) -> Result<Self, MixtureError> {
        if product > 0.0 && product.is_finite() && diluent >= 0.0 && diluent.is_finite() {
            Ok(Self { product, diluent })
        } else {
            Err(MixtureError::Parts { product, diluent })
        }
    }

    /// Volumes of diluent for one volume of product.
    #[must_use]
    pub const fn diluent_per_product(self) -> f64 {
        self.diluent / self.product
    }
}

/// Density relative to water, both at 60 °F.
#[derive(Debug, Clone, Copy, PartialEq, PartialOrd)]
pub struct SpecificGravity(f64);

impl SpecificGravity {
    /// From its number.
    ///
    /// # Errors
    /// When it is not above 0 and at most 25 (heavier than any liquid or solid on the job).
    pub fn new(value: f64) -> Result<Self, MixtureError> {
        if value > 0.0 && value <= 25.0 { Ok(Self(value)) } else { Err(MixtureError::SpecificGravity(value)) }
    }

    /// For a number already known to lie within the accepted range.
    pub(crate) const fn known(value: f64) -> Self {
        Self(value)
    }

    /// Its number.
    #[must_use]
    pub const fn value(self) -> f64 {
        self.0
    }

    /// The density it stands for at 60 °F (15.56 °C).
    #[must_use]
    pub const fn density_at_60_fahrenheit(self) -> Density {
        Density::grams_per_milliliter(self.0 * WATER_60F_G_PER_ML)
    }
}
