//! The data files load, hold what the source tables hold, and every kind of mistake is refused.
//!
//! Record counts are pinned to the row counts of the tables the facts were taken from, so that none
//! can vanish in silence. Rows beyond a table (statements and standards added by hand) are counted apart.

use units::{
    Area, Coverage, Duration, EvaporationRate, Fraction, Length, MoistureEmission, RelativeHumidity, Temperature,
    TemperatureDifference, Volume,
};

use super::*;

/// The built-in files with one text replaced in one file.
fn load_with(file: &str, from: &str, to: &str) -> TradeError {
    let mut files: Vec<(&str, String)> = BUILT_IN.iter().map(|(name, text)| (*name, (*text).to_owned())).collect();
    let text = &mut files.iter_mut().find(|(name, _)| *name == file).expect("a built-in file").1;
    assert!(text.contains(from), "{file} no longer holds {from:?}");
    *text = text.replacen(from, to, 1);
    let borrowed: Vec<(&str, &str)> = files.iter().map(|(name, text)| (*name, text.as_str())).collect();
    Trade::load(&borrowed).expect_err("the mistake must be refused")
}

fn fact(id: &str) -> &'static Fact {
    Trade::built_in().fact(id).unwrap_or_else(|| panic!("no fact {id}"))
}

#[test]
fn record_counts_equal_the_rows_of_the_source_tables() {
    let trade = Trade::load(BUILT_IN).expect("the built-in files are right");
    let numbered_sources = trade.sources().filter(|source| source.key.len() == 3).count();
    let counts = [
        ("sources", numbered_sources, 74),
        ("standards, rules and articles beside them", trade.sources().len() - numbered_sources, 31),
        ("practice", trade.facts().filter(|fact| fact.code.is_some()).count(), 17),
        ("statements beside the house rules", trade.facts().filter(|fact| fact.code.is_none()).count(), 12),
        ("hold point tests", trade.hold_point_tests().len(), 25),
        ("incidents", trade.incidents().len(), 30),
        ("finishes", trade.finishes().len(), 10),
        ("allowances", trade.allowances().len(), 7),
        ("materials", trade.materials().len(), 21),
        ("sealers", trade.sealers().len(), 10),
        ("pour spec", trade.pour_spec().len(), 23),
        ("safety", trade.safety().len(), 25),
        ("signs", trade.signs().len(), 10),
        ("limits", trade.limits().len(), 131),
        ("conflicts", trade.conflicts().len(), 10),
        ("glossary", trade.glossary().len(), 135),
        ("steps", trade.steps().len(), 50),
        ("pricing", trade.pricing().len(), 20),
        ("margins", trade.margins().len(), 7),
        ("causes", trade.causes().len(), 15),
        ("observations", trade.observations().len(), 18),
        ("likelihoods", trade.likelihoods().len(), 15),
        ("callbacks", trade.callbacks().len(), 15),
    ];
    for (what, found, wanted) in counts {
        assert_eq!(found, wanted, "{what}");
    }
}

/// The house rules, with the numbers of the table they were given in (common practice, no source).
#[test]
fn every_house_rule_is_there_with_its_numbers() {
    let trade = Trade::built_in();
    for number in 1..=17 {
        let code = format!("R{number:02}");
        let rule = trade.house_rule(&code).unwrap_or_else(|| panic!("no {code}"));
        assert_eq!(rule.grade, Grade::CommonPractice, "{code}");
        assert!(rule.source.is_empty(), "{code}");
        match number {
            1 => assert_eq!(rule.value_as::<Duration>(), Some(Duration::days(28.0))),
            3 => assert_eq!(rule.range_as::<Length>(), Some((Length::inches(12.0), Length::inches(18.0)))),
            _ => assert!(rule.unit.is_none(), "{code} has no number"),
        }
    }
}

/// markup = margin / (1 − margin); price = cost / (1 − margin). The table keeps two decimals.
#[test]
fn margin_table_obeys_its_identity() {
    for row in Trade::built_in().margins() {
        let margin = row.margin_pct / 100.0;
        assert!((row.markup_pct - 100.0 * margin / (1.0 - margin)).abs() <= 0.005, "{}", row.id);
        assert!((row.price_per_100_cost - 100.0 / (1.0 - margin)).abs() <= 0.005, "{}", row.id);
    }
}

