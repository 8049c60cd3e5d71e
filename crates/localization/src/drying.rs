//! The drying forecast and the evaporation on the day of the pour, in words.

use slab_answers::drying::{
    Assumption, CannotTell, Caution, Limit, LimitBound, LimitFrom, RestsOn, RuleCheck, Unexplained, WhyLeftOut,
};
use slab_answers::pour_day::{Assumption as PourAssumption, CannotTell as CannotTellPour, Lacks, Level};

use crate::locale::Locale;
use crate::messages::Arg;
use crate::numerals::rounded;

type Args = Vec<(&'static str, Arg<'static>)>;

impl Locale {
    /// What a forecast took for granted, as a sentence.
    #[must_use]
    pub fn drying_assumption(self, assumption: &Assumption) -> String {
        let (key, args): (_, Args) = match assumption {
            Assumption::SidesNotNoted => ("drying-assumed-sides-not-noted", vec![]),
            Assumption::CureNotNoted { until } => {
                ("drying-assumed-cure-not-noted", vec![("until", self.date(*until).into())])
            }
            Assumption::CureNotEnded { until } => {
                ("drying-assumed-cure-not-ended", vec![("until", self.date(*until).into())])
            }
            Assumption::MembraneCure => ("drying-assumed-membrane-cure", vec![]),
            Assumption::CureMethodUnknown => ("drying-assumed-cure-method-unknown", vec![]),
            Assumption::SeveralPours { count, taken } => {
                ("drying-assumed-several-pours", vec![("count", (*count).into()), ("taken", self.date(*taken).into())])
            }
            Assumption::FlyAshNotCounted { share } => {
                ("drying-assumed-fly-ash-not-counted", vec![("share", self.share(*share).into())])
            }
            Assumption::NoSealerChosen => ("drying-assumed-no-sealer-chosen", vec![]),
            Assumption::AirHumidityAssumed { humidity } => {
                ("drying-assumed-air-humidity-assumed", vec![("humidity", self.humidity(*humidity).into())])
            }
            Assumption::AirTemperatureAssumed { temperature } => {
                ("drying-assumed-air-temperature-assumed", vec![("temperature", self.temperature(*temperature).into())])
            }
            Assumption::HumidityOnFewDays { known, of } => {
                ("drying-assumed-humidity-on-few-days", vec![("known", (*known).into()), ("of", (*of).into())])
            }
            Assumption::TemperatureOnFewDays { known, of } => {
                ("drying-assumed-temperature-on-few-days", vec![("known", (*known).into()), ("of", (*of).into())])
            }
            Assumption::HumidityAfterRecord { humidity } => {
                ("drying-assumed-humidity-after-record", vec![("humidity", self.humidity(*humidity).into())])
            }
            Assumption::TemperatureAfterRecord { temperature } => (
                "drying-assumed-temperature-after-record",
                vec![("temperature", self.temperature(*temperature).into())],
            ),
            Assumption::WeatherNotRoom => ("drying-assumed-weather-not-room", vec![]),
            Assumption::TypicalYearOutdoors => ("drying-assumed-typical-year-outdoors", vec![]),
            Assumption::RainNotCounted => ("drying-assumed-rain-not-counted", vec![]),
            Assumption::ZonesAsOneSlab { zones } => {
                ("drying-assumed-zones-as-one-slab", vec![("zones", (*zones).into())])
            }
            Assumption::RinseNotCounted { date } => {
                ("drying-assumed-rinse-not-counted", vec![("date", self.date(*date).into())])
            }
        };
        self.message(key, &args)
    }

    /// Why there is no forecast and what to note, as a sentence.
    #[must_use]
    pub fn drying_cannot_tell(self, why: &CannotTell) -> String {
        let (key, args): (_, Args) = match why {
            CannotTell::NoPour => ("drying-cannot-no-pour", vec![]),
            CannotTell::ExistingFloor => ("drying-cannot-existing-floor", vec![]),
            CannotTell::NoThickness { .. } => ("drying-cannot-no-thickness", vec![]),
            CannotTell::NoWaterCement { .. } => ("drying-cannot-no-water-cement", vec![]),
            CannotTell::ThicknessOutside { thickness, .. } => {
                ("drying-cannot-thickness-outside", vec![("thickness", self.length(*thickness).into())])
            }
            CannotTell::WaterCementOutside { ratio, .. } => {
                ("drying-cannot-water-cement-outside", vec![("ratio", rounded(ratio.as_share(), 2).into())])
            }
            CannotTell::OutdoorsNoAir => ("drying-cannot-outdoors-no-air", vec![]),
        };
        self.message(key, &args)
    }

    /// What belongs beside a forecast, as a sentence.
    #[must_use]
    pub fn drying_caution(self, caution: Caution) -> String {
        let key = match caution {
            Caution::ForecastNeverReleases => "drying-caution-forecast-never-releases",
            Caution::MakersSheetGoverns => "drying-caution-makers-sheet-governs",
            Caution::PriorNeedsReadings => "drying-caution-prior-needs-readings",
            Caution::ReadingsUnexplained => "drying-caution-readings-unexplained",
            Caution::RuleEarlier => "drying-caution-rule-earlier",
            Caution::PastHorizon => "drying-caution-past-horizon",
        };
        self.message(key, &[])
    }

    /// Why a reading in the slab was left out, as a sentence.
    #[must_use]
    pub fn reading_left_out(self, why: WhyLeftOut) -> String {
        let key = match why {
            WhyLeftOut::NotEquilibrated { needed } => {
                let needed = self.duration(needed).into();
                return self.message("drying-left-out-not-equilibrated", &[("needed", needed)]);
            }
            WhyLeftOut::BeforePour => "drying-left-out-before-pour",
            WhyLeftOut::UnderWetCure => "drying-left-out-under-wet-cure",
            WhyLeftOut::NoDepth => "drying-left-out-no-depth",
            WhyLeftOut::DeeperThanSlab => "drying-left-out-deeper-than-slab",
            WhyLeftOut::OtherPour => "drying-left-out-other-pour",
        };
        self.message(key, &[])
    }

