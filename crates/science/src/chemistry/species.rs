//! Molar masses summed from atomic weights.

use units::MolarMass;

/// Conventional atomic weights, g/mol: IUPAC abridged table of 2021 (M for the weights, V for the sums).
#[derive(Clone, Copy)]
enum Atom {
    H,
    C,
    N,
    O,
    Na,
    P,
    Cl,
    K,
    Ca,
}

impl Atom {
    const fn weight(self) -> f64 {
        match self {
            Self::H => 1.008,
            Self::C => 12.011,
            Self::N => 14.007,
            Self::O => 15.999,
            Self::Na => 22.989_769_28,
            Self::P => 30.973_761_998,
            Self::Cl => 35.45,
            Self::K => 39.0983,
            Self::Ca => 40.078,
        }
    }
}

/// A substance that meets acid on a slab.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Species {
    /// Hydrogen chloride, HCl.
    HydrogenChloride,
    /// Sodium bicarbonate (baking soda), NaHCO3.
    SodiumBicarbonate,
    /// Sodium carbonate (soda ash), Na2CO3.
    SodiumCarbonate,
    /// Ammonia, NH3.
    Ammonia,
    /// Ammonia counted with its water, NH4OH.
    AmmoniumHydroxide,
    /// Trisodium phosphate, Na3PO4.
    TrisodiumPhosphate,
    /// Trisodium phosphate as sold in crystals, Na3PO4·12H2O.
    TrisodiumPhosphateCrystals,
    /// Calcium hydroxide (hydrated lime), Ca(OH)2.
    CalciumHydroxide,
    /// Calcium carbonate, CaCO3.
    CalciumCarbonate,
    /// Calcium chloride, CaCl2.
    CalciumChloride,
    /// Carbon dioxide, CO2.
    CarbonDioxide,
    /// Water, H2O.
    Water,
    /// Table salt, NaCl.
    SodiumChloride,
    /// Sodium hydroxide (lye), NaOH.
    SodiumHydroxide,
    /// Potassium hydroxide, KOH.
    PotassiumHydroxide,
    /// Ammonium chloride, NH4Cl.
    AmmoniumChloride,
}

impl Species {
    /// Every substance.
    pub const ALL: [Self; 16] = [
        Self::HydrogenChloride,
        Self::SodiumBicarbonate,
        Self::SodiumCarbonate,
        Self::Ammonia,
        Self::AmmoniumHydroxide,
        Self::TrisodiumPhosphate,
        Self::TrisodiumPhosphateCrystals,
        Self::CalciumHydroxide,
        Self::CalciumCarbonate,
        Self::CalciumChloride,
        Self::CarbonDioxide,
        Self::Water,
        Self::SodiumChloride,
        Self::SodiumHydroxide,
        Self::PotassiumHydroxide,
        Self::AmmoniumChloride,
    ];

    /// Its formula in plain letters, `Ca(OH)2`.
    #[must_use]
    pub const fn formula(self) -> &'static str {
        self.parts().0
    }

    /// Its molar mass, summed from atomic weights.
    #[must_use]
    pub fn molar_mass(self) -> MolarMass {
        MolarMass::grams_per_mole(self.parts().1.iter().map(|(atom, count)| atom.weight() * f64::from(*count)).sum())
    }

    const fn parts(self) -> (&'static str, &'static [(Atom, u8)]) {
        use Atom::{C, Ca, Cl, H, K, N, Na, O, P};
        match self {
            Self::HydrogenChloride => ("HCl", &[(H, 1), (Cl, 1)]),
            Self::SodiumBicarbonate => ("NaHCO3", &[(Na, 1), (H, 1), (C, 1), (O, 3)]),
            Self::SodiumCarbonate => ("Na2CO3", &[(Na, 2), (C, 1), (O, 3)]),
            Self::Ammonia => ("NH3", &[(N, 1), (H, 3)]),
            Self::AmmoniumHydroxide => ("NH4OH", &[(N, 1), (H, 5), (O, 1)]),
            Self::TrisodiumPhosphate => ("Na3PO4", &[(Na, 3), (P, 1), (O, 4)]),
            Self::TrisodiumPhosphateCrystals => ("Na3PO4.12H2O", &[(Na, 3), (P, 1), (O, 16), (H, 24)]),
            Self::CalciumHydroxide => ("Ca(OH)2", &[(Ca, 1), (O, 2), (H, 2)]),
            Self::CalciumCarbonate => ("CaCO3", &[(Ca, 1), (C, 1), (O, 3)]),
            Self::CalciumChloride => ("CaCl2", &[(Ca, 1), (Cl, 2)]),
            Self::CarbonDioxide => ("CO2", &[(C, 1), (O, 2)]),
            Self::Water => ("H2O", &[(H, 2), (O, 1)]),
            Self::SodiumChloride => ("NaCl", &[(Na, 1), (Cl, 1)]),
            Self::SodiumHydroxide => ("NaOH", &[(Na, 1), (O, 1), (H, 1)]),
            Self::PotassiumHydroxide => ("KOH", &[(K, 1), (O, 1), (H, 1)]),
            Self::AmmoniumChloride => ("NH4Cl", &[(N, 1), (H, 4), (Cl, 1)]),
        }
    }
}
