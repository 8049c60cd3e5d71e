//! The drying forecast and the evaporation on the day of the pour, in words.

use slab_answers::drying::{
    Assumption, CannotTell, Caution, Limit, LimitBound, LimitFrom, RestsOn, RuleCheck, Unexplained, WhyLeftOut,
};
use slab_answers::pour_day::{Assumption as PourAssumption, CannotTell as CannotTellPour, Level};

use crate::locale::Locale;
use crate::messages::Arg;
use crate::numerals::rounded;

type Args = Vec<(&'static str, Arg<'static>)>;

impl Locale {
    /// What a forecast took for granted, as a sentence.
    #[must_use]
    pub fn drying_assumption(self, assumption: &Assumption) -> String {
        let args: Args = match assumption {
            Assumption::CureNotNoted { until } | Assumption::CureNotEnded { until } => {
                vec![("until", self.date(*until).into())]
            }
            Assumption::SeveralPours { count, taken } => {
                vec![("count", (*count).into()), ("taken", self.date(*taken).into())]
            }
            Assumption::FlyAshNotCounted { share } => vec![("share", self.share(*share).into())],
            Assumption::AirHumidityAssumed { humidity } | Assumption::HumidityAfterRecord { humidity } => {
                vec![("humidity", self.humidity(*humidity).into())]
            }
            Assumption::AirTemperatureAssumed { temperature } | Assumption::TemperatureAfterRecord { temperature } => {
                vec![("temperature", self.temperature(*temperature).into())]
            }
            Assumption::HumidityOnFewDays { known, of } | Assumption::TemperatureOnFewDays { known, of } => {
                vec![("known", (*known).into()), ("of", (*of).into())]
            }
            Assumption::ZonesAsOneSlab { zones } => vec![("zones", (*zones).into())],
            Assumption::RinseNotCounted { date } => vec![("date", self.date(*date).into())],
            Assumption::SidesNotNoted
            | Assumption::MembraneCure
            | Assumption::CureMethodUnknown
            | Assumption::NoSealerChosen
            | Assumption::WeatherNotRoom
            | Assumption::TypicalYearOutdoors
            | Assumption::RainNotCounted => Vec::new(),
        };
        self.message(&format!("drying-assumed-{}", assumption.code()), &args)
    }

    /// Why there is no forecast and what to note, as a sentence.
    #[must_use]
    pub fn drying_cannot_tell(self, why: &CannotTell) -> String {
        let args: Args = match why {
            CannotTell::ThicknessOutside { thickness, .. } => vec![("thickness", self.length(*thickness).into())],
            CannotTell::WaterCementOutside { ratio, .. } => vec![("ratio", rounded(ratio.as_share(), 2).into())],
            CannotTell::NoPour
            | CannotTell::ExistingFloor
            | CannotTell::NoThickness { .. }
            | CannotTell::NoWaterCement { .. }
            | CannotTell::OutdoorsNoAir => Vec::new(),
        };
        self.message(&format!("drying-cannot-{}", why.code()), &args)
    }

    /// What belongs beside a forecast, as a sentence.
    #[must_use]
    pub fn drying_caution(self, caution: Caution) -> String {
        self.message(&format!("drying-caution-{}", caution.name()), &[])
    }

    /// Why a reading in the slab was left out, as a sentence.
    #[must_use]
    pub fn reading_left_out(self, why: WhyLeftOut) -> String {
        let args: Args = match why {
            WhyLeftOut::NotEquilibrated { needed } => vec![("needed", self.duration(needed).into())],
            _ => Vec::new(),
        };
        self.message(&format!("drying-left-out-{}", why.code()), &args)
    }

    /// Why the readings could not be weighed, as a sentence.
    #[must_use]
    pub fn unexplained(self, why: &Unexplained) -> String {
        let args: Args = match why {
            Unexplained::Reading { read, nearest, .. } => {
                vec![("read", self.humidity(*read).into()), ("nearest", self.humidity(*nearest).into())]
            }
            Unexplained::TooFewAgree { .. } => Vec::new(),
        };
        self.message(&format!("drying-unexplained-{}", why.code()), &args)
    }

    /// A limit and whose it is: `75 %: the maker's limit for the sealer "acrylic, solvent"`.
    #[must_use]
    pub fn drying_limit(self, limit: &Limit) -> String {
        let (key, sealer) = match (&limit.from, limit.bound) {
            (LimitFrom::Maker { sealer, .. }, _) => ("maker", Some(sealer)),
            (LimitFrom::Class { sealer, .. }, LimitBound::Plain) => ("class", Some(sealer)),
            (LimitFrom::Class { sealer, .. }, LimitBound::MakerMustSay) => ("class-if-maker-says", Some(sealer)),
            (LimitFrom::NoSealerBreathing, _) => ("breathing", None),
            (LimitFrom::NoSealerFilm, _) => ("film", None),
        };
        let mut args: Args = vec![("humidity", self.humidity(limit.humidity).into())];
        args.extend(sealer.map(|id| ("sealer", self.term(id).into())));
        let said = self.message(&format!("drying-limit-{key}"), &args);
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
        let args: Args = match assumption {
            PourAssumption::ConcreteTemperature { taken, low, high } => {
                let window = self.range(&self.temperature(*low), &self.temperature(*high));
                vec![("taken", self.temperature(*taken).into()), ("window", window.into())]
            }
            PourAssumption::WindFromStation { factor } => vec![("share", self.percent(factor * 100.0).into())],
            PourAssumption::TypicalYear | PourAssumption::OpenToTheWeather | PourAssumption::StampedAtTheEnd => {
                Vec::new()
            }
        };
        self.message(&format!("pour-day-assumed-{}", assumption.code()), &args)
    }

    /// Why there are no hours and what to note, as a sentence.
    #[must_use]
    pub fn pour_day_cannot_tell(self, why: &CannotTellPour) -> String {
        let args: Args = match why {
            CannotTellPour::DayNotCovered { day } => vec![("day", self.date(*day).into())],
            CannotTellPour::ReadingLacks { lacks, .. } => {
                let lacks: Vec<String> =
                    lacks.iter().map(|l| self.message(&format!("pour-day-lacks-{}", l.name()), &[])).collect();
                vec![("lacks", self.list(&lacks).into())]
            }
            CannotTellPour::NoDay
            | CannotTellPour::NoSeries
            | CannotTellPour::NoAirReading
            | CannotTellPour::Series(_) => Vec::new(),
        };
        self.message(&format!("pour-day-cannot-{}", why.code()), &args)
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
