//! Mark-up to margin and back, and what is lost by confusing them.

use science::markup::{Margin, Markup as Ratio};
use science::{FormulaSource, Grade};
use units::Percentage;

use super::prelude::*;
use crate::caution::Caution;
use crate::shown::Shown;

/// (1 + mark-up)(1 − margin) = 1.
const MARKUP_MARGIN: FormulaSource = FormulaSource {
    id: "markup-margin",
    document: "arithmetic",
    locator: "(1 + mark-up)(1 - margin) = 1",
    grade: Grade::Verified,
};

pub(super) static CALCULATOR: Calculator = Calculator {
    form: Form {
        name: "markup",
        fields: &[
            optional("markup", "sum-field-markup-markup", percent(Kind::Percentage, "25 %")).in_answer("value-markup"),
            optional("margin", "sum-field-markup-margin", percent(Kind::Percentage, "20 %")).in_answer("given-margin"),
        ],
        presets: &[],
        rules: &[Rule::OneOf(&["markup", "margin"])],
    },
    title: "sum-markup",
    about: "sum-about-markup",
    example: &["markup"],
    lines: &[r#"--markup "25 %""#,
        r#"--margin "20 %""#],
    places: &[],
    run,
};

fn run(given: &mut Given<'_>) -> Result<Calculation, CalculatorError> {
    let mut sum = Calculation::new(given, MARKUP_MARGIN);
    let (markup, margin, asked) = match given.some("markup", percentage)? {
        Some(asked) => {
            let markup = Ratio::share(asked.as_percent() / 100.0).map_err(CalculatorError::core)?;
            (markup, markup.margin(), asked.as_percent() / 100.0)
        }
        None => {
            let asked = given.read("margin", percentage)?;
            let margin = Margin::share(asked.as_percent() / 100.0).map_err(CalculatorError::core)?;
            (margin.markup(), margin, asked.as_percent() / 100.0)
        }
    };
    sum.result("markup", Shown::Percent(markup.as_share() * 100.0));
    sum.result("margin", Shown::Percent(margin.as_share() * 100.0));
    sum.result("price_per_100_cost", Shown::Number(markup.price_over_cost() * 100.0, 2));
    // The same figure read as the other ratio: what a quote gives away when a margin is put on as
    // a mark-up. No price has a margin of the whole, so a mark-up of 100 % or more cannot be misread.
    if let (Ok(as_markup), Ok(as_margin)) = (Ratio::share(asked), Margin::share(asked)) {
        let (low, high) = (as_markup.price_over_cost() * 100.0, as_margin.price_over_cost() * 100.0);
        sum.result("price_as_markup", Shown::Number(low, 2));
        sum.result("price_as_margin", Shown::Number(high, 2));
        sum.result("shortfall_per_100_cost", Shown::Number(high - low, 2));
    }
    sum.caution([Caution::SayWhichRatio]);
    Ok(sum)
}

fn percentage(asked: Percentage) -> Shown {
    Shown::Percent(asked.as_percent())
}
