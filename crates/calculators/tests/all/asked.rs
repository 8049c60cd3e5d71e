//! A page gets the answers of the command line.

use calculators::{Calculation, Calculator, NoFiles, calculate, calculators, usual_text};
use form_schema::{FormData, InputKind};
use localization::{Lang, Locale, UnitSystem};

use crate::without;

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

/// An example of the command line as fields.
fn as_form(of: &Calculator, line: &str) -> FormData {
    let mut typed = FormData::new();
    let mut placed = of.places.iter();
    let words = split(line);
    let mut rest = words.iter();
    while let Some(word) = rest.next() {
        match word.strip_prefix("--") {
            Some("json") => {}
            Some(option) => typed.push(option.replace('-', "_"), rest.next().unwrap()),
            None => typed.push(*placed.next().unwrap(), word),
        }
    }
    typed
}

fn json(found: &Calculation) -> Vec<String> {
    let voices =
        Lang::ALL.into_iter().flat_map(|lang| UnitSystem::ALL.map(|unit_system| Locale::new(lang, unit_system)));
    voices.map(|locale| found.json(locale).to_string()).collect()
}

#[test]
fn every_example_of_the_help_has_the_same_answer_on_a_page() {
    let mut same = 0;
    for of in calculators() {
        assert!(!of.lines.is_empty(), "{} has no example", of.id());
        // Files of the examples are not there.
        for line in of.lines.iter().filter(|line| !line.contains("--file")) {
            let typed = as_form(of, line);
            let expected = of.calculate(&typed, None, &NoFiles).unwrap_or_else(|e| panic!("{line}: {e}"));
            for unit_system in UnitSystem::ALL {
                let page = of.calculate(&typed, Some(unit_system), &NoFiles).unwrap();
                assert_eq!(json(&page), json(&expected), "{line}");
                assert_eq!(page.text(Locale::default()), expected.text(Locale::default()));
            }
            same += 1;
        }
    }
    assert_eq!(same, 19, "examples of the help without a file");
}

#[test]
fn every_calculator_has_an_example_with_an_answer_in_both_measures() {
    for of in calculators() {
        for unit_system in UnitSystem::ALL {
            let found = of.calculate(&of.filled(unit_system), None, &NoFiles);
            let found = found.unwrap_or_else(|e| panic!("{}: {e}", of.id()));
            assert_eq!(found.id(), of.id());
            let locale = Locale::new(Lang::Es, unit_system);
            assert!(!found.answers(locale).is_empty() && !found.cautions(locale).is_empty(), "{}", of.id());
            assert_eq!(found.title(locale), of.title(locale));
        }
    }
    assert_eq!(calculators().len(), 15);
}

/// Every example of a field is taken where it stands: in place of the same field of the whole example,
/// without those it excludes and with those it requires.
#[test]
fn every_example_of_a_field_is_accepted() {
    let mut tried = 0;
    for of in calculators() {
        for field in of.form.fields.iter().filter(|field| !of_file(of, field.name)) {
            for unit_system in UnitSystem::ALL {
                let example = field.example(unit_system);
                let found = of.calculate(&beside(of, field.name, example, unit_system), Some(unit_system), &NoFiles);
                found.unwrap_or_else(|e| panic!("{} {}: {e}", of.id(), field.name));
                tried += 1;
            }
        }
    }
    assert_eq!(tried, 2 * 98, "examples of fields");
}

/// It is a file or has a use beside one only.
fn of_file(of: &Calculator, name: &str) -> bool {
    name == "file" || of.form.needed_by(name).iter().any(|need| need.input == InputKind::File)
}

/// The whole example with one field set.
fn beside(of: &Calculator, id: &str, text: &str, unit_system: UnitSystem) -> FormData {
    let excludes = |name: &str| of.form.excluded_by(id).iter().any(|other| other.name == name);
    let mut typed = of.filled(unit_system);
    // What is needed together goes together: half of a pair is no question.
    for other in of.form.fields {
        if other.name == id
            || excludes(other.name)
            || of.form.needed_by(other.name).iter().any(|need| excludes(need.name))
        {
            typed = without(&typed, other.name);
        }
    }
    for need in of.form.needed_by(id) {
        if typed.first(need.name).is_none() {
            typed.push(need.name, need.example(unit_system));
        }
    }
    let also: &[(&str, &str)] = match (of.id(), id) {
        ("drying", "d1" | "strength") => &[("form", "published")],
        ("drying", "form") => &[],
        ("drying", _) => &[("members", "50")],
        ("ventilate", "molar_mass" | "lel") => {
            &[("molar_mass", "106.17 g/mol"), ("gravity", "0.864"), ("limit", "100 ppm")]
        }
        ("neutralize", "baume" | "strength") => &[("volume", "1 gal")],
        _ => &[],
    };
    typed.push(id, text);
    for (other, text) in also {
        if typed.first(other).is_none() {
            typed.push(*other, *text);
        }
    }
    typed
}

