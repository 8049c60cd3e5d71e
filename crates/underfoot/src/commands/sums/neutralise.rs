//! Base that takes up an acid, and what to tell the sewer authority.

use clap::{Args, ValueEnum};
use science::chemistry::{
    Base, PhFinding, STOICHIOMETRY, Solution, Tell, neutralise, ph_findings, what_to_tell_the_sewer_authority,
};
use units::{Mass, Notation, Ph, Volume};

use super::caution::Caution;
use super::dilute::strength;
use super::read::missing;
use super::shown::Shown;
use super::sum::Sum;
use crate::failure::Failure;

/// What is asked.
#[derive(Debug, Args)]
pub(crate) struct Neutralise {
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

pub(super) fn run(args: &Neutralise) -> Result<Sum, Failure> {
    let mut sum = Sum::new("neutralise", STOICHIOMETRY);
    let acid: Mass = match &args.acid {
        Some(text) => sum.read("acid", text, Shown::Mass)?,
        None => {
            let accepted = "the acid's volume, such as 1 gal, with --strength; or --acid with a mass";
            let text = args.volume.as_ref().ok_or_else(|| missing("volume", accepted))?;
            let volume: Volume = sum.read("volume", text, Shown::Liquid)?;
            let strength = strength(&mut sum, "strength", args.strength.as_ref(), args.baume.as_ref())?;
            Solution::hydrochloric(strength).and_then(|s| s.mass_in(volume)).map_err(Failure::data)?
        }
    };
    let (base, code) = args.base.base();
    sum.given("base", code, Shown::Code(code));
    let waste = args.ph.as_ref().map(|text| Ph::read(text).map_err(|e| ph_refused(&e))).transpose()?;
    let found = neutralise(acid, base).map_err(Failure::data)?;
    sum.result("base_mass", Shown::Mass(found.base_mass));
    sum.result("hydrogen_chloride", Shown::Mass(acid));
    if let Some(gas) = found.carbon_dioxide {
        sum.result("carbon_dioxide", Shown::Mass(gas.mass));
        sum.result("carbon_dioxide_gas", Shown::Space(gas.volume));
    }
    if let (Some(ph), Some(text)) = (waste, &args.ph) {
        sum.given("ph", text, Shown::Number(ph.value(), 2));
        let mut codes: Vec<&str> = ph_findings(ph).into_iter().map(finding).collect();
        if codes.is_empty() {
            codes.push("federal-ph-rules-silent");
        }
        sum.result("waste_ph", Shown::Codes(codes));
    }
    sum.result("tell", Shown::Codes(what_to_tell_the_sewer_authority().iter().map(|tell| told(*tell)).collect()));
    sum.cautions(found.cautions.iter().copied().map(Caution::Chemical));
    Ok(sum)
}

fn ph_refused(error: &units::ReadError) -> Failure {
    match error.problem {
        units::Problem::OutOfRange { .. } => Failure::Data(format!("--ph: {error}")),
        _ => Failure::Use(format!("--ph: {error}")),
    }
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
        Tell::Neutraliser => "tell-neutralizer",
        Tell::MetalSalts => "tell-metal-salts",
        Tell::Solids => "tell-solids",
        Tell::LaboratoryMetals => "tell-laboratory-metals",
        Tell::WhenAndWhere => "tell-when-and-where",
    }
}
