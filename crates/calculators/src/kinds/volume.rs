//! Concrete to order.

use science::concrete::{ConcreteNeed, QUARTER_YARD, SamplePanels, order};
use science::{FormulaSource, Grade};
use units::{Area, Fraction, Length};

use super::prelude::*;
use crate::caution::Caution;
use crate::shown::Shown;

/// Area times thickness; waste and rounding are the trade's.
const ORDER: FormulaSource = FormulaSource {
    id: "concrete-order",
    document: "geometry: 27 cubic feet in a cubic yard",
    locator: "waste and the quarter-yard step are trade practice and yours to change",
    grade: Grade::Verified,
};

pub(super) static CALCULATOR: Calculator = Calculator {
    form: Form {
        name: "volume",
        fields: &[
            optional("area", "sum-field-volume-area", quantity(Kind::Area, "600 ft2", "56 m2")).in_answer("value-area"),
            optional("length", "value-length", quantity(Kind::Length, "30 ft", "9 m")),
            optional("width", "value-width", quantity(Kind::Length, "20 ft", "6 m")),
            required("thickness", "value-thickness", THICKNESS),
            optional("panels", "value-panels", count(0, 10_000)).such_as("3", "3").usual("0", "0"),
            optional("panel_length", "value-panel-length", quantity(Kind::Length, "2 ft", "600 mm")).usual("2 ft", "610 mm").more(),
            optional("panel_width", "value-panel-width", quantity(Kind::Length, "2 ft", "600 mm")).usual("2 ft", "610 mm").more(),
            optional("panel_thickness", "value-panel-thickness", PANEL_THICKNESS).usual("2 in", "50.8 mm").more(),
            optional("waste", "value-waste", percent(Kind::Fraction, "5 %")).usual("5 %", "5 %").more(),
            optional("step", "value-step", quantity(Kind::Volume, "0.25 yd3", "0.25 m3")).usual("0.25 yd3", "0.191 m3").more(),
        ],
        presets: &[],
        rules: &[Rule::OneOf(&["area", "length"]), Rule::NotBoth("area", "width"), Rule::Needs("length", "width"), Rule::Needs("width", "length")],
    },
    title: "sum-volume",
    about: "sum-about-volume",
    example: &["length", "width", "thickness", "panels"],
    lines: &[r#"--length "30 ft" --width "20 ft" --thickness "4 in" --panels 3"#],
    places: &[],
    run,
};

fn run(given: &mut Given<'_>) -> Result<Calculation, CalculatorError> {
    let mut sum = Calculation::new(given, ORDER);
    let area: Area = match given.some("area", Shown::Area)? {
        Some(area) => area,
        None => given.read::<Length>("length", Shown::Length)? * given.read::<Length>("width", Shown::Length)?,
    };
    let thickness = given.read("thickness", Shown::Thickness)?;
    let count = given.count("panels")?;
    given.note("panels", &count.to_string(), Shown::Count(count));
    let mut panels = SamplePanels {
        count,
        length: Length::feet(2.0),
        width: Length::feet(2.0),
        thickness: Length::inches(2.0),
    };
    if count > 0 {
        panels.length = given.read_or("panel_length", panels.length, Shown::Length)?;
        panels.width = given.read_or("panel_width", panels.width, Shown::Length)?;
        panels.thickness =
            given.read_or("panel_thickness", panels.thickness, Shown::Thickness)?;
    }
    let usual = Fraction::share(0.05).expect("0.05 lies between 0 and 1");
    let waste = given.read_or("waste", usual, Shown::share)?;
    let step = given.read_or("step", QUARTER_YARD, Shown::Concrete)?;
    let found = order(&ConcreteNeed { area, thickness, panels, waste }, step).map_err(CalculatorError::core)?;
    sum.result("order", Shown::Concrete(found.ordered));
    sum.result("slab_concrete", Shown::Concrete(found.slab));
    sum.result("panel_concrete", Shown::Concrete(found.panels));
    sum.result("waste_concrete", Shown::Concrete(found.waste));
    sum.result("needed", Shown::Concrete(found.needed));
    sum.result("spare", Shown::Concrete(found.spare()));
    sum.caution([Caution::WetConcreteBurns]);
    if count == 0 {
        sum.caution([Caution::CastPanelsAlongside]);
    }
    Ok(sum)
}
