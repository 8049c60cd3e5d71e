//! The unit words of the data files, and the way from a number with such a word to a typed quantity.
//!
//! To add a unit: one line in `unit_words!`, and one arm in [`InUnit`] for the quantity it measures.

use serde::{Deserialize, Deserializer, Serialize, Serializer, de};
use units::{
    AirFlow, Area, Concentration, Coverage, Density, Duration, EvaporationRate, FilmThickness, Fraction, Length, Mass,
    MoistureEmission, Ph, Pressure, RelativeHumidity, Speed, Temperature, TemperatureDifference, VaporPermeance,
    Volume,
};

macro_rules! unit_words {
    ($($(#[$meta:meta])* $name:ident = $word:literal,)*) => {
        /// A unit as the data files write it.
        #[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
        pub enum Unit { $($(#[$meta])* $name,)* }

        impl Unit {
            /// Every unit word the data files may use.
            pub const ALL: &'static [Self] = &[$(Self::$name,)*];

            /// The word in the data files.
            #[must_use]
            pub const fn word(self) -> &'static str {
                match self { $(Self::$name => $word,)* }
            }
        }
    };
}

unit_words! {
    /// Second.
    Second = "second",
    /// Minute.
    Minute = "minute",
    /// Hour.
    Hour = "hour",
    /// Day of 24 hours.
    Day = "day",
    /// Calendar month; no fixed length.
    Month = "month",
    /// Inch.
    Inch = "in",
    /// Foot.
    Foot = "ft",
    /// Meter.
    Meter = "m",
    /// Thousandth of an inch.
    Mil = "mil",
    /// Square foot.
    SquareFoot = "ft2",
    /// Acre of 43,560 square feet.
    Acre = "acre",
    /// US gallon.
    Gallon = "gal",
    /// Square feet from a US gallon.
    SquareFootPerGallon = "ft2/gal",
    /// US gallons on a square foot: a depth of liquid.
    GallonPerSquareFoot = "gal/ft2",
    /// Gallons into a gallon.
    GallonPerGallon = "gal/gal",
    /// Square feet over a square foot.
    SquareFootPerSquareFoot = "ft2/ft2",
    /// Square feet from one piece.
    SquareFootEach = "ft2/each",
    /// Mil times square feet from a US gallon.
    MilSquareFootPerGallon = "mil-ft2/gal",
    /// Pound.
    Pound = "lb",
    /// Pounds into a US gallon.
    PoundPerGallon = "lb/gal",
    /// Pounds in a cubic yard.
    PoundPerCubicYard = "lb/yd3",
    /// Pounds from a square foot in an hour.
    PoundPerSquareFootHour = "lb/ft2/h",
    /// Pounds from 1000 square feet in 24 hours.
    PoundPerThousandSquareFeetDay = "lb/1000ft2/24h",
    /// Degrees Fahrenheit, a temperature.
    Fahrenheit = "F",
    /// Degrees Fahrenheit, a difference of temperatures.
    FahrenheitDifference = "F-difference",
    /// pH, or a difference of two pH.
    Ph = "pH",
    /// Percent.
    Percent = "pct",
    /// Share of one.
    Fraction = "fraction",
    /// One quantity over another of its kind.
    Ratio = "ratio",
    /// Pieces, tests, places.
    Each = "each",
    /// A number of a scale, such as floor flatness.
    Number = "number",
    /// Parts of a mix.
    Part = "part",
    /// Coats.
    Coat = "coat",
    /// Passes of a machine or a rinse.
    Pass = "pass",
    /// Pounds-force on a square inch.
    Psi = "psi",
    /// US perm.
    Perm = "perm",
    /// Cubic feet of air in a minute.
    CubicFootPerMinute = "cfm",
    /// Miles in an hour.
    MilePerHour = "mph",
    /// Parts per million in air by volume.
    PartPerMillion = "ppm",
    /// Milligrams in a cubic meter of air.
    MilligramPerCubicMeter = "mg/m3",
    /// Micrograms in a cubic meter of air.
    MicrogramPerCubicMeter = "ug/m3",
    /// Milligrams in a liter of water.
    MilligramPerLiter = "mg/L",
    /// Milligrams in a kilogram.
    MilligramPerKilogram = "mg/kg",
    /// Square feet one person does in an hour.
    SquareFootPerHour = "ft2/h",
    /// Feet of length one person does in an hour.
    FootPerHour = "lf/h",
}

impl Unit {
    /// The unit written with this word, or nothing.
    #[must_use]
    pub fn from_word(word: &str) -> Option<Self> {
        Self::ALL.iter().copied().find(|unit| unit.word() == word)
    }

    /// Every accepted word, for error messages.
    #[must_use]
    pub fn accepted() -> String {
        Self::ALL.iter().map(|unit| unit.word()).collect::<Vec<_>>().join(", ")
    }

    /// True for counts and ratios, which are numbers without a unit.
    #[must_use]
    pub const fn is_plain(self) -> bool {
        matches!(
            self,
            Self::Ratio
                | Self::Each
                | Self::Number
                | Self::Part
                | Self::Coat
                | Self::Pass
                | Self::Fraction
                | Self::GallonPerGallon
                | Self::SquareFootPerSquareFoot
        )
    }
}

impl Serialize for Unit {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.serialize_str(self.word())
    }
}

impl<'de> Deserialize<'de> for Unit {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        let word = String::deserialize(deserializer)?;
        Self::from_word(&word)
            .ok_or_else(|| de::Error::custom(format!("unknown unit {word:?}; accepted: {}", Self::accepted())))
    }
}

/// A quantity that can be made from a number and a unit word.
pub trait InUnit: Sized {
    /// The quantity, or nothing where the unit measures something else or the number is out of range.
    fn in_unit(value: f64, unit: Unit) -> Option<Self>;
}

macro_rules! in_unit {
    ($quantity:ty, $value:ident, { $($unit:ident => $make:expr,)* }) => {
        impl InUnit for $quantity {
            fn in_unit($value: f64, unit: Unit) -> Option<Self> {
                match unit { $(Unit::$unit => $make,)* _ => None }
            }
        }
    };
}

in_unit!(Duration, value, {
    Second => Some(Self::seconds(value)),
    Minute => Some(Self::minutes(value)),
    Hour => Some(Self::hours(value)),
    Day => Some(Self::days(value)),
});
in_unit!(Length, value, {
    Inch => Some(Self::inches(value)),
    Foot => Some(Self::feet(value)),
    Meter => Some(Self::meters(value)),
    Mil => Some(FilmThickness::mils(value).into()),
    GallonPerSquareFoot => Some(Volume::us_gallons(value) / Area::square_feet(1.0)),
});
in_unit!(FilmThickness, value, { Mil => Some(Self::mils(value)), });
in_unit!(Area, value, {
    SquareFoot => Some(Self::square_feet(value)),
    Acre => Some(Self::square_feet(43_560.0 * value)),
});
in_unit!(Volume, value, { Gallon => Some(Self::us_gallons(value)), });
in_unit!(Mass, value, { Pound => Some(Self::pounds(value)), });
in_unit!(Coverage, value, { SquareFootPerGallon => Some(Self::square_feet_per_gallon(value)), });
in_unit!(Density, value, {
    PoundPerGallon => Some(Self::pounds_per_gallon(value)),
    PoundPerCubicYard => Some(Self::pounds_per_cubic_yard(value)),
    MilligramPerCubicMeter => Some(Self::kilograms_per_cubic_meter(value * 1e-6)),
    MicrogramPerCubicMeter => Some(Self::kilograms_per_cubic_meter(value * 1e-9)),
    MilligramPerLiter => Some(Self::kilograms_per_cubic_meter(value * 1e-3)),
});
in_unit!(EvaporationRate, value, {
    PoundPerSquareFootHour => Some(Self::pounds_per_square_foot_hour(value)),
});
in_unit!(MoistureEmission, value, {
    PoundPerThousandSquareFeetDay => Some(Self::pounds_per_thousand_square_feet_day(value)),
});
in_unit!(Temperature, value, { Fahrenheit => Some(Self::fahrenheit(value)), });
in_unit!(TemperatureDifference, value, { FahrenheitDifference => Some(Self::fahrenheit_degrees(value)), });
in_unit!(Ph, value, { Ph => Self::new(value).ok(), });
in_unit!(RelativeHumidity, value, { Percent => Self::percent(value).ok(), });
in_unit!(Fraction, value, {
    Fraction => Self::share(value).ok(),
    Percent => Self::share(value / 100.0).ok(),
});
in_unit!(Pressure, value, { Psi => Some(Self::psi(value)), });
in_unit!(VaporPermeance, value, { Perm => Some(Self::us_perms(value)), });
in_unit!(Speed, value, { MilePerHour => Some(Self::miles_per_hour(value)), });
in_unit!(AirFlow, value, { CubicFootPerMinute => Some(Self::cubic_feet_per_minute(value)), });
in_unit!(Concentration, value, {
    PartPerMillion => Some(Self::parts_per_million(value)),
    MilligramPerKilogram => Some(Self::parts_per_million(value)),
});
