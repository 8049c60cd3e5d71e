//! The units a column may be in.

use units::{Length, Pressure, Speed, Temperature};

use super::names::tokens;
use super::quantity::Quantity;

/// The unit of a column or of one cell.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Unit {
    /// Degree Celsius.
    Celsius,
    /// Degree Fahrenheit.
    Fahrenheit,
    /// Kelvin.
    Kelvin,
    /// Percent of relative humidity.
    Percent,
    /// Meter per second.
    MeterPerSecond,
    /// Kilometer per hour.
    KilometerPerHour,
    /// Mile per hour.
    MilePerHour,
    /// Knot.
    Knot,
    /// Pascal.
    Pascal,
    /// Hectopascal, which is also a millibar.
    Hectopascal,
    /// Kilopascal.
    Kilopascal,
    /// Inch of mercury.
    InchOfMercury,
    /// Millimeter of rain.
    Millimeter,
    /// Inch of rain.
    Inch,
}

/// Longest words first where one is the end of another: tokens are joined before they are compared.
const TEMPERATURES: &[(Unit, &[&str])] = &[
    (Unit::Fahrenheit, &["fahrenheit", "degf", "f"]),
    (Unit::Celsius, &["celsius", "centigrade", "centigrados", "degc", "c"]),
    (Unit::Kelvin, &["kelvin", "k"]),
];
const SHARES: &[(Unit, &[&str])] = &[(Unit::Percent, &["%", "pct", "percent", "porcentaje", "%rh", "%hr"])];
const SPEEDS: &[(Unit, &[&str])] = &[
    (Unit::MilePerHour, &["mph", "mih", "miph"]),
    (Unit::KilometerPerHour, &["kmh", "kph", "kmph"]),
    (Unit::MeterPerSecond, &["ms", "mps"]),
    (Unit::Knot, &["kn", "kt", "kts", "knot", "knots", "nudos"]),
];
const PRESSURES: &[(Unit, &[&str])] = &[
    (Unit::Hectopascal, &["hpa", "mbar", "mb", "millibar"]),
    (Unit::Kilopascal, &["kpa"]),
    (Unit::InchOfMercury, &["inhg"]),
    (Unit::Pascal, &["pa"]),
];
const DEPTHS: &[(Unit, &[&str])] =
    &[(Unit::Millimeter, &["mm"]), (Unit::Inch, &["in", "inch", "inches", "pulg", "pulgada", "pulgadas"])];

const fn words(quantity: Quantity) -> &'static [(Unit, &'static [&'static str])] {
    match quantity {
        Quantity::Air | Quantity::DewPoint | Quantity::Slab => TEMPERATURES,
        Quantity::Humidity => SHARES,
        Quantity::Wind => SPEEDS,
        Quantity::Pressure => PRESSURES,
        Quantity::Rain => DEPTHS,
    }
}

impl Unit {
    /// The symbol printed after a number.
    #[must_use]
    pub const fn symbol(self) -> &'static str {
        match self {
            Self::Celsius => "°C",
            Self::Fahrenheit => "°F",
            Self::Kelvin => "K",
            Self::Percent => "%",
            Self::MeterPerSecond => "m/s",
            Self::KilometerPerHour => "km/h",
            Self::MilePerHour => "mph",
            Self::Knot => "kn",
            Self::Pascal => "Pa",
            Self::Hectopascal => "hPa",
            Self::Kilopascal => "kPa",
            Self::InchOfMercury => "inHg",
            Self::Millimeter => "mm",
            Self::Inch => "in",
        }
    }

    /// The units a quantity may be written in, as text for a message.
    #[must_use]
    pub const fn accepted(quantity: Quantity) -> &'static str {
        match quantity {
            Quantity::Air | Quantity::DewPoint | Quantity::Slab => "°F, °C, K",
            Quantity::Humidity => "%",
            Quantity::Wind => "mph, m/s, km/h, kn",
            Quantity::Pressure => "hPa, kPa, Pa, inHg, mbar",
            Quantity::Rain => "in, mm",
        }
    }

    /// Reads a text that is only a unit, such as `°F` or `km/h`.
    pub(super) fn read(quantity: Quantity, text: &str) -> Option<Self> {
        Self::called(quantity, &tokens(text).concat())
    }

    /// Finds the unit among the words of a header, such as `wind speed (m/s)`.
    pub(super) fn find(quantity: Quantity, tokens: &[String]) -> Option<Self> {
        // The longest run first: `h`, `Pa` is hectopascal before `Pa` alone is pascal.
        [3, 2, 1]
            .into_iter()
            .find_map(|length| tokens.windows(length).rev().find_map(|window| Self::called(quantity, &window.concat())))
    }

    fn called(quantity: Quantity, word: &str) -> Option<Self> {
        words(quantity).iter().find(|(_, names)| names.contains(&word)).map(|(unit, _)| *unit)
    }

    /// The value in the unit in which its quantity is kept: °C, %, m/s, hPa, mm.
    pub(super) fn to_kept(self, value: f64) -> f64 {
        match self {
            Self::Celsius | Self::Percent | Self::MeterPerSecond | Self::Hectopascal | Self::Millimeter => value,
            Self::Fahrenheit => Temperature::fahrenheit(value).as_celsius(),
            Self::Kelvin => Temperature::kelvins(value).as_celsius(),
            Self::KilometerPerHour => Speed::kilometers_per_hour(value).as_meters_per_second(),
            Self::MilePerHour => Speed::miles_per_hour(value).as_meters_per_second(),
            Self::Knot => Speed::knots(value).as_meters_per_second(),
            Self::Pascal => Pressure::pascals(value).as_hectopascals(),
            Self::Kilopascal => Pressure::kilopascals(value).as_hectopascals(),
            Self::InchOfMercury => Pressure::inches_of_mercury(value).as_hectopascals(),
            Self::Inch => Length::inches(value).as_millimeters(),
        }
    }
}
