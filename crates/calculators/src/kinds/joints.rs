//! Spacing, depth and length of contraction joints.

use science::concrete::{JointRule, joint_plan, joint_spacing, saw_cut_depth};
use slab_plan::layout::JointLimits;
use trade_facts::Trade;
use units::Length;

use super::prelude::*;
use crate::caution::Caution;
use crate::rests_on::fact;
use crate::shown::Shown;

pub(super) static CALCULATOR: Calculator = Calculator {
    form: Form {
        name: "joints",
        fields: &[
            required("length", "value-length", quantity(Kind::Length, "60 ft", "18 m")),
            required("width", "value-width", quantity(Kind::Length, "30 ft", "9 m")),
            required("thickness", "value-thickness", THICKNESS),
            optional("low", "value-low", NUMBER).usual("24", "24").more(),
            optional("high", "value-high", NUMBER).usual("36", "36").more(),
            optional("cap", "value-cap", quantity(Kind::Length, "15 ft", "4.5 m")).usual("15 ft", "4.57 m").more(),
            optional("aspect", "value-aspect", NUMBER).usual("1.5", "1.5").more(),
            optional("cut", "sum-field-joints-cut", percent(Kind::Fraction, "25 %")).in_answer("value-cut").usual("25 %", "25 %").more(),
        ],
        presets: &[],
        rules: &[],
    },
    title: "sum-joints",
    about: "sum-about-joints",
    example: &["length", "width", "thickness"],
    lines: &[r#"--length "60 ft" --width "30 ft" --thickness "4 in""#],
    places: &[],
    run,
};

fn run(given: &mut Given<'_>) -> Result<Calculation, CalculatorError> {
    let limits = JointLimits::of(Trade::built_in()).expect("a test of this calculation reads the rule");
    let usual = limits.rule;
    let mut sum = Calculation::new(given, fact(limits.multiples.id));
    let length: Length = given.read("length", Shown::Length)?;
    let width: Length = given.read("width", Shown::Length)?;
    let thickness: Length = given.read("thickness", Shown::Thickness)?;
    let rule = JointRule {
        low_multiple: given.number_or("low", usual.low_multiple),
        high_multiple: given.number_or("high", usual.high_multiple),
        cap: given.read_or("cap", usual.cap, Shown::Length)?,
        aspect_max: given.number_or("aspect", usual.aspect_max),
    };
    let cut = given.read_or("cut", limits.cut_depth, Shown::share)?;
    let (low, high) = joint_spacing(thickness, &rule).map_err(CalculatorError::core)?;
    let plan = joint_plan(length, width, thickness, &rule).map_err(CalculatorError::core)?;
    sum.result("spacing_low", Shown::Length(low));
    sum.result("spacing_high", Shown::Length(high));
    sum.result("cut_depth", Shown::Thickness(saw_cut_depth(thickness, cut).map_err(CalculatorError::core)?));
    sum.result("panels_along", Shown::Count(plan.along));
    sum.result("panels_across", Shown::Count(plan.across));
    sum.result("panel_length", Shown::Length(plan.panel_length));
    sum.result("panel_width", Shown::Length(plan.panel_width));
    sum.result("panel_aspect", Shown::Number(plan.aspect, 2));
    sum.result("aspect_check", Shown::Code(if plan.aspect_within { "aspect-within" } else { "aspect-outside" }));
    sum.result("cut_length", Shown::Length(plan.cut_length));
    sum.caution([Caution::DrawingsGovern, Caution::SilicaDust]);
    Ok(sum)
}
