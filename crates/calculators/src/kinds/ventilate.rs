//! Fresh air for solvent vapor: for health and for the explosive limit, side by side.

use science::ventilation::{
    DILUTION_FOR_HEALTH, DILUTION_FOR_LEL, ExplosiveMargin, How, Mixing, Release, Room, Solvent, Substance,
    dilution_flows,
};
use science::{FormulaSource, Grade, SpecificGravity};
use units::{AirFlow, Concentration, Duration, Fraction, MolarMass, Temperature, Volume};

use super::prelude::*;
use crate::caution::Caution;
use crate::shown::Shown;

/// Where the limits of the listed substances come from.
const EXPOSURE_LIMITS: FormulaSource = FormulaSource {
    id: "exposure-limits",
    document: "29 CFR 1910.1000 table Z-1; NIOSH Pocket Guide",
    locator: "reference/physics/exposure_limits.csv says which number was read and which is from memory",
    grade: Grade::FromMemory,
};

pub(super) static CALCULATOR: Calculator = Calculator {
    form: Form {
        name: "ventilate",
        fields: &[
            optional("substance", "sum-field-ventilate-substance", InputKind::Named { values: &words(SUBSTANCES), also: &[MIXED_XYLENE] }).in_answer("value-substance")
            .such_as("o-xylene", "o-xylene"),
            optional("molar_mass", "sum-field-ventilate-molar-mass", quantity(Kind::MolarMass, "106.17 g/mol", "106.17 g/mol")).in_answer("value-molar-mass").more(),
            optional("gravity", "value-gravity", NUMBER).such_as("0.864", "0.864").more(),
            optional("lel", "value-lel", percent(Kind::Concentration, "0.9 %")).more(),
            optional("limit", "sum-field-ventilate-limit", quantity(Kind::Concentration, "100 ppm", "100 ppm")).in_answer("value-limit").usual_said("sum-usual-ventilate-limit").more(),
            required("liquid", "sum-field-ventilate-liquid", quantity(Kind::Volume, "2 gal", "7.5 L")).in_answer("value-liquid"),
            optional("part", "sum-field-ventilate-part", percent(Kind::Fraction, "70 %")).in_answer("value-part").usual("100 %", "100 %").usual_said("sum-usual-ventilate-part"),
            required("over", "value-over", quantity(Kind::Duration, "60 min", "60 min")),
            optional("how", "sum-field-ventilate-how", InputKind::Choice(&words(HOW))).usual("evaporating", "evaporating"),
            optional("mixing", "value-mixing", NUMBER).usual("5", "5").more(),
            optional("safety", "value-safety", NUMBER).usual("10", "10").more(),
            optional("room", "value-room", quantity(Kind::Volume, "5000 ft3", "140 m3")),
        ],
        presets: &[],
        rules: &[Rule::OneOf(&["substance", "molar_mass"]), Rule::NotBoth("lel", "substance")],
    },
    title: "sum-ventilate",
    about: "sum-about-ventilate",
    example: &["substance", "liquid", "part", "over", "room"],
    lines: &[r#"--substance xylene --liquid "2 gal" --part "70 %" --over "60 min" --room "5000 ft3""#],
    places: &[],
    run,
};

/// Each with the specific gravity of the liquid (M); none for a gas, whose solution is on its label.
const SUBSTANCES: [(&str, (Substance, Option<f64>)); 7] = [
    // Refused as acid before its weight matters.
    ("hydrogen-chloride", (Substance::HydrogenChloride, Some(1.16))),
    ("ammonia", (Substance::Ammonia, None)),
    ("acetone", (Substance::Acetone, Some(0.79))),
    ("o-xylene", (Substance::OrthoXylene, Some(0.864))),
    ("m-xylene", (Substance::MetaXylene, Some(0.864))),
    ("p-xylene", (Substance::ParaXylene, Some(0.864))),
    ("toluene", (Substance::Toluene, Some(0.866))),
];

/// Its explosive limit is the lowest of the three.
const MIXED_XYLENE: (&str, &str) = ("xylene", "o-xylene");

/// Rolled, mopped or poured; the others are refused.
const HOW: [(&str, How); 3] =
    [("evaporating", How::Evaporating), ("spraying", How::Spraying), ("acid-mist", How::AcidMist)];

fn run(given: &mut Given<'_>) -> Result<Calculation, CalculatorError> {
    let mut sum = Calculation::new(given, DILUTION_FOR_HEALTH);
    let (_, how) = given.choice("how", &HOW)?;
    let (solvent, limit) = solvent(given, &mut sum)?;
    let product: Volume = given.read("liquid", Shown::Liquid)?;
    let whole = Fraction::share(1.0).expect("1 lies between 0 and 1");
    let part = given.read_or("part", whole, Shown::share)?;
    let over: Duration = given.read("over", Shown::Minutes)?;
    let mixing = given.number_or("mixing", 5.0);
    let mixing = Mixing::factor(mixing).map_err(CalculatorError::core)?;
    let safety = given.number_or("safety", 10.0);
    let margin = ExplosiveMargin::new(safety, Temperature::fahrenheit(70.0)).map_err(CalculatorError::core)?;
    let room = given.some::<Volume>("room", Shown::Space)?;

    let release = Release { solvent, liquid: product * part.as_share(), over, how };
    let flows = dilution_flows(&release, limit, mixing, margin).map_err(CalculatorError::core)?;
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
fn without_air(sum: &mut Calculation, room: Volume, release: &Release, vapor: AirFlow) -> Result<(), CalculatorError> {
    let closed = Room::new(room, AirFlow::ZERO, Mixing::PERFECT).map_err(CalculatorError::core)?;
    let end = closed.builds_up_to(vapor, release.over).map_err(CalculatorError::core)?;
    sum.result("without_fresh_air", Shown::Concentration(end));
    if let Ok(limit) = release.solvent.lower_explosive_limit() {
        sum.result("share_of_explosive_limit", Shown::Percent(end / limit * 100.0));
    }
    Ok(())
}

/// The solvent and its health limit, from the list or from its data sheet.
fn solvent(given: &mut Given<'_>, sum: &mut Calculation) -> Result<(Solvent, Concentration), CalculatorError> {
    if given.typed("substance").is_none() {
        let grams = |mass: MolarMass| Shown::Number(mass.as_grams_per_mole(), 2);
        let mass = given.read("molar_mass", grams)?;
        let gravity = gravity(given, sum, None)?;
        let lower = given.some("lel", Shown::Concentration)?;
        let limit = given.some("limit", Shown::Concentration)?;
        let limit = limit.ok_or_else(|| CalculatorError::missing_but("limit", "sum-accepts-health-limit"))?;
        return Ok((Solvent::new(mass, gravity, lower).map_err(CalculatorError::core)?, limit));
    }
    let (code, (substance, usual)) = given.choice("substance", &SUBSTANCES)?;
    given.note("substance", code, Shown::Code(code));
    let gravity = gravity(given, sum, usual)?;
    let data = substance.data();
    // The working-day or ceiling limit stands first in both lists.
    let usual = [data.legal, data.advised]
        .into_iter()
        .filter_map(|limits| limits.first())
        .map(|limit| limit.value)
        .fold(Concentration::share(1.0), Concentration::min);
    let limit = given.read_or("limit", usual, Shown::Concentration)?;
    sum.note_also(EXPOSURE_LIMITS);
    Ok((Solvent::of(substance, gravity), limit))
}

fn gravity(
    given: &mut Given<'_>,
    sum: &mut Calculation,
    usual: Option<f64>,
) -> Result<SpecificGravity, CalculatorError> {
    let value = match (given.number("gravity", 3), usual) {
        (Some(value), _) => value,
        (None, Some(usual)) => {
            given.assumed("gravity", Shown::Number(usual, 3));
            sum.caution([Caution::GravityFromMemory]);
            usual
        }
        (None, None) => return Err(CalculatorError::missing_but("gravity", "sum-accepts-gravity")),
    };
    SpecificGravity::new(value).map_err(CalculatorError::core)
}