/// Public limits, against the values of the documents named beside them.
#[test]
fn public_limits_have_their_published_values() {
    let cases: [(&str, f64, Unit, Grade); 24] = [
        ("hcl-ceiling-ppm", 5.0, Unit::PartPerMillion, Grade::SecondaryCopy), // 29 CFR 1910.1000 Table Z-1
        ("hcl-ceiling-mass", 7.0, Unit::MilligramPerCubicMeter, Grade::SecondaryCopy), // same
        ("hcl-idlh", 45.0, Unit::PartPerMillion, Grade::SecondaryCopy),
        ("silica-limit", 50.0, Unit::MicrogramPerCubicMeter, Grade::SecondaryCopy), // 29 CFR 1926.1153
        ("silica-action-level", 25.0, Unit::MicrogramPerCubicMeter, Grade::SecondaryCopy), // same
        ("grinder-airflow", 25.0, Unit::CubicFootPerMinute, Grade::SecondaryCopy),  // same, Table 1
        ("sewer-ph-min", 5.0, Unit::Ph, Grade::SecondaryCopy),                      // 40 CFR 403.5
        ("waste-ph-low", 2.0, Unit::Ph, Grade::Verified),                           // 40 CFR 261.22
        ("waste-ph-high", 12.5, Unit::Ph, Grade::Verified),                         // same
        ("chromium-leachate", 5.0, Unit::MilligramPerLiter, Grade::SecondaryCopy),  // 40 CFR 261.24
        ("copper-leachate-california", 25.0, Unit::MilligramPerLiter, Grade::SecondaryCopy),
        ("copper-total-california", 2500.0, Unit::MilligramPerKilogram, Grade::SecondaryCopy),
        ("cobalt-leachate-california", 80.0, Unit::MilligramPerLiter, Grade::SecondaryCopy),
        ("cobalt-total-california", 8000.0, Unit::MilligramPerKilogram, Grade::SecondaryCopy),
        ("sheet-side", 18.0, Unit::Inch, Grade::SecondaryCopy), // ASTM D4263 summary
        ("sheet-hours", 16.0, Unit::Hour, Grade::SecondaryCopy), // same
        ("emission-film", 3.0, Unit::PoundPerThousandSquareFeetDay, Grade::Verified), // quoting ASTM F710
        ("humidity-film", 75.0, Unit::Percent, Grade::Verified), // same
        ("humidity-probe-depth-one-side", 0.40, Unit::Fraction, Grade::FromMemory), // ASTM F2170
        ("drop-quick-soak", 60.0, Unit::Second, Grade::FromMemory), // ASTM F3191
        ("vapor-retarder-permeance", 0.1, Unit::Perm, Grade::FromMemory), // ASTM E1745
        ("evaporation-alarm", 0.2, Unit::PoundPerSquareFootHour, Grade::SecondaryCopy), // ACI 305R
        ("friction-threshold", 0.42, Unit::Ratio, Grade::SecondaryCopy), // ANSI A326.3 as quoted
        ("film-constant", 1604.2, Unit::MilSquareFootPerGallon, Grade::FromMemory), // 231 in³ per gallon
    ];
    for (id, value, unit, grade) in cases {
        let limit = fact(id);
        assert_eq!((limit.value, limit.unit, limit.grade), (Some(value), Some(unit), grade), "{id}");
    }
}

#[test]
fn numbers_come_out_as_quantities() {
    assert_eq!(fact("drop-stands").value_as::<Duration>(), Some(Duration::minutes(10.0)));
    let window = fact("air-window-temperature").range_as::<Temperature>();
    assert_eq!(window, Some((Temperature::fahrenheit(50.0), Temperature::fahrenheit(90.0))));
    let spread = fact("dew-point-spread").value_as::<TemperatureDifference>().expect("a spread");
    assert!((spread.as_celsius_degrees() - 3.0).abs() < 1e-9, "ISO 8502-4: 3 °C");
    assert_eq!(fact("humidity-film").value_as::<RelativeHumidity>(), RelativeHumidity::percent(75.0).ok());
    let emission = fact("emission-film").value_as::<MoistureEmission>();
    assert_eq!(emission, Some(MoistureEmission::pounds_per_thousand_square_feet_day(3.0)));
    assert_eq!(fact("absorbency-even-factor").plain(Which::Usual), Some(2.0));
    assert_eq!(fact("drop-stands").plain(Which::Usual), None, "a duration is no plain number");
    assert_eq!(fact("drop-stands").value_as::<Length>(), None, "a duration is no length");
    let finish = Trade::built_in().finish("hard-steel-trowel").expect("a finish");
    let wanted = (Coverage::square_feet_per_gallon(250.0), Coverage::square_feet_per_gallon(400.0));
    assert_eq!(finish.coverage(), wanted);
    let sealer = Trade::built_in().sealer("acrylic-solvent").expect("a sealer");
    assert_eq!(sealer.solids().0, Fraction::share(0.2).expect("a share"));
    assert_eq!(sealer.before_foot(), (Duration::hours(12.0), Duration::hours(24.0)));
    assert_eq!(sealer.moisture.emission_max(), Some(MoistureEmission::pounds_per_thousand_square_feet_day(5.0)));
    // 0.05 gal over a square foot, poured over 100 ft², is 5 gal.
    let spread = Trade::built_in().material("rinse-water-indoor").and_then(Measured::value_as::<Length>);
    let poured: Volume = Area::square_feet(100.0) * spread.expect("a depth");
    assert!((poured.as_us_gallons() - 5.0).abs() < 1e-9);
}

