//! Fresh air for solvent vapor: for health and for the explosive limit, side by side.

use clap::{Args, ValueEnum};
use science::ventilation::{
    DILUTION_FOR_HEALTH, DILUTION_FOR_LEL, ExplosiveMargin, How, Mixing, Release, Room, Solvent, Substance,
    dilution_flows,
};
use science::{FormulaSource, Grade, SpecificGravity};
use units::{AirFlow, Concentration, Duration, Fraction, MolarMass, Temperature, Volume};

use crate::accepted::Accepted;
use crate::caution::Caution;
use crate::error::SumError;
use crate::read::{missing, number};
use crate::shown::Shown;
use crate::sum::Sum;

/// Where the limits of the listed substances come from.
const EXPOSURE_LIMITS: FormulaSource = FormulaSource {
    id: "exposure-limits",
    document: "29 CFR 1910.1000 table Z-1; NIOSH Pocket Guide",
    locator: "reference/physics/exposure_limits.csv says which number was read and which is from memory",
    grade: Grade::FromMemory,
};

/// What is asked.
#[derive(Debug, Args)]
pub struct Ventilate {
    /// What evaporates
    #[arg(long, value_enum)]
    substance: Option<SubstanceArg>,
    /// Its molar mass, from its data sheet (another substance)
    #[arg(long, value_name = "MOLAR_MASS", conflicts_with = "substance", allow_hyphen_values = true)]
    molar_mass: Option<String>,
    /// Its specific gravity, from its data sheet
    #[arg(long, value_name = "NUMBER", allow_hyphen_values = true)]
    gravity: Option<String>,
    /// Its lower explosive limit in air, from its data sheet (another substance)
    #[arg(long, value_name = "PERCENT", conflicts_with = "substance", allow_hyphen_values = true)]
    lel: Option<String>,
    /// Health limit in air [default: the lower of the legal and the advised one]
    #[arg(long, value_name = "PPM", allow_hyphen_values = true)]
    limit: Option<String>,
    /// Product used
    #[arg(long, value_name = "VOLUME", allow_hyphen_values = true)]
    liquid: String,
    /// Share of the product that is this solvent, by volume [default: all]
    #[arg(long, value_name = "SHARE", allow_hyphen_values = true)]
    part: Option<String>,
    /// Time in which it evaporates
    #[arg(long, value_name = "DURATION", allow_hyphen_values = true)]
    over: String,
    /// How it gets into the air
    #[arg(long, value_enum, default_value = "evaporating")]
    how: HowArg,
    /// Mixing factor, 1 perfect to 10 dead corners [default: 5]
    #[arg(long, value_name = "K", allow_hyphen_values = true)]
    mixing: Option<String>,
    /// Safety factor below the explosive limit: 4 is a quarter of it, 10 a tenth [default: 10]
    #[arg(long, value_name = "C", allow_hyphen_values = true)]
    safety: Option<String>,
    /// Volume of the room, to see what happens without fresh air
    #[arg(long, value_name = "VOLUME", allow_hyphen_values = true)]
    room: Option<String>,
}

#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
enum SubstanceArg {
    HydrogenChloride,
    Ammonia,
    Acetone,
    /// Mixed xylene is taken as this one: its explosive limit is the lowest
    #[value(name = "o-xylene", alias = "xylene")]
    OrthoXylene,
    #[value(name = "m-xylene")]
    MetaXylene,
    #[value(name = "p-xylene")]
    ParaXylene,
    Toluene,
}

#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
enum HowArg {
    /// Rolled, mopped or poured
    Evaporating,
    Spraying,
    AcidMist,
}

impl SubstanceArg {
    fn known(self) -> (Substance, &'static str) {
        match self {
            Self::HydrogenChloride => (Substance::HydrogenChloride, "hydrogen-chloride"),
            Self::Ammonia => (Substance::Ammonia, "ammonia"),
            Self::Acetone => (Substance::Acetone, "acetone"),
            Self::OrthoXylene => (Substance::OrthoXylene, "o-xylene"),
            Self::MetaXylene => (Substance::MetaXylene, "m-xylene"),
            Self::ParaXylene => (Substance::ParaXylene, "p-xylene"),
            Self::Toluene => (Substance::Toluene, "toluene"),
        }
    }

    /// Specific gravity of the liquid (M); none for a gas, whose solution is on its label.
    fn gravity(self) -> Option<f64> {
        match self {
            Self::Acetone => Some(0.79),
            Self::OrthoXylene | Self::MetaXylene | Self::ParaXylene => Some(0.864),
            Self::Toluene => Some(0.866),
            // Refused as acid before its weight matters.
            Self::HydrogenChloride => Some(1.16),
            Self::Ammonia => None,
        }
    }
}

