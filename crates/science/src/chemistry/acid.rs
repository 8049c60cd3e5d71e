//! Strength of hydrochloric acid by density and by degrees Baumé.

use units::{Density, Fraction, Temperature};

use super::ChemistryError;
use crate::{FormulaSource, Grade, SpecificGravity};

/// Density of hydrochloric acid at 20 °C by mass share.
pub const HCL_DENSITY: FormulaSource = FormulaSource {
    id: "hcl-density-20c",
    document: "handbook table (Perry, CRC)",
    locator: "10, 20, 30, 32, 34, 36, 38 % read in a stored copy to 3 decimals; the other rows from memory",
    grade: Grade::FromMemory,
};

/// Degrees Baumé of liquids heavier than water: Be = 145 − 145 / sg(60/60 °F).
pub const BAUME: FormulaSource = FormulaSource {
    id: "baume-heavy",
    document: "the US scale for liquids heavier than water",
    locator: "Be = 145 - 145/sg",
    grade: Grade::SecondaryCopy,
};

/// Mass percent of HCl and density at 20 °C, g/mL ([`HCL_DENSITY`]).
const DENSITY_20C: [(f64, f64); 22] = [
    (0.0, 0.9982),
    (1.0, 1.0032),
    (2.0, 1.0082),
    (4.0, 1.0181),
    (6.0, 1.0279),
    (8.0, 1.0376),
    (10.0, 1.0474),
    (12.0, 1.0574),
    (14.0, 1.0675),
    (16.0, 1.0776),
    (18.0, 1.0878),
    (20.0, 1.0980),
    (22.0, 1.1083),
    (24.0, 1.1187),
    (26.0, 1.1290),
    (28.0, 1.1392),
    (30.0, 1.1492),
    (32.0, 1.1593),
    (34.0, 1.1691),
    (36.0, 1.1789),
    (38.0, 1.1885),
    (40.0, 1.1980),
];

/// Change of density with temperature near 20 °C for strong acid, g/mL per K (M).
const DENSITY_PER_KELVIN: f64 = -0.000_53;

/// The straight line between the two rows around `x`; `None` outside the table.
fn between(rows: impl Iterator<Item = (f64, f64)>, x: f64) -> Option<f64> {
    let mut before: Option<(f64, f64)> = None;
    for (x1, y1) in rows {
        if x <= x1 {
            return match before {
                Some((x0, y0)) => Some(y0 + (y1 - y0) * (x - x0) / (x1 - x0)),
                None => (x == x1).then_some(y1),
            };
        }
        before = Some((x1, y1));
    }
    None
}

/// Density of hydrochloric acid at 20 °C, by a straight line between table rows (which differ from
/// a smooth curve by less than 0.0001 g/mL).
///
/// # Errors
/// Above 40 % by mass.
pub fn hcl_density(strength: Fraction) -> Result<Density, ChemistryError> {
    between(DENSITY_20C.into_iter(), strength.as_percent())
        .map(Density::grams_per_milliliter)
        .ok_or(ChemistryError::Strength(strength))
}

/// Strength by mass from a density at 20 °C, as a hydrometer gives it.
///
/// # Errors
/// A density that no hydrochloric acid up to 40 % has.
pub fn hcl_strength(density: Density) -> Result<Fraction, ChemistryError> {
    between(DENSITY_20C.into_iter().map(|(x, y)| (y, x)), density.as_grams_per_milliliter())
        .and_then(|percent| Fraction::share(percent / 100.0).ok())
        .ok_or(ChemistryError::AcidDensity(density))
}

/// What a density read at another temperature would be at 20 °C: -0.00053 g/mL for each degree
/// warmer (M), good to about 0.001 g/mL between 10 and 30 °C for acid of 25 to 37 %.
#[must_use]
pub fn density_at_20_celsius(read: Density, temperature: Temperature) -> Density {
    let warmer = (Temperature::celsius(20.0) - temperature).as_celsius_degrees();
    read + Density::grams_per_milliliter(DENSITY_PER_KELVIN * warmer)
}

/// Degrees Baumé on the scale for liquids heavier than water.
#[derive(Debug, Clone, Copy, PartialEq, PartialOrd)]
pub struct Baume(f64);

impl Baume {
    /// From degrees.
    ///
    /// # Errors
    /// Outside 0 to 70.
    pub fn degrees(value: f64) -> Result<Self, ChemistryError> {
        if (0.0..=70.0).contains(&value) { Ok(Self(value)) } else { Err(ChemistryError::Baume(value)) }
    }

    /// In degrees.
    #[must_use]
    pub const fn as_degrees(self) -> f64 {
        self.0
    }

    /// sg = 145 / (145 − Be), at 60/60 °F. V (formula in a stored copy).
    #[must_use]
    pub fn specific_gravity(self) -> SpecificGravity {
        SpecificGravity::known(145.0 / (145.0 - self.0))
    }

    /// Be = 145 − 145 / sg.
    ///
    /// # Errors
    /// A liquid lighter than water, or beyond 70 degrees.
    pub fn of(gravity: SpecificGravity) -> Result<Self, ChemistryError> {
        Self::degrees(145.0 - 145.0 / gravity.value())
    }
}

/// Degrees between which the change of density with temperature is known well enough.
const ACID_BAUME: std::ops::RangeInclusive<f64> = 15.0..=24.0;

/// Strength by mass of hydrochloric acid sold by degrees Baumé, through its density at 60 °F. Within
/// 0.1 % of the strengths printed for commercial grades.
///
/// # Errors
/// Outside 15 to 24 degrees: acid as sold.
pub fn hcl_strength_from_baume(baume: Baume) -> Result<Fraction, ChemistryError> {
    if !ACID_BAUME.contains(&baume.0) {
        return Err(ChemistryError::AcidBaume(baume.0));
    }
    let at_60f = baume.specific_gravity().density_at_60_fahrenheit();
    hcl_strength(density_at_20_celsius(at_60f, Temperature::fahrenheit(60.0)))
}

/// A grade of hydrochloric (muriatic) acid as sold.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct CommercialGrade {
    /// Degrees Baumé on the label.
    pub baume: Baume,
    /// Strength by mass that goes with it, percent.
    percent: f64,
}

impl CommercialGrade {
    /// Strength by mass.
    #[must_use]
    pub fn strength(self) -> Fraction {
        Fraction::share(self.percent / 100.0).expect("the strengths of the list lie between 0 and 1")
    }
}

/// 18°, 20° and 22° acid with their strengths by mass (M; Perry, CRC).
pub const COMMERCIAL_GRADES: [CommercialGrade; 3] = [
    CommercialGrade { baume: Baume(18.0), percent: 27.92 },
    CommercialGrade { baume: Baume(20.0), percent: 31.45 },
    CommercialGrade { baume: Baume(22.0), percent: 35.21 },
];
