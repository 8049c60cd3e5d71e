//! The frame of a chart: from values to units of the drawing.

use crate::boxes::{Box2, Xy};
use crate::lettering::{SMALL, fitted, width};
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

    /// Level lines with their numbers at the left, and the name of the axis above them.
    pub(super) fn upright(&self, svg: &mut Svg, ticks: &[(f64, String)], name: &str) {
        svg.text((4.0, self.plot.top - 10.0), Letters::new(SMALL), name);
        for (value, words) in ticks {
            let y = self.y_at(*value);
            svg.stroke(&[(self.plot.left, y), (self.plot.right, y)], "p-grid", (PALE, 0.8), "");
            svg.text((self.plot.left - 5.0, y + 4.0), Letters::new(SMALL).at(Anchor::End), words);
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
            if middle - half > used + 4.0 {
                svg.text((middle, y + down), Letters::new(SMALL).at(Anchor::Middle), words);
                used = middle + half;
            }
        }
    }

    /// Level lines with names, dashed; the names stand at the end chosen and are pushed apart.
    pub(super) fn named_lines(&self, svg: &mut Svg, lines: &[(f64, String)], anchor: Anchor) {
        let mut sorted: Vec<&(f64, String)> = lines.iter().collect();
        sorted.sort_by(|a, b| b.0.total_cmp(&a.0));
        let wishes: Vec<Wish> = sorted.iter().map(|(v, _)| Wish { at: self.y_at(*v) - 8.0, room: 13.0 }).collect();
        let places = apart(&wishes, self.plot.top - 6.0);
        for (value, _) in &sorted {
            let y = self.y_at(*value);
            let ends = [(self.plot.left, y), (self.plot.right, y)];
            svg.stroke(&ends, "p-limit", (INK, 1.5), " stroke-dasharray=\"7 3\"");
        }
        let x = if anchor == Anchor::End { self.plot.right - 2.0 } else { self.plot.left + 4.0 };
        for ((_, words), y) in sorted.iter().zip(places) {
            let words = fitted(words, SMALL, self.plot.width() - 8.0);
            svg.text((x, y + 4.0), Letters::new(SMALL).at(anchor).halo(), &words);
        }
    }

    /// An upright line with its name above the plot, so many rows up.
    pub(super) fn moment(&self, svg: &mut Svg, x: f64, words: &str, row: f64, bold: bool) {
        let x = self.x_at(x);
        let top = self.plot.top - 8.0 - 14.0 * row;
        let (ink, wide, dash) = if bold { (INK, 2.4, "") } else { (CEMENT, 1.4, " stroke-dasharray=\"2 3\"") };
        svg.stroke(
            &[(x, top + 4.0), (x, self.plot.bottom)],
            if bold { "p-today" } else { "p-rule" },
            (ink, wide),
            dash,
        );
        let letters = Letters::new(SMALL).halo();
        let half = width(words, SMALL) * if bold { 0.56 } else { 0.5 };
        let middle = x.clamp(half + 2.0, self.width - half - 2.0);
        let letters = if bold { letters.bold() } else { letters };
        svg.text((middle, top), letters.at(Anchor::Middle), words);
    }
}
