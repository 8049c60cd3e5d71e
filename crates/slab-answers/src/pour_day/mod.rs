//! How fast fresh concrete would lose water, hour by hour on the day of the pour.
//!
//! Why this module exists: a pour is put off or started at dawn by this answer, and the pour sheet,
//! the page of the day and the single reading must take the concrete, the wind and the alarms alike.
//! The rates are estimates for a wet surface that bleeds, ± 40 % (`science::air`): they say when to
//! have covers, fog and wind breaks at hand, and nothing of concrete that has set.
//!
//! To add an assumption: a variant of [`Assumption`], a line in its `CODES`, and its sentence in
//! `locales/*/drying.ftl`.

mod code;
mod day;
mod hours;
mod moment;
mod month;
mod setting;

pub use science::air::{EstimatedRate, Level};

pub use code::{Assumption, CannotTell, Lacks};
pub use day::{Basis, DayFrom, PourDay, pour_day};
pub use hours::{Evaporation, PourHour};
pub use moment::{EvaporationMoment, evaporation_at};
pub use month::{MonthLevels, month_levels};
pub use setting::{Alarms, ConcreteFrom, ConcreteTemperature};

/// The trade facts that these answers rest on, for their sources.
pub const FACTS: [&str; 4] =
    ["evaporation-alarm", "evaporation-alarm-silica-fume", "pour-concrete-temperature", "wind-at-slab"];
