//! Which calculations there are, and running one.

use clap::Subcommand;

use crate::error::SumError;
use crate::files::{Files, Reader};
use crate::kinds::{
    color_difference, dew_point, dilute, drying, emission, equivalent_age, evaporation, film, joints, markup,
    neutralize, purge, ventilate, volume,
};
use crate::sum::Sum;

/// Which calculation.
#[derive(Debug, Subcommand)]
pub enum SumCommand {
    /// Dew point of air, and how far above it a surface is
    #[command(after_help = "Example:\n  underfoot sums dew-point --air \"75 °F\" --rh \"60 %\" --slab \"68 °F\"")]
    DewPoint(dew_point::DewPoint),
    /// Water leaving fresh concrete, at one moment or over a weather file
    #[command(after_help = "Examples:\n  \
        underfoot sums evaporation --surface \"80 °F\" --air \"70 °F\" --rh \"50 %\" --wind \"10 mph\"\n  \
        underfoot sums evaporation --file weather.epw --year 2026 --surface \"80 °F\"")]
    Evaporation(evaporation::Evaporation),
    /// Age at a reference temperature, from a temperature log or a stated history
    #[command(after_help = "Examples:\n  underfoot sums equivalent-age --history \"12h@15C,12h@25C\"\n  \
        underfoot sums equivalent-age --file logger.csv --time-zone America/Chicago")]
    EquivalentAge(equivalent_age::EquivalentAge),
    /// Humidity in a drying slab by day, and the days to a limit
    #[command(after_help = "Examples:\n  \
        underfoot sums drying --thickness \"4 in\" --wc 0.5 --rh \"50 %\" --reading 30:91,45:88.5\n  \
        underfoot sums drying --form published --thickness 100mm --sides 1 --wc 0.5 --d1 4.031281e-10 --h0 1.0 \
        --rh 50 --days 28,90,180,365 --json")]
    Drying(drying::Drying),
    /// Moisture emission from a dish test
    #[command(
        after_help = "Example:\n  underfoot sums emission --gain \"2.5 g\" --area \"0.4876 ft2\" --time \"66 h\""
    )]
    Emission(emission::Emission),
    /// Wet and dry film, coverage, and product for an area
    #[command(after_help = "Example:\n  \
        underfoot sums film --solids \"25 %\" --dry \"1.5 mil\" --area \"1000 ft2\" --coats 2 --loss \"15 %\"")]
    Film(film::Film),
    /// Diluting hydrochloric acid, by mass
    #[command(after_help = "Examples:\n  underfoot sums dilute --stock \"31.45 %\" --parts 1:4 --volume \"1 gal\"\n  \
        underfoot sums dilute --baume 20 --to \"10 %\" --volume \"5 gal\"")]
    Dilute(dilute::Dilute),
    /// Base that takes up an acid, and what to tell the sewer authority
    #[command(
        after_help = "Example:\n  underfoot sums neutralize --volume \"1 gal\" --strength \"31.45 %\" --base sodium-bicarbonate"
    )]
    Neutralize(neutralize::Neutralize),
    /// Fresh air for solvent vapor: for health and for the explosive limit
    #[command(after_help = "Example:\n  \
        underfoot sums ventilate --substance xylene --liquid \"2 gal\" --part \"70 %\" --over \"60 min\" --room \"5000 ft3\"")]
    Ventilate(ventilate::Ventilate),
    /// How long a fan takes to clear a room
    #[command(after_help = "Example:\n  \
        underfoot sums purge --room \"5000 ft3\" --fan \"2000 cfm\" --from \"1518 ppm\" --to \"100 ppm\"")]
    Purge(purge::Purge),
    /// Concrete to order, with sample panels, waste and rounding
    #[command(after_help = "Example:\n  \
        underfoot sums volume --length \"30 ft\" --width \"20 ft\" --thickness \"4 in\" --panels 3")]
    Volume(volume::Volume),
    /// Spacing, depth and length of contraction joints
    #[command(
        after_help = "Example:\n  underfoot sums joints --length \"60 ft\" --width \"30 ft\" --thickness \"4 in\""
    )]
    Joints(joints::Joints),
    /// Mark-up to margin and back, and what is lost by confusing them
    #[command(
        after_help = "Examples:\n  underfoot sums markup --markup \"25 %\"\n  underfoot sums markup --margin \"20 %\""
    )]
    Markup(markup::Markup),
    /// How far two colors lie apart
    #[command(after_help = "Examples:\n  underfoot sums color-difference \"#7a563a\" \"#6e5138\"\n  \
            underfoot sums color-difference \"39.7, 11.4, 22.2\" \"42, 10, 21\"")]
    ColorDifference(color_difference::ColorDifference),
}

/// Calculates.
///
/// # Errors
/// What was typed cannot be read or lies outside what is accepted; a file that `files` refuses.
pub fn run(command: &SumCommand, files: &dyn Files) -> Result<Sum, SumError> {
    let reader = Reader::new(files);
    let answer = match command {
        SumCommand::DewPoint(args) => dew_point::run(args),
        SumCommand::Evaporation(args) => evaporation::run(args, &reader),
        SumCommand::EquivalentAge(args) => equivalent_age::run(args, &reader),
        SumCommand::Drying(args) => drying::run(args),
        SumCommand::Emission(args) => emission::run(args),
        SumCommand::Film(args) => film::run(args),
        SumCommand::Dilute(args) => dilute::run(args),
        SumCommand::Neutralize(args) => neutralize::run(args),
        SumCommand::Ventilate(args) => ventilate::run(args),
        SumCommand::Purge(args) => purge::run(args),
        SumCommand::Volume(args) => volume::run(args),
        SumCommand::Joints(args) => joints::run(args),
        SumCommand::Markup(args) => markup::run(args),
        SumCommand::ColorDifference(args) => color_difference::run(args),
    };
    let notes = reader.into_notes();
    match answer {
        Ok(mut sum) => {
            sum.notes = notes;
            Ok(sum)
        }
        Err(mut error) => {
            error.notes = notes;
            Err(error.of_sum(command.id()))
        }
    }
}

impl SumCommand {
    /// Its name on the command line and in addresses.
    #[must_use]
    pub const fn id(&self) -> &'static str {
        match self {
            Self::DewPoint(_) => "dew-point",
            Self::Evaporation(_) => "evaporation",
            Self::EquivalentAge(_) => "equivalent-age",
            Self::Drying(_) => "drying",
            Self::Emission(_) => "emission",
            Self::Film(_) => "film",
            Self::Dilute(_) => "dilute",
            Self::Neutralize(_) => "neutralize",
            Self::Ventilate(_) => "ventilate",
            Self::Purge(_) => "purge",
            Self::Volume(_) => "volume",
            Self::Joints(_) => "joints",
            Self::Markup(_) => "markup",
            Self::ColorDifference(_) => "color-difference",
        }
    }
}
