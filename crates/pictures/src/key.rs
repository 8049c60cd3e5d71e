//! The key under a drawing: swatches with their meaning, set like words in lines.

use crate::boxes::Xy;
use crate::lettering::{DOWN, SMALL, fitted, width};
use crate::svg::{Letters, Svg};

/// Height of a line of the key.
const LINE: f64 = 25.0;
/// From the middle of a swatch to its words.
const TO_WORDS: f64 = 19.0;
const GAP: f64 = 12.0;
/// Half the width of a swatch.
const HALF: f64 = 14.0;

/// Draws a swatch around a point, at most 28 units wide and 25 high.
pub(crate) type Swatch = Box<dyn Fn(&mut Svg, Xy)>;

/// One swatch and what it means.
pub(crate) struct KeyEntry {
    pub(crate) words: String,
    pub(crate) swatch: Swatch,
}

/// Draws the entries from `top` on between `left` and `right`; gives where it ends.
pub(crate) fn key(svg: &mut Svg, entries: &[KeyEntry], (left, right): (f64, f64), top: f64) -> f64 {
    if entries.is_empty() {
        return top;
    }
    svg.open(" class=\"p-key\"");
    let (mut x, mut y) = (left, top + LINE / 2.0);
    for entry in entries {
        let words = fitted(&entry.words, SMALL, right - left - TO_WORDS - HALF);
        let wide = HALF + TO_WORDS + width(&words, SMALL);
        if x > left && x + wide > right {
            x = left;
            y += LINE;
        }
        let center = (x + HALF, y);
        (entry.swatch)(svg, center);
        svg.text((center.0 + TO_WORDS, y + DOWN), Letters::new(SMALL), &words);
        x += wide + GAP;
    }
    svg.close();
    y + LINE / 2.0
}

/// A line of a key that stands beside its drawing: the swatch as a drawing of its own, and what it means.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct KeyLine {
    /// One `svg` element, to stand on the page of the drawing: its hatches are those of the drawing.
    pub svg: String,
    /// What the swatch means.
    pub words: String,
}

/// The entries as lines to set on a page.
pub(crate) fn key_lines(prefix: &str, entries: &[KeyEntry]) -> Vec<KeyLine> {
    let line = |entry: &KeyEntry| {
        let mut svg = Svg::new(prefix);
        (entry.swatch)(&mut svg, (HALF, LINE / 2.0));
        KeyLine { svg: svg.swatch((2.0 * HALF, LINE)), words: entry.words.clone() }
    };
    entries.iter().map(line).collect()
}
