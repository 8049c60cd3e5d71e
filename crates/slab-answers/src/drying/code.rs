//! What a forecast assumed, left out and warns of, as codes with their values.

use jiff::civil::Date;
use units::{Duration, Fraction, Length, RelativeHumidity, Temperature};

use slab_diary::EntryId;

/// Something taken for granted that a person can put right with an entry.
#[derive(Debug, Clone, PartialEq)]
pub enum Assumption {
    /// Nobody noted how many faces dry: one was taken.
    SidesNotNoted,
    /// No cure is noted: the slab was taken as kept wet until this day, the longest usual cure.
    CureNotNoted {
        /// The day drying was taken to begin.
        until: Date,
    },
    /// A wet cure was begun and its end is not noted.
    CureNotEnded {
        /// The day it was taken to end.
        until: Date,
    },
    /// A membrane was noted as the cure. It slows drying until it is taken off, which is not counted.
    MembraneCure,
    /// The way of curing is noted as unknown: drying was counted from that entry.
    CureMethodUnknown,
    /// The zones were poured at different times: the youngest pour was followed.
    SeveralPours {
        /// How many pours lie on the slab.
        count: u32,
        /// The day of the one followed.
        taken: Date,
    },
    /// Fly ash or slag in the mix, which the prior does not know.
    FlyAshNotCounted {
        /// Its share of the cementitious material.
        share: Fraction,
    },
    /// No sealer is chosen for a zone: the trade's two usual limits were taken.
    NoSealerChosen,
    /// No humidity of the air is on record: this one was taken.
    AirHumidityAssumed {
        /// What was taken.
        humidity: RelativeHumidity,
    },
    /// No temperature is on record: this one was taken.
    AirTemperatureAssumed {
        /// What was taken.
        temperature: Temperature,
    },
    /// The humidity of the air is on record for some days only; a straight line joins them.
    HumidityOnFewDays {
        /// Days on record.
        known: u32,
        /// Days since the pour.
        of: u32,
    },
    /// The temperature is on record for some days only; a straight line joins them.
    TemperatureOnFewDays {
        /// Days on record.
        known: u32,
        /// Days since the pour.
        of: u32,
    },
    /// After the record the humidity of the air was taken to stay at the mean of its last month.
    HumidityAfterRecord {
        /// That mean.
        humidity: RelativeHumidity,
    },
    /// After the record the temperature was taken to stay at the mean of its last month.
    TemperatureAfterRecord {
        /// That mean.
        temperature: Temperature,
    },
    /// A weather series is in the diary, but the slab is under a roof: it was not used.
    WeatherNotRoom,
    /// Days without a record were taken from a typical year.
    TypicalYearOutdoors,
    /// Rain falls on a slab outdoors and wets it again, which is not counted.
    RainNotCounted,
    /// Readings of several zones were taken as of one slab.
    ZonesAsOneSlab {
        /// How many zones were read.
        zones: u32,
    },
    /// The floor was rinsed since it began to dry, which is not counted.
    RinseNotCounted {
        /// The last rinse.
        date: Date,
    },
}

impl Assumption {
    /// Every code, for the test of the translations.
    pub const CODES: [&'static str; 19] = [
        "sides-not-noted",
        "cure-not-noted",
        "cure-not-ended",
        "membrane-cure",
        "cure-method-unknown",
        "several-pours",
        "fly-ash-not-counted",
        "no-sealer-chosen",
        "air-humidity-assumed",
        "air-temperature-assumed",
        "humidity-on-few-days",
        "temperature-on-few-days",
        "humidity-after-record",
        "temperature-after-record",
        "weather-not-room",
        "typical-year-outdoors",
        "rain-not-counted",
        "zones-as-one-slab",
        "rinse-not-counted",
    ];

    /// Its name: key of its sentence, and its name in JSON.
    #[must_use]
    pub const fn code(&self) -> &'static str {
        match self {
            Self::SidesNotNoted => "sides-not-noted",
            Self::CureNotNoted { .. } => "cure-not-noted",
            Self::CureNotEnded { .. } => "cure-not-ended",
            Self::MembraneCure => "membrane-cure",
            Self::CureMethodUnknown => "cure-method-unknown",
            Self::SeveralPours { .. } => "several-pours",
            Self::FlyAshNotCounted { .. } => "fly-ash-not-counted",
            Self::NoSealerChosen => "no-sealer-chosen",
            Self::AirHumidityAssumed { .. } => "air-humidity-assumed",
            Self::AirTemperatureAssumed { .. } => "air-temperature-assumed",
            Self::HumidityOnFewDays { .. } => "humidity-on-few-days",
            Self::TemperatureOnFewDays { .. } => "temperature-on-few-days",
            Self::HumidityAfterRecord { .. } => "humidity-after-record",
            Self::TemperatureAfterRecord { .. } => "temperature-after-record",
            Self::WeatherNotRoom => "weather-not-room",
            Self::TypicalYearOutdoors => "typical-year-outdoors",
            Self::RainNotCounted => "rain-not-counted",
            Self::ZonesAsOneSlab { .. } => "zones-as-one-slab",
            Self::RinseNotCounted { .. } => "rinse-not-counted",
        }
    }
}

