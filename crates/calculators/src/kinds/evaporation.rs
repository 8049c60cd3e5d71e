//! Water leaving fresh concrete at one moment.

use science::air::{EstimatedRate, EvaporationForm, UNO, evaporation_rate};
use units::EvaporationRate;

use super::evaporation_file;
use super::prelude::*;
use crate::caution::Caution;
use crate::rests_on::{fact, figure};
use crate::shown::Shown;

pub(super) static CALCULATOR: Calculator = Calculator {
    form: Form {
        name: "evaporation",
        fields: &[
            optional("surface", "value-surface", quantity(Kind::Temperature, "80 °F", "27 °C")),
            optional("air", "value-air", quantity(Kind::Temperature, "70 °F", "21 °C")),
            optional("rh", "value-rh", percent(Kind::RelativeHumidity, "50 %")),
            optional("wind", "value-wind", quantity(Kind::Speed, "10 mph", "4.5 m/s")),
            optional("form", "sum-field-evaporation-form", InputKind::Choice(&["menzel", "uno"])).in_answer("value-form").usual("menzel", "menzel").more(),
            optional("limit", "sum-field-evaporation-limit", quantity(Kind::EvaporationRate, "0.2 lb/ft2/h", "1 kg/m2/h")).in_answer("value-limit").usual("0.2 lb/ft2/h", "0.976 kg/m2/h").more(),
            optional("file", "sum-field-evaporation-file", InputKind::File).in_answer("value-file").more(),
            optional("column", "sum-field-column", InputKind::Texts).such_as("air=T1", "air=T1").more(),
            optional("time_zone", "sum-field-time-zone", InputKind::TimeZone).usual("UTC", "UTC").more(),
            optional("year", "sum-field-year", count(1900, 2199)).such_as("2026", "2026").more(),
        ],
        presets: &[],
        rules: &[Rule::AtLeastOne(&["surface", "file"]), Rule::OneOf(&["air", "file"]), Rule::OneOf(&["rh", "file"]), Rule::AtLeastOne(&["wind", "file"]), Rule::Needs("column", "file"), Rule::Needs("time_zone", "file"), Rule::Needs("year", "file")],
    },
    title: "sum-evaporation",
    about: "sum-about-evaporation",
    example: &["surface", "air", "rh", "wind"],
    lines: &[r#"--surface "80 °F" --air "70 °F" --rh "50 %" --wind "10 mph""#,
        r#"--file weather.epw --year 2026 --surface "80 °F""#],
    places: &[],
    run,
};

/// By vapor pressures, 1954; by temperatures only, 1998. Each with the other, to show beside it.
const FORMS: [(&str, (EvaporationForm, EvaporationForm)); 2] = [
    ("menzel", (EvaporationForm::Menzel, EvaporationForm::Uno)),
    ("uno", (EvaporationForm::Uno, EvaporationForm::Menzel)),
];

fn run(given: &mut Given<'_>) -> Result<Calculation, CalculatorError> {
    let (_, (form, other)) = given.choice("form", &FORMS)?;
    let mut sum = Calculation::new(given, form.source());
    sum.caution([Caution::EvaporationBand, Caution::WindNearSlab, Caution::WetSurfaceOnly]);
    if given.typed("file").is_some() {
        let limit = limit(given)?;
        return evaporation_file::run(sum, given, form, limit);
    }
    let surface = given.read("surface", Shown::Temperature)?;
    let air = given.read("air", Shown::Temperature)?;
    let humidity = given.read("rh", Shown::Humidity)?;
    let wind = given.read("wind", Shown::Wind)?;
    let limit = limit(given)?;
    let estimate = evaporation_rate(form, surface, air, humidity, wind).map_err(CalculatorError::core)?;
    sum.result("evaporation", Shown::Evaporation(estimate.rate));
    sum.result("evaporation_low", Shown::Evaporation(estimate.low()));
    sum.result("evaporation_high", Shown::Evaporation(estimate.high()));
    sum.result("against_limit", Shown::Code(level(estimate, limit)));
    // The other form stops at -18 °C: then there is nothing to show beside.
    if let Ok(beside) = evaporation_rate(other, surface, air, humidity, wind) {
        sum.result("other_form", Shown::Evaporation(beside.rate));
        sum.note_also(if form == EvaporationForm::Menzel { UNO } else { other.source() });
    }
    sum.note_also(fact("evaporation-alarm"));
    Ok(sum)
}

fn limit(given: &mut Given<'_>) -> Result<EvaporationRate, CalculatorError> {
    let limit = given.read_or("limit", figure("evaporation-alarm"), Shown::Evaporation)?;
    if limit > EvaporationRate::ZERO {
        return Ok(limit);
    }
    let typed = given.typed("limit").unwrap_or_default();
    Err(CalculatorError::impossible("limit", &typed, "sum-accepts-evaporation-limit"))
}

fn level(estimate: EstimatedRate, limit: EvaporationRate) -> &'static str {
    if estimate.is_condensation() {
        "condensation"
    } else if estimate.rate > limit {
        "above-limit"
    } else if estimate.high() > limit {
        "possibly-above-limit"
    } else {
        "below-limit"
    }
}
