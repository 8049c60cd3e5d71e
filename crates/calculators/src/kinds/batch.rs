//! Splitting a batch of working mix into water and stain.

use form_schema::Span;
use science::chemistry::Caution as Chemical;
use science::{FormulaSource, Grade};
use units::Volume;

use super::prelude::*;
use crate::caution::Caution;

/// stain = mix / (1 + water parts); what the volumes lose in mixing is below what a bucket measures.
const BATCH: FormulaSource = FormulaSource {
    id: "batch",
    document: "arithmetic",
    locator: "stain = mix / (1 + parts of water)",
    grade: Grade::Verified,
};

pub(super) static CALCULATOR: Calculator = Calculator {
    form: Form {
        name: "batch",
        fields: &[
            required("volume", "sum-field-batch-volume", quantity(Kind::Volume, "2 gal", "8 L")),
            required("water_parts", "sum-field-batch-water-parts", InputKind::Number(Span::NotNegative)).such_as("1", "1"),
        ],
        presets: &[],
        rules: &[],
    },
    title: "sum-batch",
    about: "sum-about-batch",
    example: &["volume", "water_parts"],
    lines: &[r#"--volume "2 gal" --water-parts 1"#],
    places: &[],
    run,
};

fn run(given: &mut Given<'_>) -> Result<Calculation, CalculatorError> {
    let mut sum = Calculation::new(given, BATCH);
    let mix: Volume = given.read("volume", Shown::Liquid)?;
    let water_parts = given.number("water_parts", 2).ok_or_else(|| CalculatorError::missing("water_parts"))?;
    let stain = mix / (1.0 + water_parts);
    sum.result("water_first", Shown::Liquid(mix - stain));
    sum.result("then_stain", Shown::Liquid(stain));
    sum.caution([Caution::Chemical(Chemical::AcidIntoWater), Caution::MakersSheetGoverns]);
    Ok(sum)
}
