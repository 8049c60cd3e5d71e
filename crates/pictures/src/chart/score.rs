//! How far a slab is from one color, photograph by photograph over days.

use jiff::civil::Date;

use super::axes::Axes;
use super::ticks::{decimals, round_dates, round_numbers};
use crate::boxes::Box2;
use crate::day::{day, day_year, days_between};
use crate::look::{Drawing, Look, Table};
use crate::svg::{Anchor, CEMENT, INK, IRON, Svg};

/// Scores over days.
#[derive(Debug, Clone, PartialEq)]
pub struct ScoreChart {
    /// Title, language, prefix of ids.
    pub look: Look,
    /// Day and score in ΔE00, earliest first; a photograph without a score has none.
    pub points: Vec<(Date, Option<f64>)>,
    /// Below this score a photograph can say "one color".
    pub even_below: f64,
    /// From this score on it can say "patchy".
    pub patchy_from: f64,
}

/// Draws the scores with the two limits.
#[must_use]
pub fn score_chart(chart: &ScoreChart) -> Drawing {
    let locale = chart.look.locale;
    let mut svg = Svg::new(&chart.look.prefix);
    let first = chart.points.first().map_or(Date::ZERO, |(date, _)| *date);
    let along = |date: Date| f64::from(days_between(first, date));
    let last = chart.points.iter().map(|(date, _)| along(*date)).fold(1.0, f64::max);
    let highest = chart.points.iter().filter_map(|(_, score)| *score).fold(chart.patchy_from, f64::max);
    let plot = Box2 { left: 46.0, top: 36.0, right: chart.look.width - 12.0, bottom: 190.0 };
    let axes = Axes { width: chart.look.width, plot, x: (-0.03 * last, last * 1.03), y: (0.0, highest * 1.15) };
    let scores = round_numbers(0.0, highest * 1.15, 5);
    let ticks: Vec<(f64, String)> = scores.iter().map(|s| (*s, locale.number(*s, decimals(&scores)))).collect();
    axes.upright(&mut svg, &ticks, &locale.message("pic-score-axis", &[]), 0.0);
    let limits = [
        (chart.even_below, locale.message("pic-score-even", &[])),
        (chart.patchy_from, locale.message("pic-score-patchy", &[])),
    ];
    axes.named_lines(&mut svg, &limits, Anchor::End, &[]);
    let scored: Vec<_> =
        chart.points.iter().filter_map(|(date, score)| Some(axes.at(along(*date), (*score)?))).collect();
    if scored.len() > 1 {
        svg.stroke(&scored, "p-median", (INK, 1.6), "");
    }
    for at in scored {
        svg.circle(at, 4.5, "p-reading", IRON, ("#ffffff", 1.2));
    }
    // A photograph without a score is told where it stands in time, as a hollow mark on the ground line.
    for (date, _) in chart.points.iter().filter(|(_, score)| score.is_none()) {
        svg.circle((axes.x_at(along(*date)), plot.bottom), 4.5, "p-missing", "#ffffff", (CEMENT, 1.6));
    }
    let dates = round_dates(first, last.ceil() as i32, 6);
    let ticks: Vec<(f64, String)> = dates.iter().map(|d| (along(*d), day(locale, *d))).collect();
    axes.level(&mut svg, &ticks, 19.0);
    let said =
        |score: Option<f64>| score.map_or_else(|| locale.message("pic-score-none", &[]), |s| locale.number(s, 1));
    let rows = chart.points.iter().map(|(date, score)| vec![day_year(locale, *date), said(*score)]).collect();
    let sentences = match chart.points.last() {
        Some((date, score)) => vec![
            locale
                .message("pic-score-last", &[("date", day_year(locale, *date).into()), ("score", said(*score).into())]),
        ],
        None => Vec::new(),
    };
    Drawing {
        svg: svg.finish(
            (chart.look.width, plot.bottom + 30.0),
            &chart.look.title,
            &locale.message("pic-score-desc", &[]),
            "",
        ),
        sentences,
        table: Table { head: vec![locale.message("pic-date", &[]), locale.message("pic-score-axis", &[])], rows },
    }
}

#[cfg(test)]
mod tests {
    use jiff::civil::date;
    use localization::Locale;

    use super::*;

    #[test]
    fn every_photograph_is_told_and_those_with_a_score_are_drawn() {
        let points = vec![(date(2026, 3, 2), Some(4.0)), (date(2026, 3, 5), None), (date(2026, 3, 9), Some(1.2))];
        let look = Look::new("s", "Scores", Locale::default());
        let drawing = score_chart(&ScoreChart { look, points, even_below: 1.5, patchy_from: 2.5 });
        assert_eq!(drawing.table.rows.len(), 3);
        assert_eq!(drawing.svg.matches("p-reading").count(), 2);
        assert_eq!(drawing.svg.matches("p-missing").count(), 1);
        assert!(drawing.sentences[0].contains("1.2"), "{:?}", drawing.sentences);
    }

    #[test]
    fn nothing_to_draw_is_drawn_without_a_fall() {
        let look = Look::new("s", "Scores", Locale::default());
        let drawing = score_chart(&ScoreChart { look, points: Vec::new(), even_below: 1.5, patchy_from: 2.5 });
        assert!(drawing.table.rows.is_empty() && drawing.svg.contains("<svg"));
    }
}
