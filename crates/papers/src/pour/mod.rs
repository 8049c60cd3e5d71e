//! The pour sheet: what the concrete contractor agrees to before the pour.

mod chart;
mod concrete;
mod hours;
mod joints;
mod sheet;
#[cfg(test)]
mod tests;
mod write_slab;
mod write_weather;
mod write_work;

use jiff::civil::Date;
use units::{Area, EvaporationRate, Fraction, Length, Temperature};

pub use concrete::ConcreteOrder;
pub use hours::{HourRisk, hour_risks};
pub use joints::JointAdvice;
pub use sheet::pour_sheet;

/// The data of a pour sheet.
#[derive(Debug, Clone, PartialEq)]
pub struct PourSheet {
    /// Name of the job.
    pub job: String,
    /// Name of the slab.
    pub slab: String,
    /// The day the sheet is made.
    pub prepared: Date,
    /// The day of the pour, when it is set.
    pub pour_day: Option<Date>,
    /// Thickness of the slab; above 0, at most 36 in.
    pub thickness: Length,
    /// The zones; together they are the slab. At least one.
    pub zones: Vec<PourZone>,
    /// The sample panels poured the same day; empty when none are asked for.
    pub panels: Vec<Panels>,
    /// Share of the concrete added for waste; 0 to 0.5. Set for the job: the trade facts hold no figure.
    pub waste: Fraction,
    /// The evaporation of the likely pour month; nothing when there is no weather series.
    pub weather: Option<PourWeather>,
}

/// A part of the slab with one finish.
#[derive(Debug, Clone, PartialEq)]
pub struct PourZone {
    /// Its name.
    pub name: String,
    /// Its area; above 0.
    pub area: Area,
    /// Id of its finish in `finishes.toml`.
    pub finish: String,
}

/// Sample panels of one kind.
#[derive(Debug, Clone, PartialEq)]
pub struct Panels {
    /// Id of their finish in `finishes.toml`: that of the zone they stand for.
    pub finish: String,
    /// How many; 1 to 99.
    pub count: u32,
    /// Edge of the square; 6 in to 6 ft.
    pub edge: Length,
    /// Thickness; above 0, at most 12 in.
    pub thickness: Length,
}

/// Evaporation against the alarm in the month of the pour, by hour of the day.
#[derive(Debug, Clone, PartialEq)]
pub struct PourWeather {
    /// Where the series is from, such as the station's name.
    pub place: String,
    /// The month counted, 1 to 12.
    pub month: i8,
    /// What kind of series it is.
    pub basis: WeatherBasis,
    /// The alarm the hours were counted against; above 0.
    pub alarm: EvaporationRate,
    /// Half width of the estimate's error band, as a share: [`science::air::EstimatedRate::relative_error`].
    pub relative_error: Fraction,
    /// The temperature taken for the fresh concrete.
    pub concrete: Temperature,
    /// The hours, in any order; those from 5 to 20 are printed.
    pub hours: Vec<HourRisk>,
}

/// What kind of series the hours come from.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum WeatherBasis {
    /// A typical year put together from several.
    TypicalYear,
    /// Hours recorded somewhere.
    Recorded,
}
