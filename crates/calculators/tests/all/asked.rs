//! A page gets the answers of the command line.

use calculators::{NoFiles, Sum, SumCommand, SumForm, ask, form, forms, run, with_units};
use clap::{CommandFactory, Parser};
use localization::{Lang, Locale, UnitSystem};

/// The command line around the calculations.
#[derive(Debug, Parser)]
#[command(name = "sums")]
struct Line {
    #[command(subcommand)]
    sum: SumCommand,
}

/// A line as a shell splits it: words, or texts in double quotes.
fn split(line: &str) -> Vec<String> {
    let mut words = vec![String::new()];
    let mut quoted = false;
    for c in line.trim().chars() {
        match c {
            '"' => quoted = !quoted,
            ' ' if !quoted => words.push(String::new()),
            c => words.last_mut().unwrap().push(c),
        }
    }
    words.retain(|word| !word.is_empty());
    words
}

/// Every example of the command line's help, as words after `underfoot sums`.
fn examples() -> Vec<Vec<String>> {
    let mut out = Vec::new();
    for sum in Line::command().get_subcommands() {
        let help = sum.get_after_help().unwrap_or_else(|| panic!("{} has no example", sum.get_name())).to_string();
        out.extend(help.split("underfoot sums ").skip(1).map(split));
    }
    out
}

/// The same as fields of a form.
fn as_form(words: &[String]) -> (String, Vec<(String, Vec<String>)>) {
    let form = form(&words[0]).unwrap_or_else(|| panic!("no form {}", words[0]));
    let mut typed: Vec<(String, Vec<String>)> = Vec::new();
    let mut placed = form.fields.iter();
    let mut rest = words[1..].iter();
    while let Some(word) = rest.next() {
        match word.strip_prefix("--") {
            Some("json") => {}
            Some(option) => typed.push((option.replace('-', "_"), vec![rest.next().unwrap().clone()])),
            None => typed.push((placed.next().unwrap().id.clone(), vec![word.clone()])),
        }
    }
    (form.id.clone(), typed)
}

fn json(sum: &Sum) -> Vec<String> {
    let voices =
        Lang::ALL.into_iter().flat_map(|lang| UnitSystem::ALL.map(|unit_system| Locale::new(lang, unit_system)));
    voices.map(|locale| sum.json(locale).to_string()).collect()
}

#[test]
fn every_example_of_the_help_has_the_same_answer_on_a_page() {
    let mut same = 0;
    for words in examples() {
        let line: Vec<String> = words.iter().filter(|word| *word != "--json").cloned().collect();
        // Files of the examples are not there.
        if line.iter().any(|word| word == "--file") {
            continue;
        }
        let command = Line::try_parse_from(std::iter::once("sums".to_owned()).chain(line.clone())).unwrap().sum;
        let expected = run(&command, &NoFiles).unwrap_or_else(|e| panic!("{line:?}: {e}"));
        let (id, typed) = as_form(&line);
        let page = ask(&id, &typed, &NoFiles).unwrap_or_else(|e| panic!("{line:?}: {e}"));
        assert_eq!(json(&page), json(&expected), "{line:?}");
        assert_eq!(page.text(Locale::default()), expected.text(Locale::default()));
        same += 1;
    }
    assert_eq!(same, 18, "examples of the help without a file");
}

#[test]
fn every_form_has_an_example_with_an_answer_in_both_measures() {
    for form in forms() {
        for unit_system in UnitSystem::ALL {
            let sum =
                ask(&form.id, &form.example(unit_system), &NoFiles).unwrap_or_else(|e| panic!("{}: {e}", form.id));
            assert_eq!(sum.id(), form.id);
            let locale = Locale::new(Lang::Es, unit_system);
            assert!(!sum.answers(locale).is_empty() && !sum.cautions(locale).is_empty(), "{}", form.id);
            assert_eq!(sum.title(locale), form.title(locale));
        }
    }
    assert_eq!(forms().len(), 14);
}

/// Every example of a field is taken where it stands: in place of the same field of the whole example,
/// without those it excludes and with those it requires.
#[test]
fn every_example_of_a_field_is_accepted() {
    let mut tried = 0;
    for form in forms() {
        for field in form.fields.iter().filter(|field| !field.takes_file && field.requires != ["file"]) {
            for unit_system in UnitSystem::ALL {
                let sum = ask(&form.id, &beside(form, &field.id, field.example(unit_system), unit_system), &NoFiles);
                sum.unwrap_or_else(|e| panic!("{} {}: {e}", form.id, field.id));
                tried += 1;
            }
        }
    }
    assert_eq!(tried, 2 * 96, "examples of fields");
}

