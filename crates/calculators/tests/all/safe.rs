//! Nothing typed stops the program or becomes anything but the value of its field.

use calculators::{NoFiles, SumForm, Uploads, ask, form, forms, with_units};
use localization::{Lang, Locale, UnitSystem};
use proptest::prelude::*;

/// The whole example, with few members where a forecast would be slow.
fn example(form: &SumForm, unit_system: UnitSystem) -> Vec<(String, Vec<String>)> {
    let mut typed = form.example(unit_system);
    if form.id == "drying" {
        typed.push(("members".to_owned(), vec!["50".to_owned()]));
    }
    typed
}

fn with(mut typed: Vec<(String, Vec<String>)>, field: &str, texts: Vec<String>) -> Vec<(String, Vec<String>)> {
    typed.retain(|(id, _)| id != field);
    typed.push((field.to_owned(), texts));
    typed
}

/// Asks, and says answer or refusal to every reader.
fn say(id: &str, typed: &[(String, Vec<String>)]) -> Result<(), TestCaseError> {
    let files = Uploads(&[("f.csv", b"time,air C,RH\n2026-06-02 13:00,35,20\n")]);
    let answered = ask(id, typed, &files);
    for lang in Lang::ALL {
        for unit_system in UnitSystem::ALL {
            let locale = Locale::new(lang, unit_system);
            match &answered {
                Ok(sum) => {
                    prop_assert!(!sum.text(locale).is_empty());
                    prop_assert_eq!(&sum.json(locale)["sum"], id);
                }
                Err(refused) => {
                    let plain = refused.plain(locale);
                    prop_assert!(!plain.is_empty() && !plain.contains("sum-refused-"), "{}", plain);
                    prop_assert!(!plain.contains("sum-accepts-"), "{}", plain);
                    if let Some(field) = &refused.field {
                        prop_assert!(form(id).is_some_and(|f| f.field(field).is_some()), "{}", field);
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
        let fields: Vec<(&SumForm, &str)> =
            forms().iter().flat_map(|form| form.fields.iter().map(move |field| (form, field.id.as_str()))).collect();
        let (form, field) = fields[which % fields.len()];
        let typed = with(example(form, UnitSystem::Imperial), field, texts);
        say(&form.id, &typed)?;
        say(&form.id, &with_units(&form.id, &typed, UnitSystem::Metric))?;
    }

    #[test]
    fn any_question_at_all_is_answered_or_refused(
        sum in prop_oneof![prop::sample::select(forms().iter().map(|f| f.id.clone()).collect::<Vec<_>>()), any::<String>()],
        pairs in prop::collection::vec((any::<prop::sample::Index>(), any::<Option<String>>(), text()), 0..6),
    ) {
        let typed: Vec<(String, Vec<String>)> = pairs.into_iter().map(|(at, free, text)| {
            let known = form(&sum).map(|form| at.get(&form.fields).id.clone());
            (free.or(known).unwrap_or_default(), vec![text])
        }).collect();
        say(&sum, &typed)?;
    }
}

/// A text that looks like another option is only ever the value of its field.
#[test]
fn a_value_never_becomes_another_option() {
    let honest = example(form("dew-point").unwrap(), UnitSystem::Imperial);
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
        let refused = ask("dew-point", &with(honest.clone(), "rh", vec![text.to_owned()]), &NoFiles).unwrap_err();
        assert_eq!(refused.field.as_deref(), Some("rh"), "{text}: {refused}");
    }
    for field in ["--air", "air=75 °F --rh", "help", "version", "lang", "json", "", "AIR"] {
        let refused = ask("dew-point", &with(honest.clone(), field, vec!["x".to_owned()]), &NoFiles).unwrap_err();
        assert!(refused.plain(Locale::default()).contains("no field"), "{field}: {refused}");
    }
}

/// Empty fields of a sent form count as nothing, even all of them.
#[test]
fn empty_fields_count_as_nothing() {
    for form in forms() {
        let filled = form.example(UnitSystem::Metric);
        let all: Vec<(String, Vec<String>)> = form
            .fields
            .iter()
            .map(|field| {
                let text = filled.iter().find(|(id, _)| *id == field.id).map(|(_, texts)| texts[0].clone());
                (field.id.clone(), vec![String::new(), text.unwrap_or_default(), "  ".to_owned()])
            })
            .collect();
        let json = |typed: &[(String, Vec<String>)]| ask(&form.id, typed, &NoFiles).unwrap().json(Locale::default());
        assert_eq!(json(&all), json(&filled), "{}", form.id);
    }
}
