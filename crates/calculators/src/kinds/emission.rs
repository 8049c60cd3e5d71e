//! Moisture emission from a dish test.

use clap::Args;
use science::emission::{DISH_TEST, Exposure, moisture_emission};
use units::{Area, Duration, MoistureEmission};

use crate::caution::Caution;
use crate::error::SumError;
use crate::shown::Shown;
use crate::sum::Sum;

/// What is asked.
#[derive(Debug, Args)]
pub struct Emission {
    /// Mass the dish gained
    #[arg(long, value_name = "MASS", allow_hyphen_values = true)]
    gain: String,
    /// Area under the cover
    #[arg(long, value_name = "AREA", allow_hyphen_values = true)]
    area: String,
    /// How long it was exposed
    #[arg(long, value_name = "DURATION", allow_hyphen_values = true)]
    time: String,
    /// The sealer's own limit
    #[arg(long, value_name = "EMISSION", allow_hyphen_values = true)]
    limit: Option<String>,
}

pub(crate) fn run(args: &Emission) -> Result<Sum, SumError> {
    let mut sum = Sum::new("emission", DISH_TEST);
    let gain = sum.read("gain", &args.gain, Shown::Grams)?;
    let area: Area = sum.read("area", &args.area, Shown::Area)?;
    let time: Duration = sum.read("time", &args.time, Shown::Hours)?;
    let limit = sum.read_some::<MoistureEmission>("limit", args.limit.as_ref(), Shown::Emission)?;
    let reading = moisture_emission(gain, area, time).map_err(SumError::core)?;
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