/// Writing down what is usual changes nothing: what the pages tell is what the calculations take.
#[test]
fn the_usual_value_is_the_one_that_is_taken() {
    let mut same = 0;
    for of in calculators() {
        for field in of.form.fields.iter().filter(|field| !of_file(of, field.name)) {
            let Some(usual) = usual_text(field, UnitSystem::Imperial) else { continue };
            let typed = beside(of, field.name, usual, UnitSystem::Imperial);
            let answer = |typed: &FormData| {
                let found = of.calculate(typed, None, &NoFiles);
                let found = found.unwrap_or_else(|e| panic!("{} {}: {e}", of.id(), field.name));
                found.json(Locale::default())["results"].to_string()
            };
            let (with, without) = (answer(&typed), answer(&without(&typed, field.name)));
            assert!(alike(&with, &without), "{} {}:\n{with}\n{without}", of.id(), field.name);
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

/// What an answer says was typed.
fn told(id: &str, pairs: &[(&str, &str)], usual: UnitSystem) -> Vec<(&'static str, String)> {
    let found = calculate(id, &super::typed(pairs), Some(usual), &NoFiles).unwrap_or_else(|e| panic!("{pairs:?}: {e}"));
    found.inputs(Locale::default()).into_iter().map(|input| (input.name, input.value)).collect()
}

#[test]
fn a_bare_number_takes_the_unit_that_the_page_shows() {
    let bare = [("air", " 75"), ("rh", "60"), ("slab", "20 °C"), ("elevation", "600")];
    let imperial = told("dew-point", &bare, UnitSystem::Imperial);
    for said in [("air", "75 °F"), ("rh", "60 %"), ("slab", "20 °C"), ("elevation", "600 ft")] {
        assert!(imperial.contains(&(said.0, said.1.to_owned())), "{said:?} {imperial:?}");
    }
    let metric = told("dew-point", &[("air", "24"), bare[1], bare[3]], UnitSystem::Metric);
    assert!(metric.contains(&("air", "24 °C".to_owned())) && metric.contains(&("elevation", "600 m".to_owned())));
    // A plain ratio stays one.
    let ratio =
        [("thickness", "100"), ("wc", "0.5"), ("rh", "50"), ("seed", "7"), ("days", "28,90"), ("members", "50")];
    let ratio = told("drying", &ratio, UnitSystem::Metric);
    assert!(ratio.contains(&("wc", "0.5".to_owned())) && ratio.contains(&("days", "28,90".to_owned())));
}

/// A bare number up to one could be a share or percent: both shells ask back. A larger one is percent on a page,
/// which shows the sign, and lacks it on a command line.
#[test]
fn a_bare_number_never_changes_its_meaning_at_one() {
    let asked = |solids: &str, usual: Option<UnitSystem>| {
        calculate("film", &super::typed(&[("solids", solids), ("wet", "8 mil")]), usual, &NoFiles)
    };
    for bare in ["0.25", "1", "1.0"] {
        for usual in [None, Some(UnitSystem::Imperial), Some(UnitSystem::Metric)] {
            let refused = asked(bare, usual).unwrap_err();
            assert_eq!(refused.field_name(), Some("solids"), "{bare} {usual:?}: {refused}");
            assert!(refused.to_string().contains("25 %"), "{refused}");
        }
    }
    for bare in ["1.4", "25"] {
        let refused = asked(bare, None).unwrap_err().to_string();
        assert!(refused.contains("--solids") && refused.contains("25 %"), "{refused}");
        let same = asked(&format!("{bare} %"), None).unwrap();
        assert_eq!(json(&asked(bare, Some(UnitSystem::Metric)).unwrap()), json(&same));
    }
}

/// What was given is told back in the person's writing and in the reader's units.
#[test]
fn inputs_are_told_as_typed_and_as_understood() {
    let sum = super::asked("dew-point", &[("air", "24 °C"), ("rh", "60 %")]).unwrap();
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
