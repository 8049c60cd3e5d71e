//! Water leaving fresh concrete at one moment.

use std::path::PathBuf;

use clap::{Args, ValueEnum};
use science::air::{ACI_305_ALARM, EstimatedRate, EvaporationForm, UNO, evaporation_rate};
use units::EvaporationRate;

use super::caution::Caution;
use super::read::missing;
use super::shown::Shown;
use super::sum::Sum;
use super::{evaporation_file, log_file};
use crate::failure::Failure;

/// What is asked.
#[derive(Debug, Args)]
pub(crate) struct Evaporation {
    /// Temperature of the concrete's surface
    #[arg(long, value_name = "TEMPERATURE", allow_hyphen_values = true)]
    pub(super) surface: Option<String>,
    /// Temperature of the air
    #[arg(long, value_name = "TEMPERATURE", allow_hyphen_values = true, conflicts_with = "file")]
    air: Option<String>,
    /// Relative humidity of the air
    #[arg(long, value_name = "PERCENT", allow_hyphen_values = true, conflicts_with = "file")]
    rh: Option<String>,
    /// Wind 20 in (0.5 m) above the surface
    #[arg(long, value_name = "SPEED", allow_hyphen_values = true)]
    pub(super) wind: Option<String>,
    /// Which published form
    #[arg(long, value_enum, default_value = "menzel")]
    pub(super) form: FormArg,
    /// Rate above which plastic shrinkage cracks are likely [default: 0.2 lb/ft2/h]
    #[arg(long, value_name = "RATE", allow_hyphen_values = true)]
    pub(super) limit: Option<String>,
    /// A weather file or logger table instead of one moment: EPW, TMY3 or CSV
    #[arg(long, value_name = "FILE")]
    pub(super) file: Option<PathBuf>,
    #[command(flatten)]
    pub(super) log: log_file::LogArgs,
}

#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
pub(super) enum FormArg {
    /// Vapor pressures, 1954
    Menzel,
    /// Temperatures only, 1998
    Uno,
}

impl FormArg {
    pub(super) fn form(self) -> EvaporationForm {
        match self {
            Self::Menzel => EvaporationForm::Menzel,
            Self::Uno => EvaporationForm::Uno,
        }
    }

    /// The form to show beside it.
    fn other(self) -> EvaporationForm {
        match self {
            Self::Menzel => EvaporationForm::Uno,
            Self::Uno => EvaporationForm::Menzel,
        }
    }
}

pub(super) fn run(args: &Evaporation) -> Result<Sum, Failure> {
    let form = args.form.form();
    let mut sum = Sum::new("evaporation", form.source());
    sum.cautions([Caution::EvaporationBand, Caution::WindNearSlab, Caution::WetSurfaceOnly]);
    let alarm = EvaporationRate::pounds_per_square_foot_hour(0.2);
    if let Some(file) = &args.file {
        let limit = limit(&mut sum, args, alarm)?;
        return evaporation_file::run(sum, args, file, limit);
    }
    let given = |name, text: &Option<String>, accepted| text.clone().ok_or_else(|| missing(name, accepted));
    let surface =
        sum.read("surface", &given("surface", &args.surface, "80 °F, 27 °C, or --file")?, Shown::Temperature)?;
    let air = sum.read("air", &given("air", &args.air, "70 °F, 21 °C, or --file")?, Shown::Temperature)?;
    let humidity = sum.humidity("rh", &given("rh", &args.rh, "50 %, or --file")?)?;
    let wind = sum.read("wind", &given("wind", &args.wind, "10 mph, 4.5 m/s, or --file")?, Shown::Wind)?;
    let limit = limit(&mut sum, args, alarm)?;
    let estimate = evaporation_rate(form, surface, air, humidity, wind).map_err(Failure::data)?;
    sum.result("evaporation", Shown::Evaporation(estimate.rate));
    sum.result("evaporation_low", Shown::Evaporation(estimate.low()));
    sum.result("evaporation_high", Shown::Evaporation(estimate.high()));
    sum.result("against_limit", Shown::Code(level(estimate, limit)));
    // The other form stops at -18 °C: then there is nothing to show beside.
    if let Ok(beside) = evaporation_rate(args.form.other(), surface, air, humidity, wind) {
        sum.result("other_form", Shown::Evaporation(beside.rate));
        sum.also(if form == EvaporationForm::Menzel { UNO } else { args.form.other().source() });
    }
    sum.also(ACI_305_ALARM);
    Ok(sum)
}

fn limit(sum: &mut Sum, args: &Evaporation, alarm: EvaporationRate) -> Result<EvaporationRate, Failure> {
    let limit = sum.read_or("limit", args.limit.as_ref(), alarm, Shown::Evaporation)?;
    if limit > EvaporationRate::ZERO {
        Ok(limit)
    } else {
        let text = args.limit.as_deref().unwrap_or_default();
        Err(super::read::impossible("limit", text, "above 0, such as 0.2 lb/ft2/h or 1 kg/m2/h"))
    }
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
