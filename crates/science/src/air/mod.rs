//! Air over a slab: what water vapor does, how fast fresh concrete dries, when work may go on.
//!
//! Why this module exists: dew point, evaporation and the daily work window decide whether a pour
//! or a coat goes ahead, and each has an outside reference to be checked against (psychrolib and
//! CoolProp for the vapor, published tables for evaporation).
//!
//! Single values are plain functions of quantities, so that a caller can run them over a million
//! rows without set-up; series of weather samples go through [`WeatherSeries`].

mod dew_point;
mod error;
mod evaporation;
mod evaporation_hours;
mod saturation;
mod series;
mod state;
mod wet_bulb;
mod windows;

pub use dew_point::{dew_point, dew_point_of_vapor};
pub use error::{AirError, Missing, SeriesError};
pub use evaporation::{EstimatedRate, EvaporationForm, MENZEL, UNO, evaporation_rate};
pub use evaporation_hours::{EvaporationHour, EvaporationHours, Level, evaporation_hours};
pub use saturation::{HYLAND_WEXLER, saturation_pressure};
pub use series::{AirSample, WeatherSeries};
pub use state::{Air, HumidityRatio, STANDARD_ATMOSPHERE, humidity_ratio, standard_pressure, vapor_pressure};
pub use windows::{Band, Closed, ClosedReason, WorkLimits, WorkWindows, work_windows};
