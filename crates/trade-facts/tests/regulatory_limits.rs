//! The public limits against the reference file: number by number, and no surer than it is.

use std::path::Path;

use trade_facts::{Fact, Grade, Measured, Trade, Which};
use units::TemperatureDifference;

fn fact(id: &str) -> &'static Fact {
    Trade::built_in().limit(id).unwrap_or_else(|| panic!("no limit {id}"))
}

/// The facts of a row, each with its numbers in the units of the file.
fn ours(item: &str) -> Vec<(&'static Fact, Vec<f64>)> {
    let number = |id: &str| {
        let fact = fact(id);
        let numbers = [Which::Usual, Which::Low, Which::High].into_iter().filter_map(|which| fact.amount(which));
        // A window "below and above" is written with a sign in the facts, without one in the file.
        (fact, numbers.chain(fact.per).map(f64::abs).collect::<Vec<f64>>())
    };
    let percent = |id: &str| {
        let (fact, numbers) = number(id);
        (fact, numbers.into_iter().map(|share| share * 100.0).collect())
    };
    match item {
        "POTW discharge pH" => vec![number("sewer-ph-min")],
        "RCRA corrosivity D002" => vec![number("waste-ph-low"), number("waste-ph-high")],
        "TCLP test" => vec![number("leachate-without-solids")],
        "D4262 pH readings" => vec![number("ph-readings-after-rinse")],
        "D4262 paper" => vec![number("ph-paper-range"), number("ph-paper-step")],
        "pH acceptance after acid etch" => vec![number("ph-against-rinse-water")],
        "RH test depth" => vec![percent("humidity-probe-depth-one-side"), percent("humidity-probe-depth-two-sides")],
        "RH test wait" => vec![number("humidity-equilibrate"), number("humidity-equilibrate-older")],
        "RH test count" => vec![number("humidity-tests-first"), number("humidity-tests-further")],
        "MVER exposure" => vec![number("emission-dish-hours")],
        "MVER usual limit" => vec![number("emission-flooring")],
        "Evaporation threshold" => vec![number("evaporation-alarm")],
        "Surface over dew point" => {
            let spread = fact("dew-point-spread");
            let difference: TemperatureDifference = spread.value_as().expect("a difference");
            vec![(spread, vec![difference.as_celsius_degrees()])]
        }
        metal => vec![number(&format!("{}-leachate", metal.strip_prefix("TCLP ").expect("a metal")))],
    }
}

/// The numbers in a text, leaving out digits that belong to a word (`ft2`, `F2170`).
fn numbers_in(text: &str) -> Vec<f64> {
    let mut found = Vec::new();
    let mut word = String::new();
    let mut after_letter = false;
    for c in text.chars().chain([' ']) {
        if c.is_ascii_digit() || (c == '.' && !word.is_empty()) {
            word.push(c);
            continue;
        }
        if !word.is_empty() && !after_letter {
            found.extend(word.trim_end_matches('.').parse::<f64>().ok());
        }
        word.clear();
        after_letter = c.is_alphabetic();
    }
    found
}

#[test]
fn every_row_of_the_reference_file_is_a_fact() {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../reference/physics/regulatory_limits.csv");
    let mut reader = csv::ReaderBuilder::new().comment(Some(b'#')).from_path(path).expect("the reference file");
    assert_eq!(reader.headers().expect("a header").iter().collect::<Vec<_>>(), ["item", "value", "source", "grade"]);
    let rows: Vec<csv::StringRecord> = reader.records().map(|row| row.expect("a readable row")).collect();
    assert_eq!(rows.len(), 21);
    for row in &rows {
        let theirs = numbers_in(&row[1]);
        for (fact, numbers) in ours(&row[0]) {
            assert!(!numbers.is_empty(), "{}", fact.id);
            for number in numbers {
                // The file says 3 °C, the fact 5.4 °F: equal but for the last digit.
                let found = theirs.iter().any(|n| (n - number).abs() <= 1e-9 * n.abs());
                assert!(found, "{}: {number} is not in {:?}", fact.id, &row[1]);
            }
            let surest = match &row[3] {
                grade if grade.starts_with("MEMORY") => Grade::FromMemory,
                grade if grade.contains("secondary") => Grade::SecondaryCopy,
                _ => Grade::Verified,
            };
            assert!(fact.grade >= surest, "{}: {} in the facts, {:?} in the file", fact.id, fact.grade, &row[3]);
        }
    }
}
