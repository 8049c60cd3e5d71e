//! Drying of a slab: how humid the concrete is at a depth and on a day, and how sure that is.
//!
//! Why this module exists: a sealer's limit is met on a day nobody knows, and waiting for it is the
//! longest wait of the job. One slab is followed by [`DryingSlab::dry`]; what is not known about it
//! is a [`Spread`], and [`ForecastPlan`] follows many possible slabs, weighs them by readings and
//! gives bands and dates. **A forecast never releases a hold point: a measurement does.** It says
//! when a measurement is worth taking, and it refuses to speak when the readings cannot be this
//! slab's.
//!
//! ```
//! use science::moisture::{Accuracy, Ambient, Concrete, DryingSlab, Point, Sides};
//! use units::{Duration, Fraction, Length, RelativeHumidity, Temperature};
//! let thickness = Length::millimeters(100.0);
//! let concrete = Concrete::default_prior(Fraction::share(0.5)?, thickness, Sides::One)?;
//! let room = Ambient::constant(RelativeHumidity::percent(60.0)?, Temperature::celsius(18.0));
//! let slab = DryingSlab::new(thickness, Sides::One, concrete, room);
//! let course = slab.dry(Duration::days(365.0), &[Point::Probe], Accuracy::default())?;
//! let days = course.time_to(0, RelativeHumidity::percent(85.0)?).map(|t| t.as_days().round());
//! assert_eq!(days, Some(76.0)); // `drying_calibration.csv`, grade M
//! # Ok::<(), Box<dyn std::error::Error>>(())
//! ```
//!
//! Two sets of parameters: the published one ([`Concrete::published`], Model Code 1990), whose
//! trend with water-cement ratio runs against drying tables, and our default prior
//! ([`Concrete::default_prior`]), fitted to recalled tables and in need of readings. The rule of
//! thumb stands beside them ([`month_per_inch`], [`compare_with_rule`]).
//!
//! To add an unknown to the prior: a field of [`Spread`] with its range and reason, one more score
//! in `prior.rs`, and a new run of `examples/forecast_calibration.rs`.

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
pub use concrete::{Concrete, DRYING_PRIOR, MODEL_CODE_DRYING, ParameterSet};
pub use error::DryingError;
pub use forecast::{DateQuantile, DateToLimit, Forecast, ForecastPlan, HumidityBand, HumidityQuantile};
pub use history::{Balance, DryingHistory, Point};
pub use potential::Shape;
pub use prior::{Draws, Spread};
pub use readings::{Reading, ReadingError};
pub use rule::{MONTH_PER_INCH, RuleCheck, compare_with_rule, month_per_inch};
pub use slab::{Accuracy, DryingSlab, SelfDesiccation, Sides, Surface};
pub use solver::Workspace;
