//! Base that takes up an acid, and what to tell the sewer authority.

use science::chemistry::{
    Base, PhFinding, STOICHIOMETRY, Solution, Tell, WastePhLimits, neutralize, ph_findings, what_to_tell_the_sewer_authority,
};
use units::{Mass, Ph, Volume};

use super::dilute::strength;
use super::prelude::*;
use crate::caution::Caution;
use crate::rests_on::figure;
use crate::shown::Shown;

pub(super) static CALCULATOR: Calculator = Calculator {
    form: Form {
        name: "neutralize",
        fields: &[
            optional("volume", "sum-field-neutralize-volume", quantity(Kind::Volume, "1 gal", "4 L")).in_answer("value-volume"),
            optional("strength", "sum-field-neutralize-strength", percent(Kind::Fraction, "31.45 %")).in_answer("value-strength"),
            optional("baume", "sum-field-neutralize-baume", NUMBER).in_answer("value-baume").such_as("20", "20"),
            optional("acid", "sum-field-neutralize-acid", quantity(Kind::Mass, "3 lb", "1.4 kg")).in_answer("value-acid").more(),
            optional("base", "sum-field-neutralize-base", InputKind::Choice(&words(BASES))).in_answer("value-base").usual("sodium-bicarbonate", "sodium-bicarbonate"),
            optional("ph", "value-ph", quantity(Kind::Ph, "1.5", "1.5")),
        ],
        presets: &[],
        rules: &[Rule::OneOf(&["volume", "acid"]), Rule::AtLeastOne(&["strength", "baume", "acid"]), Rule::NotBoth("strength", "baume")],
    },
    title: "sum-neutralize",
    about: "sum-about-neutralize",
    example: &["volume", "strength", "base"],
    lines: &[r#"--volume "1 gal" --strength "31.45 %" --base sodium-bicarbonate"#],
    places: &[],
    run,
};

/// Baking soda, soda ash, ammonia counted without its water, trisodium phosphate dry and with 12 water, hydrated
/// lime, limestone, lye.
const BASES: [(&str, Base); 8] = [
    ("sodium-bicarbonate", Base::SodiumBicarbonate),
    ("sodium-carbonate", Base::SodiumCarbonate),
    ("ammonia", Base::Ammonia),
    ("trisodium-phosphate", Base::TrisodiumPhosphate),
    ("trisodium-phosphate-crystals", Base::TrisodiumPhosphateCrystals),
    ("calcium-hydroxide", Base::CalciumHydroxide),
    ("calcium-carbonate", Base::CalciumCarbonate),
    ("sodium-hydroxide", Base::SodiumHydroxide),
];

fn run(given: &mut Given<'_>) -> Result<Calculation, CalculatorError> {
    let mut sum = Calculation::new(given, STOICHIOMETRY);
    let acid: Mass = match given.some("acid", Shown::Mass)? {
        Some(acid) => acid,
        None => {
            let volume: Volume = given.read("volume", Shown::Liquid)?;
            let strength = strength(given, &mut sum, "strength")?;
            Solution::hydrochloric(strength).and_then(|s| s.mass_in(volume)).map_err(CalculatorError::core)?
        }
    };
    let (code, base) = given.choice("base", &BASES)?;
    given.note("base", code, Shown::Code(code));
    let found = neutralize(acid, base).map_err(CalculatorError::core)?;
    sum.result("base_mass", Shown::Mass(found.base_mass));
    sum.result("hydrogen_chloride", Shown::Mass(acid));
    if let Some(gas) = found.carbon_dioxide {
        sum.result("carbon_dioxide", Shown::Mass(gas.mass));
        sum.result("carbon_dioxide_gas", Shown::Space(gas.volume));
    }
    if let Some(ph) = given.some("ph", |ph: Ph| Shown::Number(ph.value(), 2))? {
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
