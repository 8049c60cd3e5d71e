//! How far two colors lie apart.

use science::color::{CIEDE2000, Lab, Srgb, ciede2000};

use super::prelude::*;
use crate::caution::Caution;
use crate::shown::Shown;

pub(super) static CALCULATOR: Calculator = Calculator {
    form: Form {
        name: "color-difference",
        fields: &[
            required("first", "value-first", LINE).such_as("#7a563a", "#7a563a"),
            required("second", "value-second", LINE).such_as("42, 10, 21", "42, 10, 21"),
        ],
        presets: &[],
        rules: &[],
    },
    title: "sum-color-difference",
    about: "sum-about-color-difference",
    example: &["first", "second"],
    lines: &[r##""#7a563a" "#6e5138""##, r#""39.7, 11.4, 22.2" "42, 10, 21""#],
    places: &["first", "second"],
    run,
};

fn run(given: &mut Given<'_>) -> Result<Calculation, CalculatorError> {
    let mut sum = Calculation::new(given, CIEDE2000);
    let first = color(given, "first")?;
    let second = color(given, "second")?;
    sum.result("difference", Shown::Number(ciede2000(first, second).as_units(), 2));
    sum.result("first_lab", Shown::Lab(first));
    sum.result("second_lab", Shown::Lab(second));
    sum.result("lighter_by", Shown::Number(second.lightness() - first.lightness(), 2));
    sum.caution([Caution::NoBetterThanThePhoto]);
    Ok(sum)
}

fn color(given: &mut Given<'_>, name: &'static str) -> Result<Lab, CalculatorError> {
    let text = given.text(name)?;
    let refuse = || CalculatorError::unclear(name, &text, "sum-accepts-color");
    let parts: Vec<&str> = text.split([',', ';']).map(str::trim).collect();
    let color = match parts.as_slice() {
        [one] => Srgb::read(one).map(Srgb::lab).map_err(|_| refuse())?,
        [l, a, b] => {
            let number = |part: &str| part.parse::<f64>().map_err(|_| refuse());
            let lab = Lab::new(number(l)?, number(a)?, number(b)?);
            lab.map_err(|error| CalculatorError::core(error).at(name, &text))?
        }
        _ => return Err(refuse()),
    };
    given.note(name, &text, Shown::Lab(color));
    Ok(color)
}
