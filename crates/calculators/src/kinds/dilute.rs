//! Diluting hydrochloric acid.

use science::Parts;
use science::chemistry::{BAUME, Baume, HCL_DENSITY, dilute_by_parts, dilute_to, hcl_strength_from_baume};
use units::Fraction;

use super::prelude::*;
use crate::caution::Caution;
use crate::given::number;
use crate::shown::Shown;

pub(super) static CALCULATOR: Calculator = Calculator {
    form: Form {
        name: "dilute",
        fields: &[
            optional("stock", "value-stock", percent(Kind::Fraction, "31.45 %")),
            optional("baume", "sum-field-dilute-baume", NUMBER).in_answer("value-baume").such_as("20", "20"),
            optional("parts", "sum-field-dilute-parts", LINE).in_answer("value-parts").such_as("1:4", "1:4"),
            optional("to", "sum-field-dilute-to", percent(Kind::Fraction, "10 %")).in_answer("value-to"),
            optional("volume", "sum-field-dilute-volume", quantity(Kind::Volume, "1 gal", "4 L")).in_answer("value-volume").usual("1 gal", "1 gal"),
        ],
        presets: &[],
        rules: &[Rule::OneOf(&["stock", "baume"]), Rule::OneOf(&["parts", "to"])],
    },
    title: "sum-dilute",
    about: "sum-about-dilute",
    example: &["stock", "parts", "volume"],
    lines: &[r#"--stock "31.45 %" --parts 1:4 --volume "1 gal""#,
        r#"--baume 20 --to "10 %" --volume "5 gal""#],
    places: &[],
    run,
};

/// The strength of acid by mass from a data sheet or from degrees Baumé.
pub(super) fn strength(
    given: &mut Given<'_>,
    sum: &mut Calculation,
    name: &'static str,
) -> Result<Fraction, CalculatorError> {
    if let Some(strength) = given.share(name)? {
        return Ok(strength);
    }
    let degrees = given.number("baume", 1).ok_or_else(|| CalculatorError::missing(name))?;
    sum.note_also(BAUME);
    Baume::degrees(degrees).and_then(hcl_strength_from_baume).map_err(CalculatorError::core)
}

fn run(given: &mut Given<'_>) -> Result<Calculation, CalculatorError> {
    let mut sum = Calculation::new(given, HCL_DENSITY);
    let stock = strength(given, &mut sum, "stock")?;
    let mixed = match given.share("to")? {
        Some(target) => dilute_to(stock, target, given.read("volume", Shown::Liquid)?),
        None => {
            let parts = parts(given)?;
            dilute_by_parts(stock, given.read("volume", Shown::Liquid)?, parts)
        }
    }
    .map_err(CalculatorError::core)?;
    sum.result("strength", Shown::Percent(mixed.strength.as_percent()));
    sum.result("water_first", Shown::Liquid(mixed.water));
    sum.result("then_stock", Shown::Liquid(mixed.stock));
    sum.result("mix", Shown::Liquid(mixed.mixed));
    sum.result("mix_density", Shown::Density(mixed.density));
    sum.result("hydrogen_chloride", Shown::Mass(mixed.acid));
    sum.caution(mixed.cautions.iter().copied().map(Caution::Chemical));
    Ok(sum)
}

fn parts(given: &mut Given<'_>) -> Result<Parts, CalculatorError> {
    const ACCEPTED: &str = "sum-accepts-parts";
    let text = given.text("parts")?;
    let both = text.split_once(':').ok_or_else(|| CalculatorError::unclear("parts", &text, ACCEPTED))?;
    let (acid, water) = (number("parts", both.0, ACCEPTED)?, number("parts", both.1, ACCEPTED)?);
    given.note("parts", &text, Shown::Text(text.clone()));
    Parts::new(acid, water).map_err(CalculatorError::core)
}
