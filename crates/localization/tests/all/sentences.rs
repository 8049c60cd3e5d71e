//! Every sentence formats with sample values, in each language and measure, and reads as a sentence.

use std::collections::BTreeSet;

use localization::{Lang, Locale, UnitSystem};
use slab_answers::standing::{Action, Code, HoldPointId, Next, Overall, Reason, Stage, State, Value};
use units::{Length, Ph, RelativeHumidity, Temperature, TemperatureDifference};

fn voices() -> impl Iterator<Item = Locale> {
    Lang::ALL
        .into_iter()
        .flat_map(|lang| UnitSystem::ALL.into_iter().map(move |unit_system| Locale::new(lang, unit_system)))
}

fn english() -> Locale {
    Locale::default()
}

fn spanish() -> Locale {
    Locale::new(Lang::Es, UnitSystem::Imperial)
}

fn reads_as_a_sentence(text: &str) {
    assert!(!text.contains(['{', '}', '$', '\n', '\u{2068}', '\u{2069}']), "{text}");
    assert!(!text.contains("  ") && !text.contains(" .") && !text.contains(" ,") && !text.contains(".."), "{text}");
    assert!(text.ends_with(['.', '?']), "{text}");
    assert_eq!(text, text.trim(), "{text}");
    let first = text.chars().find(|c| c.is_alphanumeric()).expect("not empty");
    assert!(first.is_uppercase() || first.is_numeric(), "{text}");
    assert_eq!(text.matches('(').count(), text.matches(')').count(), "{text}");
}

#[test]
fn every_reason_reads_as_a_sentence() {
    let mut said = 0;
    for locale in voices() {
        for code in Code::ALL {
            for full in [false, true] {
                for seed in [0, 1, 2, 5] {
                    let text = locale.reason(&crate::carried::reason(*code, full, seed));
                    reads_as_a_sentence(&text);
                    said += 1;
                }
            }
        }
    }
    assert_eq!(said, Code::ALL.len() * 4 * 2 * 4);
}

#[test]
fn no_two_codes_say_the_same() {
    for locale in voices() {
        let texts: BTreeSet<String> =
            Code::ALL.iter().map(|c| locale.reason(&crate::carried::reason(*c, true, 3))).collect();
        assert_eq!(texts.len(), Code::ALL.len());
        let orders: BTreeSet<String> =
            Action::ALL.iter().map(|a| locale.order(&crate::carried::next(*a, true))).collect();
        assert_eq!(orders.len(), Action::ALL.len());
    }
}

#[test]
fn every_step_and_hold_point_reads_as_a_sentence() {
    for locale in voices() {
        for action in Action::ALL {
            let next = crate::carried::next(*action, false);
            reads_as_a_sentence(&locale.action(&crate::carried::next(*action, true)));
            reads_as_a_sentence(&locale.action(&next));
            let order = locale.order(&next);
            assert!(order.ends_with(|c: char| c.is_alphanumeric() || c == ')'), "{order}");
            if let Some(care) = locale.care(&next) {
                reads_as_a_sentence(&care);
                let signal = care.split(':').next().expect("a signal word");
                assert!(["Warning", "Caution", "Advertencia", "Precaución"].contains(&signal), "{care}");
            }
        }
        for id in HoldPointId::ALL {
            reads_as_a_sentence(&locale.consequence(id));
            reads_as_a_sentence(&locale.hold_point_question(id));
            let name = locale.hold_point(id);
            assert!(name.starts_with(|c: char| c.is_lowercase()), "{name}");
        }
    }
}

/// Wording chosen after ANSI Z535: a consequence is never promised, and nothing is called safe.
#[test]
fn nothing_is_promised() {
    for lang in Lang::ALL {
        for (key, message) in crate::messages::messages(lang) {
            let text = message.text.to_lowercase();
            for word in [
                "safe ",
                "safely",
                "guarantee",
                "harmless",
                "a salvo",
                "garantiza",
                "inofensiv",
                "sin riesgo",
                "sin peligro",
            ] {
                assert!(!text.contains(word), "{key}: {text}");
            }
            if key.starts_with("ignored-") {
                let unsure = ["can ", "can't", "nobody knows", "puede", "podría", "nadie sabe"];
                assert!(unsure.iter().any(|w| text.contains(w)), "{key}: {text}");
            }
        }
    }
}

#[test]
fn the_zone_stands_in_front() {
    let mut reason = crate::carried::reason(Code::NoSurvey, true, 1);
    reason.zones = vec!["Shop".to_owned()];
    assert_eq!(
        english().reason(&reason),
        "Shop: Nobody has gone over the slab to look for oil, marks, drips and shadows."
    );
    assert_eq!(
        spanish().reason(&reason),
        "Shop: Nadie ha recorrido la losa buscando aceite, marcas, goteos y sombras."
    );
    reason.zones.push("Hall".to_owned());
    assert!(english().reason(&reason).starts_with("Shop and Hall: "), "{}", english().reason(&reason));
}

