//! The words of the drying forecast and of the pour day.

#![allow(clippy::unwrap_used, reason = "a test may stop")]

use jiff::civil::date;
use localization::{Lang, Locale, UnitSystem};
use slab_answers::drying::{
    Assumption, CannotTell, Caution, Limit, LimitBound, LimitFrom, RestsOn, RuleCheck, Unexplained, WhyLeftOut,
};
use slab_answers::pour_day::{Assumption as PourAssumption, CannotTell as CannotTellPour, Lacks, Level};
use slab_diary::{EntryId, SlabId};
use units::{Duration, Fraction, Length, RelativeHumidity, Temperature};

fn entry(text: &str) -> EntryId {
    EntryId::of_text(SlabId::of_name("words"), text)
}

fn humidity(percent: f64) -> RelativeHumidity {
    RelativeHumidity::percent(percent).unwrap()
}

fn assumptions() -> Vec<Assumption> {
    let day = date(2026, 3, 9);
    vec![
        Assumption::SidesNotNoted,
        Assumption::CureNotNoted { until: day },
        Assumption::CureNotEnded { until: day },
        Assumption::MembraneCure,
        Assumption::CureMethodUnknown,
        Assumption::SeveralPours { count: 2, taken: day },
        Assumption::FlyAshNotCounted { share: Fraction::share(0.2).unwrap() },
        Assumption::NoSealerChosen,
        Assumption::AirHumidityAssumed { humidity: humidity(60.0) },
        Assumption::AirTemperatureAssumed { temperature: Temperature::celsius(18.0) },
        Assumption::HumidityOnFewDays { known: 1, of: 32 },
        Assumption::TemperatureOnFewDays { known: 14, of: 32 },
        Assumption::HumidityAfterRecord { humidity: humidity(55.0) },
        Assumption::TemperatureAfterRecord { temperature: Temperature::celsius(10.0) },
        Assumption::WeatherNotRoom,
        Assumption::TypicalYearOutdoors,
        Assumption::RainNotCounted,
        Assumption::ZonesAsOneSlab { zones: 3 },
        Assumption::RinseNotCounted { date: day },
    ]
}

fn pour_assumptions() -> Vec<PourAssumption> {
    let [taken, low, high] = [70.0, 50.0, 90.0].map(Temperature::fahrenheit);
    vec![
        PourAssumption::ConcreteTemperature { taken, low, high },
        PourAssumption::WindFromStation { factor: 0.67 },
        PourAssumption::TypicalYear,
        PourAssumption::OpenToTheWeather,
        PourAssumption::StampedAtTheEnd,
    ]
}

