//! What is said beside the drawings, and labels that keep clear of each other.

use jiff::civil::date;
use localization::{Lang, Locale, UnitSystem};
use pictures::{Happened, Milestone, drying_chart, evaporation_chart, time_line};
use proptest::prelude::*;
use roxmltree::Document;

use crate::samples;

#[test]
fn the_time_line_in_words_holds_every_row() {
    let sample = samples::time_line_sample(Locale::default());
    let drawing = time_line(&sample);
    // Nine events, one milestone, today, two forecasts.
    assert_eq!(drawing.table.rows.len(), 13);
    assert_eq!(drawing.sentences.len(), 13);
    let told = |text: &str| drawing.sentences.iter().any(|s| s == text);
    assert!(
        told("Mar 9, 2026: trouble: Red chalk line snapped across the shop by the framer"),
        "{:?}",
        drawing.sentences
    );
    assert!(told("May 2, 2026: Dry enough for the sealer: 1 in 10 by Apr 12, half by May 2, 9 in 10 by June 10"));
    assert!(told("Apr 3, 2026: today"));
    let days: Vec<&String> = drawing.table.rows.iter().map(|r| &r[0]).collect();
    assert_eq!((days[0].as_str(), days[12].as_str()), ("Feb 23, 2026", "May 20, 2026"));
}

#[test]
fn the_drying_chart_says_when_limits_are_reached() {
    let drawing = drying_chart(&samples::drying(Locale::default()));
    // Worked by hand from the sample's falls 60 + 40·exp(−d/s) on its days, every fourth:
    // at or below 85 % from d = s·ln 1.6 on: 44.6 → day 48 (Apr 12), 70.5 → day 72 (May 6);
    // at or below 75 % from d = s·ln(8/3): 93.2 → day 96 (May 30), 147 → beyond day 120.
    let told = |text: &str| drawing.sentences.iter().any(|s| s == text);
    let first = "acrylic, water: 85 %: half of the slabs are there by Apr 12, 2026, 9 in 10 by May 6, 2026.";
    assert!(told(first), "{:?}", drawing.sentences);
    assert!(told("epoxy: 75 %: half of the slabs are there by May 30, 2026; 9 in 10 are not within the forecast."));
    assert!(told("Last reading, Apr 19, 2026: 83.5 %."));
    let readings = drawing.table.rows.iter().filter(|r| r[1] == "reading").collect::<Vec<_>>();
    assert_eq!(readings[0][2..], ["90 %", "92 %", "94 %"]);
}

#[test]
fn the_evaporation_chart_counts_hours_against_each_line() {
    let drawing = evaporation_chart(&samples::evaporation(Locale::new(Lang::En, UnitSystem::Imperial)));
    assert_eq!(drawing.table.rows.len(), 24);
    // The sample is 0.02 + 0.18·sin(15°·i/2), i = 0..23 without 20; at or over 0.1 when the sine is at
    // least 4/9, that is from 26.4° to 153.6°: i = 4..20, of which 20 is not known.
    let told = |text: &str| drawing.sentences.iter().any(|s| s == text);
    assert!(told("watch: 0.1 lb/ft² per hour: 16 hours at it or over."), "{:?}", drawing.sentences);
    assert!(told("1 hour has no reading."));
}

/// The words of the rows: left edge, base line, size, text.
fn words_of(svg: &str) -> Vec<(f64, f64, f64, String)> {
    let document = Document::parse(svg).expect("well-formed");
    let rows = document.descendants().filter(|n| n.attribute("class").is_some_and(|c| c.starts_with("p-row")));
    rows.flat_map(|row| row.descendants().filter(|n| n.tag_name().name() == "text").collect::<Vec<_>>())
        .map(|n| {
            let number = |name: &str| n.attribute(name).and_then(|v| v.parse::<f64>().ok()).expect(name);
            (number("x"), number("y"), number("font-size"), n.text().unwrap_or_default().to_owned())
        })
        .collect()
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(64))]
    #[test]
    fn rows_of_the_time_line_never_lie_on_each_other(
        days in proptest::collection::vec((0..200_i32, "[a-z ]{1,60}", any::<bool>()), 0..40),
        today in 0..260_i32,
    ) {
        let on = |d: i32| date(2026, 2, 23).checked_add(jiff::Span::new().days(i64::from(d))).expect("a near date");
        let mut sample = samples::time_line_sample(Locale::default());
        sample.today = on(today);
        sample.happened = days.iter().map(|(d, label, trouble)| {
            Happened { on: on(*d), label: label.clone(), trouble: *trouble, id: None }
        }).collect();
        sample.milestones = vec![Milestone { on: on(28), label: "28 days".to_owned() }; 3];
        let svg = time_line(&sample).svg;
        crate::frame::sound(&svg, "line");
        let words = words_of(&svg);
        for (at, a) in words.iter().enumerate() {
            for b in &words[at + 1..] {
                // Beside each other (date and words), or a base line apart by at least the letters.
                let beside = a.0 != b.0 && (a.1 - b.1).abs() < 2.0;
                let apart = (a.1 - b.1).abs() >= a.2.min(b.2) - 0.5;
                prop_assert!(beside || apart, "{a:?} on {b:?}");
            }
        }
    }
}
