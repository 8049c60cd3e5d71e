//! The calculations, one file for each.

pub(crate) mod color_difference;
pub(crate) mod dew_point;
pub(crate) mod dilute;
pub(crate) mod drying;
mod drying_forecast;
pub(crate) mod emission;
pub(crate) mod equivalent_age;
pub(crate) mod evaporation;
mod evaporation_file;
pub(crate) mod film;
pub(crate) mod joints;
pub(crate) mod markup;
pub(crate) mod neutralize;
pub(crate) mod purge;
pub(crate) mod ventilate;
pub(crate) mod volume;
