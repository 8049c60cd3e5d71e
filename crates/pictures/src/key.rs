//! The key under a drawing: swatches with their meaning, set like words in lines.

use crate::boxes::Xy;
use crate::lettering::{SMALL, fitted, width};
use crate::svg::{Letters, Svg};

/// Height of a line of the key.
const LINE: f64 = 22.0;
/// From the middle of a swatch to its words.
const TO_WORDS: f64 = 17.0;
const GAP: f64 = 12.0;

/// Draws a swatch around a point, at most 22 units wide and 20 high.
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
        let words = fitted(&entry.words, SMALL, right - left - TO_WORDS - 11.0);
        let wide = 11.0 + TO_WORDS + width(&words, SMALL);
        if x > left && x + wide > right {
            x = left;
            y += LINE;
        }
        let center = (x + 11.0, y);
        (entry.swatch)(svg, center);
        svg.text((center.0 + TO_WORDS, y + 4.0), Letters::new(SMALL), &words);
        x += wide + GAP;
    }
    svg.close();
    y + LINE / 2.0
}