    /// Why the readings could not be weighed, as a sentence.
    #[must_use]
    pub fn unexplained(self, why: &Unexplained) -> String {
        match why {
            Unexplained::Reading { read, nearest, .. } => self.message(
                "drying-unexplained-reading",
                &[("read", self.humidity(*read).into()), ("nearest", self.humidity(*nearest).into())],
            ),
            Unexplained::TooFewAgree { .. } => self.message("drying-unexplained-too-few-agree", &[]),
        }
    }

    /// A limit and whose it is: `75 %: the maker's limit for the sealer "acrylic, solvent"`.
    #[must_use]
    pub fn drying_limit(self, limit: &Limit) -> String {
        let (key, sealer) = match (&limit.from, limit.bound) {
            (LimitFrom::Maker { sealer, .. }, _) => ("drying-limit-maker", Some(sealer)),
            (LimitFrom::Class { sealer, .. }, LimitBound::Plain) => ("drying-limit-class", Some(sealer)),
            (LimitFrom::Class { sealer, .. }, LimitBound::MakerMustSay) => {
                ("drying-limit-class-if-maker-says", Some(sealer))
            }
            (LimitFrom::NoSealerBreathing, _) => ("drying-limit-breathing", None),
            (LimitFrom::NoSealerFilm, _) => ("drying-limit-film", None),
        };
        let mut args: Args = vec![("humidity", self.humidity(limit.humidity).into())];
        args.extend(sealer.map(|id| ("sealer", self.term(id).into())));
        let said = self.message(key, &args);
        if limit.zones.is_empty() {
            return said;
        }
        let zone = self.list(&limit.zones);
        self.message("reason-in-zone", &[("zone", zone.into()), ("reason", said.into())])
    }

    /// How the rule of thumb compares with the forecast, as a sentence.
    #[must_use]
    pub fn rule_check(self, check: RuleCheck) -> String {
        let key = match check {
            RuleCheck::Agrees => "drying-rule-agrees",
            RuleCheck::RuleEarlier => "drying-rule-earlier",
            RuleCheck::RuleLater => "drying-rule-later",
            RuleCheck::CannotTell => "drying-rule-cannot-tell",
        };
        self.message(key, &[])
    }

    /// What the dates of a forecast rest on, as a sentence.
    #[must_use]
    pub fn rests_on(self, rests_on: RestsOn) -> String {
        let key = match rests_on {
            RestsOn::Description => "drying-rests-description",
            RestsOn::Readings => "drying-rests-readings",
            RestsOn::Nothing => "drying-rests-nothing",
        };
        self.message(key, &[])
    }

    /// What the hours of a pour day took for granted, as a sentence.
    #[must_use]
    pub fn pour_day_assumption(self, assumption: &PourAssumption) -> String {
        let (key, args): (_, Args) = match assumption {
            PourAssumption::ConcreteTemperature { taken, low, high } => {
                let window = self.range(&self.temperature(*low), &self.temperature(*high));
                let args = vec![("taken", self.temperature(*taken).into()), ("window", window.into())];
                ("pour-day-assumed-concrete-temperature", args)
            }
            PourAssumption::WindFromStation { factor } => {
                ("pour-day-assumed-wind-from-station", vec![("share", self.percent(factor * 100.0).into())])
            }
            PourAssumption::TypicalYear => ("pour-day-assumed-typical-year", vec![]),
            PourAssumption::OpenToTheWeather => ("pour-day-assumed-open-to-the-weather", vec![]),
            PourAssumption::StampedAtTheEnd => ("pour-day-assumed-stamped-at-the-end", vec![]),
        };
        self.message(key, &args)
    }

    /// Why there are no hours and what to note, as a sentence.
    #[must_use]
    pub fn pour_day_cannot_tell(self, why: &CannotTellPour) -> String {
        let (key, args): (_, Args) = match why {
            CannotTellPour::NoDay => ("pour-day-cannot-no-day", vec![]),
            CannotTellPour::NoSeries => ("pour-day-cannot-no-series", vec![]),
            CannotTellPour::DayNotCovered { day } => {
                ("pour-day-cannot-day-not-covered", vec![("day", self.date(*day).into())])
            }
            CannotTellPour::NoAirReading => ("pour-day-cannot-no-air-reading", vec![]),
            CannotTellPour::ReadingLacks { lacks, .. } => {
                let said = |lacks: &Lacks| match lacks {
                    Lacks::Air => self.message("pour-day-lacks-air", &[]),
                    Lacks::Humidity => self.message("pour-day-lacks-humidity", &[]),
                    Lacks::Wind => self.message("pour-day-lacks-wind", &[]),
                };
                let lacks: Vec<String> = lacks.iter().map(said).collect();
                ("pour-day-cannot-reading-lacks", vec![("lacks", self.list(&lacks).into())])
            }
            CannotTellPour::Series(_) => ("pour-day-cannot-outside-formula", vec![]),
        };
        self.message(key, &args)
    }

    /// How an estimate stands against an alarm: `possibly above the alarm`.
    #[must_use]
    pub fn evaporation_level(self, level: Level) -> String {
        let key = match level {
            Level::Below => "pour-day-level-below",
            Level::Possible => "pour-day-level-possible",
            Level::Above => "pour-day-level-above",
        };
        self.message(key, &[])
    }
}
