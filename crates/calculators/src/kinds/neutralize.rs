//! Base that takes up an acid, and what to tell the sewer authority.

use clap::{Args, ValueEnum};
use science::chemistry::{
    Base, PhFinding, STOICHIOMETRY, Solution, Tell, WastePhLimits, neutralize, ph_findings,
    what_to_tell_the_sewer_authority,
};
use units::{Mass, Ph, Volume};

use super::dilute::strength;
use crate::accepted::Accepted;
use crate::caution::Caution;
use crate::error::SumError;
use crate::read::{missing, quantity};
use crate::rests_on::figure;
use crate::shown::Shown;
use crate::sum::Sum;

/// What is asked.
#[derive(Debug, Args)]
pub struct Neutralize {
    /// Volume of hydrochloric acid
    #[arg(long, value_name = "VOLUME", conflicts_with = "acid", allow_hyphen_values = true)]
    volume: Option<String>,
    /// Its strength by mass
    #[arg(long, value_name = "PERCENT", conflicts_with = "baume", allow_hyphen_values = true)]
    strength: Option<String>,
    /// Its degrees Baumé, as sold
    #[arg(long, value_name = "DEGREES", allow_hyphen_values = true)]
    baume: Option<String>,
    /// Mass of hydrogen chloride itself, instead of volume and strength
    #[arg(long, value_name = "MASS", allow_hyphen_values = true)]
    acid: Option<String>,
    /// What it is neutralized with
    #[arg(long, value_enum, default_value = "sodium-bicarbonate")]
    base: BaseArg,
    /// pH of the waste water as measured
    #[arg(long, value_name = "PH", allow_hyphen_values = true)]
    ph: Option<String>,
}

#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
enum BaseArg {
    /// Baking soda
    SodiumBicarbonate,
    /// Soda ash
    SodiumCarbonate,
    /// Ammonia, counted without its water
    Ammonia,
    /// Dry
    TrisodiumPhosphate,
    /// With 12 water
    TrisodiumPhosphateCrystals,
    /// Hydrated lime
    CalciumHydroxide,
    /// Limestone, chalk
    CalciumCarbonate,
    /// Lye
    SodiumHydroxide,
}

impl BaseArg {
    fn base(self) -> (Base, &'static str) {
        match self {
            Self::SodiumBicarbonate => (Base::SodiumBicarbonate, "sodium-bicarbonate"),
            Self::SodiumCarbonate => (Base::SodiumCarbonate, "sodium-carbonate"),
            Self::Ammonia => (Base::Ammonia, "ammonia"),
            Self::TrisodiumPhosphate => (Base::TrisodiumPhosphate, "trisodium-phosphate"),
            Self::TrisodiumPhosphateCrystals => (Base::TrisodiumPhosphateCrystals, "trisodium-phosphate-crystals"),
            Self::CalciumHydroxide => (Base::CalciumHydroxide, "calcium-hydroxide"),
            Self::CalciumCarbonate => (Base::CalciumCarbonate, "calcium-carbonate"),
            Self::SodiumHydroxide => (Base::SodiumHydroxide, "sodium-hydroxide"),
        }
    }
}

pub(crate) fn run(args: &Neutralize) -> Result<Sum, SumError> {
    let mut sum = Sum::new("neutralize", STOICHIOMETRY);
    let acid: Mass = match &args.acid {
        Some(text) => sum.read("acid", text, Shown::Mass)?,
        None => {
            let accepted = Accepted::naming("volume-or-acid", &["strength", "acid"]);
            let text = args.volume.as_ref().ok_or_else(|| missing("volume", accepted))?;
            let volume: Volume = sum.read("volume", text, Shown::Liquid)?;
            let strength = strength(&mut sum, "strength", args.strength.as_ref(), args.baume.as_ref())?;
            Solution::hydrochloric(strength).and_then(|s| s.mass_in(volume)).map_err(SumError::core)?
        }
    };
    let (base, code) = args.base.base();
    sum.given("base", code, Shown::Code(code));
    let waste: Option<Ph> = args.ph.as_ref().map(|text| quantity("ph", text)).transpose()?;
    let found = neutralize(acid, base).map_err(SumError::core)?;
    sum.result("base_mass", Shown::Mass(found.base_mass));
    sum.result("hydrogen_chloride", Shown::Mass(acid));
    if let Some(gas) = found.carbon_dioxide {
        sum.result("carbon_dioxide", Shown::Mass(gas.mass));
        sum.result("carbon_dioxide_gas", Shown::Space(gas.volume));
    }
    if let (Some(ph), Some(text)) = (waste, &args.ph) {
        sum.given("ph", text, Shown::Number(ph.value(), 2));
        let limits = WastePhLimits {
            sewer_floor: figure("sewer-ph-min"),
            corrosive_low: figure("waste-ph-low"),
            corrosive_high: figure("waste-ph-high"),
        };
        let mut codes: Vec<&str> = ph_findings(ph, &limits).into_iter().map(finding).collect();
        if codes.is_empty() {
            codes.push("federal-ph-rules-silent");
        }
        sum.result("waste_ph", Shown::Codes(codes));
    }
    sum.result("tell", Shown::Codes(what_to_tell_the_sewer_authority().iter().map(|tell| told(*tell)).collect()));
    sum.caution(found.cautions.iter().copied().map(Caution::Chemical));
    Ok(sum)
}

fn finding(finding: PhFinding) -> &'static str {
    match finding {
        PhFinding::BelowSewerFloor => "below-sewer-floor",
        PhFinding::CorrosiveHazardousWaste => "corrosive-hazardous-waste",
    }
}

fn told(tell: Tell) -> &'static str {
    match tell {
        Tell::Volume => "tell-volume",
        Tell::Ph => "tell-ph",
        Tell::Neutralizer => "tell-neutralizer",
        Tell::MetalSalts => "tell-metal-salts",
        Tell::Solids => "tell-solids",
        Tell::LaboratoryMetals => "tell-laboratory-metals",
        Tell::WhenAndWhere => "tell-when-and-where",
    }
}
