//! Water leaving fresh concrete at one moment.

use std::path::PathBuf;

use clap::{Args, ValueEnum};
use science::air::{EstimatedRate, EvaporationForm, UNO, evaporation_rate};
use units::EvaporationRate;

use super::evaporation_file;
use crate::accepted::Accepted;
use crate::caution::Caution;
use crate::error::SumError;
use crate::files::Reader;
use crate::log_file;
use crate::read::missing;
use crate::rests_on::{fact, figure};
use crate::shown::Shown;
use crate::sum::Sum;

/// What is asked.
#[derive(Debug, Args)]
pub struct Evaporation {
    /// Temperature of the concrete's surface
    #[arg(long, value_name = "TEMPERATURE", allow_hyphen_values = true)]
    pub(crate) surface: Option<String>,
    /// Temperature of the air
    #[arg(long, value_name = "TEMPERATURE", allow_hyphen_values = true, conflicts_with = "file")]
    air: Option<String>,
    /// Relative humidity of the air
    #[arg(long, value_name = "PERCENT", allow_hyphen_values = true, conflicts_with = "file")]
    rh: Option<String>,
    /// Wind 20 in (0.5 m) above the surface
    #[arg(long, value_name = "SPEED", allow_hyphen_values = true)]
    pub(crate) wind: Option<String>,
    /// Which published form
    #[arg(long, value_enum, default_value = "menzel")]
    pub(crate) form: FormArg,
    /// Rate above which plastic shrinkage cracks are likely [default: 0.2 lb/ft2/h]
    #[arg(long, value_name = "RATE", allow_hyphen_values = true)]
    pub(crate) limit: Option<String>,
    /// A weather file or logger table instead of one moment: EPW, TMY3 or CSV
    #[arg(long, value_name = "FILE")]
    pub(crate) file: Option<PathBuf>,
    #[command(flatten)]
    pub(crate) log: log_file::LogArgs,
}

#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
pub(crate) enum FormArg {
    /// Vapor pressures, 1954
    Menzel,
    /// Temperatures only, 1998
    Uno,
}

impl FormArg {
    pub(crate) fn form(self) -> EvaporationForm {
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

pub(crate) fn run(args: &Evaporation, files: &Reader<'_>) -> Result<Sum, SumError> {
    let form = args.form.form();
    let mut sum = Sum::new("evaporation", form.source());
    sum.caution([Caution::EvaporationBand, Caution::WindNearSlab, Caution::WetSurfaceOnly]);
    let alarm = figure("evaporation-alarm");
    if let Some(file) = &args.file {
        let limit = limit(&mut sum, args, alarm)?;
        return evaporation_file::run(sum, args, files.named(file), limit);
    }
    let given =
        |name, text: &Option<String>, key| text.clone().ok_or_else(|| missing(name, Accepted::naming(key, &["file"])));
    let surface = sum.read("surface", &given("surface", &args.surface, "surface-or-file")?, Shown::Temperature)?;
    let air = sum.read("air", &given("air", &args.air, "air-or-file")?, Shown::Temperature)?;
    let humidity = sum.humidity("rh", &given("rh", &args.rh, "humidity-or-file")?)?;
    let wind = sum.read("wind", &given("wind", &args.wind, "wind-or-file")?, Shown::Wind)?;
    let limit = limit(&mut sum, args, alarm)?;
    let estimate = evaporation_rate(form, surface, air, humidity, wind).map_err(SumError::core)?;
    sum.result("evaporation", Shown::Evaporation(estimate.rate));
    sum.result("evaporation_low", Shown::Evaporation(estimate.low()));
    sum.result("evaporation_high", Shown::Evaporation(estimate.high()));
    sum.result("against_limit", Shown::Code(level(estimate, limit)));
    // The other form stops at -18 °C: then there is nothing to show beside.
    if let Ok(beside) = evaporation_rate(args.form.other(), surface, air, humidity, wind) {
        sum.result("other_form", Shown::Evaporation(beside.rate));
        sum.note_also(if form == EvaporationForm::Menzel { UNO } else { args.form.other().source() });
    }
    sum.note_also(fact("evaporation-alarm"));
    Ok(sum)
}

fn limit(sum: &mut Sum, args: &Evaporation, alarm: EvaporationRate) -> Result<EvaporationRate, SumError> {
    let limit = sum.read_or("limit", args.limit.as_ref(), alarm, Shown::Evaporation)?;
    if limit > EvaporationRate::ZERO {
        Ok(limit)
    } else {
        let text = args.limit.as_deref().unwrap_or_default();
        Err(crate::read::impossible("limit", text, "evaporation-limit"))
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
