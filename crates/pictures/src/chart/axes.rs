//! The frame of a chart: from values to units of the drawing.

use crate::boxes::{Box2, Xy};
use crate::lettering::{DOWN, SMALL, TALL, fitted, width};
use crate::spread::{Wish, apart};
use crate::svg::{Anchor, CEMENT, INK, Letters, PALE, Svg};

/// The part of a chart with the curves, and the values at its edges.
pub(super) struct Axes {
    /// Of the whole chart.
    pub(super) width: f64,
    pub(super) plot: Box2,
    pub(super) x: (f64, f64),
    pub(super) y: (f64, f64),
}

impl Axes {
    pub(super) fn x_at(&self, value: f64) -> f64 {
        let (low, high) = self.x;
        let share = if high > low { ((value - low) / (high - low)).clamp(0.0, 1.0) } else { 0.5 };
        self.plot.left + share * self.plot.width()
    }

    pub(super) fn y_at(&self, value: f64) -> f64 {
        let (low, high) = self.y;
        let share = if high > low { ((value - low) / (high - low)).clamp(0.0, 1.0) } else { 0.5 };
        self.plot.bottom - share * self.plot.height()
    }

    pub(super) fn at(&self, x: f64, y: f64) -> Xy {
        (self.x_at(x), self.y_at(y))
    }

    /// The base line of a row of lettering above the plot.
    fn row(&self, row: f64) -> f64 {
        self.plot.top - 9.0 - (TALL + 2.0) * row
    }

    /// Level lines with their numbers at the left, and the name of the axis so many rows above the plot: higher than
    /// the names of upright lines, which would cross it.
    pub(super) fn upright(&self, svg: &mut Svg, ticks: &[(f64, String)], name: &str, row: f64) {
        svg.text((4.0, self.row(row)), Letters::new(SMALL), name);
        for (value, words) in ticks {
            let y = self.y_at(*value);
            svg.stroke(&[(self.plot.left, y), (self.plot.right, y)], "p-grid", (PALE, 0.8), "");
            svg.text((self.plot.left - 5.0, y + DOWN), Letters::new(SMALL).at(Anchor::End), words);
        }
    }

    /// The ground line with short strokes and words under it; words that would touch are left out.
    pub(super) fn level(&self, svg: &mut Svg, ticks: &[(f64, String)], down: f64) {
        let y = self.plot.bottom;
        svg.stroke(&[(self.plot.left, y), (self.plot.right, y)], "p-axis", (INK, 1.2), "");
        let mut used = f64::NEG_INFINITY;
        for (value, words) in ticks {
            let x = self.x_at(*value);
            svg.stroke(&[(x, y), (x, y + 4.0)], "p-axis", (INK, 1.0), "");
            let half = width(words, SMALL) / 2.0;
            let middle = x.clamp(half + 2.0, self.width - half - 2.0);
            if middle - half > used + 6.0 {
                svg.text((middle, y + down), Letters::new(SMALL).at(Anchor::Middle), words);
                used = middle + half;
            }
        }
    }

    /// Level lines with names, dashed; the names stand at the end chosen, or beside the upright lines at the places
    /// given, and are pushed apart.
    pub(super) fn named_lines(&self, svg: &mut Svg, lines: &[(f64, String)], anchor: Anchor, upright: &[f64]) {
        let mut sorted: Vec<&(f64, String)> = lines.iter().collect();
        sorted.sort_by(|a, b| b.0.total_cmp(&a.0));
        let wishes: Vec<Wish> =
            sorted.iter().map(|(v, _)| Wish { at: self.y_at(*v) - 9.0, room: TALL + 1.0 }).collect();
        let places = apart(&wishes, self.plot.top - 6.0);
        for (value, _) in &sorted {
            let y = self.y_at(*value);
            let ends = [(self.plot.left, y), (self.plot.right, y)];
            svg.stroke(&ends, "p-limit", (INK, 1.5), " stroke-dasharray=\"7 3\"");
        }
        for ((_, words), y) in sorted.iter().zip(places) {
            let words = fitted(words, SMALL, self.plot.width() - 8.0);
            let left = self.beside(width(&words, SMALL), anchor, upright);
            svg.text((left, y + DOWN), Letters::new(SMALL).halo(), &words);
        }
    }

    /// Where words so wide begin: at the end chosen, else where no upright line goes through them, if there is such a
    /// place.
    fn beside(&self, wide: f64, anchor: Anchor, upright: &[f64]) -> f64 {
        let (first, last) = (self.plot.left + 4.0, self.plot.right - 2.0 - wide);
        let lines: Vec<f64> = upright.iter().map(|value| self.x_at(*value)).collect();
        let ends = if anchor == Anchor::End { [last, first] } else { [first, last] };
        let near = lines.iter().flat_map(|x| [x + 5.0, x - 5.0 - wide]);
        let clear = |left: &f64| {
            (first - 0.01..=last.max(first) + 0.01).contains(left)
                && !lines.iter().any(|x| (left - 3.0..left + wide + 3.0).contains(x))
        };
        ends.into_iter().chain(near).find(clear).unwrap_or(ends[0])
    }

    /// An upright line with its name above the plot, so many rows up; the name keeps off the other upright lines.
    pub(super) fn moment(&self, svg: &mut Svg, x: f64, words: &str, (row, bold): (f64, bool), upright: &[f64]) {
        let others: Vec<f64> = upright.iter().filter(|value| **value != x).map(|value| self.x_at(*value)).collect();
        let x = self.x_at(x);
        let top = self.row(row);
        let (ink, wide, dash) = if bold { (INK, 2.4, "") } else { (CEMENT, 1.4, " stroke-dasharray=\"2 3\"") };
        svg.stroke(
            &[(x, top + 4.0), (x, self.plot.bottom)],
            if bold { "p-today" } else { "p-rule" },
            (ink, wide),
            dash,
        );
        let letters = Letters::new(SMALL).halo();
        let half = width(words, SMALL) * if bold { 0.56 } else { 0.5 };
        let within = |middle: f64| middle.clamp(half + 2.0, self.width - half - 2.0);
        let clear = |middle: &f64| !others.iter().any(|x| (x - middle).abs() < half + 3.0);
        let places = [x, x + half + 4.0, x - half - 4.0].map(within);
        let middle = places.into_iter().find(clear).unwrap_or(places[0]);
        let letters = if bold { letters.bold() } else { letters };
        svg.text((middle, top), letters.at(Anchor::Middle), words);
    }
}
