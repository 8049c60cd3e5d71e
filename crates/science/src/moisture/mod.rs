//! Drying of a slab: how humid the concrete is at a depth and on a day, and how sure that is.

mod ambient;
mod concrete;
mod ensemble;
mod error;
mod flow;
mod forecast;
mod grid;
mod history;
mod potential;
mod prior;
mod readings;
mod rule;
mod slab;
mod solver;
mod step;
mod tridiagonal;

pub use ambient::{Ambient, Spell};
pub use concrete::{Concrete, ParameterSet};
pub use error::DryingError;
pub use forecast::{DateQuantile, DateToLimit, Forecast, ForecastPlan, HumidityBand, HumidityQuantile};
pub use history::{Balance, DryingHistory, Point};
pub use potential::Shape;
pub use prior::{Draws, Spread};
pub use readings::{Reading, ReadingError};
pub use rule::{RuleCheck, compare_with_rule, month_per_inch};
pub use slab::{Accuracy, DryingSlab, SelfDesiccation, Sides, Surface};
pub use solver::Workspace;