/// Everything that can be said, in one locale.
fn said(locale: Locale) -> Vec<String> {
    let pour = entry("pour");
    let cannot = [
        CannotTell::NoPour,
        CannotTell::ExistingFloor,
        CannotTell::NoThickness { pour },
        CannotTell::NoWaterCement { pour },
        CannotTell::ThicknessOutside { pour, thickness: Length::inches(90.0) },
        CannotTell::WaterCementOutside { pour, ratio: Fraction::share(0.8).unwrap() },
        CannotTell::OutdoorsNoAir,
    ];
    let left_out = [
        WhyLeftOut::BeforePour,
        WhyLeftOut::UnderWetCure,
        WhyLeftOut::NoDepth,
        WhyLeftOut::DeeperThanSlab,
        WhyLeftOut::NotEquilibrated { needed: Duration::hours(24.0) },
        WhyLeftOut::OtherPour,
    ];
    let unexplained = [
        Unexplained::Reading { entry: pour, read: humidity(30.0), nearest: humidity(80.0), sigmas: 20.0 },
        Unexplained::TooFewAgree { effective: 12.0, needed: 30.0 },
    ];
    let cannot_pour = [
        CannotTellPour::NoDay,
        CannotTellPour::NoSeries,
        CannotTellPour::DayNotCovered { day: date(2026, 8, 1) },
        CannotTellPour::NoAirReading,
        CannotTellPour::ReadingLacks { entry: pour, lacks: Lacks::ALL.to_vec() },
    ];
    let sealer = || "acrylic-water".to_owned();
    let from = [
        (LimitFrom::Maker { sealer: sealer(), entry: pour }, LimitBound::Plain),
        (LimitFrom::Class { sealer: sealer(), entry: pour }, LimitBound::Plain),
        (LimitFrom::Class { sealer: sealer(), entry: pour }, LimitBound::MakerMustSay),
        (LimitFrom::NoSealerBreathing, LimitBound::Plain),
        (LimitFrom::NoSealerFilm, LimitBound::Plain),
    ];
    let limits =
        from.map(|(from, bound)| Limit { humidity: humidity(75.0), bound, from, zones: vec!["shop".to_owned()] });
    let mut all: Vec<String> = assumptions().iter().map(|a| locale.drying_assumption(a)).collect();
    all.extend(cannot.iter().map(|c| locale.drying_cannot_tell(c)));
    all.extend(Caution::ALL.map(|c| locale.drying_caution(c)));
    all.extend(left_out.map(|w| locale.reading_left_out(w)));
    all.extend(unexplained.iter().map(|u| locale.unexplained(u)));
    all.extend(limits.iter().map(|l| locale.drying_limit(l)));
    let checks = [RuleCheck::Agrees, RuleCheck::RuleEarlier, RuleCheck::RuleLater, RuleCheck::CannotTell];
    all.extend(checks.map(|c| locale.rule_check(c)));
    all.extend([RestsOn::Description, RestsOn::Readings, RestsOn::Nothing].map(|r| locale.rests_on(r)));
    all.extend(pour_assumptions().iter().map(|a| locale.pour_day_assumption(a)));
    all.extend(cannot_pour.iter().map(|c| locale.pour_day_cannot_tell(c)));
    all.extend([Level::Below, Level::Possible, Level::Above].map(|l| locale.evaporation_level(l)));
    all
}

#[test]
fn every_code_has_its_sentence_with_its_values_filled_in() {
    let codes: Vec<&str> = assumptions().iter().map(Assumption::code).collect();
    assert_eq!(codes, Assumption::CODES);
    let codes: Vec<&str> = pour_assumptions().iter().map(PourAssumption::code).collect();
    assert_eq!(codes, PourAssumption::CODES);
    for lang in Lang::ALL {
        for unit_system in UnitSystem::ALL {
            let said = said(Locale::new(lang, unit_system));
            assert_eq!(said.len(), 65);
            for sentence in said {
                let unfilled = sentence.contains(['{', '$']);
                let bare_key = sentence.starts_with("drying-") || sentence.starts_with("pour-day-");
                assert!(!unfilled && !bare_key && !sentence.is_empty(), "{lang:?}: {sentence}");
            }
        }
    }
}

#[test]
fn sentences_read_as_they_should() {
    let english = Locale::new(Lang::En, UnitSystem::Imperial);
    let spanish = Locale::new(Lang::Es, UnitSystem::Metric);
    let few = Assumption::HumidityOnFewDays { known: 1, of: 32 };
    assert_eq!(
        english.drying_assumption(&few),
        "The humidity of the air is on record for 1 day of 32: a straight line joins them."
    );
    assert_eq!(
        spanish.drying_assumption(&few),
        "La humedad del aire está anotada en 1 día de 32: los une una línea recta."
    );
    let [taken, low, high] = [70.0, 50.0, 90.0].map(Temperature::fahrenheit);
    let concrete = PourAssumption::ConcreteTemperature { taken, low, high };
    assert_eq!(
        english.pour_day_assumption(&concrete),
        "The temperature of the concrete is not on record: 70 °F is assumed, the middle of what is asked for at the \
         truck (50 °F to 90 °F)."
    );
    let entry = entry("reading");
    let lacks = CannotTellPour::ReadingLacks { entry, lacks: vec![Lacks::Humidity, Lacks::Wind] };
    assert_eq!(english.pour_day_cannot_tell(&lacks), "The air reading lacks humidity and wind.");
    assert_eq!(spanish.pour_day_cannot_tell(&lacks), "A la lectura del aire le falta humedad y viento.");
}
