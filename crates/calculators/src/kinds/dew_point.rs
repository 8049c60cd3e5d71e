//! Dew point of air, and how far above it a surface is.

use science::air::{Air, HYLAND_WEXLER, STANDARD_ATMOSPHERE, standard_pressure};
use units::{Pressure, TemperatureDifference};

use super::prelude::*;
use crate::caution::Caution;
use crate::rests_on::{fact, figure};
use crate::shown::Shown;

pub(super) static CALCULATOR: Calculator = Calculator {
    form: Form {
        name: "dew-point",
        fields: &[
            required("air", "value-air", quantity(Kind::Temperature, "75 °F", "24 °C")),
            required("rh", "value-rh", percent(Kind::RelativeHumidity, "60 %")),
            optional("slab", "value-slab", quantity(Kind::Temperature, "68 °F", "20 °C")),
            optional("margin", "given-margin", quantity(Kind::TemperatureDifference, "5.4 °F", "3 °C")).usual("5.4 °F", "3 °C").more(),
            optional("pressure", "value-pressure", quantity(Kind::Pressure, "29.92 inHg", "101.3 kPa")).usual("29.921 inHg", "101.325 kPa").more(),
            optional("elevation", "value-elevation", quantity(Kind::Length, "600 ft", "180 m")).more(),
        ],
        presets: &[],
        rules: &[Rule::Needs("margin", "slab"), Rule::NotBoth("pressure", "elevation")],
    },
    title: "sum-dew-point",
    about: "sum-about-dew-point",
    example: &["air", "rh", "slab"],
    lines: &[r#"--air "75 °F" --rh "60 %" --slab "68 °F""#],
    places: &[],
    run,
};

fn run(given: &mut Given<'_>) -> Result<Calculation, CalculatorError> {
    let mut sum = Calculation::new(given, HYLAND_WEXLER);
    let temperature = given.read("air", Shown::Temperature)?;
    let humidity = given.read("rh", Shown::Humidity)?;
    let slab = given.some("slab", Shown::Temperature)?;
    let pressure = match given.some("elevation", Shown::Length)? {
        Some(elevation) => {
            sum.note_also(STANDARD_ATMOSPHERE);
            standard_pressure(elevation).map_err(CalculatorError::core)?
        }
        None => given.read_or("pressure", Pressure::kilopascals(101.325), Shown::AirPressure)?,
    };
    let air = Air::new(temperature, humidity, pressure).map_err(CalculatorError::core)?;
    let dew_point = air.dew_point().map_err(CalculatorError::core)?;
    sum.result("dew_point", Shown::Temperature(dew_point));
    if let Some(slab) = slab {
        let usual = figure("dew-point-spread");
        let wanted = given.read_or("margin", usual, Shown::Difference)?;
        let above = slab - dew_point;
        sum.result("above_dew_point", Shown::Difference(above));
        sum.result(
            "surface_check",
            Shown::Code(match above {
                above if above <= TemperatureDifference::celsius_degrees(0.0) => "surface-below-dew-point",
                above if above < wanted => "surface-near-dew-point",
                _ => "surface-clear-of-dew-point",
            }),
        );
        sum.note_also(fact("dew-point-spread"));
    }
    let wet_bulb = air.wet_bulb();
    sum.result("wet_bulb", Shown::Temperature(wet_bulb));
    sum.result("vapor_pressure", Shown::AirPressure(air.vapor_pressure()));
    sum.result("humidity_ratio", Shown::Number(air.humidity_ratio().as_mass_per_mass(), 5));
    sum.caution([Caution::OneReading, Caution::MakersSheetGoverns]);
    // Libraries differ there, so nothing has checked it.
    if wet_bulb.as_celsius().abs() < 1.0 {
        sum.caution([Caution::WetBulbNearFreezing]);
    }
    Ok(sum)
}