pub(crate) fn run(args: &Ventilate) -> Result<Sum, SumError> {
    let mut sum = Sum::new("ventilate", DILUTION_FOR_HEALTH);
    let how = match args.how {
        HowArg::Evaporating => How::Evaporating,
        HowArg::Spraying => How::Spraying,
        HowArg::AcidMist => How::AcidMist,
    };
    let (solvent, limit) = solvent(&mut sum, args)?;
    let product: Volume = sum.read("liquid", &args.liquid, Shown::Liquid)?;
    let whole = Fraction::share(1.0).expect("1 lies between 0 and 1");
    let part = sum.share_or("part", args.part.as_ref(), whole)?;
    let over: Duration = sum.read("over", &args.over, Shown::Minutes)?;
    let mixing = sum.number_or("mixing", args.mixing.as_ref(), 5.0, "mixing-factor")?;
    let mixing = Mixing::factor(mixing).map_err(SumError::core)?;
    let safety = sum.number_or("safety", args.safety.as_ref(), 10.0, "safety-factor")?;
    let margin = ExplosiveMargin::new(safety, Temperature::fahrenheit(70.0)).map_err(SumError::core)?;
    let room = sum.read_some::<Volume>("room", args.room.as_ref(), Shown::Space)?;

    let release = Release { solvent, liquid: product * part.as_share(), over, how };
    let flows = dilution_flows(&release, limit, mixing, margin).map_err(SumError::core)?;
    sum.result("flow_needed", Shown::Flow(flows.needed()));
    sum.result("flow_for_health", Shown::Flow(flows.for_health));
    match flows.below_explosive_limit {
        Some(flow) => {
            sum.result("flow_below_explosive_limit", Shown::Flow(flow));
            sum.note_also(DILUTION_FOR_LEL);
        }
        None => sum.result("explosive_limit", Shown::Code("does-not-burn")),
    }
    sum.result("vapor", Shown::Flow(flows.vapor));
    if let Some(room) = room {
        without_air(&mut sum, room, &release, flows.vapor)?;
    }
    sum.caution([
        Caution::ExplosiveIsNotHealthy,
        Caution::NotForAcidOrSpray,
        Caution::VaporLiesLow,
        Caution::NoIgnition,
        Caution::RespiratorByCompetentPerson,
    ]);
    Ok(sum)
}

/// What the room holds at the end when nobody opens a door.
fn without_air(sum: &mut Sum, room: Volume, release: &Release, vapor: AirFlow) -> Result<(), SumError> {
    let closed = Room::new(room, AirFlow::ZERO, Mixing::PERFECT).map_err(SumError::core)?;
    let end = closed.builds_up_to(vapor, release.over).map_err(SumError::core)?;
    sum.result("without_fresh_air", Shown::Concentration(end));
    if let Ok(limit) = release.solvent.lower_explosive_limit() {
        sum.result("share_of_explosive_limit", Shown::Percent(end / limit * 100.0));
    }
    Ok(())
}

/// The solvent and its health limit, from the list or from its data sheet.
fn solvent(sum: &mut Sum, args: &Ventilate) -> Result<(Solvent, Concentration), SumError> {
    let gravity = |sum: &mut Sum, usual: Option<f64>| {
        let accepted = "gravity";
        let value = match (&args.gravity, usual) {
            (Some(text), _) => {
                let value = number("gravity", text, accepted)?;
                sum.given("gravity", text, Shown::Number(value, 3));
                value
            }
            (None, Some(usual)) => {
                sum.assumed("gravity", Shown::Number(usual, 3));
                sum.caution([Caution::GravityFromMemory]);
                usual
            }
            (None, None) => return Err(missing("gravity", accepted)),
        };
        SpecificGravity::new(value).map_err(SumError::core)
    };
    if let Some(listed) = args.substance {
        let (substance, code) = listed.known();
        sum.given("substance", code, Shown::Code(code));
        let gravity = gravity(sum, listed.gravity())?;
        let data = substance.data();
        // The working-day or ceiling limit stands first in both lists.
        let usual = [data.legal, data.advised]
            .into_iter()
            .filter_map(|limits| limits.first())
            .map(|limit| limit.value)
            .fold(Concentration::share(1.0), Concentration::min);
        let limit = sum.read_or("limit", args.limit.as_ref(), usual, Shown::Concentration)?;
        sum.note_also(EXPOSURE_LIMITS);
        return Ok((Solvent::of(substance, gravity), limit));
    }
    let text = args.molar_mass.as_ref();
    let text =
        text.ok_or_else(|| missing("substance", Accepted::naming("substance-or-molar-mass", &["help", "molar_mass"])))?;
    let mass: MolarMass = crate::read::quantity("molar_mass", text)?;
    sum.given("molar_mass", text, Shown::Number(mass.as_grams_per_mole(), 2));
    let gravity = gravity(sum, None)?;
    let lower = sum.read_some::<Concentration>("lel", args.lel.as_ref(), Shown::Concentration)?;
    let text = args.limit.as_ref().ok_or_else(|| missing("limit", "health-limit"))?;
    let limit = sum.read("limit", text, Shown::Concentration)?;
    Ok((Solvent::new(mass, gravity, lower).map_err(SumError::core)?, limit))
}
