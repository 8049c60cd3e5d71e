//! The forms are those of the command line.

use calculators::{Keyboard, NoFiles, SumCommand, ask, form, forms};
use clap::Subcommand;
use localization::{Lang, Locale, UnitSystem};

#[test]
fn every_option_of_the_command_line_is_a_field() {
    let command = SumCommand::augment_subcommands(clap::Command::new("sums"));
    let mut fields = 0;
    for sum in command.get_subcommands() {
        let form = form(sum.get_name()).unwrap();
        let options: Vec<&str> = sum.get_arguments().map(|arg| arg.get_id().as_str()).collect();
        let ids: Vec<&str> = form.fields.iter().map(|field| field.id.as_str()).collect();
        assert_eq!(ids, options, "{}", form.id);
        fields += ids.len();
    }
    assert_eq!((forms().len(), fields), (14, 106));
}

#[test]
fn fields_tell_what_they_take() {
    let field = |sum: &str, id: &str| form(sum).unwrap().field(id).unwrap();
    assert!(field("dew-point", "air").required && !field("dew-point", "slab").required);
    assert_eq!(field("dew-point", "pressure").conflicts, ["elevation"]);
    assert_eq!(field("dew-point", "elevation").conflicts, ["pressure"]);
    assert_eq!(field("dew-point", "margin").requires, ["slab"]);
    assert_eq!(field("purge", "from").requires, ["to"]);
    assert_eq!(field("evaporation", "year").requires, ["file"]);
    assert!(field("evaporation", "file").takes_file && !field("evaporation", "column").takes_file);
    assert!(field("evaporation", "column").repeatable && field("drying", "reading").repeatable);
    assert!(!field("drying", "days").repeatable);
    assert_eq!(field("drying", "days").default.as_deref(), Some("28,90,180,365"));
    assert_eq!(field("drying", "sides").choices, ["1", "2"]);
    assert_eq!(field("evaporation", "form").choices, ["menzel", "uno"]);
    assert_eq!(field("dew-point", "air").keyboard, Keyboard::Decimal);
    assert_eq!(field("joints", "length").keyboard, Keyboard::Text, "feet and inches");
    assert_eq!(field("equivalent-age", "history").keyboard, Keyboard::Text);
    assert_eq!(field("dew-point", "air").unit(UnitSystem::Metric), Some("°C"));
    assert_eq!(field("drying", "wc").unit(UnitSystem::Metric), None);
    assert!(field("color-difference", "first").required);
    assert!(forms().iter().flat_map(|form| &form.fields).all(|field| !field.flag));
    let files: usize = forms().iter().flat_map(|form| &form.fields).filter(|field| field.takes_file).count();
    assert_eq!(files, 2);
}

#[test]
fn every_form_shows_what_it_cannot_do_without() {
    for form in forms() {
        assert!(form.fields.iter().all(|field| field.main || !field.required), "{}", form.id);
        let shown = form.fields.iter().filter(|field| field.main).count();
        assert!((2..=8).contains(&shown), "{} shows {shown} fields", form.id);
    }
}

/// Labels, choices and one-line purposes in both languages; no key is shown bare.
#[test]
fn every_name_is_in_both_languages() {
    let mut names = 0;
    for form in forms() {
        let voices = Lang::ALL.map(|lang| Locale::new(lang, UnitSystem::Imperial));
        let mut both = vec![voices.map(|locale| form.title(locale)), voices.map(|locale| form.about(locale))];
        for field in &form.fields {
            both.push(voices.map(|locale| field.label(locale)));
            both.extend(field.choices.iter().map(|choice| voices.map(|locale| field.choice_label(choice, locale))));
            if field.usual_text(UnitSystem::Imperial).is_none() {
                both.extend(field.usual(voices[0]).map(|usual| [usual, field.usual(voices[1]).unwrap()]));
            }
            assert!(!field.example(UnitSystem::Imperial).is_empty() && !field.example(UnitSystem::Metric).is_empty());
        }
        for [english, spanish] in both {
            assert!(!english.contains("sum-") && !english.contains("value-"), "{}: {english}", form.id);
            assert_ne!(english, spanish, "{}", form.id);
            names += 1;
        }
        let labels: std::collections::BTreeSet<String> = form.fields.iter().map(|f| f.label(voices[1])).collect();
        assert_eq!(labels.len(), form.fields.len(), "{}: two fields with one label", form.id);
    }
    assert!(names > 140, "only {names} names");
}

/// What a help tells as usual, a page tells too.
#[test]
fn what_the_help_calls_usual_is_told_on_a_page() {
    let command = SumCommand::augment_subcommands(clap::Command::new("sums"));
    let mut told = 0;
    for sum in command.get_subcommands() {
        for arg in sum.get_arguments() {
            let help = arg.get_help().map(ToString::to_string).unwrap_or_default();
            let field = form(sum.get_name()).unwrap().field(arg.get_id().as_str()).unwrap();
            let usual = help.contains("[default: ") || !arg.get_default_values().is_empty();
            assert_eq!(field.usual(Locale::default()).is_some(), usual, "{} {}", sum.get_name(), field.id);
            told += usize::from(usual);
        }
    }
    assert_eq!(told, 41);
}

/// A name that an answer calls an input by is a field, so that a page can tie the two.
#[test]
fn every_input_of_an_answer_is_a_field() {
    for form in forms() {
        let sum = ask(&form.id, &form.example(UnitSystem::Metric), &NoFiles).unwrap();
        for input in sum.inputs(Locale::default()) {
            assert!(form.field(input.name).is_some(), "{}: {}", form.id, input.name);
        }
    }
}
