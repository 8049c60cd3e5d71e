//! The list of limits against the reference file: number by number, with document and grade.

use science::Grade;
use science::chemistry::{Metal, PhFinding, leachate_is_toxic, ph_findings};
use science::limits::{Limit, all};
use units::{Density, Ph};

use crate::reference::rows;

/// The numbers of a limit in the units of the file.
fn numbers(limit: Limit) -> Vec<f64> {
    match limit {
        Limit::SewerPhFloor(ph) => vec![ph.value()],
        Limit::CorrosiveWaste(a, b) | Limit::SurfacePhWindow(a, b) => vec![a.value(), b.value()],
        Limit::ToxicLeachate(_, density) => vec![density.as_milligrams_per_liter()],
        Limit::LeachateWithoutSolids(share) => vec![share.as_percent()],
        Limit::SurfacePhReadings(count, area) | Limit::ProbeCount(count, area) => {
            vec![f64::from(count), area.as_square_feet()]
        }
        Limit::SurfacePhPaper(low, high, step) => vec![low.value(), high.value(), step.value()],
        Limit::ProbeDepth(one, two) => vec![one.as_percent(), two.as_percent()],
        Limit::ProbeWait(a, b) | Limit::DishExposure(a, b) => vec![a.as_hours(), b.as_hours()],
        Limit::DishLimit(a, b) => {
            vec![a.as_pounds_per_thousand_square_feet_day(), b.as_pounds_per_thousand_square_feet_day()]
        }
        Limit::EvaporationAlarm(rate) => vec![rate.as_pounds_per_square_foot_hour()],
        Limit::AboveDewPoint(difference) => vec![difference.as_celsius_degrees()],
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
fn every_limit_stands_in_the_reference_file() {
    let table = rows("regulatory_limits.csv", "item,value,source,grade");
    let ours = all();
    assert_eq!((table.len(), ours.len()), (21, 21));
    for (row, known) in table.iter().zip(&ours) {
        let theirs = numbers_in(&row[1]);
        for number in numbers(known.limit) {
            let found = theirs.iter().any(|n| (n - number).abs() <= 1e-9 * n.abs());
            assert!(found, "{}: {number} is not in {:?}", row[0], row[1]);
        }
        let from_memory = row[3].starts_with("MEMORY");
        assert_eq!(known.source.grade == Grade::FromMemory, from_memory, "{}", row[0]);
        if row[3].contains("secondary") {
            assert_eq!(known.source.grade, Grade::SecondaryCopy, "{}", row[0]);
        }
        assert!(row[2] == "same" || row[2].contains(known.source.document), "{}: {}", row[0], known.source.document);
        if let Limit::ToxicLeachate(metal, _) = known.limit {
            assert_eq!(row[0], format!("TCLP {}", format!("{metal:?}").to_lowercase()));
        }
    }
}

#[test]
fn both_ends_of_corrosive_waste_count() {
    let at = |value| ph_findings(Ph::new(value).expect("a pH"));
    assert_eq!(at(2.0), [PhFinding::BelowSewerFloor, PhFinding::CorrosiveHazardousWaste]);
    assert_eq!(at(2.1), [PhFinding::BelowSewerFloor]);
    assert_eq!(at(5.0), []);
    assert_eq!(at(12.4), []);
    assert_eq!(at(12.5), [PhFinding::CorrosiveHazardousWaste]);
}

#[test]
fn a_leachate_at_the_limit_is_toxic() {
    assert!(leachate_is_toxic(Metal::Chromium, Density::milligrams_per_liter(5.0)));
    assert!(!leachate_is_toxic(Metal::Chromium, Density::milligrams_per_liter(4.99)));
}
