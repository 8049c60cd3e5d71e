//! An explicit mapping from columns to quantities.

use serde::{Deserialize, Serialize};

use super::error::ImportError;
use super::quantity::Quantity;
use super::unit::Unit;

/// The keys of a mapping.
pub(super) const KEYS: [&str; 16] = [
    "time",
    "date",
    "clock",
    "air",
    "air_unit",
    "humidity",
    "dew_point",
    "dew_point_unit",
    "wind",
    "wind_unit",
    "slab",
    "slab_unit",
    "pressure",
    "pressure_unit",
    "rain",
    "rain_unit",
];

/// Which column is what. Names are compared without regard to case and outer blanks.
///
/// What is not mapped is still recognized by name; a unit alone (`air_unit`) settles the unit of a
/// recognized column. Give `time`, or `date` and `clock` when they are two columns.
#[derive(Debug, Clone, PartialEq, Eq, Default, Serialize, Deserialize)]
#[serde(deny_unknown_fields, default)]
pub struct ColumnMap {
    /// Date and time of day in one column.
    pub time: Option<String>,
    /// The date, when the time of day is another column.
    pub date: Option<String>,
    /// The time of day, when the date is another column.
    pub clock: Option<String>,
    /// Air temperature.
    pub air: Option<String>,
    /// Unit of the air temperature.
    pub air_unit: Option<String>,
    /// Relative humidity, always in %.
    pub humidity: Option<String>,
    /// Dew point.
    pub dew_point: Option<String>,
    /// Unit of the dew point.
    pub dew_point_unit: Option<String>,
    /// Wind speed.
    pub wind: Option<String>,
    /// Unit of the wind speed.
    pub wind_unit: Option<String>,
    /// Temperature of the slab.
    pub slab: Option<String>,
    /// Unit of the slab temperature.
    pub slab_unit: Option<String>,
    /// Station pressure.
    pub pressure: Option<String>,
    /// Unit of the pressure.
    pub pressure_unit: Option<String>,
    /// Rain since the row before.
    pub rain: Option<String>,
    /// Unit of the rain.
    pub rain_unit: Option<String>,
}

impl ColumnMap {
    /// Sets one key, as in `air=Temp 1` or `air_unit=F` on a command line.
    ///
    /// # Errors
    /// [`ImportError::UnknownKey`] when there is no such key.
    pub fn set(&mut self, key: &str, value: &str) -> Result<(), ImportError> {
        let place = match key.trim() {
            "time" => &mut self.time,
            "date" => &mut self.date,
            "clock" => &mut self.clock,
            "air" => &mut self.air,
            "air_unit" => &mut self.air_unit,
            "humidity" => &mut self.humidity,
            "dew_point" => &mut self.dew_point,
            "dew_point_unit" => &mut self.dew_point_unit,
            "wind" => &mut self.wind,
            "wind_unit" => &mut self.wind_unit,
            "slab" => &mut self.slab,
            "slab_unit" => &mut self.slab_unit,
            "pressure" => &mut self.pressure,
            "pressure_unit" => &mut self.pressure_unit,
            "rain" => &mut self.rain,
            "rain_unit" => &mut self.rain_unit,
            _ => return Err(ImportError::UnknownKey { found: super::text::shown(key) }),
        };
        *place = Some(value.trim().to_owned());
        Ok(())
    }

    /// The column mapped to a quantity.
    pub(super) fn column(&self, quantity: Quantity) -> Option<&str> {
        let column = match quantity {
            Quantity::Air => &self.air,
            Quantity::Humidity => &self.humidity,
            Quantity::DewPoint => &self.dew_point,
            Quantity::Wind => &self.wind,
            Quantity::Slab => &self.slab,
            Quantity::Pressure => &self.pressure,
            Quantity::Rain => &self.rain,
        };
        column.as_deref()
    }

    /// The unit mapped to a quantity.
    pub(super) fn unit(&self, quantity: Quantity) -> Result<Option<Unit>, ImportError> {
        let written = match quantity {
            Quantity::Air => &self.air_unit,
            Quantity::Humidity => &None,
            Quantity::DewPoint => &self.dew_point_unit,
            Quantity::Wind => &self.wind_unit,
            Quantity::Slab => &self.slab_unit,
            Quantity::Pressure => &self.pressure_unit,
            Quantity::Rain => &self.rain_unit,
        };
        let Some(written) = written else { return Ok(None) };
        Unit::read(quantity, written).map(Some).ok_or_else(|| ImportError::UnknownUnit {
            key: format!("{}_unit", quantity.code()),
            found: super::text::shown(written),
            accepted: Unit::accepted(quantity),
        })
    }

    /// The time columns mapped: key and name.
    pub(super) fn time_columns(&self) -> Vec<(&'static str, &str)> {
        [("time", &self.time), ("date", &self.date), ("clock", &self.clock)]
            .into_iter()
            .filter_map(|(key, column)| column.as_deref().map(|column| (key, column)))
            .collect()
    }
}
