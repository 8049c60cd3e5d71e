//! Dew point of air, and how far above it a surface is.

use clap::Args;
use science::air::{Air, HYLAND_WEXLER, STANDARD_ATMOSPHERE, standard_pressure};
use units::{Length, Pressure, TemperatureDifference};

use crate::caution::Caution;
use crate::error::SumError;
use crate::rests_on::{fact, figure};
use crate::shown::Shown;
use crate::sum::Sum;

/// What is asked.
#[derive(Debug, Args)]
pub struct DewPoint {
    /// Temperature of the air
    #[arg(long, value_name = "TEMPERATURE", allow_hyphen_values = true)]
    air: String,
    /// Relative humidity of the air
    #[arg(long, value_name = "PERCENT", allow_hyphen_values = true)]
    rh: String,
    /// Temperature of the slab's surface
    #[arg(long, value_name = "TEMPERATURE", allow_hyphen_values = true)]
    slab: Option<String>,
    /// How far above the dew point the surface must be [default: 3 °C, which is 5.4 °F]
    #[arg(long, value_name = "DIFFERENCE", requires = "slab", allow_hyphen_values = true)]
    margin: Option<String>,
    /// Air pressure at the site [default: 101.325 kPa]
    #[arg(long, value_name = "PRESSURE", conflicts_with = "elevation", allow_hyphen_values = true)]
    pressure: Option<String>,
    /// Height of the site above the sea
    #[arg(long, value_name = "LENGTH", allow_hyphen_values = true)]
    elevation: Option<String>,
}

pub(crate) fn run(args: &DewPoint) -> Result<Sum, SumError> {
    let mut sum = Sum::new("dew-point", HYLAND_WEXLER);
    let temperature = sum.read("air", &args.air, Shown::Temperature)?;
    let humidity = sum.humidity("rh", &args.rh)?;
    let slab = sum.read_some("slab", args.slab.as_ref(), Shown::Temperature)?;
    let pressure = match &args.elevation {
        Some(text) => {
            let elevation = sum.read("elevation", text, Shown::Length as fn(Length) -> Shown)?;
            sum.note_also(STANDARD_ATMOSPHERE);
            standard_pressure(elevation).map_err(SumError::core)?
        }
        None => sum.read_or("pressure", args.pressure.as_ref(), Pressure::kilopascals(101.325), Shown::AirPressure)?,
    };
    let air = Air::new(temperature, humidity, pressure).map_err(SumError::core)?;
    let dew_point = air.dew_point().map_err(SumError::core)?;
    sum.result("dew_point", Shown::Temperature(dew_point));
    if let Some(slab) = slab {
        let usual = figure("dew-point-spread");
        let wanted = sum.read_or("margin", args.margin.as_ref(), usual, Shown::Difference)?;
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
