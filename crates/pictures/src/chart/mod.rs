//! Charts: axes with round numbers, bands, readings with their margins, lines with names.

mod axes;
mod drying;
mod evaporation;
mod score;
mod ticks;

pub(crate) use ticks::round_dates;

pub use drying::{BandPoint, DryingChart, LimitLine, ReadingPoint, drying_chart};
pub use evaporation::{AlarmLine, EvaporationChart, EvaporationHour, RateBand, evaporation_chart};
pub use score::{ScoreChart, score_chart};
