//! Nothing typed stops the program or becomes anything but the value of its field.

use calculators::{Calculator, NoFiles, Uploads, calculate, calculator, calculators};
use form_schema::FormData;
use localization::{Lang, Locale, UnitSystem};
use proptest::prelude::*;

use crate::with;

/// The whole example, with few members where a forecast would be slow.
fn example(of: &Calculator, unit_system: UnitSystem) -> FormData {
    let mut typed = of.filled(unit_system);
    if of.id() == "drying" {
        typed.push("members", "50");
    }
    typed
}

/// Asks, and says answer or refusal to every reader.
fn say(id: &str, typed: &FormData, usual: Option<UnitSystem>) -> Result<(), TestCaseError> {
    let files = Uploads(&[("f.csv", b"time,air C,RH\n2026-06-02 13:00,35,20\n")]);
    let answered = calculate(id, typed, usual, &files);
    for lang in Lang::ALL {
        for unit_system in UnitSystem::ALL {
            let locale = Locale::new(lang, unit_system);
            match &answered {
                Ok(found) => {
                    prop_assert!(!found.text(locale).is_empty());
                    prop_assert_eq!(&found.json(locale)["sum"], id);
                }
                Err(refused) => {
                    prop_assert!(!refused.problems(locale).is_empty());
                    for (field, plain) in refused.problems(locale) {
                        prop_assert!(!plain.is_empty() && !plain.contains("sum-refused-"), "{}", plain);
                        prop_assert!(!plain.contains("sum-accepts-"), "{}", plain);
                        if let Some(field) = field {
                            prop_assert!(calculator(id).is_some_and(|of| of.field(field).is_some()), "{}", field);
                        }
                    }
                }
            }
        }
    }
    Ok(())
}

/// Texts that people and others type: numbers with and without units, options, anything.
fn text() -> impl Strategy<Value = String> {
    let number = prop_oneof![
        (-1e4..1e4).prop_map(|n: f64| n.to_string()),
        any::<f64>().prop_map(|n| n.to_string()),
        (0u32..200).prop_map(|n| n.to_string()),
    ];
    let unit = prop::sample::select(vec![
        "", "%", "°F", "°C", "ft", "in", "m", "mm", "gal", "L", "ppm", "h", "days", "ft2", "cfm", "mil", "g", "mph",
        "kPa",
    ]);
    prop_oneof![
        4 => (number, unit).prop_map(|(n, u)| format!("{n} {u}")),
        2 => any::<String>(),
        1 => prop::sample::select(vec![
            "--json", "--file=f.csv", "-", "--", "--help", "-h", "", " ", "=", "1e308", "NaN", "inf", "-inf", "f.csv",
            "1:0", "0:0", "30:91,30:91", "12h@15C,0h@15C", "1e300 days", "999999999", "#000000", "0,0,0",
        ]).prop_map(str::to_owned),
    ]
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 600, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn any_text_in_any_field_is_answered_or_refused(which in 0usize..1000, texts in prop::collection::vec(text(), 1..3)) {
        let fields: Vec<(&Calculator, &str)> =
            calculators().iter().flat_map(|of| of.form.fields.iter().map(|field| (*of, field.name))).collect();
        let (of, field) = fields[which % fields.len()];
        let texts: Vec<&str> = texts.iter().map(String::as_str).collect();
        let typed = with(&example(of, UnitSystem::Imperial), field, &texts);
        say(of.id(), &typed, None)?;
        say(of.id(), &typed, Some(UnitSystem::Metric))?;
    }

    #[test]
    fn any_question_at_all_is_answered_or_refused(
        sum in prop_oneof![prop::sample::select(calculators().iter().map(|of| of.id().to_owned()).collect::<Vec<_>>()), any::<String>()],
        pairs in prop::collection::vec((any::<prop::sample::Index>(), any::<Option<String>>(), text()), 0..6),
    ) {
        let typed: FormData = pairs.into_iter().map(|(at, free, text)| {
            let known = calculator(&sum).map(|of| at.get(of.form.fields).name.to_owned());
            (free.or(known).unwrap_or_default(), text)
        }).collect();
        say(&sum, &typed, None)?;
    }
}

/// A text that looks like another option is only ever the value of its field.
#[test]
fn a_value_never_becomes_another_option() {
    let honest = example(calculator("dew-point").unwrap(), UnitSystem::Imperial);
    for text in [
        "--margin=1 °C",
        "-",
        "--",
        "--help",
        "-h",
        "--version",
        "60 % --margin=1 °C",
        "=60 %",
        "60 %\0",
        "60 %\n--slab=1",
    ] {
        let refused = calculate("dew-point", &with(&honest, "rh", &[text]), None, &NoFiles).unwrap_err();
        assert_eq!(refused.field_name(), Some("rh"), "{text}: {refused}");
    }
    for field in ["--air", "air=75 °F --rh", "help", "version", "lang", "json", "", "AIR"] {
        let refused = calculate("dew-point", &with(&honest, field, &["x"]), None, &NoFiles).unwrap_err();
        assert!(refused.to_string().contains("no such field"), "{field}: {refused}");
    }
}

/// Empty fields of a sent form count as nothing, even all of them.
#[test]
fn empty_fields_count_as_nothing() {
    for of in calculators() {
        let filled = of.filled(UnitSystem::Metric);
        let texts = |name: &'static str| ["", filled.first(name).unwrap_or_default(), "  "].map(|text| (name, text));
        let all: FormData = of.form.fields.iter().flat_map(|field| texts(field.name)).collect();
        let json = |typed: &FormData| of.calculate(typed, None, &NoFiles).unwrap().json(Locale::default());
        assert_eq!(json(&all), json(&filled), "{}", of.id());
    }
}
