//! What an answer assumed and why there is none, as codes with their values.

use jiff::civil::Date;
use science::air::SeriesError;
use units::Temperature;

use slab_diary::EntryId;

/// Something taken for granted.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Assumption {
    /// The temperature of the concrete is not on record: the middle of what is asked for at the truck.
    ConcreteTemperature {
        /// What was taken.
        taken: Temperature,
        /// The coldest asked for.
        low: Temperature,
        /// The warmest asked for.
        high: Temperature,
    },
    /// The wind was read by a station at 10 m and taken down to slab height.
    WindFromStation {
        /// Share of the station's wind; see the fact `wind-at-slab`.
        factor: f64,
    },
    /// The hours are of a typical year: such a day, never that date.
    TypicalYear,
    /// The slab is to lie under a roof, but the weather is that of open ground.
    OpenToTheWeather,
    /// A row was taken to be stamped at the end of its time, as weather files do.
    StampedAtTheEnd,
}

impl Assumption {
    /// Every code, for the test of the translations.
    pub const CODES: [&'static str; 5] =
        ["concrete-temperature", "wind-from-station", "typical-year", "open-to-the-weather", "stamped-at-the-end"];

    /// Its name: key of its sentence, and its name in JSON.
    #[must_use]
    pub const fn code(&self) -> &'static str {
        match self {
            Self::ConcreteTemperature { .. } => "concrete-temperature",
            Self::WindFromStation { .. } => "wind-from-station",
            Self::TypicalYear => "typical-year",
            Self::OpenToTheWeather => "open-to-the-weather",
            Self::StampedAtTheEnd => "stamped-at-the-end",
        }
    }
}

/// Something a reading lacks.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Lacks {
    /// The air's temperature.
    Air,
    /// The air's humidity.
    Humidity,
    /// The wind.
    Wind,
}

impl Lacks {
    /// All, for the test of the translations.
    pub const ALL: [Self; 3] = [Self::Air, Self::Humidity, Self::Wind];

    /// Its name.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::Air => "air",
            Self::Humidity => "humidity",
            Self::Wind => "wind",
        }
    }
}

/// Why there is no answer, and by that what to note.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
pub enum CannotTell {
    /// No day was asked for and no pour is noted.
    #[error("the day is missing; accepted: a day, or a pour entry")]
    NoDay,
    /// The diary holds no weather series.
    #[error("no weather series is in the diary; accepted: a weather file with air, humidity and wind")]
    NoSeries,
    /// No series covers the day.
    #[error("no weather series of the diary covers {day}; accepted: a series with that day, or a typical year")]
    DayNotCovered {
        /// The day.
        day: Date,
    },
    /// No reading of the air is noted.
    #[error("no air reading is noted; accepted: an air_reading with air, humidity and wind")]
    NoAirReading,
    /// The reading asked for lacks something.
    #[error("air reading {entry} lacks {}; accepted: a reading with air, humidity and wind", list(lacks))]
    ReadingLacks {
        /// The entry.
        entry: EntryId,
        /// What it lacks.
        lacks: Vec<Lacks>,
    },
    /// A number of the weather, or an alarm or wind share of the slab's own, lies outside the formula.
    #[error("{0}")]
    Series(#[from] SeriesError),
}

fn list(lacks: &[Lacks]) -> String {
    lacks.iter().map(|l| l.name()).collect::<Vec<_>>().join(", ")
}

impl CannotTell {
    /// Its name: key of its sentence, and its name in JSON.
    #[must_use]
    pub const fn code(&self) -> &'static str {
        match self {
            Self::NoDay => "no-day",
            Self::NoSeries => "no-series",
            Self::DayNotCovered { .. } => "day-not-covered",
            Self::NoAirReading => "no-air-reading",
            Self::ReadingLacks { .. } => "reading-lacks",
            Self::Series(_) => "outside-formula",
        }
    }
}