/// Why there is no forecast, and by that what to note.
#[derive(Debug, Clone, Copy, PartialEq, thiserror::Error)]
pub enum CannotTell {
    /// No pour is noted.
    #[error("no pour is noted; accepted: a pour entry with thickness and water-cement ratio")]
    NoPour,
    /// An old floor without a pour: its drying is long over and its water comes from elsewhere.
    #[error("the job calls this an old floor and no pour is noted; accepted: a pour entry, or a measurement")]
    ExistingFloor,
    /// The pour has no thickness.
    #[error("thickness of pour {pour} is missing; accepted: a thickness such as 4 in")]
    NoThickness {
        /// The pour.
        pour: EntryId,
    },
    /// The pour has no water-cement ratio.
    #[error("water_cement of pour {pour} is missing; accepted: a ratio of 0.35 to 0.75, such as 0.5")]
    NoWaterCement {
        /// The pour.
        pour: EntryId,
    },
    /// The thickness is outside what the solver follows.
    #[error("thickness {:.1} mm of pour {pour}: accepted: 10 mm to 2000 mm (3/8 in to 79 in)", thickness.as_millimeters())]
    ThicknessOutside {
        /// The pour.
        pour: EntryId,
        /// What was noted.
        thickness: Length,
    },
    /// The water-cement ratio is outside what the prior was fitted to.
    #[error("water_cement {:.2} of pour {pour}: accepted: 0.35 to 0.75", ratio.as_share())]
    WaterCementOutside {
        /// The pour.
        pour: EntryId,
        /// What was noted.
        ratio: Fraction,
    },
    /// Outdoors no humidity of the air can be assumed.
    #[error("the slab is outdoors and no humidity of the air is on record; accepted: a weather series or air readings")]
    OutdoorsNoAir,
}

impl CannotTell {
    /// Its name: key of its sentence, and its name in JSON.
    #[must_use]
    pub const fn code(&self) -> &'static str {
        match self {
            Self::NoPour => "no-pour",
            Self::ExistingFloor => "existing-floor",
            Self::NoThickness { .. } => "no-thickness",
            Self::NoWaterCement { .. } => "no-water-cement",
            Self::ThicknessOutside { .. } => "thickness-outside",
            Self::WaterCementOutside { .. } => "water-cement-outside",
            Self::OutdoorsNoAir => "outdoors-no-air",
        }
    }
}

/// Why a reading in the slab was not weighed.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum WhyLeftOut {
    /// Taken before this concrete was placed.
    BeforePour,
    /// Taken before the slab began to dry.
    UnderWetCure,
    /// Its depth is not noted.
    NoDepth,
    /// Its depth is more than the thickness.
    DeeperThanSlab,
    /// Its hole did not stand closed long enough, or nobody noted how long.
    NotEquilibrated {
        /// How long it must stand.
        needed: Duration,
    },
    /// It lies in a zone poured at another time than the one followed.
    OtherPour,
}

impl WhyLeftOut {
    /// Its name: key of its sentence, and its name in JSON.
    #[must_use]
    pub const fn code(&self) -> &'static str {
        match self {
            Self::BeforePour => "before-pour",
            Self::UnderWetCure => "under-wet-cure",
            Self::NoDepth => "no-depth",
            Self::DeeperThanSlab => "deeper-than-slab",
            Self::NotEquilibrated { .. } => "not-equilibrated",
            Self::OtherPour => "other-pour",
        }
    }
}

/// What belongs beside a forecast.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Caution {
    /// A forecast never releases a hold point: a measurement does.
    ForecastNeverReleases,
    /// The maker's sheet of the sealer governs.
    MakersSheetGoverns,
    /// No reading was weighed: this is the prior, which needs readings.
    PriorNeedsReadings,
    /// The readings cannot be this slab's: no date is given.
    ReadingsUnexplained,
    /// By the forecast the rule of thumb is too early for a limit.
    RuleEarlier,
    /// A date lies past the time looked at.
    PastHorizon,
}

impl Caution {
    /// All, for the test of the translations.
    pub const ALL: [Self; 6] = [
        Self::ForecastNeverReleases,
        Self::MakersSheetGoverns,
        Self::PriorNeedsReadings,
        Self::ReadingsUnexplained,
        Self::RuleEarlier,
        Self::PastHorizon,
    ];

    /// Its name: key of its sentence, and its name in JSON.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::ForecastNeverReleases => "forecast-never-releases",
            Self::MakersSheetGoverns => "makers-sheet-governs",
            Self::PriorNeedsReadings => "prior-needs-readings",
            Self::ReadingsUnexplained => "readings-unexplained",
            Self::RuleEarlier => "rule-earlier",
            Self::PastHorizon => "past-horizon",
        }
    }
}
