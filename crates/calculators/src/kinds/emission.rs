//! Moisture emission from a dish test.

use science::emission::{DISH_TEST, Exposure, moisture_emission};
use units::{Area, Duration, MoistureEmission};

use super::prelude::*;
use crate::caution::Caution;
use crate::shown::Shown;

pub(super) static CALCULATOR: Calculator = Calculator {
    form: Form {
        name: "emission",
        fields: &[
            required("gain", "value-gain", quantity(Kind::Mass, "2.5 g", "2.5 g")),
            required("area", "sum-field-emission-area", quantity(Kind::Area, "0.4876 ft2", "0.0453 m2")).in_answer("value-area"),
            required("time", "sum-field-emission-time", quantity(Kind::Duration, "66 h", "66 h")).in_answer("value-time"),
            optional("limit", "sum-field-emission-limit", quantity(Kind::MoistureEmission, "3 lb", "14.6 g/m2/d")).in_answer("value-limit"),
        ],
        presets: &[],
        rules: &[],
    },
    title: "sum-emission",
    about: "sum-about-emission",
    example: &["gain", "area", "time", "limit"],
    lines: &[r#"--gain "2.5 g" --area "0.4876 ft2" --time "66 h""#],
    places: &[],
    run,
};

fn run(given: &mut Given<'_>) -> Result<Calculation, CalculatorError> {
    let mut sum = Calculation::new(given, DISH_TEST);
    let gain = given.read("gain", Shown::Grams)?;
    let area: Area = given.read("area", Shown::Area)?;
    let time: Duration = given.read("time", Shown::Hours)?;
    let limit = given.some::<MoistureEmission>("limit", Shown::Emission)?;
    let reading = moisture_emission(gain, area, time).map_err(CalculatorError::core)?;
    sum.result("emission", Shown::Emission(reading.emission));
    if let Some(limit) = limit {
        let found = if reading.emission > limit { "above-limit" } else { "within-limit" };
        sum.result("against_limit", Shown::Code(found));
    }
    sum.result(
        "exposure",
        Shown::Code(match reading.exposure {
            Exposure::TooShort => "exposure-too-short",
            Exposure::Standard => "exposure-standard",
            Exposure::TooLong => "exposure-too-long",
        }),
    );
    sum.caution([Caution::SeesTopOnly, Caution::MakersSheetGoverns]);
    if reading.exposure != Exposure::Standard {
        sum.caution([Caution::NotTheStandardTest]);
    }
    Ok(sum)
}