#[test]
fn a_step_tells_its_time() {
    let step = Trade::built_in().step("first-coat").expect("a step");
    let (short, long) = step.time_over(Area::square_feet(1000.0)).expect("an area rate");
    assert!((short.as_hours() - 2.0).abs() < 1e-9 && (long.as_hours() - 5.0).abs() < 1e-9);
    assert_eq!(step.time_along(Length::feet(10.0)), None);
    let dwell = Trade::built_in().step("first-dwell").and_then(WorkStep::duration);
    assert_eq!(dwell, Some((Duration::hours(4.0), Duration::hours(24.0))));
}

/// The same number stands in the pour sheet and in the limits; they must not drift apart.
#[test]
fn pour_sheet_and_limits_agree() {
    let number = |clause: &str, what: &str| {
        let clause = Trade::built_in().pour_clause(clause).expect("a clause");
        clause.numbers.iter().find(|number| number.what == what).expect("a number")
    };
    let evaporation = number("pour-weather", "evaporation").value_as::<EvaporationRate>();
    assert_eq!(evaporation, fact("evaporation-alarm").value_as());
    let age = number("age-before-stain", "age before stain").value_as::<Duration>();
    assert_eq!(age, fact("age-before-stain-days").value_as());
    let spacing = number("thickness-and-joints", "joint spacing over thickness");
    assert_eq!((spacing.low, spacing.high), (fact("joint-spacing").low, fact("joint-spacing").high));
    let air = number("pour-weather", "air temperature at placing").value_as::<Temperature>();
    assert_eq!(air, fact("pour-air-temperature").value_as());
}

/// Every fact that could stop work names its way out: a film, residue or dye is never accepted unseen.
#[test]
fn films_residues_and_dyes_need_treatment() {
    for incident in Trade::built_in().incidents() {
        if matches!(incident.blocks, Blocks::Film) {
            assert_eq!(incident.clears, Clears::TreatedAndRetested, "{}", incident.id);
            assert!(!incident.acceptable, "{}", incident.id);
        }
        if incident.clears == Clears::Never {
            assert!(incident.acceptable, "{}: nothing would ever release it", incident.id);
        }
    }
}

#[test]
fn every_notice_sign_and_word_says_something() {
    let trade = Trade::built_in();
    let texts = trade.incidents().map(|i| (&i.id, &i.en)).chain(trade.signs().map(|s| (&s.id, &s.en)));
    for (id, text) in texts.chain(trade.glossary().map(|t| (&t.id, &t.en))) {
        assert!(!text.trim().is_empty(), "{id}");
    }
}

/// A page that is cited as common practice carries no more than common practice.
#[test]
fn a_shown_grade_is_no_surer_than_its_best_source() {
    let trade = Trade::built_in();
    let chalk = trade.incident("red-chalk").expect("an incident").citation();
    assert_eq!(chalk.grade, Grade::Verified);
    assert_eq!(trade.grade_to_show(&chalk), Grade::CommonPractice);
    let silica = fact("silica-limit").citation();
    assert_eq!(trade.grade_to_show(&silica), Grade::SecondaryCopy, "the page is a copy of the rule");
    let waste = fact("waste-ph-low").citation();
    assert_eq!(trade.cite(&waste).iter().map(|s| s.cite.as_str()).collect::<Vec<_>>(), ["40 CFR 261.22"]);
    let wait = trade.incident("early-cover").expect("an incident").citation();
    assert_eq!(trade.cite(&wait).iter().map(|s| s.cite.as_str()).collect::<Vec<_>>(), ["common practice"], "said once");
}

#[test]
fn grade_words_go_both_ways() {
    for grade in Grade::ALL {
        assert_eq!(Grade::from_words(&grade.to_string()), Some(grade));
    }
    assert_eq!(Grade::from_words("certain"), None);
}