/// The whole example with one field set.
fn beside(form: &SumForm, id: &str, text: &str, unit_system: UnitSystem) -> Vec<(String, Vec<String>)> {
    let field = form.field(id).unwrap();
    let mut typed = form.example(unit_system);
    typed.retain(|(other, _)| other != id && !field.conflicts.contains(other));
    // What is needed together goes together: half of a pair is no question.
    typed.retain(|(other, _)| {
        let needs = &form.field(other).unwrap().requires;
        needs.iter().all(|need| !field.conflicts.contains(need))
    });
    for need in field.requires.iter().filter(|need| typed.iter().all(|(other, _)| other != *need)).collect::<Vec<_>>() {
        typed.push((need.clone(), vec![form.field(need).unwrap().example(unit_system).to_owned()]));
    }
    let also: &[(&str, &str)] = match (form.id.as_str(), id) {
        ("drying", "d1" | "strength") => &[("form", "published")],
        ("drying", "form") => &[],
        ("drying", _) => &[("members", "50")],
        ("ventilate", "molar_mass" | "lel") => {
            &[("molar_mass", "106.17 g/mol"), ("gravity", "0.864"), ("limit", "100 ppm")]
        }
        ("neutralize", "baume" | "strength") => &[("volume", "1 gal")],
        _ => &[],
    };
    typed.push((id.to_owned(), vec![text.to_owned()]));
    for (other, text) in also {
        if typed.iter().all(|(known, _)| known != other) {
            typed.push(((*other).to_owned(), vec![(*text).to_owned()]));
        }
    }
    typed
}

/// Writing down what is usual changes nothing: what the pages tell is what the calculations take.
#[test]
fn the_usual_value_is_the_one_that_is_taken() {
    let mut same = 0;
    for form in forms() {
        for field in
            form.fields.iter().filter(|f| f.usual_text(UnitSystem::Imperial).is_some() && f.requires != ["file"])
        {
            let mut without =
                beside(form, &field.id, field.usual_text(UnitSystem::Imperial).unwrap(), UnitSystem::Imperial);
            let with = ask(&form.id, &without, &NoFiles).unwrap_or_else(|e| panic!("{} {}: {e}", form.id, field.id));
            without.retain(|(id, _)| *id != field.id);
            let without = ask(&form.id, &without, &NoFiles).unwrap();
            let told = |sum: &Sum| sum.json(Locale::default())["results"].to_string();
            let (with, without) = (told(&with), told(&without));
            assert!(alike(&with, &without), "{} {}:\n{with}\n{without}", form.id, field.id);
            same += 1;
        }
    }
    assert_eq!(same, 35, "usual values");
}

/// The same but for the last digits, since °F are not whole °C.
fn alike(one: &str, other: &str) -> bool {
    let parts = |text: &str| text.split([':', ',', '{', '}', '[', ']']).map(str::to_owned).collect::<Vec<_>>();
    let (one, other) = (parts(one), parts(other));
    one.len() == other.len()
        && one.iter().zip(&other).all(|(a, b)| match (a.parse::<f64>(), b.parse::<f64>()) {
            (Ok(a), Ok(b)) => (a - b).abs() <= 1e-3 * a.abs().max(b.abs()).max(1.0),
            _ => a == b,
        })
}

#[test]
fn a_bare_number_takes_the_unit_that_the_page_shows() {
    let bare = super::typed(&[("air", " 75"), ("rh", "60"), ("slab", "20 °C"), ("elevation", "600")]);
    let full = with_units("dew-point", &bare, UnitSystem::Imperial);
    assert_eq!(full, super::typed(&[("air", "75 °F"), ("rh", "60 %"), ("slab", "20 °C"), ("elevation", "600 ft")]));
    let metric = with_units("dew-point", &bare, UnitSystem::Metric);
    assert_eq!((metric[0].1[0].as_str(), metric[3].1[0].as_str()), ("75 °C", "600 m"));
    // It could be a share or percent: the calculation asks back.
    let share = with_units("dew-point", &super::typed(&[("rh", "0.6")]), UnitSystem::Metric);
    assert_eq!(share, super::typed(&[("rh", "0.6")]));
    // A plain ratio stays one.
    let ratio = super::typed(&[("wc", "0.5"), ("seed", "7"), ("days", "28,90")]);
    assert_eq!(with_units("drying", &ratio, UnitSystem::Metric), ratio);
    assert_eq!(with_units("no-such", &ratio, UnitSystem::Metric), ratio);
}

/// What was given is told back in the person's writing and in the reader's units.
#[test]
fn inputs_are_told_as_typed_and_as_understood() {
    let sum = super::asked("dew-point", &[("air", "24 °C"), ("rh", "60")]).unwrap();
    let inputs = sum.inputs(Locale::default());
    assert_eq!(
        (inputs[0].name, inputs[0].value.as_str(), inputs[0].understood.as_str(), inputs[0].assumed),
        ("air", "24 °C", "75.2 °F", false)
    );
    let pressure = inputs.iter().find(|input| input.name == "pressure").unwrap();
    assert_eq!((pressure.value.as_str(), pressure.assumed), ("29.921 inHg", true));
    let formula = sum.formula(Locale::default());
    assert_eq!(
        (formula.id, formula.grade.words()),
        ("hyland-wexler", sum.json(Locale::default())["grade"].as_str().unwrap())
    );
    assert!(formula.cited.contains(&formula.source) && formula.cited.contains(&formula.grade_said));
}
