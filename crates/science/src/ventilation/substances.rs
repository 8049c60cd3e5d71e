//! What is published about the vapors met in this work.

use units::{Concentration, MolarMass, Temperature};

use crate::Grade;

/// A substance of the list.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Substance {
    /// Hydrogen chloride, from acid stain and acid wash.
    HydrogenChloride,
    /// Ammonia, from neutralizing.
    Ammonia,
    /// Acetone.
    Acetone,
    /// o-Xylene.
    OrthoXylene,
    /// m-Xylene.
    MetaXylene,
    /// p-Xylene.
    ParaXylene,
    /// Toluene.
    Toluene,
}

/// How long a limit looks at.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum LimitKind {
    /// Mean of a working day.
    WorkingDay,
    /// Mean of 15 minutes.
    ShortTerm,
    /// Never above it.
    Ceiling,
    /// Never above it, and only for ten minutes.
    Peak,
}

/// A limit of a substance in air.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct AirLimit {
    /// By volume.
    pub value: Concentration,
    /// What it applies to.
    pub kind: LimitKind,
}

/// The temperature from which it catches fire.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum FlashPoint {
    /// Does not burn.
    None,
    /// A gas: always.
    Gas,
    /// From this temperature.
    At(Temperature),
}

/// What is published about a substance.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct SubstanceData {
    /// The substance.
    pub substance: Substance,
    /// Molar mass.
    pub molar_mass: MolarMass,
    /// The legal limits, 29 CFR 1910.1000; the working-day or ceiling one first.
    pub legal: &'static [AirLimit],
    /// The advised limits of the national institute; the working-day or ceiling one first.
    pub advised: &'static [AirLimit],
    /// Immediately dangerous to life or health.
    pub dangerous: Concentration,
    /// Lower and upper explosive limit in air; `None` when it does not burn.
    pub explosive: Option<(Concentration, Concentration)>,
    /// Flash point.
    pub flash_point: FlashPoint,
    /// The worst grade among its numbers; `reference/physics/exposure_limits.csv` says which is which.
    pub grade: Grade,
}

const fn day(ppm: f64) -> AirLimit {
    AirLimit { value: Concentration::parts_per_million(ppm), kind: LimitKind::WorkingDay }
}

const fn limit(ppm: f64, kind: LimitKind) -> AirLimit {
    AirLimit { value: Concentration::parts_per_million(ppm), kind }
}

const fn burns(lower: f64, upper: f64) -> Option<(Concentration, Concentration)> {
    Some((Concentration::percent(lower), Concentration::percent(upper)))
}

const fn xylene(substance: Substance, lower: f64, upper: f64, flash_c: f64) -> SubstanceData {
    SubstanceData {
        substance,
        molar_mass: MolarMass::grams_per_mole(106.17),
        legal: const { &[day(100.0)] },
        advised: const { &[day(100.0), limit(150.0, LimitKind::ShortTerm)] },
        dangerous: Concentration::parts_per_million(900.0),
        explosive: burns(lower, upper),
        flash_point: FlashPoint::At(Temperature::celsius(flash_c)),
        grade: Grade::FromMemory,
    }
}

impl Substance {
    /// Every substance of the list.
    pub const ALL: [Self; 7] = [
        Self::HydrogenChloride,
        Self::Ammonia,
        Self::Acetone,
        Self::OrthoXylene,
        Self::MetaXylene,
        Self::ParaXylene,
        Self::Toluene,
    ];

    /// What is published about it.
    #[must_use]
    pub const fn data(self) -> SubstanceData {
        match self {
            Self::HydrogenChloride => SubstanceData {
                substance: self,
                molar_mass: MolarMass::grams_per_mole(36.46),
                legal: const { &[limit(5.0, LimitKind::Ceiling)] },
                advised: const { &[limit(5.0, LimitKind::Ceiling)] },
                // 50 ppm until the profile of 2025; the stricter, newer number is kept.
                dangerous: Concentration::parts_per_million(45.0),
                explosive: None,
                flash_point: FlashPoint::None,
                grade: Grade::Verified,
            },
            Self::Ammonia => SubstanceData {
                substance: self,
                molar_mass: MolarMass::grams_per_mole(17.03),
                legal: const { &[day(50.0)] },
                advised: const { &[day(25.0), limit(35.0, LimitKind::ShortTerm)] },
                dangerous: Concentration::parts_per_million(300.0),
                explosive: burns(15.0, 28.0),
                flash_point: FlashPoint::Gas,
                grade: Grade::FromMemory,
            },
            Self::Acetone => SubstanceData {
                substance: self,
                molar_mass: MolarMass::grams_per_mole(58.08),
                legal: const { &[day(1000.0)] },
                advised: const { &[day(250.0)] },
                // A tenth of the lower explosive limit, not a toxic level.
                dangerous: Concentration::parts_per_million(2500.0),
                explosive: burns(2.5, 12.8),
                flash_point: FlashPoint::At(Temperature::celsius(-18.0)),
                grade: Grade::FromMemory,
            },
            Self::OrthoXylene => xylene(self, 0.9, 6.7, 32.0),
            Self::MetaXylene => xylene(self, 1.1, 7.0, 28.0),
            Self::ParaXylene => xylene(self, 1.1, 7.0, 27.0),
            Self::Toluene => SubstanceData {
                substance: self,
                molar_mass: MolarMass::grams_per_mole(92.14),
                legal: const { &[day(200.0), limit(300.0, LimitKind::Ceiling), limit(500.0, LimitKind::Peak)] },
                advised: const { &[day(100.0), limit(150.0, LimitKind::ShortTerm)] },
                dangerous: Concentration::parts_per_million(500.0),
                explosive: burns(1.1, 7.1),
                flash_point: FlashPoint::At(Temperature::celsius(4.0)),
                grade: Grade::FromMemory,
            },
        }
    }
}