#[test]
fn every_kind_of_mistake_is_refused() {
    use TradeErrorKind as Kind;
    let first_incident = "source = [\"S04\", \"S26\", \"S05\"]";
    let cases: [(Kind, &str, &str, &str, &str, &str); 16] = [
        (Kind::NotToml, "signs.toml", "[[sign]]", "[[sign", "", ""),
        (Kind::Shape, "signs.toml", "place = \"Solvent", "spot = \"Solvent", "solvent-zone", "spot"),
        (Kind::Shape, "signs.toml", "[[sign]]", "[[poster]]\nid = \"x\"\n\n[[sign]]", "", "poster"),
        (Kind::Shape, "limits.toml", "value = 14", "low = 14", "age-uncertain-from", "value"),
        (Kind::DuplicateId, "finishes.toml", "id = \"float\"", "id = \"broom\"", "broom", "id"),
        (Kind::DuplicateId, "limits.toml", "id = \"drop-places\"", "id = \"stain-depth\"", "stain-depth", "id"),
        (Kind::UnknownSource, "incidents.toml", first_incident, "source = [\"S99\"]", "red-chalk", "source"),
        (
            Kind::UnknownSource,
            "conflicts.toml",
            "b_source = [\"S04\"]",
            "b_source = [\"X\"]",
            "chalk-color",
            "b_source",
        ),
        (Kind::VerifiedWithoutSource, "incidents.toml", first_incident, "source = []", "red-chalk", "grade"),
        (
            Kind::SurerThanSource,
            "limits.toml",
            "grade = \"from memory\"",
            "grade = \"verified\"",
            "drop-quick-soak",
            "grade",
        ),
        (Kind::SourceDespiteGrade, "diagnosis.toml", "source = []", "source = [\"S01\"]", "film-left-on", "grade"),
        (
            Kind::UnknownGrade,
            "signs.toml",
            "grade = \"verified, secondary copy\"",
            "grade = \"sure\"",
            "solvent-zone",
            "grade",
        ),
        (Kind::UnknownUnit, "limits.toml", "unit = \"day\"", "unit = \"dog year\"", "age-uncertain-from", "unit"),
        (Kind::OutOfOrder, "materials.toml", "mid = 325", "mid = 500", "stain-smooth-trowel", "low"),
        (Kind::UnknownReference, "safety.toml", "\"hcl-idlh\"", "\"hcl-limit\"", "acid-mist", "limits"),
        (Kind::OutOfRange, "incidents.toml", "severity = 5", "severity = 6", "red-chalk", "severity"),
    ];
    for (kind, file, from, to, record, field) in cases {
        let error = load_with(file, from, to);
        let found = (error.kind, &*error.file, &*error.record, &*error.field);
        assert_eq!(found, (kind, file, record, field), "{error}");
        assert!(!error.accepted.is_empty() && !error.value.is_empty(), "{error}");
    }
}

#[test]
fn a_source_that_no_record_uses_is_refused() {
    let spare = "[[source]]\nkey = \"S98\"\nwhat = \"x\"\nkind = \"x\"\nlocator = \"x\"\ncite = \"x\"\nsupports = \"x\"\n\
                 grade = \"verified\"\n\n[[source]]\nkey = \"S01\"";
    let error = load_with("sources.toml", "[[source]]\nkey = \"S01\"", spare);
    assert_eq!((error.kind, &*error.record), (TradeErrorKind::OrphanSource, "S98"), "{error}");
}

#[test]
fn missing_and_unknown_files_are_refused() {
    let error = Trade::load(&BUILT_IN[1..]).expect_err("sources.toml is missing");
    assert_eq!((error.kind, &*error.file), (TradeErrorKind::MissingFile, "sources.toml"));
    let error = Trade::load(&[("tools.toml", "")]).expect_err("no such file");
    assert_eq!((error.kind, &*error.file), (TradeErrorKind::UnknownFile, "tools.toml"));
}

#[test]
fn priors_must_sum_to_one() {
    let error = load_with("diagnosis.toml", "prior = 0.12", "prior = 0.13");
    assert_eq!(error.kind, TradeErrorKind::OutOfRange, "{error}");
}

/// The steps can be done in some order: no step waits for itself.
#[test]
fn steps_have_no_circle() {
    let trade = Trade::built_in();
    let mut done: Vec<&str> = Vec::new();
    loop {
        let ready = |step: &&WorkStep| {
            let is_done = |id: &String| done.contains(&id.as_str());
            !done.contains(&step.id.as_str())
                && step.after.iter().all(is_done)
                && (step.after_any.is_empty() || step.after_any.iter().any(is_done))
        };
        let next: Vec<&str> = trade.steps().filter(ready).map(|step| step.id.as_str()).collect();
        if next.is_empty() {
            break;
        }
        done.extend(next);
    }
    assert_eq!(done.len(), trade.steps().len());
}