#[test]
fn one_and_many_are_told_apart() {
    let say = |locale: Locale, drops: u32, needed: u32| {
        let values = vec![("drops", Value::Count(drops)), ("needed", Value::Count(needed))];
        locale.reason(&Reason { code: Code::TooFewDrops, zones: Vec::new(), values })
    };
    assert_eq!(say(english(), 1, 3), "1 water drop counts so far; 3 are needed here.");
    assert_eq!(say(english(), 2, 1), "2 water drops count so far; 1 is needed here.");
    assert_eq!(say(spanish(), 1, 3), "Hasta ahora cuenta 1 gota de agua; aquí hacen falta 3.");
    assert_eq!(say(spanish(), 2, 1), "Hasta ahora cuentan 2 gotas de agua; aquí hace falta 1.");
}

#[test]
fn several_items_become_a_list() {
    let item = |id: &str| ("item", Value::Term(id.to_owned()));
    let reason = |items: Vec<(&'static str, Value)>| Reason { code: Code::SiteLacks, zones: Vec::new(), values: items };
    assert_eq!(
        english().reason(&reason(vec![item("eyewash")])),
        "Missing on site: tested eyewash. No acid work without it."
    );
    let three = reason(vec![item("water"), item("waste-plan"), item("data-sheets")]);
    assert_eq!(
        english().reason(&three),
        "Missing on site: water, waste-water plan and safety data sheets. No acid work without it."
    );
    assert_eq!(
        spanish().reason(&three),
        "Falta en la obra: agua, plan del agua residual y hojas de seguridad (SDS). Sin eso no se trabaja con ácido."
    );
}

#[test]
fn the_dew_point_is_told_from_the_side_the_surface_lies_on() {
    let say = |locale: Locale, spread: f64| {
        let values = vec![
            ("spread", Value::Difference(TemperatureDifference::fahrenheit_degrees(spread))),
            ("dew_point", Value::Temperature(Temperature::fahrenheit(58.0))),
            ("wanted", Value::Difference(TemperatureDifference::fahrenheit_degrees(5.4))),
        ];
        locale.reason(&Reason { code: Code::NearDewPoint, zones: Vec::new(), values })
    };
    assert!(say(english(), 2.0).starts_with("The slab surface is only 2 °F above the dew point (58 °F)"));
    assert!(say(english(), -2.0).starts_with("The slab surface is 2 °F below the dew point (58 °F)"));
    assert!(
        say(Locale::new(Lang::Es, UnitSystem::Metric), -1.8).contains("1 °C por debajo del punto de rocío (14.4 °C)")
    );
}

/// 10.0 is inside "10 to 13" and 9.96 is not: they must not look the same.
#[test]
fn a_value_never_prints_as_the_limit_it_misses() {
    let ph = |value: f64| Value::Ph(Ph::new(value).expect("in range"));
    let values = vec![("lowest", ph(9.96)), ("highest", ph(11.0)), ("low", ph(10.0)), ("high", ph(13.0))];
    let text = english().reason(&Reason { code: Code::PhOutsideWindow, zones: Vec::new(), values });
    assert_eq!(text, "The surface pH reads 9.96 to 11; it should be 10 to 13. The result is in doubt.");

    let humidity = |value: f64| Value::Humidity(RelativeHumidity::percent(value).expect("in range"));
    let values = vec![("humidity", humidity(85.02)), ("limit", humidity(85.0))];
    let text = english().reason(&Reason { code: Code::AirTooHumid, zones: Vec::new(), values });
    assert_eq!(text, "The air is at 85.02 % humidity; the limit is 85 %.");

    let values =
        vec![("width", Value::Length(Length::inches(0.02003))), ("limit", Value::Length(Length::inches(0.02)))];
    let text = english().reason(&Reason { code: Code::CrackWide, zones: Vec::new(), values });
    assert!(text.starts_with("This crack is 0.02003 in wide; over 0.02 in somebody"), "{text}");
}

#[test]
fn the_answer_names_the_step_and_its_time() {
    let overall = |state, hold_point, next: Option<Next>, open| Overall {
        state,
        hold_point,
        next_for: next.as_ref().and(hold_point),
        next,
        open,
        asked: 11,
        by_word: Vec::new(),
        own_figures: Vec::new(),
        zones: Vec::new(),
        stages: vec![(Stage::Bare, vec!["whole".to_owned()])],
    };
    let next = |action, minutes, wait_hours| Some(Next { minutes, wait_hours, ..crate::carried::next(action, false) });
    let ready = overall(State::Released, None, None, 0);
    assert_eq!(english().overall(&ready), "Ready to stain: all 11 hold points are released.");
    assert_eq!(spanish().overall(&ready), "Lista para teñir: los 11 puntos de espera están liberados.");
    let by_word = Overall { by_word: vec![HoldPointId::Moisture], ..ready.clone() };
    assert!(english().overall(&by_word).ends_with(" Released by word: moisture."));
    assert!(spanish().overall(&by_word).ends_with(" Liberado de palabra: humedad."));

    let untried = overall(State::Unproven, Some(HoldPointId::Membrane), next(Action::DropAndScrape, 20, 0), 4);
    assert_eq!(
        english().overall(&untried),
        "Not yet: membrane. Drop water at 3 places at least 2 ft apart, and scrape beside a drop (20 minutes)."
    );
    assert_eq!(
        spanish().overall(&untried),
        "Todavía no: membrana. Ponga gotas de agua en 3 lugares a 2 pies (60 cm) o más uno de otro, y raspe junto a \
         una gota (20 minutos)."
    );
    let meanwhile = Overall { hold_point: Some(HoldPointId::Age), ..untried.clone() };
    assert_eq!(
        english().overall(&meanwhile),
        "Not yet: age. Meanwhile, for membrane: Drop water at 3 places at least 2 ft apart, and scrape beside a drop \
         (20 minutes)."
    );
    assert_eq!(english().open_hold_points(&untried), "4 of 11 hold points are open.");
    assert_eq!(spanish().open_hold_points(&untried), "Quedan abiertos 4 de 11 puntos de espera.");

    let held = overall(State::Held, Some(HoldPointId::Air), next(Action::WaitForAir, 0, 4), 1);
    assert_eq!(english().overall(&held), "On hold: air. Wait for better air, then read it again (wait 4 hours).");
    assert_eq!(english().open_hold_points(&held), "1 of 11 hold points is open.");

    let unclear = overall(State::CantTell, Some(HoldPointId::Moisture), next(Action::SetProbes, 60, 24), 1);
    assert_eq!(
        english().overall(&unclear),
        "Can't tell yet: moisture. Set humidity probes in the slab, or calcium chloride tests, where their marks may show, and \
         read them after the wait (60 minutes, then wait 24 hours)."
    );
    let nothing_to_do = overall(State::Held, Some(HoldPointId::SurfacePh), None, 1);
    assert_eq!(english().overall(&nothing_to_do), "On hold: surface pH.");
    let untimed = overall(State::Held, Some(HoldPointId::Age), next(Action::NotePour, 0, 0), 1);
    assert_eq!(english().overall(&untimed), "On hold: age. Log the pour date.");
}

#[test]
fn a_curl_is_a_film_and_a_rag_against_water_stops_the_work() {
    let said = |code, locale: Locale| locale.reason(&crate::carried::reason(code, true, 3));
    let text = said(Code::FilmOnBlade, english());
    assert!(text.contains("That is a film, even where water soaks in"), "{text}");
    let text = said(Code::FilmOnBlade, spanish());
    assert!(text.contains("Eso es una película, aunque el agua se absorba"), "{text}");
    let text = said(Code::RagAgainstWater, english());
    assert!(text.ends_with("The tests contradict each other: don't stain on this."), "{text}");
    let text = said(Code::RagAgainstWater, spanish());
    assert!(text.ends_with("Las pruebas se contradicen: no tiña así."), "{text}");
}

/// How far a stained floor is, in the order of the work: each stage names the zones and the clock.
#[test]
fn the_stage_names_zones_and_times() {
    let at = jiff::civil::date(2026, 5, 3).at(14, 5, 0, 0);
    let told = |stages: &[(Stage, &str)], state, hold_point| Overall {
        state,
        hold_point,
        next: None,
        next_for: None,
        open: usize::from(hold_point.is_some()),
        asked: 4,
        by_word: Vec::new(),
        own_figures: Vec::new(),
        zones: Vec::new(),
        stages: stages.iter().map(|(stage, zone)| (*stage, vec![(*zone).to_owned()])).collect(),
    };
    let dwell = (Stage::Dwell { until: Some(at) }, "Shop");
    let both = told(&[dwell, (Stage::Bare, "Office")], State::Held, Some(HoldPointId::SurfacePh));
    assert_eq!(
        english().overall(&both),
        "On hold: surface pH. Shop: the stain works until May 3, 2026 14:05. Office: not stained yet."
    );
    assert_eq!(
        spanish().overall(&both),
        "Alto: pH de la superficie. Shop: el tinte trabaja hasta el 3 de mayo de 2026 14:05. Office: sin teñir \
         todavía."
    );
    let dry = told(&[(Stage::Dry, "whole")], State::Released, None);
    assert!(english().overall(&dry).starts_with("Ready to seal"));
    let cure = told(&[(Stage::Cure { until: at }, "whole")], State::Held, None);
    assert_eq!(
        english().overall(&cure),
        "Sealed, and hardening. The floor: sealed; nobody walks on it before May 3, 2026 14:05."
    );
    let open = told(&[(Stage::Open, "whole")], State::Released, None);
    assert!(english().overall(&open).starts_with("Done: the floor may be walked on."));
    let half = told(&[(Stage::Open, "Shop"), (Stage::Bare, "Office")], State::Released, None);
    assert!(english().overall(&half).starts_with("Office: ready to stain."), "{}", english().overall(&half));
}
