//! What a sample can hold, and the range in which a reading is believed.

use units::{Length, Pressure, RelativeHumidity, Speed, Temperature};

use super::report::Why;
use super::series::Sample;
use super::unit::Unit;

/// A measured thing in a sample.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum Quantity {
    /// Air temperature (dry bulb).
    Air,
    /// Relative humidity of the air.
    Humidity,
    /// Dew point of the air.
    DewPoint,
    /// Wind speed.
    Wind,
    /// Temperature of the slab's surface.
    Slab,
    /// Air pressure at the station, not reduced to sea level.
    Pressure,
    /// Rain since the sample before.
    Rain,
}

impl Quantity {
    /// All of them, in the order of the compact form.
    pub const ALL: [Self; 7] =
        [Self::Air, Self::Humidity, Self::DewPoint, Self::Wind, Self::Slab, Self::Pressure, Self::Rain];

    /// The name used in a column mapping.
    #[must_use]
    pub const fn code(self) -> &'static str {
        match self {
            Self::Air => "air",
            Self::Humidity => "humidity",
            Self::DewPoint => "dew_point",
            Self::Wind => "wind",
            Self::Slab => "slab",
            Self::Pressure => "pressure",
            Self::Rain => "rain",
        }
    }

    /// The column name of the compact form, unit included.
    #[must_use]
    pub const fn column(self) -> &'static str {
        match self {
            Self::Air => "air_c",
            Self::Humidity => "rh_pct",
            Self::DewPoint => "dew_point_c",
            Self::Wind => "wind_m_s",
            Self::Slab => "slab_c",
            Self::Pressure => "pressure_hpa",
            Self::Rain => "rain_mm",
        }
    }

    /// The range in which a reading is believed, as text for a message.
    ///
    /// Outside it a sensor or a unit is wrong. The limits are our own, set wide of anything a
    /// slab crew works in (no source).
    #[must_use]
    pub const fn accepted(self) -> &'static str {
        match self {
            Self::Air => "a number from -60 to 60 °C (-76 to 140 °F)",
            Self::Humidity => "a number from 0 to 100 %",
            Self::DewPoint => "a number from -80 to 60 °C (-112 to 140 °F)",
            Self::Wind => "a number from 0 to 60 m/s (0 to 134 mph)",
            Self::Slab => "a number from -40 to 80 °C (-40 to 176 °F)",
            Self::Pressure => "a number from 300 to 1100 hPa (8.9 to 32.5 inHg)",
            Self::Rain => "a number from 0 to 500 mm (0 to 19.7 in)",
        }
    }

    /// The same range in the unit kept: °C, %, m/s, hPa, mm.
    const fn range(self) -> (f64, f64) {
        match self {
            Self::Air => (-60.0, 60.0),
            Self::Humidity => (0.0, 100.0),
            Self::DewPoint => (-80.0, 60.0),
            Self::Wind => (0.0, 60.0),
            Self::Slab => (-40.0, 80.0),
            Self::Pressure => (300.0, 1100.0),
            Self::Rain => (0.0, 500.0),
        }
    }

    /// Puts a reading into a sample if it is believed.
    pub(super) fn put(self, sample: &mut Sample, value: f64, unit: Unit) -> Result<(), Why> {
        let value = tidy(unit.to_kept(value));
        let (low, high) = self.range();
        if !(low..=high).contains(&value) {
            return Err(Why::OutOfRange);
        }
        match self {
            Self::Air => sample.air = Some(Temperature::celsius(value)),
            Self::Humidity => {
                sample.humidity = Some(RelativeHumidity::percent(value).map_err(|_| Why::OutOfRange)?);
            }
            Self::DewPoint => sample.dew_point = Some(Temperature::celsius(value)),
            Self::Wind => sample.wind = Some(Speed::meters_per_second(value)),
            Self::Slab => sample.slab = Some(Temperature::celsius(value)),
            Self::Pressure => sample.pressure = Some(Pressure::hectopascals(value)),
            Self::Rain => sample.rain = Some(Length::millimeters(value)),
        }
        Ok(())
    }

    /// The unit in which it is kept in the compact form.
    pub(super) const fn kept_unit(self) -> Unit {
        match self {
            Self::Air | Self::DewPoint | Self::Slab => Unit::Celsius,
            Self::Humidity => Unit::Percent,
            Self::Wind => Unit::MeterPerSecond,
            Self::Pressure => Unit::Hectopascal,
            Self::Rain => Unit::Millimeter,
        }
    }

    /// The reading of a sample as the shortest number, in the unit kept, that gives it back.
    pub(super) fn kept(self, sample: &Sample) -> Option<f64> {
        match self {
            Self::Air => sample.air.map(shortest_celsius),
            Self::Humidity => sample.humidity.map(RelativeHumidity::as_percent),
            Self::DewPoint => sample.dew_point.map(shortest_celsius),
            Self::Wind => sample.wind.map(Speed::as_meters_per_second),
            Self::Slab => sample.slab.map(shortest_celsius),
            Self::Pressure => {
                sample.pressure.map(|p| shortest(p.as_hectopascals(), |v| Pressure::hectopascals(v) == p))
            }
            Self::Rain => sample.rain.map(|r| shortest(r.as_millimeters(), |v| Length::millimeters(v) == r)),
        }
    }
}

/// Rounded to a billionth, so that a converted reading is a short decimal and survives any JSON
/// reader; far below what a sensor resolves. Adding zero turns minus zero into zero.
fn tidy(value: f64) -> f64 {
    (value * 1e9).round() / 1e9 + 0.0
}

fn shortest_celsius(temperature: Temperature) -> f64 {
    shortest(temperature.as_celsius(), |v| Temperature::celsius(v) == temperature)
}

/// The stored SI value and the kept unit differ by an offset or factor that leaves noise in the
/// last digits (12.3 °C comes back as 12.300000000000011); the shortest decimal that maps to the
/// same stored value is what was read.
fn shortest(value: f64, same: impl Fn(f64) -> bool) -> f64 {
    [1.0, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9]
        .into_iter()
        .map(|scale| (value * scale).round() / scale)
        .find(|rounded| same(*rounded))
        .unwrap_or(value)
}
